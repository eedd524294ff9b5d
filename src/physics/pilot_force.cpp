#include "physics/pilot_force.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace linewright {

namespace {

const PilotForce* find_force(std::span<const PilotForce> rows, std::string_view control) {
  const auto found = std::find_if(rows.begin(), rows.end(), [&](const PilotForce& row) {
    return is_same_control(row.control, control);
  });
  return found != rows.end() ? &*found : nullptr;
}

}  // namespace

const PilotForce* pilot_forces_on(const Route& route) {
  const PilotForce* wheel =
      route.worked_by == ControlGrip::wheel ? find_force(wheel_forces, route.control) : nullptr;
  return wheel ? wheel : find_force(pilot_forces, route.control);
}

double weight_factor(double weight_lbf) {
  const double share = (weight_lbf - light_weight_lbf) / (heaviest_weight_lbf - light_weight_lbf);
  return std::lerp(1, heaviest_factor, std::clamp(share, 0.0, 1.0));
}

std::optional<double> most_pilot_force_lbf(const Route& route) {
  const PilotForce* row = pilot_forces_on(route);
  if (!row) return std::nullopt;
  const bool heavy = route.lever && route.lever->weight_lbf;
  return row->most_lbf * (heavy ? weight_factor(*route.lever->weight_lbf) : 1);
}

std::optional<double> pilot_force_lbf(const Route& route) {
  if (!route.lever) return std::nullopt;
  if (route.lever->pilot_force_lbf) return route.lever->pilot_force_lbf;
  return most_pilot_force_lbf(route);
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
