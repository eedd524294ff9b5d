#pragma once
// What ends access when it is fitted, the ways in that are left then, and the work that has to be
// done before.

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "model/source.hpp"
#include "model/vector.hpp"

namespace linewright {

/// A hand hole, hatch or open end through which work can still be done. Its shape is a circle
/// (`diameter_in`), a rectangle (`size_in`, square to `normal`) or `outline`.
struct Opening {
  std::string name;
  Vec3 centre;  ///< an outline's: the mean of its corners
  std::optional<double> diameter_in;
  std::optional<Vec3> normal;                    ///< direction it faces, of any length, either way
  std::optional<std::array<double, 2>> size_in;  ///< width and height
  std::vector<Vec3> outline;
  double reach_in = 0;  ///< how far an arm gets in
  bool crawl = false;   ///< a person goes in and reaches from there
  SourceLocation where;

  friend bool operator==(const Opening&, const Opening&) = default;
};

/// A panel, or group of panels, that ends access when it is fitted.
struct Closure {
  std::string name;
  std::vector<std::string> covers;  ///< parts that go on with it
  std::vector<std::string> after;   ///< closures and tasks that come before this one
  std::vector<Opening> openings;    ///< what is left to reach through
  double reach_in = 0;              ///< of openings that state none
  SourceLocation where;

  friend bool operator==(const Closure&, const Closure&) = default;
};

/// Work at one place.
struct Task {
  std::string name;
  Vec3 at;
  std::string on;                  ///< the part that it is done on; empty for none
  std::vector<std::string> after;  ///< closures and tasks that come before it
  bool two_hands = false;          ///< it is held on both sides at once, as a bolt and its nut are
  int again = 0;                   ///< how often it comes apart once more
  SourceLocation where;

  friend bool operator==(const Task&, const Task&) = default;
};

/// A line's end that hangs loose until a task is done.
struct LooseEnd {
  std::string until;  ///< the task
  double coil_in = 0;
  SourceLocation where;

  friend bool operator==(const LooseEnd&, const LooseEnd&) = default;
};

}  // namespace linewright
