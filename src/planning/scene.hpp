#pragma once
// What a picture in space shows: structure, lines with how far they can move, and what holds them.
// Worked out of the same prepared project as the judgements; nothing here is measured again.

#include <optional>
#include <string>
#include <vector>

#include "geometry/structure/obstacles.hpp"
#include "lines/motion/line_motion.hpp"
#include "lines/prepared.hpp"

namespace linewright {

/// A part as faces and the edges that are drawn round them.
struct ScenePart {
  PartKind kind = PartKind::frame;
  std::string name;
  std::vector<Triangle3> faces;
  std::vector<Segment3> edges;
  std::size_t faces_left_out = 0;  ///< of a large mesh
};

/// A part that turns: its chain as drawn, and what it turns through.
struct SceneMover {
  std::string name;
  Vec3 pivot;
  Vec3 axis;
  std::vector<Vec3> points;
  double radius_in = 0;
  double sweep_from_deg = 0;
  double sweep_to_deg = 0;
};

/// A place of a line with how far the line can move sideways there.
struct SceneStep {
  double distance_in = 0;  ///< along the route
  Vec3 at;
  double radius_in = 0;             ///< of the line, or of a sleeve on it
  std::optional<double> likely_in;  ///< nothing where it is not known
  std::optional<double> bound_in;
};

struct SceneSupport {
  std::string name;
  double distance_in = 0;
  Vec3 at;
};

struct SceneRoute {
  std::string name;
  std::string system;
  SystemKind kind = SystemKind::static_air;
  std::vector<SceneStep> steps;  ///< in order, from end to end
  std::vector<SceneSupport> supports;
  std::vector<Attachment> attached;
  std::optional<Movement> moves;  ///< as of the prepared route
};

/// Part of a line that water stands in, in one attitude.
struct ScenePool {
  std::string attitude;
  std::string route;
  double from_in = 0;  ///< along the route
  double to_in = 0;
};

struct Scene {
  std::vector<ScenePart> parts;
  std::vector<SceneMover> movers;
  std::vector<SceneRoute> routes;      ///< in file order
  std::vector<std::string> attitudes;  ///< that the project states
  std::vector<ScenePool> pools;        ///< of these, in their order
};

/// No mesh is drawn with more faces than this: evenly taken from all of it.
inline constexpr std::size_t most_mesh_faces = 4000;

/// The place `distance_in` along the route. `reaches` are those of its spans.
SceneStep step_at(const PreparedRoute& route, const std::vector<SpanReach>& reaches,
                  double distance_in);

/// `motion` is that of `prepared`.
Scene scene_of(const PreparedProject& prepared, const LineMotion& motion);

}  // namespace linewright
