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
  return std::any_of(passed_over.begin(), passed_over.end(), [&](const Waiver* waiver) {
    return waiver->rule == rule.name && waiver->route == route.route->name &&
           distance(route.centreline.at(distance_in), *waiver->near) <= waiver->within_in;
  });
}

}  // namespace linewright
