#include "input/closure_cycles.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace linewright {

namespace {

/// Orders by the closure that waits, in file order.
using OrdersByClosure = std::map<std::string_view, std::vector<const ClosureOrder*>>;

/// Takes away closures that wait for nothing that is left, until the rest all wait for each other
/// or for those that do.
void take_away_free(OrdersByClosure& waiting, const std::vector<ClosureOrder>& orders) {
  std::map<std::string_view, std::vector<const ClosureOrder*>> held_up;
  std::map<std::string_view, std::size_t> pending;
  std::vector<std::string_view> free;
  for (const ClosureOrder& order : orders) {
    held_up[order.after].push_back(&order);
    ++pending[order.closure];
  }
  for (const auto& [name, held] : held_up)
    if (!pending.contains(name)) free.push_back(name);
  while (!free.empty()) {
    const std::string_view name = free.back();
    free.pop_back();
    for (const ClosureOrder* order : held_up[name]) {
      if (--pending[order->closure] > 0) continue;
      waiting.erase(order->closure);
      free.push_back(order->closure);
    }
  }
}

void report_ring(const std::vector<const ClosureOrder*>& ring, ProjectDraft& draft) {
  std::string chain;
  for (const ClosureOrder* order : ring) chain += quoted_text(order->closure) + " after ";
  chain += quoted_text(ring.back()->after);
  draft.add_error(ring.back()->where, fmt::format("closures wait for each other: {}", chain));
}

}  // namespace

void check_closure_cycles(ProjectDraft& draft) {
  OrdersByClosure waiting;
  for (const ClosureOrder& order : draft.closure_orders)
    if (!order.closure.empty()) waiting[order.closure].push_back(&order);
  take_away_free(waiting, draft.closure_orders);

  std::map<std::string_view, const ClosureOrder*> walked;
  for (const ClosureOrder& start : draft.closure_orders) {
    std::vector<const ClosureOrder*> path;
    std::map<std::string_view, std::size_t> place_in_path;
    std::string_view name = start.closure;
    while (waiting.contains(name) && !walked.contains(name)) {
      const auto& orders = waiting[name];
      const auto next = std::find_if(orders.begin(), orders.end(), [&](const ClosureOrder* order) {
        return waiting.contains(order->after);
      });
      if (next == orders.end()) break;
      walked.emplace(name, *next);
      place_in_path.emplace(name, path.size());
      path.push_back(*next);
      name = (*next)->after;
    }
    const auto ring_start = place_in_path.find(name);
    if (ring_start == place_in_path.end()) continue;
    path.erase(path.begin(), path.begin() + static_cast<std::ptrdiff_t>(ring_start->second));
    report_ring(path, draft);
  }
}

}  // namespace linewright
