#include "rules/space/pair_tolerance.hpp"

#include <algorithm>

namespace linewright {

std::vector<TolerancePart> tolerance_parts(const PreparedProject& prepared,
                                           const PreparedRoute& first,
                                           const PreparedRoute& second) {
  const double drawn_in = prepared.line_tolerance_in(false);
  if (first.as_built.empty() && second.as_built.empty())
    return {{2 * drawn_in, [](double, double) { return true; }}};
  std::vector<TolerancePart> parts;
  for (const bool first_built : {false, true}) {
    for (const bool second_built : {false, true}) {
      if ((first_built && first.as_built.empty()) || (second_built && second.as_built.empty()))
        continue;
      parts.push_back(
          {prepared.line_tolerance_in(first_built) + prepared.line_tolerance_in(second_built),
           [&first, &second, first_built, second_built](double a, double b) {
             return first.is_as_built(a) == first_built && second.is_as_built(b) == second_built;
           }});
    }
  }
  return parts;
}

double most_pair_tolerance_in(const PreparedProject& prepared) {
  return 2 * std::max(prepared.line_tolerance_in(false), prepared.line_tolerance_in(true));
}

}  // namespace linewright
