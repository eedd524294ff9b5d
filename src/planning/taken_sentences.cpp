#include "planning/taken_sentences.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace linewright {

namespace {

/// So many parts are named in one sentence; the rest are counted.
constexpr std::size_t most_named = 12;

std::string listed(const Names& names) {
  const auto last = names.begin() + static_cast<std::ptrdiff_t>(std::min(most_named, names.size()));
  std::string list = fmt::format("{}", fmt::join(names.begin(), last, ", "));
  if (names.size() > most_named) list += fmt::format(" and {} more", names.size() - most_named);
  return list;
}

}  // namespace

void Sentences::add(const Names& names, std::string_view words) {
  if (!names.empty()) sentences_.push_back(fmt::format(fmt::runtime(words), listed(names)));
}

std::string at_point(const Route& route, std::size_t index) {
  return fmt::format("{} at its point {}", route.name, index + 1);
}

}  // namespace linewright
