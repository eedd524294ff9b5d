#pragma once
// The aeroplane cut square at a station: the frame that stands there, what is cut through, and
// every line that goes through.

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "planning/scene.hpp"

namespace linewright {

struct CutHole {
  std::string name;
  std::vector<Vec2> edge;             ///< closed polygon in (BL, WL)
  Vec2 centre;                        ///< of an outline: of its extents
  std::optional<double> diameter_in;  ///< nothing for an outline
};

/// A part as the traces of its faces in the plane, (BL, WL).
struct CutPart {
  PartKind kind = PartKind::channel;
  std::string name;
  std::vector<std::pair<Vec2, Vec2>> traces;
};

/// A line where it goes through the plane.
struct CutLine {
  std::string route;
  SystemKind kind = SystemKind::static_air;
  SceneStep step;  ///< its radius is half the largest real diameter, or a sleeve's
  Vec3 direction;  ///< unit vector along the line
};

struct StationCut {
  double station_in = 0;
  std::string frame;  ///< that stands there; empty for none
  std::vector<Vec2> outline;
  std::vector<CutHole> holes;
  std::vector<CutPart> parts;
  std::vector<CutLine> lines;  ///< in file order, along each
};

/// The cut at a station; `frame` is the one to show there, or nullptr for the one whose web the
/// plane lies in, if any. A line that lies in the plane, or ends in it, does not go through.
StationCut station_cut(const PreparedProject& prepared, const LineMotion& motion,
                       const Scene& scene, double station_in, const Frame* frame);

/// True for a frame that stands square at a station.
bool stands_at_station(const Frame& frame);

}  // namespace linewright
