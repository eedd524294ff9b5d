#include "planning/station_cut.hpp"

#include <algorithm>
#include <array>

#include "geometry/plane/polygon.hpp"
#include "lines/crossings.hpp"

namespace linewright {

namespace {

constexpr double drawn_sagitta_in = 0.005;

/// Where a face meets the plane; nothing for one that only touches it or lies in it.
std::optional<std::pair<Vec2, Vec2>> trace(const Triangle3& face, double station_in) {
  std::vector<Vec2> met;
  const std::array<Vec3, 3> corners{face.a, face.b, face.c};
  for (std::size_t i = 0; i < 3; ++i) {
    const Vec3 from = corners[i];
    const Vec3 to = corners[(i + 1) % 3];
    // Half-open, so that a corner in the plane counts for one of its edges only.
    if ((from.x < station_in) == (to.x < station_in)) continue;
    const Vec3 at = between(from, to, (station_in - from.x) / (to.x - from.x));
    met.push_back({at.y, at.z});
  }
  if (met.size() != 2) return std::nullopt;
  return std::pair{met[0], met[1]};
}

CutPart cut_part(const ScenePart& part, double station_in) {
  CutPart cut{part.kind, part.name, {}};
  for (const Triangle3& face : part.faces)
    if (const auto met = trace(face, station_in)) cut.traces.push_back(*met);
  return cut;
}

CutHole cut_hole(const Hole& hole) {
  CutHole cut{hole.name, edge_polygon(hole, drawn_sagitta_in), {}, {}};
  if (const Circle* circle = std::get_if<Circle>(&hole.shape)) {
    cut.centre = circle->centre;
    cut.diameter_in = circle->diameter_in;
    return cut;
  }
  const auto [left, right] = std::minmax_element(cut.edge.begin(), cut.edge.end(),
                                                 [](Vec2 a, Vec2 b) { return a.u < b.u; });
  const auto [low, high] = std::minmax_element(cut.edge.begin(), cut.edge.end(),
                                               [](Vec2 a, Vec2 b) { return a.v < b.v; });
  cut.centre = {(left->u + right->u) / 2, (low->v + high->v) / 2};
  return cut;
}

const Frame* frame_at(const Structure& structure, double station_in) {
  for (const Frame& frame : structure.frames)
    if (stands_at_station(frame) &&
        std::abs(frame.plane.origin.x - station_in) <= frame.thickness_in / 2)
      return &frame;
  return nullptr;
}

}  // namespace

bool stands_at_station(const Frame& frame) {
  return frame.plane == at_station(frame.plane.origin.x);
}

StationCut station_cut(const PreparedProject& prepared, const LineMotion& motion,
                       const Scene& scene, double station_in, const Frame* frame) {
  StationCut cut;
  cut.station_in = station_in;
  if (!frame) frame = frame_at(prepared.project->structure, station_in);
  if (frame) {
    cut.frame = frame->name;
    cut.outline = frame->outline;
    for (const Hole& hole : frame->holes) cut.holes.push_back(cut_hole(hole));
  }
  for (const ScenePart& part : scene.parts) {
    if (frame && part.kind == PartKind::frame && part.name == frame->name) continue;
    CutPart met = cut_part(part, station_in);
    if (!met.traces.empty()) cut.parts.push_back(std::move(met));
  }
  for (std::size_t i = 0; i < prepared.routes.size(); ++i) {
    const PreparedRoute& route = prepared.routes[i];
    for (const double at : plane_crossings(route.centreline, at_station(station_in)))
      cut.lines.push_back({route.route->name, route.route->system,
                           step_at(route, motion.reaches[i], at), route.centreline.direction(at)});
  }
  return cut;
}

}  // namespace linewright
