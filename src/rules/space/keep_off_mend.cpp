#include "rules/space/keep_off_mend.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/plane/polygon.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

/// Nearer than this the line's middle is in the obstacle.
constexpr double pierced_in = 1e-6;
/// On both sides of a place, for the line's direction at it: at a corner there are two.
constexpr double beside_in = 0.01;
/// So near to a guide the line is in it, or comes out of it [common practice, no source].
constexpr double in_guide_in = 1.0;
/// Chords of a hole's edge, and the lean of a line in it.
constexpr double hole_rounding_in = 0.001;

Vec3 away_from(const Approach& place) {
  return place.on_line - place.on_other;
}

Vec3 without(Vec3 direction, Vec3 along) {
  return direction - along * dot(direction, along);
}

/// What is left of the way off the obstacle across the line. At a corner the line may be moved
/// along one of its legs.
Vec3 across_line(const TooNear& near) {
  const Centreline& line = near.route.centreline;
  const double at = near.place.distance_in;
  const Vec3 away = away_from(near.place);
  const Vec3 before = without(away, line.direction(std::max(0.0, at - beside_in)));
  const Vec3 after =
      without(away, line.direction(std::min(near.route.length_in(), at + beside_in)));
  return norm(before) > norm(after) ? before : after;
}

const Part& part_of(const PreparedProject& prepared, const Obstacle& obstacle) {
  return prepared.obstacles.parts()[static_cast<std::size_t>(obstacle.part)];
}

/// A hole of a described frame.
struct FrameHole {
  const Frame& frame;
  const Hole& hole;
};

/// The one whose edge the obstacle is; nothing for none.
std::optional<FrameHole> hole_of(const PreparedProject& prepared, const Obstacle& obstacle) {
  if (obstacle.feature != Feature::hole_edge) return std::nullopt;
  const Part& part = part_of(prepared, obstacle);
  if (part.kind != PartKind::frame) return std::nullopt;
  for (const Frame& frame : prepared.project->structure.frames)
    for (const Hole& hole : frame.holes)
      if (frame.name == part.name && hole.name == obstacle.hole) return FrameHole{frame, hole};
  return std::nullopt;
}

/// True where the line, in the hole, would be too near to its edge after the move, or out of it.
bool runs_into_other_side(const FrameHole& in, const TooNear& near, Vec3 move) {
  const auto& [frame, hole] = in;
  const Vec3 from = near.place.on_line;
  if (!covers(hole, frame.plane.seen(from))) return false;
  const Vec2 to = frame.plane.seen(from + move);
  const double wanted = norm(away_from(near.place)) + near.lacking_in;
  return !covers(hole, to) || edge_distance(hole, to) < wanted - hole_rounding_in;
}

/// What keeps a cable off an edge: where it is in a guide already, that one closer about it.
std::string guide_mend(const PreparedRoute& route, double distance_in) {
  for (std::size_t i = 0; i < route.route->points.size(); ++i) {
    if (!route.route->points[i].is_bored_guide()) continue;
    if (std::abs(route.point_distance_in[i] - distance_in) > in_guide_in) continue;
    const bool loose =
        std::any_of(route.loose_guides.begin(), route.loose_guides.end(),
                    [&](const Support& guide) { return guide.point == static_cast<int>(i); });
    return loose ? "fit a guide with a smaller bore there, or sleeve the cable"
                 : "sleeve the cable there";
  }
  return "lead the cable through a fairlead there, or sleeve it";
}

}  // namespace

bool is_pierced(const Approach& place) {
  return norm(away_from(place)) < pierced_in;
}

std::optional<Vec3> move_away(const PreparedProject& prepared, const TooNear& near) {
  const double away = norm(away_from(near.place));
  const Vec3 across = across_line(near);
  const double beside = norm(across);
  if (is_pierced(near.place) || beside < away / 2) return std::nullopt;
  // Only across changes: the distance wanted and what lies along the line are two sides of a
  // triangle with a right angle.
  const double wanted = away + near.lacking_in;
  const double along_square = away * away - beside * beside;
  const Vec3 move =
      unit(across) * (std::sqrt(std::max(0.0, wanted * wanted - along_square)) - beside);
  const auto hole = hole_of(prepared, *near.place.obstacle);
  if (hole && runs_into_other_side(*hole, near, move)) return std::nullopt;
  return move;
}

std::vector<std::string> ways_off(const RuleContext& context, const TooNear& near) {
  const Obstacle& obstacle = *near.place.obstacle;
  const bool is_edge = obstacle.feature != Feature::face;
  const bool in_mesh = part_of(context.prepared, obstacle).kind == PartKind::mesh;
  if (is_pierced(near.place)) return {"lead the line round it"};
  std::vector<std::string> ways;
  const bool rod = near.route.line->kind == LineKind::rod;
  if (rod) {
    // Nothing leads a rod but its two ends.
  } else if (!near.route.stays() && is_edge) {
    ways.push_back(guide_mend(near.route, near.place.distance_in));
  } else if (is_edge && !in_mesh && !guards(obstacle.guard)) {
    ways.push_back("guard the edge");
  }
  if (const auto move = move_away(context.prepared, near)) {
    ways.push_back("move the line " + context.phrasing.length_up(norm(*move)) + " away" +
                   direction_words(*move));
    return ways;
  }
  if (hole_of(context.prepared, obstacle)) ways.push_back("make hole " + obstacle.hole + " wider");
  if (near.can_move && !rod) ways.push_back("hold the line closer there");
  if (ways.empty()) ways.push_back("lead the line round it");
  return ways;
}

std::string alternatives(const std::vector<std::string>& ways) {
  std::string text;
  for (const std::string& way : ways) text += (text.empty() ? "" : ", or ") + way;
  return text;
}

}  // namespace linewright
