#include "commands/commands.hpp"
#include "render/rules_json.hpp"
#include "render/rules_text.hpp"
#include "rules/registry.hpp"

namespace linewright {

Outcome list_rules(const ResultForm& form) {
  return {
      ExitCode::nothing_failed,
      form.format == Format::json ? rules_json(all_rules()) : rules_text(all_rules(), form.style),
      ""};
}

}  // namespace linewright
