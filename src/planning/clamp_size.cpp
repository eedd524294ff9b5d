#include "planning/clamp_size.hpp"

namespace linewright {

namespace {

/// A cushion gives by so much: a line of 0.255 in goes into a clamp for 1/4 in [common practice, no
/// source].
constexpr double cushion_gives_in = 0.01;

}  // namespace

std::optional<ClampSize> clamp_about(double girth_in, const Catalogue& catalogue) {
  const ClampSize* best = nullptr;
  for (const ClampSize& each : catalogue.clamps)
    if (each.nominal_diameter_in >= girth_in - cushion_gives_in &&
        (!best || each.nominal_diameter_in < best->nominal_diameter_in))
      best = &each;
  return best ? std::optional(*best) : std::nullopt;
}

}  // namespace linewright
