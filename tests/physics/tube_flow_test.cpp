#include "physics/tube_flow.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <vector>

#include "physics/atmosphere.hpp"

namespace linewright {
namespace {

using std::numbers::pi;

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double metres_per_inch = 0.0254;
constexpr double cubic_metres_per_in3 = metres_per_inch * metres_per_inch * metres_per_inch;
constexpr double cm3_per_in3 = cubic_metres_per_in3 * 1e6;
constexpr double five_metres_in = 5 / metres_per_inch;
constexpr double instrument_in3 = 300 / cm3_per_in3;

/// The value, or NaN, which no expectation accepts.
double known(std::optional<double> value) {
  return value.value_or(nan_value);
}

double standard_viscosity_pa_s(double altitude_ft) {
  return known(air_viscosity_pa_s(known(standard_temperature_k(altitude_ft))));
}

/// Lag by the bore's resistance and the instrument alone, at a standard height.
double lag_without_tube_volume_s(double length_in, double bore_in, double altitude_ft) {
  const auto resistance =
      laminar_resistance_pa_s_per_in3(length_in, bore_in, standard_viscosity_pa_s(altitude_ft));
  return known(
      lag_constant_s(known(resistance), instrument_in3, known(standard_pressure_pa(altitude_ft))));
}

double sea_level_lag_s(double length_in, double bore_in) {
  return known(lag_constant_s(TubeWithVolume{length_in, bore_in, instrument_in3},
                              standard_viscosity_pa_s(0), sea_level_pressure_pa));
}

struct ViscosityRow {
  double altitude_ft, pound_seconds_per_ft2, pascal_seconds;
};

TEST(AirViscosity, MatchesThePublishedStandardAtmosphere) {
  // lb s/ft2 [verified: engineering data site, US Standard Atmosphere table]; Pa s calculated from
  // Sutherland's formula [from memory]. One lb s/ft2 is 47.880259 Pa s.
  const std::vector<ViscosityRow> rows = {{0, 3.737e-7, 1.7894e-5},
                                          {5'000, 3.637e-7, 1.7412e-5},
                                          {10'000, 3.534e-7, 1.6922e-5},
                                          {15'000, 3.430e-7, 1.6423e-5},
                                          {20'000, 3.324e-7, 1.5915e-5}};
  for (const ViscosityRow& row : rows) {
    SCOPED_TRACE(row.altitude_ft);
    const double viscosity_pa_s = standard_viscosity_pa_s(row.altitude_ft);
    EXPECT_NEAR(viscosity_pa_s / 47.880259, row.pound_seconds_per_ft2, 0.0006e-7);
    EXPECT_NEAR(viscosity_pa_s, row.pascal_seconds, 0.00006e-5);
  }
}

TEST(AirViscosity, HasNoAnswerOutsideItsRange) {
  // Sutherland's formula is taken from 170 to 1,900 K [from memory].
  for (const double temperature_k : {-1.0, 0.0, 169.0, 1'901.0, infinity, nan_value})
    EXPECT_FALSE(air_viscosity_pa_s(temperature_k)) << temperature_k;
  for (const double temperature_k : {170.0, 1'900.0})
    EXPECT_TRUE(air_viscosity_pa_s(temperature_k)) << temperature_k;
}

TEST(LaminarResistance, ComesOutAsOneByHand) {
  // 128 (pi / 128) 16 / (pi 2^4) = 1.
  EXPECT_NEAR(known(laminar_resistance_pa_s_per_in3(16, 2, pi / 128)), 1, 1e-15);
}

TEST(LaminarResistance, AgreesWithPoiseuilleInMetres) {
  // Water (1e-3 Pa s) in 1 m of 1 mm bore: 0.128 / (pi 1e-12) = 4.07437e10 Pa s/m3.
  const double per_in3 =
      known(laminar_resistance_pa_s_per_in3(1 / metres_per_inch, 0.001 / metres_per_inch, 1e-3));
  EXPECT_NEAR(per_in3 / cubic_metres_per_in3, 4.07437e10, 0.00001e10);
}

TEST(LaminarResistance, GrowsWithLengthAndTheFourthPowerOfAPinch) {
  const double whole = known(laminar_resistance_pa_s_per_in3(10, 0.2, 1.8e-5));
  EXPECT_NEAR(known(laminar_resistance_pa_s_per_in3(30, 0.2, 1.8e-5)), 3 * whole, 1e-9 * whole);
  EXPECT_NEAR(known(laminar_resistance_pa_s_per_in3(10, 0.1, 1.8e-5)), 16 * whole, 1e-9 * whole);
  EXPECT_EQ(known(laminar_resistance_pa_s_per_in3(0, 0.2, 1.8e-5)), 0);
}

TEST(TubeVolume, IsAreaTimesLength) {
  EXPECT_NEAR(known(tube_volume_in3(7, 2)), 7 * pi, 1e-12);
  // [formula from memory; figures calculated from it] 5 m of 0.180, 0.170 and 0.1315 in bore.
  EXPECT_NEAR(known(tube_volume_in3(five_metres_in, 0.180)) * cm3_per_in3, 82.1, 0.05);
  EXPECT_NEAR(known(tube_volume_in3(five_metres_in, 0.170)) * cm3_per_in3, 73.2, 0.05);
  EXPECT_NEAR(known(tube_volume_in3(five_metres_in, 0.1315)) * cm3_per_in3, 43.8, 0.05);
}

TEST(Lag, OfFiveMetresOfQuarterInchAluminium) {
  // [formula from memory; regression figures calculated from it: lag A, bore 0.180 in, 300 cm3]
  EXPECT_NEAR(lag_without_tube_volume_s(five_metres_in, 0.180, 0), 0.0247, 0.00006);
  EXPECT_NEAR(lag_without_tube_volume_s(five_metres_in, 0.180, 10'000), 0.0340, 0.00006);
  EXPECT_NEAR(sea_level_lag_s(five_metres_in, 0.180), 0.0281, 0.00006);
  EXPECT_NEAR(altitude_lag_ft(sea_level_lag_s(five_metres_in, 0.180), 1'000), 0.47, 0.005);
}

TEST(Lag, OfFiveMetresOfPlasticAndOfThreeSixteenths) {
  // [formula from memory; regression figures calculated from it: lag B, bore 0.170 in, and lag C,
  // bore 0.1315 in]
  EXPECT_NEAR(lag_without_tube_volume_s(five_metres_in, 0.170, 0), 0.0310, 0.00006);
  EXPECT_NEAR(sea_level_lag_s(five_metres_in, 0.170), 0.0348, 0.00006);
  EXPECT_NEAR(lag_without_tube_volume_s(five_metres_in, 0.1315, 0), 0.0867, 0.00006);
  EXPECT_NEAR(sea_level_lag_s(five_metres_in, 0.1315), 0.0930, 0.00006);
}

TEST(Lag, OfAOneMillimetrePinch) {
  // [formula from memory; regression figures calculated from it]
  const double pinch_in = 0.001 / metres_per_inch;
  EXPECT_NEAR(lag_without_tube_volume_s(0.010 / metres_per_inch, pinch_in, 0), 0.0216, 0.00006);
  EXPECT_NEAR(lag_without_tube_volume_s(five_metres_in, pinch_in, 0), 10.79, 0.006);
  EXPECT_NEAR(sea_level_lag_s(five_metres_in, pinch_in), 10.86, 0.006);
  EXPECT_NEAR(altitude_lag_ft(sea_level_lag_s(five_metres_in, pinch_in), 1'000), 181, 0.5);
}

TEST(Lag, GrowsWithHeightAsViscosityOverPressure) {
  // lambda / lambda0 = (mu / mu0)(p0 / p) [from memory: NASA RP-1046]
  const double expected = standard_viscosity_pa_s(20'000) / standard_viscosity_pa_s(0) *
                          sea_level_pressure_pa / known(standard_pressure_pa(20'000));
  EXPECT_NEAR(
      lag_without_tube_volume_s(100, 0.18, 20'000) / lag_without_tube_volume_s(100, 0.18, 0),
      expected, 1e-12);
}

TEST(Lag, CountsHalfTheTubesVolumeAsALadderOfManyPiecesDoes) {
  // Each of many short pieces resists the flow into everything behind it.
  constexpr int pieces = 2'000;
  const TubeWithVolume line{120, 0.15, 3};
  const double resistance =
      known(laminar_resistance_pa_s_per_in3(line.length_in / pieces, line.bore_in, 1.8e-5));
  const double piece_in3 = known(tube_volume_in3(line.length_in / pieces, line.bore_in));
  double ladder_s = 0;
  for (int piece = 0; piece < pieces; ++piece)
    ladder_s += known(lag_constant_s(resistance, line.end_volume_in3 + piece * piece_in3, 90'000));
  // The ladder's own error is one piece in 2,000 of the tube's half volume.
  EXPECT_NEAR(known(lag_constant_s(line, 1.8e-5, 90'000)) / ladder_s, 1, 0.0005);
}

TEST(Lag, KeepsTheSignOfTheClimb) {
  EXPECT_DOUBLE_EQ(altitude_lag_ft(0.5, 600), 5);
  EXPECT_DOUBLE_EQ(altitude_lag_ft(0.5, -600), -5);
}

TEST(Reynolds, IsSpeedTimesBoreOverKinematicViscosity) {
  // Air at 1 m/s in a 10 mm bore: 1.2 x 1 x 0.01 / 1.8e-5 = 666.67.
  const double flow_in3_per_s = pi / 4 * 0.01 * 0.01 / cubic_metres_per_in3;
  const double bore_in = 0.01 / metres_per_inch;
  EXPECT_NEAR(known(tube_reynolds_number(flow_in3_per_s, bore_in, 1.2, 1.8e-5)), 666.667, 0.001);
  EXPECT_NEAR(known(tube_reynolds_number(-flow_in3_per_s, bore_in, 1.2, 1.8e-5)), 666.667, 0.001);
}

TEST(Reynolds, InAnInstrumentLineAt1000FeetAMinuteIsFarBelowTheLimit) {
  // [formula from memory; regression figures calculated from it: lag A, 3.4]
  const double rate_pa_per_s = known(standard_pressure_gradient_pa_per_ft(0)) * 1'000 / 60;
  const double flow_in3_per_s =
      known(breathing_flow_in3_per_s(instrument_in3, rate_pa_per_s, sea_level_pressure_pa));
  EXPECT_LT(flow_in3_per_s, 0);
  const double density = known(air_density_kg_per_m3(sea_level_pressure_pa, 288.15));
  EXPECT_NEAR(
      known(tube_reynolds_number(flow_in3_per_s, 0.180, density, standard_viscosity_pa_s(0))), 3.4,
      0.05);
}

TEST(BreathingFlow, EmptiesOneHundredthOfTheVolumeForOneHundredthOfThePressure) {
  EXPECT_DOUBLE_EQ(known(breathing_flow_in3_per_s(50, 1'000, 100'000)), 0.5);
  EXPECT_DOUBLE_EQ(known(breathing_flow_in3_per_s(50, -1'000, 100'000)), -0.5);
}

TEST(Orifice, PassesTheContractedJetOfBernoulli) {
  // sqrt(2 x 1 / 2) = 1 m/s; 0.61 [verified: hydraulics pages, 0.61 to 0.62] of it through a 1 in
  // hole: 24.0157 in/s x pi / 4 = 18.8619 in3/s.
  EXPECT_NEAR(known(orifice_flow_in3_per_s(1, 1, 2)), 18.8619, 0.0001);
}

TEST(Orifice, AgreesWithAPublishedWaterExample) {
  // 50 mm hole under 3 m of water: 0.00934 m3/s at Cd 0.62 [verified: engineering calculator page].
  const double flow =
      known(orifice_flow_in3_per_s(0.05 / metres_per_inch, 1'000 * 9.81 * 3, 1'000));
  EXPECT_NEAR(flow * cubic_metres_per_in3 * 0.62 / 0.61, 0.00934, 0.000005);
}

TEST(Orifice, DiameterAndFlowAreExactInverses) {
  std::mt19937_64 random(61);
  std::uniform_real_distribution<double> log_diameters(-4, 0);
  std::uniform_real_distribution<double> differences(1, 5'000);
  for (int i = 0; i < 5'000; ++i) {
    const double diameter_in = std::pow(10, log_diameters(random));
    const double difference_pa = differences(random);
    const double flow = known(orifice_flow_in3_per_s(diameter_in, difference_pa, 1.2));
    ASSERT_NEAR(known(equivalent_orifice_in(flow, difference_pa, 1.2)) / diameter_in, 1, 1e-12);
  }
}

TEST(Orifice, StopsAtZero) {
  EXPECT_EQ(known(orifice_flow_in3_per_s(0.1, 0, 1.2)), 0);
  EXPECT_EQ(known(equivalent_orifice_in(0, 100, 1.2)), 0);
}

TEST(TubeFlow, HasNoAnswerForSizesThatAreNotPositive) {
  for (const double bad : {-1.0, infinity, nan_value}) {
    SCOPED_TRACE(bad);
    EXPECT_FALSE(laminar_resistance_pa_s_per_in3(bad, 0.2, 1.8e-5));
    EXPECT_FALSE(tube_volume_in3(bad, 0.2));
    EXPECT_FALSE(breathing_flow_in3_per_s(bad, 1, 100'000));
    EXPECT_FALSE(lag_constant_s(bad, 1, 100'000));
    EXPECT_FALSE(lag_constant_s(1, bad, 100'000));
    EXPECT_FALSE(lag_constant_s(TubeWithVolume{10, 0.2, bad}, 1.8e-5, 100'000));
    EXPECT_FALSE(lag_constant_s(TubeWithVolume{bad, 0.2, 1}, 1.8e-5, 100'000));
    EXPECT_FALSE(orifice_flow_in3_per_s(0.1, bad, 1.2));
    EXPECT_FALSE(equivalent_orifice_in(bad, 100, 1.2));
  }
  for (const double bad : {0.0, -1.0, infinity, nan_value}) {
    SCOPED_TRACE(bad);
    EXPECT_FALSE(laminar_resistance_pa_s_per_in3(10, bad, 1.8e-5));
    EXPECT_FALSE(laminar_resistance_pa_s_per_in3(10, 0.2, bad));
    EXPECT_FALSE(tube_volume_in3(10, bad));
    EXPECT_FALSE(tube_reynolds_number(1, bad, 1.2, 1.8e-5));
    EXPECT_FALSE(tube_reynolds_number(1, 0.2, bad, 1.8e-5));
    EXPECT_FALSE(tube_reynolds_number(1, 0.2, 1.2, bad));
    EXPECT_FALSE(breathing_flow_in3_per_s(1, 1, bad));
    EXPECT_FALSE(lag_constant_s(1, 1, bad));
    EXPECT_FALSE(orifice_flow_in3_per_s(bad, 100, 1.2));
    EXPECT_FALSE(orifice_flow_in3_per_s(0.1, 100, bad));
    EXPECT_FALSE(equivalent_orifice_in(1, bad, 1.2));
    EXPECT_FALSE(equivalent_orifice_in(1, 100, bad));
  }
  EXPECT_FALSE(tube_reynolds_number(nan_value, 0.2, 1.2, 1.8e-5));
  EXPECT_FALSE(breathing_flow_in3_per_s(1, nan_value, 100'000));
}

TEST(TubeFlow, HasNoAnswerWhereTheResultOverflows) {
  EXPECT_FALSE(laminar_resistance_pa_s_per_in3(1, 1e-100, 1.8e-5));
  EXPECT_FALSE(tube_volume_in3(1e300, 1e300));
  EXPECT_FALSE(lag_constant_s(1e300, 1e300, 1));
}

}  // namespace
}  // namespace linewright
