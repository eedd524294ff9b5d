#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <iterator>

#include "catalogue/catalogue.hpp"
#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/trade_words.hpp"
#include "render/keys_json.hpp"
#include "render/keys_page.hpp"
#include "render/keys_text.hpp"
#include "render/layout.hpp"
#include "render/rules_json.hpp"
#include "render/rules_text.hpp"
#include "rules/registry.hpp"

namespace linewright {

namespace {

/// So many entries of a family are named; the rest are counted.
constexpr std::size_t most_entries = 12;
/// In place of a key's name.
constexpr std::string_view every_key = "keys";

/// "Static Port" is looked for as "static-port", too: words of project files have no blanks.
std::string as_one_word(std::string_view word) {
  std::string one;
  for (const char letter : word) {
    const bool is_upper = letter >= 'A' && letter <= 'Z';
    one += letter == ' ' || letter == '_' ? '-' : static_cast<char>(letter + (is_upper ? 32 : 0));
  }
  return one;
}

/// Keys that the word is a value of.
std::vector<KeyPlace> places_of_value(std::string_view word) {
  std::vector<KeyPlace> places;
  for (const KeyPlace& place : places_of_all_keys())
    if (std::find(place.key->choices.begin(), place.key->choices.end(), word) !=
        place.key->choices.end())
      places.push_back(place);
  return places;
}

std::vector<std::string> names_of_values() {
  std::vector<std::string> names;
  for (const KeyPlace& place : places_of_all_keys())
    names.insert(names.end(), place.key->choices.begin(), place.key->choices.end());
  return names;
}

/// What the catalogue has, and the key of project files that it is for.
struct Entries {
  std::vector<std::string> names;
  std::string_view key;
};

/// The entry of the name, or those of the family that it is, "tube-nylon".
Entries entries_of(std::string_view word) {
  Entries found;
  const Catalogue& all = built_in_catalogue();
  const std::string family = std::string(word) + "-";
  const auto consider = [&](const auto& entries, std::string_view key) {
    for (const auto& entry : entries) {
      if (entry.name != word && !entry.name.starts_with(family)) continue;
      found.names.push_back(entry.name);
      found.key = key;
    }
  };
  consider(all.lines, "line");
  consider(all.clamps, "hold");
  consider(all.fittings, "fitting");
  const bool is_one = std::find(found.names.begin(), found.names.end(), word) != found.names.end();
  if (is_one) found.names = {std::string(word)};
  return found;
}

const TradeWord* find_trade_word(std::string_view word) {
  for (const TradeWord& each : trade_words())
    if (as_one_word(each.word) == word) return &each;
  return nullptr;
}

Outcome unknown_word(const std::string& word) {
  std::vector<std::string> names = rule_names();
  const auto add = [&](std::vector<std::string> more) {
    for (std::string& name : more)
      if (std::find(names.begin(), names.end(), name) == names.end())
        names.push_back(std::move(name));
  };
  add(key_names());
  add(names_of_values());
  for (const TradeWord& each : trade_words()) add({std::string(each.word)});
  return refusal(
      unknown_name("rule or key", word, names,
                   "linewright rules lists the rules, linewright explain keys the keys, linewright "
                   "catalogue its entries"));
}

/// What a word stands for.
struct Meaning {
  const TradeWord* trade = nullptr;
  const Rule* rule = nullptr;
  std::vector<KeyPlace> keys;
  std::vector<KeyPlace> values;  ///< keys that it is a value of
  Entries entries;

  bool nothing() const {
    return rule == nullptr && keys.empty() && values.empty() && entries.names.empty();
  }
  /// Words of the trade go before values: "FS" is a station rather than what a mesh turns about.
  bool is_rule_or_key() const { return rule != nullptr || !keys.empty(); }
};

Meaning meaning_of(const std::string& word) {
  Meaning meaning;
  meaning.rule = find_rule(word);
  meaning.keys = word == every_key ? places_of_all_keys() : places_of_key(word);
  if (meaning.rule == nullptr) meaning.values = places_of_value(word);
  if (meaning.rule == nullptr && meaning.keys.empty()) meaning.entries = entries_of(word);
  return meaning;
}

std::string values_text(std::string_view word, const std::vector<KeyPlace>& places) {
  std::string text;
  std::vector<std::string_view> told;
  for (const KeyPlace& place : places) {
    if (std::find(told.begin(), told.end(), place.key->name) != told.end()) continue;
    told.push_back(place.key->name);
    std::vector<KeyPlace> of_key;
    std::copy_if(places.begin(), places.end(), std::back_inserter(of_key),
                 [&](const KeyPlace& each) { return each.key->name == place.key->name; });
    text += (text.empty() ? "" : "\n") +
            wrapped("", fmt::format("{}: a value of the key '{}'", word, place.key->name)) + "\n" +
            key_manual_text(place.key->name, of_key);
  }
  return text;
}

std::string entries_text(const std::string& word, const std::vector<std::string>& entries,
                         const ResultForm& form) {
  if (entries.size() == 1) return catalogue({entries.front(), std::nullopt, form}).result;
  const auto last =
      entries.begin() + static_cast<std::ptrdiff_t>(std::min(most_entries, entries.size()));
  const std::string more = entries.size() > most_entries
                               ? fmt::format(" and {} more", entries.size() - most_entries)
                               : std::string();
  return wrapped("", fmt::format("{}: in the catalogue as {}{}; linewright catalogue NAME has one "
                                 "of them with its sources",
                                 word, fmt::join(entries.begin(), last, ", "), more));
}

std::string meaning_text(const std::string& word, const Meaning& meaning, const ResultForm& form) {
  std::string text;
  const auto add = [&](const std::string& part) {
    if (!part.empty()) text += (text.empty() ? "" : "\n") + part;
  };
  if (meaning.trade != nullptr)
    add(wrapped("", fmt::format("{}: {}", meaning.trade->word, meaning.trade->says)));
  if (meaning.rule != nullptr) add(rule_manual_text(*meaning.rule, form.style));
  if (!meaning.keys.empty()) add(key_manual_text(word, meaning.keys));
  add(values_text(word, meaning.values));
  if (!meaning.entries.names.empty()) add(entries_text(word, meaning.entries.names, form));
  return text;
}

}  // namespace

Outcome explain(const std::string& written, const ResultForm& form) {
  std::string word = written;
  Meaning meaning = meaning_of(word);
  const TradeWord* const trade = find_trade_word(as_one_word(written));
  if (trade != nullptr && !meaning.is_rule_or_key()) {
    word = trade->see;
    meaning = meaning_of(word);
    meaning.trade = trade;
  } else if (meaning.nothing()) {
    word = as_one_word(written);
    meaning = meaning_of(word);
  }
  if (meaning.nothing() && meaning.trade == nullptr) return unknown_word(written);
  Outcome outcome;
  if (form.format == Format::json) {
    std::vector<KeyPlace> places = meaning.keys;
    places.insert(places.end(), meaning.values.begin(), meaning.values.end());
    if (places.empty()) places = places_of_key(meaning.entries.key);
    outcome.result = manual_json(meaning.rule, places);
  } else if (word == every_key) {
    outcome.result = keys_page();
  } else {
    outcome.result = meaning_text(word, meaning, form);
  }
  return outcome;
}

}  // namespace linewright
