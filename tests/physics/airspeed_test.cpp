#include "physics/airspeed.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <vector>

namespace linewright {
namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double pascals_per_psf = 47.880259;

/// The value, or NaN, which no expectation accepts.
double known(std::optional<double> value) {
  return value.value_or(nan_value);
}

struct AirspeedRow {
  double knots, published_inh2o, inh2o, pascals, inhg, psf;
};

const std::vector<AirspeedRow>& airspeed_table() {
  static const std::vector<AirspeedRow> rows = {{40, 1.04, 1.044, 259.6, 0.0767, 5.422},
                                                {50, 1.63, 1.632, 405.8, 0.1198, 8.476},
                                                {60, 2.35, 2.352, 584.8, 0.1727, 12.213},
                                                {70, 3.20, 3.203, 796.5, 0.2352, 16.636},
                                                {80, 4.19, 4.188, 1041.2, 0.3075, 21.747},
                                                {90, 5.31, 5.305, 1319.1, 0.3895, 27.550},
                                                {100, 6.56, 6.557, 1630.3, 0.4814, 34.049},
                                                {110, 7.94, 7.943, 1975.0, 0.5832, 41.249},
                                                {120, 9.47, 9.466, 2353.5, 0.6950, 49.154},
                                                {130, 11.12, 11.125, 2766.0, 0.8168, 57.770},
                                                {140, 12.92, 12.922, 3212.9, 0.9488, 67.103},
                                                {150, 14.86, 14.858, 3694.4, 1.0909, 77.159},
                                                {160, 16.94, 16.935, 4210.8, 1.2435, 87.945},
                                                {170, 19.15, 19.154, 4762.6, 1.4064, 99.468},
                                                {180, 21.52, 21.517, 5350.0, 1.5799, 111.737},
                                                {190, 24.02, 24.025, 5973.5, 1.7640, 124.759},
                                                {200, 26.68, 26.679, 6633.5, 1.9589, 138.544},
                                                {210, 29.48, 29.483, 7330.6, 2.1647, 153.102},
                                                {220, 32.44, 32.436, 8065.0, 2.3816, 168.441},
                                                {230, 35.54, 35.543, 8837.4, 2.6097, 184.573},
                                                {240, 38.80, 38.804, 9648.3, 2.8491, 201.509},
                                                {250, 42.22, 42.223, 10498.2, 3.1001, 219.260}};
  return rows;
}

TEST(ImpactPressure, MatchesThePublishedWaterColumns) {
  // Inches of water at 20 C [verified: a public builders' table from NASA RP-1046 constants, 22
  // rows].
  ASSERT_EQ(airspeed_table().size(), 22u);
  for (const AirspeedRow& row : airspeed_table()) {
    SCOPED_TRACE(row.knots);
    EXPECT_NEAR(inh2o_20c_from_pascals(known(impact_pressure_pa(row.knots))), row.published_inh2o,
                0.01);
  }
}

TEST(ImpactPressure, KeepsToItsFormulaInFourUnits) {
  // [verified formula: the same table's page; columns calculated from it] The columns were made
  // with 661.48 kt and 248.64 Pa to the inch: rounding worth 4e-6 and 1e-5 of a row, beside its
  // last digit.
  for (const AirspeedRow& row : airspeed_table()) {
    SCOPED_TRACE(row.knots);
    const double impact_pa = known(impact_pressure_pa(row.knots));
    EXPECT_NEAR(inh2o_20c_from_pascals(impact_pa), row.inh2o, 0.0011);
    EXPECT_NEAR(impact_pa, row.pascals, 0.1);
    EXPECT_NEAR(inhg_from_pascals(impact_pa), row.inhg, 0.00007);
    EXPECT_NEAR(impact_pa / pascals_per_psf, row.psf, 0.0016);
  }
}

TEST(ImpactPressure, Is1Point1InchesOfMercuryAnd14Point9OfWaterAt150Knots) {
  // [verified: AC 43.13-1B para 12-59, two and three figures]
  const double impact_pa = known(impact_pressure_pa(150));
  EXPECT_NEAR(inhg_from_pascals(impact_pa), 1.1, 0.05);
  EXPECT_NEAR(inh2o_20c_from_pascals(impact_pa), 14.9, 0.05);
  EXPECT_NEAR(inh2o_4c_from_pascals(impact_pa), 14.9, 0.08);
}

TEST(ImpactPressure, FallsByLessFrom150To140KnotsThanTheCircularRounds) {
  // [verified: AC 43.13-1B para 12-59 gives about 0.15 inHg, 2.04 inH2O; calculated: 0.142
  // and 1.94, and a fall of 2.04 inH2O is 10.6 kt]
  const double fall_pa = known(impact_pressure_pa(150)) - known(impact_pressure_pa(140));
  EXPECT_NEAR(inhg_from_pascals(fall_pa), 0.142, 0.0005);
  EXPECT_NEAR(inh2o_20c_from_pascals(fall_pa), 1.94, 0.005);
  EXPECT_NEAR(inh2o_4c_from_pascals(fall_pa), 1.93, 0.005);
  const double left_pa = known(impact_pressure_pa(150)) - 2.04 * pascals_per_inh2o_20c;
  EXPECT_NEAR(150 - known(calibrated_airspeed_kt(left_pa)), 10.6, 0.05);
}

TEST(ImpactPressure, Of1000FeetOfSuctionDrivesAnOpenPitotTo148Knots) {
  // [formula from memory; figures calculated from it] Static suction alone: 3,608 Pa at standard
  // sea level.
  const double suction_pa = 101'325 - known(standard_pressure_pa(1'000));
  EXPECT_NEAR(suction_pa, 3'608, 0.5);
  EXPECT_NEAR(known(calibrated_airspeed_kt(suction_pa)), 148, 0.5);
}

TEST(ImpactPressure, AtLowSpeedIsHalfRhoVSquared) {
  // [calculated] 10 kt = 5.1444 m/s: 0.5 x 1.225 x 26.465 = 16.210 Pa; compressibility adds M^2 / 4
  // = 0.006 %.
  EXPECT_NEAR(known(impact_pressure_pa(10)), 16.210, 0.002);
}

TEST(ImpactPressure, ReachesTheSonicRatio) {
  // [calculated] 1.2^3.5 = 1.892929: the pitot ratio at Mach 1 for a ratio of specific heats
  // of 1.4.
  EXPECT_NEAR(known(impact_pressure_pa(sea_level_sound_speed_kt)) / 101'325, 0.892929, 1e-6);
  EXPECT_NEAR(known(impact_pressure_pa(sea_level_sound_speed_kt)), 90'476, 0.5);
}

TEST(SoundSpeed, FollowsFromTheStandardAtmosphere) {
  const double metres_per_second =
      std::sqrt(1.4 * air_gas_constant_j_per_kg_k * sea_level_temperature_k);
  EXPECT_NEAR(sea_level_sound_speed_kt, metres_per_second * 3'600 / 1'852, 1e-9);
  // [verified: page on calibrated airspeed, 661.48 kt; the builders' table, 761.22 mph]
  EXPECT_NEAR(sea_level_sound_speed_kt, 661.48, 0.005);
  EXPECT_NEAR(sea_level_sound_speed_kt * 1'852 / 1'609.344, 761.22, 0.005);
}

TEST(WaterColumn, IsLighterAt20C) {
  // [verified: the builders' table, P0 = 407.513 in of water at 20 C]
  EXPECT_NEAR(inh2o_20c_from_pascals(101'325), 407.513, 1e-9);
  EXPECT_NEAR(pascals_per_inh2o_20c, 248.64, 0.005);
  // 249.089 Pa at 4 C [from memory].
  EXPECT_NEAR(pascals_per_inh2o_4c / pascals_per_inh2o_20c, 1.0018, 0.00005);
}

TEST(CalibratedAirspeed, InvertsTheImpactPressureExactly) {
  std::mt19937_64 random(1046);
  std::uniform_real_distribution<double> speeds(0, sea_level_sound_speed_kt);
  for (int i = 0; i < 20'000; ++i) {
    const double knots = speeds(random);
    ASSERT_NEAR(known(calibrated_airspeed_kt(known(impact_pressure_pa(knots)))), knots,
                1e-12 * sea_level_sound_speed_kt);
  }
}

TEST(CalibratedAirspeed, TakesItsEndsThereAndBack) {
  EXPECT_EQ(known(impact_pressure_pa(0)), 0);
  EXPECT_EQ(known(calibrated_airspeed_kt(0)), 0);
  const double sonic_pa = known(impact_pressure_pa(sea_level_sound_speed_kt));
  EXPECT_NEAR(known(calibrated_airspeed_kt(sonic_pa)), sea_level_sound_speed_kt, 1e-9);
}

TEST(CalibratedAirspeed, GrowsWithPressure) {
  double last_kt = -1;
  for (double impact_pa = 0; impact_pa < 90'000; impact_pa += 50) {
    const double knots = known(calibrated_airspeed_kt(impact_pa));
    ASSERT_GT(knots, last_kt);
    last_kt = knots;
  }
}

TEST(CalibratedAirspeed, HasNoAnswerForReversedOrSonicPressureOrNonsense) {
  for (const double impact_pa : {-0.001, -5'000.0, 90'500.0, 1e300, infinity, -infinity, nan_value})
    EXPECT_FALSE(calibrated_airspeed_kt(impact_pa)) << impact_pa;
  for (const double knots : {-0.001, 662.0, 1e300, infinity, -infinity, nan_value})
    EXPECT_FALSE(impact_pressure_pa(knots)) << knots;
}

}  // namespace
}  // namespace linewright
