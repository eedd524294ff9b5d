#pragma once
// What keeps a sleeve in its place on a line.

#include <optional>
#include <string>
#include <utility>
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
  /// Where along the line structure holds it, and what by: "clamp on S3L".
  std::vector<std::pair<double, std::string>> places = {};
};

/// Held by a clamp, or a grommet or bushing that fits it closely, within its length: then it stays.
/// Held by attachments that it cannot slip over, no farther than `farthest_stop_in` from each end,
/// or by nothing: then it goes with the cable. On a line that does not move it stays.
SleeveHold sleeve_hold(const PreparedRoute& route, const Sleeve& sleeve,
                       const std::vector<Passage>& on_the_way);

/// A turn that lies in one sleeve, and what of structure holds the sleeve before and after it; what
/// lies in the middle of the turn is both. A turn in a sleeve that nothing holds is guided by
/// nothing: the pull straightens cable and sleeve.
struct SleevedTurn {
  const Sleeve* sleeve = nullptr;
  std::string before;  ///< "clamp on S3L"; empty for nothing
  std::string after;

  bool is_led() const { return !before.empty() && !after.empty(); }
  bool is_held() const { return !before.empty() || !after.empty(); }
};

/// The sleeves of a route: what holds each, and the parts of the route that they guard at every
/// place of the travel. The route must outlive it.
class SleeveGuards {
 public:
  explicit SleeveGuards(const PreparedRoute& route);

  /// Of each of the route's sleeves, in order.
  const std::vector<SleeveHold>& holds() const { return holds_; }
  /// What the route passes on its way; empty where it has no sleeves.
  const std::vector<Passage>& on_the_way() const { return on_the_way_; }

  /// The best held of the sleeves that the whole bend lies in; nothing where it lies in none.
  std::optional<SleevedTurn> turn_in(const Bend& bend) const;

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
  std::vector<Passage> on_the_way_;
  std::vector<SleeveHold> holds_;
  std::vector<Part> parts_;
};

}  // namespace linewright
