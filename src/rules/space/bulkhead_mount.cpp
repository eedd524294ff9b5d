#include "rules/space/bulkhead_mount.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <variant>

#include "geometry/plane/polygon.hpp"
#include "lines/fitting_seat.hpp"
#include "model/angle.hpp"

namespace linewright {

namespace {

/// A sheet near a union, and the hole of it that the union is in.
struct UnionSheet {
  const Frame* frame = nullptr;
  int part = -1;
  double off_in = 0;  ///< of the node from its faces
  const Hole* hole = nullptr;
};

bool is_bulkhead_union(const Project& project, const Node& node) {
  if (node.kind == NodeKind::bulkhead) return true;
  const Fitting* fitting = project.catalogue.find_fitting(node.fitting);
  return fitting && fitting->kind == FittingKind::bulkhead_union;
}

/// The air line that ends there, of several the first by name: whichever the file has first, the
/// answer is the same. Or nullptr.
const PreparedRoute* air_route_at(const PreparedProject& prepared, const Node& node) {
  const PreparedRoute* first = nullptr;
  for (const PreparedRoute* route : prepared.routes_at(node))
    if (is_air(route->route->system) && (!first || route->route->name < first->route->name))
      first = route;
  return first;
}

/// From a place to the part of a hole's edge that is farthest from it.
double farthest_edge_in(const Hole& hole, Vec2 from) {
  const auto away_in = [&](Vec2 at) { return std::hypot(at.u - from.u, at.v - from.v); };
  if (const auto* circle = std::get_if<Circle>(&hole.shape))
    return away_in(circle->centre) + circle->diameter_in / 2;
  double farthest_in = 0;
  for (const Vec2 corner : std::get<std::vector<Vec2>>(hole.shape))
    farthest_in = std::max(farthest_in, away_in(corner));
  return farthest_in;
}

/// One union, its sheet and what else is near.
class UnionMount {
 public:
  UnionMount(const RuleContext& context, const Node& node, const PreparedRoute& route)
      : context_(context), prepared_(context.prepared), node_(node), route_(route) {}

  void judge(std::vector<Judgement>& judgements) {
    find_parts();
    const UnionSheet sheet = nearest_sheet();
    if (!sheet.frame) return judge_undescribed(judgements);
    if (!sheet.hole) {
      if (is_real()) judgements.push_back(without_hole(sheet));
      return;
    }
    const std::size_t before = judgements.size();
    Judgement seat = begun(sheet.part);
    if (!is_covered(sheet, seat)) judgements.push_back(seat);
    Judgement slant = begun(sheet.part);
    if (!is_square(sheet, slant)) judgements.push_back(slant);
    if (judgements.size() == before) judgements.push_back(seat);
  }

 private:
  /// Described as a thing of a size, and not as a mere place where a line is held.
  bool is_real() const { return node_.body.has_value() || !node_.fitting.empty(); }

  Judgement begun(int part) const {
    const bool start = route_.from == &node_;
    Judgement judgement = context_.at(route_, start ? 0 : route_.length_in());
    judgement.location = node_.where;
    judgement.with = prepared_.obstacles.parts()[static_cast<std::size_t>(part)].name;
    return judgement;
  }

  /// The nearest of what stands still and is no frame, within reach of a mount.
  void find_parts() {
    const auto take = [&](int part, double away_in) {
      const Part& each = prepared_.obstacles.parts()[static_cast<std::size_t>(part)];
      if (each.moves || each.kind == PartKind::fitting || each.kind == PartKind::pulley ||
          each.kind == PartKind::frame || away_in >= other_in_)
        return;
      other_ = part;
      other_in_ = away_in;
    };
    prepared_.obstacles.visit_near(
        {node_.at, node_.at}, mount_distance_in,
        [&](const Obstacle& each, bool) { take(each.part, nearest(node_.at, each).distance_in); });
  }

  UnionSheet sheet_at(const Frame& frame, int part) const {
    const Vec2 seen = frame.plane.seen(node_.at);
    UnionSheet sheet{&frame, part,
                     std::max(0.0, std::abs(frame.plane.above(node_.at)) - frame.thickness_in / 2)};
    for (const Hole& hole : frame.holes)
      if (covers(hole, seen)) sheet.hole = &hole;
    return sheet;
  }

  /// A described hole that it is in, else the web that it stands in.
  UnionSheet nearest_sheet() const {
    UnionSheet best;
    const auto take = [&](const UnionSheet& sheet) {
      const bool is_better = !best.frame || (sheet.hole && !best.hole) ||
                             (!sheet.hole == !best.hole && sheet.off_in < best.off_in);
      if (sheet.off_in <= mount_distance_in && is_better) best = sheet;
    };
    for (const Wall& wall : prepared_.walls)
      if (const UnionSheet sheet = sheet_at(wall.frame, wall.part); sheet.hole) take(sheet);
    for (const Frame& frame : prepared_.project->structure.frames) {
      const auto part = prepared_.obstacles.find_part(frame.name);
      if (!part || !covers(frame.outline, frame.plane.seen(node_.at))) continue;
      const UnionSheet sheet = sheet_at(frame, *part);
      // In a cut-out, or before a web, it may be another part, that it touches, that holds it.
      const bool is_other_nearer =
          sheet.hole ? covered_in(sheet) < 0 : other_in_ + mount_depth_in < sheet.off_in;
      if (other_in_ <= stands_in_wall_in && is_other_nearer) continue;
      take(sheet);
    }
    return best;
  }

  Judgement without_hole(const UnionSheet& sheet) const {
    Judgement judgement = begun(sheet.part);
    const Vec2 seen = sheet.frame->plane.seen(node_.at);
    const Hole* nearest = nullptr;
    for (const Hole& hole : sheet.frame->holes)
      if (!nearest || edge_distance(hole, seen) < edge_distance(*nearest, seen)) nearest = &hole;
    judgement.message = "bulkhead union " + node_.name + " stands in the web of " +
                        sheet.frame->name + ", where there is no hole";
    judgement.mend = "describe the hole that is drilled for it, with its diameter";
    if (!nearest) {
      holds_true(judgement, false, bulkhead_hole);
      return judgement;
    }
    holds(judgement, edge_distance(*nearest, seen), {bulkhead_hole});
    judgement.mend += ", or move the union into hole " + nearest->name;
    return judgement;
  }

  /// How far its body, of known size, goes past the hole's edge where it covers least of it.
  double covered_in(const UnionSheet& sheet) const {
    const double farthest_in = farthest_edge_in(*sheet.hole, sheet.frame->plane.seen(node_.at));
    const double radius_in = node_.body
                                 ? node_.body->radius_in
                                 : bulkhead_hole_width.value * route_.line->outside_diameter_in / 2;
    return radius_in - farthest_in;
  }

  /// Nothing where it is not stated.
  std::optional<double> thread_in() const {
    const Fitting* fitting = prepared_.project->catalogue.find_fitting(node_.fitting);
    if (!fitting || !fitting->thread_in) return std::nullopt;
    return fitting->thread_in->value;
  }

  double usual_thread_in() const {
    return route_.line->outside_diameter_in + bulkhead_thread_taken.value;
  }

  /// Across the hole for what sits where the union does, or so far from there as it may be built.
  double hole_at_in(const UnionSheet& sheet) const {
    const double room_in = edge_distance(*sheet.hole, sheet.frame->plane.seen(node_.at)) +
                           prepared_.project->build_tolerance_in;
    return std::min(2 * room_in, widest_circle_in(*sheet.hole));
  }

  bool is_covered(const UnionSheet& sheet, Judgement& judgement) const {
    const Phrasing& phrasing = context_.phrasing;
    const Vec2 seen = sheet.frame->plane.seen(node_.at);
    const std::string in_hole = "in hole " + sheet.hole->name + " of " + sheet.frame->name;
    const double room_in = edge_distance(*sheet.hole, seen) - route_.line->outside_diameter_in / 2;
    if (!holds(judgement, room_in, {bulkhead_room})) {
      judgement.message = "bulkhead union " + node_.name + " does not go " + in_hole;
      judgement.mend = "make the hole as wide as the union's thread, or move the union";
      return false;
    }
    const std::optional<double> thread = thread_in();
    const double over_thread_in = hole_at_in(sheet) - thread.value_or(usual_thread_in());
    if (thread && !holds(judgement, over_thread_in, {bulkhead_thread})) {
      judgement.message = "the thread of bulkhead union " + node_.name + ", " +
                          phrasing.length(*thread) + " across, does not go " + in_hole;
      judgement.mend =
          "make the hole as wide as the union's thread, or move the union to its "
          "middle";
      return false;
    }
    const double across_in = 2 * farthest_edge_in(*sheet.hole, seen);
    const bool held =
        node_.body
            ? holds(judgement, covered_in(sheet), {bulkhead_held, bulkhead_cover})
            : holds(judgement, across_in, {bulkhead_hole_width * route_.line->outside_diameter_in});
    if (held && !thread && over_thread_in < bulkhead_thread.value - limit_rounding) {
      judgement = begun(sheet.part);
      leave_unknown(judgement, bulkhead_thread_taken);
      judgement.message = "whether bulkhead union " + node_.name + " goes " + in_hole +
                          " is not known: it states no thread, and threads are wider than that";
      judgement.mend = "state the `thread` of its fitting, or make the hole " +
                       phrasing.length_up(usual_thread_in()) + " wide";
      return false;
    }
    if (held) {
      judgement.message = "bulkhead union " + node_.name + " is held by the edge of hole " +
                          sheet.hole->name + " of " + sheet.frame->name;
      return true;
    }
    judgement.message = "bulkhead union " + node_.name + " is not held " + in_hole +
                        ", whose edge is up to " + phrasing.length(across_in / 2) +
                        " from its middle";
    if (node_.body)
      judgement.message +=
          ": its body is " + phrasing.length(2 * node_.body->radius_in) + " across";
    judgement.mend =
        "make the hole as wide as the union's thread, or set a plate with such a hole "
        "on it and describe that";
    return false;
  }

  bool is_square(const UnionSheet& sheet, Judgement& judgement) const {
    if (node_.ports.empty()) return true;
    const double along = std::min(
        1.0, std::abs(dot(unit(node_.ports.front().direction), unit(sheet.frame->plane.normal))));
    const double slant_deg = std::acos(along) * degrees_per_radian;
    if (holds(judgement, slant_deg, {bulkhead_aslant, bulkhead_square})) return true;
    judgement.message = "bulkhead union " + node_.name + " is " +
                        context_.phrasing.angle(slant_deg) + " from square to " +
                        sheet.frame->name + ": its nut does not lie flat";
    judgement.mend = "turn its `direction` square to the sheet, or set it in one that is";
    return false;
  }

  /// What it stands in says nothing of a hole; a mesh cannot.
  void judge_undescribed(std::vector<Judgement>& judgements) const {
    if (other_in_ > stands_in_wall_in || !is_real()) return;
    if (prepared_.obstacles.parts()[static_cast<std::size_t>(other_)].kind == PartKind::mesh)
      return;
    Judgement judgement = begun(other_);
    leave_unknown(judgement, bulkhead_hole);
    judgement.message = "bulkhead union " + node_.name + " stands in " + *judgement.with +
                        ", which is described without a hole there";
    judgement.mend = "describe the hole that is drilled for it, with its diameter";
    judgements.push_back(std::move(judgement));
  }

  const RuleContext& context_;
  const PreparedProject& prepared_;
  const Node& node_;
  const PreparedRoute& route_;
  int other_ = -1;
  double other_in_ = std::numeric_limits<double>::infinity();
};

}  // namespace

void judge_bulkheads(const RuleContext& context, std::vector<Judgement>& judgements) {
  for (const Node& node : context.prepared.project->nodes) {
    if (!node.held() || !is_bulkhead_union(*context.prepared.project, node)) continue;
    const PreparedRoute* route = air_route_at(context.prepared, node);
    if (route && context.wants(*route)) UnionMount(context, node, *route).judge(judgements);
  }
}

}  // namespace linewright
