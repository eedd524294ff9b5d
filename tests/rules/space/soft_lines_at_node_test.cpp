// Two soft lines that part at one node bear on each other there until something holds them apart.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// Two lines from one union at FS 0, each clamped `aft` of it and `aside` to its side, and from
/// there on led apart.
std::vector<Judgement> parted(const std::string& line, const std::string& other_line, double aft,
                              double aside, const std::string& rule) {
  ProjectSections sections;
  sections.build_tolerance = "0.06";
  sections.nodes = held_node("union", "0, 0, 0") + held_node("left", "24, -9, 0") +
                   held_node("right", "24, 9, 0");
  const auto route = [&](const std::string& name, const std::string& of, double side) {
    return fmt::format(
        "  - {{name: {}, system: vent, line: {}, from: union, to: {},\n"
        "     points: [{{at: [{}, {}, 0], bend: 2, hold: clamp}}, {{at: [14, {}, 0], hold: "
        "clamp}}]}}\n",
        name, of, side < 0 ? "left" : "right", aft, side * aside, side * 5);
  };
  sections.routes = route("first", line, -1) + route("second", other_line, 1);
  std::vector<Judgement> found;
  for (const Judgement& judgement : ProjectText(sections).judged(rule))
    if (judgement.with_is_route) found.push_back(judgement);
  return found;
}

bool any_broken(const std::vector<Judgement>& judgements) {
  for (const Judgement& judgement : judgements)
    if (judgement.verdict != Verdict::pass) return true;
  return false;
}

TEST(SoftLinesAtOneNode, AreLeftAloneUpToTheirFirstSupports) {
  for (const std::string line : {"tube-nylon-1/4", "hose-rubber-1/4"})
    for (const std::string rule : {"chafe", "separation"})
      EXPECT_FALSE(any_broken(parted(line, line, 3, 1, rule))) << line << " " << rule;
}

TEST(SoftLinesAtOneNode, AreJudgedFarFromItHoweverLateTheFirstSupportIs) {
  EXPECT_TRUE(any_broken(parted("tube-nylon-1/4", "tube-nylon-1/4", 12, 1.5, "chafe")));
}

TEST(SoftLinesAtOneNode, MayNotLieInOnePlacePastTheFitting) {
  // At 4.8 degrees to each side they are a quarter of an inch apart only 1.5 in from the node.
  const Judgement judgement =
      only(parted("tube-nylon-1/4", "tube-nylon-1/4", 3, 0.25, "separation"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NE(judgement.message.find("past what the fitting explains"), std::string::npos);
}

TEST(SoftLinesAtOneNode, DoNotExcuseALineThatIsNotSoft) {
  EXPECT_TRUE(any_broken(parted("hose-rubber-1/4", "tube-aluminium-1/4", 4, 0.75, "chafe")));
  EXPECT_FALSE(any_broken(parted("hose-rubber-1/4", "hose-rubber-1/4", 4, 0.95, "chafe")));
}

}  // namespace
}  // namespace linewright
