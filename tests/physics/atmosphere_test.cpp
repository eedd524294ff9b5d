#include "physics/atmosphere.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <vector>

namespace linewright {
namespace {

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double pascals_per_psi = 6894.757;
constexpr double rounding_4_places = 0.00006;

/// The value, or NaN, which no expectation accepts.
double known(std::optional<double> value) {
  return value.value_or(nan_value);
}

double standard_inhg(double altitude_ft) {
  return inhg_from_pascals(known(standard_pressure_pa(altitude_ft)));
}

TEST(StandardAtmosphere, HasItsDefinedValuesAtSeaLevel) {
  // [verified: university summary of the US Standard Atmosphere, 1976, and its layer table]
  EXPECT_DOUBLE_EQ(known(standard_pressure_pa(0)), 101'325);
  EXPECT_DOUBLE_EQ(known(standard_temperature_k(0)), 288.15);
  EXPECT_NEAR(known(air_density_kg_per_m3(101'325, 288.15)), 1.225, 0.00005);
  EXPECT_NEAR(inhg_from_pascals(101'325), 29.92126, 0.00001);
  EXPECT_DOUBLE_EQ(known(pressure_altitude_ft(101'325)), 0);
}

TEST(StandardAtmosphere, MeetsTheTopOfItsLowestLayer) {
  // [verified: 1976 layer table] 36,089 ft (11,000 m): 22,632.10 Pa, 6.683245 inHg, 216.65 K. The
  // table's own rounding of constants is worth 0.04 Pa.
  EXPECT_NEAR(highest_altitude_ft, 36'089, 0.5);
  // The standard begins 5,000 m under the sea, at -16,404.2 ft.
  EXPECT_TRUE(standard_pressure_pa(-16'404));
  EXPECT_FALSE(standard_pressure_pa(-16'405));
  EXPECT_NEAR(known(standard_pressure_pa(highest_altitude_ft)), 22'632.10, 0.05);
  EXPECT_NEAR(standard_inhg(highest_altitude_ft), 6.683245, 0.00001);
  EXPECT_NEAR(known(standard_temperature_k(highest_altitude_ft)), 216.65, 1e-9);
  // The height as printed is 0.24 ft lower, worth 0.26 Pa.
  EXPECT_NEAR(known(standard_pressure_pa(36'089)), 22'632.10, 0.3);
}

struct ModelRow {
  double altitude_ft, psia, inhg, hectopascals;
};

TEST(StandardAtmosphere, KeepsToItsFormulaInFourUnits) {
  // [verified formula: university summary of the 1976 standard; rows calculated from it,
  // with its constants rounded to six figures, worth 1e-6 of the pressure]
  const std::vector<ModelRow> rows = {
      {-1'000, 15.2348, 31.0185, 1050.406}, {0, 14.6959, 29.9213, 1013.250},
      {500, 14.4323, 29.3846, 995.075},     {1'000, 14.1726, 28.8557, 977.166},
      {2'000, 13.6644, 27.8211, 942.129},   {3'000, 13.1711, 26.8167, 908.117},
      {4'000, 12.6923, 25.8418, 875.105},   {5'000, 12.2277, 24.8959, 843.073},
      {6'000, 11.7770, 23.9782, 811.996},   {7'000, 11.3398, 23.0881, 781.854},
      {8'000, 10.9159, 22.2250, 752.624},   {9'000, 10.5049, 21.3881, 724.285},
      {10'000, 10.1065, 20.5770, 696.816},  {15'000, 8.2935, 16.8858, 571.819},
      {18'000, 7.3389, 14.9421, 505.998},   {20'000, 6.7534, 13.7501, 465.632},
      {30'000, 4.3641, 8.8854, 300.896}};
  for (const ModelRow& row : rows) {
    SCOPED_TRACE(row.altitude_ft);
    const double pressure_pa = known(standard_pressure_pa(row.altitude_ft));
    EXPECT_NEAR(pressure_pa / pascals_per_psi, row.psia, rounding_4_places);
    EXPECT_NEAR(inhg_from_pascals(pressure_pa), row.inhg, rounding_4_places);
    EXPECT_NEAR(pressure_pa / 100, row.hectopascals, 0.001);
  }
}

struct AltitudePressure {
  double altitude_ft, pressure;
};

/// The tables printed in psia go by height above the ground's sphere, which the standard turns into
/// geopotential height: H = r h / (r + h), r = 6,356,766 m [from memory: US Standard Atmosphere
/// 1976].
double geopotential_ft(double geometric_ft) {
  constexpr double earth_radius_ft = 6'356'766 / metres_per_foot;
  return earth_radius_ft * geometric_ft / (earth_radius_ft + geometric_ft);
}

TEST(StandardAtmosphere, MatchesPublishedPoundsPerSquareInch) {
  // [verified: engineering calculator site and engineering data site] The two sites differ by 0.002
  // psi, and their rows scatter about any smooth curve by as much as 0.003.
  const std::vector<AltitudePressure> rows = {
      {-1'000, 15.236}, {0, 14.696},     {500, 14.430},    {1'000, 14.175}, {2'000, 13.664},
      {3'000, 13.173},  {5'000, 12.228}, {5'000, 12.230},  {6'000, 11.778}, {7'000, 11.341},
      {8'000, 10.914},  {9'000, 10.506}, {10'000, 10.108}, {15'000, 8.297}, {15'000, 8.296},
      {20'000, 6.759},  {20'000, 6.758}, {30'000, 4.373},  {30'000, 4.371}};
  for (const auto& [altitude_ft, psia] : rows) {
    SCOPED_TRACE(altitude_ft);
    const double pressure_pa = known(standard_pressure_pa(geopotential_ft(altitude_ft)));
    EXPECT_NEAR(pressure_pa / pascals_per_psi, psia, 0.0035);
  }
}

TEST(StandardAtmosphere, MatchesPublishedPoundsPerSquareInchByGeopotentialHeightBelow5000Feet) {
  // [verified: the same two sites]
  for (const auto& [altitude_ft, psia] : std::vector<AltitudePressure>{
           {0, 14.696}, {1'000, 14.175}, {2'000, 13.664}, {5'000, 12.228}}) {
    SCOPED_TRACE(altitude_ft);
    EXPECT_NEAR(known(standard_pressure_pa(altitude_ft)) / pascals_per_psi, psia, 0.003);
  }
}

TEST(StandardAtmosphere, DoesNotFollowTheMisprintAt4000Feet) {
  // [verified as printed: engineering calculator site] 12.682 psia there is 0.010 too low.
  EXPECT_NEAR(known(standard_pressure_pa(4'000)) / pascals_per_psi - 12.682, 0.010, 0.001);
}

TEST(StandardAtmosphere, MatchesTheAltimeterTestTable) {
  // Pressures of 14 CFR Part 43 Appendix E Table I [from memory], printed to 0.001 inHg.
  const std::vector<AltitudePressure> rows = {
      {-1'000, 31.018}, {0, 29.921},      {500, 29.385},    {1'000, 28.856},  {1'500, 28.335},
      {2'000, 27.821},  {3'000, 26.817},  {4'000, 25.842},  {6'000, 23.978},  {8'000, 22.225},
      {10'000, 20.577}, {12'000, 19.029}, {14'000, 17.577}, {16'000, 16.216}, {18'000, 14.942},
      {20'000, 13.750}, {22'000, 12.636}, {25'000, 11.104}, {30'000, 8.885},  {35'000, 7.041}};
  for (const auto& [altitude_ft, inhg] : rows) {
    SCOPED_TRACE(altitude_ft);
    EXPECT_NEAR(standard_inhg(altitude_ft), inhg, 0.001);
  }
}

TEST(StandardAtmosphere, HasNoAnswerForTheTableRowsInTheLayerAbove) {
  // The 40,000 and 50,000 ft rows of the same table lie in the isothermal layer.
  EXPECT_FALSE(standard_pressure_pa(40'000));
  EXPECT_FALSE(standard_pressure_pa(50'000));
  EXPECT_FALSE(pressure_altitude_ft(pascals_from_inhg(5.538)));
  EXPECT_FALSE(pressure_altitude_ft(pascals_from_inhg(3.425)));
}

TEST(StandardAtmosphere, FollowsTheRulesOfThumb) {
  // [verified: aviation glossary, "Standard atmosphere"] 1 inHg and 2 C per 1,000 ft.
  EXPECT_NEAR(standard_inhg(0) - standard_inhg(1'000), 1, 0.1);
  EXPECT_NEAR(known(standard_temperature_k(0)) - known(standard_temperature_k(1'000)), 2, 0.02);
}

TEST(StandardAtmosphere, ReadsOneInchOfSuctionAsLessThan1000Feet) {
  // [from memory; figures calculated from the 1976 formula] The two forms of the 23.1325 test
  // differ.
  EXPECT_NEAR(known(pressure_altitude_ft(101'325 - pascals_from_inhg(1))), 937.6, 0.05);
  EXPECT_NEAR(standard_inhg(0) - standard_inhg(1'000), 1.0656, rounding_4_places);
}

TEST(StandardAtmosphere, GradientIsTheSlopeOfPressure) {
  for (const double altitude_ft : {-1'000.0, 0.0, 5'000.0, 20'000.0, 36'000.0}) {
    SCOPED_TRACE(altitude_ft);
    const double slope = (known(standard_pressure_pa(altitude_ft + 10)) -
                          known(standard_pressure_pa(altitude_ft - 10))) /
                         20;
    // A central difference over 10 ft is good to about 1e-8 of the slope.
    EXPECT_NEAR(known(standard_pressure_gradient_pa_per_ft(altitude_ft)), slope, 1e-6);
  }
}

TEST(StandardAtmosphere, PressureAndAltitudeAreExactInverses) {
  std::mt19937_64 random(1976);
  std::uniform_real_distribution<double> altitudes(lowest_altitude_ft, highest_altitude_ft);
  for (int i = 0; i < 20'000; ++i) {
    const double altitude_ft = altitudes(random);
    const double pressure_pa = known(standard_pressure_pa(altitude_ft));
    // Double rounding in a height of 36,000 ft through two powers.
    ASSERT_NEAR(known(pressure_altitude_ft(pressure_pa)), altitude_ft, 1e-9);
  }
}

TEST(StandardAtmosphere, TakesItsOwnEndsThereAndBack) {
  for (const double altitude_ft : {lowest_altitude_ft, highest_altitude_ft})
    EXPECT_NEAR(known(pressure_altitude_ft(known(standard_pressure_pa(altitude_ft)))), altitude_ft,
                1e-9);
}

TEST(StandardAtmosphere, PressureFallsAsHeightGrows) {
  double last_pa = infinity;
  for (double altitude_ft = -16'000; altitude_ft <= 36'000; altitude_ft += 100) {
    const double pressure_pa = known(standard_pressure_pa(altitude_ft));
    ASSERT_LT(pressure_pa, last_pa);
    last_pa = pressure_pa;
  }
}

TEST(StandardAtmosphere, HasNoAnswerOutsideTheLayerOrForNonsense) {
  for (const double altitude_ft : {-16'405.0, 36'090.0, 1e300, -1e300, infinity, nan_value}) {
    SCOPED_TRACE(altitude_ft);
    EXPECT_FALSE(standard_pressure_pa(altitude_ft));
    EXPECT_FALSE(standard_temperature_k(altitude_ft));
    EXPECT_FALSE(standard_pressure_gradient_pa_per_ft(altitude_ft));
    EXPECT_FALSE(pressure_at_indicated_pa(altitude_ft, 101'325));
  }
  for (const double pressure_pa :
       {0.0, -1.0, 22'000.0, 200'000.0, infinity, -infinity, nan_value}) {
    SCOPED_TRACE(pressure_pa);
    EXPECT_FALSE(pressure_altitude_ft(pressure_pa));
    EXPECT_FALSE(indicated_altitude_ft(pressure_pa, 101'325));
    EXPECT_FALSE(indicated_altitude_ft(101'325, pressure_pa));
    EXPECT_FALSE(pressure_at_indicated_pa(0, pressure_pa));
  }
  EXPECT_FALSE(air_density_kg_per_m3(0, 288));
  EXPECT_FALSE(air_density_kg_per_m3(101'325, 0));
  EXPECT_FALSE(air_density_kg_per_m3(infinity, 288));
  EXPECT_FALSE(air_density_kg_per_m3(nan_value, 288));
}

struct SettingRow {
  double setting_inhg, difference_ft, tolerance_ft;
};

TEST(Altimeter, ShiftsByTheBarometricScaleTable) {
  // 14 CFR Part 43 Appendix E Table IV, all rows [verified: transcription of the CFR page's
  // tables]. Printed to the foot; the 29.92 row is 0 by definition there and -1.2 ft on the exact
  // datum.
  const std::vector<SettingRow> rows = {{28.10, -1'727, 1}, {28.50, -1'340, 1}, {29.00, -863, 1},
                                        {29.50, -392, 1},   {29.92, 0, 2},      {30.50, 531, 1},
                                        {30.90, 893, 1},    {30.99, 974, 1}};
  for (const auto& [setting_inhg, difference_ft, tolerance_ft] : rows) {
    SCOPED_TRACE(setting_inhg);
    const double setting_pa = pascals_from_inhg(setting_inhg);
    EXPECT_NEAR(known(indicated_altitude_ft(101'325, setting_pa)), difference_ft, tolerance_ft);
    // The shift is the same whatever the pressure.
    const double high_pa = known(standard_pressure_pa(12'345));
    EXPECT_NEAR(known(indicated_altitude_ft(high_pa, setting_pa)) - 12'345, difference_ft,
                tolerance_ft);
  }
}

TEST(Altimeter, SetToStandardReadsPressureAltitude) {
  EXPECT_DOUBLE_EQ(known(indicated_altitude_ft(80'000, 101'325)),
                   known(pressure_altitude_ft(80'000)));
}

TEST(Altimeter, SetToTheAmbientPressureReadsZero) {
  EXPECT_DOUBLE_EQ(known(indicated_altitude_ft(97'531, 97'531)), 0);
}

TEST(Altimeter, AmbientPressureAtSeaLevelIsTheSettingItself) {
  EXPECT_NEAR(known(pressure_at_indicated_pa(0, pascals_from_inhg(30.12))),
              pascals_from_inhg(30.12), 1e-9);
}

TEST(Altimeter, FieldPressureIsStandardWhereTheSettingIs) {
  EXPECT_NEAR(known(pressure_at_indicated_pa(5'000, 101'325)), known(standard_pressure_pa(5'000)),
              1e-9);
}

TEST(Altimeter, FieldPressureAgreesWithTheWeatherServicesFormula) {
  // AS = (P^0.1903 + 1.313e-5 H)^5.255, inHg and ft [verified: weather-service training page on the
  // pressure algorithm of its automatic stations]. Its three rounded constants are worth 0.004
  // inHg.
  for (const double setting_inhg : {28.5, 29.92, 30.6})
    for (const double elevation_ft : {0.0, 700.0, 2'500.0, 5'431.0, 9'078.0}) {
      SCOPED_TRACE(elevation_ft);
      const double field_inhg = inhg_from_pascals(
          known(pressure_at_indicated_pa(elevation_ft, pascals_from_inhg(setting_inhg))));
      const double by_formula =
          std::pow(std::pow(field_inhg, 0.1903) + 1.313e-5 * elevation_ft, 5.255);
      EXPECT_NEAR(by_formula, setting_inhg, 0.004);
    }
}

TEST(Altimeter, FieldPressureFollowsTheClosedForm) {
  // p = (A^k - P0^k H L / T0)^(1/k) with k = R L / g0, derived by hand from the 1976 formula.
  const double k = air_gas_constant_j_per_kg_k * lapse_rate_k_per_m / gravity_m_per_s2;
  const double setting_pa = pascals_from_inhg(29.45);
  const double lost = std::pow(sea_level_pressure_pa, k) * 4'200 * metres_per_foot *
                      lapse_rate_k_per_m / sea_level_temperature_k;
  EXPECT_NEAR(known(pressure_at_indicated_pa(4'200, setting_pa)),
              std::pow(std::pow(setting_pa, k) - lost, 1 / k), 1e-6);
}

TEST(Altimeter, ReadingAndPressureAreExactInverses) {
  std::mt19937_64 random(1325);
  std::uniform_real_distribution<double> readings(-1'000, 30'000);
  std::uniform_real_distribution<double> settings(28.1, 30.99);
  for (int i = 0; i < 20'000; ++i) {
    const double reading_ft = readings(random);
    const double setting_pa = pascals_from_inhg(settings(random));
    const double pressure_pa = known(pressure_at_indicated_pa(reading_ft, setting_pa));
    ASSERT_NEAR(known(indicated_altitude_ft(pressure_pa, setting_pa)), reading_ft, 1e-9);
  }
}

TEST(Temperature, FahrenheitTurnsIntoKelvinsExactly) {
  EXPECT_DOUBLE_EQ(kelvins_from_degf(32), 273.15);
  EXPECT_DOUBLE_EQ(kelvins_from_degf(59), 288.15);
  EXPECT_DOUBLE_EQ(kelvins_from_degf(212), 373.15);
  EXPECT_NEAR(kelvins_from_degf(-459.67), 0, 1e-12);
}

}  // namespace
}  // namespace linewright
