#include "catalogue/read_tables.hpp"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>

namespace linewright {
namespace {

/// A small family that is right, in pieces which the cases change.
struct TableText {
  std::string head = "families:\n  - name: tube-trial-SIZE\n    usual_wall: 0.035\n";
  std::string every = "    every: {kind: rigid-tube, material: trial, source: s, mark: verified}\n";
  std::string density = "    density: {value: 0.1, source: by density, mark: calculated}\n";
  std::string sources = "    sources: {support_spacing: {source: t, mark: from-memory}}\n";
  std::string columns = "    columns: [size, outside, walls, support_spacing]\n";
  std::string rows = "    rows:\n      - [1/4, 0.25, [0.028, 0.035], 12]\n";

  std::string text() const { return head + every + density + sources + columns + rows; }
};

Catalogue read(const std::string& text) {
  return read_tables({{"trial.yaml", text}});
}

std::string refusal(const std::string& text) {
  try {
    read(text);
  } catch (const std::logic_error& error) {
    return error.what();
  }
  return "";
}

void expect_refused(const std::string& text, const std::string& says) {
  const std::string message = refusal(text);
  EXPECT_NE(message.find(says), std::string::npos) << "said: '" << message << "'";
}

TEST(ReadTables, MakesALineForEachWallAndOneForTheUsualWall) {
  const Catalogue catalogue = read(TableText{}.text());
  ASSERT_EQ(catalogue.lines.size(), 3u);
  EXPECT_EQ(catalogue.lines[0].name, "tube-trial-1/4");
  EXPECT_EQ(catalogue.lines[1].name, "tube-trial-1/4-0.028");
  EXPECT_EQ(catalogue.lines[2].name, "tube-trial-1/4-0.035");
  EXPECT_NEAR(catalogue.lines[0].inside_diameter_in, 0.18, 1e-12);
  EXPECT_NEAR(catalogue.lines[1].inside_diameter_in, 0.194, 1e-12);
}

TEST(ReadTables, GivesEachValueTheSourceOfItsColumnOrElseOfItsFamily) {
  const Catalogue catalogue = read(TableText{}.text());
  const Line& line = catalogue.lines[0];
  EXPECT_EQ(line.size_source, (Source{"s", Mark::verified}));
  EXPECT_EQ(line.support_spacing_in, (SourcedValue{12, {"t", Mark::from_memory}}));
  EXPECT_EQ(line.weight_lb_per_in->source, (Source{"by density", Mark::calculated}));
}

TEST(ReadTables, LetsACellStateItsOwnSourceOrBeAbsent) {
  TableText table;
  table.rows =
      "    rows:\n"
      "      - [1/4, 0.25, [0.035], {value: 14, source: own, mark: common-practice}]\n"
      "      - [3/8, 0.375, [0.035], ~]\n";
  const Catalogue catalogue = read(table.text());
  EXPECT_EQ(catalogue.find_line("tube-trial-1/4")->support_spacing_in,
            (SourcedValue{14, {"own", Mark::common_practice}}));
  EXPECT_FALSE(catalogue.find_line("tube-trial-3/8")->support_spacing_in.has_value());
}

TEST(ReadTables, AddsHalfOfTheOutsideDiameterToARadiusToTheInside) {
  TableText table;
  table.sources =
      "    sources: {minimum_inside_bend_radius: {source: t, mark: verified-secondary}}\n";
  table.columns = "    columns: [size, outside, walls, minimum_inside_bend_radius]\n";
  table.rows = "    rows:\n      - [1/4, 0.25, [0.035], 2]\n";
  const std::string measured =
      "t, measured to the inside of the bend, half of the outside diameter added";
  EXPECT_EQ(read(table.text()).lines[0].minimum_bend_radius_in,
            (SourcedValue{2.125, {measured, Mark::verified_secondary}}));
  table.columns =
      "    columns: [size, outside, walls, minimum_inside_bend_radius, minimum_bend_radius]\n";
  table.rows = "    rows:\n      - [1/4, 0.25, [0.035], 2, 2.125]\n";
  expect_refused(table.text(), "leave one of them out");
}

TEST(ReadTables, RefusesABadValueAndNamesTableLineAndEntry) {
  TableText table;
  table.rows = "    rows:\n      - [1/4, 0.25, [0.028, 0.035], -12]\n";
  expect_refused(table.text(), "trial.yaml:9: tube-trial-1/4: support_spacing: must be greater");
}

TEST(ReadTables, RefusesAWallThatLeavesNoBore) {
  TableText table;
  table.rows = "    rows:\n      - [1/16, 0.0625, [0.035], 12]\n";
  expect_refused(table.text(), "tube-trial-1/16: inside");
}

TEST(ReadTables, RefusesARowWithACellTooFew) {
  TableText table;
  table.rows = "    rows:\n      - [1/4, 0.25, [0.035]]\n";
  expect_refused(table.text(), "a row of 3 cells under 4 columns");
}

TEST(ReadTables, RefusesAnUnknownColumn) {
  TableText table;
  table.columns = "    columns: [size, outside, walls, spacing]\n";
  expect_refused(table.text(), "tube-trial-1/4: a line has no key 'spacing'");
}

TEST(ReadTables, RefusesARowWithoutTheUsualWall) {
  TableText table;
  table.rows = "    rows:\n      - [1/4, 0.25, [0.028], 12]\n";
  expect_refused(table.text(), "the usual wall 0.035 is not among its walls");
}

TEST(ReadTables, RefusesAValueWithoutAMark) {
  TableText table;
  table.every = "    every: {kind: rigid-tube, source: s}\n";
  expect_refused(table.text(), "'mark' is missing");
}

TEST(ReadTables, RefusesAMarkThatIsNone) {
  TableText table;
  table.sources = "    sources: {support_spacing: {source: t, mark: certain}}\n";
  expect_refused(table.text(), "no such mark as 'certain'");
  expect_refused("clamps: {source: t, mark: certain, dashes: [4]}\n", "no such mark");
}

TEST(ReadTables, RefusesTheBuildersMarkInATable) {
  TableText table;
  table.every = "    every: {kind: rigid-tube, source: s, mark: builder}\n";
  expect_refused(table.text(), "no such mark as 'builder'");
}

TEST(ReadTables, RefusesAMisspeltPartOfAFamilyOrTable) {
  TableText table;
  table.density = "    densty: {value: 0.1, source: s, mark: calculated}\n";
  expect_refused(table.text(), "a family has no key 'densty'");
  expect_refused("familys: []\n", "a table has no part 'familys'");
}

TEST(ReadTables, RefusesANameWithNoPlaceForTheSize) {
  TableText table;
  table.head = "families:\n  - name: tube-trial\n    usual_wall: 0.035\n";
  expect_refused(table.text(), "has no SIZE in it");
}

TEST(ReadTables, RefusesANameUsedTwice) {
  TableText table;
  table.rows = "    rows:\n      - [1/4, 0.25, [0.035], 12]\n      - [1/4, 0.25, [0.035], 13]\n";
  expect_refused(table.text(), "'tube-trial-1/4' twice");
}

TEST(ReadTables, RefusesAFamilyWithoutRowsAndAValueStatedTwice) {
  TableText table;
  table.rows = "    rows: []\n";
  expect_refused(table.text(), "no rows");
  TableText twice;
  twice.every = "    every: {kind: rigid-tube, outside: 0.25, source: s, mark: verified}\n";
  expect_refused(twice.text(), "'outside' is stated twice");
}

TEST(ReadTables, RefusesADashThatIsNotAWholeNumber) {
  expect_refused("clamps: {source: s, mark: verified, dashes: [4.5]}\n", "'4.5' is no dash number");
  expect_refused("clamps: {source: s, mark: verified, dashes: [four]}\n", "expected a number");
}

TEST(ReadTables, RefusesAFaultyYamlText) {
  expect_refused("families: [\n", "trial.yaml");
}

}  // namespace
}  // namespace linewright
