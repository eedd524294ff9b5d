#include "render/comparison.hpp"

#include <algorithm>
#include <cmath>

#include "render/check_changes.hpp"

namespace linewright {

namespace {

bool is_bad(const Judgement* judgement, Verdict verdict) {
  return judgement != nullptr && judgement->verdict == verdict;
}

template <typename Part>
const Part* find(const std::vector<const Part*>& parts, const std::string& name) {
  const auto found = std::find_if(parts.begin(), parts.end(),
                                  [&](const Part* part) { return part->name == name; });
  return found != parts.end() ? *found : nullptr;
}

template <typename Part>
std::vector<SidesOf<Part>> beside(const std::vector<const Part*>& a,
                                  const std::vector<const Part*>& b) {
  std::vector<SidesOf<Part>> sides;
  for (const Part* part : b) sides.push_back({find(a, part->name), part});
  for (const Part* part : a)
    if (find(b, part->name) == nullptr) sides.push_back({part, nullptr});
  return sides;
}

std::vector<const RouteCut*> routes_of(const Report& report) {
  std::vector<const RouteCut*> routes;
  for (const RouteReport& route : report.routes) routes.push_back(&route.cut);
  return routes;
}

std::vector<const SystemCut*> systems_of(const Report& report) {
  std::vector<const SystemCut*> systems;
  for (const SystemCut& system : report.systems) systems.push_back(&system);
  return systems;
}

}  // namespace

bool is_worse(const Comparison& comparison) {
  if (comparison.b.nothing_judged && !comparison.a.nothing_judged) return true;
  const std::vector<Change> changes = changes_between(comparison.a, comparison.b, {});
  const auto is_new = [](const Change& change, Verdict verdict) {
    return is_bad(change.now, verdict) && !is_bad(change.was, verdict);
  };
  return std::any_of(changes.begin(), changes.end(), [&](const Change& change) {
    return is_new(change, Verdict::fail) || is_new(change, Verdict::unknown);
  });
}

std::vector<SidesOf<RouteCut>> routes_beside(const Comparison& comparison) {
  return beside(routes_of(comparison.a), routes_of(comparison.b));
}

std::vector<SidesOf<SystemCut>> systems_beside(const Comparison& comparison) {
  return beside(systems_of(comparison.a), systems_of(comparison.b));
}

std::vector<SidesOf<PartRow>> parts_changed(const Comparison& comparison) {
  const auto twin = [](const std::vector<PartRow>& rows, const PartRow& row) -> const PartRow* {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const PartRow& each) {
      return each.item == row.item && each.size == row.size && each.unit == row.unit;
    });
    return found != rows.end() ? &*found : nullptr;
  };
  // No stock is cut to less than this.
  constexpr double rounding = 0.005;
  std::vector<SidesOf<PartRow>> sides;
  for (const PartRow& row : comparison.b_parts) {
    const PartRow* before = twin(comparison.a_parts, row);
    if (!before || std::abs(before->quantity - row.quantity) > rounding)
      sides.push_back({before, &row});
  }
  for (const PartRow& row : comparison.a_parts)
    if (!twin(comparison.b_parts, row)) sides.push_back({&row, nullptr});
  return sides;
}

}  // namespace linewright
