#include "planning/cutlist.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "model/angle.hpp"
#include "model/placement.hpp"
#include "planning/cable_cut.hpp"

namespace linewright {
namespace {

/// Rotations this near to nothing or to half a turn are just that: what is left is rounding.
constexpr double rotation_rounding_deg = 1e-9;

/// In (-180, 180], with rounding about 0 and ±180 taken off.
double tidy_rotation_deg(double rotation_deg) {
  if (std::abs(rotation_deg) < rotation_rounding_deg) return 0;
  if (std::abs(rotation_deg) > 180 - rotation_rounding_deg) return 180;
  return rotation_deg;
}

/// Corner to start of arc. A full reversal has no arc and claims no straight.
double tangent_in(const BendStep& bend) {
  const double angle_rad = bend.angle_deg / degrees_per_radian;
  if (angle_rad > std::numbers::pi - Centreline::reversal_within_rad) return 0;
  return bend.radius_in * std::tan(angle_rad / 2);
}

/// Normal of the plane a corner bends in; `fallback` where a reversal leaves it open.
Vec3 bend_normal(Vec3 before, Vec3 after, Vec3 fallback) {
  const Vec3 normal = cross(before, after);
  return norm(normal) > Centreline::reversal_within_rad ? unit(normal) : fallback;
}

BendStep bend_step(const Bend& bend, Vec3 at) {
  BendStep step;
  step.at = at;
  step.distance_in = bend.middle_in();
  step.radius_in = bend.drawn_radius_in;
  step.angle_deg = bend.angle_rad * degrees_per_radian;
  step.straight_before_in = bend.straight_before_in;
  step.mark_start_in = bend.start_in;
  step.mark_end_in = bend.end_in;
  return step;
}

/// Fills in the bends and the straight after them. Sharp corners are not bent, so the straights on
/// both sides of one count as one.
void add_schedule(RouteCut& cut, const Centreline& centreline) {
  const std::vector<PathCorner>& corners = centreline.corners();
  Vec3 last_normal;
  double unbent_in = 0;
  for (const Bend& bend : centreline.bends()) {
    if (bend.drawn_radius_in <= 0) {
      unbent_in += bend.straight_before_in;
      continue;
    }
    const auto corner = static_cast<std::size_t>(bend.corner);
    const Vec3 before = unit(corners[corner].at - corners[corner - 1].at);
    const Vec3 after = unit(corners[corner + 1].at - corners[corner].at);
    const Vec3 normal = bend_normal(before, after, last_normal);
    BendStep step = bend_step(bend, corners[corner].at);
    step.straight_before_in += unbent_in;
    // The bend plane turns this way about the line as it runs from `from` to `to`. The bender's
    // plane stands still, so it is the tube that turns, the other way: by the same hand about the
    // way back to `from`, the end that goes through the bender first.
    if (!cut.bends.empty())
      step.rotation_deg =
          tidy_rotation_deg(degrees_per_radian * std::atan2(dot(cross(last_normal, normal), before),
                                                            dot(last_normal, normal)));
    cut.bends.push_back(step);
    last_normal = normal;
    unbent_in = 0;
  }
  cut.straight_after_in = centreline.straight_after_in() + unbent_in;
  for (const Bend& bend : centreline.bends())
    if (bend.slight) cut.straightened.push_back(bend.corner);
}

/// What the line goes into its fittings past their faces.
double inserted_in(const PreparedRoute& prepared) {
  double inserted = 0;
  for (const Port* port : {prepared.from_port, prepared.to_port})
    if (port) inserted += port->insertion_in;
  return inserted;
}

/// A hose as the builder states it and a cable by its ends, where they say so.
double cut_length_in(const PreparedRoute& prepared) {
  const Line& line = *prepared.line;
  const double with_allowance =
      prepared.length_in() + inserted_in(prepared) + line.cut_allowance_in;
  if (line.kind == LineKind::hose) return prepared.route->length_in.value_or(with_allowance);
  if (line.kind == LineKind::cable)
    return cable_cut(prepared, 0).cut_length_in.value_or(with_allowance);
  return with_allowance;
}

/// What hangs beyond the drawing at ends that are loose for now.
double coiled_in(const PreparedRoute& prepared) {
  double coiled = 0;
  for (const Node* node : {prepared.from, prepared.to})
    if (node->loose) coiled += node->loose->coil_in;
  return coiled;
}

RouteCut route_cut(const PreparedRoute& prepared) {
  const Route& route = *prepared.route;
  const Line& line = *prepared.line;
  const double bore_in = line.inside_diameter_in;
  RouteCut cut;
  cut.name = route.name;
  cut.system = route.system_name;
  cut.line = line.name;
  cut.rigid = line.kind == LineKind::rigid_tube;
  cut.cable = line.kind == LineKind::cable;
  cut.casing = line.kind == LineKind::conduit;
  cut.length_in = prepared.length_in() + coiled_in(prepared);
  cut.cut_length_in = cut_length_in(prepared) + coiled_in(prepared);
  if (line.kind != LineKind::rod)
    cut.volume_in3 = std::numbers::pi / 4 * bore_in * bore_in * cut.length_in;
  if (line.weight_lb_per_in) cut.mass_lb = line.weight_lb_per_in->value * cut.length_in;
  if (const auto& out = route.run_out; out && cut.casing)
    cut.wire_length_in = cut.length_in + out->from_in + out->to_in;
  if (line.minimum_bend_radius_in) cut.minimum_bend_radius_in = line.minimum_bend_radius_in->value;
  add_schedule(cut, prepared.centreline);
  return cut;
}

/// Systems as they are met, each node counted once in each.
class SystemTally {
 public:
  void add(const PreparedRoute& prepared, const RouteCut& cut) {
    Entry& entry = entry_for(cut.system);
    entry.cut.length_in += cut.length_in;
    if (!is_air(prepared.route->system)) return;
    entry.cut.volume_in3 += cut.volume_in3;
    for (const Node* node : {prepared.from, prepared.to}) add_node(entry, *node);
  }

  std::vector<SystemCut> systems() const {
    std::vector<SystemCut> systems;
    for (const Entry& entry : entries_) systems.push_back(entry.cut);
    return systems;
  }

 private:
  struct Entry {
    SystemCut cut;
    std::set<const Node*> counted;
  };

  Entry& entry_for(const std::string& name) {
    const auto [found, is_new] = place_of_.emplace(name, entries_.size());
    if (!is_new) return entries_[found->second];
    entries_.push_back({});
    entries_.back().cut.name = name;
    return entries_.back();
  }

  static void add_node(Entry& entry, const Node& node) {
    if (!entry.counted.insert(&node).second) return;
    if (node.volume_in3)
      entry.cut.volume_in3 += *node.volume_in3;
    else if (node.kind == NodeKind::instrument || node.kind == NodeKind::tee ||
             node.kind == NodeKind::valve)
      entry.cut.nodes_without_volume.push_back(node.name);
  }

  std::vector<Entry> entries_;
  std::map<std::string, std::size_t> place_of_;
};

}  // namespace

std::string straightened_words(const RouteCut& cut) {
  if (cut.straightened.empty()) return {};
  return fmt::format(
      "straight at its {} {}: a straight line misses {} by less than the build tolerance",
      cut.straightened.size() == 1 ? "point" : "points", fmt::join(cut.straightened, ", "),
      cut.straightened.size() == 1 ? "it" : "them");
}

CutList cut_list(const PreparedProject& prepared) {
  CutList list;
  SystemTally tally;
  for (const PreparedRoute& route : prepared.routes) {
    list.routes.push_back(route_cut(route));
    tally.add(route, list.routes.back());
  }
  list.systems = tally.systems();
  return list;
}

std::vector<Vec3> corners_from_schedule(const RouteCut& cut, Vec3 start, Vec3 direction,
                                        Vec3 first_bend_towards) {
  std::vector<Vec3> corners{start};
  Vec3 along = unit(direction);
  double last_tangent_in = 0;
  const auto advance = [&](double straight_in, double next_tangent_in) {
    corners.push_back(corners.back() + along * (last_tangent_in + straight_in + next_tangent_in));
    last_tangent_in = next_tangent_in;
  };
  Vec3 normal = cut.bends.empty() ? Vec3{} : unit(cross(direction, first_bend_towards));
  for (const BendStep& bend : cut.bends) {
    advance(bend.straight_before_in, tangent_in(bend));
    normal = turned(along, bend.rotation_deg).apply(normal);
    along = turned(normal, bend.angle_deg).apply(along);
  }
  advance(cut.straight_after_in, 0);
  return corners;
}

}  // namespace linewright
