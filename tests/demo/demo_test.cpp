// The demo aeroplane: as first drawn it has nine faults and no others; mended it has none.

#include <gtest/gtest.h>

#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "demo/program_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;

const std::string as_drawn = "routes/as-drawn.yaml";
const std::string mended = "routes/mended.yaml";

std::string with_of(const json& check) {
  return check.at("with").is_null() ? "" : check.at("with").get<std::string>();
}

/// "fail: chafe: static-right: stringer-upper-right" for everything that did not pass.
std::set<std::string> findings(const json& report) {
  std::set<std::string> found;
  for (const json& check : report.at("checks")) {
    const auto word = [&check](const char* key) { return check.at(key).get<std::string>() + ": "; };
    if (check.at("verdict") != "pass")
      found.insert(word("verdict") + word("rule") + word("route") + with_of(check));
  }
  return found;
}

/// The one judgement, passes too, of a rule on a route with another thing.
json judgement(const json& report, const std::string& rule, const std::string& route,
               const std::string& with) {
  std::vector<json> found;
  for (const json& check : report.at("checks"))
    if (check.at("rule") == rule && check.at("route") == route && with_of(check) == with)
      found.push_back(check);
  EXPECT_EQ(found.size(), 1u) << rule << " on " << route << " with " << with;
  return found.empty() ? json() : found.front();
}

TEST(DemoMended, ChecksCleanEvenWhenWarningsCount) {
  const ProgramRun run = run_program("check --strict " + mended);
  EXPECT_EQ(run.exit_status, 0) << run.output;
  EXPECT_TRUE(findings(check_as_json(mended)).empty());
}

TEST(DemoMended, HasEveryRuleAnswerSomewhere) {
  std::set<std::string> answering;
  const json report = check_as_json(mended);
  for (const json& check : report.at("checks")) answering.insert(check.at("rule"));
  for (const std::string rule :
       {"bend-radius",  "bend-fit",     "support-spacing", "straight-run",   "frame-crossing",
        "clearance",    "chafe",        "separation",      "network",        "drainage",
        "lag",          "resonance",    "cable-size",      "fairlead-angle", "pulley",
        "wiring",       "cable-end",    "cable-tension",   "control-feel",   "attachment-travel",
        "sleeve-cover", "hole-edge",    "support-mount",   "access",         "bundle",
        "rod-travel",   "casing-bends", "casing-ends"})
    EXPECT_TRUE(answering.contains(rule)) << rule;
}

TEST(DemoMended, LeavesNothingToAssumeButItsCruiseItsArmsTheWayOfItsTrimAndWhatHasNoSize) {
  EXPECT_EQ(
      check_as_json(mended).at("assumptions"),
      json({"excitation.cruise_rpm is not stated: whether spans swing with the propeller at "
            "cruise was not judged",
            "horns and pedals that are not drawn as moving parts: pedal-left, pedal-right, "
            "rudder-horn-left, rudder-horn-right, column-upper, column-lower, elevator-horn; lines "
            "were not held against their arms",
            "run-outs that state no arm: trim at trim-knob, trim at trim-springs; the wire "
            "was taken to run straight out there",
            "tees and unions that state no size: 3; they were taken as points",
            "ports, probes, instruments, drains and valves that state no size: 8; they were "
            "taken as points: what they fill is in the way only where it is drawn as a solid"}));
}

TEST(DemoMended, LeavesNothingOfItsCablesUnknown) {
  const json rig = json::parse(run_program("rig --format json " + mended).output);
  ASSERT_EQ(rig.at("cables").size(), 4u);
  for (const json& cable : rig.at("cables")) {
    EXPECT_TRUE(cable.at("missing").empty()) << cable.at("missing").dump();
    EXPECT_EQ(cable.at("pieces").size(), 2u);
    EXPECT_TRUE(cable.at("cut_length_in").is_number());
    EXPECT_TRUE(cable.at("pilot").at("strength_factor").is_number());
    EXPECT_FALSE(cable.at("clearance_through_travel").empty());
  }
  // Pin to the middle of the turnbuckle 58 in, less half of its 4.5 and the fork's 2: 53.75 in at
  // 105 lbf, which stretch it by 105 / 111607; an inch is in each terminal.
  const json& first = rig.at("cables").at(0).at("pieces").at(0);
  EXPECT_NEAR(first.at("cut_length_in").get<double>(), 53.75 / (1 + 105 / 111607.14) + 2, 1e-6);
}

TEST(DemoAsDrawn, HasTheNineFaultsThatBuildersMakeAndNoOthers) {
  // A bend too tight, a line led over an edge, a tee left hanging; drawn once for both sides the
  // wrong holes, a fairlead out of line, a sleeve too short, a turnbuckle that nothing shows; one
  // too near its fairlead, and a fairlead left out. The wrong holes and the fairlead left out show
  // twice: too near as drawn, and within reach.
  std::set<std::string> expected{
      "fail: bend-radius: static-left: ",
      "fail: chafe: static-right: stringer-upper-right",
      "warn: support-spacing: static-main: static-right",
      "fail: attachment-travel: elevator-lower: T166-elevator-lower",
      "fail: chafe: elevator-lower: seat-rail",
      "fail: clearance: elevator-lower: seat-rail",
  };
  for (const std::string side : {"left", "right"}) {
    const std::string rudder = "rudder-" + side + ": ";
    expected.insert({"fail: chafe: " + rudder + "T182",
                     "warn: frame-crossing: " + rudder + "T182-lightening-" + side,
                     "fail: fairlead-angle: " + rudder,
                     "warn: sleeve-cover: " + rudder + "T150-lightening-" + side,
                     "fail: access: " + rudder + "turnbuckle"});
  }
  EXPECT_EQ(findings(check_as_json(as_drawn)), expected);
  EXPECT_EQ(run_program("check " + as_drawn).exit_status, 1);
}

TEST(DemoAsDrawn, BendsHalfAnInchAtThePortWhereNylonStandsAnInch) {
  const json bend = judgement(check_as_json(as_drawn), "bend-radius", "static-left", "");
  EXPECT_DOUBLE_EQ(bend.at("value"), 0.5);
  EXPECT_DOUBLE_EQ(bend.at("limit"), 1.0);  // SAE J844, 1/4 in tube
}

TEST(DemoAsDrawn, HangsThirteenInchesAndMoreFromTheTee) {
  // Tee to frame: 13 in forward, 1.3 to the left, 0.65 down. On the other side of the tee the right
  // line is clamped 2 in away and 0.1 higher. The limit is four fifths of 13.5 in.
  const json span =
      judgement(check_as_json(as_drawn), "support-spacing", "static-main", "static-right");
  EXPECT_NEAR(span.at("value").get<double>(), std::hypot(13, 1.3, 0.65) + std::hypot(2, 0.1), 1e-6);
  EXPECT_NEAR(span.at("limit").get<double>(), 10.8, 1e-9);
}

/// From the pulley to the fairlead behind the seat, and on to the hole in T166: aft, inboard, up.
constexpr double to_pulley[] = {40, 5.2, 1.6};
constexpr double to_fairlead[] = {35, 0, 1.4};
constexpr double to_spare_hole[] = {51, 2.58, 3.37};

double length_of(const double (&leg)[3]) {
  return std::hypot(leg[0], leg[1], leg[2]);
}

TEST(DemoAsDrawn, RunsTheRudderCableAtTheRimOfALighteningHole) {
  // Half way between its guides the cable is 1.33 in above where it should be, at WL 13.01:
  // hypot(0.04, 1.33) from the middle of a hole of 1.5 in radius. Off that come the half cable, at
  // most 0.139 / 2 in, and the build tolerance of 0.06 in. At its slope and through the thickness
  // of the sheet it comes no more than 0.002 in nearer.
  const double gap = 1.5 - std::hypot(0.04, 1.33) - 0.0695 - 0.06;
  const json crossing =
      judgement(check_as_json(as_drawn), "frame-crossing", "rudder-left", "T182-lightening-left");
  EXPECT_LE(crossing.at("value").get<double>(), gap + 1e-9);
  EXPECT_NEAR(crossing.at("value").get<double>(), gap, 0.002);
}

TEST(DemoAsDrawn, BendsTheRudderCablesInTheirFairleads) {
  double along = 0;
  for (int i = 0; i < 3; ++i) along += to_fairlead[i] * to_spare_hole[i];
  const double turn =
      std::acos(along / length_of(to_fairlead) / length_of(to_spare_hole)) * 180 / std::acos(-1.0);
  std::vector<double> turns;
  const json report = check_as_json(as_drawn);
  for (const json& check : report.at("checks"))
    if (check.at("rule") == "fairlead-angle" && check.at("verdict") == "fail")
      turns.push_back(check.at("value"));
  ASSERT_EQ(turns.size(), 2u);
  for (const double found : turns) EXPECT_NEAR(found, turn, 0.01);
}

TEST(DemoAsDrawn, RunsTheElevatorsTurnbuckleIntoItsFairlead) {
  // The cable goes 10 in aft and 1 in up to its pulley, then 59 in aft and 2.36 in up to the
  // fairlead in T166, whose web begins half of 0.025 in ahead; the way round the pulley is under
  // 0.001 in shorter than by the corner. The turnbuckle ends half of 5.25 in, its longest, aft of
  // its middle at 66 in. It goes aft by the travel of 0.9 in, and by what 150 lbf stretch the
  // longer part of the cable: AE = 100 D2 / G = 111607 lbf.
  const double fairlead = std::hypot(10, 1) + std::hypot(59, 2.36) - 0.0125;
  const json jam = judgement(check_as_json(as_drawn), "attachment-travel", "elevator-lower",
                             "T166-elevator-lower");
  const double stretch = 150 * 66 / 111607.0;
  EXPECT_NEAR(jam.at("value").get<double>(), fairlead - 66 - 2.625 - 0.9 - stretch, 0.001);
}

TEST(DemoAsDrawn, EndsASleeveShortOfTheBulkhead) {
  // Ends at 110.3 in. The bulkhead is 35 in of the 51 in on from the fairlead; its far face is half
  // of 0.032 in beyond. The way round the pulley is under 0.001 in shorter than by the corner.
  const double frame =
      length_of(to_pulley) + length_of(to_fairlead) + 35.0 / 51 * length_of(to_spare_hole);
  const json cover =
      judgement(check_as_json(as_drawn), "sleeve-cover", "rudder-right", "T150-lightening-right");
  EXPECT_NEAR(cover.at("value").get<double>(), 110.3 - frame - 0.016, 0.001);
}

TEST(DemoAsDrawn, LetsTheLowerElevatorCableDownOnTheSeatRail) {
  // As drawn the middle of the cable is 0.4 in above the middle of the rail's sheet, 0.032 in
  // thick; off come the half cable, at most 0.139 / 2 in, and the build tolerance of 0.06 in. The
  // slope of 0.04 takes less than 0.001 in off.
  const json near = judgement(check_as_json(as_drawn), "chafe", "elevator-lower", "seat-rail");
  EXPECT_NEAR(near.at("value").get<double>(), 0.4 - 0.016 - 0.0695 - 0.06, 0.001);
}

TEST(DemoLeakTest, HasALogForEachVerdict) {
  const auto verdict = [](const std::string& log) {
    const ProgramRun run = run_program(
        "leak-test judge --system static --field-elevation 1200 --altimeter-setting 29.92 "
        "--temperature 64 --format json --readings routes/leak-test-" +
        log + ".csv " + mended);
    return json::parse(run.output).at("verdict").get<std::string>();
  };
  EXPECT_EQ(verdict("tight"), "pass");
  EXPECT_EQ(verdict("leaking"), "fail");
  EXPECT_EQ(verdict("unsettled"), "unknown");
}

TEST(DemoBoth, AreTheSameAeroplane) {
  const json drawn = check_as_json(as_drawn);
  const json right = check_as_json(mended);
  std::vector<std::string> drawn_names, right_names;
  for (const json& route : drawn.at("routes")) drawn_names.push_back(route.at("name"));
  for (const json& route : right.at("routes")) right_names.push_back(route.at("name"));
  EXPECT_EQ(drawn_names, right_names);
  EXPECT_FALSE(drawn_names.empty());
}

TEST(DemoBoth, SayTheSameFromRunToRun) {
  const std::string command = "check --format json " + as_drawn;
  EXPECT_EQ(run_program(command).output, run_program(command).output);
}

}  // namespace
}  // namespace linewright
