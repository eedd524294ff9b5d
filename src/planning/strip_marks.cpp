#include "planning/strip_marks.hpp"

#include <algorithm>

#include "lines/passages.hpp"
#include "model/angle.hpp"

namespace linewright {

std::vector<StripMark> strip_marks(const PreparedRoute& route) {
  std::vector<StripMark> marks;
  for (const Passage& each : passages(route))
    marks.push_back({each.point ? StripMarkKind::support : StripMarkKind::crossing, each.start_in,
                     each.end_in, each.words});
  for (const Bend& bend : route.centreline.made_bends())
    marks.push_back({StripMarkKind::bend, bend.start_in, bend.end_in, "bend",
                     bend.angle_rad * degrees_per_radian});
  for (const Sleeve& sleeve : route.route->sleeves)
    marks.push_back({StripMarkKind::sleeve, sleeve.from_in, sleeve.to_in, "sleeve"});
  for (const Attachment& each : route.route->attached)
    marks.push_back({StripMarkKind::attachment, each.at_in - each.length_in / 2,
                     each.at_in + each.length_in / 2, each.kind});
  std::stable_sort(marks.begin(), marks.end(), [](const StripMark& a, const StripMark& b) {
    return a.middle_in() < b.middle_in();
  });
  return marks;
}

}  // namespace linewright
