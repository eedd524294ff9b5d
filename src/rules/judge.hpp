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

/// What all rules say, by rule, then along the routes, waivers not applied. Of those that leave out
/// what is not asked for it is what they say of the routes that are, each by 1 or 0, and of what
/// concerns none; some of other routes may be among it.
std::vector<Judgement> judge_asked(const PreparedProject& prepared, const Phrasing& phrasing,
                                   const std::vector<char>& asked_routes);
/// Applies waivers to all that the rules said, and puts it in the order of `judge`.
std::vector<Judgement> waived_in_order(const PreparedProject& prepared,
                                       std::vector<Judgement> judgements);

/// What some rules, called by their names, say that concerns one route, waivers applied: much
/// quicker than the whole, for those who ask again and again. Nothing is said of waivers that
/// match nothing.
std::vector<Judgement> judge_on_route(const PreparedProject& prepared, const Phrasing& phrasing,
                                      std::span<const std::string_view> rules,
                                      const std::string& route);

}  // namespace linewright
