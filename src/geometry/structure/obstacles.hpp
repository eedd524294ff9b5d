#pragma once
// The structure as convex primitives (segments, triangles and slabs) that a line can come near to,
// and an index over them. Curved edges become chords that lie on the near side (inside a hole), so
// that a gap is never overstated; the stated bound on the error is `obstacle_sagitta_in`.

#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/bounds.hpp"
#include "geometry/distance.hpp"
#include "geometry/mesh/mesh_field.hpp"
#include "model/structure.hpp"

namespace linewright {

/// Largest distance between a true curved edge and the chords that stand for it.
inline constexpr double obstacle_sagitta_in = 0.0005;
/// How far edge trim reaches over the sheet from the edge: the face is taken to start there.
inline constexpr double trim_lip_in = 0.12;

enum class PartKind { frame, channel, panel, solid, mover, mesh, fitting, pulley };

/// A named piece of structure.
struct Part {
  PartKind kind = PartKind::frame;
  std::string name;
  SourceLocation where;
  bool moves = false;
};

/// A pulley by its outsides.
struct PulleyBody {
  std::string name;
  SourceLocation where;
  Vec3 centre;
  Vec3 axis;                  ///< unit vector
  double root_radius_in = 0;  ///< at the bottom of the groove
  double rim_radius_in = 0;   ///< over the flanges
  double width_in = 0;        ///< over the flanges
};

/// The fitting of a node: everything within `radius_in` of its legs.
struct FittingSolid {
  std::string name;
  SourceLocation where;
  std::vector<Segment3> legs;
  double radius_in = 0;
};

/// What of a part a primitive belongs to.
enum class Feature { face, free_edge, hole_edge };

/// One segment, triangle or slab, swollen by `radius_in` on all sides (half a sheet's thickness, a
/// cylinder's radius, a mover's radius and the bound on its sweep steps).
///
/// A slab is solid: the triangle (or segment: then a strip) that the corners draw as seen along its
/// normal, from the plane square to that through corner a to the one through corner b. Corner c
/// lies in one of the two.
///
/// A disc is round and flat: corners a and b are the corners of its box, and c lies off its centre
/// along its axis (`disc_of`).
struct Obstacle {
  Triangle3 shape;  ///< for a segment, corner c repeats b
  bool is_segment = false;
  bool is_slab = false;
  bool is_disc = false;
  Vec3 normal{1, 0, 0};  ///< slabs: of unit length
  double radius_in = 0;
  int part = 0;  ///< index into Obstacles::parts
  Feature feature = Feature::face;
  EdgeGuard guard = EdgeGuard::bare;
  std::optional<double> edge_radius_in = {};  ///< of a turned edge
  std::string hole;  ///< hole edges: the hole's name; meshes: the piece's name in its file
  int piece = 0;     ///< movers: which segment of the chain it is, counted from zero
};

/// A disc as an obstacle's shape; the axis is a unit vector.
Triangle3 disc_of(Vec3 centre, Vec3 axis, double radius_in);

/// Of what the obstacle is without its swelling.
Bounds bounds_of(const Obstacle& obstacle);

/// Distance to an obstacle's surface; negative inside the swelling, zero anywhere in a slab that is
/// not swollen. Exact, and convex along a line. The second point lies on the shape that is swollen,
/// not on the surface.
Nearest nearest(const Segment3& segment, const Obstacle& obstacle);
Nearest nearest(Vec3 point, const Obstacle& obstacle);

/// What the files of `Structure::meshes` hold, in that order.
using MeshFields = std::vector<std::shared_ptr<const MeshField>>;

/// A mesh and its index into Obstacles::parts().
struct MeshPartField {
  int part = 0;
  std::shared_ptr<const MeshField> field;
};

/// An item of the mesh as an obstacle.
Obstacle obstacle_of(const MeshPartField& mesh, const MeshItem& item);

/// The structure ready to be measured against.
class Obstacles {
 public:
  /// Frames give slabs (cut by their holes) and the walls of the holes; channels give strips and
  /// free edges; panels give triangles; box solids give slabs; cylinders give a swollen axis;
  /// movers give their chain at steps of the sweep, swollen so that no place between steps is
  /// missed. `shapes_of` says more. Meshes come as they are: they are parts, but not in `all()`.
  /// `meshes` is empty where they were not read.
  explicit Obstacles(const Structure& structure, const MeshFields& meshes = {});
  ~Obstacles();
  Obstacles(const Obstacles& other);
  Obstacles(Obstacles&&) noexcept;
  Obstacles& operator=(Obstacles&&) noexcept;

  /// The fittings and then the pulleys become the last parts, in their order; all other parts keep
  /// their index.
  void add_bodies(const std::vector<FittingSolid>& fittings,
                  const std::vector<PulleyBody>& pulleys);

  const std::vector<Part>& parts() const;
  const std::vector<Obstacle>& all() const;
  const std::vector<MeshPartField>& meshes() const;
  /// Those of one part, in the order of all(); none for a mesh.
  std::span<const Obstacle> of_part(int part) const;
  /// Index into parts(), or nothing.
  std::optional<int> find_part(const std::string& name) const;

  /// Calls `visit` with every obstacle of `all()` whose box, swelling included, meets `bounds`, in
  /// that order.
  void visit(const Bounds& bounds, const std::function<void(const Obstacle&)>& visit) const;

  /// Calls `visit` with everything that may come within `within_in` of the segment, triangles and
  /// edges of meshes among them, which `of_mesh` tells apart.
  void visit_near(const Segment3& segment, double within_in,
                  const std::function<void(const Obstacle&, bool of_mesh)>& visit) const;

 private:
  struct Index;
  std::unique_ptr<Index> index_;
};

}  // namespace linewright
