#include "rules/space/run_out.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "lines/casing_ends.hpp"
#include "lines/fitting_seat.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/own_arm.hpp"
#include "model/angle.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

constexpr double rounding_in = 1e-6;
/// Parts farther than this are no neighbours and are not listed.
constexpr double horizon_in = 1.5;
/// The wire goes through what it meets at 45 degrees or steeper, as a casing's end in a bracket
/// does.
const double through_cosine = std::cos(radians_of(45));

/// One end of the casing, with what does not count for the wire that comes out of it.
class WireEnd {
 public:
  WireEnd(const PreparedProject& prepared, const PreparedRoute& route, const CasingEnd& end)
      : prepared_(prepared),
        end_(end),
        seat_(prepared, route, end.end),
        radius_in_(route.radius_in(end.distance_in)) {
    add_zone(end.node->at + end.out * end.most_in);
    if (const auto way = pin_way(end))
      for (const Vec3 pin : way->places) add_zone(pin);
    if (end.arm) own_ = pieces_fixed_to(prepared, *end.arm, end.pin());
  }

  bool counts(const Obstacle& obstacle) const {
    if (std::any_of(own_.begin(), own_.end(),
                    [&](const OwnPieces& own) { return is_of(obstacle, own); }))
      return false;
    const Part& part = prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
    if (part.moves || !end_.node->held()) return true;
    const bool stands_on = seat_.reason(obstacle, 0) == SeatReason::stands_on;
    if (stands_on && goes_through(obstacle)) return false;
    const double near = nearest(end_.node->at, obstacle).distance_in;
    if (near > mount_distance_in) return true;
    const bool beside = near >= radius_in_ - rounding_in || obstacle.feature == Feature::hole_edge;
    return !(stands_on || beside) ||
           !std::all_of(zones_.begin(), zones_.end(),
                        [&](const Segment3& zone) { return leads_away(zone, obstacle, near); });
  }

 private:
  /// The piece that the pin is fixed to goes where the pin goes.
  static bool is_of(const Obstacle& obstacle, const OwnPieces& own) {
    return own.part == obstacle.part &&
           std::find(own.pieces.begin(), own.pieces.end(), obstacle.piece) != own.pieces.end();
  }

  /// The first of the wire, where its pin is there.
  void add_zone(Vec3 pin) {
    const Vec3 mouth = end_.node->at;
    const double length = distance(mouth, pin);
    if (length > rounding_in)
      zones_.push_back({mouth, between(mouth, pin, std::min(1.0, fitting_zone_in / length))});
  }

  bool goes_through(const Obstacle& obstacle) const {
    if (obstacle.is_segment || obstacle.is_disc) return false;
    const Vec3 across =
        cross(obstacle.shape.b - obstacle.shape.a, obstacle.shape.c - obstacle.shape.a);
    const double area = norm(across);
    const Vec3 normal = obstacle.is_slab ? obstacle.normal : area > 0 ? across / area : Vec3{};
    return std::abs(dot(normal, end_.out)) >= through_cosine;
  }

  /// From the first, and at the slope at which a line leaves what its fitting stands on.
  static bool leads_away(const Segment3& zone, const Obstacle& obstacle, double near_in) {
    if (nearest(zone, obstacle).distance_in < near_in - rounding_in) return false;
    const double length = distance(zone.a, zone.b);
    const double left = nearest(zone.b, obstacle).distance_in - near_in;
    return left >= least_leaving_slope * (length - mount_depth_in) - rounding_in;
  }

  const PreparedProject& prepared_;
  const CasingEnd& end_;
  FittingSeat seat_;
  double radius_in_ = 0;
  std::vector<Segment3> zones_;
  std::vector<OwnPieces> own_;
};

bool is_mover_at(const RuleContext& context, const Part& part, Vec3 pin) {
  const std::vector<Mover>& movers = context.prepared.project->structure.movers;
  return part.moves && std::any_of(movers.begin(), movers.end(), [&](const Mover& mover) {
           return mover.name == part.name && is_on(mover, pin);
         });
}

Judgement judge_wire(const RuleContext& context, const PreparedRoute& route, const CasingEnd& end,
                     const Approach& approach, const LimitRow& row, const LimitRow& overlap) {
  const Phrasing& phrasing = context.phrasing;
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(approach.obstacle->part)];
  Judgement judgement = context.at(route, end.distance_in);
  judgement.at = approach.on_line;
  judgement.with = part.name;
  const double free = approach.margin_in - context.prepared.project->build_tolerance_in;
  const std::string what = obstacle_words(part, *approach.obstacle, phrasing);
  const std::string wire = "what comes out of the casing at " + end.node->name + " ";
  if (holds(judgement, free, {overlap, row})) {
    judgement.message = wire + "is clear of " + what;
    return judgement;
  }
  const bool inside = judgement.limit == overlap.value;
  judgement.message = wire + (inside ? "can be in " : "comes too near to ") + what + ", " +
                      phrasing.length(distance(approach.on_line, end.node->at)) + " beyond it";
  judgement.mend = "move or turn the end of the casing so that the wire goes " +
                   phrasing.length_up(Limit(row).lacking(free)) + " farther off";
  if (!end.arm && is_mover_at(context, part, end.pin()))
    judgement.mend += ", or state its arm in `run_out`, if the pin turns with " + part.name;
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_run_outs(const RuleContext& context, const PreparedRoute& route,
                                      const LimitRow& overlap) {
  std::vector<Judgement> judgements;
  if (route.line->kind != LineKind::conduit) return judgements;
  const auto ends = casing_ends(route);
  if (!ends) return judgements;
  const double horizon = horizon_in + context.prepared.project->build_tolerance_in;
  for (const CasingEnd& end : *ends) {
    const WireEnd wire(context.prepared, route, end);
    const auto counts = [&](const Obstacle& obstacle, double along) {
      return wire.counts(obstacle) && !context.is_passed_over(route, along);
    };
    const auto by_part = [](const Obstacle& obstacle) { return obstacle.part; };
    std::map<int, Judgement> worst;
    for (const Stretch& stretch : context.motion.hanging[context.index_of(route)]) {
      if (!is_run_out(stretch) || stretch.swings_with != end.node) continue;
      const bool at_end = stretch.chords().front().from == end.node->at;
      for (const auto& [part, approach] : nearest_structure(
               stretch, Reach::likely, context.prepared.obstacles, horizon, by_part, counts)) {
        Judgement judged =
            judge_wire(context, route, end, approach, at_end ? run_out_at_end : run_out, overlap);
        const auto known = worst.find(part);
        if (known == worst.end() || graver(judged, known->second)) worst[part] = std::move(judged);
      }
    }
    for (auto& [part, judged] : worst) judgements.push_back(std::move(judged));
  }
  return judgements;
}

}  // namespace linewright
