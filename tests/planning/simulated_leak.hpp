#pragma once
// Logs of leak tests whose leak, temperature and noise are known, integrated in small steps of time
// from the gas law and a flow in proportion to pressure, apart from the code under test.

#include <cmath>
#include <functional>
#include <random>

#include "model/leak_log.hpp"
#include "physics/atmosphere.hpp"
#include "planning/leak_test_plan.hpp"

namespace linewright {

struct SimulatedLeak {
  double loss_per_minute = 0;  ///< at steady temperature, from the target; 0: tight
  double start = 0;            ///< offset of the first reading from the target
  /// Warming by a quarter of a degree in a minute: the thermometer moves, the needle hardly more.
  std::function<double(double)> temperature_degf = [](double t) { return 59 + t / 240; };
  double noise = 0;  ///< standard deviation of a reading
  double temperature_step = 0.01;
  bool log_temperature = true;
  double duration_s = 180;
  double interval_s = 10;
  unsigned seed = 1;
  double reading_step = 0.01;
};

inline double to_step(double value, double step) {
  return std::round(value / step) * step;
}

inline LeakLog simulated(const LeakTestPlan& plan, const SimulatedLeak& leak) {
  const LeakGauge& gauge = plan.gauge;
  std::mt19937_64 random(leak.seed);
  std::normal_distribution<double> noise(0, 1);
  const double target_pa = gauge.pressure_pa(plan.target).value();
  const double later_pa = gauge.pressure_pa(plan.target - leak.loss_per_minute).value();
  const double rate_per_s =
      std::log(gauge.differential_pa(target_pa) / gauge.differential_pa(later_pa)) / 60;
  double amount = gauge.pressure_pa(plan.target + leak.start).value() /
                  kelvins_from_degf(leak.temperature_degf(0));
  constexpr int steps = 200;
  const double step_s = leak.interval_s / steps;
  LeakLog log;
  log.has_temperature = leak.log_temperature;
  log.reading_step = leak.reading_step;
  log.temperature_step_degf = leak.temperature_step;
  for (double time_s = 0; time_s <= leak.duration_s + 1e-6; time_s += leak.interval_s) {
    const double temperature = leak.temperature_degf(time_s);
    const double reading = gauge.reading(amount * kelvins_from_degf(temperature)).value();
    log.rows.push_back({time_s, to_step(reading + leak.noise * noise(random), leak.reading_step),
                        leak.log_temperature ? to_step(temperature, leak.temperature_step) : 0, 0});
    for (int i = 0; i < steps; ++i) {
      const double kelvin = kelvins_from_degf(leak.temperature_degf(time_s + (i + 0.5) * step_s));
      amount += rate_per_s * step_s * (gauge.ambient_pa - amount * kelvin) / kelvin;
    }
  }
  return log;
}

}  // namespace linewright
