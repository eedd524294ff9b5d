#pragma once
// A leak test on a bench whose every fault is known: air that leaks and changes its temperature, a
// thermometer that sees it or does not, a needle with friction and a person who reads it. Written
// from the physics alone, apart from the code under test: the gas law, a leak in proportion to the
// pressure across it, and the altimeter's scale of the standard atmosphere at sea level on a
// standard day.

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "model/leak_log.hpp"

namespace linewright::bench {

inline constexpr double ambient_pa = 101'325;
inline constexpr double room_degf = 59;
inline constexpr double target_ft = 1'000;

/// The altimeter's scale [US Standard Atmosphere 1976: 288.15 K, 6.5 K/km, exponent 5.25588].
inline double pressure_at_pa(double height_ft) {
  return ambient_pa * std::pow(1 - 0.0065 * 0.3048 * height_ft / 288.15, 5.25588);
}
inline double height_at_ft(double pressure_pa) {
  return (1 - std::pow(pressure_pa / ambient_pa, 1 / 5.25588)) * 288.15 / 0.0065 / 0.3048;
}
inline double kelvins(double degf) {
  return (degf + 459.67) / 1.8;
}

/// How far the air in the lines strays from the room's temperature, degrees Fahrenheit.
struct Air {
  double drift_per_min = 0;  ///< steady, or at first where it wears off
  double wears_off_s = 0;    ///< time constant of the drift; 0: it goes on
  double stroke_degf = 0;    ///< left over from the stroke when the log starts: below zero after a
                             ///< quick suck, above after an overshoot that was bled back
  double stroke_s = 20;      ///< time constant with which that goes

  double drift_degf(double time_s) const {
    const double per_s = drift_per_min / 60;
    return wears_off_s > 0 ? per_s * wears_off_s * (1 - std::exp(-time_s / wears_off_s))
                           : per_s * time_s;
  }
  double degf(double time_s) const {
    return room_degf + drift_degf(time_s) + stroke_degf * std::exp(-time_s / stroke_s);
  }
};

struct Thermometer {
  enum Kind { none, still, follows };
  Kind kind = follows;
  double lag_s = 0;
  double noise_degf = 0;
  double step_degf = 0.1;
};

struct Needle {
  double play_ft = 0;   ///< stands until the pressure is so far off, then trails by as much
  double stick_ft = 0;  ///< stands until the pressure is so far off, then jumps to it
  double stuck_after_s = std::numeric_limits<double>::infinity();
  double taps_every_s = 0;  ///< a tap sets it right; 0: none
  double noise_ft = 0;      ///< of the person who reads
  double step_ft = 1;       ///< to which they read
};

struct Bench {
  double leak_ft_per_min = 0;  ///< from the target, in the first minute, at steady temperature
  Air air;
  Thermometer thermometer;
  Needle needle;
  double duration_s = 180;
  double interval_s = 10;
};

inline double to_nearest(double value, double step) {
  return std::round(value / step) * step;
}

/// Where the needle stands, given where it stood and where the pressure is.
inline double needle_at(const Needle& needle, double stood_ft, double true_ft) {
  const double off_ft = true_ft - stood_ft;
  if (needle.stick_ft > 0) return std::abs(off_ft) > needle.stick_ft ? true_ft : stood_ft;
  if (std::abs(off_ft) <= needle.play_ft) return stood_ft;
  return true_ft - std::copysign(needle.play_ft, off_ft);
}

inline LeakLog log_of(const Bench& bench, unsigned seed) {
  std::mt19937_64 random(seed);
  std::normal_distribution<double> normal(0, 1);
  const double target_pa = pressure_at_pa(target_ft);
  const double rate_per_s =
      std::log((ambient_pa - target_pa) /
               (ambient_pa - pressure_at_pa(target_ft - bench.leak_ft_per_min))) /
      60;
  const int steps = std::max(1, static_cast<int>(bench.interval_s / 0.5));
  const double step_s = bench.interval_s / steps;
  double pa_per_kelvin = target_pa / kelvins(bench.air.degf(0));
  double shown_degf = room_degf;
  double stands_ft = target_ft;
  double next_tap_s = bench.needle.taps_every_s;
  LeakLog log;
  log.has_temperature = bench.thermometer.kind != Thermometer::none;
  log.reading_step = std::min(1.0, bench.needle.step_ft);
  log.temperature_step_degf = 0.1;
  int line = 1;
  for (double time_s = 0; time_s <= bench.duration_s + 1e-6; time_s += bench.interval_s) {
    const double true_ft = height_at_ft(pa_per_kelvin * kelvins(bench.air.degf(time_s)));
    const bool tapped = bench.needle.taps_every_s > 0 && time_s >= next_tap_s;
    if (tapped) next_tap_s += bench.needle.taps_every_s;
    if (time_s < bench.needle.stuck_after_s)
      stands_ft = tapped ? true_ft : needle_at(bench.needle, stands_ft, true_ft);
    const double seen_degf =
        bench.thermometer.kind == Thermometer::follows ? shown_degf : room_degf;
    log.rows.push_back(
        {time_s,
         to_nearest(stands_ft + bench.needle.noise_ft * normal(random), bench.needle.step_ft),
         log.has_temperature ? to_nearest(seen_degf + bench.thermometer.noise_degf * normal(random),
                                          bench.thermometer.step_degf)
                             : 0,
         ++line});
    for (int i = 0; i < steps; ++i) {
      const double at_s = time_s + (i + 0.5) * step_s;
      const double kelvin = kelvins(bench.air.degf(at_s));
      pa_per_kelvin += rate_per_s * step_s * (ambient_pa - pa_per_kelvin * kelvin) / kelvin;
      const double near_degf = room_degf + bench.air.drift_degf(at_s);
      const double lag_s = bench.thermometer.lag_s;
      shown_degf += (near_degf - shown_degf) * (lag_s > 0 ? -std::expm1(-step_s / lag_s) : 1);
    }
  }
  return log;
}

}  // namespace linewright::bench
