#include "lines/motion/line_motion.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <thread>

#include "geometry/parallel.hpp"
#include "lines/motion/rod_sweep.hpp"

namespace linewright {

namespace {

std::vector<double> fitting_swings(const PreparedProject& prepared,
                                   const std::vector<std::vector<SpanReach>>& reaches) {
  std::vector<double> swings_in(prepared.fittings.size(), 0.0);
  std::map<const Node*, double*> hanging;
  for (std::size_t i = 0; i < swings_in.size(); ++i)
    if (!prepared.fittings[i].node->held()) hanging[prepared.fittings[i].node] = &swings_in[i];
  const auto swing_with = [&](const Node* node, const Stretch& last, double end_in) {
    const auto found = hanging.find(node);
    if (found == hanging.end()) return;
    *found->second = std::max(*found->second, last.envelope.width_in(Reach::likely, end_in));
  };
  for (std::size_t i = 0; i < reaches.size(); ++i) {
    if (reaches[i].empty()) continue;
    const Stretch& first = reaches[i].front().stretch;
    const Stretch& last = reaches[i].back().stretch;
    swing_with(prepared.routes[i].from, first, first.start_in);
    swing_with(prepared.routes[i].to, last, last.end_in);
  }
  return swings_in;
}

/// Of each route the runs that lead over it: `span_reaches` asks for no others.
std::vector<std::vector<FreeRun>> runs_by_route(const std::vector<FreeRun>& runs,
                                                std::size_t routes) {
  std::vector<std::vector<FreeRun>> by_route(routes);
  for (const FreeRun& run : runs) {
    std::set<int> met;
    for (const RunLeg& leg : run.legs)
      if (met.insert(leg.route).second)
        by_route[static_cast<std::size_t>(leg.route)].push_back(run);
  }
  return by_route;
}

Stretch as_drawn(const PreparedRoute& route) {
  ReachEnvelope still;
  still.end_in = route.length_in();
  return make_stretch(route, 0, still.end_in, still);
}

}  // namespace

LineMotion motion_of(const PreparedProject& prepared) {
  const std::size_t count = prepared.routes.size();
  LineMotion motion{free_runs(prepared),
                    cable_states(prepared),
                    {prepared.routes.begin(), prepared.routes.end()},
                    std::vector<Stretch>(count),
                    std::vector<std::vector<SpanReach>>(count),
                    std::vector<std::vector<Stretch>>(count),
                    std::vector<RodWay>(count),
                    TiedLines(prepared),
                    {}};
  const std::vector<std::vector<FreeRun>> runs = runs_by_route(motion.runs, count);
  for_each_parallel(count, std::thread::hardware_concurrency(), [&](std::size_t i) {
    const PreparedRoute& route = prepared.routes[i];
    motion.drawn[i] = as_drawn(route);
    if (route.line->kind == LineKind::rod) {
      motion.rods[i] = rod_way(route);
      motion.reaches[i] = {rod_reach(prepared, route, motion.rods[i])};
      motion.hanging[i] = {motion.reaches[i].front().stretch};
      return;
    }
    motion.reaches[i] = span_reaches(prepared, motion.drawn[i], runs[i], motion.cables[i]);
    motion.hanging[i] = hanging_stretches(motion.drawn[i], motion.reaches[i]);
  });
  motion.fitting_swings_in = fitting_swings(prepared, motion.reaches);
  return motion;
}

}  // namespace linewright
