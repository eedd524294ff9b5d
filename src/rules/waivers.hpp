#pragma once
// What the builder has accepted.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// The rule that judgements of the waivers themselves are of.
inline constexpr std::string_view waivers_name = "waivers";

/// Turns each fail or warn that a waiver names (its rule, its route on either side, within `within`
/// of `near` where stated) into `waived` with the reason. An unknown is never waived. A waiver that
/// turns nothing adds a `waivers` warning; with `only_rule`, only waivers of that rule are looked
/// at.
void apply_waivers(const PreparedProject& prepared, const std::optional<std::string>& only_rule,
                   std::vector<Judgement>& judgements);

/// As it was, or would be, without one.
Judgement without_waiver(Judgement judgement);

}  // namespace linewright
