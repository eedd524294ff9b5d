#pragma once
// The balance of air in a leaking system, which holds whatever the temperature does.
//
// A leak passes air in proportion to the pressure across it: dm/dt = k (p0 - p). The amount of air,
// as the pressure it would have at the temperature of the first reading, is therefore a straight
// line against the integral of the differential that was read, and k its slope. What departs from
// that line is no leak.

#include <vector>

#include "planning/leak_fit.hpp"

namespace linewright {

/// One value for each reading, differentials in pascals.
struct AirBalance {
  std::vector<double> time_s;
  std::vector<double> steady_pa;       ///< differential, temperature taken out
  std::vector<double> driven_pa_s;     ///< integral of the differential as read, from the start
  std::vector<double> temperature_pa;  ///< taken off for temperature

  std::size_t size() const { return time_s.size(); }
};

/// At most `most` readings, evenly picked; the integral is over all of them. Between readings the
/// differential runs along an exponential.
AirBalance air_balance(const std::vector<DecaySample>& samples, std::size_t most);

/// The standard deviation of the readings about one steady leak, `count - 2` degrees of freedom;
/// zero for fewer than three.
double balance_misfit_pa(const AirBalance& balance);

/// How the readings followed the temperature that was logged.
struct TemperatureShare {
  double excess = 0;     ///< 0: as the correction says; -1: not at all
  double error = 0;      ///< standard error of it
  double spread_pa = 0;  ///< of the correction, in ways that no leak runs: standard deviation
};

/// All zero where nothing can be told: fewer than five readings, or a temperature that runs as a
/// leak does.
TemperatureShare temperature_share(const AirBalance& balance);

}  // namespace linewright
