// Leak tests by the thousand, on a bench whose every fault is known. Whatever hides a leak within
// what the verdict says it allows for, no leak passes; and a good log of a tight system does.

#include "oracles/leak_bench.hpp"

#include <gtest/gtest.h>

#include "planning/air_rig.hpp"
#include "planning/leak_judge.hpp"

namespace linewright {
namespace {

using bench::Bench;
using bench::Thermometer;

/// 14 CFR 23.1325(b)(2)(i) allows 100 ft in one minute. A share of a hundredth and more is what the
/// arithmetic of a needle read to a foot can hide.
constexpr double surely_leaks_ft = 105;

const LeakTestPlan& plan() {
  static const AirRig rig(two_ports());
  static const LeakTestPlan plan = plan_of(rig.system(), standard_day());
  return plan;
}

LeakVerdict judged(const Bench& bench, unsigned seed) {
  const auto verdict = judge_leak(plan(), bench::log_of(bench, seed));
  if (const std::string* error = std::get_if<std::string>(&verdict))
    throw std::runtime_error(*error);
  return std::get<LeakVerdict>(verdict);
}

class Chance {
 public:
  explicit Chance(unsigned seed) : random_(seed) {}
  double between(double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random_);
  }
  double one_of(const std::vector<double>& values) {
    return values[std::uniform_int_distribution<std::size_t>(0, values.size() - 1)(random_)];
  }
  bool even() { return between(0, 1) < 0.5; }

 private:
  std::mt19937_64 random_;
};

/// Half of the leaks near the limit, the others anywhere.
double some_leak(Chance& chance) {
  return chance.even() ? chance.between(0, 300) : chance.between(90, 170);
}

/// Steady, or wearing off.
void let_drift(Bench& bench, Chance& chance, double most_per_min) {
  bench.air.drift_per_min = chance.between(-most_per_min, most_per_min);
  if (chance.even()) bench.air.wears_off_s = chance.between(60, 900);
}

/// A log of some length and care, with nothing wrong but its readings.
Bench some_log(Chance& chance) {
  Bench bench;
  bench.leak_ft_per_min = some_leak(chance);
  bench.duration_s = chance.one_of({60, 90, 120, 150, 180, 240, 300, 420, 600});
  bench.interval_s = chance.one_of({1, 2, 5, 10, 10, 15, 20, 30});
  bench.needle.step_ft = chance.one_of({1, 1, 1, 5, 10, 20});
  bench.needle.noise_ft = chance.one_of({0, 0.5, 1, 2, 4});
  return bench;
}

using Fault = void (*)(Bench&, Chance&);

/// Faults of the bench, within the drift that the verdict says it allows for.
const std::vector<std::pair<const char*, Fault>>& faults() {
  static const std::vector<std::pair<const char*, Fault>> all = {
      {"drift that the thermometer sees",
       [](Bench& bench, Chance& chance) { let_drift(bench, chance, 1.2); }},
      {"a coarse thermometer",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 1.2);
         bench.thermometer.step_degf = chance.one_of({0.2, 0.5, 1});
         bench.thermometer.noise_degf = chance.one_of({0, 0.05, 0.1, 0.2});
       }},
      {"no thermometer",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 1.5);
         if (bench.air.wears_off_s > 0) bench.air.drift_per_min *= 2;
         bench.thermometer.kind = Thermometer::none;
       }},
      {"a thermometer that stands still",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 1.5);
         if (bench.air.wears_off_s > 0) bench.air.drift_per_min *= 2;
         bench.thermometer.kind = Thermometer::still;
         bench.thermometer.noise_degf = chance.one_of({0, 0, 0.05, 0.1, 0.2});
       }},
      {"a thermometer that trails",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 1.5);
         bench.thermometer.lag_s = chance.between(5, 300);
       }},
      {"a quick stroke",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 0.7);
         bench.air.stroke_degf = -chance.between(0, 6);
         bench.air.stroke_s = chance.between(5, 50);
         if (chance.even()) bench.thermometer.kind = Thermometer::none;
       }},
      {"an overshoot that was bled back",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 0.7);
         bench.air.stroke_degf = chance.between(0, 6);
         bench.air.stroke_s = chance.between(5, 50);
         if (chance.even()) bench.thermometer.kind = Thermometer::none;
       }},
      {"play in the gauge",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 0.7);
         bench.needle.play_ft = chance.between(0, 40);
         if (chance.even()) bench.needle.taps_every_s = chance.between(20, 100);
       }},
      {"a needle that sticks and jumps",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 0.7);
         bench.needle.stick_ft = chance.between(2, 60);
         if (chance.even()) bench.needle.taps_every_s = chance.between(20, 100);
       }},
      {"a needle that is stuck, or shut off",
       [](Bench& bench, Chance& chance) {
         let_drift(bench, chance, 0.7);
         bench.needle.stuck_after_s = chance.even() ? 0 : chance.between(0, 40);
       }},
  };
  return all;
}

std::string told(const Bench& bench) {
  const auto& [leak, air, thermometer, needle, duration_s, interval_s] = bench;
  return "leak " + std::to_string(leak) + " ft/min, drift " + std::to_string(air.drift_per_min) +
         " degF/min wearing off in " + std::to_string(air.wears_off_s) + " s, stroke " +
         std::to_string(air.stroke_degf) + " degF, " + std::to_string(duration_s) + " s every " +
         std::to_string(interval_s) + " s, read to " + std::to_string(needle.step_ft) + " ft";
}

TEST(LeakBench, PassesNoLeakWhateverHidesIt) {
  constexpr unsigned logs_for_each_fault = 300;
  unsigned seed = 0, leaks = 0;
  for (const auto& [name, fault] : faults()) {
    for (unsigned i = 0; i < logs_for_each_fault; ++i) {
      Chance chance(++seed);
      Bench bench = some_log(chance);
      fault(bench, chance);
      if (bench.leak_ft_per_min <= surely_leaks_ft) continue;
      ++leaks;
      EXPECT_NE(judged(bench, seed).answer, LeakAnswer::pass)
          << name << ", seed " << seed << ": " << told(bench);
    }
  }
  EXPECT_GT(leaks, faults().size() * logs_for_each_fault / 2);
}

TEST(LeakBench, FailsNoTightSystemForAQuickStrokeOrAPumpThatWentPastTheTarget) {
  for (unsigned seed = 1; seed <= 300; ++seed) {
    Chance chance(100'000 + seed);
    Bench bench = some_log(chance);
    bench.leak_ft_per_min = chance.between(0, 60);
    bench.air.stroke_degf = chance.between(-6, 6);
    bench.air.stroke_s = chance.between(5, 45);
    if (chance.even()) bench.thermometer.kind = Thermometer::still;
    EXPECT_NE(judged(bench, seed).answer, LeakAnswer::fail)
        << "seed " << seed << ": " << told(bench);
  }
}

/// Read to 1 or 2 ft every ten seconds or so, for two to five minutes, beside a thermometer good to
/// a tenth of a degree, while the air drifts by a sixth to half a degree a minute.
Bench good_log(Chance& chance, double leak_ft_per_min) {
  Bench bench;
  bench.leak_ft_per_min = leak_ft_per_min;
  bench.duration_s = chance.one_of({150, 180, 240, 300});
  bench.interval_s = chance.one_of({5, 10, 10, 15});
  bench.needle.step_ft = chance.one_of({1, 1, 2});
  bench.needle.noise_ft = chance.one_of({0, 0.5, 1});
  bench.thermometer.noise_degf = chance.one_of({0, 0.03});
  bench.air.drift_per_min = chance.between(0.18, 0.5) * (chance.even() ? 1 : -1);
  return bench;
}

int share_of(LeakAnswer answer, double least_ft, double most_ft) {
  int count = 0;
  for (unsigned seed = 1; seed <= 300; ++seed) {
    Chance chance(200'000 + seed);
    const Bench bench = good_log(chance, chance.between(least_ft, most_ft));
    count += judged(bench, seed).answer == answer;
  }
  return count;
}

TEST(LeakBench, PassesNineTightSystemsOfTenThatAreLoggedWell) {
  EXPECT_GE(share_of(LeakAnswer::pass, 0, 50), 270);
}

TEST(LeakBench, FailsNineteenLeaksOfTwentyThatAreLoggedWell) {
  EXPECT_GE(share_of(LeakAnswer::fail, 150, 300), 285);
}

}  // namespace
}  // namespace linewright
