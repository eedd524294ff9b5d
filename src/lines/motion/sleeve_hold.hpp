#pragma once
// What keeps a sleeve in its place on a line.

#include <optional>
#include <string>
#include <vector>

#include "lines/passages.hpp"

namespace linewright {

/// A stop on the cable this near to a sleeve's end holds it [common practice, no source].
inline constexpr double farthest_stop_in = 0.25;

struct SleeveHold {
  bool is_held = true;
  std::optional<Movement> moves;  ///< all the same; nothing where the cable's travel is not known
  std::string words;              ///< "the clamp on S3L holds it"; empty where nothing does
  bool to_structure = false;      ///< it stays while the cable moves through it
};

/// Held by a clamp, or a grommet or bushing that fits it closely, within its length: then it stays.
/// Held by attachments that it cannot slip over, no farther than `farthest_stop_in` from each end,
/// or by nothing: then it goes with the cable. On a line that does not move it stays.
SleeveHold sleeve_hold(const PreparedRoute& route, const Sleeve& sleeve,
                       const std::vector<Passage>& on_the_way);

/// The parts of a route that a sleeve guards at every place of the travel.
class SleeveGuards {
 public:
  explicit SleeveGuards(const PreparedRoute& route);

  /// A sleeve that structure holds guards its whole length. One that goes with its cable guards
  /// what it never leaves, less half of the step in which places along a line are told apart, and
  /// nothing where the cable's travel is not stated. An attachment that stands out of a sleeve is
  /// not guarded by it.
  bool guard(double distance_in) const;

 private:
  struct Part {
    double from_in = 0;
    double to_in = 0;
  };
  const PreparedRoute* route_;
  std::vector<Part> parts_;
};

}  // namespace linewright
