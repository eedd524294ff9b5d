#pragma once
// Runs the rules, applies the builder's waivers and puts the judgements in order.

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// All judgements: by route in file order, then by rule, then along the route. With `only_rule` or
/// `only_route` the rest is left out (a judgement between two routes belongs to both). A waiver
/// that matches nothing it could have matched gives a `waivers` warning.
std::vector<Judgement> judge(const PreparedProject& prepared, Phrasing phrasing,
                             const std::optional<std::string>& only_rule = std::nullopt,
                             const std::optional<std::string>& only_route = std::nullopt);

/// What some rules, called by their names, say that concerns one route, waivers applied: much
/// quicker than the whole, for those who ask again and again. Nothing is said of waivers that
/// match nothing.
std::vector<Judgement> judge_on_route(const PreparedProject& prepared, const Phrasing& phrasing,
                                      std::span<const std::string_view> rules,
                                      const std::string& route);

}  // namespace linewright
