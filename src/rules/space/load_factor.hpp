#pragma once
// Whether the load factor that all sag rests on is one that an aeroplane can be held to.

#include <algorithm>
#include <optional>

#include "rules/rule.hpp"

namespace linewright {

/// No more than this is asked of an aeroplane that is not flown for aerobatics, in g.
inline constexpr double most_load_factor_asked = 3.8;

/// The least positive limit load factor of such an aeroplane, in g, by its weight at its heaviest
/// in lbf (14 CFR 25.337(b), and 23.337(a)(1) before amendment 23-64). Where that is not known it
/// is taken to be light.
constexpr double least_load_factor(std::optional<double> weight_lbf) {
  if (!weight_lbf) return most_load_factor_asked;
  return std::min(most_load_factor_asked, 2.1 + 24'000 / (*weight_lbf + 10'000));
}

/// Of `chafe`.
inline constexpr LimitRow load_factor_row{
    .name = "load-factor",
    .subject = "positive load factor that lines sag under, in g",
    .value = most_load_factor_asked,
    .unit = Unit::none,
    .source =
        "14 CFR 25.337(b), as 23.337(a)(1) was before amendment 23-64: 2.1 + 24,000 / "
        "(weight + 10,000), but no more than 3.8; utility 4.4, aerobatic 6.0",
    .mark = Mark::verified,
    .broken = Verdict::warn};

/// A stated load factor that is less than the least of a regulation; nothing where it is not, and
/// where the usual one was taken.
std::optional<Judgement> judge_load_factor(const RuleContext& context);

}  // namespace linewright
