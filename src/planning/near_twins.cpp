#include "planning/near_twins.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

namespace linewright {

namespace {

/// A thing by the places that say where it is, and a size that its twin must have.
struct Shape {
  std::string name;
  std::vector<Vec3> places;
  double size_in = 0;
};

Vec3 mirrored(Vec3 place) {
  return {place.x, -place.y, place.z};
}

/// How far `b` is off the mirror image of `a` at the most, in the order of its places or the other
/// way round; more than `near_twin_in` where it is none.
double off_by_in(const Shape& a, const Shape& b) {
  constexpr double no_twin_in = 2 * near_twin_in;
  if (a.places.size() != b.places.size() || a.size_in != b.size_in) return no_twin_in;
  const auto most = [&](auto begin) {
    double worst_in = 0;
    for (const Vec3 place : a.places) {
      worst_in = std::max(worst_in, distance(mirrored(place), *begin));
      if (worst_in > near_twin_in) return no_twin_in;
      ++begin;
    }
    return worst_in;
  };
  return std::min(most(b.places.begin()), most(b.places.rbegin()));
}

bool is_left(const Shape& shape) {
  return std::all_of(shape.places.begin(), shape.places.end(),
                     [](Vec3 place) { return place.y < 0; });
}

bool is_right(const Shape& shape) {
  return std::all_of(shape.places.begin(), shape.places.end(),
                     [](Vec3 place) { return place.y > 0; });
}

/// Asks about the pairs of one kind.
void ask(std::string_view kind, const std::vector<Shape>& shapes, double tolerance_in,
         std::vector<std::string>& questions) {
  for (const Shape& left : shapes) {
    if (left.places.empty() || !is_left(left)) continue;
    const Shape* nearest = nullptr;
    double least_in = near_twin_in;
    for (const Shape& right : shapes) {
      if (right.places.empty() || !is_right(right)) continue;
      const double off_in = off_by_in(left, right);
      if (off_in >= least_in) continue;
      least_in = off_in;
      nearest = &right;
    }
    if (nearest == nullptr || least_in <= tolerance_in) continue;
    questions.push_back(
        fmt::format("{} {} and {} are each other's mirror image but for {:.3f} in: a slip of the "
                    "tape, or a part that goes on one way round only?",
                    kind, left.name, nearest->name, least_in));
  }
}

}  // namespace

std::vector<std::string> near_twins(const Project& project) {
  const double tolerance_in = project.build_tolerance_in;
  std::vector<std::string> questions;
  std::vector<Shape> shapes;
  for (const Node& node : project.nodes) shapes.push_back({node.name, {node.at}});
  ask("nodes", shapes, tolerance_in, questions);
  for (const Frame& frame : project.structure.frames) {
    shapes.clear();
    for (const Hole& hole : frame.holes)
      if (const auto* circle = std::get_if<Circle>(&hole.shape))
        shapes.push_back({hole.name, {frame.plane.in_space(circle->centre)}, circle->diameter_in});
    ask("holes", shapes, tolerance_in, questions);
  }
  shapes.clear();
  for (const Channel& channel : project.structure.channels)
    shapes.push_back({channel.name, channel.path});
  ask("channels", shapes, tolerance_in, questions);
  shapes.clear();
  for (const Panel& panel : project.structure.panels) shapes.push_back({panel.name, panel.corners});
  ask("panels", shapes, tolerance_in, questions);
  return questions;
}

}  // namespace linewright
