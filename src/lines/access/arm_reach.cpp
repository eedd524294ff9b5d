#include "lines/access/arm_reach.hpp"

#include <algorithm>

#include "lines/access/arm_starts.hpp"
#include "lines/access/finger_reach.hpp"
#include "lines/access/room.hpp"

namespace linewright {

namespace {

constexpr double body_cell_in = 3.0;
constexpr double most_arm_cells = 3e6;
constexpr double most_body_cells = 1e6;
/// About the structure, so that a person can walk round it.
constexpr double walk_round_in = 2 * standing_width_in;

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

}  // namespace

struct ArmReach::Model {
  const PreparedProject& prepared;
  std::vector<Vec3> places;
  std::vector<OpeningShape> shapes;
  std::vector<CoveredPart> covered;
  std::vector<WayIn> ways;
  Room arm;  ///< about what is always there
  Room body;
  FingerReach fingers;

  Model(const PreparedProject& all, std::vector<Vec3> asked)
      : prepared(all),
        places(std::move(asked)),
        shapes(shapes_of_openings(all)),
        covered(covered_parts(all, shapes)),
        ways(ways_in(all, shapes)),
        arm(arm_grid(), needed_in(arm_width_in, arm_grid()) + 0.5),
        body(body_grid(), needed_in(standing_width_in, body_grid()) + 0.5),
        fingers(arm.grid, places) {
    take_parts(arm, body, [this](std::size_t part) { return covered[part].closures.empty(); });
  }

  template <typename Wanted>
  void take_parts(Room& for_arm, Room& for_body, const Wanted& wanted) const {
    const std::vector<Part>& parts = prepared.obstacles.parts();
    for (std::size_t i = 0; i < parts.size(); ++i) {
      if (!stands_in_the_way(parts[i]) || !wanted(i)) continue;
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

  std::vector<std::vector<ReachedBy>> reached(const std::set<std::string>& closed) const {
    const StandingParts parts(prepared, covered, closed);
    Room for_arm = arm;
    Room for_body = body;
    take_parts(for_arm, for_body, [&](std::size_t part) {
      return !covered[part].closures.empty() && parts.stands(part);
    });
    const std::vector<Shortcut> holes = parts.through_frames(for_arm);
    Room outdoors = for_body;
    shut_openings(outdoors, shapes, 0);
    const std::vector<float> outside = standing(outdoors);
    std::vector<std::vector<ReachedBy>> all(places.size());
    // Grids are large: their memory is taken once for all ways.
    Room room = for_arm;
    std::vector<float> by_arm;
    std::vector<float> by_finger;
    for (std::size_t way = 0; way < ways.size(); ++way) {
      if (way > 0 && is_far(way)) continue;
      room.free_in = for_arm.free_in;
      shut_openings(room, shapes, way);
      std::vector<Start> starts = way == 0
                                      ? about_person(outside, outdoors, room, standing_width_in)
                                      : in_opening(shapes[way - 1], room, parts);
      if (way > 0 && ways[way].person) {
        Room inside = for_body;
        shut_openings(inside, shapes, way);
        const auto more = about_person(crawled(shapes[way - 1], inside, outside), inside, room,
                                       crawling_width_in);
        starts.insert(starts.end(), more.begin(), more.end());
      }
      const double reach_in = ways[way].reach_in;
      flood(room, needed_in(arm_width_in, room.grid), starts, reach_in, holes, by_arm);
      const auto lengths_in = fingers.lengths_in(room, reach_in, parts, by_arm, by_finger);
      for (std::size_t i = 0; i < places.size(); ++i)
        if (lengths_in[i]) all[i].push_back({static_cast<int>(way), *lengths_in[i]});
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
  const StandingParts parts(model_->prepared, model_->covered, closed);
  std::vector<bool> all;
  for (const Vec3 place : model_->places)
    all.push_back(
        std::any_of(model_->shapes.begin(), model_->shapes.end(),
                    [&](const OpeningShape& shape) { return parts.seen_from(shape, place); }));
  return all;
}

}  // namespace linewright
