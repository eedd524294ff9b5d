#include "input/suggest_name.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdlib>
#include <utility>

namespace linewright {
namespace {

/// Longer words are not compared: nobody mistypes a name of this length by a letter or two, and
/// the comparison costs the product of both lengths.
constexpr std::size_t longest_compared = 64;

std::string lower_case(std::string_view text) {
  std::string lowered(text);
  for (char& letter : lowered)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return lowered;
}

/// Fewest single-character insertions, deletions, replacements and swaps of neighbours that turn
/// one word into the other (optimal string alignment).
std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> before_last(b.size() + 1);
  std::vector<std::size_t> last(b.size() + 1);
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, replaced});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    std::swap(before_last, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

/// How many edits still make a likely slip: about one in three letters, three at most.
std::size_t allowed_edits(std::size_t length) {
  return std::clamp<std::size_t>(length / 3, 1, 3);
}

std::string digits_of(std::string_view text) {
  std::string digits;
  for (const char c : text)
    if (c >= '0' && c <= '9') digits += c;
  return digits;
}

/// In a word of one or two letters a changed letter makes another word ('cm' is no slip for 'mm'):
/// only a capital or an ending can be wrong.
constexpr std::size_t shortest_compared = 3;

bool could_mean(std::string_view written, std::string_view name, std::string_view digits) {
  if (written.size() < shortest_compared) return name.starts_with(written);
  // Another size is another thing: a line of the wrong diameter must not be offered for one that is
  // not there.
  return name.find('/') == std::string_view::npos || digits == digits_of(name);
}

}  // namespace

std::string meant_name(std::string_view written, const std::vector<std::string>& known) {
  if (written.empty() || written.size() > longest_compared) return "";
  const std::string digits = digits_of(written);
  const std::string wanted = lower_case(written);
  const std::string* nearest = nullptr;
  std::size_t fewest = 0;
  for (const std::string& name : known) {
    if (name == written) return "";
    const std::size_t allowed = allowed_edits(std::max(name.size(), wanted.size()));
    const std::size_t longer = std::max(name.size(), wanted.size());
    if (longer - std::min(name.size(), wanted.size()) > allowed) continue;
    const std::size_t edits = edit_distance(wanted, lower_case(name));
    // Where every letter would have to change, the words have nothing in common.
    if (edits > allowed || edits >= longer) continue;
    if (!could_mean(wanted, lower_case(name), digits)) continue;
    if (nearest != nullptr && edits >= fewest) continue;
    nearest = &name;
    fewest = edits;
  }
  return nearest == nullptr ? "" : *nearest;
}

std::string suggest_name(std::string_view written, const std::vector<std::string>& known) {
  const std::string meant = meant_name(written, known);
  return meant.empty() ? "" : fmt::format("did you mean '{}'?", meant);
}

std::string suggest_choice(std::string_view written, const std::vector<std::string>& choices) {
  const std::string near = suggest_name(written, choices);
  if (!near.empty()) return near;
  const std::string lowered = lower_case(written);
  std::vector<std::string_view> parts;
  for (const std::string& choice : choices)
    if (choice.size() >= shortest_compared && lowered.find(choice) != std::string::npos)
      parts.push_back(choice);
  return parts.size() == 1 ? fmt::format("did you mean '{}'?", parts.front()) : "";
}

std::vector<std::string> nearest_names(std::string_view written,
                                       const std::vector<std::string>& known, std::size_t most) {
  if (written.empty() || written.size() > longest_compared) return {};
  const std::string wanted = lower_case(written);
  std::vector<std::pair<std::size_t, const std::string*>> by_distance;
  for (const std::string& name : known)
    if (name.size() <= longest_compared)
      by_distance.emplace_back(edit_distance(wanted, lower_case(name)), &name);
  std::stable_sort(by_distance.begin(), by_distance.end(),
                   [](const auto& a, const auto& b) { return a.first < b.first; });
  std::vector<std::string> nearest;
  for (std::size_t i = 0; i < std::min(most, by_distance.size()); ++i)
    nearest.push_back(*by_distance[i].second);
  return nearest;
}

}  // namespace linewright
