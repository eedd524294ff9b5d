// What a verdict takes for granted where the log does not say, and from where on it doubts: each
// figure at its edge, within a hundredth of it. The figures are common practice, no source.

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "planning/judged_leak.hpp"
#include "planning/leak_bounds.hpp"

namespace linewright {
namespace {

/// Sums of the same numbers in another order.
constexpr double same = 1e-9;
constexpr double pi = 3.14159265358979;

LeakEvidence evidence_of(const LeakLog& log, const LeakTestPlan& plan = static_plan()) {
  return gather_evidence(plan, log).value();
}

/// A slow leak without noise, in air that warms evenly.
LeakLog warming(double degf_per_min) {
  return simulated(
      static_plan(),
      {.loss_per_minute = 5,
       .temperature_degf = [=](double time_s) { return 59 + degf_per_min * time_s / 60; },
       .temperature_step = 1e-6});
}

/// The same with no thermometer.
LeakLog unwatched(double duration_s, double interval_s, double loss_per_minute = 5) {
  return simulated(static_plan(), {.loss_per_minute = loss_per_minute,
                                   .temperature_degf = at_rest,
                                   .log_temperature = false,
                                   .duration_s = duration_s,
                                   .interval_s = interval_s});
}

TEST(LeakFigures, AReadingOfAShortLogErrsBy5FtOrHalfAKnot) {
  EXPECT_NEAR(evidence_of(log_of({{0, 1'000}, {60, 998}, {120, 996}})).noise.typical, 5, same);
  EXPECT_NEAR(
      evidence_of(log_of({{0, 150}, {60, 149.9}, {120, 149.8}}), pitot_plan()).noise.typical, 0.5,
      same);
}

TEST(LeakFigures, APassTakes120SettledSeconds) {
  const std::string doubt = "a pass takes 120 s of settled readings";
  EXPECT_TRUE(says(judged(unwatched(119, 7)), doubt));
  EXPECT_FALSE(says(judged(unwatched(121, 11)), doubt));
}

TEST(LeakFigures, APassWithoutAThermometerTakes600Seconds) {
  const std::string doubt = "without a thermometer a pass takes 600 s";
  EXPECT_TRUE(says(judged(unwatched(595, 5)), doubt));
  EXPECT_FALSE(says(judged(unwatched(605, 5)), doubt));
}

TEST(LeakFigures, AirThatNobodyWatchedDriftedBy1Point5DegreesBeforeAPassAndHalfADegreeBeforeAFail) {
  const LeakEvidence evidence = evidence_of(unwatched(180, 10, 50));
  const double degree = evidence.per_degf;
  EXPECT_NEAR(temperature_doubt_to_pass(evidence), 1.5 * degree, same);
  EXPECT_NEAR(lowest_loss(evidence, LossKind::as_read),
              evidence.as_read.loss - evidence.factor * evidence.noise.typical - 0.5 * degree,
              same);
  EXPECT_NEAR(rise_allowed(evidence), 6 * evidence.noise.typical + 0.5 * degree, same);
}

/// What a pass allows for beside a thermometer, in degF of the air.
double beside_thermometer_degf(const LeakEvidence& evidence) {
  const double not_followed =
      0.25 * std::abs(evidence.most_corrected.loss - evidence.most_corrected.corrected);
  return (temperature_doubt_to_pass(evidence) - not_followed) / evidence.per_degf -
         evidence.thermometer.error_degf;
}

TEST(LeakFigures, AThermometerThatMovesAQuarterOfADegreeInAMinuteLeaves0Point4Unseen) {
  // Rounded to a millionth of a degree its rate seems to change a little, which counts as its
  // trailing.
  constexpr double rounded_degf = 1e-4;
  EXPECT_NEAR(beside_thermometer_degf(evidence_of(warming(0.5))), 0.4, rounded_degf);
  // The thirds of the readings at 0, 10 ... 180 s are 125 s apart, taken as two thirds of the log.
  const double told = 0.125 * 125 / 120 / 0.25;
  EXPECT_NEAR(beside_thermometer_degf(evidence_of(warming(0.125))), 1.5 - (1.5 - 0.4) * told,
              rounded_degf);
}

TEST(LeakFigures, ARiseIsAllowedForAQuarterOfTheWarmingAndATenthOfADegree) {
  const LeakEvidence evidence = evidence_of(warming(0.5));
  EXPECT_NEAR(rise_allowed(evidence),
              6 * evidence.noise.typical +
                  evidence.per_degf * (evidence.thermometer.error_degf + 0.25 * 1.5 + 0.1),
              same);
}

TEST(LeakFigures, ReadingsGainsayATemperatureThatMovedHalfADegree) {
  const auto contradicted = [](double moved_degf) {
    LeakLog log = simulated(static_plan(), {.loss_per_minute = 5, .temperature_degf = at_rest});
    // There and back, as no steady leak reads.
    for (LogRow& row : log.rows)
      row.temperature_degf += moved_degf * std::pow(std::sin(pi * row.time_s / 180), 2);
    return temperature_contradicted(evidence_of(log));
  };
  EXPECT_FALSE(contradicted(0.496));
  EXPECT_TRUE(contradicted(0.504));
}

TEST(LeakFigures, OneThermometerCorrectsTwoDegreesInAMinute) {
  const std::string doubt = "too much for one thermometer to correct";
  EXPECT_FALSE(says(judged(warming(1.98)), doubt));
  EXPECT_TRUE(says(judged(warming(2.02)), doubt));
}

TEST(LeakFigures, ATestStartsWithNineTenthsOfItsPressure) {
  const LeakTestPlan& plan = static_plan();
  const auto starts_too_low = [&](double share) {
    const double start =
        plan.gauge.reading(plan.gauge.pressure_at_differential_pa(share * plan.differential_pa))
            .value();
    return says(judged(SimulatedLeak{.loss_per_minute = 5, .start = start - plan.target}),
                "too far below");
  };
  EXPECT_TRUE(starts_too_low(0.895));
  EXPECT_FALSE(starts_too_low(0.905));
}

TEST(LeakFigures, NinetySecondsMayPassWithoutAReading) {
  const auto doubts = [](double gap_s) {
    LeakLog log = simulated(static_plan(), {.loss_per_minute = 5, .duration_s = 400});
    std::erase_if(log.rows, [](const LogRow& row) { return row.time_s > 105 && row.time_s < 195; });
    for (LogRow& row : log.rows)
      if (row.time_s > 150) row.time_s += gap_s - 100;
    return says(judged(log), "s pass without a reading");
  };
  EXPECT_FALSE(doubts(89.5));
  EXPECT_TRUE(doubts(90.5));
}

TEST(LeakFigures, ANeedleThatMovedThreeHundredthsOfTheLimitIsFree) {
  // The thirds of the readings at 0, 10 ... 180 s are 125 s apart.
  const auto stuck = [](double moved_ft) {
    std::vector<std::pair<double, double>> rows;
    for (int i = 0; i <= 18; ++i) rows.push_back({10.0 * i, 1'000 - moved_ft * 10 * i / 125});
    return says(judged(log_of(rows)), "did not move beyond the scatter");
  };
  EXPECT_TRUE(stuck(2.96));
  EXPECT_FALSE(stuck(3.04));
}

TEST(LeakFigures, AJumpStandsOutByATenthOfTheLimit) {
  const auto named = [](double by_ft) {
    std::vector<std::pair<double, double>> rows;
    for (int i = 0; i <= 18; ++i) rows.push_back({10.0 * i, 1'000 - 0.5 * i + (i < 9 ? by_ft : 0)});
    return !evidence_of(log_of(rows)).odd.empty();
  };
  EXPECT_FALSE(named(9.9));
  EXPECT_TRUE(named(10.1));
}

}  // namespace
}  // namespace linewright
