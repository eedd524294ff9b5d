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

enum class WalkKind { support, bend, gap, crossing, guard, terminal };

/// "support", "bend", "gap", "crossing", "guard", "terminal".
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
};

struct WalkSheet {
  const PreparedRoute* route = nullptr;
  std::vector<WalkItem> items;  ///< in order along the route
};

/// A sheet for every route, in file order. `judgements` are those of all rules on this project;
/// what cannot be seen or measured on the aeroplane (lag, frequencies) is left out.
std::vector<WalkSheet> walk_round_sheets(const PreparedProject& prepared,
                                         const std::vector<Judgement>& judgements);

}  // namespace linewright
