#include "rules/cable/sleeve_bend.hpp"

#include <algorithm>
#include <cmath>

#include "lines/sleeved_bend.hpp"
#include "model/angle.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

const RoutePoint& bend_point(const PreparedRoute& route, const Bend& bend) {
  return route.route->points[static_cast<std::size_t>(bend.corner) - 1];
}

Judgement bend_judgement(const RuleContext& context, const PreparedRoute& route, const Bend& bend) {
  Judgement judgement = context.at(route, bend.middle_in());
  judgement.location = bend_point(route, bend).where;
  return judgement;
}

std::string turn_words(const RuleContext& context, const Bend& bend) {
  return context.phrasing.angle(bend.angle_rad * degrees_per_radian);
}

Judgement judge_sharp(const RuleContext& context, const PreparedRoute& route, const Bend& bend,
                      const Sleeve& sleeve) {
  Judgement judgement = bend_judgement(context, route, bend);
  holds(judgement, bend.angle_rad * degrees_per_radian, {sharp_turn});
  judgement.message = "the sleeve turns " + turn_words(context, bend) +
                      " where no bend is stated: the cable would bear on it at one point";
  judgement.mend = "give the point the radius that the sleeve is bent to: bend: " +
                   context.phrasing.length(
                       sleeve.minimum_bend_radius_in
                           ? context.phrasing.rounded_up(sleeve.minimum_bend_radius_in->value)
                           : 4) +
                   ", or put a pulley there";
  return judgement;
}

Judgement judge_radius(const RuleContext& context, const PreparedRoute& route, const Bend& bend,
                       const Sleeve& sleeve) {
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = bend_judgement(context, route, bend);
  const std::string bent = "the sleeve is bent " + turn_words(context, bend) + " at " +
                           phrasing.length(bend.built_radius_in) + " radius";
  if (!sleeve.minimum_bend_radius_in) {
    judgement.value = bend.built_radius_in;
    judgement.message = bent + "; how tight it may be bent is not known";
    judgement.source = "the project";
    judgement.mend = "state its minimum_bend_radius, or the line that it is cut from";
    return judgement;
  }
  const Limit least{*sleeve.minimum_bend_radius_in, Unit::inch, LimitSense::at_least};
  if (holds(judgement, bend.built_radius_in, {least})) {
    judgement.message = bent + ", which it stands";
    return judgement;
  }
  judgement.message = bent + ", tighter than it stands";
  judgement.mend = "raise the point's bend to " + phrasing.length_up(least.value) +
                   ", or use a sleeve that can be bent so";
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_sleeve_bends(const RuleContext& context, const PreparedRoute& route,
                                          const Sleeve& sleeve) {
  std::vector<Judgement> judgements;
  const bool cable = route.line->kind == LineKind::cable;
  for (const Bend& bend : route.centreline.made_bends()) {
    const auto& hold = bend_point(route, bend).hold;
    if (!lies_over(sleeve, bend) || (hold && *hold != HoldKind::clamp)) continue;
    if (bend.drawn_radius_in <= 0) {
      if (cable) judgements.push_back(judge_sharp(context, route, bend, sleeve));
    } else if (cable || sleeve.minimum_bend_radius_in) {
      judgements.push_back(judge_radius(context, route, bend, sleeve));
    }
  }
  return judgements;
}

}  // namespace linewright
