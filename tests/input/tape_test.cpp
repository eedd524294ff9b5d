// Lengths as they stand on a tape. Every figure is a sum of halvings of an inch, which a double
// holds exactly: nothing here has a tolerance.

#include "input/tape.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>
#include <string>

#include "input/project_folder.hpp"
#include "input/quantity.hpp"

namespace linewright {
namespace {

double inches_of(std::string_view text, BareLength bare = BareLength::inch) {
  const auto value = read_quantity(text, Dimension::length, bare);
  if (!value) ADD_FAILURE() << text << ": " << value.error();
  return value.value_or(-12345);
}

std::string tape_error_of(std::string_view text, BareLength bare = BareLength::inch) {
  const auto value = read_quantity(text, Dimension::length, bare);
  if (!value) return value.error();
  ADD_FAILURE() << text << " was read as " << *value;
  return {};
}

void expect_says(std::string_view text, std::string_view part) {
  const std::string message = tape_error_of(text);
  EXPECT_TRUE(message.starts_with("expected a length (in, ft, mm, cm or m), found '")) << message;
  EXPECT_NE(message.find(part), std::string::npos) << text << ": " << message;
}

TEST(Tape, AWholeNumberAndAPartAreOneLength) {
  EXPECT_EQ(inches_of("10 3/8"), 10.375);
  EXPECT_EQ(inches_of("10-3/8"), 10.375);
  EXPECT_EQ(inches_of("10 3/8 in"), 10.375);
  EXPECT_EQ(inches_of("10-3/8 in"), 10.375);
  EXPECT_EQ(inches_of("10 3/8\""), 10.375);
  EXPECT_EQ(inches_of("  10   3/8in "), 10.375);
}

TEST(Tape, APartStandsAlone) {
  EXPECT_EQ(inches_of("3/16"), 0.1875);
  EXPECT_EQ(inches_of("3/16 in"), 0.1875);
  EXPECT_EQ(inches_of("63/64"), 0.984375);
}

// "11/2" is as likely 1 1/2 with its blank left out as it is 5 1/2.
TEST(Tape, APartAloneIsLessThanOne) {
  for (const auto* text : {"9/8", "11/2", "2/2", "-11/8", "5' 9/8\""})
    expect_says(text, "a fraction must be less than one; write the whole number before it");
}

TEST(Tape, FeetStandBeforeInches) {
  EXPECT_EQ(inches_of("5 ft 2 1/4 in"), 62.25);
  EXPECT_EQ(inches_of("5' 2-1/4\""), 62.25);
  EXPECT_EQ(inches_of("5'2 1/4\""), 62.25);
  EXPECT_EQ(inches_of("5'-2 1/4\""), 62.25);
  EXPECT_EQ(inches_of("5ft 2in"), 62);
  EXPECT_EQ(inches_of("5' 2.5\""), 62.5);
  EXPECT_EQ(inches_of("5' 3/4\""), 60.75);
  EXPECT_EQ(inches_of("5'"), 60);
  EXPECT_EQ(inches_of("5.5'"), 66);
  EXPECT_EQ(inches_of("62.5\""), 62.5);
  EXPECT_EQ(inches_of(".5\""), 0.5);
}

TEST(Tape, ASignIsForAllOfIt) {
  EXPECT_EQ(inches_of("-10 3/8"), -10.375);
  EXPECT_EQ(inches_of("-10-3/8"), -10.375);
  EXPECT_EQ(inches_of("-3/16"), -0.1875);
  EXPECT_EQ(inches_of("-5' 2-1/4\""), -62.25);
  EXPECT_EQ(inches_of("+10 3/8"), 10.375);
}

TEST(Tape, InAFileOfMillimetresAFractionNamesItsUnit) {
  const BareLength metric = BareLength::millimetre;
  EXPECT_EQ(inches_of("10 3/8 in", metric), 10.375);
  EXPECT_EQ(inches_of("5' 2-1/4\"", metric), 62.25);
  for (const auto* text : {"10 3/8", "3/16", "-10-3/8"}) {
    const std::string message = tape_error_of(text, metric);
    EXPECT_NE(message.find("add in, for bare lengths are in mm here"), std::string::npos)
        << message;
  }
}

TEST(Tape, AFractionIsOfInches) {
  expect_says("10 3/8 mm", "a fraction is of inches; write other units as a decimal");
  expect_says("3/8 cm", "a fraction is of inches");
  expect_says("1/2 ft", "a fraction is of inches, not of feet");
}

TEST(Tape, PartsOfAnInchAreHalvings) {
  for (const auto* text : {"3/0", "1/1", "1/3", "5/10", "1/128", "10 3/7", "5' 2 1/12\""})
    expect_says(text, "parts of an inch are 2nds, 4ths, 8ths, 16ths, 32nds or 64ths");
  expect_says("10 0/8", "leave out a fraction of nothing");
}

TEST(Tape, AfterAWholeNumberAFractionIsLessThanOne) {
  for (const auto* text : {"10 9/8", "10 8/8", "0-64/64"})
    expect_says(text, "after a whole number a fraction must be less than one");
}

TEST(Tape, DatesAndTwoNumbersAreNoLengths) {
  expect_says("1/2/3", "a fraction has one stroke");
  expect_says("3/16/24", "a fraction has one stroke");
  expect_says("2024-03/16", "a leading zero may mean octal");
  expect_says("1 2", "it is not one number");
  expect_says("1 2\"", "it is not one number");
  expect_says("1-2\"", "it is not one number");
  expect_says("3/8.5", "it is not one number");
  expect_says("1.5 3/8", "a whole number stands before a fraction");
  expect_says("1.5/8", "a whole number stands before a fraction");
  expect_says("3/ 8", "with nothing between its numbers");
  expect_says("10 3/", "with nothing between its numbers");
}

TEST(Tape, WhatIsNoneIsToldHowOneIsWritten) {
  for (const auto* text : {"'", "\"", "-'", "/8\"", "5' -2\"", "5' - 2\"", "10 3/8 1/2",
                           "10 3/8 in long", "5\" 2'", "5'6'", "10 -3/8", "- 10 3/8", "--3/8",
                           "5' 2\" 3\"", "1e3'", "5' 2 mm", "3/8 furlong", "5'-",
                           "."
                           "'"})
    expect_says(text, ": write a length as 10 3/8 in, or as 5 ft 2 1/4 in with feet");
  expect_says("10 3 /8", "it is not one number");
}

TEST(Tape, InchesAfterFeetAreMarkedAndLessThanTwelve) {
  expect_says("5' 2", "inches after feet need their mark \", or in");
  expect_says("5 ft 2 1/4", "inches after feet need their mark \", or in");
  expect_says("5' 12\"", "inches after feet are less than 12");
  expect_says("5.5' 2\"", "feet before inches are a whole number");
  expect_says("2''", "the mark of inches is \", or write in");
  expect_says("5' 2''", "the mark of inches is \", or write in");
}

TEST(Tape, NumbersThatAreTooLongAreOutOfRange) {
  expect_says(std::string(1000, '9') + "'", "out of range");
  expect_says(std::string(1000, '9') + "/8", "out of range");
  expect_says("1/" + std::string(1000, '9'), "out of range");
  expect_says("1." + std::string(1'000'000, '9') + "\"", "out of range");
}

/// The length of so many 64ths, as a tape has it: the fraction in its lowest terms.
std::string written(int sixty_fourths, const std::string& tie, const std::string& unit) {
  const int size = std::abs(sixty_fourths);
  const int part = size % 64;
  const int common = part == 0 ? 64 : std::gcd(part, 64);
  const std::string fraction =
      part == 0 ? "" : std::to_string(part / common) + "/" + std::to_string(64 / common);
  std::string text = sixty_fourths < 0 ? "-" : "";
  if (size >= 64 || part == 0) text += std::to_string(size / 64) + (part == 0 ? "" : tie);
  return text + fraction + unit;
}

TEST(Tape, EverySixtyFourthIsReadAsItStands) {
  for (int n = -64 * 130; n <= 64 * 130; ++n) {
    const double inches = n / 64.0;
    for (const auto* tie : {" ", "-"})
      for (const auto* unit : {"", " in", "\""})
        ASSERT_EQ(inches_of(written(n, tie, unit)), inches) << written(n, tie, unit);
  }
}

TEST(Tape, EverySixtyFourthIsReadAsItStandsInFeetAndInches) {
  for (int n = 0; n <= 64 * 130; ++n) {
    const int feet = n / (12 * 64);
    const std::string inches = written(n % (12 * 64), "-", "");
    ASSERT_EQ(inches_of(std::to_string(feet) + "' " + inches + "\""), n / 64.0) << n;
    ASSERT_EQ(inches_of("-" + std::to_string(feet) + " ft " + inches + " in"), -(n / 64.0)) << n;
  }
}

TEST(Tape, EveryHalvingOfAnInchMeansTheSameInAnyTerms) {
  for (int denominator = 2; denominator <= 64; denominator *= 2)
    for (int numerator = 1; numerator < denominator; ++numerator)
      ASSERT_EQ(inches_of("7 " + std::to_string(numerator) + "/" + std::to_string(denominator)),
                7 + static_cast<double>(numerator) / denominator);
}

/// Where the one node of a project stands, or what is wrong with it.
LoadResult node_at(const std::string& place, const std::string& settings = "") {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: tape\n" + settings +
                                   "nodes:\n  - {name: port, kind: static-port, at: " + place +
                                   "}\n");
  return load_project(folder.path(), small_catalogue());
}

void expect_stands_at(const std::string& place, Vec3 at) {
  const LoadResult result = node_at(place);
  ASSERT_TRUE(result.project) << shown(result.errors);
  EXPECT_EQ(result.project->nodes.at(0).at, at) << place;
}

TEST(Tape, LengthsInAListStandAsTheyAreMeasured) {
  expect_stands_at("[10 3/8, -3/16, 5 ft 2 1/4 in]", {10.375, -0.1875, 62.25});
  expect_stands_at(R"([10-3/8", 5' 2-1/4", -6'])", {10.375, 62.25, -72});
}

TEST(Tape, InQuotesOfYamlALengthHoldsItsMarks) {
  expect_stands_at(R"(['5'' 2-1/4"', "5' 2-1/4\"", '-6'''])", {62.25, 62.25, -72});
  EXPECT_NE(shown(node_at("['10 3/8', 0, 0]").errors).find("must not be in quotes"),
            std::string::npos);
  EXPECT_NE(shown(node_at("['5'' 2', 0, 0]").errors).find("need their mark"), std::string::npos);
}

TEST(Tape, AFaultIsShownWhereItStands) {
  EXPECT_EQ(shown(node_at("[0, 10 3/8, 0]", "units: mm\n").errors),
            "project.yaml:5:45: expected a length (in, ft, mm, cm or m), found '10 3/8': a "
            "fraction is of inches; add in, for bare lengths are in mm here\n");
}

// Whatever is made of the letters of a tape is a length or an error in words, and is read whole: a
// length that is read keeps its meaning when its unit is named.
TEST(Tape, AnyTextOfItsLettersIsALengthOrAnError) {
  constexpr std::string_view letters = "0123456789 /-'\".ft in";
  std::mt19937 random(64);
  std::uniform_int_distribution<std::size_t> which(0, letters.size() - 1);
  int lengths = 0;
  for (int i = 0; i < 200'000; ++i) {
    std::string text;
    for (std::size_t length = which(random) % 9; length > 0; --length)
      text += letters[which(random)];
    const auto value = read_quantity(text, Dimension::length, BareLength::inch);
    if (!value) {
      ASSERT_TRUE(value.error().starts_with("expected a length")) << text;
      continue;
    }
    ++lengths;
    ASSERT_TRUE(std::isfinite(*value)) << text;
    if (!is_tape(text) || text.find_first_of("'\"fi") != std::string::npos) continue;
    ASSERT_EQ(inches_of(text + " in"), *value) << text;
  }
  EXPECT_GT(lengths, 1000);
}

}  // namespace
}  // namespace linewright
