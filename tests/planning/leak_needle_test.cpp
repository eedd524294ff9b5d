#include "planning/leak_needle.hpp"

#include <gtest/gtest.h>

#include "planning/leak_thermometer.hpp"

namespace linewright {
namespace {

/// Readings every ten seconds beside temperatures, or beside one that stands.
LeakLog log_of(const std::vector<double>& readings, const std::vector<double>& degf = {}) {
  LeakLog log;
  log.has_temperature = !degf.empty();
  log.reading_step = 1;
  log.temperature_step_degf = 0.1;
  for (std::size_t i = 0; i < readings.size(); ++i)
    log.rows.push_back({10.0 * static_cast<double>(i), readings[i], i < degf.size() ? degf[i] : 0,
                        static_cast<int>(i) + 2});
  return log;
}

std::vector<double> steps(double start, double by, int count) {
  std::vector<double> values;
  for (int i = 0; i < count; ++i) values.push_back(start + by * i);
  return values;
}

std::vector<OddReading> odd(const LeakLog& log) {
  return odd_readings(log, series_noise(reading_series(log), 5), 10);
}

TEST(LogSeries, FindsTheStepThatReadingsAreRoundedTo) {
  EXPECT_EQ(reading_series(log_of({1'000, 980, 960})).step, 20);
  EXPECT_EQ(reading_series(log_of({1'000, 990, 980})).step, 10);
  EXPECT_EQ(reading_series(log_of({1'000, 993, 980})).step, 1);
  EXPECT_EQ(temperature_series(log_of({0, 0, 0}, {64, 64.5, 65})).step, 0.5);
  EXPECT_EQ(temperature_series(log_of({0, 0, 0}, {64, 64.5, 64.6})).step, 0.1);
}

TEST(Needle, ThatStandsHasNotMoved) {
  const LeakLog stands = log_of(steps(1'000, 0, 19));
  EXPECT_TRUE(needle_stands(stands));
  EXPECT_FALSE(needle_moved(stands, series_noise(reading_series(stands), 5), 3));
}

TEST(Needle, ThatLosesTwoFeetInTenSecondsHasMoved) {
  const LeakLog moves = log_of(steps(1'000, -2, 13));
  EXPECT_FALSE(needle_stands(moves));
  EXPECT_TRUE(needle_moved(moves, series_noise(reading_series(moves), 5), 3));
}

TEST(Needle, ThatMovesAtFirstOnlyMayBeStuck) {
  std::vector<double> readings = steps(1'000, -12, 4);
  readings.resize(19, 964);
  const LeakLog log = log_of(readings);
  EXPECT_FALSE(needle_moved(log, series_noise(reading_series(log), 5), 3));
}

TEST(OddReadings, AreNoneInASteadyFall) {
  EXPECT_TRUE(odd(log_of(steps(1'000, -15, 13))).empty());
  EXPECT_TRUE(odd(log_of({1'000, 926, 874, 836, 809, 790, 776, 766, 759, 754})).empty());
  EXPECT_TRUE(odd(log_of({1'000, 1'000, 980, 980, 980, 960, 960, 940})).empty()) << "20 ft marks";
}

TEST(OddReadings, NameASlipByItsLineAndSize) {
  std::vector<double> readings = steps(1'000, -5, 13);
  readings[6] += 100;
  const auto found = odd(log_of(readings));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].row.line, 8);
  EXPECT_NEAR(found[0].by(), 100, 1e-9);
  EXPECT_FALSE(found[0].jumps);
}

TEST(OddReadings, TellAJumpFromASlip) {
  std::vector<double> readings = steps(1'000, -5, 13);
  for (std::size_t i = 7; i < readings.size(); ++i) readings[i] -= 60;
  const auto found = odd(log_of(readings));
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].row.time_s, 70);
  EXPECT_NEAR(found[0].by(), -60, 1e-9);
  EXPECT_TRUE(found[0].jumps);
}

TEST(ThermometerSight, IsStillUnlessItMovesBeyondItsOwnScatter) {
  const std::vector<double> fall = steps(1'000, -5, 13);
  const auto sight = [&](const std::vector<double>& degf) {
    return thermometer_evidence(log_of(fall, degf)).sight;
  };
  EXPECT_EQ(sight({}), ThermometerSight::none);
  EXPECT_EQ(sight(std::vector<double>(13, 64)), ThermometerSight::still);
  EXPECT_EQ(sight({64, 64.1, 64, 64, 64.1, 64, 64.1, 64, 64, 64, 64.1, 64, 64}),
            ThermometerSight::still);
  EXPECT_EQ(sight({64, 64.3, 63.8, 64.2, 63.9, 64.1, 64.3, 63.7, 64, 64.4, 63.9, 64.2, 64}),
            ThermometerSight::still);
  EXPECT_EQ(sight({64, 64, 64.1, 64.1, 64.1, 64.2, 64.2, 64.3, 64.3, 64.4, 64.4, 64.4, 64.5}),
            ThermometerSight::moves);
}

TEST(ThermometerLag, IsBoundedByHowTheRateChanges) {
  // T = 59 - 1e-4 t^2: the rate changes by -2e-4 degF/s in a second. Trailing by 120 s, the air
  // cooled by 120 s x 2e-4 x 60 = 1.44 degF more than was seen in a minute.
  std::vector<double> degf;
  for (int i = 0; i < 13; ++i) degf.push_back(59 - 1e-4 * 100 * i * i);
  LeakLog log = log_of(steps(1'000, -5, 13), degf);
  log.temperature_step_degf = 0.001;
  EXPECT_NEAR(unseen_by_lag_degf(thermometer_evidence(log), 60), -1.44, 1e-6);
}

}  // namespace
}  // namespace linewright
