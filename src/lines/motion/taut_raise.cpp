#include "lines/motion/taut_raise.hpp"

#include <algorithm>

namespace linewright {

namespace {

/// Beyond what any cable of a light aeroplane is rigged to.
constexpr double most_raise_lbf = 500;
constexpr double raise_within_lbf = 1e-6;

/// A cable at the lowest of its tensions, were it rigged tighter.
LoopedCable tighter(const PreparedRoute& route, const CableState& state, double by_lbf) {
  const double lowest_lbf = state.coldest_lbf + by_lbf;
  return {.tension_lbf = std::max(0.0, lowest_lbf),
          .slack_in = state.change ? thermal_slack_in(*state.change, lowest_lbf) : 0,
          .stiffness_lbf_per_in = route.line->axial_stiffness_lbf->value / route.length_in()};
}

}  // namespace

std::optional<double> taut_raise_lbf(const PreparedProject& prepared,
                                     const std::vector<CableState>& states, std::size_t index) {
  const PreparedRoute& route = prepared.routes[index];
  const CableState& state = states[index];
  const bool slackened = state.slack_side && state.slack_side->slack_in > 0;
  if (state.coldest_slack_in <= 0 && !slackened) return std::nullopt;
  const double for_cold_lbf = std::max(0.0, -state.coldest_lbf);
  if (!state.slack_side) return for_cold_lbf;
  const auto partners =
      std::count_if(prepared.routes.begin(), prepared.routes.end(),
                    [&](const PreparedRoute& other) { return work_together(route, other); });
  if (partners != 1) return std::nullopt;
  const PreparedRoute& other = *state.slack_side->pulled;
  const auto other_index = static_cast<std::size_t>(&other - prepared.routes.data());
  const auto stiffness = airframe_stiffness_lbf_per_in(prepared, route);
  const auto is_taut = [&](double by_lbf) {
    return pulled_loop(tighter(other, states[other_index], by_lbf), tighter(route, state, by_lbf),
                       state.slack_side->pull_lbf, stiffness ? 1 / *stiffness : 0)
               .other_slack_in <= 0;
  };
  double low_lbf = 0;
  double high_lbf = most_raise_lbf;
  if (!is_taut(high_lbf)) return std::nullopt;
  while (high_lbf - low_lbf > raise_within_lbf) {
    const double middle_lbf = (low_lbf + high_lbf) / 2;
    (is_taut(middle_lbf) ? high_lbf : low_lbf) = middle_lbf;
  }
  return std::max(high_lbf, for_cold_lbf);
}

}  // namespace linewright
