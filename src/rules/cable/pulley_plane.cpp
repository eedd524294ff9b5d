#include "rules/cable/pulley_plane.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/angle.hpp"
#include "physics/cable.hpp"
#include "rules/rule.hpp"
#include "rules/words/swung_end.hpp"

namespace linewright {

namespace {

/// Drift over a lead is said only of angles up to this.
constexpr double most_drift_deg = 45;

/// A spindle square to both legs, near the one that is stated. Nothing where none is near.
std::optional<Vec3> true_axis(const LegDirections& legs, Vec3 stated) {
  Vec3 square = cross(legs.before, legs.after);
  if (norm(square) < Centreline::straight_below_rad)
    square = stated - legs.before * dot(stated, legs.before);
  if (norm(square) < 1e-9) return std::nullopt;
  return unit(square) * (dot(square, stated) < 0 ? -1 : 1);
}

double off_plane_rad(Vec3 leg, Vec3 axis) {
  return std::asin(std::min(1.0, std::abs(dot(leg, axis))));
}

/// Four decimals hold a direction to a hundredth of a degree.
std::string component(double value) {
  return fmt::format("{:.4f}", std::abs(value) < 0.00005 ? 0.0 : value);
}

std::string plane_mend(const LegDirections& legs, Vec3 axis) {
  const std::optional<Vec3> wanted = true_axis(legs, axis);
  if (!wanted) return "set the spindle square to the cable";
  const double tilt = angle_between_rad(axis, *wanted) * degrees_per_radian;
  return fmt::format("tilt the spindle {:.1f} deg, to axis [{}, {}, {}]: square to both legs", tilt,
                     component(wanted->x), component(wanted->y), component(wanted->z));
}

/// How far off the plane, and the limit that holds there.
struct OffPlane {
  double deg = 0;
  const LimitRow* row = nullptr;
  bool swung = false;
  double lacking_deg() const { return Limit(*row).lacking(deg); }
};

OffPlane off_plane(const LegDirections& legs, Vec3 axis, const LimitRow& row, bool swung) {
  const double rad = std::max(off_plane_rad(legs.before, axis), off_plane_rad(legs.after, axis));
  return {rad * degrees_per_radian, &row, swung};
}

const LimitRow& drawn_row(bool primary) {
  return primary ? plane_primary : plane_other;
}

OffPlane worst_off_plane(const std::vector<LegDirections>& legs, Vec3 axis, bool primary) {
  OffPlane worst = off_plane(legs.front(), axis, drawn_row(primary), false);
  for (std::size_t i = 1; i < legs.size(); ++i) {
    const OffPlane swung =
        off_plane(legs[i], axis, primary ? plane_primary_swung : plane_other_swung, true);
    if (swung.lacking_deg() > worst.lacking_deg()) worst = swung;
  }
  return worst;
}

}  // namespace

Judgement judge_plane(const RuleContext& context, const PreparedRoute& route, std::size_t index) {
  const RoutePoint& point = route.route->points[index];
  const int number = static_cast<int>(index);
  const bool primary = route.route->is_primary_control();
  Judgement judgement = context.at(route, route.point_distance_in[index]);
  judgement.location = point.where;
  if (!point.to.empty()) judgement.with = point.to;
  if (!point.axis) {
    const LimitRow& row = drawn_row(primary);
    leave_unknown(judgement, row);
    judgement.limit = row.value;
    judgement.message = "the pulley's axis is not stated, so its plane is not known";
    judgement.mend = "state the direction of its spindle: axis: [0, 0, 1]";
    return judgement;
  }
  const Vec3 axis = unit(*point.axis);
  const auto legs = leg_directions(route, number);
  const OffPlane off = worst_off_plane(legs, axis, primary);
  std::string words = context.phrasing.angle(off.deg) + " off the pulley's plane";
  if (off.swung) words += " at full travel, as " + swinging_end_name(route, number) + " swings";
  const std::string fixed = fixed_end_words(route, number);
  if (holds(judgement, off.deg, {*off.row})) {
    judgement.message = "the cable lies " + words + fixed;
    return judgement;
  }
  judgement.message = "the cable runs " + words;
  if (off.deg < most_drift_deg)
    judgement.message +=
        ", " + context.phrasing.length(off_plane_drift_in(12, off.deg / degrees_per_radian)) +
        " over " + context.phrasing.length(12) + " of lead";
  judgement.message += fixed;
  judgement.mend = off.swung ? "set the pulley farther from " + swinging_end_name(route, number) +
                                   ", or tilt its spindle toward that of the arm"
                             : plane_mend(legs.front(), axis);
  return judgement;
}

}  // namespace linewright
