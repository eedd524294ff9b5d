#include "lines/access/closing_order.hpp"

#include <algorithm>
#include <functional>
#include <queue>
#include <unordered_map>

namespace linewright {

namespace {

using Links = std::vector<std::vector<std::size_t>>;

struct Graph {
  std::size_t count = 0;
  Links earlier;  ///< what each waits for
  Links later;
};

Graph graph_of(const std::vector<std::string>& names, const std::vector<Before>& before) {
  std::unordered_map<std::string_view, std::size_t> index;
  for (std::size_t i = 0; i < names.size(); ++i) index.emplace(names[i], i);
  Graph graph{names.size(), Links(names.size()), Links(names.size())};
  for (const Before& each : before) {
    const std::size_t first = index.at(each.first);
    const std::size_t then = index.at(each.then);
    graph.earlier[then].push_back(first);
    graph.later[first].push_back(then);
  }
  return graph;
}

/// Takes what waits for nothing, the first named first. Marks what it took.
std::vector<std::size_t> taken_in_order(const Graph& graph, std::vector<char>& taken) {
  std::vector<std::size_t> waits_for(graph.count);
  std::priority_queue<std::size_t, std::vector<std::size_t>, std::greater<>> free;
  for (std::size_t i = 0; i < graph.count; ++i) {
    waits_for[i] = graph.earlier[i].size();
    if (waits_for[i] == 0) free.push(i);
  }
  std::vector<std::size_t> order;
  while (!free.empty()) {
    const std::size_t next = free.top();
    free.pop();
    taken[next] = 1;
    order.push_back(next);
    for (const std::size_t later : graph.later[next])
      if (--waits_for[later] == 0) free.push(later);
  }
  return order;
}

/// Of what is left each waits for something that is left, too: walking back from one to what it
/// waits for comes round.
std::vector<std::vector<std::size_t>> rings(const Graph& graph, const std::vector<char>& taken) {
  constexpr std::size_t never = 0;
  std::vector<std::size_t> walk_of(graph.count, never);
  std::vector<std::vector<std::size_t>> found;
  for (std::size_t start = 0; start < graph.count; ++start) {
    if (taken[start] || walk_of[start] != never) continue;
    std::vector<std::size_t> path;
    std::size_t at = start;
    while (walk_of[at] == never) {
      walk_of[at] = start + 1;
      path.push_back(at);
      const auto& earlier = graph.earlier[at];
      at = *std::find_if(earlier.begin(), earlier.end(),
                         [&](std::size_t each) { return !taken[each]; });
    }
    if (walk_of[at] != start + 1) continue;
    std::vector<std::size_t> ring(std::find(path.begin(), path.end(), at), path.end());
    std::reverse(ring.begin(), ring.end());
    std::rotate(ring.begin(), std::min_element(ring.begin(), ring.end()), ring.end());
    found.push_back(std::move(ring));
  }
  return found;
}

}  // namespace

std::set<std::string> closures_that_cover(const Project& project) {
  std::set<std::string> names;
  for (const Closure& closure : project.closures)
    if (!closure.covers.empty()) names.insert(closure.name);
  for (const Panel& panel : project.structure.panels)
    if (!panel.closure.empty()) names.insert(panel.closure);
  return names;
}

std::vector<Before> stated_order(const Project& project) {
  std::vector<Before> before;
  const auto add = [&](const std::string& name, const std::vector<std::string>& after) {
    for (const std::string& first : after)
      before.push_back({first, name, name + " is stated to come after " + first});
  };
  for (const Closure& closure : project.closures) add(closure.name, closure.after);
  for (const Task& task : project.tasks) add(task.name, task.after);
  return before;
}

ClosingOrder closing_order(const std::vector<std::string>& names,
                           const std::vector<Before>& before) {
  const Graph graph = graph_of(names, before);
  std::vector<char> taken(names.size(), 0);
  ClosingOrder result;
  for (const std::size_t each : taken_in_order(graph, taken)) result.order.push_back(names[each]);
  for (const std::vector<std::size_t>& ring : rings(graph, taken)) {
    result.circles.emplace_back();
    for (const std::size_t each : ring) result.circles.back().push_back(names[each]);
  }
  for (std::size_t i = 0; i < names.size(); ++i)
    if (!taken[i]) result.order.push_back(names[i]);
  return result;
}

}  // namespace linewright
