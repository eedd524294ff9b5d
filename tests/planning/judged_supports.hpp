#pragma once
// Supports judged by the rules, as `suggest` has them judged.

#include <algorithm>
#include <iterator>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "lines/prepare.hpp"
#include "planning/suggest_supports.hpp"
#include "rules/judge.hpp"
#include "rules/space/failed_clamp.hpp"

namespace linewright {

inline std::vector<std::string_view> rules_asked() {
  std::vector<std::string_view> rules(std::begin(support_rules), std::end(support_rules));
  rules.insert(rules.end(), std::begin(rules_beside_supports), std::end(rules_beside_supports));
  return rules;
}

inline std::vector<RouteFault> faults_on(const Project& project, const std::string& route,
                                         std::span<const std::string_view> rules) {
  std::vector<RouteFault> faults;
  for (Judgement& each : judge_on_route(prepare(project), {}, rules, route)) {
    if (each.verdict == Verdict::pass || each.verdict == Verdict::waived) continue;
    const bool lost = is_of_lost_clamp(each);
    faults.push_back({std::move(each), lost});
  }
  return faults;
}

inline SupportSuggestion suggested(const Project& project, const std::string& route = "line") {
  const std::vector<std::string_view> rules = rules_asked();
  return suggest_supports(project, Obstacles(project.structure), route, 0.001,
                          [&](const Project& changed) { return faults_on(changed, route, rules); });
}

inline Route& route_of(Project& project, const std::string& name = "line") {
  return *std::find_if(project.routes.begin(), project.routes.end(),
                       [&](const Route& each) { return each.name == name; });
}

/// What the rules that supports are there for say with the route as it is given.
inline std::vector<RouteFault> faults_with(const Project& project, const Route& route) {
  Project changed = project;
  route_of(changed) = route;
  return faults_on(changed, "line", support_rules);
}

}  // namespace linewright
