// Numbers as the builder reads them.

#include "words/phrasing.hpp"

#include <gtest/gtest.h>

#include <clocale>
#include <cmath>
#include <cstdlib>
#include <locale>
#include <sstream>
#include <string>
#include <utility>

#include "input/quantity.hpp"
#include "oracles/random_path.hpp"
#include "rules/limit.hpp"

namespace linewright {
namespace {

constexpr Phrasing inches{LengthUnit::inch};
constexpr Phrasing millimetres{LengthUnit::millimetre};
constexpr Phrasing fractions{LengthUnit::inch_fraction};

TEST(Phrasing, InchesHaveThreeDecimalsUnderOneTwoUnderTenAndOneFromThere) {
  EXPECT_EQ(inches.length(0.125), "0.125 in");
  EXPECT_EQ(inches.length(0.53126), "0.531 in");
  EXPECT_EQ(inches.length(1), "1.00 in");
  EXPECT_EQ(inches.length(9.99), "9.99 in");
  EXPECT_EQ(inches.length(10), "10.0 in");
  EXPECT_EQ(inches.length(205.04), "205.0 in");
  EXPECT_EQ(inches.length(-0.56), "-0.560 in");
  EXPECT_EQ(inches.length(-12.34), "-12.3 in");
}

TEST(Phrasing, AFractionIsTheNearest32ndInItsLowestTerms) {
  EXPECT_EQ(fractions.tape(10.375), "10 3/8 in");
  EXPECT_EQ(fractions.tape(0.1875), "3/16 in");
  EXPECT_EQ(fractions.tape(-8.1), "-8 3/32 in");  // 8.09375; the next is 8.125
  EXPECT_EQ(fractions.tape(-0.5), "-1/2 in");
  EXPECT_EQ(fractions.tape(12), "12 in");
  EXPECT_EQ(fractions.tape(11.99), "12 in");  // nearer than 11 31/32 = 11.96875
  EXPECT_EQ(fractions.tape(0.015), "0 in");   // half of a 32nd is 0.015625
  EXPECT_EQ(fractions.tape(-0.015), "0 in");
  EXPECT_EQ(fractions.tape(0.016), "1/32 in");
  EXPECT_EQ(fractions.tape_number(205.53), "205 17/32");
}

TEST(Phrasing, PlacesStandAsOnATapeAndGapsAsDecimals) {
  EXPECT_EQ(fractions.place({205, -8.1875, 15.1}), "FS 205 BL -8 3/16 WL 15 3/32");
  EXPECT_EQ(fractions.extents({100, -3.875, 16}, {104.5, 3.875, 23}),
            "FS 100 to 104 1/2, BL -3 7/8 to 3 7/8, WL 16 to 23");
  EXPECT_EQ(fractions.length(0.18), "0.180 in");
  EXPECT_EQ(fractions.decimals().tape(10.375), "10.4 in");
  EXPECT_EQ(millimetres.decimals().tape(1), "25.4 mm");
}

// A mend says a place that is said in full, so that doing what it says is enough.
TEST(Phrasing, AFractionIsRoundedToTheAskedSide) {
  EXPECT_EQ(fractions.tape(fractions.tape_up(10.01)), "10 1/32 in");
  EXPECT_EQ(fractions.tape(fractions.tape_down(10.03)), "10 in");
  EXPECT_EQ(fractions.tape(fractions.tape_up(-10.01)), "-10 in");
  EXPECT_EQ(fractions.tape_up(10.375), 10.375);
  EXPECT_EQ(inches.tape_up(10.01), inches.rounded_up(10.01));
  for (const Phrasing& each : {inches, millimetres, fractions})
    for (int i = 1; i < 200; ++i) {
      const double at = i * each.tape_step_in();
      EXPECT_NEAR(each.tape_up(at), each.tape_down(at), 1e-9);
    }
}

// Half of a 32nd is the most that the nearest one can be off; what is printed is read back.
TEST(Phrasing, AFractionThatIsPrintedIsReadBack) {
  for (int i = -5000; i <= 5000; ++i) {
    const double inches_meant = i * 0.0137;
    const auto read =
        read_quantity(fractions.tape(inches_meant), Dimension::length, BareLength::millimetre);
    ASSERT_TRUE(read) << fractions.tape(inches_meant);
    ASSERT_NEAR(*read, inches_meant, 1.0 / 64) << fractions.tape(inches_meant);
  }
}

// 1 in is 25.4 mm exactly.
TEST(Phrasing, MillimetresHaveOneDecimal) {
  EXPECT_EQ(millimetres.length(1), "25.4 mm");
  EXPECT_EQ(millimetres.length(0.56), "14.2 mm");
  EXPECT_EQ(millimetres.length(100), "2540.0 mm");
}

TEST(Phrasing, NumberAloneLeavesTheUnitOff) {
  EXPECT_EQ(inches.length_number(0.56), "0.560");
  EXPECT_EQ(millimetres.length_number(0.56), "14.2");
  EXPECT_EQ(inches.unit_name(), "in");
  EXPECT_EQ(millimetres.unit_name(), "mm");
}

TEST(Phrasing, NothingIsEverMinusZero) {
  EXPECT_EQ(inches.length(-0.0), "0.000 in");
  EXPECT_EQ(inches.length(-0.0004), "0.000 in");
  EXPECT_EQ(inches.length(-0.0006), "-0.001 in");
  EXPECT_EQ(millimetres.length(-0.001), "0.0 mm");
  EXPECT_EQ(inches.angle(-0.04), "0.0 deg");
}

TEST(Phrasing, AnglesHaveOneDecimal) {
  EXPECT_EQ(inches.angle(90), "90.0 deg");
  EXPECT_EQ(millimetres.angle(2.94), "2.9 deg");
}

TEST(Phrasing, PlacesAreStationButtockLineAndWaterline) {
  EXPECT_EQ(inches.place({205, -8.2, 15.14}), "FS 205.0 BL -8.2 WL 15.1");
  EXPECT_EQ(inches.place({0, -0.01, 0}), "FS 0.0 BL 0.0 WL 0.0");
  EXPECT_EQ(millimetres.place({1, -2, 10}), "FS 25.4 BL -50.8 WL 254.0");
}

TEST(Phrasing, ExtentsAreARangeOnEachAxis) {
  EXPECT_EQ(inches.extents({100, -3.9, 16.1}, {104, 3.9, 23.9}),
            "FS 100.0 to 104.0, BL -3.9 to 3.9, WL 16.1 to 23.9");
  EXPECT_EQ(millimetres.extents({1, -1, 0}, {2, 1, 10}),
            "FS 25.4 to 50.8, BL -25.4 to 25.4, WL 0.0 to 254.0");
}

using Pair = std::pair<std::string, std::string>;

Pair lengths(double first, double second, const Phrasing& phrasing = inches) {
  return told_apart(first, second,
                    [&](double value, int more) { return phrasing.length(value, more); });
}

TEST(Phrasing, TwoLengthsLookAlikeOnlyWhereTheyAre) {
  EXPECT_EQ(lengths(0.5, 0.25), Pair("0.500 in", "0.250 in"));
  EXPECT_EQ(lengths(0.8201, 0.8204), Pair("0.8201 in", "0.8204 in"));
  EXPECT_EQ(lengths(14.01, 14.02), Pair("14.01 in", "14.02 in"));
  EXPECT_EQ(lengths(0.125, 0.125), Pair("0.125 in", "0.125 in"));
  // 3.175 mm and 3.2004 mm.
  EXPECT_EQ(lengths(0.125, 0.126, millimetres), Pair("3.17 mm", "3.20 mm"));
}

TEST(Phrasing, WhatOnlyRoundingPartsStaysAlike) {
  EXPECT_EQ(lengths(14, 14 + 1e-9), Pair("14.0 in", "14.0 in"));
}

TEST(Phrasing, RoundedUpIsTheNextLengthSaidInFull) {
  EXPECT_DOUBLE_EQ(inches.rounded_up(0.5625), 0.563);
  EXPECT_DOUBLE_EQ(inches.rounded_up(0.56), 0.56);
  EXPECT_DOUBLE_EQ(inches.rounded_up(9.991), 10);
  EXPECT_DOUBLE_EQ(inches.rounded_up(12.31), 12.4);
  EXPECT_DOUBLE_EQ(inches.rounded_up(-0.5675), -0.567);
  EXPECT_DOUBLE_EQ(millimetres.rounded_up(0.5625), 14.3 / 25.4);
}

TEST(Phrasing, RoundedDownIsTheLastLengthSaidInFull) {
  EXPECT_DOUBLE_EQ(inches.rounded_down(0.5625), 0.562);
  EXPECT_DOUBLE_EQ(inches.rounded_down(0.56), 0.56);
  EXPECT_DOUBLE_EQ(inches.rounded_down(12.39), 12.3);
  EXPECT_DOUBLE_EQ(inches.rounded_down(10.04), 10);
  EXPECT_DOUBLE_EQ(millimetres.rounded_down(0.5625), 14.2 / 25.4);
}

TEST(Phrasing, LengthsOnlyRoundingAwayFromAFigureAreThatFigure) {
  EXPECT_DOUBLE_EQ(inches.rounded_up(14 + 1e-9), 14);
  EXPECT_DOUBLE_EQ(inches.rounded_down(14 - 1e-9), 14);
}

// What is said of a rounded length is that length again, and on the right side of the true one.
TEST(Phrasing, RoundedLengthsAreSaidWithoutLoss) {
  oracles::Random random(7);
  for (int i = 0; i < 2000; ++i) {
    const double length_in = random.between(-50, 50);
    for (const Phrasing& phrasing : {inches, millimetres}) {
      const double per_inch = phrasing.unit == LengthUnit::inch ? 1 : 25.4;
      const double up = std::stod(phrasing.length_number(phrasing.rounded_up(length_in)));
      const double down = std::stod(phrasing.length_number(phrasing.rounded_down(length_in)));
      EXPECT_NEAR(up / per_inch, phrasing.rounded_up(length_in), 1e-12);
      EXPECT_NEAR(down / per_inch, phrasing.rounded_down(length_in), 1e-12);
      EXPECT_GE(up / per_inch, length_in - 2e-6);
      EXPECT_LE(down / per_inch, length_in + 2e-6);
      // Three decimals under an inch, two under ten and one from there; one of millimetres.
      const double in = std::abs(length_in);
      const double step = per_inch > 1 || in > 9.9 ? 0.1 : in > 0.99 ? 0.01 : 0.001;
      EXPECT_LE(up - down, step + 1e-9) << length_in;
    }
  }
}

TEST(Phrasing, SourceIsCitedWithHowFarItWasChecked) {
  EXPECT_EQ(cite(Source{"AC 43.13-1B Table 9-2", Mark::from_memory}),
            "AC 43.13-1B Table 9-2 (from memory, not checked against it)");
  EXPECT_EQ(cite(Source{"geometry", Mark::calculated}), "geometry (calculated)");
  EXPECT_EQ(mark_words(Mark::verified), "verified");
  EXPECT_EQ(mark_words(Mark::verified_secondary), "verified in a restatement of the source");
  EXPECT_EQ(mark_words(Mark::common_practice), "common practice, no source");
  EXPECT_EQ(mark_words(Mark::builder), "the project's own figure");
}

TEST(Phrasing, LimitRowIsCitedLikeItsSource) {
  const LimitRow row{.name = "a",
                     .subject = "a thing",
                     .value = 1,
                     .source = "MIL-H-8891A",
                     .mark = Mark::verified};
  EXPECT_EQ(cite(row), "MIL-H-8891A (verified)");
}

/// Decimal comma and grouped thousands, on any machine.
struct Comma : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(Phrasing, LocaleChangesNothing) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  // The C library's own only where the machine has such a locale.
  for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8"})
    if (std::setlocale(LC_NUMERIC, name)) break;
  const std::locale classic = std::locale::global(std::locale(std::locale::classic(), new Comma));
  std::ostringstream stream;
  stream << 1234.5;
  EXPECT_EQ(stream.str(), "1.234,5");
  EXPECT_EQ(inches.length(1234.5), "1234.5 in");
  EXPECT_EQ(inches.place({1.5, 2.5, 3.5}), "FS 1.5 BL 2.5 WL 3.5");
  std::locale::global(classic);
  std::setlocale(LC_ALL, before.c_str());
}

}  // namespace
}  // namespace linewright
