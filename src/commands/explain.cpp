#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "render/rules_json.hpp"
#include "render/rules_text.hpp"
#include "rules/registry.hpp"

namespace linewright {

Outcome explain(const std::string& rule, const ResultForm& form) {
  for (const Rule* known : all_rules())
    if (known->name == rule)
      return {ExitCode::nothing_failed,
              form.format == Format::json ? rule_manual_json(*known)
                                          : rule_manual_text(*known, form.style),
              ""};
  return refusal(unknown_name("rule", rule, rule_names()) + " (linewright rules lists them)");
}

}  // namespace linewright
