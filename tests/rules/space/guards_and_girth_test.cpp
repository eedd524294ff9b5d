// What is on a line besides the line: sleeves that guard it, attachments that are thicker than it,
// guides that do or do not hold it, and how far a limp line can go.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "lines/motion/reach.hpp"
#include "lines/motion/sleeve_hold.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-6;
const std::string cable_line = "cable-7x19-1/8-steel";

/// A line of 20 in along FS from 0 at WL 10, held at both ends.
ProjectSections along_fs(const std::string& line, const std::string& more = "points: []") {
  ProjectSections sections;
  const std::string system = line.starts_with("cable")  ? "cable"
                             : line.starts_with("wire") ? "wire"
                                                        : "static";
  sections.nodes = held_node("forward", "0, 0, 10") + held_node("aft", "20, 0, 10");
  sections.routes = "  - {name: route, system: " + system + ", line: " + line +
                    ", from: forward, to: aft,\n     " + more + "}\n";
  return sections;
}

ProjectSections cable(const std::string& more) {
  return along_fs(cable_line, "tension: {rigged: 100 lbf, limit_load: 100 lbf}, " + more);
}

/// A thin upright strip along FS, its free upper edge at `level`.
std::string edge_below(double level, const std::string& from_fs, const std::string& to_fs) {
  const std::string foot = std::to_string(level - 0.75 - 0.0125);
  return "  channels:\n    - {name: strip, path: [[" + from_fs + ", 0, " + foot + "], [" + to_fs +
         ", 0, " + foot + "]], section: [[0, 0], [0, 0.75]], thickness: 0.025, edge: bare}\n";
}

std::string frame_with_bushing(const std::string& bore) {
  return "  frames:\n    - {name: F1, station: 10, thickness: 0.032, outline: [[-9, 0], [9, 0], "
         "[9, 20], [-9, 20]],\n       holes: [{name: F1-a, centre: [0, 10], diameter: 0.75, edge: "
         "bushing, bore: " +
         bore + "}]}\n";
}

bool any(const std::vector<Judgement>& judgements, Verdict verdict) {
  return std::any_of(judgements.begin(), judgements.end(),
                     [&](const Judgement& each) { return each.verdict == verdict; });
}

TEST(OverlappingSleeves, CountAtTheThickestWhicheverIsWrittenFirst) {
  const std::string thin = "{from: 2, to: 18, bore: 0.17, outside: 0.25}";
  const std::string thick = "{from: 4, to: 15, bore: 0.3, outside: 1.0}";
  for (const auto& both : {thin + ", " + thick, thick + ", " + thin}) {
    ProjectSections sections =
        cable("points: [{at: [10, 0, 10], through: F1-a}], sleeves: [" + both + "]");
    sections.structure = frame_with_bushing("0.5");
    const ProjectText project(sections);
    const PreparedRoute& route = project.route("route");
    EXPECT_NEAR(route.radius_in(3), 0.125, rounding_in);
    EXPECT_NEAR(route.radius_in(10), 0.5, rounding_in);
    EXPECT_NEAR(route.radius_in(16), 0.125, rounding_in);
    EXPECT_EQ(only(with(project.judged("frame-crossing"), "F1-a")).verdict, Verdict::fail);
  }
}

TEST(Attachments, AreAsThickAsTheyAreWhereverTheTravelTakesThem) {
  // 10 in along, 4 in long; forward is toward FS 0, where the route comes from.
  const std::string turnbuckle = "attached: [{kind: turnbuckle, at: 10, length: 4, diameter: 0.5}]";
  const ProjectText moving(cable("travel: {forward: 2, aft: 3}, " + turnbuckle));
  const PreparedRoute& route = moving.route("route");
  const double bare = route.line->largest_radius_in();
  for (const auto& [along, radius] :
       {std::pair{5.99, bare}, std::pair{6.0, 0.25}, std::pair{10.0, 0.25}, std::pair{15.0, 0.25},
        std::pair{15.01, bare}}) {
    EXPECT_NEAR(route.girth_radius_in(along), radius, rounding_in) << along;
    EXPECT_NEAR(route.radius_in(along), bare, rounding_in) << along;
  }
  EXPECT_NEAR(route.thickest_radius_in(), 0.25, rounding_in);
  const ProjectText unknown(cable(turnbuckle));
  EXPECT_NEAR(unknown.route("route").girth_radius_in(8), 0.25, rounding_in);
  EXPECT_NEAR(unknown.route("route").girth_radius_in(7.9), bare, rounding_in);
}

TEST(Attachments, CountForClearanceAndChafeOnlyWhereTheyCome) {
  const auto past_edge = [](const std::string& from_fs, const std::string& to_fs) {
    ProjectSections sections = cable(
        "travel: {forward: 2, aft: 3}, "
        "attached: [{kind: turnbuckle, at: 10, length: 4, diameter: 0.5}]");
    sections.structure = edge_below(9.76, from_fs, to_fs);
    return sections;
  };
  // The edge lies 0.24 in under the middle of the cable: the turnbuckle's 0.25 in cut into it.
  for (const auto& met : {past_edge("13", "14.5"), past_edge("6.5", "7.5")}) {
    const Judgement rubbed = only(judged(met, "chafe"));
    EXPECT_EQ(rubbed.verdict, Verdict::fail);
    EXPECT_EQ(rubbed.message.rfind("with its turnbuckle can reach ", 0), 0u) << rubbed.message;
    const Judgement near = only(judged(met, "clearance"));
    EXPECT_EQ(near.verdict, Verdict::fail);
    EXPECT_LT(*near.value, 0);
  }
  const Judgement missed = only(judged(past_edge("16", "18"), "chafe"));
  EXPECT_EQ(missed.verdict, Verdict::pass);
}

TEST(Attachments, CountBetweenTwoLines) {
  ProjectSections sections = cable(
      "travel: {forward: 1, aft: 1}, "
      "attached: [{kind: turnbuckle, at: 10, length: 4, diameter: 0.5}]");
  sections.nodes += held_node("left", "12.9, -5, 10.3") + held_node("right", "12.9, 5, 10.3");
  sections.routes += "  - {name: crossing, system: wire, line: wire-1/4, from: left, to: right}\n";
  // 0.3 in between the middles, less 0.25 and 0.125 in.
  const Judgement judgement = only(judged(sections, "separation"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_LT(*judgement.value, -0.07);
}

TEST(Attachments, ThatTravelThroughAHoleLeaveItsEdgeGapToTheirOwnRule) {
  // Through the middle of a bare 1.6 in hole: 0.8 in to its edge, less the cable's or the
  // turnbuckle's radius.
  ProjectSections sections = cable(
      "travel: {forward: 2, aft: 3}, points: [{at: [10, 0, 10], through: F1-a}], "
      "attached: [{kind: turnbuckle, at: 7, length: 4, diameter: 0.5}]");
  sections.structure =
      "  frames:\n    - {name: F1, station: 10, thickness: 0.032, outline: [[-9, 0], [9, 0], "
      "[9, 20], [-9, 20]],\n       holes: [{name: F1-a, centre: [0, 10], diameter: 1.6, edge: "
      "bare}]}\n";
  const ProjectText project(sections);
  const Judgement crossing = only(with(project.judged("frame-crossing"), "F1-a"));
  EXPECT_EQ(crossing.verdict, Verdict::pass);
  EXPECT_NEAR(*crossing.value, 0.8 - project.route("route").line->largest_radius_in(), 1e-4);
  const Judgement travel = only(project.judged("attachment-travel"));
  EXPECT_EQ(travel.verdict, Verdict::pass);
  EXPECT_NEAR(*travel.value, 0.55, 1e-4);
  for (const std::string rule : {"clearance", "chafe"})
    for (const Judgement& each : project.judged(rule))
      EXPECT_EQ(each.verdict, Verdict::pass) << rule << ": " << each.message;
}

TEST(Attachments, OfAnyKindSpeltInAnyCaseAreSplices) {
  for (const std::string kind : {"splice", "Splice", "SPLICE", "nicopress Splice"}) {
    ProjectSections sections = cable(
        "travel: {forward: 0, aft: 0}, points: [{at: [10, 0, 10], hold: fairlead, bore: "
        "0.2}], attached: [{kind: " +
        kind + ", at: 7.5, length: 2, diameter: 0.3}]");
    const Judgement judgement = only(judged(sections, "attachment-travel"));
    EXPECT_EQ(judgement.verdict, Verdict::fail) << kind;
    EXPECT_EQ(*judgement.limit, 2) << kind;
  }
}

SleeveGuards guards_of(const ProjectText& project) {
  return SleeveGuards(project.route("route"));
}

TEST(AMovingSleeve, GuardsOnlyWhatItNeverLeaves) {
  const ProjectText project(
      cable("travel: {forward: 2, aft: 3}, sleeves: [{from: 4, to: 16, bore: 0.17, outside: "
            "0.25}]"));
  const SleeveGuards guards = guards_of(project);
  // Aft it starts at 7, forward it ends at 14; half a chord of 1/2 in is left for the search.
  EXPECT_FALSE(guards.guard(7.2));
  EXPECT_TRUE(guards.guard(7.3));
  EXPECT_TRUE(guards.guard(13.7));
  EXPECT_FALSE(guards.guard(13.8));
}

TEST(AMovingSleeve, GuardsNothingWhereTheTravelIsNotStated) {
  const ProjectText project(cable("sleeves: [{from: 4, to: 16, bore: 0.17, outside: 0.25}]"));
  EXPECT_FALSE(guards_of(project).guard(10));
}

TEST(ASleeve, GuardsItsWholeLengthWhereStructureHoldsItOrItsLineStays) {
  const std::string sleeve = "sleeves: [{from: 4, to: 16, bore: 0.17, outside: 0.25}]";
  const ProjectText clamped(
      cable("travel: {forward: 2, aft: 3}, points: [{at: [10, 0, 10], hold: clamp}], " + sleeve));
  const ProjectText still(
      along_fs("wire-1/4", "sleeves: [{from: 4, to: 16, bore: 0.26, outside: 0.35}]"));
  for (const ProjectText* project : {&clamped, &still}) {
    const SleeveGuards guards = guards_of(*project);
    EXPECT_FALSE(guards.guard(3.99));
    EXPECT_TRUE(guards.guard(4.0));
    EXPECT_TRUE(guards.guard(16.0));
    EXPECT_FALSE(guards.guard(16.01));
  }
}

TEST(ASleeve, DoesNotGuardAnAttachmentThatStandsOutOfIt) {
  const ProjectText project(
      cable("travel: {forward: 0, aft: 0}, sleeves: [{from: 4, to: 16, bore: 0.17, outside: 0.25}],"
            " attached: [{kind: turnbuckle, at: 10, length: 2, diameter: 0.5}]"));
  EXPECT_TRUE(guards_of(project).guard(8));
  EXPECT_FALSE(guards_of(project).guard(10));
}

TEST(AMovingSleeve, DoesNotKeepAnEdgeOffThatItLeavesInTravel) {
  const auto rubbing_at = [](const std::string& from_fs, const std::string& to_fs) {
    ProjectSections sections = cable(
        "travel: {forward: 2, aft: 3}, sleeves: [{from: 4, to: 16, bore: 0.17, outside: 0.25}]");
    sections.structure = edge_below(9.874, from_fs, to_fs);
    return judged(sections, "chafe");
  };
  EXPECT_FALSE(any(rubbing_at("9", "12"), Verdict::fail));
  EXPECT_TRUE(any(rubbing_at("5", "6"), Verdict::fail));
  EXPECT_TRUE(any(rubbing_at("14.1", "15"), Verdict::fail));
}

TEST(AMovingSleeve, ParesDownTheZoneInWhichWiresMayBeNear) {
  const auto wire_at = [](const std::string& fs) {
    ProjectSections sections = cable(
        "travel: {forward: 3, aft: 3}, sleeves: [{from: 1, to: 19, bore: 0.17, outside: "
        "0.25}]");
    sections.nodes += held_node("left", fs + ", -5, 11") + held_node("right", fs + ", 5, 11");
    sections.routes +=
        "  - {name: crossing, system: wire, line: wire-1/4, from: left, to: right}\n";
    return only(judged(sections, "separation"));
  };
  EXPECT_EQ(wire_at("10").verdict, Verdict::pass);
  EXPECT_EQ(wire_at("3").verdict, Verdict::fail);
  EXPECT_EQ(*wire_at("3").limit, 3);
}

TEST(AStatedGuide, HoldsTheLineUpToABoreOfTwiceItsDiameter) {
  for (const std::string hold : {"fairlead", "grommet", "bushing"}) {
    for (const std::string& line : {std::string("tube-nylon-1/4"), std::string("wire-1/4")}) {
      const auto supports = [&](const std::string& bore) {
        const ProjectText project(
            along_fs(line, "points: [{at: [10, 0, 10], hold: " + hold + ", bore: " + bore + "}]"));
        return project.route("route").supports.size();
      };
      EXPECT_EQ(supports("0.5"), 3u) << hold;
      EXPECT_EQ(supports("0.51"), 2u) << hold;
    }
  }
}

TEST(AStatedGuide, TooWideToHoldIsStillPassed) {
  const ProjectText project(
      cable("travel: {forward: 0, aft: 0}, points: [{at: [10, 0, 10], hold: fairlead, bore: 0.4}], "
            "attached: [{kind: turnbuckle, at: 10, length: 4, diameter: 0.5}]"));
  EXPECT_EQ(project.route("route").supports.size(), 2u);
  EXPECT_EQ(project.route("route").loose_guides.size(), 1u);
  EXPECT_EQ(only(project.judged("attachment-travel")).verdict, Verdict::fail);
  const Judgement bore = only(project.judged("support-mount"));
  EXPECT_EQ(bore.verdict, Verdict::pass);
  EXPECT_NE(bore.message.find("does not count as a support"), std::string::npos);
}

TEST(AStatedGuide, MustLetTheLineThrough) {
  const auto bore = [](const std::string& size, const std::string& more = "") {
    return only(
        judged(along_fs("tube-nylon-1/4",
                        "points: [{at: [10, 0, 10], hold: bushing, bore: " + size + "}]" + more),
               "support-mount"));
  };
  EXPECT_EQ(bore("0.3").verdict, Verdict::pass);
  const Judgement tight = bore("0.2");
  EXPECT_EQ(tight.verdict, Verdict::fail);
  EXPECT_LT(*tight.value, 0);
  EXPECT_FALSE(tight.mend.empty());
  EXPECT_EQ(bore("0.3", ", sleeves: [{from: 8, to: 12, bore: 0.26, outside: 0.32}]").verdict,
            Verdict::fail);
}

TEST(AStatedGuide, InAHoleIsJudgedOnceByFrameCrossing) {
  ProjectSections sections = along_fs(
      "tube-nylon-1/4", "points: [{at: [10, 0, 10], hold: bushing, through: F1-a, bore: 0.2}]");
  sections.structure = frame_with_bushing("0.2");
  EXPECT_TRUE(judged(sections, "support-mount").empty());
  EXPECT_EQ(only(with(judged(sections, "frame-crossing"), "F1-a")).verdict, Verdict::fail);
}

ReachEnvelope envelope_of(const ProjectSections& sections) {
  const ProjectText project(sections);
  const auto reaches = project.reaches("route");
  EXPECT_EQ(reaches.size(), 1u);
  EXPECT_EQ(reaches.at(0).missing, "");
  return reaches.at(0).stretch.envelope;
}

TEST(AHoseOfStatedLength, HasOverWhatThatIsMoreThanDrawn) {
  // 1.6 in too long over 20 in: root(3 20 1.6 / 8) = 3.4641 in.
  const std::string hose = "hose-rubber-1/4";
  EXPECT_NEAR(envelope_of(along_fs(hose, "length: 21.6")).bow_in, 3.464102, 1e-5);
  // Two hundredths are the least, stated or not.
  EXPECT_NEAR(envelope_of(along_fs(hose, "length: 20.1")).surplus_in, 0.4, rounding_in);
  EXPECT_NEAR(envelope_of(along_fs(hose)).surplus_in, 0.4, rounding_in);
  ProjectSections sections = along_fs(hose, "length: 21.6");
  sections.structure = edge_below(10 - 3.25, "9.5", "10.5");
  EXPECT_EQ(only(judged(sections, "chafe")).verdict, Verdict::fail);
}

TEST(AHoseOfStatedLength, SharesItOutByTheLengthOfItsSpans) {
  const ProjectText project(
      along_fs("hose-rubber-1/4", "length: 22, points: [{at: [5, 0, 10], hold: clamp}]"));
  const auto reaches = project.reaches("route");
  ASSERT_EQ(reaches.size(), 2u);
  EXPECT_NEAR(reaches[0].stretch.envelope.surplus_in, 0.5, rounding_in);
  EXPECT_NEAR(reaches[1].stretch.envelope.surplus_in, 1.5, rounding_in);
}

const std::string drawn_bow = "points: [{at: [10, 0, 5], bend: 2.5}]";

TEST(ALimpLineDrawnWithABow, CanGoToTheOtherSideOfTheStraight) {
  ProjectSections sections = along_fs("wire-1/4", drawn_bow);
  sections.structure = edge_below(13.3, "9", "11");
  EXPECT_TRUE(any(judged(sections, "chafe"), Verdict::warn));
  // Half of its length is 11 in and a bit, so its middle cannot be 6 in over the straight.
  sections.structure = edge_below(16.9, "9", "11");
  EXPECT_FALSE(any(judged(sections, "chafe"), Verdict::warn));
}

TEST(ALimpLineDrawnWithABow, IsBoundByTheEllipsoidAboutTheStraight) {
  const ReachEnvelope envelope = envelope_of(along_fs("wire-1/4", drawn_bow));
  const double length = envelope.end_in - envelope.start_in;
  const double string = length + envelope.surplus_in;
  EXPECT_NEAR(envelope.bound_half_width_in, std::sqrt(string * string - 400) / 2, rounding_in);
  EXPECT_NEAR(envelope.drawn_excess_in, length - 20, rounding_in);
  // The arc cuts 2.5 (1/cos - 1) off the corner at 5 in; the legs turn by 2 atan(1/2).
  EXPECT_NEAR(envelope.drawn_offset_in, 5 - 2.5 * (std::sqrt(1.25) - 1), 0.001);
  EXPECT_EQ(envelope.bend_spread_in, 0);
}

/// Every place of the ellipsoid is within the bound of some place of the drawn line.
TEST(ALimpLineDrawnWithABow, CoversEveryPlaceThatItsLengthCanReach) {
  for (const std::string& points :
       {drawn_bow, std::string("points: [{at: [3, 0, 16], bend: 2}]"),
        std::string("points: [{at: [4, 0, 15], bend: 2}, {at: [15, 0, 4], bend: 2}]")}) {
    const ProjectSections sections = along_fs("hose-rubber-1/4", points);
    const ProjectText project(sections);
    const PreparedRoute& route = project.route("route");
    const ReachEnvelope envelope = envelope_of(sections);
    const double half = (envelope.end_in - envelope.start_in + envelope.surplus_in) / 2;
    const double across = std::sqrt(half * half - 100);
    for (int i = 0; i < 360; i += 3) {
      const double angle = i * 3.14159265358979 / 180;
      const Vec3 place{10 + half * std::cos(angle), 0, 10 + across * std::sin(angle)};
      double least = 1e9;
      for (double along = 0; along <= route.length_in(); along += 0.01)
        least = std::min(least, distance(place, route.centreline.at(along)) -
                                    envelope.width_in(Reach::bound, along));
      EXPECT_LT(least, 0.01) << points << " " << i;
    }
  }
}

TEST(ALimpLineDrawnWithABow, HasAConcaveBoundThatShrinksInItsParts) {
  const ReachEnvelope whole = envelope_of(along_fs("wire-1/4", drawn_bow));
  const ReachEnvelope part = shortened(whole, whole.start_in, 9, 0.02, 4);
  for (const ReachEnvelope& each : {whole, part}) {
    const double length = each.end_in - each.start_in;
    for (double t = 0.01; t < 0.99; t += 0.01) {
      const auto width = [&](double at) {
        return each.width_in(Reach::bound, each.start_in + at * length);
      };
      EXPECT_GE(2 * width(t) + 1e-9, width(t - 0.01) + width(t + 0.01)) << t;
      EXPECT_LE(width(t), each.widest_in(Reach::bound) + 1e-9);
    }
  }
  EXPECT_LE(part.bound_half_width_in, whole.bound_half_width_in);
}

TEST(AStraightLimpLine, IsBoundAsBefore) {
  const ReachEnvelope envelope = envelope_of(along_fs("wire-1/4"));
  EXPECT_EQ(envelope.drawn_excess_in, 0);
  EXPECT_EQ(envelope.drawn_offset_in, 0);
}

}  // namespace
}  // namespace linewright
