#include "rules/line/hose_planes.hpp"

#include <algorithm>
#include <vector>

#include "model/angle.hpp"
#include "model/place_order.hpp"

namespace linewright {

namespace {

/// Turns and tilts of planes smaller than these are a drawing's misfit, or a bow's [common
/// practice, no source].
constexpr double least_turn_deg = 5;
constexpr double least_tilt_deg = 10;
/// Places that a finding names; the rest are counted.
constexpr std::size_t places_named = 3;

Vec3 plane_normal(const PreparedRoute& route, const Bend& bend) {
  const Centreline& line = route.centreline;
  return cross(line.direction(bend.start_in), line.direction(bend.end_in));
}

/// Between two planes; which way either bend turns in its plane does not matter.
double tilt_deg(Vec3 first, Vec3 second) {
  const double between = angle_between_rad(first, second) * degrees_per_radian;
  return std::min(between, 180 - between);
}

bool is_clamped_between(const PreparedRoute& route, const Bend& first, const Bend& second) {
  return std::any_of(route.supports.begin(), route.supports.end(), [&](const Support& support) {
    return support.point >= 0 && support.distance_in >= first.middle_in() - limit_rounding &&
           support.distance_in <= second.middle_in() + limit_rounding &&
           route.route->points[static_cast<std::size_t>(support.point)].hold == HoldKind::clamp;
  });
}

/// Half way between two neighbouring bends in planes of their own, without a clamp.
std::vector<double> places_of_twist(const PreparedRoute& route) {
  std::vector<double> places;
  const Bend* before = nullptr;
  for (const Bend& bend : route.centreline.bends()) {
    if (bend.angle_rad * degrees_per_radian < least_turn_deg) continue;
    if (before &&
        tilt_deg(plane_normal(route, *before), plane_normal(route, bend)) > least_tilt_deg &&
        !is_clamped_between(route, *before, bend))
      places.push_back((before->end_in + bend.start_in) / 2);
    before = &bend;
  }
  return places;
}

}  // namespace

std::optional<Judgement> judge_hose_planes(const RuleContext& context, const PreparedRoute& route) {
  if (route.line->kind != LineKind::hose) return std::nullopt;
  const std::vector<double> places = places_of_twist(route);
  if (places.empty()) return std::nullopt;
  const Centreline& line = route.centreline;
  const auto first = std::min_element(places.begin(), places.end(), [&](double a, double b) {
    return lies_before(line.at(a), line.at(b));
  });
  Judgement judgement = context.at(route, *first);
  holds(judgement, 0, {clamp_between_planes});
  std::string list;
  for (std::size_t i = 0; i < std::min(places.size(), places_named); ++i)
    list += (i == 0 ? "" : ", ") + context.phrasing.length(places[i]);
  if (places.size() > places_named)
    list += " and " + std::to_string(places.size() - places_named) + " places more";
  judgement.message = "the hose bends in one plane and then in another, with no clamp between, " +
                      list + " from " + route.from->name + ": it twists as it flexes";
  judgement.mend = "clamp it there, between the two bends, or draw both in one plane";
  return judgement;
}

}  // namespace linewright
