#pragma once
// What can be wrong with the corners of a polygon in a project file. Looks at the numbers as the
// builder wrote them, so that the fault can be told at its corner.

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "model/vector.hpp"

namespace linewright {

/// More corners than a drawn outline can sensibly have.
inline constexpr std::size_t most_corners = 10'000;

struct OutlineFault {
  std::string words;
  std::optional<std::size_t> corner;  ///< index of the corner to point at; none: the whole outline
};

/// The first fault of a closed plane polygon (last corner joins the first): fewer than three
/// corners, two neighbours at one place, an edge that doubles back or meets another, no area.
/// Nothing where a corner is NaN.
std::optional<OutlineFault> outline_fault(const std::vector<Vec2>& corners);

/// The same for a polygon in space. Edges are looked at only where the corners lie in one plane:
/// a curved skin has no plane to cross itself in.
std::optional<OutlineFault> panel_fault(const std::vector<Vec3>& corners);

/// The first fault of an open path: fewer than two points, or two neighbours at one place.
std::optional<OutlineFault> path_fault(const std::vector<Vec3>& points);
std::optional<OutlineFault> path_fault(const std::vector<Vec2>& points);

/// True inside the closed polygon, or within a rounding error of its edge. False where a corner is
/// NaN.
bool outline_covers(const std::vector<Vec2>& outline, Vec2 point);

}  // namespace linewright
