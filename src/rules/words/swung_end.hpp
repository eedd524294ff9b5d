#pragma once
// Words for the ends of a cable that swing, or are taken not to.

#include <string>

#include "lines/arm_swing.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// "; pedal-left is taken as fixed: its arm is not stated", for a point that is the nearest guide
/// of a horn or pedal whose swing is not known; empty elsewhere.
std::string fixed_end_words(const PreparedRoute& route, int point);

/// "2.05 in toward pedal, asked 5.00 in", for each way in which an arm gives less than the route
/// asks.
std::string shortfall_words(const PreparedRoute& route, const Movement& gives,
                            const Phrasing& phrasing);

/// "the arm at horn cannot move the cable through its travel: it gives 2.05 in toward pedal, asked
/// 5.00 in", for an arm that is too short; empty for any other end.
std::string short_arm_words(const PreparedRoute& route, RouteEnd end, const Phrasing& phrasing);

/// "rudder-horn-left": the end whose arm swings the cable at the point; of two the route's `from`.
std::string swinging_end_name(const PreparedRoute& route, int point);

}  // namespace linewright
