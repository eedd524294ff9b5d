#include "planning/leak_fit.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace linewright {
namespace {

/// Readings every ten seconds along D0 exp(-k t), with noise.
std::vector<DecaySample> decay(double initial_pa, double rate_per_s, int count, double noise_pa = 0,
                               unsigned seed = 1) {
  std::mt19937_64 random(seed);
  std::normal_distribution<double> noise(0, 1);
  std::vector<DecaySample> samples;
  for (int i = 0; i < count; ++i) {
    const double time_s = 100 + 10.0 * i;
    samples.push_back(
        {time_s, initial_pa * std::exp(-rate_per_s * (time_s - 100)) + noise_pa * noise(random),
         0});
  }
  return samples;
}

TEST(StudentFactor, IsThePublishedTable) {
  // Student's t, two-sided 95 % [from memory: any statistics table].
  EXPECT_NEAR(student_factor_95(3), 3.182, 0.03);
  EXPECT_NEAR(student_factor_95(5), 2.571, 0.006);
  EXPECT_NEAR(student_factor_95(10), 2.228, 0.001);
  EXPECT_NEAR(student_factor_95(30), 2.042, 0.001);
  EXPECT_NEAR(student_factor_95(100'000), 1.960, 0.001);
  EXPECT_EQ(student_factor_95(0), student_factor_95(3));
}

TEST(DecayFit, FindsWhatItIsGiven) {
  for (const double rate : {1e-6, 1e-4, 1 / 577.5, 0.01, 0.1, -1e-4}) {
    const auto fit = fit_decay(decay(3608.43, rate, 13));
    ASSERT_TRUE(fit);
    // The minimum is flat: its place is good to the square root of a double's precision.
    EXPECT_NEAR(fit->rate_per_s, rate, 1e-7 * std::abs(rate) + 1e-9);
    EXPECT_NEAR(fit->initial_pa, 3608.43, 1e-3);
    EXPECT_NEAR(fit->differential_pa(160), 3608.43 * std::exp(-60 * rate), 1e-3);
  }
}

TEST(DecayFit, NeedsThreeReadings) {
  EXPECT_FALSE(fit_decay(decay(3'600, 0.001, 2)));
  EXPECT_TRUE(fit_decay(decay(3'600, 0.001, 3)));
}

TEST(DecayFit, StatesAnErrorThatHolds) {
  int within = 0;
  constexpr int trials = 400;
  for (unsigned seed = 0; seed < trials; ++seed) {
    const auto fit = fit_decay(decay(3'600, 0.0017, 19, 20, seed));
    ASSERT_TRUE(fit);
    const double error = student_factor_95(17) * fit->rate_error_per_s;
    within += std::abs(fit->rate_per_s - 0.0017) <= error;
  }
  // 95 in 100 within the interval; three standard deviations of 400 trials are 3.3 in 100. Weights
  // that shrink large residuals make the stated noise a little small.
  EXPECT_GE(within, trials * 0.88);
}

TEST(DecayFit, StatesTheNoise) {
  double sum = 0;
  for (unsigned seed = 0; seed < 100; ++seed)
    sum += fit_decay(decay(3'600, 0.0017, 61, 20, seed))->noise_pa;
  EXPECT_NEAR(sum / 100, 20, 3);
}

TEST(DecayFit, IsHardlyMovedByOneSlip) {
  std::vector<DecaySample> samples = decay(3'600, 0.0017, 19, 5, 7);
  const auto clean = fit_decay(samples);
  samples[9].differential_pa -= 1'500;
  const auto slipped = fit_decay(samples);
  ASSERT_TRUE(clean && slipped);
  EXPECT_NEAR(slipped->rate_per_s, clean->rate_per_s, 3 * clean->rate_error_per_s);
}

TEST(DecayFit, OfNothingAtAllIsFinite) {
  const auto fit = fit_decay(decay(0, 0.001, 10));
  ASSERT_TRUE(fit);
  EXPECT_EQ(fit->initial_pa, 0);
  EXPECT_TRUE(std::isfinite(fit->rate_per_s));
}

}  // namespace
}  // namespace linewright
