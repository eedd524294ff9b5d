#include "geometry/structure_obstacles.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "geometry/frame_faces.hpp"
#include "geometry/mover_sweep.hpp"

namespace linewright {
namespace {

/// Adds primitives to one part.
class PartBuilder {
 public:
  PartBuilder(StructureShapes& shapes, Part part) : shapes_(shapes) {
    shapes_.parts.push_back(std::move(part));
    pattern_.part = static_cast<int>(shapes_.parts.size()) - 1;
  }

  void triangle(const Triangle3& shape, double radius_in) {
    Obstacle obstacle = pattern_;
    obstacle.shape = shape;
    obstacle.radius_in = radius_in;
    shapes_.obstacles.push_back(std::move(obstacle));
  }

  /// The parallelogram a, b, c, d or any other quadrilateral that is flat and convex.
  void quadrilateral(Vec3 a, Vec3 b, Vec3 c, Vec3 d, double radius_in) {
    triangle({a, b, c}, radius_in);
    triangle({a, c, d}, radius_in);
  }

  Obstacle& segment(const Segment3& shape, double radius_in, Feature feature = Feature::face,
                    EdgeGuard guard = EdgeGuard::bare) {
    Obstacle obstacle = pattern_;
    obstacle.shape = {shape.a, shape.b, shape.b};
    obstacle.is_segment = true;
    obstacle.radius_in = radius_in;
    obstacle.feature = feature;
    obstacle.guard = guard;
    return shapes_.obstacles.emplace_back(std::move(obstacle));
  }

 private:
  StructureShapes& shapes_;
  Obstacle pattern_;
};

void add_frame(StructureShapes& shapes, const Frame& frame) {
  PartBuilder builder(shapes, {PartKind::frame, frame.name, frame.where, false});
  const auto web = face_triangles(frame);
  std::vector<double> stations{frame.station - frame.thickness / 2};
  if (frame.thickness > 0) stations.push_back(frame.station + frame.thickness / 2);
  for (const double station : stations) {
    const auto placed = [station](Vec2 p) { return Vec3{station, p.u, p.v}; };
    for (const auto& [a, b, c] : web) builder.triangle({placed(a), placed(b), placed(c)}, 0);
    for (const Hole& hole : frame.holes) {
      const std::vector<Vec2> edge = edge_polygon(hole, obstacle_sagitta_in);
      for (std::size_t i = 0; i < edge.size(); ++i)
        builder
            .segment({placed(edge[i]), placed(edge[(i + 1) % edge.size()])}, 0, Feature::hole_edge,
                     hole.edge)
            .hole = hole.name;
    }
  }
}

/// Places a section's corners in space: in the plane that the path mainly crosses.
Vec3 section_offset(const Channel& channel, Vec2 corner) {
  const Vec3 run = channel.path.back() - channel.path.front();
  const double fs = std::abs(run.x), bl = std::abs(run.y), wl = std::abs(run.z);
  if (fs >= bl && fs >= wl) return {0, corner.u, corner.v};
  return bl >= wl ? Vec3{corner.u, 0, corner.v} : Vec3{corner.u, corner.v, 0};
}

/// `segment` less `start_in` at its beginning and `end_in` at its end; nothing where that leaves
/// nothing.
std::vector<Segment3> shortened(const Segment3& segment, double start_in, double end_in) {
  const double length_in = distance(segment.a, segment.b);
  if (length_in <= start_in + end_in) return {};
  const Vec3 along = (segment.b - segment.a) / length_in;
  return {{segment.a + along * start_in, segment.b - along * end_in}};
}

/// The pieces from one point to the next, the first and the last shortened by `lip_in` at the
/// chain's ends.
std::vector<Segment3> trimmed_chain(const std::vector<Vec3>& points, double lip_in) {
  std::vector<Segment3> pieces;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const bool first = i == 0;
    const bool last = i + 2 == points.size();
    for (const Segment3& piece :
         shortened({points[i], points[i + 1]}, first ? lip_in : 0, last ? lip_in : 0))
      pieces.push_back(piece);
  }
  return pieces;
}

void add_channel(StructureShapes& shapes, const Channel& channel) {
  PartBuilder builder(shapes, {PartKind::channel, channel.name, channel.where, false});
  if (channel.path.empty() || channel.section.empty()) return;
  const double radius_in = channel.thickness / 2;
  std::vector<Vec3> section;
  for (const Vec2 corner : channel.section) section.push_back(section_offset(channel, corner));

  const double lip_in = guards(channel.edge) ? trim_lip_in : 0;
  for (const Segment3& leg : trimmed_chain(channel.path, lip_in))
    for (const Segment3& wall : trimmed_chain(section, lip_in))
      builder.quadrilateral(leg.a + wall.a, leg.b + wall.a, leg.b + wall.b, leg.a + wall.b,
                            radius_in);

  const auto free_edge = [&](Vec3 a, Vec3 b) {
    builder.segment({a, b}, radius_in, Feature::free_edge, channel.edge);
  };
  for (const Vec3 corner : {section.front(), section.back()})
    for (std::size_t i = 0; i + 1 < channel.path.size(); ++i)
      free_edge(channel.path[i] + corner, channel.path[i + 1] + corner);
  for (const Vec3 end : {channel.path.front(), channel.path.back()})
    for (std::size_t i = 0; i + 1 < section.size(); ++i)
      free_edge(end + section[i], end + section[i + 1]);
}

void add_panel(StructureShapes& shapes, const Panel& panel) {
  PartBuilder builder(shapes, {PartKind::panel, panel.name, panel.where, false});
  for (std::size_t i = 1; i + 1 < panel.corners.size(); ++i)
    builder.triangle({panel.corners[0], panel.corners[i], panel.corners[i + 1]},
                     panel.thickness / 2);
}

/// The rectangle midway across the box's shortest side, swollen by half that side: all inside the
/// box, and all of the box but slivers along its edges.
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
  const auto corner = [&box](int x, int y, int z) {
    return Vec3{x == 0 ? box.min.x : box.max.x, y == 0 ? box.min.y : box.max.y,
                z == 0 ? box.min.z : box.max.z};
  };
  for (const int end : {0, 1}) {
    builder.quadrilateral(corner(end, 0, 0), corner(end, 1, 0), corner(end, 1, 1),
                          corner(end, 0, 1), 0);
    builder.quadrilateral(corner(0, end, 0), corner(1, end, 0), corner(1, end, 1),
                          corner(0, end, 1), 0);
    builder.quadrilateral(corner(0, 0, end), corner(1, 0, end), corner(1, 1, end),
                          corner(0, 1, end), 0);
  }
  add_box_inside(builder, box);
}

void add_solid(StructureShapes& shapes, const Solid& solid) {
  PartBuilder builder(shapes, {PartKind::solid, solid.name, solid.where, false});
  if (const auto* cylinder = std::get_if<Cylinder>(&solid.shape))
    builder.segment({cylinder->from, cylinder->to}, cylinder->diameter / 2);
  else
    add_box(builder, std::get<Box>(solid.shape));
}

void add_mover(StructureShapes& shapes, const Mover& mover) {
  PartBuilder builder(shapes, {PartKind::mover, mover.name, mover.where, true});
  for (const SweptSegment& swept : sweep(mover)) builder.segment(swept.segment, swept.radius_in);
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
