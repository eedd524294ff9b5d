#pragma once
// Limits, and the one way in which a value is held against them. Nothing else gives a verdict.

#include <algorithm>
#include <array>
#include <initializer_list>
#include <span>
#include <string>
#include <string_view>

#include "model/judgement.hpp"
#include "model/rounding.hpp"
#include "model/source.hpp"

namespace linewright {

/// A row of a rule's limit table. Rules read their numbers from here, so that the table shown is
/// the table used.
struct LimitRow {
  std::string_view name;     ///< "metal-tube-at-support": in kebab case, once in its rule
  std::string_view subject;  ///< "metal tube to structure, within 1 in of a support"
  double value = 0;
  Unit unit = Unit::inch;  ///< of what is judged
  LimitSense sense = LimitSense::at_least;
  std::string_view source;
  Mark mark = Mark::from_memory;
  Verdict broken = Verdict::fail;  ///< what breaking it gives
  /// What the value is a share or a multiple of: "outside diameter"; empty where it is the limit.
  std::string_view times = {};
};

/// What breaking a limit with this mark gives: warn where only practice stands behind it.
constexpr Verdict broken_limit(Mark mark) {
  return mark == Mark::common_practice ? Verdict::warn : Verdict::fail;
}

/// A rule's table. Does not compile where a row has no name, subject or source, where two have the
/// same name, or where breaking common practice would fail.
template <std::size_t Count>
consteval std::array<LimitRow, Count> limit_table(const LimitRow (&rows)[Count]) {
  std::array<LimitRow, Count> table{};
  for (std::size_t i = 0; i < Count; ++i) {
    const LimitRow& row = rows[i];
    if (row.name.empty() || row.subject.empty() || row.source.empty())
      throw "a limit lacks its name, subject or source";
    for (std::size_t j = 0; j < i; ++j)
      if (rows[j].name == row.name) throw "two limits have one name";
    if (row.broken != Verdict::fail && row.broken != Verdict::warn)
      throw "breaking a limit warns or fails";
    if (row.mark == Mark::common_practice && row.broken != Verdict::warn)
      throw "breaking common practice warns";
    table[i] = row;
  }
  return table;
}

/// A limit as it holds at one place: a row's, so many times a size there, or the catalogue's.
struct Limit {
  double value = 0;
  Unit unit = Unit::inch;
  LimitSense sense = LimitSense::at_least;
  std::string source;  ///< with its mark
  Verdict broken = Verdict::fail;

  Limit(const LimitRow& row);  // NOLINT(google-explicit-constructor): a row is a limit
  Limit(double value, const LimitRow& row);
  /// A figure of the catalogue or of the project; breaking it gives what its mark does.
  Limit(const SourcedValue& figure, Unit unit, LimitSense sense);

  /// How much a value lacks of the limit; below zero where it has more than that.
  double lacking(double of_value) const {
    return sense == LimitSense::at_least ? value - of_value : of_value - value;
  }
};

/// The row's share of, or so many times, a size.
Limit operator*(const LimitRow& row, double size);

/// Holds a value against limits that all apply, and puts value, limit, unit, sense, source and
/// verdict into the judgement, all of one limit: the gravest that is broken (of several as grave
/// the first named), else the one with least to spare (of several the last named). A value within
/// `limit_rounding` of that limit is said to be at it. A value that is no number breaks every
/// limit. True where none is broken.
bool holds(Judgement& judgement, double value, std::span<const Limit> limits);
bool holds(Judgement& judgement, double value, std::initializer_list<Limit> limits);

/// The same for what has no number: a thing is right, or the row is broken. Gives back `is_right`.
bool holds_true(Judgement& judgement, bool is_right, const LimitRow& row);

/// The limit that could not be judged, for what it is measured in and its source; the verdict stays
/// unknown, and the number is left out.
void leave_unknown(Judgement& judgement, const Limit& limit);

/// Source text of a limit row with its mark.
std::string cite(const LimitRow& row);

}  // namespace linewright
