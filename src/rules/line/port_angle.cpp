#include "rules/line/port_angle.hpp"

#include <algorithm>
#include <cmath>

#include "lines/arm_swing.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

/// The first leg from a port, to the next corner that is a bend.
Vec3 leg_from(const PreparedRoute& route, RouteEnd end) {
  std::vector<PathCorner> corners = route.centreline.corners();
  if (end == RouteEnd::to) std::reverse(corners.begin(), corners.end());
  std::size_t next = 1;
  while (next + 1 < corners.size() && corners[next].slight) ++next;
  return corners[next].at - corners.front().at;
}

/// The angle that is left where the far end of the leg lies nearer to the port's axis by the
/// tolerance.
double angle_deg(Vec3 leg, Vec3 direction, double tolerance_in) {
  const double drawn = angle_between_rad(leg, direction);
  const double explained = std::asin(std::min(1.0, tolerance_in / norm(leg)));
  return std::max(0.0, drawn - explained) * degrees_per_radian;
}

void judge_end(const RuleContext& context, const PreparedRoute& route, RouteEnd end,
               std::vector<Judgement>& judgements) {
  const bool at_from = end == RouteEnd::from;
  const Port* port = at_from ? route.from_port : route.to_port;
  if (!port) return;
  const Phrasing& phrasing = context.phrasing;
  const double tolerance_in = context.prepared.project->build_tolerance_in;
  const double angle = angle_deg(leg_from(route, end), port->direction, tolerance_in);
  const std::string where =
      "port " + port->name + " of " + (at_from ? route.from->name : route.to->name);
  Judgement judgement = context.at(route, at_from ? 0 : route.length_in());
  judgement.location = at_from ? route.route->from_where : route.route->to_where;
  if (holds(judgement, angle, {port_angle})) {
    judgement.message = "the line leaves " + where + " the way it points";
    judgements.push_back(judgement);
    return;
  }
  judgement.message =
      "the line leaves " + where + " at " + phrasing.angle(angle) + " to the way it points";
  judgement.mend =
      "lead the line straight out of the port before its first bend, or turn the fitting";
  const Line& line = *route.line;
  if (line.minimum_bend_radius_in) {
    const double depth_in =
        line.minimum_bend_radius_in->value * std::tan(radians_of(std::min(angle, 179.0)) / 2);
    const bool hose = line.kind == LineKind::hose;
    Judgement bent = judgement;
    const Limit most =
        hose ? hose_bend_in_port * line.outside_diameter_in : tube_bend_in_port * tolerance_in;
    if (!holds(bent, depth_in, {most})) {
      bent.message += ": the bend that this takes would begin " + phrasing.length(depth_in) +
                      " inside the fitting";
      judgement = bent;
    }
  }
  judgements.push_back(judgement);
}

}  // namespace

void judge_port_angles(const RuleContext& context, const PreparedRoute& route,
                       std::vector<Judgement>& judgements) {
  for (const RouteEnd end : {RouteEnd::from, RouteEnd::to})
    judge_end(context, route, end, judgements);
}

}  // namespace linewright
