#pragma once
// What must be in, done and tested before each closure goes on.

#include <string>
#include <vector>

#include "lines/access/arm_reach.hpp"
#include "lines/access/closing_order.hpp"
#include "lines/access/reachable_things.hpp"
#include "planning/parts.hpp"

namespace linewright {

/// A line of the checklist.
struct CloseUpItem {
  std::string kind;  ///< "support", "grommet", "fitting", "sleeve", "turnbuckle", "line", "wire",
                     ///< "task", "loose-end"
  std::string name;
  std::string route;  ///< empty for tasks
  Vec3 at;
  std::string reached_now_by;  ///< "the outside", or an opening's name; empty where nothing reaches
  std::string why;
};

struct ClosureList {
  std::string name;
  std::vector<CloseUpItem> before;
  std::vector<std::string> tests;  ///< systems whose leak test comes before this closure
  std::vector<PartRow> in_hand;    ///< what has to have been bought by then
};

/// A circle, and why each of it comes before the next.
struct ClosingCircle {
  std::vector<std::string> names;
  std::vector<std::string> why;
};

struct CloseUp {
  std::string project_name;
  std::vector<std::string> order;     ///< closures; where there are circles, as far as there is one
  std::vector<ClosureList> closures;  ///< in that order
  std::vector<ClosingCircle> circles;
  std::vector<std::string> unknown;      ///< closures that do not say what they cover
  std::vector<std::string> problems;     ///< tasks that no hand comes to in their turn
  std::vector<CloseUpItem> not_reached;  ///< what no hand comes to even while nothing is on
  std::vector<std::string> notes;        ///< on ways in, and on the grid
  std::vector<std::string> assumptions;

  bool is_sound() const { return circles.empty() && unknown.empty() && problems.empty(); }
};

/// `prepared` with the project's meshes read. Costs a search of the grid for each closure that
/// covers something, and two more where there are tasks.
CloseUp close_up(const PreparedProject& prepared);

}  // namespace linewright
