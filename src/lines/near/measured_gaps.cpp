#include "lines/near/measured_gaps.hpp"

#include <algorithm>
#include <cmath>

#include "lines/edge_gap.hpp"
#include "lines/line_pairs.hpp"
#include "lines/near/nearest_lines.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/neighbour_filter.hpp"

namespace linewright {

namespace {

/// What a gap is measured to is looked for so far to both sides along the line.
constexpr double half_place_in = 0.05;
/// And no farther from it than this where it is named.
constexpr double named_within_in = 24.0;
/// A hole's edge is what is nearest where the line is this near to the hole.
constexpr double at_hole_in = 0.5;

/// Looks for what stands on the other side of one gap.
class OtherSide {
 public:
  OtherSide(const PreparedProject& prepared, const PreparedRoute& route, MeasuredGap& gap)
      : prepared_(prepared), route_(route), gap_(gap), here_(place_of(route, gap.distance_in)) {}

  /// By its name: the names of parts come first, then those of holes and routes.
  void find_named() {
    const std::string& name = gap_.measured->to;
    const auto named = [&](const Obstacle& obstacle, double) {
      return part_of(obstacle).name == name;
    };
    const std::vector<Part>& parts = prepared_.obstacles.parts();
    if (std::any_of(parts.begin(), parts.end(),
                    [&](const Part& part) { return part.name == name; })) {
      consider_structure(named_within_in, named);
      return;
    }
    if (const PreparedRoute* line = prepared_.find_route(name)) {
      gap_.line = line;
      consider_line(*line, named_within_in, [](double, double) { return true; });
    }
    for (const Crossing& crossing : route_.crossings)
      if (crossing.hole && crossing.name() == name) consider_hole(crossing);
  }

  /// What is drawn nearest, as far as it counts as a neighbour there.
  void find_nearest() {
    const NeighbourFilter filter(prepared_, route_);
    consider_structure(measured_to_within_in, [&](const Obstacle& obstacle, double along) {
      return filter.counts(obstacle, along) && !filter.crossing_near(obstacle, along);
    });
    for (const PreparedRoute& line : prepared_.routes)
      if (&line != &route_)
        consider_line(line, measured_to_within_in, [&](double along, double other_along) {
          return !at_shared_node(route_, along, line, other_along);
        });
    for (const Crossing& crossing : route_.crossings)
      if (crossing.hole && std::abs(crossing.distance_in - gap_.distance_in) <= at_hole_in)
        consider_hole(crossing);
  }

 private:
  static Stretch place_of(const PreparedRoute& route, double distance_in) {
    return make_stretch(route, std::max(0.0, distance_in - half_place_in),
                        std::min(route.length_in(), distance_in + half_place_in));
  }

  const Part& part_of(const Obstacle& obstacle) const {
    return prepared_.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
  }

  /// True where it is nearer than what was found before.
  bool take(const Approach& approach) {
    if (gap_.drawn && gap_.drawn->gap_in <= approach.gap_in) return false;
    gap_.drawn = approach;
    gap_.part = nullptr;
    gap_.hole = nullptr;
    gap_.line = nullptr;
    return true;
  }

  void consider_structure(double within_in, const Counts& counts) {
    for (const auto& [group, approach] : nearest_structure(
             here_, Reach::none, prepared_.obstacles, within_in, [](const Obstacle&) { return 0; },
             counts))
      if (take(approach)) gap_.part = &part_of(*approach.obstacle);
  }

  void consider_line(const PreparedRoute& line, double within_in, const CountsPair& counts) {
    const Stretch whole = make_stretch(line, 0, line.length_in());
    const auto approach = nearest_lines(here_, whole, Reach::none, within_in, counts);
    if (approach && take(*approach)) gap_.line = &line;
  }

  void consider_hole(const Crossing& crossing) {
    const EdgeGap edge = edge_gap(route_, crossing);
    Approach approach;
    approach.distance_in = edge.along_in;
    approach.on_line = route_.centreline.at(edge.along_in);
    approach.gap_in = edge.distance_in - route_.radius_in(edge.along_in);
    approach.margin_in = approach.gap_in;
    if (take(approach)) gap_.hole = &crossing;
  }

  const PreparedProject& prepared_;
  const PreparedRoute& route_;
  MeasuredGap& gap_;
  Stretch here_;
};

}  // namespace

std::string MeasuredGap::other() const {
  if (part) return part->name;
  if (hole) return hole->name();
  if (line) return line->route->name;
  return measured->to;
}

std::vector<MeasuredGap> measured_gaps(const PreparedProject& prepared,
                                       const PreparedRoute& route) {
  std::vector<MeasuredGap> gaps;
  for (const Measurement& measured : prepared.project->built) {
    if (!measured.gap_in || measured.route != route.route->name) continue;
    MeasuredGap& gap = gaps.emplace_back();
    gap.measured = &measured;
    gap.distance_in = route.built_distance_in(measured.distance_in.value_or(0));
    OtherSide other(prepared, route, gap);
    if (measured.to.empty())
      other.find_nearest();
    else
      other.find_named();
  }
  return gaps;
}

}  // namespace linewright
