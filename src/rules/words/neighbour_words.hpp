#pragma once
// Structure as the builder calls it.

#include <optional>
#include <string>

#include "geometry/structure/obstacles.hpp"
#include "lines/prepared.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// "the edge of channel S3L", "the rolled edge (0.100 in radius) of hole F4-b", "panel aft-deck".
std::string obstacle_words(const Part& part, const Obstacle& obstacle, const Phrasing& phrasing);

/// "edge", "bare edge", "rolled edge" or "flanged edge (0.100 in radius)"; the radius where it is
/// stated. "bare" is said only where asked for.
std::string edge_words(EdgeGuard guard, std::optional<double> radius_in, const Phrasing& phrasing,
                       bool say_bare = false);

/// "frame F4"; one that is not at a station with where it stands: "frame R2 at BL -12.0".
std::string frame_words(const Frame& frame, const Phrasing& phrasing);

/// "edge trim", "grommet" or "bushing": what guards an edge; "rolled", "flanged" or "bare" where
/// nothing does.
std::string guard_word(EdgeGuard guard);

/// What to say after a guarded edge that does not keep this line off it: ", whose edge trim does
/// not guard a cable that moves"; else empty.
std::string sawn_words(const PreparedRoute& route, EdgeGuard guard);

/// "with its turnbuckle " for a place that a thicker attachment comes to, to begin a message with;
/// else empty.
std::string attachment_words(const PreparedRoute& route, double distance_in);

/// ", mainly up", ", mainly to the left"… for a direction; empty for no direction.
std::string direction_words(Vec3 direction);

}  // namespace linewright
