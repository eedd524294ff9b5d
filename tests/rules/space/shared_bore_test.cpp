// Several lines through one hole or one guide.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

struct LineAt {
  std::string line;
  double bl = 0;
  std::string points = "[]";
};

/// A frame at FS 106 with the holes given, and lines straight through it at WL 10.
ProjectSections through(const std::string& holes, const std::vector<LineAt>& lines) {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 106, thickness: 0.032, outline: [[-20, -20], [20, -20], [20, "
      "40], [-20, 40]], holes: [" +
      holes + "]}]\n";
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const std::string number = std::to_string(i + 1);
    const std::string bl = std::to_string(lines[i].bl);
    sections.nodes += held_node("a" + number, "100, " + bl + ", 10") +
                      held_node("b" + number, "112, " + bl + ", 10");
    const std::string system = lines[i].line.starts_with("cable")  ? "cable"
                               : lines[i].line.starts_with("wire") ? "wire"
                                                                   : "vent";
    sections.routes += "  - {name: w" + number + ", system: " + system +
                       ", line: " + lines[i].line + ", from: a" + number + ", to: b" + number +
                       ", points: " + lines[i].points + "}\n";
  }
  return sections;
}

/// The judgements of lines that lie, or cannot lie, beside others.
std::vector<Judgement> beside(const ProjectSections& sections) {
  std::vector<Judgement> found;
  for (const Judgement& judgement : judged(sections, "frame-crossing"))
    if (judgement.message.find("side by side") != std::string::npos) found.push_back(judgement);
  return found;
}

std::string hole(const std::string& rest) {
  return "{name: H, centre: [0, 10], " + rest + "}";
}

TEST(SharedBore, TwoBundlesNeedTheWidthOfBoth) {
  const std::vector<LineAt> two{{"wire-1/4", 0}, {"wire-1/4", 0.01}};
  const auto narrow = beside(through(hole("diameter: 0.5, edge: grommet, bore: 0.3125"), two));
  ASSERT_EQ(narrow.size(), 2u);
  EXPECT_EQ(narrow[0].verdict, Verdict::fail);
  EXPECT_EQ(narrow[0].route, "w1");
  EXPECT_EQ(narrow[1].route, "w2");
  EXPECT_EQ(narrow[0].with, "H");
  EXPECT_NEAR(*narrow[0].value, 0.3125 - 0.5, 1e-9);
  EXPECT_EQ(
      narrow[0].message,
      "has no room beside w2 in hole H: 0.312 in across, and side by side they take 0.500 in");
  for (const Judgement& fits :
       beside(through(hole("diameter: 0.75, edge: grommet, bore: 0.5"), two)))
    EXPECT_EQ(fits.verdict, Verdict::pass) << fits.message;
  EXPECT_EQ(beside(through(hole("diameter: 0.75, edge: grommet, bore: 0.499"), two))[0].verdict,
            Verdict::fail);
}

TEST(SharedBore, OtherKindsOfLineCountToo) {
  const auto found = beside(through(hole("diameter: 0.5, edge: grommet, bore: 0.3125"),
                                    {{"tube-nylon-1/4", 0}, {"wire-1/4", 0}}));
  ASSERT_EQ(found.size(), 2u);
  EXPECT_EQ(found[0].verdict, Verdict::fail);
}

TEST(SharedBore, AGrommetOfNoStatedBoreTakesItsWall) {
  const std::vector<LineAt> two{{"wire-1/4", 0}, {"wire-1/4", 0}};
  EXPECT_EQ(beside(through(hole("diameter: 0.62, edge: grommet"), two))[0].verdict, Verdict::fail);
  EXPECT_EQ(beside(through(hole("diameter: 0.625, edge: grommet"), two))[0].verdict, Verdict::pass);
}

TEST(SharedBore, AnOpenHoleIsSharedAsWell) {
  const std::vector<LineAt> two{{"wire-1/4", 0}, {"wire-1/4", 0}};
  EXPECT_EQ(beside(through(hole("diameter: 0.45, edge: bare"), two))[0].verdict, Verdict::fail);
  EXPECT_EQ(beside(through(hole("diameter: 1.5, edge: bare"), two))[0].verdict, Verdict::pass);
}

TEST(SharedBore, ASlotIsAsLongAsItIs) {
  const std::string slot =
      "{name: H, outline: [[-1, 9.8], [1, 9.8], [1, 10.2], [-1, 10.2]], edge: edge-trim}";
  EXPECT_TRUE(beside(through(slot, {{"wire-1/4", -0.2}, {"wire-1/4", 0.2}})).empty());
  const auto drawn_in_one =
      judged(through(slot, {{"wire-1/4", 0}, {"wire-1/4", 0.1}}), "frame-crossing");
  EXPECT_TRUE(std::any_of(drawn_in_one.begin(), drawn_in_one.end(),
                          [](const Judgement& each) { return each.verdict == Verdict::unknown; }));
}

TEST(SharedBore, LinesInHolesOfTheirOwnAreNotAsked) {
  EXPECT_TRUE(beside(through(hole("diameter: 0.5, edge: grommet, bore: 0.3125") +
                                 ", {name: G, centre: [1, 10], diameter: 0.5, edge: grommet, bore: "
                                 "0.3125}",
                             {{"wire-1/4", 0}, {"wire-1/4", 1}}))
                  .empty());
}

TEST(SharedBore, FairleadsSideBySideInAWideHoleHaveTheirOwnBores) {
  const auto fairlead = [](const std::string& bl, const std::string& through) {
    return "[{at: [106, " + bl + ", 10], hold: fairlead, " + through + "bore: 0.19}]";
  };
  const std::string cable = "cable-7x19-1/8-steel";
  const std::string wide = hole("diameter: 3, edge: bare");
  for (const std::string name : {"through: H, ", ""}) {
    for (const Judgement& apart : beside(through(
             wide, {{cable, -0.5, fairlead("-0.5", name)}, {cable, 0.5, fairlead("0.5", name)}})))
      EXPECT_EQ(apart.verdict, Verdict::pass) << apart.message;
    // Bores that overlap are one, and two cables of 0.139 in do not go through 0.19 in.
    const auto shared = beside(
        through(wide, {{cable, 0, fairlead("0", name)}, {cable, 0.15, fairlead("0.15", name)}}));
    EXPECT_TRUE(std::any_of(shared.begin(), shared.end(), [](const Judgement& each) {
      return each.verdict == Verdict::fail;
    })) << name;
  }
}

}  // namespace
}  // namespace linewright
