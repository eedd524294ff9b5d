#include "lines/motion/line_motion.hpp"

#include <set>
#include <thread>

#include "geometry/parallel.hpp"
#include "lines/motion/rod_sweep.hpp"

namespace linewright {

namespace {

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

}  // namespace

LineMotion motion_of(const PreparedProject& prepared) {
  const std::size_t count = prepared.routes.size();
  LineMotion motion{free_runs(prepared),
                    cable_states(prepared),
                    {prepared.routes.begin(), prepared.routes.end()},
                    std::vector<std::vector<SpanReach>>(count),
                    std::vector<std::vector<Stretch>>(count),
                    std::vector<RodWay>(count),
                    TiedLines(prepared)};
  const std::vector<std::vector<FreeRun>> runs = runs_by_route(motion.runs, count);
  for_each_parallel(count, std::thread::hardware_concurrency(), [&](std::size_t i) {
    const PreparedRoute& route = prepared.routes[i];
    if (route.line->kind == LineKind::rod) {
      motion.rods[i] = rod_way(route);
      motion.reaches[i] = {rod_reach(prepared, route, motion.rods[i])};
      motion.hanging[i] = {motion.reaches[i].front().stretch};
      return;
    }
    motion.reaches[i] = span_reaches(prepared, route, runs[i], motion.cables[i]);
    motion.hanging[i] = hanging_stretches(route, motion.reaches[i]);
  });
  return motion;
}

}  // namespace linewright
