#pragma once
// Finding what stands along a line by where it stands: things with a `distance_in`, in order.

#include <algorithm>
#include <cstddef>
#include <span>
#include <vector>

namespace linewright {

/// Those of `things`, in order along a line, that stand from `low_in` to `high_in`. Their order may
/// be off by rounding: one that stands just outside may be among them.
template <typename Thing>
std::span<const Thing> between_along(const std::vector<Thing>& things, double low_in,
                                     double high_in) {
  constexpr double rounding_in = 1e-9;
  const auto first = std::lower_bound(
      things.begin(), things.end(), low_in - rounding_in,
      [](const Thing& thing, double wanted_in) { return thing.distance_in < wanted_in; });
  const auto end = std::upper_bound(
      first, things.end(), high_in + rounding_in,
      [](double wanted_in, const Thing& thing) { return wanted_in < thing.distance_in; });
  const auto skipped = static_cast<std::size_t>(first - things.begin());
  return std::span(things).subspan(skipped, static_cast<std::size_t>(end - first));
}

}  // namespace linewright
