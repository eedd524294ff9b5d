#include "geometry/structure/structure_obstacles.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "geometry/structure/frame_faces.hpp"
#include "geometry/structure/mover_sweep.hpp"
#include "geometry/structure/panel_triangles.hpp"
#include "geometry/structure/wall_place.hpp"
#include "model/channel_axis.hpp"

namespace linewright {
namespace {

/// From one side of a sheet or a box to the other, as they lie off a plane.
struct Sides {
  double front_in = 0;
  double rear_in = 0;
};

/// Adds primitives to one part.
class PartBuilder {
 public:
  PartBuilder(StructureShapes& shapes, Part part) : shapes_(shapes) {
    shapes_.parts.push_back(std::move(part));
    pattern_.part = static_cast<int>(shapes_.parts.size()) - 1;
  }

  void triangle(const Triangle3& shape, double radius_in, EdgeGuard guard = EdgeGuard::bare) {
    Obstacle obstacle = pattern_;
    obstacle.shape = shape;
    obstacle.radius_in = radius_in;
    obstacle.guard = guard;
    shapes_.obstacles.push_back(std::move(obstacle));
  }

  /// The parallelogram a, b, c, d or any other quadrilateral that is flat and convex.
  void quadrilateral(Vec3 a, Vec3 b, Vec3 c, Vec3 d, double radius_in,
                     EdgeGuard guard = EdgeGuard::bare) {
    triangle({a, b, c}, radius_in, guard);
    triangle({a, c, d}, radius_in, guard);
  }

  /// What a triangle drawn in a plane covers from one side to the other.
  void slab(const DrawnPlane& plane, const Sides& sides, const std::array<Vec2, 3>& section) {
    const auto& [a, b, c] = section;
    shapes_.obstacles.push_back(slab_between(plane, sides, a, b, c));
  }

  /// What a line drawn in a plane covers from one side to the other.
  void hole_wall(const DrawnPlane& plane, const Sides& sides, Vec2 from, Vec2 to,
                 const Hole& hole) {
    Obstacle obstacle = slab_between(plane, sides, from, to, to);
    obstacle.is_segment = true;
    obstacle.feature = Feature::hole_edge;
    obstacle.guard = hole.edge;
    obstacle.hole = hole.name;
    shapes_.obstacles.push_back(std::move(obstacle));
  }

  /// The inside of a hole in a wall, from side to side.
  void hole_inside(const WallPlace& wall, const WallHole& hole) {
    const DrawnPlane plane = wall_plane(wall);
    const Vec3 half = wall.normal * (wall.thickness_in / 2);
    const std::vector<Vec2> edge =
        edge_polygon({{}, Circle{{}, hole.diameter_in}, hole.edge, {}, {}}, obstacle_sagitta_in);
    const std::size_t first = shapes_.obstacles.size();
    for (std::size_t i = 0; i < edge.size(); ++i) {
      const Vec3 from = plane.in_space(edge[i]);
      const Vec3 to = plane.in_space(edge[(i + 1) % edge.size()]);
      quadrilateral(from - half, to - half, to + half, from + half, 0, hole.edge);
    }
    for (std::size_t i = first; i < shapes_.obstacles.size(); ++i) {
      shapes_.obstacles[i].feature = Feature::hole_edge;
      shapes_.obstacles[i].hole = hole.name;
    }
  }

  /// The part's flat wall at a place; nothing where none is near.
  std::optional<WallPlace> wall_at(Vec3 at) const {
    std::optional<WallPlace> best;
    double nearest_in = at_wall_in;
    for (const Obstacle& obstacle : shapes_.obstacles) {
      if (obstacle.part != pattern_.part || obstacle.feature != Feature::face ||
          obstacle.is_segment)
        continue;
      const double away = nearest(at, obstacle).distance_in;
      if (away > nearest_in) continue;
      nearest_in = away;
      best = plate_place(obstacle, at);
    }
    return best;
  }

  void segment(const Segment3& shape, double radius_in, Feature feature = Feature::face,
               EdgeGuard guard = EdgeGuard::bare) {
    Obstacle obstacle = pattern_;
    obstacle.shape = {shape.a, shape.b, shape.b};
    obstacle.is_segment = true;
    obstacle.radius_in = radius_in;
    obstacle.feature = feature;
    obstacle.guard = guard;
    shapes_.obstacles.push_back(std::move(obstacle));
  }

 private:
  Obstacle slab_between(const DrawnPlane& plane, const Sides& sides, Vec2 a, Vec2 b, Vec2 c) const {
    Obstacle obstacle = pattern_;
    obstacle.shape = {plane.in_space(a, sides.front_in), plane.in_space(b, sides.rear_in),
                      plane.in_space(c, sides.rear_in)};
    obstacle.normal = plane.normal;
    obstacle.is_slab = true;
    return obstacle;
  }

  StructureShapes& shapes_;
  Obstacle pattern_;
};

void add_frame(StructureShapes& shapes, const Frame& frame) {
  PartBuilder builder(shapes, {PartKind::frame, frame.name, frame.where, false});
  const Sides sheet{-frame.thickness_in / 2, frame.thickness_in / 2};
  for (const auto& triangle : face_triangles(frame)) builder.slab(frame.plane, sheet, triangle);
  for (const Hole& hole : frame.holes) {
    const std::vector<Vec2> edge = edge_polygon(hole, obstacle_sagitta_in);
    for (std::size_t i = 0; i < edge.size(); ++i)
      builder.hole_wall(frame.plane, sheet, edge[i], edge[(i + 1) % edge.size()], hole);
  }
}

/// The section's corners in space: in the plane that the path mainly crosses.
std::vector<Vec3> placed_section(const Channel& channel) {
  const std::size_t axis = main_axis_of(channel.path);
  std::vector<Vec3> placed;
  for (const auto& [u, v] : channel.section) {
    if (axis == 0)
      placed.push_back({0, u, v});
    else
      placed.push_back(axis == 1 ? Vec3{u, 0, v} : Vec3{u, v, 0});
  }
  return placed;
}

/// Part of a leg of the path or of a wall of the section.
struct Piece {
  Segment3 line;
  bool trimmed = false;  ///< trim on an end of the chain reaches over all of it
};

/// `line` cut where the trim on its beginning and on its end stops; whole where the two meet.
void add_pieces(std::vector<Piece>& pieces, const Segment3& line, double start_lip_in,
                double end_lip_in) {
  const double length_in = distance(line.a, line.b);
  if (start_lip_in + end_lip_in >= length_in) {
    pieces.push_back({line, start_lip_in + end_lip_in > 0});
    return;
  }
  const Vec3 first = between(line.a, line.b, start_lip_in / length_in);
  const Vec3 last = between(line.b, line.a, end_lip_in / length_in);
  if (start_lip_in > 0) pieces.push_back({{line.a, first}, true});
  pieces.push_back({{first, last}, false});
  if (end_lip_in > 0) pieces.push_back({{last, line.b}, true});
}

/// The pieces from one point to the next, with trim of `lip_in` on both ends of the chain.
std::vector<Piece> trimmed_chain(const std::vector<Vec3>& points, double lip_in) {
  std::vector<Piece> pieces;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    add_pieces(pieces, {points[i], points[i + 1]}, i == 0 ? lip_in : 0,
               i + 2 == points.size() ? lip_in : 0);
  return pieces;
}

/// Walls are not cut by their holes: where a line goes through one, its inside counts in place of
/// the wall round it, and elsewhere a gap is understated at the most.
void add_wall_holes(PartBuilder& builder, const std::vector<WallHole>& holes) {
  for (const WallHole& hole : holes)
    if (const auto wall = builder.wall_at(hole.at)) builder.hole_inside(*wall, hole);
}

void add_channel(StructureShapes& shapes, const Channel& channel) {
  PartBuilder builder(shapes, {PartKind::channel, channel.name, channel.where, false});
  if (channel.path.empty() || channel.section.empty()) return;
  const double radius_in = channel.thickness_in / 2;
  const std::vector<Vec3> section = placed_section(channel);

  const double lip_in = guards(channel.edge) ? trim_lip_in : 0;
  const std::vector<Piece> walls = trimmed_chain(section, lip_in);
  for (const auto& [leg, leg_trimmed] : trimmed_chain(channel.path, lip_in))
    for (const auto& [wall, wall_trimmed] : walls)
      builder.quadrilateral(leg.a + wall.a, leg.b + wall.a, leg.b + wall.b, leg.a + wall.b,
                            radius_in,
                            leg_trimmed || wall_trimmed ? channel.edge : EdgeGuard::bare);

  const auto free_edge = [&](Vec3 a, Vec3 b) {
    builder.segment({a, b}, radius_in, Feature::free_edge, channel.edge);
  };
  for (const Vec3 corner : {section.front(), section.back()})
    for (std::size_t i = 0; i + 1 < channel.path.size(); ++i)
      free_edge(channel.path[i] + corner, channel.path[i + 1] + corner);
  for (const Vec3 end : {channel.path.front(), channel.path.back()})
    for (std::size_t i = 0; i + 1 < section.size(); ++i)
      free_edge(end + section[i], end + section[i + 1]);
  add_wall_holes(builder, channel.holes);
}

void add_panel(StructureShapes& shapes, const Panel& panel) {
  PartBuilder builder(shapes, {PartKind::panel, panel.name, panel.where, false});
  const auto mean = mean_panel(panel.corners);
  const double swollen_in = panel.thickness_in / 2 + (mean ? mean->stray_in : 0);
  for (const Triangle3& triangle : mean ? mean->triangles : panel_triangles(panel.corners))
    builder.triangle(triangle, swollen_in);
  add_wall_holes(builder, panel.holes);
}

/// The rectangle midway across the box's shortest side, swollen by half that side, which keeps it
/// inside the box. It says how deep a line lies; the slabs only say that it lies within.
void add_box_inside(PartBuilder& builder, const Box& box) {
  const Vec3 middle = (box.min + box.max) / 2;
  const Vec3 half = (box.max - box.min) / 2;
  const double radius_in = std::min({half.x, half.y, half.z});
  const Vec3 x{half.x - radius_in, 0, 0};
  const Vec3 y{0, half.y - radius_in, 0};
  const Vec3 z{0, 0, half.z - radius_in};
  // One of the three is zero; the other two span the rectangle.
  const Vec3 across = half.x == radius_in ? y : x;
  const Vec3 along = half.x == radius_in || half.y == radius_in ? z : y;
  builder.quadrilateral(middle - across - along, middle + across - along, middle + across + along,
                        middle - across + along, radius_in);
}

void add_box(PartBuilder& builder, const Box& box) {
  const DrawnPlane across = at_station(0);
  const Sides sides{box.min.x, box.max.x};
  const Vec2 low{box.min.y, box.min.z};
  const Vec2 high{box.max.y, box.max.z};
  builder.slab(across, sides, {low, Vec2{high.u, low.v}, high});
  builder.slab(across, sides, {low, high, Vec2{low.u, high.v}});
  add_box_inside(builder, box);
}

void add_solid(StructureShapes& shapes, const Solid& solid) {
  PartBuilder builder(shapes, {PartKind::solid, solid.name, solid.where, false});
  if (const auto* cylinder = std::get_if<Cylinder>(&solid.shape))
    builder.segment({cylinder->from, cylinder->to}, cylinder->diameter_in / 2);
  else
    add_box(builder, std::get<Box>(solid.shape));
  for (const WallHole& hole : solid.holes)
    if (const auto* box = std::get_if<Box>(&solid.shape))
      if (const auto wall = board_place(*box, hole.at, at_wall_in))
        builder.hole_inside(*wall, hole);
}

void add_mover(StructureShapes& shapes, const Mover& mover) {
  PartBuilder builder(shapes, {PartKind::mover, mover.name, mover.where, true});
  for (const SweptSegment& swept : sweep(mover)) {
    builder.segment(swept.segment, swept.radius_in);
    shapes.obstacles.back().piece = swept.piece;
  }
}

}  // namespace

StructureShapes shapes_of(const Structure& structure) {
  StructureShapes shapes;
  for (const Frame& frame : structure.frames) add_frame(shapes, frame);
  for (const Channel& channel : structure.channels) add_channel(shapes, channel);
  for (const Panel& panel : structure.panels) add_panel(shapes, panel);
  for (const Solid& solid : structure.solids) add_solid(shapes, solid);
  for (const Mover& mover : structure.movers) add_mover(shapes, mover);
  return shapes;
}

}  // namespace linewright
