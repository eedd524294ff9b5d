#include "rules/rule.hpp"

namespace linewright {

Judgement judgement_at(const Rule& rule, const PreparedRoute& route, double distance_in) {
  Judgement judgement;
  judgement.rule = rule.name;
  judgement.route = route.route->name;
  judgement.distance_in = distance_in;
  judgement.at = route.centreline.at(distance_in);
  judgement.unit = Unit::inch;
  judgement.location = route.location_near(distance_in);
  return judgement;
}

}  // namespace linewright
