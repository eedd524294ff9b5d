#include "rules/cable/end_beyond.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/plane/polygon.hpp"
#include "lines/arm_swing.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

namespace {

/// No fork, eye or shackle of a control cable is wider about its pin [common practice, no source].
constexpr double widest_end_in = 1;
/// What is attached no farther from the pin than this is what takes hold of the cable
/// [common practice, no source].
constexpr double attached_at_end_in = 1;

/// How an end goes past the place it is drawn at.
struct EndBeyond {
  const RuleContext& context;
  const PreparedRoute& route;
  RouteEnd which;
  Vec3 out;  ///< where its arm takes it

  const Node& node() const { return which == RouteEnd::from ? *route.from : *route.to; }

  /// Of what is drawn there as attached; 0 for nothing.
  double thickness_in() const {
    double thickness = 0;
    for (const Attachment& each : route.route->attached) {
      const double middle = which == RouteEnd::from ? each.at_in : route.length_in() - each.at_in;
      if (middle - each.longest_in() / 2 <= attached_at_end_in)
        thickness = std::max(thickness, each.diameter_in);
    }
    return thickness;
  }

  /// Nothing where its middle does not go through the hole.
  std::optional<Judgement> through(const Frame& frame, const Hole& hole) const {
    const double here = frame.plane.above(node().at);
    const double there = frame.plane.above(out);
    if (here * there >= 0) return std::nullopt;
    const Vec2 seen = frame.plane.seen(between(node().at, out, here / (here - there)));
    if (!covers(hole, seen)) return std::nullopt;
    return judged(hole, edge_distance(hole, seen));
  }

 private:
  Judgement judged(const Hole& hole, double room_in) const {
    Judgement judgement = context.at(route, which == RouteEnd::from ? 0 : route.length_in());
    judgement.with = hole.name;
    judgement.location = which == RouteEnd::from ? route.route->from_where : route.route->to_where;
    const Phrasing& phrasing = context.phrasing;
    const std::string end = "the end at " + node().name + ", past the place it is drawn at, ";
    const double thickness = thickness_in();
    if (thickness > 0 || room_in >= widest_end_in) {
      const double half_in = thickness > 0 ? thickness / 2 : widest_end_in;
      const bool goes = holds(judgement, room_in - half_in, {jam_limit});
      judgement.message = end + (goes ? "goes through hole " : "runs into the edge of hole ") +
                          hole.name + " at full travel";
      if (!goes)
        judgement.mend = "make the hole " + phrasing.length_up(half_in - room_in) +
                         " or more wider to that side, or move what the cable ends on";
      return judgement;
    }
    leave_unknown(judgement, jam_limit);
    judgement.message = "whether " + end + "goes through hole " + hole.name +
                        " at full travel is not known: how thick it is is not stated";
    judgement.mend = "state what is on the cable at " + node().name +
                     " under attached: its kind, at, length and diameter";
    return judgement;
  }
};

void judge_holes(const EndBeyond& end, std::vector<Judgement>& judgements) {
  const PreparedProject& prepared = end.context.prepared;
  const auto judge = [&](const Frame& frame) {
    for (const Hole& hole : frame.holes)
      if (auto judgement = end.through(frame, hole)) judgements.push_back(*std::move(judgement));
  };
  for (const Frame& frame : prepared.project->structure.frames) judge(frame);
  for (const Wall& wall : prepared.walls) judge(wall.frame);
}

}  // namespace

std::vector<Judgement> judge_ends_beyond(const RuleContext& context, const PreparedRoute& route) {
  std::vector<Judgement> judgements;
  for (const RouteEnd which : {RouteEnd::from, RouteEnd::to}) {
    const auto swing = arm_swing(route, which);
    if (!swing || !swing->reaches) continue;
    const Vec3 out = which == RouteEnd::from ? swing->toward_from : swing->toward_to;
    judge_holes({context, route, which, out}, judgements);
  }
  return judgements;
}

}  // namespace linewright
