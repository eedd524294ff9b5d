#include "lines/passages.hpp"

#include <algorithm>
#include <cmath>

namespace linewright {

namespace {

/// A frame met at a slant is passed over a longer way, up to this many thicknesses.
constexpr double longest_slant = 20;
/// A support that names a hole stands in it where it is this near to the frame.
constexpr double in_hole_within_in = 1.0;

Passage support_passage(const PreparedRoute& route, const Support& support) {
  const auto index = static_cast<std::size_t>(support.point);
  const RoutePoint& point = route.route->points[index];
  Passage passage;
  passage.start_in = passage.end_in = support.distance_in;
  passage.name = point.through.empty() ? point.to : point.through;
  passage.words = support.name;
  passage.point = &point;
  passage.leads = point.hold != HoldKind::clamp;
  if (point.hold != HoldKind::pulley) return passage;
  for (const Bend& bend : route.centreline.bends()) {
    if (bend.corner != support.point + 1) continue;
    passage.start_in = bend.start_in;
    passage.end_in = bend.end_in;
  }
  return passage;
}

Passage free_fairlead_passage(const FreePassage& free) {
  Passage passage;
  passage.start_in = passage.end_in = free.distance_in;
  passage.name = free.fairlead().through.empty() ? free.fairlead().to : free.fairlead().through;
  passage.words = "fairlead";
  if (!free.fairlead().through.empty()) passage.words += " in " + free.fairlead().through;
  passage.point = &free.fairlead();
  passage.leads = true;
  return passage;
}

Passage frame_passage(const PreparedRoute& route, const Crossing& crossing) {
  const double straight =
      std::abs(dot(route.centreline.direction(crossing.distance_in), crossing.frame->plane.normal));
  const double half = crossing.frame->thickness_in / 2 / std::max(straight, 1 / longest_slant);
  Passage passage;
  passage.start_in = crossing.distance_in - half;
  passage.end_in = crossing.distance_in + half;
  passage.name = crossing.hole ? crossing.name() : crossing.frame->name;
  passage.words = crossing.hole ? "hole " + crossing.hole->name : "frame " + passage.name;
  passage.crossing = &crossing;
  return passage;
}

bool stands_in(const Passage& support, const Passage& frame) {
  return frame.crossing->hole && support.point &&
         support.point->through == (frame.crossing->wall && frame.crossing->wall->implied
                                        ? std::string()
                                        : frame.crossing->hole->name) &&
         std::abs(support.middle_in() - frame.middle_in()) <= in_hole_within_in;
}

}  // namespace

std::vector<Passage> passages(const PreparedRoute& route) {
  std::vector<Passage> found;
  for (const Support& support : route.supports)
    if (support.point >= 0) found.push_back(support_passage(route, support));
  for (const Support& guide : route.loose_guides) found.push_back(support_passage(route, guide));
  for (const FreePassage& free : route.free_passages) found.push_back(free_fairlead_passage(free));
  const std::size_t supports = found.size();
  for (const Crossing& crossing : route.crossings) {
    const Passage frame = frame_passage(route, crossing);
    const auto last = found.begin() + static_cast<std::ptrdiff_t>(supports);
    const auto support = std::find_if(found.begin(), last,
                                      [&](const Passage& each) { return stands_in(each, frame); });
    if (support == last) {
      found.push_back(frame);
      continue;
    }
    support->start_in = std::min(support->start_in, frame.start_in);
    support->end_in = std::max(support->end_in, frame.end_in);
    support->crossing = frame.crossing;
  }
  std::stable_sort(found.begin(), found.end(), [](const Passage& a, const Passage& b) {
    return a.middle_in() < b.middle_in();
  });
  return found;
}

}  // namespace linewright
