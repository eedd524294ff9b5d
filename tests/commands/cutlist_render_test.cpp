#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "commands/command_run.hpp"
#include "render/cutlist_csv.hpp"
#include "render/cutlist_json.hpp"
#include "render/cutlist_text.hpp"

namespace linewright {
namespace {

using test::contains;
using test::lines_of;

/// Legs of 10 in each way round a right angle of 1 in radius: 20 - 2 + pi/2 = 19.571 in.
Report one_bend() {
  RouteReport route;
  route.cut.name = "static-left";
  route.cut.system = "static";
  route.cut.line = "tube-aluminium-1/4";
  route.cut.rigid = true;
  route.cut.length_in = 19.5707963;
  route.cut.cut_length_in = 20.0707963;
  route.cut.volume_in3 = 0.498;
  route.cut.straight_after_in = 9;
  route.cut.bends = {{{10, 0, 0}, 9.7853981, 1, 90, 0, 9, 9, 10.5707963}};
  route.from = "port-left";
  route.to = "tee-1";
  Report report;
  report.project_name = "example";
  report.routes = {route};
  report.systems = {{"static", 19.5707963, 0.498, {"altimeter"}}};
  return report;
}

TEST(CutlistText, RigidTubeShowsBothMarksOfABend) {
  const std::string text = cutlist_text(one_bend(), {});
  EXPECT_TRUE(contains(text, "developed length 19.57 in, cut length 20.07 in")) << text;
  EXPECT_TRUE(
      contains(text, "     1    9.00 in   10.57 in    9.00 in   90.0 deg          -    1.00 in"))
      << text;
  EXPECT_TRUE(contains(text, "straight after the last bend 9.00 in")) << text;
  EXPECT_TRUE(contains(text, "mass not known")) << text;
}

// tests/planning/bend_schedule_test.cpp bends lines by these words.
TEST(CutlistText, ALineIsTurnedWithTheThumbTowardTheEndAlreadyBent) {
  std::string text = cutlist_text(one_bend(), {});
  std::replace(text.begin(), text.end(), '\n', ' ');
  EXPECT_TRUE(contains(text, "the line goes through the bender with its first node ahead")) << text;
  EXPECT_TRUE(contains(text, "the right-hand rule with the thumb toward the first node")) << text;
  EXPECT_TRUE(contains(text, "seen from that end, counter-clockwise where the angle is positive"))
      << text;
}

TEST(CutlistText, ACasingIsOrderedByItsLengthAndHasNoSchedule) {
  Report report = one_bend();
  RouteCut& cut = report.routes[0].cut;
  cut.rigid = false;
  cut.casing = true;
  cut.wire_length_in = 24.5;
  const std::string text = cutlist_text(report, {});
  EXPECT_TRUE(contains(text, "casing 20.07 in, wire from pin to pin 24.50 in")) << text;
  EXPECT_TRUE(contains(text, "led in place in 1 bend of 90.0 deg")) << text;
  EXPECT_FALSE(contains(text, "rotation")) << text;
  EXPECT_FALSE(contains(text, "bore")) << text;
  cut.wire_length_in.reset();
  EXPECT_TRUE(contains(cutlist_text(report, {}), "not known (run_out is not stated)"));
}

TEST(CutlistText, ALineBentInPlaceShowsOnlyWhereABendStarts) {
  Report report = one_bend();
  EXPECT_TRUE(contains(cutlist_text(report, {}), " ends at ")) << "bent on a tool";
  report.routes[0].cut.rigid = false;
  TextStyle all_bends;
  all_bends.verbose = true;
  const std::string text = cutlist_text(report, all_bends);
  EXPECT_FALSE(contains(text, "ends at")) << text;
  EXPECT_TRUE(contains(text, "     1    9.00 in    9.00 in   90.0 deg          -    1.00 in"))
      << text;
}

TEST(CutlistText, AVolumeCountedAsNothingIsSaid) {
  EXPECT_TRUE(contains(cutlist_text(one_bend(), {}),
                       "volume not stated and counted as nothing: altimeter"));
}

TEST(CutlistCsv, FieldsAreQuotedOnlyWhereTheyMustBe) {
  EXPECT_EQ(csv_field("static-left"), "static-left");
  EXPECT_EQ(csv_field("left, upper"), "\"left, upper\"");
  EXPECT_EQ(csv_field("the \"long\" one"), "\"the \"\"long\"\" one\"");
  EXPECT_EQ(csv_field("two\nlines"), "\"two\nlines\"");
  EXPECT_EQ(csv_field(""), "");
}

TEST(CutlistCsv, WhatASpreadsheetWouldWorkOutStaysText) {
  EXPECT_EQ(csv_field("=1+1"), "'=1+1");
  EXPECT_EQ(csv_field("=HYPERLINK(\"x\",1)"), "\"'=HYPERLINK(\"\"x\"\",1)\"");
  EXPECT_EQ(csv_field("+left"), "'+left");
  EXPECT_EQ(csv_field("-2+3"), "'-2+3");
  EXPECT_EQ(csv_field("@port"), "'@port");
  EXPECT_EQ(csv_field("\t=1"), "'\t=1");
  EXPECT_EQ(csv_field("\r=1"), "\"'\r=1\"");
  for (const char* number : {"-12.5", "+3", "-0.0000", "-1e-05"})
    EXPECT_EQ(csv_field(number), number);
}

TEST(CutlistText, BendsOfSoftLinesAreListedWhereAskedFor) {
  Report report = one_bend();
  report.routes[0].cut.rigid = false;
  const std::string led = cutlist_text(report, {});
  EXPECT_TRUE(contains(led, "  led in place in 1 bend of 90.0 deg\n")) << led;
  EXPECT_FALSE(contains(led, "rotation")) << led;
  EXPECT_FALSE(contains(led, "Bends are in order")) << led;
  TextStyle all;
  all.verbose = true;
  const std::string listed = cutlist_text(report, all);
  EXPECT_TRUE(contains(listed, "rotation")) << listed;
  EXPECT_TRUE(contains(listed, "Bends are in order")) << listed;
}

TEST(CutlistText, AddsUpWhatIsCutOfEachLine) {
  Report report = one_bend();
  report.routes.push_back(report.routes[0]);
  report.routes.push_back(report.routes[0]);
  report.routes[2].cut.cable = true;
  // Twice 20.0708 in; cables are cut in pieces, which rig tells.
  const std::string text = cutlist_text(report, {});
  EXPECT_TRUE(contains(text, "tube-aluminium-1/4      40.14 in         2\n")) << text;
}

TEST(CutlistCsv, OneRowForEachBendUnderAHeader) {
  const std::vector<std::string> lines = lines_of(cutlist_csv(one_bend(), LengthUnit::inch));
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_EQ(lines[0],
            "route,system,line,from,to,length_in,cut_length_in,volume_in3,mass_lb,"
            "minimum_bend_radius_in,straight_after_in,bend,fs_in,bl_in,wl_in,radius_in,angle_deg,"
            "rotation_deg,straight_before_in,distance_in,mark_start_in,mark_end_in,"
            "wire_length_in");
  EXPECT_EQ(lines[1],
            "static-left,static,tube-aluminium-1/4,port-left,tee-1,19.5708,20.0708,0.4980,,,9.0000,"
            "1,10.0000,0.0000,0.0000,1.0000,90.000,0.000,9.0000,9.7854,9.0000,10.5708,");
}

TEST(CutlistCsv, FractionsAreNumbersToASpreadsheetAndLimitsDecimals) {
  Report report = one_bend();
  report.routes[0].cut.minimum_bend_radius_in = 0.5625;
  report.routes[0].cut.straight_after_in = 0.375;
  const std::vector<std::string> lines = lines_of(cutlist_csv(report, LengthUnit::inch_fraction));
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_TRUE(contains(lines[0], "length_in,cut_length_in"));
  // 19.5708 in is nearest to 19 18/32, 20.0708 to 20 2/32, 9.7854 to 9 25/32.
  EXPECT_TRUE(lines[1].ends_with(
      ",19 9/16,20 1/16,0.4980,,0.5625,0 3/8,1,10,0,0,1,90.000,0.000,9,9 25/32,9,10 9/16,"))
      << lines[1];
}

TEST(CutlistText, FractionsKeepToTheirColumns) {
  TextStyle style;
  style.phrasing.unit = LengthUnit::inch_fraction;
  Report report = one_bend();
  report.routes[0].cut.minimum_bend_radius_in = 0.5625;
  report.routes[0].cut.bends[0].mark_start_in = 123.46875;
  const std::string text = cutlist_text(report, style);
  EXPECT_TRUE(contains(text, "developed length 19 9/16 in, cut length 20 1/16 in")) << text;
  EXPECT_TRUE(contains(text, "least bend radius of the line 0.56 in")) << text;
  EXPECT_TRUE(contains(text, " 123 15/32 in")) << text;
  for (const std::string& line : lines_of(text)) EXPECT_LE(line.size(), 80u) << line;
}

TEST(CutlistText, AsksForNoRadiusOfWhatIsStraight) {
  Report report = one_bend();
  report.routes[0].cut.minimum_bend_radius_in.reset();
  EXPECT_TRUE(contains(cutlist_text(report, {}), "least bend radius of the line not known"));
  report.routes[0].cut.bends.clear();
  EXPECT_FALSE(contains(cutlist_text(report, {}), "least bend radius"));
}

TEST(CutlistCsv, ARouteWithoutBendsHasOneRow) {
  Report report = one_bend();
  report.routes[0].cut.bends.clear();
  const std::vector<std::string> lines = lines_of(cutlist_csv(report, LengthUnit::millimetre));
  ASSERT_EQ(lines.size(), 2u);
  EXPECT_TRUE(lines[0].ends_with("mark_end_mm,wire_length_mm"));
  EXPECT_TRUE(lines[1].ends_with(",,,,,,,,,,,"));
  // 19.5707963 in x 25.4 = 497.098 mm; 0.498 in3 x 16.387064 = 8.1608 cm3.
  EXPECT_TRUE(contains(lines[1], ",497.098,509.798,8.1608,")) << lines[1];
}

TEST(CutlistJson, UnknownMassAndRadiusAreNull) {
  const auto json = nlohmann::json::parse(cutlist_json(one_bend()));
  EXPECT_TRUE(json["routes"][0]["mass_lb"].is_null());
  EXPECT_TRUE(json["routes"][0]["minimum_bend_radius_in"].is_null());
  EXPECT_EQ(json["systems"][0]["nodes_without_volume"][0], "altimeter");
}

TEST(CutlistJson, ANumberThatIsNotFiniteIsRefused) {
  Report report = one_bend();
  report.routes[0].cut.length_in = std::numeric_limits<double>::infinity();
  EXPECT_THROW(cutlist_json(report), std::logic_error);
  report.routes[0].cut.length_in = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(cutlist_json(report), std::logic_error);
}

TEST(CutlistText, ACableHasNoBoreAndNoBendSchedule) {
  Report report = one_bend();
  report.routes[0].cut.rigid = false;
  report.routes[0].cut.cable = true;
  report.routes[0].cut.volume_in3 = 0;
  report.systems = {{"cable", 19.5707963, 0, {}}};
  const std::string text = cutlist_text(report, {});
  EXPECT_TRUE(contains(text, "developed length 19.57 in, mass not known")) << text;
  EXPECT_TRUE(contains(text, "pieces and ends: linewright rig")) << text;
  for (const std::string word : {"bore", "bend", "Rotation", "cut length", "in3"})
    EXPECT_FALSE(contains(text, word)) << text;
}

}  // namespace
}  // namespace linewright
