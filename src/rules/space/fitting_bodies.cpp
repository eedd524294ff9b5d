#include "rules/space/fitting_bodies.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "geometry/plane/polygon.hpp"
#include "lines/fitting_seat.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

/// Parts farther than this are no neighbours and are not listed.
constexpr double horizon_in = 1.5;
constexpr double rounding_in = 1e-6;

/// What of a part is nearest to a body.
struct Near {
  double gap_in = std::numeric_limits<double>::infinity();
  Obstacle obstacle;
  Vec3 at;
};

class BodySurvey {
 public:
  BodySurvey(const PreparedProject& prepared, const NodeFitting& fitting)
      : prepared_(prepared), fitting_(fitting) {
    find_mounts();
    for (const Segment3& leg : fitting_.legs) look_about(leg);
  }

  /// By part.
  const std::map<int, Near>& near() const { return near_; }

 private:
  const Node& node() const { return *fitting_.node; }

  /// What may hold a fitting: nothing that moves, and no other fitting.
  bool holds_still(int part) const {
    const Part& each = part_of(part);
    return !each.moves && each.kind != PartKind::fitting && each.kind != PartKind::pulley;
  }

  const Part& part_of(int part) const {
    return prepared_.obstacles.parts()[static_cast<std::size_t>(part)];
  }

  Bounds about_node() const {
    const Vec3 by{mount_distance_in, mount_distance_in, mount_distance_in};
    return {node().at - by, node().at + by};
  }

  /// A fitting in a hole is as far from that sheet as from its plane, not as from the hole's edge.
  void take_hole(const Frame& sheet, int part) {
    const double off_in =
        std::max(0.0, std::abs(sheet.plane.above(node().at)) - sheet.thickness_in / 2);
    if (off_in > mount_distance_in) return;
    for (const Hole& hole : sheet.holes)
      if (covers(hole, sheet.plane.seen(node().at))) take_near(part, off_in);
  }

  void take_near(int part, double distance_in) {
    const auto [known, is_new] = parts_near_in_.try_emplace(part, distance_in);
    known->second = std::min(known->second, distance_in);
  }

  void find_parts_near() {
    prepared_.obstacles.visit(about_node(), [&](const Obstacle& each) {
      if (holds_still(each.part)) take_near(each.part, nearest(node().at, each).distance_in);
    });
    for (const MeshPartField& mesh : prepared_.obstacles.meshes()) {
      const double within_in = mount_distance_in + mesh.field->mesh().thickness_in / 2;
      const auto cells = mesh.field->cells_near({node().at, node().at}, within_in);
      if (cells.empty()) continue;
      mesh.field->visit_within({node().at, node().at}, within_in, cells,
                               [&](const MeshItem& item, double) {
                                 const Obstacle each = obstacle_of(mesh, item);
                                 take_near(each.part, nearest(node().at, each).distance_in);
                                 return within_in;
                               });
    }
    for (const Frame& frame : prepared_.project->structure.frames)
      if (const auto part = prepared_.obstacles.find_part(frame.name)) take_hole(frame, *part);
    for (const Wall& wall : prepared_.walls) take_hole(wall.frame, wall.part);
  }

  /// The structure nearest to a node that it holds is what the fitting is mounted on, with skins
  /// and doublers that lie on that. What else is near is in its way.
  void find_mounts() {
    if (!node().held()) return;
    find_parts_near();
    double least_in = mount_distance_in;
    for (const auto& [part, distance_in] : parts_near_in_)
      least_in = std::min(least_in, distance_in);
    for (const auto& [part, distance_in] : parts_near_in_) {
      const double depth_in = part_of(part).kind == PartKind::solid ? rounding_in : mount_depth_in;
      if (distance_in <= std::min(least_in + depth_in, mount_distance_in)) mounts_.push_back(part);
    }
  }

  bool is_mount(const Obstacle& obstacle, bool of_mesh) const {
    if (of_mesh)
      return node().held() && nearest(node().at, obstacle).distance_in <= mount_distance_in;
    return std::find(mounts_.begin(), mounts_.end(), obstacle.part) != mounts_.end();
  }

  /// Each pair of fittings once: the later of the two speaks.
  bool counts(const Obstacle& obstacle, bool of_mesh) const {
    const NodeFitting* other = prepared_.fitting_of(obstacle.part);
    if (other) return other < &fitting_;
    return !is_mount(obstacle, of_mesh);
  }

  void consider(const Segment3& leg, const Obstacle& obstacle, bool of_mesh) {
    const Nearest found = nearest(leg, obstacle);
    const double gap_in = found.distance_in - fitting_.body.radius_in;
    if (gap_in > horizon_in || !counts(obstacle, of_mesh)) return;
    Near& known = near_[obstacle.part];
    if (gap_in < known.gap_in) known = {gap_in, obstacle, found.on_first};
  }

  void look_about(const Segment3& leg) {
    const double within_in = fitting_.body.radius_in + horizon_in;
    const Bounds box = bounds_of(Triangle3{leg.a, leg.b, leg.b});
    prepared_.obstacles.visit(grown(box, within_in),
                              [&](const Obstacle& each) { consider(leg, each, false); });
    for (const MeshPartField& mesh : prepared_.obstacles.meshes()) {
      const double reach_in = within_in + mesh.field->mesh().thickness_in / 2;
      const auto cells = mesh.field->cells_near(box, reach_in);
      if (cells.empty()) continue;
      mesh.field->visit_within(leg, reach_in, cells, [&](const MeshItem& item, double) {
        consider(leg, obstacle_of(mesh, item), true);
        return reach_in;
      });
    }
  }

  const PreparedProject& prepared_;
  const NodeFitting& fitting_;
  std::map<int, double> parts_near_in_;  ///< by part, from the node
  std::vector<int> mounts_;
  std::map<int, Near> near_;
};

/// On the route whose end the fitting is, so that it can be waived there.
Judgement begun(const RuleContext& context, const NodeFitting& fitting) {
  const PreparedRoute* route = route_at(context.prepared, *fitting.node);
  if (!route) return context.about(fitting.node->name, fitting.node->where);
  Judgement judgement = context.at(*route, route->from == fitting.node ? 0 : route->length_in());
  judgement.location = fitting.node->where;
  return judgement;
}

Judgement judge_gap(const RuleContext& context, const NodeFitting& fitting, const Near& near) {
  const Part& part =
      context.prepared.obstacles.parts()[static_cast<std::size_t>(near.obstacle.part)];
  Judgement judgement = begun(context, fitting);
  judgement.with = part.name;
  judgement.at = near.at;
  const double free_in = near.gap_in - context.prepared.project->build_tolerance_in;
  const std::string what = obstacle_words(part, near.obstacle, context.phrasing);
  const std::string who = "the fitting at " + fitting.node->name;
  if (holds(judgement, free_in, {fitting_overlap})) {
    judgement.message = who + " stands clear of " + what;
    return judgement;
  }
  judgement.message = who + " can be in " + what;
  judgement.mend = "move or turn the fitting by " +
                   context.phrasing.length_up(Limit(fitting_overlap).lacking(free_in)) +
                   ", or cut a hole for it";
  if (!fitting.node->held()) judgement.mend += "; `fixed: true` if it is mounted there";
  return judgement;
}

bool is_passed_over(const RuleContext& context, const NodeFitting& fitting) {
  const PreparedRoute* route = route_at(context.prepared, *fitting.node);
  return route &&
         context.is_passed_over(*route, route->from == fitting.node ? 0 : route->length_in());
}

}  // namespace

const PreparedRoute* route_at(const PreparedProject& prepared, const Node& node) {
  for (const PreparedRoute& route : prepared.routes)
    if (route.from == &node || route.to == &node) return &route;
  return nullptr;
}

bool is_of_a_line(const PreparedProject& prepared, const Obstacle& obstacle) {
  const NodeFitting* fitting = prepared.fitting_of(obstacle.part);
  return fitting && route_at(prepared, *fitting->node) != nullptr;
}

std::vector<Judgement> judge_fitting_bodies(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const NodeFitting& fitting : context.prepared.fittings) {
    if (is_passed_over(context, fitting)) continue;
    const BodySurvey survey(context.prepared, fitting);
    const Near* nearest_free = nullptr;
    bool stands_free = true;
    for (const auto& [part, near] : survey.near()) {
      Judgement judgement = judge_gap(context, fitting, near);
      if (judgement.verdict != Verdict::pass) {
        stands_free = false;
        judgements.push_back(std::move(judgement));
      }
      if (!nearest_free || near.gap_in < nearest_free->gap_in) nearest_free = &near;
    }
    if (stands_free && nearest_free)
      judgements.push_back(judge_gap(context, fitting, *nearest_free));
  }
  return judgements;
}

}  // namespace linewright
