#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "lines/motion/line_motion.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

constexpr double rounding_in = 1e-9;
/// To the last figure of those worked by hand.
constexpr double figure_in = 5e-6;

const std::string nylon = "tube-nylon-1/4";
const std::string aluminium = "tube-aluminium-1/4";
const std::string steel_cable = "cable-7x19-1/8-steel";

/// A straight of `length_in` along FS between two nodes that structure holds.
ProjectSections straight(double length_in, const std::string& line, const std::string& more = "") {
  ProjectSections sections;
  const std::string system = line.starts_with("cable") ? "cable" : "static";
  sections.nodes =
      held_node("forward", "0, 0, 0") + held_node("aft", std::to_string(length_in) + ", 0, 0");
  sections.routes = "  - {name: route, system: " + system + ", line: " + line +
                    ", from: forward, to: aft" + more + "}\n";
  return sections;
}

ProjectSections cable(double length_in, double tension_lbf) {
  return straight(length_in, steel_cable,
                  ", tension: {rigged: " + std::to_string(tension_lbf) + " lbf}");
}

std::vector<SpanReach> reaches_of(const ProjectText& project, const std::string& route = "route") {
  return project.reaches(route);
}

/// The envelope of the first span of `route`, which must be known.
ReachEnvelope envelope_of(const ProjectSections& sections) {
  const ProjectText project(sections);
  const auto reaches = reaches_of(project);
  EXPECT_EQ(reaches.at(0).missing, "");
  return reaches.at(0).stretch.envelope;
}

std::string missing_of(const ProjectSections& sections) {
  const ProjectText project(sections);
  return reaches_of(project).at(0).missing;
}

TEST(ReachOfAPlasticTube, IsTheSlackStringsAndTheEllipsoids) {
  // 0.6 % of 13.5 in: root(3 13.5 0.081 / 8), and 0.5 root(13.581^2 - 13.5^2).
  const ReachEnvelope envelope = envelope_of(straight(13.5, nylon));
  EXPECT_NEAR(envelope.surplus_in, 0.081, rounding_in);
  EXPECT_NEAR(envelope.bow_in, 0.64036, figure_in);
  EXPECT_FALSE(envelope.clamped_shape);
  EXPECT_NEAR(envelope.bound_half_width_in, 0.74053, figure_in);
}

TEST(ReachOfAPlasticTube, SagsAsAClampedBeamUnderTheLoadFactor) {
  // w = 0.0375 pi/4 (0.25^2 - 0.171^2), I = pi/64 (0.25^4 - 0.171^4), E = 60e3:
  // w 13.5^4 / (384 E I) = 0.009428 in.
  ProjectSections sections = straight(13.5, nylon);
  EXPECT_NEAR(envelope_of(sections).sag_in, 0.009428, 1e-6);
  sections.load_factor = "{positive: 3.8, negative: -1.5}";
  EXPECT_NEAR(envelope_of(sections).sag_in, 3.8 * 0.009428, 4e-6);
  sections.load_factor = "{positive: 2, negative: -3}";
  EXPECT_NEAR(envelope_of(sections).sag_in, 3 * 0.009428, 3e-6);
}

TEST(ReachOfAPlasticTube, GrowsWithTheTemperatureRange) {
  // Nylon 5.5e-5 [from memory] over aluminium's 1.28e-5 [verified: engineering tables], for 50
  // degrees: 0.028485 in on 13.5.
  ProjectSections sections = straight(13.5, nylon);
  sections.temperature = "{min: -20 degF, rigged: 70 degF, max: 120 degF}";
  EXPECT_NEAR(envelope_of(sections).surplus_in, 0.081 + 0.028485, rounding_in);
  // Cold only makes it shorter than the airframe.
  sections.temperature = "{min: -20 degF, rigged: 70 degF, max: 70 degF}";
  EXPECT_NEAR(envelope_of(sections).surplus_in, 0.081, rounding_in);
}

TEST(ReachOfAPlasticTube, IsLooserAtABendThatCanSpread) {
  // Legs of 10 in, 1 in radius: the arc could be as wide as 10 in, and its middle lies
  // R (root 2 - 1) from the corner.
  ProjectSections sections = straight(10, nylon, ", points: [{at: [10, 0, 0], bend: 1}]");
  sections.nodes = held_node("forward", "0, 0, 0") + held_node("aft", "10, 10, 0");
  EXPECT_NEAR(envelope_of(sections).bend_spread_in, 9 * (std::sqrt(2.0) - 1), 1e-6);
  const std::string text = sections.routes;
  sections.routes.replace(text.find(nylon), nylon.size(), aluminium);
  EXPECT_EQ(envelope_of(sections).bend_spread_in, 0);
}

TEST(ReachOfAMetalTube, IsAClampedTubesWithOnlyItsSurplus) {
  // 0.05 % [common practice, no source] of 20 in: (2/pi) root(20 0.01). Its expansion is the
  // airframe's.
  ProjectSections sections = straight(20, aluminium);
  sections.temperature = "{min: -40 degF, rigged: 70 degF, max: 150 degF}";
  const ReachEnvelope envelope = envelope_of(sections);
  EXPECT_NEAR(envelope.surplus_in, 0.01, rounding_in);
  EXPECT_TRUE(envelope.clamped_shape);
  EXPECT_NEAR(envelope.bow_in, 0.284705, figure_in);
  // w L^4 / (384 E I) of 5052 tube 1/4 x 0.035: 0.000668 in.
  EXPECT_NEAR(envelope.sag_in, 0.000668, 5e-7);
}

TEST(ReachOfAMetalTube, GrowsAgainstTheAirframeInTheColdWhereItShrinksLess) {
  // Steel tube, 9.6e-6 against 12.8e-6 [verified: engineering tables]: 90 degrees colder it is
  // 0.00576 in too long on 20.
  ProjectSections sections = straight(20, "tube-steel-1/4");
  const double rigged = envelope_of(sections).surplus_in;
  sections.temperature = "{min: -20 degF, rigged: 70 degF, max: 120 degF}";
  EXPECT_NEAR(envelope_of(sections).surplus_in - rigged, 20 * 3.2e-6 * 90, rounding_in);
}

TEST(ReachOfAHose, NeedsNoWeightOrExpansion) {
  // 2 % [verified: AC 43.13-1B Fig. 9-9] of 20 in: root(3 20 0.4 / 8).
  const ReachEnvelope envelope = envelope_of(straight(20, "hose-rubber-1/4"));
  EXPECT_NEAR(envelope.bow_in, std::sqrt(3.0), 1e-6);
  EXPECT_EQ(envelope.sag_in, 0);
}

// w L^2 / (8 T), 0.0024167 lb/in.
TEST(ReachOfACable, IsItsSagUnderTheRiggedTension) {
  EXPECT_NEAR(envelope_of(cable(30, 30)).sag_in, 0.0090625, figure_in);
  EXPECT_NEAR(envelope_of(cable(60, 30)).sag_in, 0.036250, figure_in);
  EXPECT_NEAR(envelope_of(cable(60, 20)).sag_in, 0.054375, figure_in);
  EXPECT_NEAR(envelope_of(cable(48, 15)).sag_in, 0.046400, figure_in);
  ProjectSections loaded = cable(30, 30);
  loaded.load_factor = "{positive: 3.8, negative: -1.5}";
  EXPECT_NEAR(envelope_of(loaded).sag_in, 0.034437, figure_in);
  EXPECT_EQ(envelope_of(cable(30, 30)).bow_in, 0);
  EXPECT_EQ(envelope_of(cable(30, 30)).bound_half_width_in, 0);
}

TEST(ReachOfACable, CountsTheTensionThatTheColdTakes) {
  // (12.8 - 6.5)e-6 [verified: engineering tables] of 111,607 lbf [verified, secondary: a wire-rope
  // maker's stretch table] is 0.70312 lbf a degree.
  ProjectSections sections = cable(60, 30);
  sections.temperature = "{min: 50 degF, rigged: 70 degF, max: 120 degF}";
  EXPECT_NEAR(envelope_of(sections).sag_in, 0.036250 * 30 / (30 - 20 * 0.70312), figure_in);
}

TEST(ReachOfACable, SagsByItsStretchAloneOnceTheTensionIsGone) {
  // L (3 w L / (64 AE))^(1/3) with w = 0.0024167 lb/in, L = 30 in, AE = 111,607 lbf: 0.09368 in.
  ProjectSections sections = cable(30, 30);
  sections.temperature = "{min: 20 degF, rigged: 70 degF, max: 120 degF}";
  const ReachEnvelope slack = envelope_of(sections);
  EXPECT_NEAR(slack.sag_in, 0.093678, 1e-5);
  // 50 degrees take more than all of it: 30 - 50 0.70312 = -5.156 lbf is slack in 30 in of cable.
  EXPECT_NEAR(slack.surplus_in, 5.156 / 111607 * 30, 1e-7);
  EXPECT_NEAR(slack.bow_in, std::sqrt(3 * 30 * slack.surplus_in / 8), rounding_in);
}

TEST(ReachOfACable, NeverNarrowsAsItsTensionFallsNorJumps) {
  double before = 0;
  for (double tension = 2; tension > 0; tension -= 0.01) {
    // The cold takes 35.156 lbf: what is left goes from 2 to -2 lbf.
    ProjectSections sections = cable(30, 35.156 + 2 * tension - 2);
    sections.temperature = "{min: 20 degF, rigged: 70 degF, max: 70 degF}";
    const double width = envelope_of(sections).width_in(Reach::likely, 15);
    EXPECT_GE(width, before - rounding_in) << tension;
    if (before > 0) {
      EXPECT_LT(width, before + 0.02) << tension;
    }
    before = width;
  }
  EXPECT_GT(before, 0.09);
}

TEST(ReachOfACable, NamesTheTensionThatIsNotStated) {
  EXPECT_EQ(missing_of(straight(60, steel_cable)), "the rigged tension of route");
}

std::string own_line(const std::string& kind, const std::string& values) {
  return "lines:\n  - {name: own, kind: " + kind + ", outside: 0.25, source: measured, " + values +
         "}\n";
}

TEST(Reach, NamesWhatALineOfTheProjectsOwnLeavesOut) {
  const std::string tube = "inside: 0.17, ";
  struct Row {
    std::string kind, values, missing;
  };
  for (const Row& row :
       {Row{"plastic-tube",
            tube + "expansion: 5e-5, weight: 0.001 lb/in, youngs_modulus: 60000 psi",
            "the surplus length usual for own"},
        Row{"plastic-tube", tube + "slack: 0.006, weight: 0.001 lb/in, youngs_modulus: 60000 psi",
            "the thermal expansion of own"},
        Row{"rigid-tube", tube + "slack: 0.006, expansion: 5e-5, youngs_modulus: 60000 psi",
            "the weight of own"},
        Row{"plastic-tube", tube + "slack: 0.006, expansion: 5e-5, weight: 0.001 lb/in",
            "Young's modulus of own"},
        Row{"hose", tube + "weight: 0.001 lb/in", "the surplus length usual for own"},
        Row{"wire", "slack: 0.001", "the thermal expansion of own"}}) {
    ProjectSections sections = straight(10, "own");
    if (row.kind == "wire") sections.routes.replace(sections.routes.find("static"), 6, "wire");
    sections.rest = own_line(row.kind, row.values);
    EXPECT_EQ(missing_of(sections), row.missing) << row.kind << ": " << row.values;
  }
}

TEST(Reach, NamesWhatACableOfTheProjectsOwnLeavesOut) {
  const std::string all = "weight: 0.0024 lb/in, axial_stiffness: 100000 lbf, expansion: 6.5e-6";
  for (const auto& [without, missing] :
       {std::pair{"weight: 0.0024 lb/in, ", "the weight of own"},
        std::pair{"axial_stiffness: 100000 lbf, ", "the stretch of own"},
        std::pair{", expansion: 6.5e-6", "the thermal expansion of own"}}) {
    std::string values = all;
    values.erase(values.find(without), std::string(without).size());
    ProjectSections sections = cable(30, 30);
    sections.routes.replace(sections.routes.find(steel_cable), steel_cable.size(), "own");
    sections.rest = own_line("cable", values);
    EXPECT_EQ(missing_of(sections), missing);
  }
}

// A cushioned clamp gives 0.02 in [common practice, no source].
TEST(Reach, TapersToTheSupportsPlay) {
  const ProjectText project(straight(20, nylon, ", points: [{at: [8, 0, 0], hold: clamp}]"));
  const auto reaches = reaches_of(project);
  ASSERT_EQ(reaches.size(), 2u);
  EXPECT_EQ(reaches[0].stretch.envelope.play_first_in, 0);
  EXPECT_EQ(reaches[0].stretch.envelope.play_last_in, 0.02);
  EXPECT_EQ(reaches[1].stretch.envelope.play_first_in, 0.02);
  EXPECT_NEAR(reaches[1].stretch.start_in, 8, rounding_in);
}

TEST(Reach, SwingsAsFarAsItIsLongWhereASoftLineEndsFree) {
  ProjectSections sections = straight(6, nylon);
  sections.nodes = held_node("forward", "0, 0, 0") + "  - {name: aft, kind: cap, at: [6, 0, 0]}\n";
  const ProjectText project(sections);
  const auto reaches = reaches_of(project);
  ASSERT_EQ(reaches.size(), 1u);
  EXPECT_TRUE(reaches[0].ends_free);
  EXPECT_NEAR(reaches[0].stretch.envelope.swing_last_in, 6, rounding_in);
  EXPECT_EQ(reaches[0].stretch.envelope.swing_first_in, 0);
}

TEST(Reach, BendsAFreeMetalTubeByItsTipSag) {
  // w L^4 / (8 E I) is 48 times the clamped sag: 48 0.000668 at 20 in.
  ProjectSections sections = straight(20, aluminium);
  sections.nodes = "  - {name: forward, kind: end, at: [0, 0, 0]}\n" + held_node("aft", "20, 0, 0");
  const ReachEnvelope envelope = envelope_of(sections);
  EXPECT_NEAR(envelope.play_first_in, 48 * 0.000668, 5e-5);
  EXPECT_EQ(envelope.play_last_in, 0);
  EXPECT_EQ(envelope.swing_first_in, 0);
}

/// Two lines of 8 and 6 in that hang on one union; the second ends in a clamp 4 in from it.
ProjectSections over_a_union() {
  ProjectSections sections;
  sections.nodes = held_node("forward", "0, 0, 0") +
                   "  - {name: union, kind: union, at: [8, 0, 0]}\n" + held_node("aft", "14, 0, 0");
  sections.routes =
      "  - {name: route, system: static, line: tube-nylon-1/4, from: forward, to: union}\n"
      "  - {name: other, system: static, line: tube-nylon-1/4, from: aft, to: union,\n"
      "     points: [{at: [12, 0, 0], hold: clamp}]}\n";
  return sections;
}

TEST(Reach, GoesOnOverAFittingThatHangs) {
  const ProjectText project(over_a_union());
  const SpanReach reach = reaches_of(project).at(0);
  EXPECT_FALSE(reach.ends_free);
  EXPECT_EQ(reach.stretch.end_in, 8);
  EXPECT_NEAR(reach.stretch.envelope.start_in, 0, rounding_in);
  EXPECT_NEAR(reach.stretch.envelope.end_in, 12, rounding_in);
  EXPECT_NEAR(reach.stretch.envelope.surplus_in, 0.072, rounding_in);
}

TEST(Reach, IsTheSameSeenFromTheOtherLineThatHangsThere) {
  const ProjectText project(over_a_union());
  const SpanReach reach = reaches_of(project, "other").at(1);
  // From the clamp at 2 in, 4 in to the union and 8 in on.
  EXPECT_NEAR(reach.stretch.envelope.start_in, 2, rounding_in);
  EXPECT_NEAR(reach.stretch.envelope.end_in, 14, rounding_in);
  EXPECT_NEAR(reach.stretch.envelope.width_in(Reach::likely, 6),
              reaches_of(project).at(0).stretch.envelope.width_in(Reach::likely, 8), rounding_in);
}

TEST(Reach, HasThePlayOfTheSupportBeyondTheFitting) {
  const ProjectText project(over_a_union());
  const ReachEnvelope envelope = reaches_of(project).at(0).stretch.envelope;
  EXPECT_EQ(envelope.play_first_in, 0);
  EXPECT_EQ(envelope.play_last_in, 0.02);
}

}  // namespace
}  // namespace linewright
