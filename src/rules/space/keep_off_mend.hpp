#pragma once
// How a line is got off the structure that it is too near to.

#include <optional>
#include <string>
#include <vector>

#include "lines/near/approach.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// A place of a line, how much more it must be away from what is nearest there, and whether it can
/// move in its supports.
struct TooNear {
  const PreparedRoute& route;
  const Approach& place;  ///< with its obstacle
  double lacking_in = 0;
  bool can_move = false;
};

/// True where the line as drawn goes through what it is near to: no distance mends that.
bool is_pierced(const Approach& place);

/// The move across the line that makes up for what is lacking, as a vector: a line is never moved
/// along itself. Nothing where what is near lies ahead of it or behind rather than beside it, and
/// where the move would bring the line too near to another edge of the same hole.
std::optional<Vec3> move_away(const PreparedProject& prepared, const TooNear& near);

/// What can be done about it, to be read as one of several: guard the edge, move the line, make the
/// hole wider, hold the line closer, lead it round. Never empty.
std::vector<std::string> ways_off(const RuleContext& context, const TooNear& near);

/// "guard the edge, or move the line 0.340 in away, mainly up".
std::string alternatives(const std::vector<std::string>& ways);

}  // namespace linewright
