#pragma once
// What was measured on the aeroplane itself: where a line was really led, and how near it passes to
// something.

#include <optional>
#include <string>

#include "model/source.hpp"
#include "model/vector.hpp"

namespace linewright {

/// One measure. It is of one place of a route: of what holds the line there, of the node at one of
/// its ends, or of a distance along it as drawn. Measured was either where it is, or a gap.
struct Measurement {
  /// What `of` is where it is not an index into the route's points.
  static constexpr int from_node = -1;
  static constexpr int to_node = -2;
  static constexpr int a_distance = -3;

  std::string route;
  std::string support;  ///< as written: its number or its name; empty for a distance
  int of = a_distance;  ///< the point of the route, as drawn, or a node, or a distance
  std::optional<double> distance_in;  ///< along the route as drawn, where that was stated

  std::optional<Vec3> at;
  std::optional<double> fs_in;   ///< it sits where the drawn line has this station
  std::optional<double> gap_in;  ///< free distance between two surfaces
  std::string to;                ///< gap: the part, hole or route on its other side; empty: nearest

  std::string on;  ///< the day: "2026-11-20"
  std::string by;  ///< who measured, by initials
  SourceLocation where;

  bool is_place() const { return !gap_in; }

  friend bool operator==(const Measurement&, const Measurement&) = default;
};

/// What of a measure is told beside what is judged by it.
struct Measured {
  double value = 0;  ///< in the judgement's unit, no tolerance taken off
  std::string on;
  std::string by;

  friend bool operator==(const Measured&, const Measured&) = default;
};

}  // namespace linewright
