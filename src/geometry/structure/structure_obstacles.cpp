#include "geometry/structure/structure_obstacles.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "geometry/structure/channel_shape.hpp"
#include "geometry/structure/frame_faces.hpp"
#include "geometry/structure/mover_sweep.hpp"
#include "geometry/structure/panel_triangles.hpp"
#include "geometry/structure/wall_place.hpp"

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
    obstacle.edge_radius_in = hole.edge_radius_in;
    obstacle.hole = hole.name;
    shapes_.obstacles.push_back(std::move(obstacle));
  }

  /// The inside of a hole in a wall, from side to side.
  void hole_inside(const WallPlace& wall, const WallHole& hole) {
    const DrawnPlane plane = wall_plane(wall);
    const Vec3 half = wall.normal * (wall.thickness_in / 2 + hole.edge_radius_in.value_or(0));
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
      shapes_.obstacles[i].edge_radius_in = hole.edge_radius_in;
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

  /// A free edge of a sheet of `radius_in` to each side; a turned one stands out of it.
  void free_edge(const Segment3& shape, double radius_in, const Channel& channel) {
    segment(shape, radius_in + channel.edge_radius_in.value_or(0));
    Obstacle& edge = shapes_.obstacles.back();
    edge.feature = Feature::free_edge;
    edge.guard = channel.edge;
    edge.edge_radius_in = channel.edge_radius_in;
  }

  void segment(const Segment3& shape, double radius_in) {
    Obstacle obstacle = pattern_;
    obstacle.shape = {shape.a, shape.b, shape.b};
    obstacle.is_segment = true;
    obstacle.radius_in = radius_in;
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
    const double out_in = hole.edge_radius_in.value_or(0);
    const Sides wall{sheet.front_in - out_in, sheet.rear_in + out_in};
    for (std::size_t i = 0; i < edge.size(); ++i)
      builder.hole_wall(frame.plane, wall, edge[i], edge[(i + 1) % edge.size()], hole);
  }
}

/// Walls are not cut by their holes: where a line goes through one, its inside counts in place of
/// the wall round it, and elsewhere a gap is understated at the most.
void add_wall_holes(PartBuilder& builder, const std::vector<WallHole>& holes) {
  for (const WallHole& hole : holes)
    if (const auto wall = builder.wall_at(hole.at)) builder.hole_inside(*wall, hole);
}

void add_channel(StructureShapes& shapes, const Channel& channel) {
  PartBuilder builder(shapes, {PartKind::channel, channel.name, channel.where, false});
  const double radius_in = channel.thickness_in / 2;
  const ChannelShape shape = channel_shape(channel);
  for (const auto& [corners, trimmed] : shape.walls)
    builder.quadrilateral(corners[0], corners[1], corners[2], corners[3], radius_in,
                          trimmed ? channel.edge : EdgeGuard::bare);
  for (const Segment3& edge : shape.edges) builder.free_edge(edge, radius_in, channel);
  add_wall_holes(builder, channel.holes);
}

void add_panel(StructureShapes& shapes, const Panel& panel) {
  PartBuilder builder(shapes, {PartKind::panel, panel.name, panel.where, false});
  const auto add = [&](const std::vector<Vec3>& corners) {
    const auto mean = mean_panel(corners);
    const double swollen_in = panel.thickness_in / 2 + (mean ? mean->stray_in : 0);
    for (const Triangle3& triangle : mean ? mean->triangles : panel_triangles(corners))
      builder.triangle(triangle, swollen_in);
  };
  add(panel.corners);
  for (const std::vector<Vec3>& bay : panel.bays) add(bay);
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
