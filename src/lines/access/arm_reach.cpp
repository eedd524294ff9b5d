#include "lines/access/arm_reach.hpp"

#include <algorithm>
#include <cmath>

#include "lines/access/flood.hpp"
#include "lines/access/room.hpp"

namespace linewright {

namespace {

constexpr double body_cell_in = 3.0;
constexpr double most_arm_cells = 3e6;
constexpr double most_body_cells = 1e6;
/// About the structure, so that a person can walk round it.
constexpr double walk_round_in = 2 * standing_width_in;
/// Past the last cell fingers go straight, no farther than this.
constexpr double last_step_in = 2.0;
/// How deep in a part the place of what is mounted in it may lie.
constexpr double in_part_in = 0.5;
/// A straight way is tried at steps of this.
constexpr double sight_step_in = 0.25;

/// Room that the middles of two neighbouring cells need for a body of this width to pass from one
/// to the other.
double needed_in(double width_in, const CellGrid& grid) {
  return std::hypot(width_in / 2, grid.half_diagonal_in());
}

Bounds bounds_of_parts(const PreparedProject& prepared) {
  Bounds bounds = empty_bounds();
  for (const Obstacle& each : prepared.obstacles.all())
    if (each.part >= 0 &&
        stands_in_the_way(prepared.obstacles.parts()[static_cast<std::size_t>(each.part)]))
      include(bounds, grown(bounds_of(each), each.radius_in));
  for (const MeshPartField& mesh : prepared.obstacles.meshes())
    if (mesh.field && mesh.field->all_within()) include(bounds, mesh.field->bounds());
  return bounds;
}

Bounds common(const Bounds& a, const Bounds& b) {
  return {{std::max(a.min.x, b.min.x), std::max(a.min.y, b.min.y), std::max(a.min.z, b.min.z)},
          {std::min(a.max.x, b.max.x), std::min(a.max.y, b.max.y), std::min(a.max.z, b.max.z)}};
}

/// Where a person can be, as cells of the coarse grid.
std::vector<Start> border_cells(const CellGrid& grid) {
  std::vector<Start> starts;
  for (std::size_t i = 0; i < grid.size(); ++i) {
    const std::array<int, 3> cell = grid.cell(i);
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (cell[axis] == 0 || cell[axis] == grid.count[axis] - 1) {
        starts.emplace_back(i, 0.0F);
        break;
      }
  }
  return starts;
}

}  // namespace

struct ArmReach::Model {
  const PreparedProject& prepared;
  std::vector<Vec3> places;
  std::vector<OpeningShape> shapes;
  std::vector<CoveredPart> covered;
  std::vector<WayIn> ways;
  Room arm;  ///< about what is always there
  Room body;
  std::vector<char> near_place;  ///< cells from which fingers may come to one

  Model(const PreparedProject& all, std::vector<Vec3> asked)
      : prepared(all),
        places(std::move(asked)),
        shapes(shapes_of_openings(all)),
        covered(covered_parts(all, shapes)),
        ways(ways_in(all, shapes)),
        arm(arm_grid(), needed_in(arm_width_in, arm_grid()) + 0.5),
        body(body_grid(), needed_in(standing_width_in, body_grid()) + 0.5),
        near_place(arm.grid.size(), 0) {
    for (const Vec3 place : places)
      arm.grid.visit_ball(place, finger_length_in, [&](std::size_t first, std::size_t last) {
        std::fill(near_place.begin() + static_cast<std::ptrdiff_t>(first),
                  near_place.begin() + static_cast<std::ptrdiff_t>(last), char{1});
      });
    take_parts(arm, body, [](const CoveredPart& part) { return part.closures.empty(); });
  }

  bool is_on(const CoveredPart& part, const std::set<std::string>& closed) const {
    return part.closures.empty() ||
           std::any_of(part.closures.begin(), part.closures.end(),
                       [&](const std::string& name) { return closed.contains(name); });
  }

  template <typename Wanted>
  void take_parts(Room& for_arm, Room& for_body, const Wanted& wanted) const {
    const std::vector<Part>& parts = prepared.obstacles.parts();
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (!stands_in_the_way(parts[i]) || !wanted(covered[i])) continue;
      for_arm.take(prepared, static_cast<int>(i), covered[i]);
      for_body.take(prepared, static_cast<int>(i), covered[i]);
    }
  }

  Bounds whole() const {
    Bounds bounds = bounds_of_parts(prepared);
    for (const Vec3 place : places) include(bounds, place);
    for (const OpeningShape& shape : shapes) include(bounds, shape.centre);
    return bounds;
  }

  CellGrid body_grid() const {
    return {grown(whole(), walk_round_in), body_cell_in, most_body_cells};
  }

  /// No arm comes from farther, and beyond the structure all is free.
  CellGrid arm_grid() const {
    double most_in = usual_reach_in;
    for (const WayIn& way : ways) most_in = std::max(most_in, way.reach_in);
    Bounds bounds = empty_bounds();
    for (const Vec3 place : places) include(bounds, place);
    return {common(grown(bounds, most_in + arm_width_in), grown(whole(), 2 * arm_width_in)),
            arm_cell_in, most_arm_cells};
  }

  double free_in(Vec3 place, double limit_in, const std::set<std::string>& closed) const {
    const std::vector<Part>& parts = prepared.obstacles.parts();
    std::set<int> near;
    prepared.obstacles.visit(grown(Bounds{place, place}, limit_in), [&](const Obstacle& obstacle) {
      const auto part = static_cast<std::size_t>(obstacle.part);
      if (stands_in_the_way(parts[part]) && is_on(covered[part], closed))
        near.insert(obstacle.part);
    });
    double least_in = limit_in;
    for (const int part : near)
      least_in = std::min(
          least_in, part_distance_in(prepared, part, covered[static_cast<std::size_t>(part)], place,
                                     least_in));
    return least_in;
  }

  /// True where nothing stands between two places; the second may lie in the part that holds what
  /// is there.
  bool is_open_between(Vec3 from, Vec3 to, const std::set<std::string>& closed) const {
    const double length_in = distance(from, to);
    const bool in_part = free_in(to, 1.0, closed) <= 0;
    if (!in_part) return !crosses(from, to, closed);
    if (length_in <= in_part_in) return true;
    return !crosses(from, between(from, to, 1 - in_part_in / length_in), closed);
  }

  bool crosses_mesh(const Segment3& segment, const std::set<std::string>& closed) const {
    for (const MeshPartField& mesh : prepared.obstacles.meshes()) {
      const CoveredPart& part = covered[static_cast<std::size_t>(mesh.part)];
      if (!mesh.field || !is_on(part, closed)) continue;
      const auto item = mesh.field->nearest_item(segment, 0);
      if (item && !is_cut_out(part, nearest(segment, item->shape).on_second)) return true;
    }
    return false;
  }

  bool crosses(Vec3 from, Vec3 to, const std::set<std::string>& closed) const {
    const Segment3 segment{from, to};
    Bounds bounds{from, from};
    include(bounds, to);
    bool crossed = crosses_mesh(segment, closed);
    prepared.obstacles.visit(bounds, [&](const Obstacle& obstacle) {
      const auto part = static_cast<std::size_t>(obstacle.part);
      if (crossed || obstacle.feature == Feature::hole_edge) return;
      if (!stands_in_the_way(prepared.obstacles.parts()[part]) || !is_on(covered[part], closed))
        return;
      const Nearest near = nearest(segment, obstacle);
      crossed = near.distance_in <= 0 && !is_cut_out(covered[part], near.on_second);
    });
    return crossed;
  }

  /// Through the middle of a hole that an arm just fits, which the grid may miss.
  std::optional<Shortcut> through(Vec3 middle, Vec3 normal, const std::set<std::string>& closed,
                                  const Room& room) const {
    const double needs_in = needed_in(arm_width_in, room.grid);
    const double out_in = needs_in + room.grid.half_diagonal_in();
    const std::array<int, 3> before = room.grid.cell_at(middle - normal * out_in);
    const std::array<int, 3> after = room.grid.cell_at(middle + normal * out_in);
    for (const std::array<int, 3>& end : {before, after})
      if (!room.grid.holds(end) || room.free_in[room.grid.index(end)] < needs_in)
        return std::nullopt;
    for (double s = -out_in; s <= out_in; s += sight_step_in)
      if (free_in(middle + normal * s, arm_width_in, closed) < arm_width_in / 2 - fit_rounding_in)
        return std::nullopt;
    const double length_in = 2 * (out_in + room.grid.half_diagonal_in());
    return Shortcut{room.grid.index(before), room.grid.index(after), static_cast<float>(length_in)};
  }

  std::vector<Shortcut> shortcuts(const std::set<std::string>& closed, const Room& room) const {
    std::vector<Shortcut> all;
    if (!prepared.obstacles.meshes().empty()) return all;
    const auto add = [&](Vec3 middle, Vec3 normal) {
      if (const auto found = through(middle, normal, closed, room)) all.push_back(*found);
    };
    for (const Frame& frame : prepared.project->structure.frames)
      for (const Hole& hole : frame.holes)
        if (const auto* circle = std::get_if<Circle>(&hole.shape);
            circle && circle->diameter_in >= arm_width_in)
          add(frame.plane.in_space(circle->centre), frame.plane.normal);
    return all;
  }

  /// Nobody comes in by an opening but as it says itself: all others are shut for a way.
  Room without_openings(const Room& all, std::size_t way) const {
    Room room = all;
    for (std::size_t i = 0; i < shapes.size(); ++i) {
      if (i + 1 == way) continue;
      Bounds bounds = empty_bounds();
      for (const Vec3 corner : shapes[i].outline) include(bounds, corner);
      room.grid.visit(grown(bounds, room.grid.cell_in),
                      [&](const std::array<int, 3>& cell, std::size_t index) {
                        if (shapes[i].holds(room.grid.middle(cell), room.grid.cell_in))
                          room.free_in[index] = 0;
                      });
    }
    return room;
  }

  /// Cells of the arm's grid within half the width of where a person's middle can be.
  std::vector<Start> about_person(const std::vector<float>& person, const Room& for_body,
                                  const Room& for_arm, double width_in) const {
    std::vector<char> taken(for_arm.grid.size(), 0);
    const double own_in = for_body.grid.half_diagonal_in();
    for (std::size_t i = 0; i < person.size(); ++i) {
      if (person[i] == not_reached) continue;
      const Vec3 middle = for_body.grid.middle(i);
      // Amid others its own cell is enough, for theirs lie side by side.
      const double within_in = is_amid(person, for_body.grid, i) ? own_in : width_in / 2;
      for_arm.grid.visit_ball(middle, within_in, [&](std::size_t first, std::size_t last) {
        std::fill(taken.begin() + static_cast<std::ptrdiff_t>(first),
                  taken.begin() + static_cast<std::ptrdiff_t>(last), char{1});
      });
    }
    const auto hand_in = static_cast<float>(needed_in(finger_width_in, for_arm.grid));
    std::vector<Start> starts;
    for (std::size_t i = 0; i < taken.size(); ++i)
      if (taken[i] && for_arm.free_in[i] >= hand_in) starts.emplace_back(i, 0.0F);
    return starts;
  }

  /// Where the arm of an opening begins: in it, or just through its middle on either side.
  std::vector<Start> in_opening(const OpeningShape& shape, const Room& room,
                                const std::set<std::string>& closed) const {
    const double needs_in = needed_in(arm_width_in, room.grid);
    Bounds bounds = empty_bounds();
    for (const Vec3 corner : shape.outline) include(bounds, corner);
    std::vector<Start> starts;
    room.grid.visit(grown(bounds, room.grid.cell_in), [&](const std::array<int, 3>& cell,
                                                          std::size_t index) {
      if (room.free_in[index] >= needs_in && shape.holds(room.grid.middle(cell), room.grid.cell_in))
        starts.emplace_back(index, static_cast<float>(room.grid.cell_in));
    });
    if (!prepared.obstacles.meshes().empty()) return starts;
    if (const auto passage = through(shape.centre, shape.normal, closed, room)) {
      starts.emplace_back(passage->from, passage->length_in / 2);
      starts.emplace_back(passage->to, passage->length_in / 2);
    }
    return starts;
  }

  /// Where a person lies who came in by the opening, and not where one can stand outside.
  std::vector<float> crawled(const OpeningShape& shape, const Room& room,
                             const std::vector<float>& outside) const {
    Room inside = room;
    for (std::size_t i = 0; i < outside.size(); ++i)
      if (outside[i] != not_reached) inside.free_in[i] = 0;
    const double needs_in = needed_in(crawling_width_in, room.grid);
    std::vector<Start> starts;
    for (double s = -crawling_width_in; s <= crawling_width_in; s += 1) {
      const std::array<int, 3> cell = room.grid.cell_at(shape.centre + shape.normal * s);
      if (!room.grid.holds(cell)) continue;
      const std::size_t index = room.grid.index(cell);
      if (inside.free_in[index] >= needs_in) starts.emplace_back(index, 0.0F);
    }
    return connected(inside, needs_in, starts);
  }

  /// Adds to each place the way whose arm fills the cells with these lengths.
  void add_reached(int way, const std::vector<float>& by_arm, const Room& room,
                   const std::set<std::string>& closed,
                   std::vector<std::vector<ReachedBy>>& all) const {
    const double finger_needs_in = needed_in(finger_width_in, room.grid);
    const std::vector<float> by_finger = fingers(room, finger_needs_in, by_arm);
    const double reach_in = ways[static_cast<std::size_t>(way)].reach_in;
    for (std::size_t i = 0; i < places.size(); ++i)
      if (const auto length_in = to_place(places[i], by_finger, room, reach_in, closed))
        all[i].push_back({way, *length_in});
  }

  /// The arm's lengths, and beyond it those of fingers, no longer than fingers are.
  std::vector<float> fingers(const Room& room, double needs_in,
                             const std::vector<float>& by_arm) const {
    std::vector<float> total = by_arm;
    std::vector<std::pair<std::size_t, float>> rim;
    for (std::size_t i = 0; i < by_arm.size(); ++i)
      if (near_place[i] && by_arm[i] != not_reached) rim.emplace_back(i, 0.0F);
    const double straight_in = finger_length_in - last_step_in;
    const std::vector<float> finger = flood(room, needs_in, rim, straight_in);
    // The shortest arm from which fingers come to the cell.
    for (std::size_t i = 0; i < total.size(); ++i) {
      if (total[i] != not_reached || finger[i] == not_reached) continue;
      total[i] = nearest_arm(room.grid, by_arm, i, straight_in) + finger[i];
    }
    return total;
  }

  /// The longest of the arms near a cell: which of them the fingers are of is not told.
  float nearest_arm(const CellGrid& grid, const std::vector<float>& by_arm, std::size_t cell,
                    double within_in) const {
    float most_in = 0;
    const Vec3 middle = grid.middle(cell);
    grid.visit(grown(Bounds{middle, middle}, within_in),
               [&](const std::array<int, 3>&, std::size_t index) {
                 if (by_arm[index] != not_reached) most_in = std::max(most_in, by_arm[index]);
               });
    return most_in;
  }

  std::optional<double> to_place(Vec3 place, const std::vector<float>& by_finger, const Room& room,
                                 double reach_in, const std::set<std::string>& closed) const {
    std::vector<std::pair<double, std::size_t>> near;
    room.grid.visit(grown(Bounds{place, place}, last_step_in),
                    [&](const std::array<int, 3>& cell, std::size_t index) {
                      const double step_in = distance(room.grid.middle(cell), place);
                      const double length_in = static_cast<double>(by_finger[index]) + step_in;
                      if (step_in <= last_step_in && length_in <= reach_in)
                        near.emplace_back(length_in, index);
                    });
    std::sort(near.begin(), near.end());
    for (const auto& [length_in, index] : near)
      if (is_open_between(room.grid.middle(index), place, closed)) return length_in;
    return std::nullopt;
  }

  std::vector<std::vector<ReachedBy>> reached(const std::set<std::string>& closed) const {
    Room for_arm = arm;
    Room for_body = body;
    take_parts(for_arm, for_body, [&](const CoveredPart& part) {
      return !part.closures.empty() && is_on(part, closed);
    });
    const std::vector<Shortcut> holes = shortcuts(closed, for_arm);
    const Room outdoors = without_openings(for_body, 0);
    const std::vector<float> outside = connected(
        outdoors, needed_in(standing_width_in, for_body.grid), border_cells(for_body.grid));
    std::vector<std::vector<ReachedBy>> all(places.size());
    for (std::size_t way = 0; way < ways.size(); ++way) {
      if (way > 0 && is_far(way)) continue;
      const Room room = without_openings(for_arm, way);
      std::vector<Start> starts;
      if (way == 0)
        starts = about_person(outside, outdoors, room, standing_width_in);
      else
        starts = in_opening(shapes[way - 1], room, closed);
      if (way > 0 && ways[way].person) {
        const Room inside = without_openings(for_body, way);
        const auto more = about_person(crawled(shapes[way - 1], inside, outside), inside, room,
                                       crawling_width_in);
        starts.insert(starts.end(), more.begin(), more.end());
      }
      const std::vector<float> by_arm =
          flood(room, needed_in(arm_width_in, room.grid), starts, ways[way].reach_in, holes);
      add_reached(static_cast<int>(way), by_arm, room, closed, all);
    }
    for (std::vector<ReachedBy>& each : all)
      std::stable_sort(each.begin(), each.end(), [](const ReachedBy& a, const ReachedBy& b) {
        return a.distance_in < b.distance_in;
      });
    return all;
  }

  /// No place is within an arm's reach of the opening, whichever way it goes.
  bool is_far(std::size_t way) const {
    if (ways[way].person) return false;
    const OpeningShape& shape = shapes[way - 1];
    const double within_in = ways[way].reach_in + shape.longest_across_in();
    return std::none_of(places.begin(), places.end(),
                        [&](Vec3 place) { return distance(place, shape.centre) <= within_in; });
  }

  bool seen_from(const OpeningShape& shape, Vec3 place, const std::set<std::string>& closed) const {
    constexpr double eye_off_edge = 0.7;
    constexpr std::size_t most_eyes = 8;
    std::vector<Vec3> eyes{shape.centre};
    const std::size_t step = (shape.outline.size() + most_eyes - 1) / most_eyes;
    for (std::size_t i = 0; i < shape.outline.size(); i += step)
      eyes.push_back(between(shape.centre, shape.outline[i], eye_off_edge));
    return std::any_of(eyes.begin(), eyes.end(), [&](Vec3 eye) {
      return distance(eye, place) <= shape.opening->reach_in && is_open_between(eye, place, closed);
    });
  }
};

ArmReach::ArmReach(const PreparedProject& prepared, std::vector<Vec3> places)
    : model_(std::make_unique<Model>(prepared, std::move(places))) {}

ArmReach::~ArmReach() = default;

const std::vector<WayIn>& ArmReach::ways() const {
  return model_->ways;
}

double ArmReach::cell_in() const {
  return model_->arm.grid.cell_in;
}

std::vector<std::vector<ReachedBy>> ArmReach::reached(const std::set<std::string>& closed) const {
  return model_->places.empty() ? std::vector<std::vector<ReachedBy>>{} : model_->reached(closed);
}

std::vector<bool> ArmReach::seen(const std::set<std::string>& closed) const {
  std::vector<bool> all;
  for (const Vec3 place : model_->places)
    all.push_back(std::any_of(
        model_->shapes.begin(), model_->shapes.end(),
        [&](const OpeningShape& shape) { return model_->seen_from(shape, place, closed); }));
  return all;
}

}  // namespace linewright
