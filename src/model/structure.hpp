#pragma once
// The aeroplane around the lines: frames, channels, panels, solids, movers and meshes.

#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "model/drawn_plane.hpp"
#include "model/placement.hpp"
#include "model/source.hpp"
#include "model/vector.hpp"

namespace linewright {

/// What stands between a sheet edge and a line that touches it. Rolled: curled back on itself;
/// flanged: turned away, its rim elsewhere.
enum class EdgeGuard { bare, rolled, flanged, edge_trim, grommet, bushing };

/// True for an edge that is the sheet's own round turn: it cuts nothing, but is hard metal.
constexpr bool is_turned(EdgeGuard guard) {
  return guard == EdgeGuard::rolled || guard == EdgeGuard::flanged;
}

/// True where a line may touch the edge without being cut: trim, grommet or bushing. A turned edge
/// is blunt but still hard metal, so it does not count.
constexpr bool guards(EdgeGuard guard) {
  return guard == EdgeGuard::edge_trim || guard == EdgeGuard::grommet ||
         guard == EdgeGuard::bushing;
}

struct Circle {
  Vec2 centre;
  double diameter_in = 0;

  friend bool operator==(const Circle&, const Circle&) = default;
};

/// A hole in a frame web: a circle or a closed polygon (last corner joins the first).
struct Hole {
  std::string name;
  std::variant<Circle, std::vector<Vec2>> shape;
  EdgeGuard edge = EdgeGuard::bare;
  std::optional<double> bore_in;  ///< inner diameter of the grommet or bushing
  SourceLocation where;
  std::optional<double> edge_radius_in = {};  ///< of a turned edge

  friend bool operator==(const Hole&, const Hole&) = default;
};

/// A round hole in a wall of a channel, a panel or a box, square to that wall.
struct WallHole {
  std::string name;
  Vec3 at;  ///< its middle, on or in the wall
  double diameter_in = 0;
  EdgeGuard edge = EdgeGuard::bare;
  std::optional<double> bore_in;  ///< inner diameter of the grommet or bushing
  SourceLocation where;
  std::optional<double> edge_radius_in = {};  ///< of a turned edge

  friend bool operator==(const WallHole&, const WallHole&) = default;
};

/// A web in a plane, its thickness centred on that plane: a frame at a station, a rib at a buttock
/// line, a floor at a waterline, or any other.
struct Frame {
  std::string name;
  DrawnPlane plane;
  double thickness_in = 0;
  std::vector<Vec2> outline;  ///< closed polygon, in the plane's coordinates
  std::vector<Hole> holes;
  SourceLocation where;

  friend bool operator==(const Frame&, const Frame&) = default;
};

/// A thin open section carried along a path. The section is drawn in the plane that the path mainly
/// crosses: (BL, WL) for a channel that runs fore and aft, (FS, WL) for one that runs across,
/// (FS, BL) for one that runs up and down. Which of these it does is told by how far its legs go
/// along each axis in all, there and back both counted. It stands square to every leg, and meets
/// that of the next leg in the plane that halves the corner. Its two long free edges are sharp.
struct Channel {
  std::string name;
  std::vector<Vec3> path;
  std::vector<Vec2> section;
  double thickness_in = 0;
  EdgeGuard edge = EdgeGuard::bare;
  SourceLocation where;
  std::vector<WallHole> holes = {};
  std::optional<double> edge_radius_in = {};  ///< of turned edges

  friend bool operator==(const Channel&, const Channel&) = default;
};

/// A skin or deck: a flat polygon, or a warped one, which is taken on all the ways it can be
/// folded. One that is stretched over frames is such a polygon between each two that are
/// neighbours.
struct Panel {
  std::string name;
  std::vector<Vec3> corners;  ///< none where it is stretched over frames
  double thickness_in = 0;
  std::string closure;  ///< name of the closure it belongs to; empty for none
  SourceLocation where;
  std::vector<WallHole> holes = {};
  std::vector<std::vector<Vec3>> bays = {};  ///< corners between each two of its frames

  friend bool operator==(const Panel&, const Panel&) = default;
};

struct Box {
  Vec3 min;
  Vec3 max;

  friend bool operator==(const Box&, const Box&) = default;
};

struct Cylinder {
  Vec3 from;
  Vec3 to;
  double diameter_in = 0;

  friend bool operator==(const Cylinder&, const Cylinder&) = default;
};

/// A keep-out volume.
struct Solid {
  std::string name;
  std::variant<Box, Cylinder> shape;
  SourceLocation where;
  std::vector<WallHole> holes = {};  ///< boxes: each right through a board

  friend bool operator==(const Solid&, const Solid&) = default;
};

/// A part that turns about an axis through its whole sweep: a chain of points with a radius.
struct Mover {
  std::string name;
  Vec3 pivot;
  Vec3 axis;  ///< direction of the turning axis, not necessarily of unit length
  std::vector<Vec3> points;
  double radius_in = 0;
  double sweep_from_deg = 0;
  double sweep_to_deg = 0;
  SourceLocation where;

  friend bool operator==(const Mover&, const Mover&) = default;
};

/// Faces of a mesh that meet at a greater angle than this have a sharp edge between them, where the
/// project does not say.
inline constexpr double usual_crease_angle_deg = 30;

/// A turn about an axis through the origin, by the right-hand rule.
struct Turn {
  Vec3 axis;
  double angle_deg = 0;

  friend bool operator==(const Turn&, const Turn&) = default;
};

/// Tessellated structure in a file of its own. Its places are multiplied by the unit and the scale,
/// then turned by each turn in order, then moved by `translate`.
struct Mesh {
  std::string name;
  std::string file;            ///< relative to the project's folder
  std::filesystem::path path;  ///< the same, absolute
  double inches_per_unit = 1;
  double scale = 1;
  std::vector<Turn> turns;
  Vec3 translate;
  Placement placement;  ///< all of these in one: from the file's numbers to inches in place
  double crease_angle_deg = usual_crease_angle_deg;  ///< a dihedral turned by more is sharp
  double thickness_in = 0;  ///< of the sheet that its faces stand for; none: they are its surface
  SourceLocation where;

  friend bool operator==(const Mesh&, const Mesh&) = default;
};

struct Structure {
  std::vector<Frame> frames;
  std::vector<Channel> channels;
  std::vector<Panel> panels;
  std::vector<Solid> solids;
  std::vector<Mover> movers;
  std::vector<Mesh> meshes;

  friend bool operator==(const Structure&, const Structure&) = default;
};

}  // namespace linewright
