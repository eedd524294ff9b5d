#pragma once
// What a hand comes to while some closures are on: an arm goes by a way in through free space,
// bending round what stands in it, as a path through a coarse grid. Where the grid is in doubt, the
// answer is that it does not come there. Lines, pulleys and movers do not stand in the way.

#include <memory>
#include <set>
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

class ArmReach {
 public:
  /// `prepared` must outlive it. `places` are all that will be asked for.
  ArmReach(const PreparedProject& prepared, std::vector<Vec3> places);
  ~ArmReach();

  const std::vector<WayIn>& ways() const;
  double cell_in() const;
  /// The ways by which a hand comes to each place while these closures are on, the shortest first.
  std::vector<std::vector<ReachedBy>> reached(const std::set<std::string>& closed) const;
  /// For each place whether it can be seen in a straight line from one of the openings, within
  /// its reach.
  std::vector<bool> seen(const std::set<std::string>& closed) const;

 private:
  struct Model;
  std::unique_ptr<Model> model_;
};

/// True where two arms come to two places at once.
bool both_at_once(const std::vector<WayIn>& ways, const std::vector<ReachedBy>& one,
                  const std::vector<ReachedBy>& other);

/// The two sides of a part at a place on it, where the hands on a bolt and on its nut are; the
/// place itself, twice, where the part has no two sides there.
std::array<Vec3, 2> both_sides(const PreparedProject& prepared, const std::string& part, Vec3 at);

}  // namespace linewright
