#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

// Lengths of tens of inches, read from short decimals.
constexpr double rounding_in = 1e-9;

std::string system_of(const std::string& line) {
  if (line.starts_with("wire")) return "wire";
  return line.starts_with("cable") ? "cable" : "static";
}

/// A straight line along FS from 100 to 130 at BL 0, WL 10, past the structure given.
ProjectSections past(const std::string& structure, const std::string& line,
                     const std::string& more = "points: []") {
  ProjectSections sections;
  sections.structure = structure;
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", "130, 0, 10");
  const bool is_cable = system_of(line) == "cable";
  if (is_cable) sections.rest = weightless_cable_lines;
  sections.routes = "  - {name: route, system: " + system_of(line) + ", line: " + line +
                    ", from: forward, to: aft,\n     " + more +
                    (is_cable ? ", tension: {rigged: 100 lbf}" : "") + "}\n";
  return sections;
}

/// A rod across the line, 1 in thick, its surface `gap_in` above the 1/4 in line.
std::string rod_above(double gap_in, double station = 115) {
  const std::string level = std::to_string(10 + 0.125 + 0.5 + gap_in);
  return "  solids:\n    - {name: rod, cylinder: {from: [" + std::to_string(station) + ", -5, " +
         level + "], to: [" + std::to_string(station) + ", 5, " + level + "], diameter: 1}}\n";
}

/// A horn that hangs, unmoving to a hundredth of a degree, with its tip `gap_in` above the line.
std::string horn_above(double gap_in) {
  const std::string tip = std::to_string(10 + 0.125 + 0.5 + gap_in);
  return "  movers:\n    - {name: horn, pivot: [115, 0, 20], axis: [0, 1, 0], points: [[115, 0, "
         "20], "
         "[115, 0, " +
         tip + "]], radius: 0.5, sweep: [-0.01, 0.01]}\n";
}

Judgement only_clearance(const ProjectSections& sections) {
  return only(judged(sections, "clearance"));
}

struct Limit {
  std::string line;
  std::string neighbour;  ///< "rod", "rod at support", "horn"
  double limit;
  Verdict broken;
};

std::ostream& operator<<(std::ostream& stream, const Limit& limit) {
  return stream << limit.line << " to " << limit.neighbour;
}

class ClearanceLimit : public testing::TestWithParam<Limit> {
 protected:
  /// The judgement at `gap_in`, for lines that are 1/4 in thick at the most.
  Judgement at(double gap_in) const {
    const std::string& neighbour = GetParam().neighbour;
    if (neighbour == "horn") return only_clearance(past(horn_above(gap_in), GetParam().line));
    // Over the clamp at 115; the rod falls away from the line before the zone of 1 in ends.
    const bool at_support = neighbour == "rod at support";
    return only_clearance(past(rod_above(gap_in, at_support ? 115 : 108), GetParam().line,
                               "points: [{at: [115, 0, 10], hold: clamp}]"));
  }
};

TEST_P(ClearanceLimit, PassesExactlyAtItAndIsBrokenJustInside) {
  const double limit = GetParam().limit;
  // A mover is swollen by what its steps of sweep may miss, under 0.005 in.
  const double swelling = GetParam().neighbour == "horn" ? 0.005 : 0;
  const Judgement passing = at(limit + swelling);
  EXPECT_EQ(passing.verdict, Verdict::pass);
  EXPECT_NEAR(*passing.value, limit + swelling / 2, swelling / 2 + rounding_in);
  EXPECT_EQ(*passing.limit, limit);
  EXPECT_TRUE(passing.mend.empty());
  const Judgement broken = at(limit - 0.001);
  EXPECT_EQ(broken.verdict, GetParam().broken);
  EXPECT_EQ(*broken.limit, limit);
  EXPECT_FALSE(broken.mend.empty());
}

// Metal tube: 1/4 in to structure, 1/16 in at a support [from memory: SAE ARP994, MIL-H-5440], and
// 1/2 in to moving parts [common practice, no source]. Plastic tube, and bundles to structure,
// borrow those figures [common practice, no source]. Bundle to a moving control: 1/2 in [from
// memory: AC 43.13-1B para 11-125].
INSTANTIATE_TEST_SUITE_P(
    Rows, ClearanceLimit,
    testing::Values(Limit{"tube-aluminium-1/4", "rod", 0.25, Verdict::fail},
                    Limit{"tube-aluminium-1/4", "rod at support", 0.0625, Verdict::fail},
                    Limit{"tube-aluminium-1/4", "horn", 0.5, Verdict::warn},
                    Limit{"tube-nylon-1/4", "rod", 0.25, Verdict::warn},
                    Limit{"tube-nylon-1/4", "rod at support", 0.0625, Verdict::warn},
                    Limit{"tube-nylon-1/4", "horn", 0.5, Verdict::warn},
                    Limit{"wire-1/4", "rod", 0.0625, Verdict::warn},
                    Limit{"wire-1/4", "rod at support", 0.0625, Verdict::warn},
                    Limit{"wire-1/4", "horn", 0.5, Verdict::fail}));

// 1/2 in where either can move, 1/4 in next to a support [common practice, no source]; 0.139 in is
// the largest 1/8 in cable (AC 43.13-1B Table 7-3 [verified]).
TEST(Clearance, HoldsACableHalfAnInchOffAndAQuarterByAGuide) {
  // A 1/8 in cable may be 0.139 in across: 0.0555 in less in radius than a 1/4 in tube.
  const double thinner = 0.125 - 0.0695;
  const std::string guide = "points: [{at: [115, 0, 10], hold: fairlead, bore: 0.125}]";
  const auto at = [&](double gap, double station) {
    return only_clearance(past(rod_above(gap - thinner, station), "cable-weightless", guide));
  };
  EXPECT_EQ(at(0.5, 108).verdict, Verdict::pass);
  EXPECT_NEAR(*at(0.5, 108).value, 0.5, rounding_in);
  EXPECT_EQ(at(0.499, 108).verdict, Verdict::warn);
  EXPECT_EQ(at(0.25, 115).verdict, Verdict::pass);
  EXPECT_EQ(at(0.249, 115).verdict, Verdict::warn);
}

TEST(Clearance, SaysWhereWhichWayAndHowFar) {
  const ProjectSections sections = past(rod_above(0.1), "tube-aluminium-1/4",
                                        "points:\n       [{at: [110, 0, 10], hold: clamp}]");
  const Judgement judgement = only_clearance(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "rod");
  EXPECT_NEAR(*judgement.value, 0.1, rounding_in);
  EXPECT_EQ(*judgement.limit, 0.25);
  EXPECT_NEAR(*judgement.distance_in, 15, rounding_in);
  EXPECT_NEAR(judgement.at->x, 115, rounding_in);
  EXPECT_EQ(judgement.message, "too near to rod");
  EXPECT_EQ(judgement.mend, "move the line 0.150 in away, mainly down");
  EXPECT_EQ(judgement.location.file, "project.yaml");
  EXPECT_EQ(judgement.location.line, line_number(sections.text(), "{at: [110"));
}

TEST(Clearance, FailsAnyOverlapEvenWhereTheLimitIsOnlyPractice) {
  const Judgement touching = only_clearance(past(rod_above(-0.01), "tube-nylon-1/4"));
  EXPECT_EQ(touching.verdict, Verdict::fail);
  EXPECT_NEAR(*touching.value, -0.01, rounding_in);
  EXPECT_EQ(touching.message, "can be in rod");
  EXPECT_EQ(only_clearance(past(rod_above(0.01), "tube-nylon-1/4")).verdict, Verdict::warn);
}

TEST(Clearance, TakesTheBuildToleranceOff) {
  ProjectSections sections = past(rod_above(0.3), "tube-aluminium-1/4");
  sections.build_tolerance = "0.06";
  const Judgement judgement = only_clearance(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.24, rounding_in);
}

TEST(Clearance, ListsNeighboursWithinAnInchAndAHalfAndNoFarther) {
  EXPECT_EQ(judged(past(rod_above(1.49), "wire-1/4"), "clearance").size(), 1u);
  EXPECT_TRUE(judged(past(rod_above(1.51), "wire-1/4"), "clearance").empty());
}

TEST(Clearance, MissesNothingBecauseTheBuildToleranceIsWide) {
  ProjectSections sections = past(rod_above(1.8), "tube-aluminium-1/4");
  sections.build_tolerance = "1.6";
  EXPECT_EQ(only_clearance(sections).verdict, Verdict::fail);
}

TEST(Clearance, MeasuresFromTheSleeveAndNotTheCableInIt) {
  const std::string sleeve = "sleeves: [{from: 10, to: 20, bore: 0.17, outside: 0.25}]";
  EXPECT_NEAR(*only_clearance(past(rod_above(0.4), "cable-weightless", sleeve)).value, 0.4,
              rounding_in);
}

TEST(Clearance, CountsAMovingPartAtEveryPlaceOfItsSweep) {
  // An arm of 4 in hangs from WL 15, its tip 1 in over the line's middle; 36.87 degrees aft the
  // tip has risen. Upright from 180 degrees it comes down to the line.
  const auto arm = [](const std::string& sweep) {
    return "  movers:\n    - {name: arm, pivot: [115, 0, 15], axis: [0, 1, 0],\n       points: "
           "[[115, 0, 15], [115, 0, 19]], radius: 0.25, sweep: " +
           sweep + "}\n";
  };
  EXPECT_TRUE(judged(past(arm("[-30, 30]"), "wire-1/4"), "clearance").empty());
  const Judgement low = only_clearance(past(arm("[-30, 200]"), "wire-1/4"));
  EXPECT_EQ(low.verdict, Verdict::pass);
  // 230 degrees in 400 steps: the arm is swollen by 2 r sin(step / 4), 0.0201 in.
  EXPECT_NEAR(*low.value, 1 - 0.25 - 0.125 - 0.0201, 1e-4);
  EXPECT_NEAR(low.at->x, 115, 0.2);
}

TEST(Clearance, HidesNoOverlapBehindAShortfallFartherOff) {
  // Near the clamp the panel's edge is 0.005 in the line: a fail, 0.0675 short of 1/16. Farther
  // from it the panel is under 0.1 off: a warning only, though 0.16 short of 1/4.
  const std::string slanted =
      "  panels:\n    - {name: panel, corners: [[114.1, -5, 10.13], [114.1, 5, 10.13], [112.5, 5, "
      "10.23], [112.5, -5, 10.23]], thickness: 0.02}\n";
  const auto judgement = only(judged(
      past(slanted, "tube-nylon-1/4", "points: [{at: [115, 0, 10], hold: clamp}]"), "clearance"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "can be in panel panel");
}

TEST(Clearance, LeavesTheFrameALineGoesThroughToFrameCrossing) {
  const std::string frame =
      "  frames:\n    - {name: F4, station: 115, thickness: 0.032, outline: [[-6, 4], [6, 4], [6, "
      "16], [-6, 16]],\n       holes: [{name: hole, centre: [0, 10], diameter: 0.6, edge: "
      "bare}]}\n";
  // An inch and more along from its hole it counts again.
  const Judgement judgement = only_clearance(past(frame, "tube-nylon-1/4"));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_GT(*judgement.value, 0.8);
}

TEST(Clearance, CountsAFrameThatTheLineRunsAlong) {
  ProjectSections sections = past(
      "  frames:\n    - {name: F4, station: 100.3, thickness: 0.05, outline: [[-6, 4], [6, 4], [6, "
      "16], [-6, 16]]}\n",
      "tube-nylon-1/4");
  sections.nodes = held_node("forward", "100, -9, 10") + held_node("aft", "100, 9, 10");
  const Judgement judgement = only_clearance(sections);
  EXPECT_EQ(judgement.with, "F4");
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 0.3 - 0.025 - 0.125, rounding_in);
}

TEST(Clearance, LeavesAloneWhatAnEndFittingIsMountedOn) {
  // A plate that the line leaves square from its middle, at its forward end.
  const std::string plate =
      "  panels:\n    - {name: plate, corners: [[100, -3, 7], [100, 3, 7], [100, 3, 13], [100, -3, "
      "13]], thickness: 0.05}\n";
  EXPECT_EQ(only_clearance(past(plate, "tube-nylon-1/4")).verdict, Verdict::pass);
  ProjectSections hanging = past(plate, "tube-nylon-1/4");
  hanging.nodes =
      "  - {name: forward, kind: end, at: [100, 0, 10]}\n" + held_node("aft", "130, 0, 10");
  EXPECT_EQ(only_clearance(hanging).verdict, Verdict::fail);
}

TEST(Clearance, DoesNotCountGuardedEdges) {
  const auto stringer = [](const std::string& edge) {
    return "  channels:\n    - {name: stringer, path: [[110, 0, 9], [120, 0, 9]], section: [[0, "
           "0], "
           "[0, 0.75]], thickness: 0.05, edge: " +
           edge + "}\n";
  };
  const Judgement bare = only_clearance(past(stringer("bare"), "tube-nylon-1/4"));
  EXPECT_EQ(bare.verdict, Verdict::warn);
  EXPECT_NEAR(*bare.value, 0.25 - 0.025 - 0.125, rounding_in);
  EXPECT_EQ(bare.message, "too near to the edge of channel stringer");
  EXPECT_EQ(only_clearance(past(stringer("rolled"), "tube-nylon-1/4")).verdict, Verdict::warn);
  // The trim reaches 0.12 over the wall, whose round end stands up by half the sheet.
  const Judgement trimmed = only_clearance(past(stringer("edge-trim"), "tube-nylon-1/4"));
  EXPECT_NEAR(*trimmed.value, *bare.value + 0.12, rounding_in);
}

TEST(Clearance, KnowsNothingOfAMesh) {
  ProjectSections sections =
      past("  meshes:\n    - {name: tailcone, file: project.yaml, units: mm}\n", "tube-nylon-1/4");
  const Judgement judgement = only_clearance(sections);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.with, "tailcone");
  EXPECT_EQ(judgement.message, "the gap to mesh tailcone is not measured: its file was not read");
  EXPECT_EQ(judgement.location.line, line_number(sections.text(), "{name: tailcone"));
}

/// A slab across the line's way, `past_in` aft of its end at FS 130.
std::string slab_ahead(double past_in) {
  const std::string from = std::to_string(130 + past_in);
  return "  solids:\n    - {name: slab, box: {min: [" + from + ", -5, 5], max: [140, 5, 15]}}\n";
}

/// A line whose aft end, at FS 130, is held by nothing.
ProjectSections ending_before(const std::string& structure) {
  ProjectSections sections = past(structure, "tube-aluminium-1/4");
  sections.nodes =
      held_node("forward", "100, 0, 10") + "  - {name: aft, kind: end, at: [130, 0, 10]}\n";
  return sections;
}

TEST(ClearanceMend, MovesNoLineAlongItself) {
  const Judgement judgement = only_clearance(ending_before(slab_ahead(0.2)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.mend, "lead the line round it");
}

// The rod's surface is 0.1 in from the line's end: 0.06 aft and 0.08 to the side of it (3-4-5).
// With its 0.5 in and the line's 0.125 in the middles are 0.725 in apart, 0.435 along and 0.58
// across; 0.875 in apart they are 0.7592 across.
TEST(ClearanceMend, GivesTheMoveAcrossTheLine) {
  const Judgement judgement = only_clearance(
      ending_before("  solids:\n    - {name: rod, cylinder: {from: [130.435, -5, 10.58], to: "
                    "[130.435, 5, 10.58], diameter: 1}}\n"));
  EXPECT_NEAR(*judgement.value, 0.1, 1e-6);
  EXPECT_EQ(judgement.mend, "move the line 0.180 in away, mainly down");
}

TEST(ClearanceMend, LeadsALineRoundWhatItGoesThrough) {
  const Judgement judgement = only_clearance(
      past("  solids:\n    - {name: slab, box: {min: [110, -5, 5], max: [112, 5, 15]}}\n",
           "tube-aluminium-1/4"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.mend, "lead the line round it");
}

}  // namespace
}  // namespace linewright
