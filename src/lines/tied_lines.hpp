#pragma once
// Lines that are tied to each other along a stretch.

#include <optional>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

/// A tie goes round lines that lie this near to each other, between their surfaces
/// [common practice, no source].
inline constexpr double tie_reach_in = 0.5;
/// Past the ends of the tied stretch lines part within this [common practice, no source].
inline constexpr double parting_from_ties_in = 2.0;

/// The part of a route that lies in a bundle.
struct TiedMember {
  const PreparedRoute* route = nullptr;
  double low_in = 0;
  double high_in = 0;
  std::vector<PathChord> chords;  ///< of that part and of where it parts from the others
};

struct TiedBundle {
  const Bundle* bundle = nullptr;
  std::vector<TiedMember> members;  ///< in the bundle's order: the first is measured along
};

/// True for a control cable or rod that moves, or whose travel is not stated.
bool moves_control(const PreparedRoute& route);

/// Free distance from the line's surface at a place, as drawn, to the nearest of a member's part.
double gap_to_member_in(const PreparedRoute& route, double along_in, const TiedMember& member);

/// All bundles of a project, which must outlive it. A bundle of which the first route is too short
/// for its stretch ties as far as that goes.
class TiedLines {
 public:
  explicit TiedLines(const PreparedProject& prepared);

  const std::vector<TiedBundle>& bundles() const { return bundles_; }

  /// True for a place on each of two lines that are tied to each other there, or part there past
  /// the last tie. Lines that the project calls tied, but that lie beyond the reach of a tie from
  /// each other, are not, and no control that moves is.
  bool together(const PreparedRoute& first, double first_in, const PreparedRoute& second,
                double second_in) const;

 private:
  std::vector<TiedBundle> bundles_;
};

}  // namespace linewright
