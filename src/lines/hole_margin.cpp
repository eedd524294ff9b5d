#include "lines/hole_margin.hpp"

#include <algorithm>
#include <limits>
#include <optional>

#include "geometry/plane/hole_web.hpp"
#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

/// Edges nearer than this touch.
constexpr double touching_in = 1e-6;

/// A hole by its extents: most pairs are told apart by these.
struct Extents {
  Vec2 low;
  Vec2 high;
  /// Never more than there is between the two holes.
  double least_to(const Extents& other) const {
    return std::max(
        {other.low.u - high.u, low.u - other.high.u, other.low.v - high.v, low.v - other.high.v});
  }
};

Extents extents_of(const Hole& hole) {
  if (const auto* circle = std::get_if<Circle>(&hole.shape)) {
    const Vec2 by{circle->diameter_in / 2, circle->diameter_in / 2};
    return {circle->centre - by, circle->centre + by};
  }
  const auto& corners = std::get<std::vector<Vec2>>(hole.shape);
  Extents extents{corners.front(), corners.front()};
  for (const Vec2 corner : corners) {
    extents.low = {std::min(extents.low.u, corner.u), std::min(extents.low.v, corner.v)};
    extents.high = {std::max(extents.high.u, corner.u), std::max(extents.high.v, corner.v)};
  }
  return extents;
}

HoleMargin to_edge(const Frame& frame, const Hole& hole) {
  return {&hole, nullptr, web_to_edge_in(frame.outline, hole), leaves(frame.outline, hole)};
}

HoleMargin margin_between(const Hole& hole, const Hole& other) {
  const double web = web_between_in(hole, other);
  return {&hole, &other, web, web <= touching_in};
}

/// True where the pair is there the other way round.
bool is_listed(const std::vector<HoleMargin>& margins, const HoleMargin& pair) {
  return std::any_of(margins.begin(), margins.end(), [&](const HoleMargin& each) {
    return each.hole == pair.other && each.other == pair.hole;
  });
}

}  // namespace

std::vector<HoleMargin> hole_margins(const Frame& frame, double within_in) {
  std::vector<Extents> extents;
  for (const Hole& hole : frame.holes) extents.push_back(extents_of(hole));
  std::vector<HoleMargin> margins;
  for (std::size_t i = 0; i < frame.holes.size(); ++i) {
    margins.push_back(to_edge(frame, frame.holes[i]));
    std::optional<HoleMargin> nearest;
    for (std::size_t j = 0; j < frame.holes.size(); ++j) {
      const double at_least = extents[i].least_to(extents[j]);
      if (i == j || (at_least > within_in && nearest && at_least > nearest->web_in)) continue;
      const HoleMargin margin = margin_between(frame.holes[i], frame.holes[j]);
      if (margin.web_in < within_in && i < j) margins.push_back(margin);
      if (!nearest || margin.web_in < nearest->web_in) nearest = margin;
    }
    const bool told = nearest && (nearest->web_in < within_in || is_listed(margins, *nearest));
    if (nearest && !told) margins.push_back(*nearest);
  }
  return margins;
}

HoleMargin least_margin(const Frame& frame, const Hole& hole) {
  HoleMargin least = to_edge(frame, hole);
  for (const Hole& other : frame.holes) {
    if (&other == &hole) continue;
    const HoleMargin margin = margin_between(hole, other);
    if (margin.web_in < least.web_in) least = margin;
  }
  return least;
}

Vec2 middle_of(const Hole& hole) {
  const Extents extents = extents_of(hole);
  return (extents.low + extents.high) * 0.5;
}

}  // namespace linewright
