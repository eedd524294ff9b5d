#include "lines/motion/line_motion.hpp"

#include <thread>

#include "geometry/parallel.hpp"
#include "lines/motion/rod_sweep.hpp"

namespace linewright {

LineMotion motion_of(const PreparedProject& prepared) {
  const std::size_t count = prepared.routes.size();
  LineMotion motion{free_runs(prepared),
                    cable_states(prepared),
                    {prepared.routes.begin(), prepared.routes.end()},
                    std::vector<std::vector<SpanReach>>(count),
                    std::vector<std::vector<Stretch>>(count),
                    std::vector<RodWay>(count),
                    TiedLines(prepared)};
  for_each_parallel(count, std::thread::hardware_concurrency(), [&](std::size_t i) {
    const PreparedRoute& route = prepared.routes[i];
    if (route.line->kind == LineKind::rod) {
      motion.rods[i] = rod_way(route);
      motion.reaches[i] = {rod_reach(prepared, route, motion.rods[i])};
      motion.hanging[i] = {motion.reaches[i].front().stretch};
      return;
    }
    motion.reaches[i] = span_reaches(prepared, route, motion.runs, motion.cables[i]);
    motion.hanging[i] = hanging_stretches(route, motion.reaches[i]);
  });
  return motion;
}

}  // namespace linewright
