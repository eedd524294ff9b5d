#include "planning/leak_balance.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "planning/leak_settling.hpp"

namespace linewright {
namespace {

/// Readings every ten seconds of D(t) = 3,600 exp(-0.001 t) Pa, and what is added to them.
template <typename Added>
std::vector<DecaySample> decay(int count, const Added& added, double noise_pa = 0) {
  std::mt19937_64 random(5);
  std::normal_distribution<double> noise(0, 1);
  std::vector<DecaySample> samples;
  for (int i = 0; i < count; ++i) {
    const double time_s = 10.0 * i;
    samples.push_back(
        {time_s, 3'600 * std::exp(-0.001 * time_s) + added(time_s) + noise_pa * noise(random), 0});
  }
  return samples;
}

double nothing(double) {
  return 0;
}

TEST(AirBalance, OfASteadyLeakIsAStraightLine) {
  const AirBalance balance = air_balance(decay(19, nothing), 60);
  EXPECT_EQ(balance.size(), 19u);
  // The integral of the differential is what is lost over the rate: (3600 - D) / 0.001.
  EXPECT_NEAR(balance.driven_pa_s.back(), 3'600 * (1 - std::exp(-0.18)) / 0.001, 1e-3);
  EXPECT_NEAR(balance_misfit_pa(balance), 0, 1e-6);
}

TEST(AirBalance, PicksReadingsEvenlyAndKeepsTheWholeIntegral) {
  const AirBalance all = air_balance(decay(101, nothing), 1'000);
  const AirBalance some = air_balance(decay(101, nothing), 11);
  ASSERT_EQ(some.size(), 11u);
  EXPECT_EQ(some.time_s[1], 100);
  EXPECT_EQ(some.time_s.back(), 1'000);
  EXPECT_EQ(some.driven_pa_s.back(), all.driven_pa_s.back());
}

TEST(AirBalance, HoldsWhileTheAirWarms) {
  // Warming raises the pressure, and the leak follows what is left: dm/dt = k (p0 - p), stepped.
  std::vector<DecaySample> samples;
  const double ambient_pa = 101'325;
  double amount_pa = ambient_pa - 3'600;
  for (int i = 0; i <= 600; ++i) {
    const double warmer = 1 + 2e-5 * i;  // 3 degC in ten minutes
    const double pressure_pa = amount_pa * warmer;
    if (i % 10 == 0) samples.push_back({1.0 * i, ambient_pa - amount_pa, amount_pa - pressure_pa});
    amount_pa += 0.001 * (ambient_pa - pressure_pa);
  }
  EXPECT_LT(balance_misfit_pa(air_balance(samples, 100)), 0.5);
}

TEST(TemperatureShare, TellsWhetherThePressureFollowedTheTemperature) {
  // A step of temperature half way, corrected in full though only a share of it acted.
  for (const double share : {0.0, 0.5, 1.0}) {
    std::vector<DecaySample> samples = decay(19, nothing, 2);
    for (std::size_t i = 9; i < samples.size(); ++i) {
      samples[i].temperature_pa = -300;
      samples[i].differential_pa += share * -300 + 300;
    }
    const TemperatureShare found = temperature_share(air_balance(samples, 60));
    EXPECT_NEAR(found.excess, share - 1, 0.05);
    EXPECT_LT(found.error, 0.02);
    EXPECT_GT(found.spread_pa, 30);
  }
}

TEST(TemperatureShare, SaysNothingWhereNoTemperatureMoved) {
  EXPECT_EQ(temperature_share(air_balance(decay(19, nothing, 2), 60)).spread_pa, 0);
}

TEST(Settling, IsNotSeenInASteadyLeak) {
  EXPECT_FALSE(find_settling(air_balance(decay(19, nothing, 4), 60), 4, 10).seen);
}

TEST(Settling, IsFoundWithItsTimeConstant) {
  for (const double amplitude_pa : {800.0, -300.0}) {
    const auto settles = [&](double time_s) { return amplitude_pa * std::exp(-time_s / 25); };
    const Settling found = find_settling(air_balance(decay(25, settles, 2), 60), 2, 10);
    EXPECT_TRUE(found.seen);
    EXPECT_NEAR(found.time_constant_s, 25, 4);
    EXPECT_NEAR(found.amplitude_pa, amplitude_pa, 0.2 * std::abs(amplitude_pa));
    // From where less than 10 Pa of it go in a minute: 25 ln(0.91 A / 10).
    EXPECT_NEAR(found.settled_s, 25 * std::log(0.91 * std::abs(amplitude_pa) / 10), 12);
  }
}

TEST(Settling, IsNoLeakThatOpensLate) {
  const auto opens = [](double time_s) { return -5 * std::max(0.0, time_s - 120); };
  EXPECT_FALSE(find_settling(air_balance(decay(25, opens, 2), 60), 2, 10).seen);
}

TEST(Settling, ExplainsWhatALeakWithinTheLimitMayDo) {
  const auto settles = [](double time_s) { return 800 * std::exp(-time_s / 25); };
  const AirBalance quick = air_balance(decay(19, settles, 4), 60);
  EXPECT_TRUE(settling_explains(quick, 0.0017, 1'200, 4));
  EXPECT_FALSE(settling_explains(quick, 0.0017, 400, 4)) << "more than a stroke can do";
  // A leak of 0.001/s is no settling where half of it is allowed.
  EXPECT_FALSE(settling_explains(air_balance(decay(19, nothing, 4), 60), 0.0005, 1'200, 4));
}

}  // namespace
}  // namespace linewright
