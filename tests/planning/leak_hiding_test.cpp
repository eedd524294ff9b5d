// What hides a leak from a log, or looks like one.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "planning/judged_leak.hpp"

namespace linewright {
namespace {

constexpr LeakAnswer pass = LeakAnswer::pass;
constexpr LeakAnswer fail = LeakAnswer::fail;
constexpr LeakAnswer unknown = LeakAnswer::unknown;

TEST(HiddenLeak, DoesNotTakeWarmingForALeak) {
  // One degree Fahrenheit a minute, on a system that loses 20 ft of its own.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 20, .temperature_degf = [](double t) { return 59 + t / 60; }});
  EXPECT_NEAR(*verdict.loss_corrected, 20, 1.5);
  EXPECT_GT(verdict.loss, 70);
  EXPECT_EQ(verdict.answer, leak_pass);
  EXPECT_TRUE(says(verdict, "Warming"));
}

TEST(HiddenLeak, NeverPassesANeedleThatLostMoreThanTheLimit) {
  // By the thermometer it was the warming, by the needle a leak: a thermometer in the sun says so
  // too.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 20, .temperature_degf = [](double t) { return 59 + 1.7 * t / 60; }});
  EXPECT_GT(verdict.loss, 100);
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_TRUE(says(verdict, "makes up"));
  EXPECT_TRUE(tells_to(verdict, "come to rest"));
}

TEST(HiddenLeak, IsNotFooledByCooling) {
  // The needle loses 70 ft of the 150 that leak.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 150, .temperature_degf = [](double t) { return 59 - 1.5 * t / 60; }});
  EXPECT_LT(verdict.loss, 100);
  // Cooling by 1.5 degF deepens the suction by 8 % in the minute, 4 % on the mean, and the leak
  // with it: 150 ft become 156.
  EXPECT_NEAR(*verdict.loss_corrected, 156, 2);
  EXPECT_EQ(verdict.answer, leak_fail);
  EXPECT_TRUE(says(verdict, "hides"));
}

TEST(HiddenLeak, InAPitotTestCoolingLooksLikeALeakAndWarmingHidesOne) {
  const LeakVerdict cooled = judged(
      SimulatedLeak{.loss_per_minute = 2, .temperature_degf = [](double t) { return 59 - t / 60; }},
      pitot_plan());
  EXPECT_GT(cooled.loss, 5);
  EXPECT_NEAR(*cooled.loss_corrected, 2, 0.2);
  const LeakVerdict warmed =
      judged(SimulatedLeak{.loss_per_minute = 16,
                           .temperature_degf = [](double t) { return 59 + t / 60; }},
             pitot_plan());
  EXPECT_LT(warmed.loss, 13);
  EXPECT_EQ(warmed.answer, leak_fail);
}

TEST(HiddenLeak, WithoutAThermometerAllowsForADriftThatNobodySaw) {
  // A degree and a half is 79 ft: 10 + 79 passes, 30 + 79 might not; 120 less 26 might not have
  // failed, and neither 135 with what is left of the pressure in the third minute.
  const auto answer = [](double loss) {
    return judged(SimulatedLeak{.loss_per_minute = loss,
                                .temperature_degf = at_rest,
                                .log_temperature = false,
                                .duration_s = 600})
        .answer;
  };
  EXPECT_EQ(answer(2), leak_pass);
  EXPECT_EQ(answer(10), leak_pass);
  EXPECT_EQ(answer(30), leak_unknown);
  EXPECT_EQ(answer(120), leak_unknown);
  EXPECT_EQ(answer(150), leak_fail);
}

TEST(HiddenLeak, WithoutAThermometerPassesNothingInLessThanTenMinutes) {
  const LeakVerdict verdict = judged(SimulatedLeak{.loss_per_minute = 2,
                                                   .temperature_degf = at_rest,
                                                   .log_temperature = false,
                                                   .duration_s = 590});
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_FALSE(verdict.loss_corrected);
  EXPECT_TRUE(says(verdict, "No temperature is logged"));
  EXPECT_TRUE(says(verdict, "without a thermometer a pass takes 600 s"));
  EXPECT_TRUE(tells_to(verdict, "Tape a thermometer to a line"));
  EXPECT_TRUE(tells_to(verdict, "10 minutes"));
}

TEST(HiddenLeak, TakesNoDoubtAwayForAThermometerThatStandsStill) {
  // It reads 59 degF all the time, or wanders by a tenth, while the air cools by a degree and a
  // half a minute and hides 79 ft of the 150 that leak: gas law, 53 ft a degree at 1,000 ft.
  for (const double wander : {0.0, 0.1}) {
    LeakLog log =
        simulated(static_plan(), {.loss_per_minute = 150,
                                  .temperature_degf = [](double t) { return 59 - 1.5 * t / 60; },
                                  .reading_step = 1});
    for (std::size_t i = 0; i < log.rows.size(); ++i)
      log.rows[i].temperature_degf = 59 + (i % 3 == 1 ? wander : 0);
    const LeakVerdict verdict = judged(log);
    EXPECT_LT(verdict.loss, 85);
    EXPECT_EQ(verdict.answer, leak_unknown);
    EXPECT_EQ(verdict.thermometer, ThermometerSight::still);
    EXPECT_TRUE(says(verdict, "stood still"));
    EXPECT_GT(verdict.interval.high, 150);
  }
}

TEST(HiddenLeak, AllowsForAThermometerThatTrails) {
  // With a time constant of 100 s: it shows an ever larger part of the cooling.
  LeakLog log =
      simulated(static_plan(), {.loss_per_minute = 120,
                                .temperature_degf = [](double t) { return 59 - 1.5 * t / 60; },
                                .duration_s = 120});
  for (LogRow& row : log.rows)
    row.temperature_degf =
        to_step(59 - 1.5 / 60 * (row.time_s - 100 * (1 - std::exp(-row.time_s / 100))), 0.1);
  EXPECT_NE(judged(log).answer, leak_pass);
}

TEST(HiddenLeak, TrustsACoarseThermometerLess) {
  SimulatedLeak leak{.loss_per_minute = 40,
                     .temperature_degf = [](double t) { return 59 + t / 90; }};
  EXPECT_EQ(judged(leak).answer, leak_pass);
  leak.temperature_step = 1;
  EXPECT_EQ(judged(leak).answer, leak_unknown);
}

TEST(HiddenLeak, DoesNotTrustATemperatureThatTheReadingsGainsay) {
  // The thermometer stands in the sun and jumps by a degree; the air in the lines does not.
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 60, .noise = 0.5, .duration_s = 240});
  for (LogRow& row : log.rows)
    if (row.time_s > 110) row.temperature_degf += 1;
  const LeakVerdict verdict = judged(log);
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_TRUE(says(verdict, "do not follow the temperature"));
}

TEST(HiddenLeak, DoesNotMindTheNoiseOfAThermometer) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 20, .noise = 1, .duration_s = 600});
  for (std::size_t i = 0; i < log.rows.size(); i += 2) log.rows[i].temperature_degf += 0.05;
  EXPECT_EQ(judged(log).answer, leak_pass);
}

TEST(HiddenLeak, DoesNotCorrectMoreThanAThermometerCan) {
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 10, .temperature_degf = [](double t) { return 59 + 3 * t / 60; }});
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_TRUE(says(verdict, "too much for one thermometer"));
}

TEST(HiddenLeak, PassesNothingInLessThanTwoMinutes) {
  const auto answer = [](double duration_s) {
    return judged(SimulatedLeak{.loss_per_minute = 5,
                                .temperature_degf = [](double t) { return 59 + t / 120; },
                                .duration_s = duration_s})
        .answer;
  };
  EXPECT_EQ(answer(60), leak_unknown);
  EXPECT_EQ(answer(110), leak_unknown);
  EXPECT_EQ(answer(120), leak_pass);
}

TEST(HiddenLeak, OfTwoReadingsIsUnknownUnlessNoStrokeExplainsThem) {
  // A quick stroke to 1,000 ft cools the air by 2/7 of 3.6 % of its temperature [adiabatic law],
  // 5 degF; as that goes the needle falls by some 280 ft.
  EXPECT_EQ(judged(log_of({{0, 1'000}, {60, 980}})).answer, leak_unknown);
  EXPECT_EQ(judged(log_of({{0, 1'000}, {60, 800}})).answer, leak_unknown);
  EXPECT_EQ(judged(log_of({{0, 1'000}, {60, 400}})).answer, leak_fail);
}

TEST(HiddenLeak, LetsTheAirSettleAfterAQuickStroke) {
  // Tight, but the needle runs on by 258 ft as the air warms again, with a time constant of 27 s.
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 18; ++i)
    rows.push_back({10.0 * i, std::round(742 + 258 * std::exp(-10.0 * i / 27))});
  const LeakVerdict verdict = judged(log_of(rows, true));
  EXPECT_GT(verdict.loss, 200);
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_GT(verdict.settled_from_s.value(), 90);
  EXPECT_TRUE(says(verdict, "not settled"));
  EXPECT_TRUE(tells_to(verdict, "Let it settle"));
}

TEST(HiddenLeak, JudgesTheReadingsFromWhereTheAirHasSettled) {
  // The last 1.5 degF of a stroke, gone with a time constant of 15 s.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 15,
      .temperature_degf = [](double t) { return 59 + t / 240 - 1.2 * std::exp(-t / 15); },
      .duration_s = 240});
  EXPECT_NE(verdict.answer, leak_fail);
  LeakLog unseen = simulated(
      static_plan(),
      SimulatedLeak{
          .loss_per_minute = 15,
          .temperature_degf = [](double t) { return 59 + t / 240 - 1.2 * std::exp(-t / 15); },
          .duration_s = 240,
          .reading_step = 1});
  for (LogRow& row : unseen.rows) row.temperature_degf = to_step(59 + row.time_s / 240, 0.1);
  const LeakVerdict settled = judged(unseen);
  EXPECT_EQ(settled.answer, leak_pass);
  EXPECT_GT(settled.as_read.start_s, 30);
  EXPECT_LT(*settled.loss_corrected, 25);
}

TEST(HiddenLeak, DoesNotPassAnOvershootThatWasBledBack) {
  // The air let back in has warmed what was there: as that cools it holds the needle up against a
  // leak of 150 ft a minute. These readings fall ever faster.
  const LeakVerdict verdict = judged(
      log_of({{0, 1'000}, {10, 997}, {20, 990}, {30, 981}, {40, 969}, {50, 955}, {60, 940}}, true));
  EXPECT_EQ(verdict.answer, leak_unknown);
  EXPECT_TRUE(says(verdict, "held up"));
}

TEST(HiddenLeak, DoesNotPassANeedleThatMayBeStuck) {
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 60; ++i) rows.push_back({10.0 * i, 1'000});
  const LeakVerdict stuck = judged(log_of(rows));
  EXPECT_EQ(stuck.answer, leak_unknown);
  EXPECT_TRUE(says(stuck, "all 61 readings are 1000 ft"));
  EXPECT_TRUE(tells_to(stuck, "Tap the gauge"));
  // A reader who wavers by a foot makes it no better.
  for (std::size_t i = 0; i < rows.size(); i += 3) rows[i].second = 1'001;
  const LeakVerdict wavering = judged(log_of(rows));
  EXPECT_EQ(wavering.answer, leak_unknown);
  EXPECT_TRUE(says(wavering, "did not move"));
}

TEST(HiddenLeak, DoesNotPassANeedleThatSticksAfterAFewReadings) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 150, .reading_step = 1});
  for (LogRow& row : log.rows)
    if (row.time_s > 10) row.reading = log.rows[1].reading;
  EXPECT_EQ(judged(log).answer, leak_unknown);
}

TEST(HiddenLeak, DoesNotTakeTheJumpOfATappedNeedleForALeak) {
  // 75 ft a minute: within the limit. The needle hangs for a minute, and a tap lets it go.
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 75, .noise = 0.5, .reading_step = 1});
  for (std::size_t i = 3; i < 9; ++i) log.rows[i].reading = log.rows[2].reading;
  const LeakVerdict verdict = judged(log);
  EXPECT_GT(verdict.loss, 100);
  EXPECT_EQ(verdict.answer, leak_unknown);
  ASSERT_EQ(verdict.stands_out.size(), 1u);
  EXPECT_EQ(verdict.stands_out[0].row.time_s, 90);
  EXPECT_TRUE(verdict.stands_out[0].jumps);
}

TEST(HiddenLeak, NamesTheReadingThatStandsOut) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 20, .noise = 1});
  for (std::size_t i = 0; i < log.rows.size(); ++i) log.rows[i].line = static_cast<int>(i) + 4;
  log.rows[7].reading -= 200;
  const LeakVerdict verdict = judged(log);
  ASSERT_EQ(verdict.stands_out.size(), 1u);
  EXPECT_EQ(verdict.stands_out[0].row.line, 11);
  EXPECT_NEAR(verdict.stands_out[0].by(), -200, 5);
  EXPECT_FALSE(verdict.stands_out[0].jumps);
  EXPECT_TRUE(says(verdict, "line 11, at 70 s"));
  EXPECT_TRUE(tells_to(verdict, "line 11"));
}

TEST(HiddenLeak, SaysWhatToDoUnlessItPasses) {
  EXPECT_TRUE(judged(SimulatedLeak{.loss_per_minute = 5}).next.empty());
  EXPECT_TRUE(tells_to(judged(SimulatedLeak{.loss_per_minute = 200}), "Find the leak"));
  EXPECT_TRUE(tells_to(judged(SimulatedLeak{.loss_per_minute = 85}), "near its limit"));
  EXPECT_TRUE(tells_to(judged(SimulatedLeak{.loss_per_minute = 20, .noise = 30}), "tap the gauge"));
}

}  // namespace
}  // namespace linewright
