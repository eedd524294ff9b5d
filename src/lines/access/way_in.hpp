#pragma once
// Where an arm can come in, and how thick and long arms are.

#include <array>
#include <string>
#include <vector>

#include "lines/access/opening_shape.hpp"

namespace linewright {

/// A hand or a forearm, across [common practice, no source]. Two side by side need twice as much.
inline constexpr double arm_width_in = 3.5;
/// Fingers, across, and how far they get beyond where the hand no longer fits [common practice, no
/// source].
inline constexpr double finger_width_in = 0.8;
inline constexpr double finger_length_in = 4.0;
/// Where a person stands or leans in from the outside, and where one lies on the way through a
/// crawl opening, is a ball of this diameter free [common practice, no source].
inline constexpr double standing_width_in = 18.0;
inline constexpr double crawling_width_in = 12.0;
/// Of an arm from the outside [common practice, no source].
inline constexpr double usual_reach_in = 26.0;
/// The grid's cells; larger ones are taken where there would be too many.
inline constexpr double arm_cell_in = 1.0;

/// Where an arm comes in.
struct WayIn {
  std::string name;
  std::string closure;  ///< empty: from the outside
  double reach_in = usual_reach_in;
  bool two_arms = true;  ///< wide enough for both arms at once
  bool person = true;    ///< a person is there: outside, or within a crawl opening
  std::string doubt;     ///< why it serves less than stated; empty for none
};

struct ReachedBy {
  int way = 0;  ///< index into ArmReach::ways()
  double distance_in = 0;
};

/// A hole of just the width passes what is as wide.
inline constexpr double fit_rounding_in = 1e-3;

/// Of each opening of each closure, in their order.
std::vector<OpeningShape> shapes_of_openings(const PreparedProject& prepared);

/// The outside, and then a way for each opening.
std::vector<WayIn> ways_in(const PreparedProject& prepared,
                           const std::vector<OpeningShape>& shapes);

/// True where two arms come to two places at once.
bool both_at_once(const std::vector<WayIn>& ways, const std::vector<ReachedBy>& one,
                  const std::vector<ReachedBy>& other);

/// The two sides of a part at a place on it, where the hands on a bolt and on its nut are; the
/// place itself, twice, where the part has no two sides there.
std::array<Vec3, 2> both_sides(const PreparedProject& prepared, const std::string& part, Vec3 at);

}  // namespace linewright
