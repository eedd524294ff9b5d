#include "lines/named_hole.hpp"

#include "geometry/plane/polygon.hpp"
#include "lines/crossings.hpp"

namespace linewright {

NamedHole find_hole(const Project& project, const Walls& walls, const std::string& name) {
  if (name.empty()) return {};
  for (const Frame& frame : project.structure.frames)
    for (const Hole& hole : frame.holes)
      if (hole.name == name)
        return {&frame, &hole, !overlapped_by(frame, hole) && !leaves(frame.outline, hole)};
  for (const Wall& wall : walls)
    if (!wall.implied && wall.hole().name == name)
      return {&wall.frame, &wall.hole(), !wall.runs_into && !wall.leaves_wall};
  return {};
}

}  // namespace linewright
