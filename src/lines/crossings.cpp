#include "lines/crossings.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

/// Two solutions nearer than this are one passage met by two neighbouring pieces.
constexpr double same_crossing_in = 1e-7;

void cross_straight(const PathPiece& piece, const DrawnPlane& plane, std::vector<double>& found) {
  const double before = plane.above(piece.from);
  const double after = plane.above(piece.to);
  if (before * after > 0 || before == after) return;
  found.push_back(piece.start_in + piece.length_in * before / (before - after));
}

/// On an arc a place is centre + r (cos θ e1 + sin θ e2): A cos θ + B sin θ = C has up to two
/// solutions.
void cross_arc(const PathPiece& piece, const DrawnPlane& plane, std::vector<double>& found) {
  const Vec3 outward = (piece.from - piece.centre) / piece.radius_in;
  const double a = piece.radius_in * dot(outward, plane.normal);
  const double b = piece.radius_in * dot(piece.direction, plane.normal);
  const double c = -plane.above(piece.centre);
  const double amplitude = std::hypot(a, b);
  if (amplitude < std::abs(c) || amplitude == 0) return;
  const double phase = std::atan2(b, a);
  const double swing = std::acos(std::clamp(c / amplitude, -1.0, 1.0));
  const double whole = piece.length_in / piece.radius_in;
  const double slack = same_crossing_in / piece.radius_in;
  for (const double root : {phase - swing, phase + swing}) {
    double theta = std::fmod(root, 2 * std::numbers::pi);
    if (theta < -slack) theta += 2 * std::numbers::pi;
    if (theta <= whole + slack)
      found.push_back(piece.start_in + std::clamp(theta, 0.0, whole) * piece.radius_in);
  }
}

}  // namespace

const Hole* overlapped_by(const Frame& frame, const Hole& hole) {
  const auto other = std::find_if(frame.holes.begin(), frame.holes.end(), [&](const Hole& each) {
    return &each != &hole && overlap(each, hole);
  });
  return other == frame.holes.end() ? nullptr : &*other;
}

std::vector<double> plane_crossings(const Centreline& centreline, const DrawnPlane& plane) {
  std::vector<double> found;
  for (const PathPiece& piece : centreline.pieces()) {
    if (piece.is_arc)
      cross_arc(piece, plane, found);
    else
      cross_straight(piece, plane, found);
  }
  std::sort(found.begin(), found.end());
  std::vector<double> kept;
  for (const double distance : found) {
    if (distance < same_crossing_in || distance > centreline.length_in() - same_crossing_in)
      continue;
    if (kept.empty() || distance - kept.back() > same_crossing_in) kept.push_back(distance);
  }
  return kept;
}

std::vector<Crossing> find_crossings(const Centreline& centreline,
                                     const std::vector<Frame>& frames) {
  return find_crossings(centreline, frames, {});
}

std::vector<Crossing> find_crossings(const Centreline& centreline, const std::vector<Frame>& frames,
                                     const Walls& walls) {
  std::vector<Crossing> crossings;
  for (const Frame& frame : frames) {
    for (const double distance : plane_crossings(centreline, frame.plane)) {
      const Vec3 at = centreline.at(distance);
      const Vec2 in_plane = frame.plane.seen(at);
      if (!covers(frame.outline, in_plane)) continue;
      const auto hole = std::find_if(frame.holes.begin(), frame.holes.end(),
                                     [&](const Hole& each) { return covers(each, in_plane); });
      Crossing crossing{&frame, hole == frame.holes.end() ? nullptr : &*hole, distance, at};
      if (crossing.hole) {
        crossing.runs_into = overlapped_by(frame, *crossing.hole);
        crossing.leaves_frame = leaves(frame.outline, *crossing.hole);
      }
      crossings.push_back(crossing);
    }
  }
  for (const Wall& wall : walls) {
    for (const double distance : plane_crossings(centreline, wall.frame.plane)) {
      Crossing crossing{&wall.frame, &wall.hole(), distance, centreline.at(distance)};
      crossing.wall = &wall;
      crossing.runs_into = wall.runs_into;
      crossing.leaves_frame = wall.leaves_wall;
      if (covers(wall.hole(), crossing.in_plane(crossing.at))) crossings.push_back(crossing);
    }
  }
  std::stable_sort(crossings.begin(), crossings.end(), [](const Crossing& a, const Crossing& b) {
    return a.distance_in < b.distance_in;
  });
  return crossings;
}

}  // namespace linewright
