// How far cables can move, and two lines beside each other.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// To the last figure of those worked by hand.
constexpr double figure_in = 1e-5;

Judgement only_chafe(const ProjectSections& sections) {
  return only(judged(sections, "chafe"));
}

/// 60 in of 1/8 in cable along FS from 100 at WL 10, and a rail across its middle whose surface is
/// `gap_in` below it.
ProjectSections cable_over_rail(double gap_in, const std::string& tension) {
  ProjectSections sections;
  const std::string level = std::to_string(10 - 0.0695 - 0.5 - gap_in);
  sections.structure = "  solids:\n    - {name: rail, cylinder: {from: [130, -5, " + level +
                       "], to: [130, 5, " + level + "], diameter: 1}}\n";
  sections.load_factor = "{positive: 3.8, negative: -1.5}";
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", "160, 0, 10");
  sections.routes =
      "  - {name: cable, system: cable, line: cable-7x19-1/8-steel, from: forward, to: aft" +
      tension + "}\n";
  return sections;
}

// w L²/(8 T) [verified: structures text on cables, eqs. 5.13 to 5.16] of 2.90 lb per 100 ft [from
// memory] over 60 in: 0.036250 in at 30 lbf and 0.054375 in at 20 lbf, at 1 g [calculated]. What it
// may not do: chafe, 14 CFR 23.685(a) [verified].
TEST(ChafeOfACable, IsLessTheTighterItIsRigged) {
  const Judgement slack = only_chafe(cable_over_rail(0.17, ", tension: {rigged: 20 lbf}"));
  EXPECT_EQ(slack.verdict, Verdict::fail);
  EXPECT_NEAR(*slack.limit, 3.8 * 0.054375, figure_in);
  EXPECT_NE(slack.source.find("23.685(a)"), std::string::npos);
  const Judgement taut = only_chafe(cable_over_rail(0.17, ", tension: {rigged: 30 lbf}"));
  EXPECT_EQ(taut.verdict, Verdict::pass);
  EXPECT_NEAR(*taut.limit, 3.8 * 0.036250, figure_in);
}

// Aluminium 12.8e-6 less steel 6.5e-6 per degF [verified: engineering tables] on an AE of 111,607
// lbf [verified, secondary: a wire-rope maker's stretch table]: 0.70312 lbf a degree [calculated].
TEST(ChafeOfACable, CountsTheColdThatSlackensIt) {
  ProjectSections sections = cable_over_rail(0.17, ", tension: {rigged: 30 lbf}");
  sections.temperature = "{min: 50 degF, rigged: 70 degF, max: 100 degF}";
  const Judgement judgement = only_chafe(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.limit, 3.8 * 0.036250 * 30 / (30 - 20 * 0.70312), 5 * figure_in);
}

TEST(ChafeOfACable, IsNotNothingOnceTheColdHasTakenAllTension) {
  ProjectSections sections = cable_over_rail(0.17, ", tension: {rigged: 30 lbf}");
  sections.temperature = "{min: 27.3 degF, rigged: 70 degF, max: 100 degF}";
  EXPECT_EQ(only_chafe(sections).verdict, Verdict::fail);
}

TEST(ChafeOfACable, IsUnknownWithoutItsTension) {
  const Judgement judgement = only_chafe(cable_over_rail(5, ""));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.route, "cable");
  EXPECT_EQ(judgement.message,
            "how far the line can move is not known: the rigged tension of cable is missing");
  EXPECT_EQ(judgement.mend, "state it in the project");
  EXPECT_NEAR(*judgement.distance_in, 30, 1e-9);
  EXPECT_FALSE(judgement.value);
}

ProjectSections two_cables(double gap_in) {
  ProjectSections sections = cable_over_rail(5, ", tension: {rigged: 30 lbf}");
  sections.structure.clear();
  sections.load_factor = "{positive: 1, negative: -1}";
  const std::string level = std::to_string(10 + 0.139 + gap_in);
  sections.nodes +=
      held_node("over-forward", "100, 0, " + level) + held_node("over-aft", "160, 0, " + level);
  sections.routes +=
      "  - {name: over, system: cable, line: cable-7x19-1/8-steel, from: over-forward, to: "
      "over-aft,\n"
      "     tension: {rigged: 20 lbf}}\n";
  return sections;
}

TEST(ChafeOfTwoLines, CountsBothReachesAndTheToleranceTwice) {
  const double reaches = 0.036250 + 0.054375;
  ProjectSections sections = two_cables(reaches + 0.121);
  sections.build_tolerance = "0.06";
  const Judgement passing = only_chafe(sections);
  EXPECT_EQ(passing.verdict, Verdict::pass);
  EXPECT_EQ(passing.route, "cable");
  EXPECT_EQ(passing.with, "over");
  EXPECT_NEAR(*passing.value, reaches + 0.001, 1e-6);
  EXPECT_NEAR(*passing.limit, reaches, figure_in);
  sections.nodes = two_cables(reaches + 0.119).nodes;
  const Judgement failing = only_chafe(sections);
  EXPECT_EQ(failing.verdict, Verdict::fail);
  EXPECT_NEAR(*failing.distance_in, 30, 0.1);
  EXPECT_EQ(failing.mend,
            "move the lines 0.001 in apart, support them closer, or sleeve both of them there");
}

ProjectSections with_more(ProjectSections sections, const std::string& upper,
                          const std::string& lower) {
  const auto add = [&sections](const std::string& to, const std::string& more) {
    sections.routes.insert(sections.routes.find(to) + to.size(), more);
  };
  add("tension: {rigged: 30 lbf}", lower);
  add("tension: {rigged: 20 lbf}", upper);
  return sections;
}

constexpr const char* stays = ", travel: {forward: 0, aft: 0}";
constexpr const char* runs = ", travel: {forward: 1, aft: 1}";
constexpr const char* sleeved = ", sleeves: [{from: 0, to: 60, bore: 0.17, outside: 0.2}]";

TEST(ChafeOfTwoLines, LetsThemTouchWhereOneOfTwoThatStayIsSleeved) {
  const ProjectSections sections = two_cables(0.05);
  EXPECT_EQ(only_chafe(with_more(sections, stays, stays)).verdict, Verdict::fail);
  EXPECT_TRUE(judged(with_more(sections, std::string(stays) + sleeved, stays), "chafe").empty());
}

// A steel cable that runs saws through the sleeve of another line, as through a bushing.
TEST(ChafeOfTwoLines, LetsACableThatRunsTouchOnlyInASleeveOfItsOwn) {
  const ProjectSections sections = two_cables(0.05);
  const auto found = [&](const std::string& upper, const std::string& lower) {
    const std::vector<Judgement> all = judged(with_more(sections, upper, lower), "chafe");
    return std::any_of(all.begin(), all.end(),
                       [](const Judgement& each) { return each.verdict == Verdict::fail; });
  };
  const std::string in_sleeve = std::string(stays) + sleeved;
  EXPECT_TRUE(found(in_sleeve, runs));
  EXPECT_TRUE(found(runs, in_sleeve));
  EXPECT_TRUE(found(in_sleeve, ""));
  EXPECT_TRUE(contains(only_chafe(with_more(sections, in_sleeve, runs)).mend,
                       "support them closer, or sleeve cable there"));
}

/// A tube of 24 in whose middle is 0.3 in under a lever that swings.
ProjectSections under_lever(const std::string& more) {
  ProjectSections sections;
  sections.structure =
      "  movers: [{name: lever, pivot: [112, 0, 14], axis: [0, 1, 0], radius: 0.2, sweep: [-5, "
      "5],\n"
      "    points: [[112, 0, 14], [112, 0, 10.625]]}]\n";
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "124, 0, 10");
  sections.routes =
      "  - {name: tube, system: vent, line: tube-nylon-1/4, from: a, to: b" + more + "}\n";
  return sections;
}

// A sleeve keeps a tube from being rubbed through; it does not keep it out of a control's way.
TEST(ChafeOfAMover, IsNoBetterForASleeve) {
  const std::string sleeve = ", sleeves: [{from: 0, to: 24, bore: 0.26, outside: 0.27}]";
  EXPECT_EQ(only_chafe(under_lever("")).verdict, Verdict::fail);
  const Judgement judgement = only_chafe(under_lever(sleeve));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "lever");
}

TEST(ChafeOfTwoLines, SaysNothingOfTwoWireBundles) {
  ProjectSections sections;
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "120, 0, 10") +
                   held_node("c", "100, 0, 10.3") + held_node("d", "120, 0, 10.3");
  sections.routes =
      "  - {name: one, system: wire, line: wire-1/4, from: a, to: b}\n"
      "  - {name: other, system: wire, line: wire-1/4, from: c, to: d}\n";
  EXPECT_TRUE(judged(sections, "chafe").empty());
}

TEST(ChafeOfTwoLines, LeavesOutTheSwingThatLinesOnOneTeeHaveInCommon) {
  const auto from_tee = [](const std::string& kind) {
    ProjectSections sections;
    sections.nodes = "  - {name: tee, kind: " + kind + ", at: [100, 0, 10]}\n" +
                     held_node("left", "108, -1.5, 10") + held_node("right", "108, 1.5, 10");
    sections.routes =
        "  - {name: to-left, system: static, line: tube-nylon-1/4, from: tee, to: left}\n"
        "  - {name: to-right, system: static, line: tube-nylon-1/4, from: tee, to: right}\n";
    return sections;
  };
  const Judgement hanging = only_chafe(from_tee("tee"));
  const Judgement held = only_chafe(from_tee("bulkhead"));
  EXPECT_EQ(hanging.with, "to-right");
  EXPECT_EQ(hanging.verdict, held.verdict);
  EXPECT_NEAR(*hanging.limit, *held.limit, 1e-6);
}

TEST(ChafeOfTwoLines, CountsALineThatOnlyPassesTheTee) {
  ProjectSections sections;
  sections.nodes = "  - {name: tee, kind: tee, at: [100, 0, 10]}\n" +
                   held_node("left", "108, -1.5, 10") + held_node("right", "108, 1.5, 10") +
                   held_node("a", "95, 0, 10.3") + held_node("b", "105, 0, 10.3");
  sections.routes =
      "  - {name: to-left, system: static, line: tube-nylon-1/4, from: tee, to: left}\n"
      "  - {name: to-right, system: static, line: tube-nylon-1/4, from: tee, to: right}\n"
      "  - {name: passing, system: static, line: tube-nylon-1/4, from: a, to: b}\n";
  const auto judgements = with(judged(sections, "chafe"), "passing");
  EXPECT_EQ(judgements.size(), 2u);
  for (const Judgement& judgement : judgements) EXPECT_EQ(judgement.verdict, Verdict::fail);
}

TEST(ChafeOfTwoLines, IsUnknownForTheLineThatIsNotKnownOnly) {
  ProjectSections sections = two_cables(0.2);
  const std::string stated = ",\n     tension: {rigged: 20 lbf}";
  sections.routes.erase(sections.routes.find(stated), stated.size());
  const Judgement judgement = only_chafe(sections);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.route, "over");
}

}  // namespace
}  // namespace linewright
