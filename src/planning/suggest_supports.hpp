#pragma once
// The fewest supports of a line with which the rules that ask for supports find nothing wrong.

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/structure/obstacles.hpp"
#include "model/judgement.hpp"
#include "model/project.hpp"
#include "planning/support_search.hpp"

namespace linewright {

/// Rules that supports are there for, and by which their places are found.
inline constexpr std::string_view support_rules[] = {"support-spacing", "bend-fit", "chafe",
                                                     "resonance", "support-mount"};
/// Rules that must still find nothing wrong where they find nothing as drawn.
inline constexpr std::string_view rules_beside_supports[] = {"clearance", "frame-crossing"};

/// What those rules find wrong on the route.
struct RouteFault {
  Judgement judgement;
  bool clamp_lost = false;  ///< it is so only once one of the clamps has let go
};
/// Judges a route of a changed project by both lists of rules, and leaves out what is right or
/// waived. `planning` includes no rule: whoever asks brings them.
using JudgeRoute = std::function<std::vector<RouteFault>(const Project&)>;

struct SuggestedSupport {
  double distance_in = 0;  ///< along the route from its `from` node
  Vec3 at;
  std::string on;      ///< the part or hole that holds it; empty where none is named
  std::string hold;    ///< "clamp" or "grommet"
  bool drawn = false;  ///< it is there already
  std::string why;     ///< what is wrong without it
};

struct SupportSuggestion {
  std::string route;
  std::string from;  ///< its first node
  /// Nothing that the rules ask of supports is wrong with these.
  bool possible = false;
  std::vector<SuggestedSupport> supports;  ///< in order along the route
  int replaces = 0;                        ///< clamps that are drawn, wherever they are
  Route with;                              ///< the route with the supports; as drawn without any
  /// What no support mends; or what stops the line from being supported, and where.
  std::vector<SupportFault> faults;
  bool gave_up = false;    ///< there may be supports that do: it took too long to find them
  bool was_found = false;  ///< `supports` mends all that supports can
  /// The route that the file writes, of which this one is the mirror image; empty for one that is
  /// written itself.
  std::string mirror_of = {};
};

/// Looks along one route that can be clamped, of a project whose names resolve, in the structure
/// that was made of it. Coordinates of new supports are whole multiples of `place_step_in`.
SupportSuggestion suggest_supports(const Project& project, const Obstacles& structure,
                                   const std::string& route, double place_step_in,
                                   const JudgeRoute& judge);

}  // namespace linewright
