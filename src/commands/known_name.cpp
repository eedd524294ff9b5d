#include "commands/known_name.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "input/suggest_name.hpp"
#include "render/layout.hpp"
#include "rules/registry.hpp"

namespace linewright {

std::string unknown_name(const std::string& kind, const std::string& written,
                         const std::vector<std::string>& known) {
  if (std::find(known.begin(), known.end(), written) != known.end()) return {};
  return with_suggestion(fmt::format("no {} is called '{}'", kind, one_line(written)), written,
                         known);
}

std::vector<std::string> rule_names() {
  std::vector<std::string> names;
  for (const Rule* rule : all_rules()) names.emplace_back(rule->name);
  return names;
}

std::string with_suggestion(const std::string& message, const std::string& written,
                            const std::vector<std::string>& known) {
  const std::string suggestion = suggest_name(written, known);
  return suggestion.empty() ? message : message + "; " + suggestion;
}

}  // namespace linewright
