#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

// Lengths of tens of inches, read from short decimals.
constexpr double rounding_in = 1e-9;
/// To which the gap to a round hole's edge is worked out.
constexpr double edge_gap_in = 1e-5;

/// A frame at FS 104, 0.032 thick, with the hole or holes given, and a line from FS 100 to 108.
ProjectSections through_frame(const std::string& hole, const std::string& line,
                              const std::string& from = "100, 0, 10",
                              const std::string& to = "108, 0, 10",
                              const std::string& points = "[]") {
  ProjectSections sections;
  sections.structure =
      "  frames:\n"
      "    - name: F4\n"
      "      station: 104\n"
      "      thickness: 0.032\n"
      "      outline: [[-6, 4], [6, 4], [6, 16], [-6, 16]]\n"
      "      holes: [" +
      hole + "]\n";
  sections.nodes = held_node("forward", from) + held_node("aft", to);
  const std::string system = line.starts_with("wire")    ? "wire"
                             : line.starts_with("cable") ? "cable"
                                                         : "static";
  sections.routes = "  - {name: route, system: " + system + ", line: " + line +
                    ", from: forward, to: aft,\n     points: " + points + "}\n";
  return sections;
}

std::string round_hole(const std::string& diameter, const std::string& rest = "edge: bare") {
  return "{name: hole, centre: [0, 10], diameter: " + diameter + ", " + rest + "}";
}

Judgement only_crossing(const ProjectSections& sections) {
  return only(judged(sections, "frame-crossing"));
}

TEST(FrameCrossing, PassesAWireExactlyAtThreeEighthsAndFailsItJustInside) {
  // AC 43.13-1B para 11-115 [verified]. On the axis of the hole: 0.5 - 0.125 = 0.375.
  const Judgement at_limit = only_crossing(through_frame(round_hole("1.0"), "wire-1/4"));
  EXPECT_EQ(at_limit.verdict, Verdict::pass);
  EXPECT_NEAR(*at_limit.value, 0.375, rounding_in);
  EXPECT_EQ(*at_limit.limit, 0.375);
  EXPECT_TRUE(at_limit.mend.empty());
  EXPECT_EQ(at_limit.with, "hole");

  const Judgement inside = only_crossing(through_frame(round_hole("0.9996"), "wire-1/4"));
  EXPECT_EQ(inside.verdict, Verdict::fail);
  EXPECT_NEAR(*inside.value, 0.3748, rounding_in);
  EXPECT_NE(inside.source.find("11-115"), std::string::npos) << inside.source;
}

TEST(FrameCrossing, SaysWhereAndHowFarToMove) {
  const Judgement judgement =
      only_crossing(through_frame(round_hole("1.25"), "wire-1/4", "100, 0, 10.2", "108, 0, 10.2"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.625 - 0.2 - 0.125, rounding_in);
  // The nearest place is at a face, half the sheet from its middle at 4 in along.
  EXPECT_NEAR(*judgement.distance_in, 4, 0.016 + rounding_in);
  EXPECT_NEAR(judgement.at->x, 104, 0.016 + rounding_in);
  EXPECT_EQ(judgement.at->z, 10.2);
  EXPECT_EQ(judgement.message, "close to the bare edge of hole hole");
  EXPECT_EQ(judgement.mend,
            "fit a grommet or edge trim, or move the line 0.075 in toward the middle of the hole");
}

// A tube borrows the wire's 3/8 in, a cable keeps 1/2 in where either can move [common practice, no
// source].
TEST(FrameCrossing, OnlyWarnsForATubeAndACable) {
  const Judgement tube = only_crossing(through_frame(round_hole("0.9996"), "tube-nylon-1/4"));
  EXPECT_EQ(tube.verdict, Verdict::warn);
  EXPECT_EQ(*tube.limit, 0.375);
  // A 1/8 in cable may be 0.139 in across; half an inch beside it is a hole of 1.139 in.
  const Judgement cable = only_crossing(through_frame(round_hole("1.138"), "cable-7x19-1/8-steel"));
  EXPECT_EQ(cable.verdict, Verdict::warn);
  EXPECT_EQ(*cable.limit, 0.5);
  EXPECT_NEAR(*cable.value, 0.4995, rounding_in);
  EXPECT_EQ(only_crossing(through_frame(round_hole("1.139"), "cable-7x19-1/8-steel")).verdict,
            Verdict::pass);
}

TEST(FrameCrossing, FailsAnyLineThatTouchesTheEdge) {
  const Judgement touching = only_crossing(
      through_frame(round_hole("0.5"), "tube-nylon-1/4", "100, 0, 10.13", "108, 0, 10.13"));
  EXPECT_EQ(touching.verdict, Verdict::fail);
  EXPECT_NEAR(*touching.value, 0.25 - 0.13 - 0.125, rounding_in);
  EXPECT_EQ(touching.message, "touches the bare edge of hole hole");
}

TEST(FrameCrossing, TakesTheBuildToleranceOff) {
  ProjectSections sections = through_frame(round_hole("1.0"), "wire-1/4");
  sections.build_tolerance = "0.06";
  const Judgement judgement = only_crossing(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.315, rounding_in);
}

TEST(FrameCrossing, MeasuresALineThatLeansWhereItIsNearest) {
  // Along (4, 3)/5 on the hole's middle plane, through its centre: the edge at BL 1 on the aft face
  // is 4/5 - 0.016 3/5 from the line, at a foot 0.016 4/5 + 3/5 past the crossing at 5 in.
  const Judgement judgement =
      only_crossing(through_frame(round_hole("2.0"), "wire-1/4", "100, -3, 10", "108, 3, 10"));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_NEAR(*judgement.value, 0.8 - 0.0096 - 0.125, edge_gap_in);
  EXPECT_LT(std::abs(std::abs(*judgement.distance_in - 5) - 0.6128), 0.005);
}

TEST(FrameCrossing, FindsTheHoleThatAnArcGoesThrough) {
  // A quarter turn of 2 in radius from FS 102.5 on meets FS 104 where sin is 3/4, at BL
  // 2 - 2 root 7/4 and 2 asin(3/4) along the arc; the drawn corner is at FS 104.5, BL 0.
  const double bl = 2 - std::sqrt(7.0) / 2;
  ProjectSections sections = through_frame(
      "{name: hole, outline: [[-1, 9], [2, 9], [2, 11], [-1, 11]], edge: bare}", "tube-nylon-1/4",
      "100, 0, 10", "104.5, 8, 10", "[{at: [104.5, 0, 10], bend: 2}]");
  const ProjectText project(sections);
  ASSERT_EQ(project.route("route").crossings.size(), 1u);
  EXPECT_NEAR(project.route("route").crossings[0].distance_in, 2.5 + 2 * std::asin(0.75),
              rounding_in);
  EXPECT_NEAR(project.route("route").crossings[0].at.y, bl, rounding_in);
  EXPECT_EQ(only(project.judged("frame-crossing")).with, "hole");
}

TEST(FrameCrossing, FailsALineThroughTheWebAndNamesTheNearestHole) {
  const Judgement judgement =
      only_crossing(through_frame(round_hole("1.0"), "tube-nylon-1/4", "100, 3, 14", "108, 3, 14"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "F4");
  // 3-4-5: 5 in from the hole's centre, 4.5 from its edge, and half a line more.
  EXPECT_NEAR(*judgement.value, -4.625, rounding_in);
  EXPECT_EQ(*judgement.limit, 0);
  EXPECT_NEAR(*judgement.distance_in, 4, rounding_in);
  EXPECT_EQ(judgement.at, (Vec3{104, 3, 14}));
  EXPECT_EQ(judgement.message, "goes through the web of frame F4, where there is no hole");
  EXPECT_NE(judgement.mend.find("toward hole hole"), std::string::npos) << judgement.mend;
}

TEST(FrameCrossing, AsksForAHoleWhereAFrameHasNone) {
  const Judgement judgement = only_crossing(through_frame("", "tube-nylon-1/4"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.25, rounding_in);
  EXPECT_EQ(judgement.mend, "make a hole there with a grommet, or lead the line round the frame");
}

TEST(FrameCrossing, SaysNothingOfALineThatPassesOutsideTheOutlineOrStopsShort) {
  EXPECT_TRUE(
      judged(through_frame("", "wire-1/4", "100, 6.2, 10", "108, 6.2, 10"), "frame-crossing")
          .empty());
  EXPECT_TRUE(judged(through_frame("", "wire-1/4", "100, 0, 10", "103.9, 0, 10"), "frame-crossing")
                  .empty());
}

TEST(FrameCrossing, LeavesAnEndFittingInAFrameAlone) {
  EXPECT_TRUE(
      judged(through_frame("", "wire-1/4", "100, 0, 10", "104, 0, 10"), "frame-crossing").empty());
}

TEST(FrameCrossing, LetsALineLieNearAnEdgeThatIsGuarded) {
  for (const std::string guard : {"edge: edge-trim", "edge: grommet", "edge: bushing"}) {
    const Judgement judgement = only_crossing(through_frame(round_hole("0.6", guard), "wire-1/4"));
    EXPECT_EQ(judgement.verdict, Verdict::pass) << guard;
    EXPECT_EQ(judgement.message, "guarded in hole hole");
  }
}

TEST(FrameCrossing, TakesAFairleadInABareHoleForAGuard) {
  const Judgement judgement = only_crossing(
      through_frame(round_hole("0.6"), "cable-7x19-1/8-steel", "100, 0, 10", "108, 0, 10",
                    "[{at: [104, 0, 10], hold: fairlead, through: hole, bore: 0.19}]"));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_EQ(judgement.message, "guarded in hole hole");
}

TEST(FrameCrossing, DoesNotTakeAClampForAGuard) {
  const Judgement judgement =
      only_crossing(through_frame(round_hole("0.6"), "wire-1/4", "100, 0, 10", "108, 0, 10",
                                  "[{at: [104, 0, 10], hold: clamp, to: F4, through: hole}]"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
}

// No preload on strip or grommet: AC 43.13-1B para 11-115 [verified].
TEST(FrameCrossing, WarnsOfALineThatPressesOnItsGrommet) {
  // A 3/8 in bore in a 5/8 in hole leaves a wall of 1/8. Drawn 0.0625 off the middle the 1/4 in
  // line lies against the bore; 0.01 more presses.
  const std::string hole = round_hole("0.625", "edge: grommet, bore: 0.375");
  const Judgement against =
      only_crossing(through_frame(hole, "wire-1/4", "100, 0, 10.0625", "108, 0, 10.0625"));
  EXPECT_EQ(against.verdict, Verdict::pass);
  EXPECT_NEAR(*against.value, 0.125, rounding_in);
  EXPECT_NEAR(*against.limit, 0.125, rounding_in);
  const Judgement pressing =
      only_crossing(through_frame(hole, "wire-1/4", "100, 0, 10.0725", "108, 0, 10.0725"));
  EXPECT_EQ(pressing.verdict, Verdict::warn);
  EXPECT_NEAR(*pressing.margin(), -0.01, rounding_in);
  EXPECT_EQ(pressing.mend, "move the line 0.010 in toward the middle of the hole");
}

TEST(FrameCrossing, AllowsTheBuildToleranceBeforeALinePressesOnItsGrommet) {
  ProjectSections sections = through_frame(round_hole("0.625", "edge: grommet, bore: 0.375"),
                                           "wire-1/4", "100, 0, 10.12", "108, 0, 10.12");
  sections.build_tolerance = "0.06";  // 0.0575 deeper than the bore
  EXPECT_EQ(only_crossing(sections).verdict, Verdict::pass);
}

TEST(FrameCrossing, FailsALineThatCutsThroughItsGrommetToTheSheet) {
  const Judgement judgement =
      only_crossing(through_frame(round_hole("0.625", "edge: grommet, bore: 0.375"), "wire-1/4",
                                  "100, 0, 10.2", "108, 0, 10.2"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.3125 - 0.2 - 0.125, rounding_in);
}

TEST(FrameCrossing, FailsALineThickerThanTheBore) {
  const Judgement judgement =
      only_crossing(through_frame(round_hole("0.625", "edge: grommet, bore: 0.2"), "wire-1/4"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.2 - 0.25, rounding_in);
  EXPECT_EQ(*judgement.limit, 0);
  EXPECT_EQ(judgement.message,
            "the line, 0.250 in across, does not go through the 0.200 in bore in hole hole");
  EXPECT_EQ(judgement.mend, "fit a guide with a bore over 0.250 in");
}

TEST(FrameCrossing, LetsALineFillItsBoreExactly) {
  EXPECT_EQ(
      only_crossing(through_frame(round_hole("0.625", "edge: grommet, bore: 0.25"), "wire-1/4"))
          .verdict,
      Verdict::pass);
}

TEST(FrameCrossing, MeasuresASleeveAndNotTheCableInIt) {
  ProjectSections sections = through_frame(round_hole("1.139"), "cable-7x19-1/8-steel");
  EXPECT_EQ(only_crossing(sections).verdict, Verdict::pass);
  sections.routes =
      "  - {name: route, system: cable, line: cable-7x19-1/8-steel, from: forward, to: aft,\n"
      "     sleeves: [{from: 2, to: 6, bore: 0.17, outside: 0.25}]}\n";
  const Judgement judgement = only_crossing(sections);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 0.5695 - 0.125, rounding_in);
}

constexpr const char* two_holes =
    "{name: left, centre: [-3, 10], diameter: 2, edge: bare}, "
    "{name: right, centre: [3, 10], diameter: 2, edge: bare}";

TEST(FrameCrossing, FailsAPointThatNamesAnotherHoleThanTheLineTakes) {
  const auto judgements = judged(through_frame(two_holes, "tube-nylon-1/4", "100, 3, 10",
                                               "108, 3, 10", "[{at: [104, 3, 10], through: left}]"),
                                 "frame-crossing");
  EXPECT_EQ(judgements.size(), 2u);
  EXPECT_EQ(only(with(judgements, "right")).verdict, Verdict::pass);
  const Judgement wrong = only(with(judgements, "left"));
  EXPECT_EQ(wrong.verdict, Verdict::fail);
  EXPECT_EQ(wrong.message, "said to go through hole left, but passes the frame by hole right");
}

TEST(FrameCrossing, FailsAPointWhoseFrameTheLineDoesNotPass) {
  const ProjectSections sections =
      through_frame(two_holes, "tube-nylon-1/4", "100, 3, 10", "103, 3, 10",
                    "[{at: [102, 3, 10], through: left}]");
  const Judgement wrong = only_crossing(sections);
  EXPECT_EQ(wrong.verdict, Verdict::fail);
  EXPECT_EQ(wrong.message, "said to go through hole left, but the line does not pass that frame");
  EXPECT_NEAR(*wrong.distance_in, 2, rounding_in);
  EXPECT_EQ(wrong.location.line, line_number(sections.text(), "through: left"));
}

TEST(FrameCrossing, SaysOnceThatALineMissesItsHoleForTheWeb) {
  const auto judgements = judged(through_frame(two_holes, "tube-nylon-1/4", "100, 0, 10",
                                               "108, 0, 10", "[{at: [104, 0, 10], through: left}]"),
                                 "frame-crossing");
  EXPECT_EQ(only(judgements).with, "F4");
}

TEST(FrameCrossing, JudgesEveryPassageThroughTheSameFrame) {
  const auto judgements =
      judged(through_frame(two_holes, "tube-nylon-1/4", "100, -3, 10", "100, 3, 10",
                           "[{at: [107, -3, 10], bend: 1}, {at: [107, 3, 10], bend: 1}]"),
             "frame-crossing");
  ASSERT_EQ(judgements.size(), 2u);
  EXPECT_EQ(judgements[0].with, "left");
  EXPECT_EQ(judgements[1].with, "right");
  EXPECT_NEAR(*judgements[0].distance_in, 4, 0.02);
}

}  // namespace
}  // namespace linewright
