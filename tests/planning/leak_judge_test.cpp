#include "planning/leak_judge.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "planning/judged_leak.hpp"

namespace linewright {
namespace {

constexpr LeakAnswer pass = LeakAnswer::pass;
constexpr LeakAnswer fail = LeakAnswer::fail;
constexpr LeakAnswer unknown = LeakAnswer::unknown;

TEST(LeakVerdict, FindsTheLossAndTimeConstantOfAKnownLeak) {
  const LeakVerdict verdict = judged_at_rest(60);
  EXPECT_NEAR(verdict.loss, 60, 0.05);
  ASSERT_TRUE(verdict.loss_corrected && verdict.time_constant_s);
  EXPECT_NEAR(*verdict.loss_corrected, 60, 0.05);
  const double left_pa = 101'325 - standard_pressure_pa(940).value();
  EXPECT_NEAR(*verdict.time_constant_s, 60 / std::log(static_plan().differential_pa / left_pa), 1);
}

TEST(LeakVerdict, OfALeakAtTheLimitHasItsTimeConstantAndFlow) {
  const LeakVerdict verdict = judged_at_rest(100);
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_NEAR(verdict.time_constant_s.value(), 577.5, 1);  // calculated from 1,000 to 900 ft
  EXPECT_NEAR(verdict.leak_in3_per_min.value(), static_plan().limit_leak_in3_per_min, 1e-4);
  EXPECT_NEAR(verdict.hole_in.value(), static_plan().limit_hole_in.value(), 1e-5);
}

TEST(LeakVerdict, PassesATightSystemAndFailsALeakingOne) {
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 5}).answer, leak_pass);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 150}).answer, leak_fail);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 900}).answer, leak_fail);
}

TEST(LeakVerdict, OfAPitotSystemIsInKnots) {
  EXPECT_NEAR(judged_at_rest(4, pitot_plan()).loss, 4, 0.02);
  EXPECT_NEAR(judged_at_rest(10, pitot_plan()).time_constant_s.value(), 429.7, 1);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 4}, pitot_plan()).answer, leak_pass);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 15}, pitot_plan()).answer, leak_fail);
}

TEST(LeakVerdict, NeverRoundsTowardAPass) {
  // A hair over the limit, without noise: it must not pass, nor look like the limit.
  const LeakVerdict verdict =
      judged(log_of({{0, 1'000}, {20, 966}, {40, 933}, {60, 899.96}, {80, 870}}, true));
  EXPECT_NEAR(verdict.loss, 100.04, 1e-9);
  EXPECT_NE(verdict.answer, leak_pass);
}

TEST(LeakVerdict, TakesTheWorstMinuteWhereverItStarts) {
  // Tight for two minutes, then 80 ft in one.
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 24; ++i) {
    const double time_s = 10.0 * i;
    rows.push_back({time_s, 1'000 - std::clamp((time_s - 120) / 60, 0.0, 1.0) * 80});
  }
  const LeakVerdict verdict = judged(log_of(rows, true));
  EXPECT_NEAR(verdict.loss, 80, 0.2);
  EXPECT_NEAR(verdict.as_read.start_s, 120, 1e-6);
}

TEST(LeakVerdict, ReadsBetweenReadingsAlongAnExponential) {
  const LeakTestPlan& plan = static_plan();
  const LeakLog log = simulated(
      plan,
      {.loss_per_minute = 100, .temperature_degf = at_rest, .duration_s = 180, .interval_s = 45});
  EXPECT_NEAR(judged(log).loss, 100, 0.05);
}

TEST(LeakVerdict, OfAShortLogIsAtBestUnknown) {
  const LeakVerdict tight =
      judged(SimulatedLeak{.loss_per_minute = 5, .temperature_degf = at_rest, .duration_s = 50});
  EXPECT_EQ(tight.answer, leak_unknown);
  EXPECT_TRUE(tight.loss_is_projected);
  EXPECT_NEAR(tight.loss, 5, 0.2);
  EXPECT_TRUE(says(tight, "covers 50 s"));
  EXPECT_TRUE(tells_to(tight, "Log longer"));
}

TEST(LeakVerdict, OfAShortLogIsAFailWhereTheLimitIsLostAlready) {
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 300, .duration_s = 40}).answer, leak_fail);
}

TEST(LeakVerdict, NeedsTheTestsPressure) {
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 20, .start = -80}).answer, leak_pass);
  const LeakVerdict low = judged(SimulatedLeak{.loss_per_minute = 20, .start = -120});
  EXPECT_EQ(low.answer, leak_unknown);
  EXPECT_TRUE(says(low, "too far below the 1000 ft"));
}

TEST(LeakVerdict, ScalesTheLossToTheTestsPressure) {
  // From 950 ft the leak that loses 98 ft from 1,000 loses some 93.
  const LeakVerdict low =
      judged(SimulatedLeak{.loss_per_minute = 98, .start = -50, .temperature_degf = at_rest});
  EXPECT_LT(low.loss, 94);
  EXPECT_GT(low.interval.high, 98);
  // From 1,300 ft the leak that loses 90 ft from 1,000 loses some 117, which is no fail.
  const LeakVerdict high = judged(SimulatedLeak{.loss_per_minute = 90, .start = 300});
  EXPECT_GT(high.loss, 110);
  EXPECT_EQ(high.answer, leak_unknown);
}

TEST(LeakVerdict, OfNoisyReadingsIsUnknown) {
  const LeakVerdict verdict =
      judged(SimulatedLeak{.loss_per_minute = 30, .noise = 30, .duration_s = 120});
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_TRUE(says(verdict, "scatter too much"));
}

TEST(LeakVerdict, OfReadingsThatRiseIsUnknown) {
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 12; ++i) rows.push_back({10.0 * i, 950 + 5.0 * i});
  const LeakVerdict verdict = judged(log_of(rows));
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_TRUE(says(verdict, "which no leak does"));
}

TEST(LeakVerdict, OfALogWithAHoleIsUnknown) {
  const LeakVerdict verdict =
      judged(log_of({{0, 1'000}, {10, 999}, {20, 998}, {30, 997}, {300, 970}}, true));
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_TRUE(says(verdict, "270 s pass without a reading"));
}

TEST(LeakVerdict, OfReadingsThatEndBelowTheFieldIsAFail) {
  // Whatever makes the needle end below the field, far more than 100 ft were lost.
  const LeakVerdict verdict = judged(log_of({{0, 1'000}, {20, 400}, {40, 100}, {60, -100}}));
  EXPECT_EQ(verdict.answer, leak_fail);
  EXPECT_GT(verdict.interval.low, 1'000);
}

TEST(LeakVerdict, IsNoFailForOneSlipOfThePen) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 20, .noise = 1});
  log.rows[7].reading -= 200;
  const LeakVerdict verdict = judged(log);
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_GT(verdict.loss, 150);
}

TEST(LeakVerdict, OfAHoseThatComesOffIsAFail) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 5, .noise = 1});
  for (LogRow& row : log.rows)
    if (row.time_s > 95) row.reading = std::max(0.0, row.reading - 20 * (row.time_s - 95));
  EXPECT_EQ(judged(log).answer, leak_fail);
}

TEST(LeakVerdict, OfASystemThatWasNeverPumpedIsUnknown) {
  EXPECT_EQ(judged(log_of({{0, 0}, {20, 0}, {40, 0}, {60, 0}, {80, 0}}, true)).answer,
            leak_unknown);
}

TEST(LeakVerdict, HasNoTimeConstantWhereNothingLeaks) {
  EXPECT_FALSE(
      judged(log_of({{0, 1'000}, {20, 1'000}, {40, 1'000}, {60, 1'000}, {80, 1'000}}, true))
          .time_constant_s);
}

/// With readings good to 2 ft, a thermometer good to a tenth of a degree and three minutes of

/// readings every ten seconds, leaks of up to 40 ft always pass, those of 140 ft and more always

/// fail, and in between the answer is never wrong.

TEST(LeakVerdict, HasDetectionLimits) {
  const auto answer = [](double loss, unsigned seed) {
    return judged(SimulatedLeak{.loss_per_minute = loss,
                                .noise = 2,
                                .temperature_step = 0.1,
                                .seed = seed,
                                .reading_step = 1})
        .answer;
  };
  for (unsigned seed = 0; seed < 60; ++seed) {
    for (const double loss : {0.0, 20.0, 40.0})
      EXPECT_EQ(answer(loss, seed), leak_pass) << loss << " ft, seed " << seed;
    for (const double loss : {140.0, 200.0, 500.0})
      EXPECT_EQ(answer(loss, seed), leak_fail) << loss << " ft, seed " << seed;
    for (const double loss : {101.0, 105.0, 115.0}) EXPECT_NE(answer(loss, seed), leak_pass);
    for (const double loss : {80.0, 90.0, 99.0}) EXPECT_NE(answer(loss, seed), leak_fail);
  }
}

TEST(LeakVerdict, NeverPassesALeakOverTheLimitWhateverTheDriftThatIsLogged) {
  for (unsigned seed = 0; seed < 40; ++seed) {
    const double drift = (static_cast<double>(seed) - 20) / 12;  // degrees a minute
    const LeakVerdict verdict =
        judged(SimulatedLeak{.loss_per_minute = 112,
                             .temperature_degf = [drift](double t) { return 59 + drift * t / 60; },
                             .noise = 2,
                             .temperature_step = 0.1,
                             .seed = seed,
                             .reading_step = 1});
    EXPECT_NE(verdict.answer, leak_pass) << drift << " degF a minute";
  }
}

TEST(LeakVerdict, NeverTurnsFromFailToPassAsALeakGrows) {
  for (unsigned seed = 0; seed < 12; ++seed)
    for (const bool thermometer : {false, true}) {
      int rank = -1;
      for (double loss = 0; loss <= 400; loss += 10) {
        const LeakAnswer answer = judged(SimulatedLeak{.loss_per_minute = loss,
                                                       .noise = 3,
                                                       .temperature_step = 0.1,
                                                       .log_temperature = thermometer,
                                                       .seed = seed,
                                                       .reading_step = 1})
                                      .answer;
        const int now = answer == leak_pass ? 0 : answer == leak_unknown ? 1 : 2;
        EXPECT_GE(now, rank) << loss << " ft, seed " << seed;
        rank = std::max(rank, now);
      }
      EXPECT_EQ(rank, 2);
    }
}

TEST(LeakVerdict, IntervalHoldsTheTruthAndTheLoss) {
  for (unsigned seed = 0; seed < 50; ++seed) {
    const LeakVerdict verdict = judged(
        SimulatedLeak{.loss_per_minute = 85, .noise = 3, .temperature_step = 0.1, .seed = seed});
    EXPECT_LT(verdict.interval.low, 85 + 1e-9);
    EXPECT_GT(verdict.interval.high, 85 - 1e-9);
    EXPECT_LE(verdict.interval.low, *verdict.loss_corrected);
    EXPECT_GE(verdict.interval.high, *verdict.loss_corrected);
  }
}

TEST(LeakVerdict, RefusesReadingsOffTheStandardTroposphere) {
  EXPECT_TRUE(std::holds_alternative<std::string>(
      judge_leak(static_plan(), log_of({{0, 40'000}, {60, 40'000}}))));
}

TEST(LeakVerdict, SaysWhatReadingsThatRiseFromFirstToLastCanBe) {
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 60; ++i) rows.push_back({10.0 * i, 940 + 5.0 * i});
  const LeakVerdict rising = judged(log_of(rows));
  EXPECT_EQ(rising.answer, leak_unknown);
  EXPECT_TRUE(says(rising, "end higher than they began, by 300.0 ft, which no leak does"));
  EXPECT_TRUE(says(rising, "Cooling of the air in the lines, or a pump that is not shut off"));
  const auto mentions = [](const std::vector<std::string>& all, const std::string& part) {
    return std::any_of(all.begin(), all.end(),
                       [&](const std::string& each) { return each.find(part) != each.npos; });
  };
  EXPECT_TRUE(mentions(rising.next, "in the order in which they were read"));
}

}  // namespace
}  // namespace linewright
