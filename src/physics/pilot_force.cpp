#include "physics/pilot_force.hpp"

#include <algorithm>

namespace linewright {

const PilotForce* pilot_forces_on(std::string_view control) {
  const auto found =
      std::find_if(pilot_forces.begin(), pilot_forces.end(),
                   [&](const PilotForce& row) { return is_same_control(row.control, control); });
  return found != pilot_forces.end() ? &*found : nullptr;
}

std::optional<double> pilot_force_lbf(const Route& route) {
  if (!route.lever) return std::nullopt;
  if (route.lever->pilot_force_lbf) return route.lever->pilot_force_lbf;
  const PilotForce* row = pilot_forces_on(route.control);
  return row ? std::optional(row->most_lbf) : std::nullopt;
}

bool takes_pilot_force(const Route& route) {
  return route.lever && !route.lever->pilot_force_lbf && pilot_force_lbf(route);
}

std::optional<double> pilot_pull_lbf(const Route& route) {
  const std::optional<double> force = pilot_force_lbf(route);
  if (!force) return std::nullopt;
  return *force * route.lever->ratio * (route.lever->two_pilots ? two_pilots_ratio : 1);
}

std::optional<double> limit_load_lbf(const Route& route) {
  if (route.tension && route.tension->limit_load_lbf) return route.tension->limit_load_lbf;
  return pilot_pull_lbf(route);
}

std::optional<double> limit_pull_lbf(const Route& route) {
  const std::optional<double> pull = pilot_pull_lbf(route);
  const std::optional<double> load = limit_load_lbf(route);
  return pull && load ? std::max(*pull, *load) : load;
}

double pulled_alone_lbf(double rest_lbf, double pull_lbf) {
  return std::max(pull_lbf, rest_lbf + pull_lbf / 2);
}

}  // namespace linewright
