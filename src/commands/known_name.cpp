#include "commands/known_name.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

#include "input/suggest_name.hpp"
#include "render/layout.hpp"
#include "rules/registry.hpp"

namespace linewright {

namespace {

constexpr std::size_t nearest_listed = 3;

}  // namespace

std::string unknown_name(const std::string& kind, const std::string& written,
                         const std::vector<std::string>& known, std::string_view see_all) {
  if (std::find(known.begin(), known.end(), written) != known.end()) return {};
  const std::string message = fmt::format("no {} is called '{}'", kind, one_line(written));
  if (see_all.empty()) return with_suggestion(message, written, known);
  std::string words = with_suggestion(message, written, known);
  const std::vector<std::string> near = nearest_names(written, known, nearest_listed);
  if (words == message && !near.empty())
    words += fmt::format("; nearest: {}", one_line(fmt::format("{}", fmt::join(near, ", "))));
  return fmt::format("{} ({})", words, see_all);
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
