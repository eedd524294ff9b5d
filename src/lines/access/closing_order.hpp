#pragma once
// What comes before what: closures and tasks by name.

#include <set>
#include <string>
#include <vector>

#include "model/project.hpp"

namespace linewright {

/// One comes before another, and why.
struct Before {
  std::string first;
  std::string then;
  std::string why;
};

/// The closures that cover something: by what they name, or by panels that name them.
std::set<std::string> closures_that_cover(const Project& project);

/// What the project states of its closures and tasks.
std::vector<Before> stated_order(const Project& project);

struct ClosingOrder {
  std::vector<std::string> order;  ///< all that can be put in one, else in the order of `names`
  /// Each by name in the order of doing, round to the one that its first waits for.
  std::vector<std::vector<std::string>> circles;
};

/// Every name of `before` must be in `names`. Of several that could come next, the first named
/// does.
ClosingOrder closing_order(const std::vector<std::string>& names,
                           const std::vector<Before>& before);

}  // namespace linewright
