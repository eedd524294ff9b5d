#include "planning/leak_judge.hpp"

#include <gtest/gtest.h>

#include <limits>

#include "planning/air_rig.hpp"
#include "planning/simulated_leak.hpp"

namespace linewright {
namespace {

const LeakTestPlan& static_plan() {
  static const AirRig rig(two_ports());
  static const LeakTestPlan plan = plan_of(rig.system(), standard_day());
  return plan;
}

const LeakTestPlan& pitot_plan() {
  static const AirRig rig(pitot_side());
  static const LeakTestPlan plan = plan_of(rig.system("pitot"), standard_day());
  return plan;
}

LeakVerdict judged(const LeakLog& log, const LeakTestPlan& plan = static_plan()) {
  const auto verdict = judge_leak(plan, log);
  if (const std::string* error = std::get_if<std::string>(&verdict))
    throw std::runtime_error(*error);
  return std::get<LeakVerdict>(verdict);
}

LeakVerdict judged(const SimulatedLeak& leak, const LeakTestPlan& plan = static_plan()) {
  return judged(simulated(plan, leak), plan);
}

bool says(const LeakVerdict& verdict, const std::string& part) {
  for (const std::string& reason : verdict.reasons)
    if (reason.find(part) != std::string::npos) return true;
  return false;
}

/// Readings at given times without a thermometer, written to a hundredth of a foot.
LeakLog log_of(const std::vector<std::pair<double, double>>& rows, bool with_temperature = false) {
  LeakLog log;
  log.has_temperature = with_temperature;
  log.reading_step = 0.01;
  log.temperature_step_degf = 0.01;
  for (const auto& [time_s, reading] : rows)
    log.rows.push_back({time_s, reading, with_temperature ? 59.0 : 0.0, 0});
  return log;
}

/// A temperature that does not move: what the needle loses is the leak alone.
double at_rest(double) {
  return 59;
}

/// The verdict on a log of a leak at rest.
LeakVerdict judged_at_rest(double loss_per_minute, const LeakTestPlan& plan = static_plan()) {
  return judged(SimulatedLeak{.loss_per_minute = loss_per_minute, .temperature_degf = at_rest},
                plan);
}

bool tells_to(const LeakVerdict& verdict, const std::string& part) {
  for (const std::string& next : verdict.next)
    if (next.find(part) != std::string::npos) return true;
  return false;
}

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
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_NEAR(verdict.time_constant_s.value(), 577.5, 1);  // calculated from 1,000 to 900 ft
  EXPECT_NEAR(verdict.leak_in3_per_min.value(), static_plan().limit_leak_in3_per_min, 1e-4);
  EXPECT_NEAR(verdict.hole_in.value(), static_plan().limit_hole_in.value(), 1e-5);
}

TEST(LeakVerdict, PassesATightSystemAndFailsALeakingOne) {
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 5}).answer, pass);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 150}).answer, fail);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 900}).answer, fail);
}

TEST(LeakVerdict, OfAPitotSystemIsInKnots) {
  EXPECT_NEAR(judged_at_rest(4, pitot_plan()).loss, 4, 0.02);
  EXPECT_NEAR(judged_at_rest(10, pitot_plan()).time_constant_s.value(), 429.7, 1);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 4}, pitot_plan()).answer, pass);
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 15}, pitot_plan()).answer, fail);
}

TEST(LeakVerdict, NeverRoundsTowardAPass) {
  // A hair over the limit, without noise: it must not pass, nor look like the limit.
  const LeakVerdict verdict =
      judged(log_of({{0, 1'000}, {20, 966}, {40, 933}, {60, 899.96}, {80, 870}}, true));
  EXPECT_NEAR(verdict.loss, 100.04, 1e-9);
  EXPECT_NE(verdict.answer, pass);
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

TEST(LeakVerdict, DoesNotTakeWarmingForALeak) {
  // One degree Fahrenheit a minute, on a system that loses 20 ft of its own.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 20, .temperature_degf = [](double t) { return 59 + t / 60; }});
  EXPECT_NEAR(*verdict.loss_corrected, 20, 1.5);
  EXPECT_GT(verdict.loss, 70);
  EXPECT_EQ(verdict.answer, pass);
  EXPECT_TRUE(says(verdict, "Warming"));
}

TEST(LeakVerdict, NeverPassesANeedleThatLostMoreThanTheLimit) {
  // By the thermometer it was the warming, by the needle a leak: a thermometer in the sun says so
  // too.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 20, .temperature_degf = [](double t) { return 59 + 1.7 * t / 60; }});
  EXPECT_GT(verdict.loss, 100);
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_TRUE(says(verdict, "makes up"));
  EXPECT_TRUE(tells_to(verdict, "come to rest"));
}

TEST(LeakVerdict, IsNotFooledByCooling) {
  // The needle loses 70 ft of the 150 that leak.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 150, .temperature_degf = [](double t) { return 59 - 1.5 * t / 60; }});
  EXPECT_LT(verdict.loss, 100);
  // Cooling by 1.5 degF deepens the suction by 8 % in the minute, 4 % on the mean, and the leak
  // with it: 150 ft become 156.
  EXPECT_NEAR(*verdict.loss_corrected, 156, 2);
  EXPECT_EQ(verdict.answer, fail);
  EXPECT_TRUE(says(verdict, "hides"));
}

TEST(LeakVerdict, InAPitotTestCoolingLooksLikeALeakAndWarmingHidesOne) {
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
  EXPECT_EQ(warmed.answer, fail);
}

TEST(LeakVerdict, WithoutAThermometerAllowsForADriftThatNobodySaw) {
  // A degree and a half is 79 ft: 10 + 79 passes, 30 + 79 might not; 120 less 26 might not have
  // failed, and neither 135 with what is left of the pressure in the third minute.
  const auto answer = [](double loss) {
    return judged(SimulatedLeak{.loss_per_minute = loss,
                                .temperature_degf = at_rest,
                                .log_temperature = false,
                                .duration_s = 600})
        .answer;
  };
  EXPECT_EQ(answer(2), pass);
  EXPECT_EQ(answer(10), pass);
  EXPECT_EQ(answer(30), unknown);
  EXPECT_EQ(answer(120), unknown);
  EXPECT_EQ(answer(150), fail);
}

TEST(LeakVerdict, WithoutAThermometerPassesNothingInLessThanTenMinutes) {
  const LeakVerdict verdict = judged(SimulatedLeak{.loss_per_minute = 2,
                                                   .temperature_degf = at_rest,
                                                   .log_temperature = false,
                                                   .duration_s = 590});
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_FALSE(verdict.loss_corrected);
  EXPECT_TRUE(says(verdict, "No temperature is logged"));
  EXPECT_TRUE(says(verdict, "without a thermometer a pass takes 600 s"));
  EXPECT_TRUE(tells_to(verdict, "Tape a thermometer to a line"));
  EXPECT_TRUE(tells_to(verdict, "10 minutes"));
}

TEST(LeakVerdict, TakesNoDoubtAwayForAThermometerThatStandsStill) {
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
    EXPECT_EQ(verdict.answer, unknown);
    EXPECT_EQ(verdict.thermometer, ThermometerSight::still);
    EXPECT_TRUE(says(verdict, "stood still"));
    EXPECT_GT(verdict.interval.high, 150);
  }
}

TEST(LeakVerdict, AllowsForAThermometerThatTrails) {
  // With a time constant of 100 s: it shows an ever larger part of the cooling.
  LeakLog log =
      simulated(static_plan(), {.loss_per_minute = 120,
                                .temperature_degf = [](double t) { return 59 - 1.5 * t / 60; },
                                .duration_s = 120});
  for (LogRow& row : log.rows)
    row.temperature_degf =
        to_step(59 - 1.5 / 60 * (row.time_s - 100 * (1 - std::exp(-row.time_s / 100))), 0.1);
  EXPECT_NE(judged(log).answer, pass);
}

TEST(LeakVerdict, TrustsACoarseThermometerLess) {
  SimulatedLeak leak{.loss_per_minute = 40,
                     .temperature_degf = [](double t) { return 59 + t / 90; }};
  EXPECT_EQ(judged(leak).answer, pass);
  leak.temperature_step = 1;
  EXPECT_EQ(judged(leak).answer, unknown);
}

TEST(LeakVerdict, DoesNotTrustATemperatureThatTheReadingsGainsay) {
  // The thermometer stands in the sun and jumps by a degree; the air in the lines does not.
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 60, .noise = 0.5, .duration_s = 240});
  for (LogRow& row : log.rows)
    if (row.time_s > 110) row.temperature_degf += 1;
  const LeakVerdict verdict = judged(log);
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_TRUE(says(verdict, "do not follow the temperature"));
}

TEST(LeakVerdict, DoesNotMindTheNoiseOfAThermometer) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 20, .noise = 1, .duration_s = 600});
  for (std::size_t i = 0; i < log.rows.size(); i += 2) log.rows[i].temperature_degf += 0.05;
  EXPECT_EQ(judged(log).answer, pass);
}

TEST(LeakVerdict, DoesNotCorrectMoreThanAThermometerCan) {
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 10, .temperature_degf = [](double t) { return 59 + 3 * t / 60; }});
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_TRUE(says(verdict, "too much for one thermometer"));
}

TEST(LeakVerdict, OfAShortLogIsAtBestUnknown) {
  const LeakVerdict tight =
      judged(SimulatedLeak{.loss_per_minute = 5, .temperature_degf = at_rest, .duration_s = 50});
  EXPECT_EQ(tight.answer, unknown);
  EXPECT_TRUE(tight.loss_is_projected);
  EXPECT_NEAR(tight.loss, 5, 0.2);
  EXPECT_TRUE(says(tight, "covers 50 s"));
  EXPECT_TRUE(tells_to(tight, "Log longer"));
}

TEST(LeakVerdict, PassesNothingInLessThanTwoMinutes) {
  const auto answer = [](double duration_s) {
    return judged(SimulatedLeak{.loss_per_minute = 5,
                                .temperature_degf = [](double t) { return 59 + t / 120; },
                                .duration_s = duration_s})
        .answer;
  };
  EXPECT_EQ(answer(60), unknown);
  EXPECT_EQ(answer(110), unknown);
  EXPECT_EQ(answer(120), pass);
}

TEST(LeakVerdict, OfAShortLogIsAFailWhereTheLimitIsLostAlready) {
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 300, .duration_s = 40}).answer, fail);
}

TEST(LeakVerdict, NeedsTheTestsPressure) {
  EXPECT_EQ(judged(SimulatedLeak{.loss_per_minute = 20, .start = -80}).answer, pass);
  const LeakVerdict low = judged(SimulatedLeak{.loss_per_minute = 20, .start = -120});
  EXPECT_EQ(low.answer, unknown);
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
  EXPECT_EQ(high.answer, unknown);
}

TEST(LeakVerdict, OfNoisyReadingsIsUnknown) {
  const LeakVerdict verdict =
      judged(SimulatedLeak{.loss_per_minute = 30, .noise = 30, .duration_s = 120});
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_TRUE(says(verdict, "scatter too much"));
}

TEST(LeakVerdict, OfReadingsThatRiseIsUnknown) {
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 12; ++i) rows.push_back({10.0 * i, 950 + 5.0 * i});
  const LeakVerdict verdict = judged(log_of(rows));
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_TRUE(says(verdict, "which no leak does"));
}

TEST(LeakVerdict, OfALogWithAHoleIsUnknown) {
  const LeakVerdict verdict =
      judged(log_of({{0, 1'000}, {10, 999}, {20, 998}, {30, 997}, {300, 970}}, true));
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_TRUE(says(verdict, "270 s pass without a reading"));
}

TEST(LeakVerdict, OfReadingsThatEndBelowTheFieldIsAFail) {
  // Whatever makes the needle end below the field, far more than 100 ft were lost.
  const LeakVerdict verdict = judged(log_of({{0, 1'000}, {20, 400}, {40, 100}, {60, -100}}));
  EXPECT_EQ(verdict.answer, fail);
  EXPECT_GT(verdict.interval.low, 1'000);
}

TEST(LeakVerdict, OfTwoReadingsIsUnknownUnlessNoStrokeExplainsThem) {
  // A quick stroke to 1,000 ft cools the air by 2/7 of 3.6 % of its temperature [adiabatic law],
  // 5 degF; as that goes the needle falls by some 280 ft.
  EXPECT_EQ(judged(log_of({{0, 1'000}, {60, 980}})).answer, unknown);
  EXPECT_EQ(judged(log_of({{0, 1'000}, {60, 800}})).answer, unknown);
  EXPECT_EQ(judged(log_of({{0, 1'000}, {60, 400}})).answer, fail);
}

TEST(LeakVerdict, LetsTheAirSettleAfterAQuickStroke) {
  // Tight, but the needle runs on by 258 ft as the air warms again, with a time constant of 27 s.
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 18; ++i)
    rows.push_back({10.0 * i, std::round(742 + 258 * std::exp(-10.0 * i / 27))});
  const LeakVerdict verdict = judged(log_of(rows, true));
  EXPECT_GT(verdict.loss, 200);
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_GT(verdict.settled_from_s.value(), 90);
  EXPECT_TRUE(says(verdict, "not settled"));
  EXPECT_TRUE(tells_to(verdict, "Let it settle"));
}

TEST(LeakVerdict, JudgesTheReadingsFromWhereTheAirHasSettled) {
  // The last 1.5 degF of a stroke, gone with a time constant of 15 s.
  const LeakVerdict verdict = judged(SimulatedLeak{
      .loss_per_minute = 15,
      .temperature_degf = [](double t) { return 59 + t / 240 - 1.2 * std::exp(-t / 15); },
      .duration_s = 240});
  EXPECT_NE(verdict.answer, fail);
  LeakLog unseen = simulated(
      static_plan(),
      SimulatedLeak{
          .loss_per_minute = 15,
          .temperature_degf = [](double t) { return 59 + t / 240 - 1.2 * std::exp(-t / 15); },
          .duration_s = 240,
          .reading_step = 1});
  for (LogRow& row : unseen.rows) row.temperature_degf = to_step(59 + row.time_s / 240, 0.1);
  const LeakVerdict settled = judged(unseen);
  EXPECT_EQ(settled.answer, pass);
  EXPECT_GT(settled.as_read.start_s, 30);
  EXPECT_LT(*settled.loss_corrected, 25);
}

TEST(LeakVerdict, DoesNotPassAnOvershootThatWasBledBack) {
  // The air let back in has warmed what was there: as that cools it holds the needle up against a
  // leak of 150 ft a minute. These readings fall ever faster.
  const LeakVerdict verdict = judged(
      log_of({{0, 1'000}, {10, 997}, {20, 990}, {30, 981}, {40, 969}, {50, 955}, {60, 940}}, true));
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_TRUE(says(verdict, "held up"));
}

TEST(LeakVerdict, DoesNotPassANeedleThatMayBeStuck) {
  std::vector<std::pair<double, double>> rows;
  for (int i = 0; i <= 60; ++i) rows.push_back({10.0 * i, 1'000});
  const LeakVerdict stuck = judged(log_of(rows));
  EXPECT_EQ(stuck.answer, unknown);
  EXPECT_TRUE(says(stuck, "all 61 readings are 1000 ft"));
  EXPECT_TRUE(tells_to(stuck, "Tap the gauge"));
  // A reader who wavers by a foot makes it no better.
  for (std::size_t i = 0; i < rows.size(); i += 3) rows[i].second = 1'001;
  const LeakVerdict wavering = judged(log_of(rows));
  EXPECT_EQ(wavering.answer, unknown);
  EXPECT_TRUE(says(wavering, "did not move"));
}

TEST(LeakVerdict, DoesNotPassANeedleThatSticksAfterAFewReadings) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 150, .reading_step = 1});
  for (LogRow& row : log.rows)
    if (row.time_s > 10) row.reading = log.rows[1].reading;
  EXPECT_EQ(judged(log).answer, unknown);
}

TEST(LeakVerdict, DoesNotTakeTheJumpOfATappedNeedleForALeak) {
  // 75 ft a minute: within the limit. The needle hangs for a minute, and a tap lets it go.
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 75, .noise = 0.5, .reading_step = 1});
  for (std::size_t i = 3; i < 9; ++i) log.rows[i].reading = log.rows[2].reading;
  const LeakVerdict verdict = judged(log);
  EXPECT_GT(verdict.loss, 100);
  EXPECT_EQ(verdict.answer, unknown);
  ASSERT_EQ(verdict.stands_out.size(), 1u);
  EXPECT_EQ(verdict.stands_out[0].row.time_s, 90);
  EXPECT_TRUE(verdict.stands_out[0].jumps);
}

TEST(LeakVerdict, NamesTheReadingThatStandsOut) {
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

TEST(LeakVerdict, SaysWhatToDoUnlessItPasses) {
  EXPECT_TRUE(judged(SimulatedLeak{.loss_per_minute = 5}).next.empty());
  EXPECT_TRUE(tells_to(judged(SimulatedLeak{.loss_per_minute = 200}), "Find the leak"));
  EXPECT_TRUE(tells_to(judged(SimulatedLeak{.loss_per_minute = 85}), "near its limit"));
  EXPECT_TRUE(tells_to(judged(SimulatedLeak{.loss_per_minute = 20, .noise = 30}), "tap the gauge"));
}

TEST(LeakVerdict, IsNoFailForOneSlipOfThePen) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 20, .noise = 1});
  log.rows[7].reading -= 200;
  const LeakVerdict verdict = judged(log);
  EXPECT_EQ(verdict.answer, unknown);
  EXPECT_GT(verdict.loss, 150);
}

TEST(LeakVerdict, OfAHoseThatComesOffIsAFail) {
  LeakLog log = simulated(static_plan(), {.loss_per_minute = 5, .noise = 1});
  for (LogRow& row : log.rows)
    if (row.time_s > 95) row.reading = std::max(0.0, row.reading - 20 * (row.time_s - 95));
  EXPECT_EQ(judged(log).answer, fail);
}

TEST(LeakVerdict, OfASystemThatWasNeverPumpedIsUnknown) {
  EXPECT_EQ(judged(log_of({{0, 0}, {20, 0}, {40, 0}, {60, 0}, {80, 0}}, true)).answer, unknown);
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
      EXPECT_EQ(answer(loss, seed), pass) << loss << " ft, seed " << seed;
    for (const double loss : {140.0, 200.0, 500.0})
      EXPECT_EQ(answer(loss, seed), fail) << loss << " ft, seed " << seed;
    for (const double loss : {101.0, 105.0, 115.0}) EXPECT_NE(answer(loss, seed), pass);
    for (const double loss : {80.0, 90.0, 99.0}) EXPECT_NE(answer(loss, seed), fail);
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
    EXPECT_NE(verdict.answer, pass) << drift << " degF a minute";
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
        const int now = answer == pass ? 0 : answer == unknown ? 1 : 2;
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

}  // namespace
}  // namespace linewright
