#include "planning/clamp_size.hpp"

namespace linewright {

namespace {

/// A cushion gives by so much: a line of 0.255 in goes into a clamp for 1/4 in [common practice, no
/// source].
constexpr double cushion_gives_in = 0.01;

}  // namespace

std::optional<ClampSize> clamp_about(const PreparedRoute& route, double distance_in,
                                     const Catalogue& catalogue) {
  std::optional<double> held_in = route.line->outside_diameter_in;
  if (const Sleeve* sleeve = route.sleeve_at(distance_in)) held_in = sleeve->outside_in;
  if (!held_in) return std::nullopt;
  const ClampSize* best = nullptr;
  for (const ClampSize& each : catalogue.clamps)
    if (each.nominal_diameter_in >= *held_in - cushion_gives_in &&
        (!best || each.nominal_diameter_in < best->nominal_diameter_in))
      best = &each;
  return best ? std::optional(*best) : std::nullopt;
}

}  // namespace linewright
