#pragma once
// What to look at and measure on the aeroplane itself, line by line: each support, bend, gap,
// crossing, guard and terminal, with what the drawing has there and the limit it is held to.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lines/prepared.hpp"
#include "model/judgement.hpp"

namespace linewright {

enum class WalkKind { support, bend, gap, crossing, guard, terminal, place };

/// "support", "bend", "gap", "crossing", "guard", "terminal", "place".
std::string_view walk_word(WalkKind kind);

/// One line of a sheet.
struct WalkItem {
  WalkKind kind = WalkKind::support;
  std::string what;        ///< the thing itself, or what is to be seen of it
  double distance_in = 0;  ///< along the route from its `from` node
  Vec3 at;
  std::string rule;             ///< that has the limit; empty: only the place is looked at
  std::optional<double> drawn;  ///< in `unit`
  std::optional<double> limit;
  Unit unit = Unit::none;
  LimitSense sense = LimitSense::at_least;
  std::optional<Verdict> verdict;  ///< on the drawing; absent without a rule
  std::string source;              ///< of the limit
  bool as_built = false;           ///< the line there is, so that `drawn` and `verdict` are of it
  std::optional<Vec3> found;       ///< where it was measured to be
  std::optional<double> measured;  ///< what was measured in place of `drawn`, in `unit`
  std::string on;                  ///< the day it was measured, and who did; empty where it was not
  std::string by;
};

struct WalkSheet {
  const PreparedRoute* route = nullptr;
  std::vector<WalkItem> items;  ///< in order along the route
};

/// A sheet for every route, in file order. Supports have the numbers by which `built` names them,
/// and what it has of them is there. `judgements` are those of all rules on this project; what
/// cannot be seen or measured on the aeroplane (lag, frequencies) is left out.
std::vector<WalkSheet> walk_round_sheets(const PreparedProject& prepared,
                                         const std::vector<Judgement>& judgements);

}  // namespace linewright
