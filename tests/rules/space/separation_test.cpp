#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

// Lengths of tens of inches, read from short decimals.
constexpr double rounding_in = 1e-9;

struct LineEntry {
  std::string line;
  std::string system;
  double radius_in;  ///< at its largest
  std::string more = "points: []";
};

const LineEntry metal{"tube-aluminium-1/4", "static", 0.125};
const LineEntry plastic{"tube-nylon-1/4", "static", 0.125};
const LineEntry vent{"tube-nylon-1/4", "vent", 0.125};
const LineEntry hose{"hose-rubber-1/4", "static", 0.29};
const LineEntry cable{"cable-weightless", "cable", 0.0695};
const LineEntry wire{"wire-1/4", "wire", 0.125};

std::string number(double value) {
  return std::to_string(value);
}

std::string route(const std::string& name, const LineEntry& entry) {
  return "  - {name: " + name + ", system: " + entry.system + ", line: " + entry.line +
         ", from: " + name + "-from, to: " + name + "-to,\n     " + entry.more +
         (entry.system == "cable" ? ", tension: {rigged: 100 lbf}" : "") + "}\n";
}

/// The first along FS from 100 to 130, the second across it over FS 115, `gap_in` clear.
ProjectSections crossed(const LineEntry& first, const LineEntry& second, double gap_in) {
  const std::string level = number(10 + first.radius_in + second.radius_in + gap_in);
  ProjectSections sections;
  sections.nodes = held_node("first-from", "100, 0, 10") + held_node("first-to", "130, 0, 10") +
                   held_node("second-from", "115, -10, " + level) +
                   held_node("second-to", "115, 15, " + level);
  sections.routes = route("first", first) + route("second", second);
  sections.rest = weightless_cable_lines;
  return sections;
}

/// The judgement of their distance; that a bundle passes under a vent line is one of its own.
Judgement only_separation(const ProjectSections& sections) {
  std::vector<Judgement> all = judged(sections, "separation");
  std::erase_if(
      all, [](const Judgement& each) { return each.message.find(" under ") != std::string::npos; });
  return only(all);
}

struct Pairing {
  std::string name;
  LineEntry first;
  LineEntry second;
  double limit;
  Verdict broken;
};

std::ostream& operator<<(std::ostream& stream, const Pairing& pairing) {
  return stream << pairing.name;
}

class Separation : public testing::TestWithParam<Pairing> {};

TEST_P(Separation, PassesExactlyAtTheLimitAndIsBrokenJustInside) {
  const Pairing& pairing = GetParam();
  for (const bool turned : {false, true}) {
    const LineEntry& first = turned ? pairing.second : pairing.first;
    const LineEntry& second = turned ? pairing.first : pairing.second;
    const Judgement passing = only_separation(crossed(first, second, pairing.limit));
    EXPECT_EQ(passing.verdict, Verdict::pass);
    EXPECT_NEAR(*passing.value, pairing.limit, 1e-6);  // six decimals in the file
    EXPECT_EQ(*passing.limit, pairing.limit);
    EXPECT_EQ(passing.route, "first");
    EXPECT_EQ(passing.with, "second");
    const Judgement broken = only_separation(crossed(first, second, pairing.limit - 0.001));
    EXPECT_EQ(broken.verdict, pairing.broken);
    EXPECT_EQ(*broken.limit, pairing.limit);
  }
}

// Metal tube to adjacent lines 1/4 in [from memory: SAE ARP994, MIL-H-5440]. Wire to control cable
// 3 in, else a guard [from memory: FAA-H-8083-31, wiring chapter]. Wire to a line with flammable
// vapour 6 in, least 2 in with close clamping [verified: AC 43.13-1B para 11-96]. The rest [common
// practice, no source]: plastic tube, and wire to tube, borrow the 1/4 in; instrument line to cable
// 1 in where it is unsupported, 1/2 in by its support; cable to cable 1/2 in.
INSTANTIATE_TEST_SUITE_P(
    Rows, Separation,
    testing::Values(Pairing{"MetalToMetal", metal, metal, 0.25, Verdict::fail},
                    Pairing{"MetalToPlastic", metal, plastic, 0.25, Verdict::fail},
                    Pairing{"MetalToHose", metal, hose, 0.25, Verdict::fail},
                    Pairing{"PlasticToPlastic", plastic, plastic, 0.25, Verdict::warn},
                    Pairing{"PlasticToHose", plastic, hose, 0.25, Verdict::warn},
                    Pairing{"TubeToCable", plastic, cable, 1.0, Verdict::warn},
                    Pairing{"MetalTubeToCable", metal, cable, 1.0, Verdict::warn},
                    Pairing{"WireToCable", wire, cable, 3.0, Verdict::fail},
                    Pairing{"VentToWire", vent, wire, 6.0, Verdict::warn},
                    Pairing{"WireToTube", wire, plastic, 0.25, Verdict::warn},
                    Pairing{"CableToCable", cable, cable, 0.5, Verdict::warn}),
    [](const auto& each) { return each.param.name; });

// AC 43.13-1B para 11-96 [verified].
TEST(SeparationOfLines, FailsAWireUnderTwoInchesFromAVentLine) {
  EXPECT_EQ(only_separation(crossed(vent, wire, 2.0)).verdict, Verdict::warn);
  const Judgement broken = only_separation(crossed(vent, wire, 1.999));
  EXPECT_EQ(broken.verdict, Verdict::fail);
  EXPECT_EQ(*broken.limit, 2.0);
}

// Wires above lines that carry what burns: TM 1-1500-204-23-4 item 23 [verified].
TEST(SeparationOfLines, WarnsOfAWireUnderAVentLine) {
  const auto below = [](double gap_in) {
    std::vector<Judgement> all = judged(crossed(wire, vent, gap_in), "separation");
    std::erase_if(
        all, [](const Judgement& each) { return each.message.find("under") == std::string::npos; });
    return all;
  };
  const Judgement under = only(below(4));
  EXPECT_EQ(under.verdict, Verdict::warn);
  EXPECT_EQ(under.route, "first");
  EXPECT_NEAR(*under.value, -(4 + wire.radius_in + vent.radius_in), 1e-6);
  EXPECT_TRUE(below(7).empty());
}

TEST(SeparationOfLines, FailsALineThatRunsThroughItself) {
  ProjectSections sections;
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "110, -10, 10");
  sections.routes =
      "  - {name: loop, system: static, line: tube-nylon-1/4, from: a, to: b, points: [{at: [120, "
      "0, "
      "10]}, {at: [120, 8, 10]}, {at: [110, 8, 10]}]}\n";
  const Judgement crossing = only_separation(sections);
  EXPECT_EQ(crossing.verdict, Verdict::fail);
  EXPECT_EQ(crossing.with, "loop");
  // The axes meet at FS 110 BL 0; one diameter of overlap.
  EXPECT_NEAR(*crossing.value, -0.25, 1e-6);
  EXPECT_NEAR(crossing.at->x, 110, 0.3);
}

// 0.6 in of sleeve to either side of the axis, on a line that comes nowhere near itself.
TEST(SeparationOfLines, WhatIsThickAboutALineDoesNotMakeItTouchItself) {
  const std::string sleeve = "sleeves: [{from: 8, to: 12, bore: 0.3, outside: 1.2}]";
  ProjectSections sections;
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "130, 0, 10");
  sections.routes = "  - {name: straight, system: static, line: tube-nylon-1/4, from: a, to: b, " +
                    sleeve + "}\n";
  EXPECT_TRUE(judged(sections, "separation").empty());
  sections.nodes = held_node("ca", "100, 0, 10") + held_node("cb", "140, 0, 10");
  sections.routes =
      "  - {name: cable, system: cable, line: cable-7x19-1/8-steel, from: ca, to: cb, tension: "
      "{rigged: 40 lbf}, travel: {forward: 2, aft: 2}, attached: [{kind: turnbuckle, at: 19, "
      "length: 3, diameter: 1.2}]}\n";
  EXPECT_TRUE(judged(sections, "separation").empty());
  // Where the line does come back, 0.5 in over itself, the sleeve meets it: 0.5 - 0.6 - 0.125.
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "110, -10, 10.5");
  sections.routes =
      "  - {name: loop, system: static, line: tube-nylon-1/4, from: a, to: b, points: [{at: [120, "
      "0, 10]}, {at: [120, 8, 10]}, {at: [110, 8, 10.5]}], " +
      sleeve + "}\n";
  const Judgement crossing = only_separation(sections);
  EXPECT_EQ(crossing.verdict, Verdict::fail);
  EXPECT_EQ(crossing.message, "the line can touch itself");
  EXPECT_NEAR(*crossing.value, 0.5 - 0.6 - 0.125, 1e-3);
}

TEST(SeparationOfLines, SaysWhereAndHowFarToMove) {
  const ProjectSections sections = crossed(metal, metal, 0.1);
  const Judgement judgement = only_separation(sections);
  EXPECT_NEAR(*judgement.value, 0.1, 1e-6);
  EXPECT_NEAR(*judgement.distance_in, 15, rounding_in);
  EXPECT_NEAR(judgement.at->x, 115, rounding_in);
  EXPECT_EQ(judgement.message, "only 0.100 in from second");
  EXPECT_EQ(judgement.mend, "move the lines 0.150 in apart");
  EXPECT_EQ(judgement.location.line, line_number(sections.text(), "{name: first, "));
}

TEST(SeparationOfLines, FailsTwoThatTouchWhateverTheLimitRestsOn) {
  const Judgement judgement = only_separation(crossed(plastic, plastic, -0.01));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "can touch second");
}

TEST(SeparationOfLines, TakesTheBuildToleranceOffTwice) {
  ProjectSections sections = crossed(metal, metal, 0.36);
  sections.build_tolerance = "0.06";
  const Judgement judgement = only_separation(sections);
  EXPECT_NEAR(*judgement.value, 0.24, 1e-6);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
}

// [Common practice, no source.]
TEST(SeparationOfLines, IsHalfAnInchToACableWhereTheTubeIsHeld) {
  LineEntry held = plastic;
  held.more = "points: [{at: [115, 0, 10], hold: clamp}]";
  const Judgement passing = only_separation(crossed(held, cable, 0.5));
  EXPECT_EQ(passing.verdict, Verdict::pass);
  // An inch along from the clamp the limit is the larger one, and the cable crosses square.
  EXPECT_EQ(only_separation(crossed(held, cable, 0.499)).verdict, Verdict::warn);
  LineEntry held_far = plastic;
  held_far.more = "points: [{at: [112, 0, 10], hold: clamp}]";
  EXPECT_EQ(*only_separation(crossed(held_far, cable, 0.6)).limit, 1.0);
}

TEST(SeparationOfLines, LooksForTheTubesSupportWhicheverOfTheTwoIsFirst) {
  LineEntry held = plastic;
  held.more = "points: [{at: [115, 0, 10.7145], hold: clamp}]";
  const Judgement judgement = only_separation(crossed(cable, held, 0.52));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_EQ(*judgement.limit, 0.5);
}

TEST(SeparationOfLines, DoesNotTakeTheCablesGuideForTheTubesSupport) {
  LineEntry guided = cable;
  guided.more = "points: [{at: [115, 0, 10], hold: fairlead, bore: 0.19}]";
  EXPECT_EQ(*only_separation(crossed(guided, plastic, 0.6)).limit, 1.0);
}

TEST(SeparationOfLines, HidesNoTouchAtASupportBehindAShortfallElsewhere) {
  // The cable slants down to the tube's clamp and touches it there: a fail, half an inch short.
  // Where the larger limit begins it is clear, though more than half an inch short of an inch.
  ProjectSections sections = crossed(plastic, cable, 0);
  sections.nodes = held_node("first-from", "100, 0, 10") + held_node("first-to", "130, 0, 10") +
                   held_node("second-from", "100, 0, 13.19") +
                   held_node("second-to", "115, 0, 10.19");
  sections.routes = route("first", {plastic.line, plastic.system, plastic.radius_in,
                                    "points: [{at: [115, 0, 10], hold: clamp}]"}) +
                    route("second", cable);
  const Judgement judgement = only_separation(sections);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "can touch second");
}

// A bundle to a moving control 1/2 in [from memory: AC 43.13-1B para 11-125].
TEST(SeparationOfLines, IsHalfAnInchFromWiresToACableInASleeve) {
  LineEntry sleeved = cable;
  sleeved.radius_in = 0.125;
  sleeved.more =
      "sleeves: [{from: 5, to: 25, bore: 0.17, outside: 0.25}], travel: {forward: 1, aft: 1}";
  const Judgement passing = only_separation(crossed(sleeved, wire, 0.5));
  // What the sleeve does not cover at all travel is farther than 3 in from the wires.
  EXPECT_EQ(passing.verdict, Verdict::pass);
  EXPECT_EQ(only_separation(crossed(sleeved, wire, 0.499)).verdict, Verdict::fail);
}

TEST(SeparationOfLines, LooksPastTheEndOfASleeveThatIsTooShort) {
  LineEntry sleeved = cable;
  sleeved.more = "sleeves: [{from: 14, to: 16, bore: 0.17, outside: 0.25}]";
  const Judgement judgement = only_separation(crossed(sleeved, wire, 0.6));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(*judgement.limit, 3.0);
  EXPECT_EQ(judgement.mend.substr(judgement.mend.find(", or")), ", or sleeve the cable there");
}

TEST(SeparationOfLines, SaysNothingOfTwoWireBundles) {
  EXPECT_TRUE(judged(crossed(wire, wire, 0.01), "separation").empty());
}

TEST(SeparationOfLines, SaysNothingOfLinesMoreThanAnInchBeyondTheirLimit) {
  EXPECT_EQ(judged(crossed(metal, metal, 1.24), "separation").size(), 1u);
  EXPECT_TRUE(judged(crossed(metal, metal, 1.26), "separation").empty());
}

/// Two tubes from one tee, 3-4-5 apart: at a distance d from it they are 1.2 d apart.
ProjectSections from_one_tee(const std::string& second_at) {
  ProjectSections sections;
  sections.nodes = "  - {name: tee, kind: tee, at: [100, 0, 10]}\n" +
                   held_node("first-to", "120, 0, 10") + held_node("second-to", second_at);
  sections.routes =
      "  - {name: first, system: static, line: tube-nylon-1/4, from: tee, to: first-to}\n"
      "  - {name: second, system: static, line: tube-nylon-1/4, from: tee, to: second-to}\n";
  return sections;
}

TEST(SeparationOfLines, LetsLinesMeetAtTheirFitting) {
  const Judgement judgement = only_separation(from_one_tee("116, 6, 10"));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_GT(*judgement.distance_in, 1.5);
}

TEST(SeparationOfLines, CountsLinesThatStayTogetherPastTheirFitting) {
  const Judgement judgement = only_separation(from_one_tee("120, 0.6, 10"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_LT(*judgement.value, 0);
}

TEST(SeparationOfLines, JudgesEveryPairOnce) {
  ProjectSections sections = crossed(metal, metal, 0.3);
  sections.nodes +=
      held_node("third-from", "120, -15, 10.6") + held_node("third-to", "120, 15, 10.6");
  sections.routes += route("third", metal);
  const auto judgements = judged(sections, "separation");
  EXPECT_EQ(with(judgements, "second").size(), 1u);
  EXPECT_EQ(with(judgements, "third").size(), 1u);  // second and third are 5 in apart
}

}  // namespace
}  // namespace linewright
