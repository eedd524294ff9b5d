#include "lines/closed_over.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <string_view>

#include "geometry/plane/polygon.hpp"

namespace linewright {

namespace {

/// Square to the polygon as a whole (Newell's sum), not of unit length.
Vec3 normal_of(const std::vector<Vec3>& corners) {
  Vec3 sum;
  for (std::size_t i = 0; i < corners.size(); ++i)
    sum = sum + cross(corners[i], corners[(i + 1) % corners.size()]);
  return sum;
}

bool is_over(const std::vector<Vec3>& corners, Vec3 at) {
  const Vec3 normal = normal_of(corners);
  if (norm(normal) == 0) return false;
  const Vec3 square = unit(normal);
  const Vec3 aside = std::abs(square.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 across = unit(cross(square, aside));
  const Vec3 up = cross(square, across);
  std::vector<Vec2> outline;
  for (const Vec3 corner : corners) outline.push_back({dot(corner, across), dot(corner, up)});
  return covers(outline, {dot(at, across), dot(at, up)});
}

bool is_over(const Panel& panel, Vec3 at) {
  return is_over(panel.corners, at) ||
         std::any_of(panel.bays.begin(), panel.bays.end(),
                     [&](const std::vector<Vec3>& bay) { return is_over(bay, at); });
}

bool names(const Closure& closure, const std::string& part) {
  return std::find(closure.covers.begin(), closure.covers.end(), part) != closure.covers.end();
}

}  // namespace

std::vector<std::string> closures_in_order(const Project& project) {
  struct Step {
    const std::string* name;
    const std::vector<std::string>* after;
    bool is_closure;
  };
  // Tasks are waited for, too, and may wait: each is done as soon as it can be.
  std::vector<Step> steps;
  for (const Task& each : project.tasks) steps.push_back({&each.name, &each.after, false});
  for (const Closure& each : project.closures) steps.push_back({&each.name, &each.after, true});
  std::set<std::string_view> waiting;
  for (const Step& each : steps) waiting.insert(*each.name);
  std::vector<std::string> order;
  const auto is_free = [&](const Step& step) {
    return waiting.contains(*step.name) &&
           std::none_of(step.after->begin(), step.after->end(),
                        [&](const std::string& name) { return waiting.contains(name); });
  };
  const auto take = [&](const Step& step) {
    if (waiting.erase(*step.name) > 0 && step.is_closure) order.push_back(*step.name);
  };
  for (auto next = std::find_if(steps.begin(), steps.end(), is_free); next != steps.end();
       next = std::find_if(steps.begin(), steps.end(), is_free))
    take(*next);
  // Of a circle the first written goes on first.
  for (const Step& each : steps) take(each);
  return order;
}

bool goes_on_with(const Project& project, const std::string& part, const Closure& closure) {
  if (names(closure, part)) return true;
  return std::any_of(
      project.structure.panels.begin(), project.structure.panels.end(),
      [&](const Panel& panel) { return panel.name == part && panel.closure == closure.name; });
}

std::optional<std::string> first_closure_over(const Project& project,
                                              const std::vector<std::string>& closures, Vec3 at) {
  const auto goes_with = [&](const Panel& panel, const std::string& name) {
    if (panel.closure == name) return true;
    return std::any_of(
        project.closures.begin(), project.closures.end(),
        [&](const Closure& closure) { return closure.name == name && names(closure, panel.name); });
  };
  for (const std::string& closure : closures)
    for (const Panel& panel : project.structure.panels)
      if (goes_with(panel, closure) && is_over(panel, at)) return closure;
  return std::nullopt;
}

}  // namespace linewright
