#include "rules/rule.hpp"

#include <algorithm>

namespace linewright {

Judgement RuleContext::at(const PreparedRoute& route, double distance_in) const {
  Judgement judgement;
  judgement.rule = rule.name;
  judgement.route = route.route->name;
  judgement.distance_in = distance_in;
  judgement.at = route.centreline.at(distance_in);
  judgement.unit = Unit::inch;
  judgement.location = route.location_near(distance_in);
  return judgement;
}

Judgement RuleContext::about(const std::string& thing, const SourceLocation& where) const {
  Judgement judgement;
  judgement.rule = rule.name;
  judgement.with = thing;
  judgement.location = where;
  return judgement;
}

bool RuleContext::is_passed_over(const PreparedRoute& route, double distance_in) const {
  if (passed_over.empty()) return false;
  const std::string& name = route.route->name;
  auto each = std::lower_bound(
      passed_over.begin(), passed_over.end(), name,
      [](const Waiver* waiver, const std::string& wanted) { return waiver->route < wanted; });
  for (; each != passed_over.end() && (*each)->route == name; ++each)
    if ((*each)->rule == rule.name &&
        distance(route.centreline.at(distance_in), *(*each)->near) <= (*each)->within_in)
      return true;
  return false;
}

}  // namespace linewright
