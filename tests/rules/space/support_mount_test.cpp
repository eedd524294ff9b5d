// A support must be where the part it is fixed to is.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A bundle at WL 10 past a rod of 1 in diameter that runs across at `rod_wl`, clamped to it.
ProjectSections clamped_to_rod(const std::string& rod_wl, const std::string& to = "rod") {
  ProjectSections sections;
  sections.structure = "  solids:\n    - {name: rod, cylinder: {from: [110, -5, " + rod_wl +
                       "], to: [110, 5, " + rod_wl + "], diameter: 1}}\n";
  sections.nodes =
      "  - {name: a, kind: end, at: [100, 0, 10], fixed: true}\n"
      "  - {name: b, kind: end, at: [120, 0, 10], fixed: true}\n";
  sections.routes =
      "  - {name: bundle, system: wire, line: wire-1/4, from: a, to: b, points: [{at: [110, 0, "
      "10], hold: clamp" +
      (to.empty() ? "" : ", to: " + to) + "}]}\n";
  return sections;
}

std::vector<Judgement> mounts(const ProjectSections& sections) {
  return ProjectText(sections).judged("support-mount");
}

// From axis to axis less the rod's half inch and the bundle's eighth.
// What a clamp on a stand-off spans, 2 in [common practice, no source].
TEST(SupportMount, PassesAtTwoInchesAndWarnsJustBeyond) {
  const std::vector<Judgement> at_limit = mounts(clamped_to_rod("12.625"));
  ASSERT_EQ(at_limit.size(), 1u);
  EXPECT_EQ(at_limit[0].verdict, Verdict::pass);
  EXPECT_NEAR(*at_limit[0].value, 2, 1e-9);
  const Judgement beyond = mounts(clamped_to_rod("12.635")).at(0);
  EXPECT_EQ(beyond.verdict, Verdict::warn);
  EXPECT_NEAR(*beyond.value, 2.01, 1e-9);
  EXPECT_EQ(beyond.with, "rod");
  EXPECT_NE(beyond.source.find("common practice, no source"), std::string::npos);
}

// No clamp or bracket reaches 6 in undrawn [the rule's own figure, no source].
TEST(SupportMount, FailsWhereNoBracketReaches) {
  const Judgement far = mounts(clamped_to_rod("60")).at(0);
  EXPECT_EQ(far.verdict, Verdict::fail);
  EXPECT_NEAR(*far.value, 49.375, 1e-9);
  EXPECT_EQ(*far.limit, 6);
  EXPECT_EQ(far.message, "the clamp on rod is 49.4 in away from it");
  EXPECT_EQ(far.mend, "name the part that holds it in `to`, or move the support to rod");
  EXPECT_NEAR(*far.distance_in, 10, 1e-9);
}

TEST(SupportMount, TakesASupportThatNamesNoPartAtItsWord) {
  EXPECT_TRUE(mounts(clamped_to_rod("60", "")).empty());
}

/// The same, clamped to the end of an arm of 4 in that turns by 30 degrees each way.
ProjectSections clamped_to_arm(const std::string& system, const std::string& line,
                               const std::string& hold = "clamp") {
  ProjectSections sections = clamped_to_rod("10");
  sections.structure =
      "  movers:\n    - {name: arm, pivot: [110, 0, 5], axis: [0, 1, 0], points: [[110, 0, 9]], "
      "radius: 0.5, sweep: [-30, 30]}\n";
  sections.routes = "  - {name: line, system: " + system + ", line: " + line +
                    ", from: a, to: b, points: [{at: [110, 0, 10], hold: " + hold +
                    ", to: arm}]}\n";
  return sections;
}

Judgement carried(const ProjectSections& sections) {
  for (const Judgement& judgement : mounts(sections))
    if (judgement.limit == 0.0 || judgement.message.find("moving part") != std::string::npos)
      return judgement;
  return {};
}

// A clamp 5 in from the axis goes 5 in from one end of 60 degrees to the other.
TEST(SupportMount, FailsWhereATubeIsClampedToWhatMoves) {
  for (const std::string line : {"tube-nylon-1/4", "tube-aluminium-1/4"}) {
    const Judgement judgement = carried(clamped_to_arm("vent", line));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_NEAR(judgement.value.value_or(0), 5, 1e-9);
    EXPECT_EQ(judgement.limit, 0);
    EXPECT_EQ(judgement.message,
              "the clamp on arm is on a moving part, which takes it 5.00 in along: it holds the "
              "line nowhere");
  }
}

TEST(SupportMount, KnowsNotWhetherALimpLineFollows) {
  EXPECT_EQ(carried(clamped_to_arm("wire", "wire-1/4")).verdict, Verdict::unknown);
  EXPECT_EQ(carried(clamped_to_arm("cable", "cable-7x19-1/8-steel", "fairlead")).verdict,
            Verdict::unknown);
}

// No clamp at an end fitting: AC 43.13-1B para 12-61 b [verified].
TEST(SupportMount, WarnsOfAClampOnTheFittingAtTheEndOfAnAirLine) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: port, kind: static-port, at: [100, 0, 10]}\n"
      "  - {name: altimeter, kind: instrument, at: [120, 0, 10]}\n";
  const auto clamped_at = [&](const std::string& station, const std::string& system) {
    sections.routes = "  - {name: main, system: " + system +
                      ", line: tube-nylon-1/4, from: port, to: altimeter, points: [{at: [" +
                      station + ", 0, 10], hold: clamp}]}\n";
    return mounts(sections);
  };
  const std::vector<Judgement> on_fitting = clamped_at("119.75", "static");
  ASSERT_EQ(on_fitting.size(), 1u);
  EXPECT_EQ(on_fitting[0].verdict, Verdict::warn);
  EXPECT_NEAR(*on_fitting[0].value, 0.25, 1e-9);
  EXPECT_EQ(on_fitting[0].with, "altimeter");
  EXPECT_EQ(on_fitting[0].message, "the clamp is 0.250 in from altimeter, on the fitting there");
  EXPECT_EQ(on_fitting[0].mend, "clamp the line itself, 0.500 in or more from altimeter");
  EXPECT_EQ(clamped_at("100.25", "static").at(0).with, "port");
  EXPECT_TRUE(clamped_at("119.5", "static").empty());
  EXPECT_TRUE(clamped_at("119.75", "vent").empty());
}

}  // namespace
}  // namespace linewright
