#include <algorithm>

#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "render/keys_json.hpp"
#include "render/keys_page.hpp"
#include "render/keys_text.hpp"
#include "render/rules_json.hpp"
#include "render/rules_text.hpp"
#include "rules/registry.hpp"

namespace linewright {

namespace {

/// In place of a key's name.
constexpr std::string_view every_key = "keys";

Outcome unknown_word(const std::string& word) {
  std::vector<std::string> names = rule_names();
  for (const std::string& key : key_names())
    if (std::find(names.begin(), names.end(), key) == names.end()) names.push_back(key);
  return refusal(
      unknown_name("rule or key", word, names,
                   "linewright rules lists the rules, linewright explain keys the keys"));
}

}  // namespace

Outcome explain(const std::string& word, const ResultForm& form) {
  const Rule* rule = find_rule(word);
  const bool all = word == every_key;
  const std::vector<KeyPlace> places = all ? places_of_all_keys() : places_of_key(word);
  if (rule == nullptr && places.empty()) return unknown_word(word);
  Outcome outcome;
  if (form.format == Format::json)
    outcome.result = manual_json(rule, places);
  else if (all)
    outcome.result = keys_page();
  else {
    if (rule != nullptr) outcome.result = rule_manual_text(*rule, form.style);
    if (rule != nullptr && !places.empty()) outcome.result += "\n";
    if (!places.empty()) outcome.result += key_manual_text(word, places);
  }
  return outcome;
}

}  // namespace linewright
