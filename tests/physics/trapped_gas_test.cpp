#include "physics/trapped_gas.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <random>

#include "physics/airspeed.hpp"
#include "physics/atmosphere.hpp"

namespace linewright {
namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

/// The value, or NaN, which no expectation accepts.
double known(std::optional<double> value) {
  return value.value_or(nan_value);
}

double suction_pa(double altitude_ft) {
  return sea_level_pressure_pa - known(standard_pressure_pa(altitude_ft));
}

TEST(Stroke, DoublesTheVolumeToHalveThePressure) {
  EXPECT_DOUBLE_EQ(known(suction_stroke_in3(12, 100'000, 50'000)), 12);
  EXPECT_DOUBLE_EQ(known(suction_stroke_in3(12, 100'000, 25'000)), 36);
}

TEST(Stroke, PushesInOneVolumeToDoubleThePressure) {
  EXPECT_DOUBLE_EQ(known(pressure_stroke_in3(12, 100'000, 200'000)), 12);
  EXPECT_DOUBLE_EQ(known(pressure_stroke_in3(12, 100'000, 125'000)), 3);
}

TEST(Stroke, IsNothingToStayAtAmbient) {
  EXPECT_EQ(known(suction_stroke_in3(12, 100'000, 100'000)), 0);
  EXPECT_EQ(known(pressure_stroke_in3(12, 100'000, 100'000)), 0);
}

TEST(Stroke, Reaches1000FeetWith3Point69PercentOfTheVolume) {
  // [formula from memory; regression figures calculated from it]
  const double target_pa = known(standard_pressure_pa(1'000));
  EXPECT_NEAR(known(suction_stroke_in3(100, 101'325, target_pa)), 3.69, 0.005);
}

TEST(Stroke, Reaches150KnotsWith3Point65PercentOfTheVolume) {
  // [formula from memory; regression figures calculated from it]
  const double target_pa = 101'325 + known(impact_pressure_pa(150));
  EXPECT_NEAR(known(pressure_stroke_in3(100, 101'325, target_pa)), 3.65, 0.005);
}

TEST(Stroke, KeepsPressureTimesVolume) {
  std::mt19937_64 random(1662);
  std::uniform_real_distribution<double> volumes(0.1, 500);
  std::uniform_real_distribution<double> pressures(40'000, 120'000);
  for (int i = 0; i < 5'000; ++i) {
    const double volume_in3 = volumes(random);
    const double one_pa = pressures(random);
    const double other_pa = pressures(random);
    const double low_pa = std::min(one_pa, other_pa);
    const double high_pa = std::max(one_pa, other_pa);
    const double drawn_in3 = known(suction_stroke_in3(volume_in3, high_pa, low_pa));
    ASSERT_NEAR(low_pa * (volume_in3 + drawn_in3) / (high_pa * volume_in3), 1, 1e-12);
    const double pushed_in3 = known(pressure_stroke_in3(volume_in3, low_pa, high_pa));
    ASSERT_NEAR(low_pa * (volume_in3 + pushed_in3) / (high_pa * volume_in3), 1, 1e-12);
  }
}

TEST(Pump, HalvesThePressureWithEachStrokeOfItsSystemsOwnVolume) {
  EXPECT_NEAR(known(pressure_after_suction_strokes_pa(5, 5, 80'000, 1)), 40'000, 1e-8);
  EXPECT_NEAR(known(pressure_after_suction_strokes_pa(5, 5, 80'000, 3)), 10'000, 1e-8);
  EXPECT_EQ(suction_strokes(5, 5, 80'000, 10'000), 3);
  EXPECT_EQ(suction_strokes(5, 5, 80'000, 10'001), 3);
  EXPECT_EQ(suction_strokes(5, 5, 80'000, 9'999), 4);
}

TEST(Pump, AddsTheSameWithEachPressureStroke) {
  EXPECT_DOUBLE_EQ(known(pressure_after_pressure_strokes_pa(10, 1, 100'000, 3)), 130'000);
  EXPECT_EQ(pressure_strokes(10, 1, 100'000, 130'000), 3);
  EXPECT_EQ(pressure_strokes(10, 1, 100'000, 130'001), 4);
}

TEST(Pump, NeedsNoStrokeToStayAtAmbient) {
  EXPECT_EQ(suction_strokes(10, 1, 100'000, 100'000), 0);
  EXPECT_EQ(pressure_strokes(10, 1, 100'000, 100'000), 0);
  EXPECT_DOUBLE_EQ(known(pressure_after_suction_strokes_pa(10, 1, 100'000, 0)), 100'000);
  EXPECT_DOUBLE_EQ(known(pressure_after_pressure_strokes_pa(10, 1, 100'000, 0)), 100'000);
}

TEST(Pump, FirstSuctionStrokeIsThatOfASyringe) {
  const double stroke_in3 = known(suction_stroke_in3(37, 101'325, 97'000));
  EXPECT_NEAR(known(pressure_after_suction_strokes_pa(37, stroke_in3, 101'325, 1)), 97'000, 1e-8);
}

TEST(Pump, CountIsTheFewestThatReachesTheTarget) {
  std::mt19937_64 random(1654);
  std::uniform_real_distribution<double> volumes(1, 200);
  std::uniform_real_distribution<double> displacements(0.05, 5);
  std::uniform_real_distribution<double> drops(100, 30'000);
  for (int i = 0; i < 5'000; ++i) {
    const double volume_in3 = volumes(random);
    const double displacement_in3 = displacements(random);
    const double low_pa = 100'000 - drops(random);
    const auto strokes = suction_strokes(volume_in3, displacement_in3, 100'000, low_pa);
    ASSERT_TRUE(strokes);
    ASSERT_GE(*strokes, 1);
    const auto after = [&](int count) {
      return known(pressure_after_suction_strokes_pa(volume_in3, displacement_in3, 100'000, count));
    };
    ASSERT_LE(after(*strokes), low_pa + 0.001);
    ASSERT_GT(after(*strokes - 1), low_pa);
  }
}

TEST(Pump, HasNoAnswerWhereItWouldTakeForEver) {
  EXPECT_FALSE(suction_strokes(100, 1e-9, 100'000, 50'000));
  EXPECT_FALSE(pressure_strokes(100, 1e-9, 100'000, 150'000));
  EXPECT_FALSE(suction_strokes(1e300, 1e-300, 100'000, 50'000));
}

TEST(Leak, LeavesOneInEOfTheDifferentialAfterOneTimeConstant) {
  EXPECT_NEAR(known(differential_after_pa(1'000, 50, 50)), 1'000 / 2.718281828459045, 1e-9);
  EXPECT_DOUBLE_EQ(known(differential_after_pa(-1'000, 0, 50)), -1'000);
}

TEST(Leak, AtTheStaticLimitHasATimeConstantOf577Seconds) {
  // [formula from memory; regression figures calculated from it] 1,000 ft to 900 ft at sea level in
  // 60 s.
  EXPECT_NEAR(suction_pa(1'000), 3'608.43, 0.006);
  EXPECT_NEAR(suction_pa(900), 3'252.34, 0.006);
  EXPECT_NEAR(known(leak_time_constant_s(suction_pa(1'000), suction_pa(900), 60)), 577.5, 0.06);
}

TEST(Leak, AtThePitotLimitHasTheTimeConstantOfItsTestSpeed) {
  // [formula from memory; regression figures calculated from it] 150 to 140 kt and 70 to 60 kt in
  // 60 s.
  const auto time_constant_s = [](double from_kt, double to_kt) {
    return known(leak_time_constant_s(known(impact_pressure_pa(from_kt)),
                                      known(impact_pressure_pa(to_kt)), 60));
  };
  EXPECT_NEAR(time_constant_s(150, 140), 429.7, 0.06);
  EXPECT_NEAR(time_constant_s(70, 60), 194.1, 0.06);
}

TEST(Leak, TimeConstantInvertsTheDecay) {
  std::mt19937_64 random(60);
  std::uniform_real_distribution<double> constants(20, 5'000);
  std::uniform_real_distribution<double> differentials(100, 10'000);
  for (int i = 0; i < 5'000; ++i) {
    const double constant_s = constants(random);
    const double initial_pa = i % 2 == 0 ? differentials(random) : -differentials(random);
    const double later_pa = known(differential_after_pa(initial_pa, 60, constant_s));
    // The logarithm of a ratio near one loses digits as the time constant grows.
    ASSERT_NEAR(known(leak_time_constant_s(initial_pa, later_pa, 60)) / constant_s, 1, 1e-12 * 5e3);
  }
}

TEST(Leak, HasNoTimeConstantWhereNothingIsLost) {
  EXPECT_FALSE(leak_time_constant_s(1'000, 1'000, 60));
  EXPECT_FALSE(leak_time_constant_s(1'000, 1'100, 60));
  EXPECT_FALSE(leak_time_constant_s(1'000, -500, 60));
  EXPECT_FALSE(leak_time_constant_s(1'000, 0, 60));
  EXPECT_FALSE(leak_time_constant_s(0, 0, 60));
  EXPECT_FALSE(leak_time_constant_s(1'000, 900, 0));
  EXPECT_FALSE(leak_time_constant_s(nan_value, 900, 60));
}

TEST(Leak, FlowIsTheVolumeOfAmbientAirThatCameIn) {
  // One hundredth of ambient pressure more in 50 in3 within 30 s: 0.5 in3 in half a minute.
  EXPECT_DOUBLE_EQ(known(leak_flow_in3_per_min(50, 1'000, 30, 100'000)), 1);
  EXPECT_DOUBLE_EQ(known(leak_flow_in3_per_min(50, -1'000, 30, 100'000)), -1);
  EXPECT_EQ(known(leak_flow_in3_per_min(50, 0, 30, 100'000)), 0);
}

TEST(Leak, FlowAtTheStaticLimitIsAboutATwoHundredAndEightiethOfTheVolumeAMinute) {
  // (3608.43 - 3252.34) / 101,325 = 0.003514 [formula from memory; calculated].
  const double gain_pa = suction_pa(1'000) - suction_pa(900);
  EXPECT_NEAR(known(leak_flow_in3_per_min(100, gain_pa, 60, 101'325)), 0.3514, 0.0001);
}

TEST(TrappedTemperature, ChangesPressureInProportion) {
  EXPECT_DOUBLE_EQ(known(pressure_change_pa(90'000, 300, 1)), 300);
  EXPECT_DOUBLE_EQ(known(pressure_change_pa(90'000, 300, -2)), -600);
}

TEST(TrappedTemperature, OneDegreeAt1000FeetIsNearlyTheWholeLimit) {
  // [formula from memory; regression figures calculated from it] +1 C: +339.12 Pa, -95.24 ft; -1 C:
  // +95.51 ft.
  const double pressure_pa = known(standard_pressure_pa(1'000));
  EXPECT_NEAR(known(pressure_change_pa(pressure_pa, 288.15, 1)), 339.12, 0.006);
  EXPECT_NEAR(known(altitude_change_ft(pressure_pa, 288.15, 1)), -95.24, 0.006);
  EXPECT_NEAR(known(altitude_change_ft(pressure_pa, 288.15, -1)), 95.51, 0.006);
}

TEST(TrappedTemperature, OneDegreeAt150KnotsIsSevenKnots) {
  // [formula from memory; regression figures calculated from it] +1 C: +364 Pa, +7.13 kt.
  const double pitot_pa = 101'325 + known(impact_pressure_pa(150));
  EXPECT_NEAR(known(pressure_change_pa(pitot_pa, 288.15, 1)), 364, 0.6);
  EXPECT_NEAR(known(airspeed_change_kt(101'325, 150, 288.15, 1)), 7.13, 0.006);
}

TEST(TrappedTemperature, NoChangeMovesNoNeedle) {
  EXPECT_EQ(known(altitude_change_ft(90'000, 290, 0)), 0);
  EXPECT_NEAR(known(airspeed_change_kt(90'000, 120, 290, 0)), 0, 1e-9);
}

TEST(TrappedTemperature, WarmingLooksLikeALeakOnStaticAndHidesOneOnPitot) {
  EXPECT_LT(known(altitude_change_ft(95'000, 290, 0.5)), 0);
  EXPECT_GT(known(airspeed_change_kt(95'000, 100, 290, 0.5)), 0);
}

TEST(TrappedTemperature, HasNoAirspeedWhereCoolingReversesTheIndicator) {
  // 40 kt is 260 Pa; one degree is 350 Pa.
  EXPECT_FALSE(airspeed_change_kt(101'325, 40, 288.15, -1));
}

TEST(TrappedGas, HasNoAnswerForPressuresOnTheWrongSide) {
  EXPECT_FALSE(suction_stroke_in3(10, 100'000, 100'001));
  EXPECT_FALSE(pressure_stroke_in3(10, 100'000, 99'999));
  EXPECT_FALSE(suction_strokes(10, 1, 100'000, 100'001));
  EXPECT_FALSE(pressure_strokes(10, 1, 100'000, 99'999));
}

TEST(TrappedGas, HasNoAnswerForSizesThatAreNotPositive) {
  for (const double bad : {0.0, -1.0, infinity, nan_value}) {
    SCOPED_TRACE(bad);
    EXPECT_FALSE(suction_stroke_in3(bad, 100'000, 90'000));
    EXPECT_FALSE(suction_stroke_in3(10, bad, 90'000));
    EXPECT_FALSE(suction_stroke_in3(10, 100'000, bad));
    EXPECT_FALSE(pressure_stroke_in3(bad, 100'000, 110'000));
    EXPECT_FALSE(pressure_stroke_in3(10, bad, 110'000));
    EXPECT_FALSE(pressure_stroke_in3(10, 100'000, bad));
    EXPECT_FALSE(suction_strokes(10, bad, 100'000, 90'000));
    EXPECT_FALSE(pressure_strokes(10, bad, 100'000, 110'000));
    EXPECT_FALSE(pressure_after_suction_strokes_pa(10, bad, 100'000, 1));
    EXPECT_FALSE(pressure_after_pressure_strokes_pa(bad, 1, 100'000, 1));
    EXPECT_FALSE(differential_after_pa(1'000, 60, bad));
    EXPECT_FALSE(leak_time_constant_s(1'000, 900, bad));
    EXPECT_FALSE(leak_flow_in3_per_min(bad, 1, 60, 100'000));
    EXPECT_FALSE(leak_flow_in3_per_min(10, 1, bad, 100'000));
    EXPECT_FALSE(leak_flow_in3_per_min(10, 1, 60, bad));
    EXPECT_FALSE(pressure_change_pa(bad, 290, 1));
    EXPECT_FALSE(pressure_change_pa(90'000, bad, 1));
    EXPECT_FALSE(altitude_change_ft(bad, 290, 1));
    EXPECT_FALSE(airspeed_change_kt(bad, 100, 290, 1));
  }
  EXPECT_FALSE(pressure_after_suction_strokes_pa(10, 1, 100'000, -1));
  EXPECT_FALSE(pressure_after_pressure_strokes_pa(10, 1, 100'000, -1));
  EXPECT_FALSE(differential_after_pa(1'000, -1, 60));
  EXPECT_FALSE(differential_after_pa(1'000, infinity, 60));
  EXPECT_FALSE(differential_after_pa(nan_value, 1, 60));
  EXPECT_FALSE(pressure_change_pa(90'000, 290, -290));
  EXPECT_FALSE(pressure_change_pa(90'000, 290, nan_value));
  EXPECT_FALSE(airspeed_change_kt(90'000, -1, 290, 1));
}

TEST(TrappedGas, HasNoAnswerWhereTheReadingLeavesTheStandardLayer) {
  EXPECT_FALSE(altitude_change_ft(22'700, 290, -5));
  EXPECT_FALSE(altitude_change_ft(20'000, 290, 1));
}

}  // namespace
}  // namespace linewright
