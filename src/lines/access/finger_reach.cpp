#include "lines/access/finger_reach.hpp"

#include <algorithm>

#include "lines/access/way_in.hpp"

namespace linewright {

namespace {

/// Past the last cell fingers go straight, no farther than this.
constexpr double last_step_in = 2.0;

/// The longest of the arms near a cell: which of them the fingers are of is not told.
float nearest_arm_in(const CellGrid& grid, const std::vector<float>& by_arm, std::size_t cell,
                     double within_in) {
  float most_in = 0;
  const Vec3 middle = grid.middle(cell);
  grid.visit(grown(Bounds{middle, middle}, within_in),
             [&](const std::array<int, 3>&, std::size_t index) {
               if (by_arm[index] != not_reached) most_in = std::max(most_in, by_arm[index]);
             });
  return most_in;
}

std::optional<double> to_place(Vec3 place, const std::vector<float>& by_hand, const CellGrid& grid,
                               double reach_in, const StandingParts& parts) {
  std::vector<std::pair<double, std::size_t>> near;
  grid.visit(grown(Bounds{place, place}, last_step_in),
             [&](const std::array<int, 3>& cell, std::size_t index) {
               const double step_in = distance(grid.middle(cell), place);
               const double length_in = static_cast<double>(by_hand[index]) + step_in;
               if (step_in <= last_step_in && length_in <= reach_in)
                 near.emplace_back(length_in, index);
             });
  std::sort(near.begin(), near.end());
  for (const auto& [length_in, index] : near)
    if (parts.is_open_between(grid.middle(index), place)) return length_in;
  return std::nullopt;
}

}  // namespace

FingerReach::FingerReach(const CellGrid& grid, const std::vector<Vec3>& places) : places_(places) {
  std::vector<char> near(grid.size(), 0);
  for (const Vec3 place : places)
    grid.visit_ball(place, finger_length_in, [&](std::size_t first, std::size_t last) {
      std::fill(near.begin() + static_cast<std::ptrdiff_t>(first),
                near.begin() + static_cast<std::ptrdiff_t>(last), char{1});
    });
  for (std::size_t i = 0; i < near.size(); ++i)
    if (near[i]) near_place_.push_back(static_cast<std::uint32_t>(i));
}

std::vector<std::optional<double>> FingerReach::lengths_in(const Room& room, double reach_in,
                                                           const StandingParts& parts,
                                                           std::vector<float>& by_arm,
                                                           std::vector<float>& by_finger) const {
  add_fingers(room, by_arm, by_finger);
  std::vector<std::optional<double>> lengths;
  for (const Vec3 place : places_)
    lengths.push_back(to_place(place, by_arm, room.grid, reach_in, parts));
  return lengths;
}

/// Beyond the arm's lengths those of fingers, no longer than fingers are.
void FingerReach::add_fingers(const Room& room, std::vector<float>& by_arm,
                              std::vector<float>& by_finger) const {
  std::vector<Start> rim;
  for (const std::uint32_t cell : near_place_)
    if (by_arm[cell] != not_reached) rim.emplace_back(cell, 0.0F);
  const double straight_in = finger_length_in - last_step_in;
  flood(room, needed_in(finger_width_in, room.grid), rim, straight_in, {}, by_finger);
  std::vector<Start> beyond;
  for (std::size_t i = 0; i < by_arm.size(); ++i)
    if (by_arm[i] == not_reached && by_finger[i] != not_reached)
      beyond.emplace_back(static_cast<std::uint32_t>(i),
                          nearest_arm_in(room.grid, by_arm, i, straight_in) + by_finger[i]);
  for (const auto& [cell, length_in] : beyond) by_arm[cell] = length_in;
}

}  // namespace linewright
