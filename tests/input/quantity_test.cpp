#include "input/quantity.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <clocale>
#include <cmath>
#include <locale>
#include <sstream>
#include <string>
#include <vector>

namespace linewright {
namespace {

double value_of(std::string_view text, Dimension dimension, BareLength bare = BareLength::inch) {
  const auto value = read_quantity(text, dimension, bare);
  if (!value) ADD_FAILURE() << text << ": " << value.error();
  return value.value_or(-12345);
}

std::string error_of(std::string_view text, Dimension dimension = Dimension::length) {
  const auto value = read_quantity(text, dimension, BareLength::inch);
  if (!value) return value.error();
  ADD_FAILURE() << text << " was read as " << *value;
  return {};
}

bool says(const std::string& message, std::string_view part) {
  return message.find(part) != std::string::npos;
}

struct Exact {
  std::string_view text;
  Dimension dimension;
  double internal;
};

// The inch is 25.4 mm and the foot 12 in by definition (international yard and pound agreement,
// 1959; NIST SP 811, appendix B.8).
TEST(Quantity, IsGivenInTheInternalUnit) {
  EXPECT_EQ(internal_unit(Dimension::length), "in");
  EXPECT_EQ(internal_unit(Dimension::stiffness), "lbf/in");
  EXPECT_EQ(internal_unit(Dimension::plain), "");
}

TEST(Quantity, LengthsConvertByTheExactInch) {
  EXPECT_EQ(value_of("1 in", Dimension::length), 1);
  EXPECT_EQ(value_of("25.4 mm", Dimension::length), 1);
  EXPECT_EQ(value_of("2.54 cm", Dimension::length), 1);
  EXPECT_EQ(value_of("0.0254 m", Dimension::length), 1);
  EXPECT_EQ(value_of("1 ft", Dimension::length), 12);
  EXPECT_EQ(value_of("32 mm", Dimension::length), 32 / 25.4);
}

// Exact relations, NIST SP 811 appendix B.8: 1 in3 = 16.387064 cm3, 1 lbf = 4.4482216152605 N,
// 1 kgf = 9.80665 N, 1 lb = 0.45359237 kg, 1 L = 1 dm3. The tolerance is a few roundings of a
// double.
TEST(Quantity, EveryUnitConvertsByItsExactRelation) {
  const std::vector<Exact> relations = {
      {"1 in3", Dimension::volume, 1},
      {"16.387064 mL", Dimension::volume, 1},
      {"16.387064 cm3", Dimension::volume, 1},
      {"16387.064 mm3", Dimension::volume, 1},
      {"0.016387064 L", Dimension::volume, 1},
      {"1 lbf", Dimension::force, 1},
      {"4.4482216152605 N", Dimension::force, 1},
      {"0.45359237 kgf", Dimension::force, 1},
      {"212 degF", Dimension::temperature, 212},
      {"100 degC", Dimension::temperature, 212},
      {"-40 degC", Dimension::temperature, -40},
      {"373.15 K", Dimension::temperature, 212},
      {"180 deg", Dimension::angle, 180},
      {"3.14159265358979323846 rad", Dimension::angle, 180},
      {"1 psi", Dimension::pressure, 1},
      {"600 rpm", Dimension::rotational_speed, 600},
      {"500 ft/min", Dimension::speed_vertical, 500},
      {"2.54 m/s", Dimension::speed_vertical, 500},
      {"0.01 lb/in", Dimension::mass_per_length, 0.01},
      {"0.12 lb/ft", Dimension::mass_per_length, 0.01},
      {"12 lb/100ft", Dimension::mass_per_length, 0.01},
      {"0.45359237 kg/m", Dimension::mass_per_length, 0.0254},
      {"1200 lbf/in", Dimension::stiffness, 1200},
      {"4.4482216152605 N/mm", Dimension::stiffness, 25.4},
  };
  for (const Exact& row : relations)
    EXPECT_NEAR(value_of(row.text, row.dimension), row.internal,
                1e-13 * std::max(1.0, std::abs(row.internal)))
        << row.text;
}

// NIST SP 811 appendix B.8: 1 psi = 6894.757 Pa and 1 inHg (conventional) = 3386.389 Pa, each to
// seven figures; the product 4.4482216152605 / 0.0254^2 = 6894.757293168 Pa is exact.
TEST(Quantity, PressuresConvertToPsi) {
  EXPECT_NEAR(value_of("6894.757293168 Pa", Dimension::pressure), 1, 1e-12);
  EXPECT_NEAR(value_of("6.894757293168 kPa", Dimension::pressure), 1, 1e-12);
  EXPECT_NEAR(value_of("68.94757293168 hPa", Dimension::pressure), 1, 1e-12);
  EXPECT_NEAR(value_of("1 inHg", Dimension::pressure) * 6894.757293168, 3386.389, 5e-4);
}

// US Standard Atmosphere 1976: sea level is 101325 Pa, 29.92126 inHg.
TEST(Quantity, SeaLevelPressureIsTheSameInEveryUnit) {
  const double sea_level_psi = value_of("101325 Pa", Dimension::pressure);
  EXPECT_NEAR(value_of("1013.25 hPa", Dimension::pressure), sea_level_psi, 1e-12);
  EXPECT_NEAR(value_of("101.325 kPa", Dimension::pressure), sea_level_psi, 1e-12);
  EXPECT_NEAR(value_of("29.92126 inHg", Dimension::pressure), sea_level_psi, 3e-6);
}

TEST(Quantity, BareNumbersTakeTheUsualUnit) {
  EXPECT_EQ(value_of("25.4", Dimension::length, BareLength::millimetre), 1);
  EXPECT_EQ(value_of("25.4", Dimension::length, BareLength::inch), 25.4);
  EXPECT_EQ(value_of("16387.064", Dimension::volume, BareLength::millimetre), 1);
  EXPECT_EQ(value_of("6", Dimension::volume, BareLength::inch), 6);
  EXPECT_EQ(value_of("30", Dimension::force, BareLength::millimetre), 30);
  EXPECT_EQ(value_of("70", Dimension::temperature, BareLength::millimetre), 70);
  EXPECT_EQ(value_of("12.5", Dimension::angle, BareLength::millimetre), 12.5);
  EXPECT_EQ(value_of("14.7", Dimension::pressure, BareLength::millimetre), 14.7);
  EXPECT_EQ(value_of("2700", Dimension::rotational_speed, BareLength::millimetre), 2700);
  EXPECT_EQ(value_of("1500", Dimension::speed_vertical, BareLength::millimetre), 1500);
  EXPECT_EQ(value_of("1200", Dimension::stiffness, BareLength::millimetre), 1200);
  EXPECT_EQ(value_of("3", Dimension::plain, BareLength::millimetre), 3);
}

TEST(Quantity, AWeightOfALengthIsNothingWithoutItsUnit) {
  EXPECT_EQ(error_of("0.02", Dimension::mass_per_length),
            "expected a mass per length (lb/in, lb/ft, lb/100ft or kg/m), found '0.02': add its "
            "unit, as in '0.02 lb/ft'");
  EXPECT_TRUE(says(error_of("0", Dimension::mass_per_length), "add its unit"));
}

TEST(Quantity, AUnitOverridesTheFilesOwn) {
  EXPECT_EQ(value_of("1 in", Dimension::length, BareLength::millimetre), 1);
  EXPECT_EQ(value_of("1 in3", Dimension::volume, BareLength::millimetre), 1);
}

TEST(Quantity, SignsDecimalsAndExponentsAreRead) {
  EXPECT_EQ(value_of("-14", Dimension::length), -14);
  EXPECT_EQ(value_of("+14", Dimension::length), 14);
  EXPECT_EQ(value_of("0", Dimension::length), 0);
  EXPECT_EQ(value_of("-0.5", Dimension::length), -0.5);
  EXPECT_EQ(value_of(".032", Dimension::length), 0.032);
  EXPECT_EQ(value_of("-.5", Dimension::length), -0.5);
  EXPECT_EQ(value_of("5.", Dimension::length), 5);
  EXPECT_EQ(value_of("1e3", Dimension::length), 1000);
  EXPECT_EQ(value_of("1.5E-2", Dimension::length), 0.015);
  EXPECT_EQ(value_of("2e+1 mm", Dimension::length), 20 / 25.4);
}

TEST(Quantity, BlanksAroundAndBetweenDoNotMatter) {
  EXPECT_EQ(value_of("  25.4   mm ", Dimension::length), 1);
  EXPECT_EQ(value_of("25.4mm", Dimension::length), 1);
}

TEST(Quantity, AUnitOfAnotherKindIsNamed) {
  EXPECT_EQ(error_of("30 lbf"), "expected a length (in, ft, mm, cm or m), found a force: '30 lbf'");
  EXPECT_EQ(error_of("3 in", Dimension::plain), "expected a plain number, found a length: '3 in'");
  EXPECT_EQ(error_of("3 in", Dimension::volume),
            "expected a volume (in3, mL, cm3, mm3 or L), found a length: '3 in'");
}

TEST(Quantity, AnUnknownUnitIsNamedAndTheNearestOffered) {
  EXPECT_EQ(
      error_of("3 inn"),
      "expected a length (in, ft, mm, cm or m), found '3 inn': there is no unit 'inn'; did you "
      "mean 'in'?");
  EXPECT_TRUE(says(error_of("30 LBF", Dimension::force), "did you mean 'lbf'?"));
  EXPECT_TRUE(says(error_of("30 lb", Dimension::force), "did you mean 'lbf'?"));
  EXPECT_TRUE(says(error_of("30 lbf/inch", Dimension::stiffness), "did you mean 'lbf/in'?"));
  EXPECT_TRUE(says(error_of("30 lb/in", Dimension::stiffness), "found a mass per length"));
  EXPECT_TRUE(says(error_of("3 furlong"), "there is no unit 'furlong'"));
  EXPECT_FALSE(says(error_of("3 furlong"), "did you mean"));
}

TEST(Quantity, UnitsAreCaseSensitive) {
  EXPECT_TRUE(says(error_of("3 MM"), "did you mean 'mm'?"));
  EXPECT_TRUE(says(error_of("3 pa", Dimension::pressure), "did you mean 'Pa'?"));
}

TEST(Quantity, TextAfterTheUnitIsRefused) {
  EXPECT_TRUE(says(error_of("3 in long"), "there is no unit 'in long'"));
  EXPECT_TRUE(says(error_of("3 ft long"), "there is no unit 'ft long'"));
}

TEST(Quantity, WhatIsNoNumberIsShownBack) {
  EXPECT_EQ(error_of("long"), "expected a length (in, ft, mm, cm or m), found 'long'");
  EXPECT_EQ(error_of("in"), "expected a length (in, ft, mm, cm or m), found 'in'");
  EXPECT_EQ(error_of(""), "expected a length (in, ft, mm, cm or m), found nothing");
  EXPECT_EQ(error_of("  "), "expected a length (in, ft, mm, cm or m), found nothing");
  for (const auto* text : {"-", "+", ".", "-.", "e5", ".e5", "--1", "+-1", "- 1"})
    EXPECT_TRUE(says(error_of(text), "expected a length")) << text;
}

TEST(Quantity, OctalLookingNumbersAreRefused) {
  for (const auto* text : {"010", "-010", "+010", "00", "010.5", "007 in", "01e2"})
    EXPECT_TRUE(says(error_of(text), "a leading zero may mean octal")) << text;
}

TEST(Quantity, HexadecimalOctalAndBinaryAreRefused) {
  for (const auto* text : {"0x10", "-0x1F", "0X10", "0o17", "0b101"})
    EXPECT_TRUE(says(error_of(text), "write the number in decimal")) << text;
}

TEST(Quantity, NonFiniteNumbersAreRefused) {
  for (const auto* text :
       {"nan", ".nan", "NaN", "-nan", "inf", ".inf", "-.inf", "+.Inf", "infinity"})
    EXPECT_TRUE(says(error_of(text), "a number must be finite")) << text;
}

TEST(Quantity, NumbersOutOfRangeAreRefusedInsteadOfRounded) {
  for (const auto* text : {"1e999", "-1e999", "1e-400", "-1e-400 mm", "1e308 ft", "5e-324 mm",
                           "1e99999999999999999999"})
    EXPECT_TRUE(says(error_of(text), "out of range")) << text;
  EXPECT_EQ(value_of("0e-400", Dimension::length), 0);
  EXPECT_EQ(value_of("0.000e999", Dimension::length), 0);
}

TEST(Quantity, CommasAreExplained) {
  for (const auto* text : {"1,5", "1,5 mm", "1,000", "1,000.5", ",5"})
    EXPECT_TRUE(says(error_of(text), "write decimals with a point")) << text;
}

TEST(Quantity, ADecimalCommaIsWrittenAsItShouldBe) {
  EXPECT_TRUE(says(error_of("142,5"), "write decimals with a point: 142.5"));
  EXPECT_TRUE(says(error_of("-3,25 mm"), "write decimals with a point: -3.25 mm"));
  // These may be thousands.
  for (const auto* text : {"1,000", "1,000.5", "1,000,5", "1.5,2"})
    EXPECT_TRUE(says(error_of(text), "no commas between digits")) << text;
}

TEST(Quantity, AFractionOfOneCharacterIsWrittenAsItShouldBe) {
  EXPECT_TRUE(says(error_of("14\u00BC"), "write 14 1/4")) << error_of("14\u00BC");
  EXPECT_TRUE(says(error_of("-\u215C in"), "write -3/8 in"));
  EXPECT_TRUE(says(error_of("5' 2 \u215E\""), "write 5' 2 7/8\""));
  EXPECT_TRUE(says(error_of("2\u00BD", Dimension::force), "write the fraction as a decimal"));
}

TEST(Quantity, AUnitAsItIsSpokenIsMeant) {
  const auto meant = [](std::string_view text, Dimension dimension, const std::string& unit) {
    EXPECT_TRUE(says(error_of(text, dimension), "did you mean '" + unit + "'?"))
        << error_of(text, dimension);
  };
  meant("-10 F", Dimension::temperature, "degF");
  meant("-10 \u00B0C", Dimension::temperature, "degC");
  meant("3 inches", Dimension::length, "in");
  meant("40 lbs", Dimension::force, "lbf");
  meant("12\u00B0", Dimension::angle, "deg");
  // Of another dimension it is none that could stand there.
  EXPECT_FALSE(says(error_of("3 F"), "degF"));
}

TEST(Quantity, FractionsOfAllButLengthsAreExplained) {
  for (const auto* text : {"1/4", "1/4 lbf", "1 1/4", "1 1/4 lbf"})
    EXPECT_TRUE(says(error_of(text, Dimension::force), "write the fraction as a decimal")) << text;
}

TEST(Quantity, TwoNumbersAreNotOne) {
  for (const auto* text : {"1 2", "1.2.3", "1_000", "1-2", "1+2", "1e5.5", "1 -2 in"})
    EXPECT_TRUE(says(error_of(text), "it is not one number")) << text;
}

TEST(Quantity, ATypographicMinusIsExplained) {
  EXPECT_TRUE(says(error_of("\xE2\x88\x92"
                            "5"),
                   "its minus sign is not the '-' of the keyboard"));
}

TEST(Quantity, NothingIsColderThanAbsoluteZero) {
  EXPECT_NEAR(value_of("0 K", Dimension::temperature), -459.67, 1e-10);
  EXPECT_NEAR(value_of("-273.15 degC", Dimension::temperature), -459.67, 1e-10);
  for (const auto* text : {"-460", "-274 degC", "-1 K"})
    EXPECT_TRUE(says(error_of(text, Dimension::temperature), "below absolute zero")) << text;
}

TEST(Quantity, TemperaturesOfZeroAreNotTakenForUnderflow) {
  EXPECT_NEAR(value_of("-17.77777777777777777 degC", Dimension::temperature), 0, 1e-13);
  EXPECT_EQ(value_of("0 degF", Dimension::temperature), 0);
}

TEST(Quantity, AVeryLongTextIsCutInTheMessage) {
  EXPECT_LT(error_of(std::string(1'000'000, 'x')).size(), 200u);
  EXPECT_TRUE(says(error_of(std::string(1'000'000, '9')), "out of range"));
  EXPECT_LT(error_of("3 " + std::string(1'000'000, 'i')).size(), 400u);
}

TEST(Quantity, ControlCharactersAreNotEchoed) {
  EXPECT_EQ(error_of("3 \x1B[31m"),
            "expected a length (in, ft, mm, cm or m), found '3 \uFFFD[31m': there is no unit "
            "'\uFFFD[31m'");
  EXPECT_EQ(error_of(std::string("3\0in", 4)),
            "expected a length (in, ft, mm, cm or m), found '3\uFFFDin': there is no unit "
            "'\uFFFDin'; did you mean 'in'?");
}

/// A decimal comma, on any machine.
struct Comma : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
};

TEST(Quantity, TheLocaleDoesNotMatter) {
  // The C library's own only where the machine has such a locale.
  const char* const set = std::setlocale(LC_ALL, "de_DE.UTF-8");
  const std::locale classic = std::locale::global(std::locale(std::locale::classic(), new Comma));
  std::istringstream stream("1,5");
  double comma = 0;
  stream >> comma;
  EXPECT_EQ(comma, 1.5);
  EXPECT_EQ(value_of("1.5", Dimension::length), 1.5) << (set == nullptr ? "C locale" : set);
  EXPECT_TRUE(says(error_of("1,5"), "write decimals with a point"));
  std::locale::global(classic);
  std::setlocale(LC_ALL, "C");
}

TEST(Quantity, EveryDimensionHasWords) {
  EXPECT_EQ(dimension_words(Dimension::plain), "a plain number");
  EXPECT_EQ(dimension_words(Dimension::length), "a length");
  EXPECT_EQ(dimension_words(Dimension::angle), "an angle");
  EXPECT_EQ(dimension_words(Dimension::mass_per_length), "a mass per length");
  EXPECT_EQ(dimension_words(Dimension::stiffness), "a stiffness");
}

}  // namespace
}  // namespace linewright
