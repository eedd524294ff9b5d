#include "lines/cable_friction.hpp"

#include <algorithm>
#include <numbers>

#include "physics/cable.hpp"

namespace linewright {

namespace {

/// A bend whose share outside all sleeves is less than this is inside them but for rounding.
constexpr double share_rounding = 1e-9;

/// How much of a bend lies in sleeves, 0 to 1. Sleeves that overlap count once.
double sleeved_share(const PreparedRoute& route, const Bend& bend) {
  const double length = bend.end_in - bend.start_in;
  if (length <= 0) return route.sleeve_at(bend.start_in) ? 1 : 0;
  std::vector<Sleeve> sleeves = route.route->sleeves;
  std::sort(sleeves.begin(), sleeves.end(),
            [](const Sleeve& a, const Sleeve& b) { return a.from_in < b.from_in; });
  double covered = 0;
  double reached = bend.start_in;
  for (const Sleeve& sleeve : sleeves) {
    const double start = std::max(reached, sleeve.from_in);
    const double end = std::min(bend.end_in, sleeve.to_in);
    if (end <= start) continue;
    covered += end - start;
    reached = end;
  }
  return covered / length;
}

const Support* support_at(const PreparedRoute& route, int point) {
  for (const Support& support : route.supports)
    if (support.point == point) return &support;
  return nullptr;
}

double pulley_ratio(double turn_rad) {
  return 1 + pulley_loss_per_quarter_turn * turn_rad / (std::numbers::pi / 2);
}

void add_bend(CableFriction& friction, const PreparedRoute& route, const Bend& bend) {
  const int index = bend.corner - 1;
  const RoutePoint& point = route.route->points[static_cast<std::size_t>(index)];
  const Support* support = support_at(route, index);
  if (point.hold == HoldKind::pulley) {
    friction.turns.push_back({GuideKind::pulley, bend.middle_in(), support->name, bend.angle_rad,
                              pulley_ratio(bend.angle_rad)});
    return;
  }
  const double share = sleeved_share(route, bend);
  if (share > 0) {
    const double turn = bend.angle_rad * share;
    friction.turns.push_back({GuideKind::sleeve, bend.middle_in(), "sleeve", turn,
                              capstan_ratio(sleeve_friction, turn)});
  }
  if (share >= 1 - share_rounding || point.hold == HoldKind::clamp) return;
  if (!support && bend.slight) return;
  if (!support) {
    friction.missing.push_back("what guides it where it turns at its point " +
                               std::to_string(index + 1));
    return;
  }
  const double turn = bend.angle_rad * (1 - share);
  friction.turns.push_back({GuideKind::fairlead, bend.middle_in(), support->name, turn,
                            capstan_ratio(fairlead_friction, turn)});
}

}  // namespace

double CableFriction::ratio() const {
  double product = 1;
  for (const GuidedTurn& turn : turns) product *= turn.ratio;
  return product;
}

double CableFriction::turn_rad(GuideKind kind) const {
  double sum = 0;
  for (const GuidedTurn& turn : turns)
    if (turn.kind == kind) sum += turn.turn_rad;
  return sum;
}

CableFriction cable_friction(const PreparedRoute& route) {
  CableFriction friction;
  for (const Bend& bend : route.centreline.bends()) add_bend(friction, route, bend);
  const std::vector<RoutePoint>& points = route.route->points;
  for (std::size_t i = 0; i < points.size(); ++i)
    // A clamp about a sleeve holds the sleeve; the cable slides in it.
    if (points[i].hold == HoldKind::clamp && !route.sleeve_at(route.point_distance_in[i]))
      friction.missing.push_back("how it moves in the clamp at its point " + std::to_string(i + 1));
  return friction;
}

}  // namespace linewright
