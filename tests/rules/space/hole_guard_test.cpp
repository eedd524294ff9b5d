// What guards the edge of a hole against which line.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>

#include "rules/project_text.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-9;
const std::string cable = "cable-7x19-1/8-steel";

/// A frame at FS 106 with one hole at BL 0, WL 10, and a line along BL 0 at `wl`.
ProjectSections in_hole(const std::string& hole, const std::string& line,
                        const std::string& points = "[]", double wl = 10,
                        const std::string& more = "") {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 106, thickness: 0.032, outline: [[-20, -20], [20, -20], [20, "
      "40], [-20, 40]], holes: [{name: H, centre: [0, 10], " +
      hole + "}]}]\n";
  const std::string height = std::to_string(wl);
  sections.nodes = held_node("a", "100, 0, " + height) + held_node("b", "112, 0, " + height);
  const bool is_cable = line.starts_with("cable");
  const std::string system = is_cable ? "cable" : line.starts_with("wire") ? "wire" : "vent";
  sections.routes = "  - {name: line, system: " + system + ", line: " + line +
                    ", from: a, to: b, points: " + points +
                    (is_cable ? ", tension: {rigged: 40 lbf, limit_load: 150 lbf}" : "") + more +
                    "}\n";
  return sections;
}

Judgement crossing(const ProjectSections& sections) {
  return only(judged(sections, "frame-crossing"));
}

const std::string moves = ", travel: {forward: 1, aft: 1}";
const std::string stays = ", travel: {forward: 0, aft: 0}";

TEST(HoleGuard, NoTrimGrommetOrBushingByItselfGuardsACableThatMoves) {
  // 0.01 in from the edge: 1 - 0.9205 - 0.0695.
  for (const auto& [edge, word] :
       {std::pair{"edge-trim", "edge trim"}, {"grommet", "grommet"}, {"bushing", "bushing"}}) {
    SCOPED_TRACE(edge);
    const std::string hole = std::string("diameter: 2, edge: ") + edge;
    const Judgement moving = crossing(in_hole(hole, cable, "[]", 9.0795, moves));
    EXPECT_EQ(moving.verdict, Verdict::warn);
    EXPECT_NEAR(*moving.value, 0.01, rounding_in);
    EXPECT_EQ(moving.message, std::string("close to the edge of hole H, whose ") + word +
                                  " does not guard a cable that moves");
    const Judgement unstated = crossing(in_hole(hole, cable, "[]", 9.0795));
    EXPECT_EQ(unstated.verdict, Verdict::warn);
    EXPECT_TRUE(unstated.message.ends_with("a cable whose travel is not stated"));
  }
  const std::string trim = "diameter: 2, edge: edge-trim";
  EXPECT_EQ(crossing(in_hole(trim, cable, "[]", 9.0795, stays)).verdict, Verdict::pass);
  EXPECT_EQ(crossing(in_hole(trim, "wire-1/4", "[]", 9.2)).verdict, Verdict::pass);
}

TEST(HoleGuard, ACableThatMovesChafesThroughTrim) {
  // 0.0005 in from the edge: 1 - 0.93 - 0.0695.
  const auto worst = [](const std::string& travel) {
    Verdict found = Verdict::pass;
    for (const Judgement& judgement :
         judged(in_hole("diameter: 2, edge: edge-trim", cable, "[]", 9.07, travel), "chafe"))
      found = std::max(found, judgement.verdict);
    return found;
  };
  EXPECT_EQ(worst(moves), Verdict::fail);
  EXPECT_EQ(worst(stays), Verdict::pass);
}

TEST(HoleGuard, AFairleadOrBushingThatLeadsItGuardsAMovingCableAGrommetDoesNot) {
  const std::string bare = "diameter: 0.5, edge: bare";
  const auto led = [](const std::string& hold) {
    return "[{at: [106, 0, 10], hold: " + hold + ", through: H, bore: 0.19}]";
  };
  EXPECT_EQ(crossing(in_hole(bare, cable, led("fairlead"), 10, moves)).verdict, Verdict::pass);
  EXPECT_EQ(crossing(in_hole(bare, cable, led("bushing"), 10, moves)).verdict, Verdict::pass);
  const Judgement grommet = crossing(in_hole(bare, cable, led("grommet"), 10, moves));
  EXPECT_EQ(grommet.verdict, Verdict::warn);
  EXPECT_EQ(crossing(in_hole(bare, cable, led("grommet"), 10, stays)).verdict, Verdict::pass);
}

TEST(HoleGuard, ASleeveOnTrimGuardsAMovingCable) {
  const std::string sleeve = moves + ", sleeves: [{from: 2, to: 10, bore: 0.17, outside: 0.25}]";
  EXPECT_EQ(crossing(in_hole("diameter: 2, edge: edge-trim", cable,
                             "[{at: [104, 0, 9.2], hold: clamp}]", 9.2, sleeve))
                .verdict,
            Verdict::pass);
}

TEST(HoleGuard, AFairleadOnABracketStandsWhereItsPointIs) {
  // The hole's middle is 1.2 in above; its edge 0.2305 in below the cable.
  const auto at = [](double wl) {
    const std::string point =
        "[{at: [106, 0, " + std::to_string(wl) + "], hold: fairlead, through: H, bore: 0.19}]";
    return crossing(in_hole("diameter: 3, edge: bare", cable, point, wl, moves));
  };
  EXPECT_EQ(at(8.8).verdict, Verdict::pass);
  EXPECT_EQ(at(11.2).verdict, Verdict::pass);
  // Half of its bore is 0.095 in: at 1.42 in from the middle it reaches past the edge.
  const Judgement past = at(11.42);
  EXPECT_EQ(past.verdict, Verdict::warn);
  EXPECT_EQ(past.message,
            "close to the bare edge of hole H, whose fairlead does not keep the line off it");
}

TEST(HoleGuard, AHoleWithNoRoomForAGrommetIsNoGuardedHole) {
  // A 1/4 in line; MS35489 grommets have a sixteenth of rubber, so that 3/8 in will do.
  const std::string point = "[{at: [106, 0, 10], hold: grommet, through: H}]";
  for (const std::string& points : {point, std::string("[]")}) {
    const Judgement tight =
        crossing(in_hole("diameter: 0.36, edge: grommet", "tube-nylon-1/4", points));
    EXPECT_EQ(tight.verdict, Verdict::warn);
    EXPECT_NEAR(*tight.value, 0.11, rounding_in);
    EXPECT_EQ(*tight.limit, 0.125);
    EXPECT_EQ(tight.message,
              "hole H, 0.360 in wide, leaves no room for a grommet round a line of 0.250 in");
    EXPECT_EQ(crossing(in_hole("diameter: 0.375, edge: grommet", "tube-nylon-1/4", points)).verdict,
              Verdict::pass);
  }
  for (const std::string edge : {"bushing", "edge-trim"}) {
    EXPECT_EQ(crossing(in_hole("diameter: 0.312, edge: " + edge, "tube-nylon-1/4")).verdict,
              Verdict::warn);
    EXPECT_EQ(crossing(in_hole("diameter: 0.3125, edge: " + edge, "tube-nylon-1/4")).verdict,
              Verdict::pass);
  }
  // A stated bore needs a wall as well.
  EXPECT_EQ(
      crossing(in_hole("diameter: 0.36, edge: grommet, bore: 0.355", "tube-nylon-1/4")).verdict,
      Verdict::warn);
  EXPECT_EQ(
      crossing(in_hole("diameter: 0.42, edge: grommet, bore: 0.355", "tube-nylon-1/4")).verdict,
      Verdict::pass);
}

TEST(HoleGuard, ALineDrawnIntoAGrommetOfNoStatedBorePressesOnIt) {
  // 0.04 in from the edge of the hole, where a sixteenth is rubber.
  const Judgement pressed =
      crossing(in_hole("diameter: 1, edge: grommet", "tube-nylon-1/4", "[]", 10.335));
  EXPECT_EQ(pressed.verdict, Verdict::warn);
  EXPECT_EQ(pressed.message, "presses on the guard of hole H");
  EXPECT_EQ(crossing(in_hole("diameter: 1, edge: grommet", "tube-nylon-1/4", "[]", 10.3)).verdict,
            Verdict::pass);
}

// In the middle already, a line can come no nearer to it: the hole is small for what is built.
TEST(HoleGuard, ALineInTheMiddleIsNotSentThere) {
  const auto in_half_inch = [](const std::string& hole, const std::string& tolerance) {
    ProjectSections sections = in_hole(hole, "tube-nylon-1/4");
    sections.build_tolerance = tolerance;
    return crossing(sections);
  };
  const Judgement pressed = in_half_inch("diameter: 1/2, edge: grommet, bore: 9/32", "0.13");
  EXPECT_NE(pressed.verdict, Verdict::pass);
  EXPECT_EQ(pressed.mend,
            "make the hole 0.510 in wide or more, or state a smaller `build_tolerance` where lines "
            "are led truer");
  EXPECT_EQ(in_half_inch("diameter: 0.51, edge: grommet, bore: 9/32", "0.13").verdict,
            Verdict::pass);
}

TEST(HoleGuard, ARolledEdgeIsAKindOfItsOwn) {
  const std::string rolled = "diameter: 0.9, edge: rolled";
  for (const std::string line : {"wire-1/4", "tube-nylon-1/4"}) {
    const Judgement near = crossing(in_hole(rolled, line));
    // AC 43.13-1B CHG 1 para 11-115 wants a grommet at any edge of a hole, and leaves out none.
    EXPECT_EQ(near.verdict, line == "wire-1/4" ? Verdict::fail : Verdict::warn);
    EXPECT_EQ(near.message, "close to the rolled edge of hole H");
    const bool practice = near.source.find("common practice") != std::string::npos;
    EXPECT_EQ(practice, line != "wire-1/4") << near.source;
    EXPECT_EQ(crossing(in_hole("diameter: 1, edge: rolled", line)).verdict, Verdict::pass);
    const Judgement touching = crossing(in_hole(rolled, line, "[]", 10.33));
    EXPECT_EQ(touching.verdict, Verdict::fail);
    EXPECT_EQ(touching.message, "touches the rolled edge of hole H");
  }
  const Judgement moving = crossing(in_hole("diameter: 1.1, edge: rolled", cable, "[]", 10, moves));
  EXPECT_EQ(moving.verdict, Verdict::warn);
  EXPECT_EQ(*moving.limit, 0.5);
}

TEST(HoleGuard, ATurnedEdgeIsNeverJudgedMilderThanABareOneByARegulation) {
  for (const std::string line : {"wire-1/4", "tube-nylon-1/4", "tube-aluminium-1/4"})
    for (const double diameter : {0.5, 0.8, 0.99, 1.01})
      for (const std::string kind : {"rolled", "flanged", "rolled, edge_radius: 0.1"}) {
        const std::string hole = fmt::format("diameter: {}, edge: ", diameter);
        const Judgement turned = crossing(in_hole(hole + kind, line));
        const Judgement bare = crossing(in_hole(hole + "bare", line));
        EXPECT_EQ(turned.verdict, bare.verdict) << line << hole << kind;
      }
}

TEST(HoleGuard, ATurnedEdgeIsCalledByItsKindAndRadius) {
  EXPECT_EQ(crossing(in_hole("diameter: 0.9, edge: flanged", "tube-nylon-1/4")).message,
            "close to the flanged edge of hole H");
  EXPECT_EQ(
      crossing(in_hole("diameter: 0.9, edge: flanged, edge_radius: 0.1", "tube-nylon-1/4")).message,
      "close to the flanged edge (0.100 in radius) of hole H");
}

/// A cable through a hole of 0.5 in at FS 100, in a fairlead of this bore that stands in it.
std::string mends_in_fairlead(const std::string& guide) {
  ProjectSections sections;
  sections.structure =
      "  frames:\n    - {name: F1, station: 100, thickness: 0.032, outline: [[-10, 0], [10, 0], "
      "[10, 20], [-10, 20]], holes: [{name: F1-a, centre: [0, 10], diameter: 0.5, edge: bare}]}\n";
  sections.nodes =
      "  - {name: pedal, kind: pedal, at: [60, 0, 10], arm: {pivot: [60, 0, 6], axis: [0, 1, "
      "0]}}\n"
      "  - {name: horn, kind: horn, at: [140, 0, 10], arm: {pivot: [140, 4, 10], axis: [0, 0, "
      "1]}}\n";
  sections.routes =
      "  - {name: cable, system: cable, control: rudder, line: cable-7x19-1/8-steel, from: pedal, "
      "to: horn, tension: {rigged: 40 lbf}, travel: {forward: 2, aft: 2}, points: [" +
      guide + "]}\n";
  std::string mends;
  for (const std::string rule : {"clearance", "chafe"})
    for (const Judgement& each : judged(sections, rule)) mends += each.mend + "\n";
  return mends;
}

// "Lead it through a fairlead" mends nothing where it is in one.
TEST(HoleGuard, AsksForASmallerBoreWhereTheCableIsInAFairleadThatIsTooWide) {
  const std::string wide =
      mends_in_fairlead("{at: [100, 0, 10], hold: fairlead, through: F1-a, bore: 0.4}");
  EXPECT_NE(wide.find("fit a guide with a smaller bore there, or sleeve the cable"),
            std::string::npos)
      << wide;
  EXPECT_EQ(wide.find("through a fairlead"), std::string::npos) << wide;
  const std::string bare = mends_in_fairlead("{at: [100, 0, 10], through: F1-a}");
  EXPECT_NE(bare.find("lead the cable through a fairlead there"), std::string::npos) << bare;
}

/// How a cable of 1/8 in in a fairlead is got off the edge of a plate across it, so far behind it.
std::string mend_behind_fairlead(double behind_in, const std::string& bore = "0.19") {
  const std::string station = std::to_string(100 + behind_in);
  ProjectSections sections;
  sections.structure = "  channels: [{name: plate, thickness: 0.02, edge: bare, path: [[" +
                       station + ", -5, 9], [" + station +
                       ", 5, 9]], section: [[0, 0], [0, 0.91]]}]\n";
  sections.nodes = held_node("a", "60, 0, 10") + held_node("b", "140, 0, 10");
  sections.routes =
      "  - {name: cable, system: cable, line: " + cable +
      ", from: a, to: b, tension: {rigged: 40 lbf}, travel: {forward: 1, aft: 1}, points: [{at: "
      "[100, 0, 10], hold: fairlead, bore: " +
      bore + "}]}\n";
  return only(not_passed(judged(sections, "chafe"))).mend;
}

// A bore of more than twice the cable does not hold it [common practice, no source].
TEST(HoleGuard, TakesABoreOfTwiceTheCableForOneThatHoldsIt) {
  const std::string held = mend_behind_fairlead(0.5, "0.248");
  EXPECT_TRUE(held.starts_with("sleeve the cable there")) << held;
  const std::string loose = mend_behind_fairlead(0.5, "0.252");
  EXPECT_TRUE(loose.starts_with("fit a guide with a smaller bore there")) << loose;
}

// Within an inch of a guide's middle the cable is in it, or comes out of it [common practice, no
// source].
TEST(HoleGuard, AsksForNoOtherFairleadWithinAnInchOfOne) {
  const std::string in_it = mend_behind_fairlead(0.99);
  EXPECT_TRUE(in_it.starts_with("sleeve the cable there")) << in_it;
  const std::string behind_it = mend_behind_fairlead(1.01);
  EXPECT_TRUE(behind_it.starts_with("lead the cable through a fairlead there")) << behind_it;
}

}  // namespace
}  // namespace linewright
