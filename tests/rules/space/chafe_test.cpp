#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "rules/project_text.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// To the last figure of those worked by hand.
constexpr double figure_in = 1e-5;

/// A wall across the line's way under it, its free edge `gap_in` below the 1/4 in line at WL 10.
std::string stringer(double gap_in, const std::string& from_fs, const std::string& to_fs,
                     const std::string& edge = "bare") {
  const std::string level = std::to_string(10 - 0.125 - 0.0125 - 0.75 - gap_in);
  return "  channels:\n    - {name: stringer, path: [[" + from_fs + ", 0, " + level + "], [" +
         to_fs + ", 0, " + level +
         "]], section: [[0, 0], [0, 0.75]], thickness: 0.025, edge: " + edge + "}\n";
}

/// 13.5 in of line along FS from 100 between two nodes that structure holds.
ProjectSections span_past(const std::string& structure, const std::string& line = "tube-nylon-1/4",
                          const std::string& more = "points: []") {
  ProjectSections sections;
  sections.structure = structure;
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", "113.5, 0, 10");
  const std::string system = line.starts_with("wire") ? "wire" : "static";
  sections.routes = "  - {name: route, system: " + system + ", line: " + line +
                    ", from: forward, to: aft,\n     " + more + "}\n";
  return sections;
}

Judgement only_chafe(const ProjectSections& sections) {
  return only(judged(sections, "chafe"));
}

// A slack string of 13.5 in with 0.081 in too much reaches root(3 13.5 0.081 / 8) = 0.64036 in, and
// no shape of that length more than 0.74053 in. Its sag at 1 g, 0.00943 in, comes on top of both.
constexpr double sag_in = 0.009428;
constexpr double likely_in = 0.64036 + sag_in;
constexpr double bound_in = 0.74053 + sag_in;

// 14 CFR 23.1325(b)(1)(ii) [verified]: no chafing of tubing.
TEST(Chafe, FailsWithinTheLikelyReach) {
  const ProjectSections sections = span_past(stringer(likely_in - 0.001, "102", "111.5"));
  const Judgement judgement = only_chafe(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "stringer");
  EXPECT_NEAR(*judgement.value, likely_in - 0.001, 1e-6);
  EXPECT_NEAR(*judgement.limit, likely_in, figure_in);
  EXPECT_NEAR(*judgement.distance_in, 6.75, 0.001);
  EXPECT_NEAR(judgement.at->x, 106.75, 0.001);
  EXPECT_EQ(judgement.message,
            "can reach the edge of channel stringer: gap 0.649 in, reach 0.650 in");
  EXPECT_NE(judgement.source.find("23.1325(b)(1)(ii)"), std::string::npos);
  EXPECT_EQ(judgement.location.line, line_number(sections.text(), "{name: route"));
}

// The same span between two clamps, in each of which the line has 0.02 in of play [common practice,
// no source].
TEST(Chafe, AddsThePlayOfClampsToTheReach) {
  ProjectSections sections =
      span_past(stringer(likely_in, "102", "111.5"), "tube-nylon-1/4",
                "points: [{at: [100, 0, 10], hold: clamp}, {at: [113.5, 0, 10], hold: clamp}]");
  sections.nodes = held_node("forward", "95, 0, 10") + held_node("aft", "118, 0, 10");
  const Judgement judgement = only(with(not_passed(judged(sections, "chafe")), "stringer"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.limit, likely_in + 0.02, 1e-4);
}

TEST(Chafe, WarnsBetweenTheLikelyReachAndTheBound) {
  for (const double gap : {likely_in + 0.001, 0.7, bound_in - 0.001}) {
    const Judgement judgement = only_chafe(span_past(stringer(gap, "102", "111.5")));
    EXPECT_EQ(judgement.verdict, Verdict::warn) << gap;
    EXPECT_NEAR(*judgement.value, gap, 1e-6);
    EXPECT_NEAR(*judgement.limit, bound_in, figure_in);
    EXPECT_NE(judgement.source.find("pulled tight"), std::string::npos);
  }
}

TEST(Chafe, PassesBeyondTheBoundWithItsMargin) {
  const Judgement judgement = only_chafe(span_past(stringer(bound_in + 0.001, "102", "111.5")));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_NEAR(*judgement.margin(), 0.001, figure_in);
  EXPECT_EQ(
      judgement.message,
      "out of reach of the edge of channel stringer: gap 0.751 in, reach 0.750 in at the most");
  EXPECT_TRUE(judgement.mend.empty());
}

TEST(Chafe, SaysNothingOfWhatIsHalfAnInchBeyondAllReach) {
  EXPECT_EQ(judged(span_past(stringer(bound_in + 0.495, "102", "111.5")), "chafe").size(), 1u);
  EXPECT_TRUE(judged(span_past(stringer(bound_in + 0.505, "102", "111.5")), "chafe").empty());
}

// SAE J844 type B has a braid in its wall; only figures of plain nylon are known.
TEST(Chafe, OfReinforcedNylonTubeIsUnknown) {
  const Judgement judgement =
      only_chafe(span_past(stringer(0.3, "102", "111.5"), "tube-nylon-3/8"));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.message,
            "how far the line can move is not known: the thermal expansion of tube-nylon-3/8 is "
            "missing");
  EXPECT_FALSE(judgement.mend.empty());
}

TEST(Chafe, MissesNothingBecauseTheBuildToleranceIsWide) {
  ProjectSections sections = span_past(stringer(bound_in + 0.8, "102", "111.5"));
  sections.build_tolerance = "0.9";
  EXPECT_EQ(only_chafe(sections).verdict, Verdict::warn);
}

TEST(Chafe, TakesTheBuildToleranceOff) {
  ProjectSections sections = span_past(stringer(bound_in + 0.05, "102", "111.5"));
  EXPECT_EQ(only_chafe(sections).verdict, Verdict::pass);
  sections.build_tolerance = "0.06";
  const Judgement judgement = only_chafe(sections);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, bound_in - 0.01, 1e-6);
}

TEST(Chafe, FindsABowToBeNothingAtTheSupports) {
  // A gap that fails in the middle passes within an inch of a support.
  EXPECT_EQ(only_chafe(span_past(stringer(0.45, "102", "111.5"))).verdict, Verdict::fail);
  const Judgement near = only_chafe(span_past(stringer(0.45, "99.5", "100.9")));
  EXPECT_EQ(near.verdict, Verdict::pass);
  // The corner of the wall is met a little past its end. There, d along, the ellipse has half its
  // width times root(1 - ((13.5 - 2 d) / 13.581)^2), and the sag is a parabola.
  const double d = *near.distance_in;
  EXPECT_NEAR(d, 0.9, 0.15);
  EXPECT_NEAR(*near.limit,
              0.74053 * std::sqrt(1 - std::pow((13.5 - 2 * d) / 13.581, 2)) +
                  sag_in * 4 * (d / 13.5) * (1 - d / 13.5),
              figure_in);
}

TEST(Chafe, WidensTheReachWithTheTemperatureRange) {
  // Nylon 5.5e-5 [from memory] over aluminium 1.28e-5 per degF [verified: engineering tables]: 50
  // degrees of heat make the surplus 0.109485 in, root(3 13.5 0.109485 / 8) = 0.74450.
  ProjectSections sections = span_past(stringer(0.7, "102", "111.5"));
  EXPECT_EQ(only_chafe(sections).verdict, Verdict::warn);
  sections.temperature = "{min: -20 degF, rigged: 70 degF, max: 120 degF}";
  const Judgement judgement = only_chafe(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.limit, 0.74450 + sag_in, figure_in);
}

TEST(Chafe, HasLimitsOfItsOwnForAWireBundle) {
  // 24 in of slack 0.00116 deflects half an inch (AC 43.13-1B para 11-118 [verified]); wires have
  // no sag. That they touch nothing that abrades is para 11-115 [verified].
  ProjectSections sections = span_past(stringer(0.4, "102", "122"), "wire-1/4");
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", "124, 0, 10");
  const Judgement judgement = only_chafe(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.limit, 0.5, 0.001);
  EXPECT_NE(judgement.source.find("11-115"), std::string::npos);
}

TEST(Chafe, LetsALineLieAgainstAnEdgeThatIsTrimmed) {
  const auto judgements = judged(span_past(stringer(0.3, "102", "111.5", "edge-trim")), "chafe");
  bool listed = false;
  for (const Judgement& judgement : judgements) {
    if (judgement.message ==
        "may lie against the edge of channel stringer, which is guarded there") {
      listed = true;
      EXPECT_EQ(judgement.verdict, Verdict::pass);
      EXPECT_NEAR(*judgement.value, 0.3, 1e-6);
    }
  }
  EXPECT_TRUE(listed);
}

TEST(Chafe, CountsTheWallThatTheTrimDoesNotCover) {
  // The trim reaches 0.12 in down the wall, whose rounded top takes the half sheet back.
  const auto judgements = judged(span_past(stringer(0.3, "102", "111.5", "edge-trim")), "chafe");
  const auto wall = [&] {
    for (const Judgement& judgement : judgements)
      if (judgement.message.starts_with("can reach channel stringer")) return judgement;
    return Judgement{};
  }();
  EXPECT_EQ(wall.verdict, Verdict::fail);
  EXPECT_NEAR(*wall.value, 0.3 + 0.12, 1e-6);
}

TEST(Chafe, DoesNotTakeARolledEdgeForAGuard) {
  EXPECT_EQ(only_chafe(span_past(stringer(0.3, "102", "111.5", "rolled"))).verdict, Verdict::fail);
}

TEST(Chafe, LetsALineInASleeveTouch) {
  const std::string structure = stringer(0.3, "104", "109");
  EXPECT_EQ(only_chafe(span_past(structure)).verdict, Verdict::fail);
  const auto sleeved = judged(span_past(structure, "tube-nylon-1/4",
                                        "sleeves: [{from: 2, to: 11, bore: 0.26, outside: 0.3}]"),
                              "chafe");
  for (const Judgement& judgement : sleeved) EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_FALSE(sleeved.empty());
}

TEST(Chafe, CountsWhatASleeveDoesNotCover) {
  const auto judgements =
      judged(span_past(stringer(0.3, "104", "109"), "tube-nylon-1/4",
                       "sleeves: [{from: 4, to: 6.75, bore: 0.26, outside: 0.3}]"),
             "chafe");
  ASSERT_FALSE(judgements.empty());
  const Judgement* worst = &judgements.front();
  for (const Judgement& judgement : judgements)
    if (judgement.verdict == Verdict::fail) worst = &judgement;
  EXPECT_EQ(worst->verdict, Verdict::fail);
  EXPECT_GE(*worst->distance_in, 6.75 - 1e-9);
}

std::string frame(const std::string& edge) {
  return "  frames:\n    - {name: F4, station: 106.75, thickness: 0.032, outline: [[-6, 4], [6, "
         "4], "
         "[6, 16], [-6, 16]],\n       holes: [{name: hole, centre: [0, 10], diameter: 1.2, edge: " +
         edge + "}]}\n";
}

TEST(Chafe, FailsAHoleEdgeThatTheLineCanReachInMidSpan) {
  const Judgement judgement = only_chafe(span_past(frame("bare")));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "F4");
  // The edge lies on chords within 0.0005 in of its circle.
  EXPECT_NEAR(*judgement.value, 0.6 - 0.125, 0.0006);
  EXPECT_EQ(judgement.message.substr(0, 26), "can reach the edge of hole");
  EXPECT_NE(judgement.mend.find("guard the edge"), std::string::npos);
}

TEST(Chafe, LetsALineTouchAGuardedHole) {
  for (const std::string edge : {"edge-trim", "grommet", "bushing"}) {
    for (const Judgement& judgement : judged(span_past(frame(edge)), "chafe"))
      EXPECT_EQ(judgement.verdict, Verdict::pass) << edge << ": " << judgement.message;
    EXPECT_FALSE(judged(span_past(frame(edge)), "chafe").empty());
  }
}

TEST(Chafe, LetsALineTouchTheFairleadInItsHole) {
  // A bore of 0.9 in is too wide to hold the line, which could reach the edge as if alone.
  const auto led = [](const std::string& station) {
    return judged(span_past(frame("bare"), "tube-nylon-1/4",
                            "points: [{at: [" + station +
                                ", 0, 10], hold: fairlead, through: hole, bore: 0.9}]"),
                  "chafe");
  };
  std::vector<std::string> messages;
  for (const Judgement& judgement : led("106.75")) {
    EXPECT_EQ(judgement.verdict, Verdict::pass) << judgement.message;
    messages.push_back(judgement.message);
  }
  EXPECT_EQ(std::count(messages.begin(), messages.end(),
                       "may lie against the edge of hole hole, which is guarded there"),
            1);
  // An inch along the fairlead is in no hole, and guards none.
  EXPECT_EQ(only(led("107.75")).verdict, Verdict::fail);
}

TEST(ChafeMend, SaysHowFarToMoveAndWhichWay) {
  const Judgement judgement = only_chafe(span_past(stringer(0.35, "104", "109")));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  // 0.64982 - 0.35, rounded up.
  EXPECT_TRUE(judgement.mend.ends_with("guard the edge, or move the line 0.400 in away, mainly up"))
      << judgement.mend;
}

TEST(ChafeMend, NamesThePlacesWhoseSpansAreShortEnoughOnBothSides) {
  // Half of a span of x in is 0.05485 x + half of its clamp's play of 0.02 in [common practice, no
  // source] + sag: 0.45 in allows 7.98 in at the most. So the clamp goes between 5.52 and 7.98 in.
  const Judgement judgement = only_chafe(span_past(stringer(0.45, "95", "118")));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  double first = 0;
  double last = 0;
  ASSERT_EQ(std::sscanf(judgement.mend.c_str(), "add a support between %lf and %lf in from forward",
                        &first, &last),
            2)
      << judgement.mend;
  EXPECT_NEAR(first, 5.52, 0.03);
  EXPECT_NEAR(last, 7.98, 0.03);
}

// 12.5 in keep 0.704 in off by the same sum, 13.5 in do not: the support may stand anywhere but in
// the inch before another one [common practice, no source].
TEST(ChafeMend, OffersNoSupportNearerThanAnInchToAnother) {
  const Judgement judgement = only_chafe(span_past(stringer(0.72, "95", "118")));
  EXPECT_TRUE(judgement.mend.starts_with("add a support between 1.00 and 12.5 in from forward"))
      << judgement.mend;
}

/// What mends so long a tube over an edge that half of its span would clear.
std::string mend_of_span(double length_in) {
  const auto past = [&](double gap_in) {
    ProjectSections sections = span_past(stringer(gap_in, "95", std::to_string(105 + length_in)));
    sections.nodes = held_node("forward", "100, 0, 10") +
                     held_node("aft", std::to_string(100 + length_in) + ", 0, 10");
    return only_chafe(sections);
  };
  return past(0.75 * *past(0.1).limit).mend;
}

// So long a span wants several supports [common practice, no source].
TEST(ChafeMend, OffersNoSingleSupportInMoreThanHundredAndFiftyInches) {
  EXPECT_TRUE(mend_of_span(149).starts_with("add a support between ")) << mend_of_span(149);
  EXPECT_EQ(mend_of_span(151).find("add a support"), std::string::npos) << mend_of_span(151);
}

TEST(ChafeMend, OffersNoSupportWhereNoOneSupportIsEnough) {
  const Judgement judgement = only_chafe(span_past(stringer(0.2, "95", "118")));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(judgement.mend.starts_with("guard the edge")) << judgement.mend;
}

TEST(ChafeMend, OffersAGuardOnlyForAnEdge) {
  ProjectSections sections = span_past(
      "  panels:\n    - {name: skin, corners: [[95, -5, 9.4], [118, -5, 9.4], [118, 5, 9.4], [95, "
      "5, "
      "9.4]], thickness: 0.025}\n");
  const Judgement judgement = only_chafe(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.mend.find("guard"), std::string::npos) << judgement.mend;
}

// The hole is 1.2 in wide: the line in its middle comes no farther from one side without coming
// nearer to the other.
TEST(ChafeMend, OffersNoMoveIntoTheOtherSideOfAHole) {
  const Judgement judgement = only_chafe(span_past(frame("bare")));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.mend.find("move the line"), std::string::npos) << judgement.mend;
  EXPECT_NE(judgement.mend.find("guard the edge, or make hole hole wider"), std::string::npos)
      << judgement.mend;
}

TEST(ChafeMend, OffersTheMoveWhereTheHoleHasTheRoom) {
  const Judgement judgement = only_chafe(span_past(
      "  frames:\n    - {name: F4, station: 106.75, thickness: 0.032, outline: [[-6, 4], "
      "[6, 4], [6, 16], [-6, 16]],\n       holes: [{name: hole, centre: [0, 8], diameter: "
      "5, edge: bare}]}\n"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NE(judgement.mend.find("guard the edge, or move the line"), std::string::npos)
      << judgement.mend;
  EXPECT_TRUE(judgement.mend.ends_with("away, mainly down")) << judgement.mend;
}

}  // namespace
}  // namespace linewright
