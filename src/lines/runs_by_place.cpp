#include "lines/runs_by_place.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace linewright {

RunsByPlace::RunsByPlace(const std::vector<FreeRun>& runs, int route) {
  for (const FreeRun& run : runs) {
    double walked_in = 0;
    for (const RunLeg& leg : run.legs) {
      if (leg.route == route) legs_.push_back({&run, &leg, walked_in});
      walked_in += leg.length_in();
    }
  }
  std::stable_sort(legs_.begin(), legs_.end(), [](const LegOfRun& a, const LegOfRun& b) {
    return a.leg->low_in() < b.leg->low_in();
  });
}

std::vector<LegOfRun> RunsByPlace::over(double low_in, double high_in) const {
  constexpr double same_place_in = 1e-9;
  std::vector<LegOfRun> found;
  auto each = std::lower_bound(
      legs_.begin(), legs_.end(), low_in - same_place_in,
      [](const LegOfRun& leg, double wanted_in) { return leg.leg->low_in() < wanted_in; });
  for (; each != legs_.end() && each->leg->low_in() <= low_in + same_place_in; ++each)
    if (std::abs(each->leg->low_in() - low_in) < same_place_in &&
        std::abs(each->leg->high_in() - high_in) < same_place_in)
      found.push_back(*each);
  std::stable_sort(found.begin(), found.end(), [](const LegOfRun& a, const LegOfRun& b) {
    return std::tie(a.run, a.leg) < std::tie(b.run, b.leg);
  });
  return found;
}

}  // namespace linewright
