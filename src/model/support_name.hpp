#pragma once
// What a support is called, and its number on its line.

#include <string>
#include <vector>

#include "model/network.hpp"

namespace linewright {

/// "clamp", "grommet", "bushing", "fairlead", "pulley".
constexpr const char* hold_word(HoldKind hold) {
  switch (hold) {
    case HoldKind::clamp:
      return "clamp";
    case HoldKind::grommet:
      return "grommet";
    case HoldKind::bushing:
      return "bushing";
    case HoldKind::fairlead:
      return "fairlead";
    case HoldKind::pulley:
      return "pulley";
  }
  return "";
}

/// "clamp on S3L", "fairlead in F4-b", "hole F4-a"; empty for a mere corner.
inline std::string support_name(const RoutePoint& point) {
  if (!point.hold) return point.through.empty() ? std::string() : "hole " + point.through;
  std::string name = hold_word(*point.hold);
  if (!point.through.empty()) name += " in " + point.through;
  if (!point.to.empty()) name += " on " + point.to;
  return name;
}

/// Numbers, counted from 1 along the line from its `from` node, of the points that hold the line or
/// lead it through a hole; 0 for a mere corner. One for each of the points.
inline std::vector<int> support_numbers(const std::vector<RoutePoint>& points) {
  std::vector<int> numbers;
  int last = 0;
  for (const RoutePoint& point : points)
    numbers.push_back(point.hold || !point.through.empty() ? ++last : 0);
  return numbers;
}

}  // namespace linewright
