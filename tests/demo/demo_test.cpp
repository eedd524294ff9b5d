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
       {"bend-radius",  "bend-fit",  "support-spacing", "straight-run",   "frame-crossing",
        "clearance",    "chafe",     "separation",      "network",        "drainage",
        "lag",          "resonance", "cable-size",      "fairlead-angle", "pulley",
        "wiring",       "cable-end", "cable-tension",   "control-feel",   "attachment-travel",
        "sleeve-cover", "hole-edge"})
    EXPECT_TRUE(answering.contains(rule)) << rule;
}

TEST(DemoMended, LeavesNothingToAssumeButAtWhatSpeedItCruisesAndTheSizeOfItsTees) {
  EXPECT_EQ(check_as_json(mended).at("assumptions"),
            json({"excitation.cruise_rpm is not stated: whether spans swing with the propeller at "
                  "cruise was not judged",
                  "tees and unions that state no size: 4; they were taken as points"}));
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
  // A bend too tight, a line led over an edge, a tee left hanging, the wrong holes, a fairlead out
  // of line, a sleeve too short, a turnbuckle that nothing shows, one too near its fairlead, and a
  // fairlead left out. The wrong holes and the fairlead left out show twice: too near as drawn, and
  // within reach.
  const std::set<std::string> expected{
      "fail: bend-radius: static-left: ",
      "fail: chafe: static-right: stringer-upper-right",
      "warn: support-spacing: static-main: static-right",
      "fail: chafe: rudder-left: T182",
      "warn: frame-crossing: rudder-left: T182-lightening-left",
      "fail: fairlead-angle: rudder-right: ",
      "warn: sleeve-cover: rudder-right: T150-lightening-right",
      "fail: access: rudder-right: turnbuckle",
      "fail: attachment-travel: elevator-upper: ",
      "fail: chafe: elevator-lower: seat-rail",
      "fail: clearance: elevator-lower: seat-rail",
  };
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

TEST(DemoAsDrawn, RunsTheRudderCableAtTheRimOfALighteningHole) {
  // Half way between its guides the cable is 1.53 in above where it should be, at WL 13.21:
  // hypot(0.04, 1.53) from the middle of a hole of 1.7 in radius. Off that come the half cable, at
  // most 0.139 / 2 in, and the build tolerance of 0.06 in. At its slope and through the thickness
  // of the sheet it comes no more than 0.002 in nearer.
  const double gap = 1.7 - std::hypot(0.04, 1.53) - 0.0695 - 0.06;
  const json crossing =
      judgement(check_as_json(as_drawn), "frame-crossing", "rudder-left", "T182-lightening-left");
  EXPECT_LE(crossing.at("value").get<double>(), gap + 1e-9);
  EXPECT_NEAR(crossing.at("value").get<double>(), gap, 0.002);
}

TEST(DemoAsDrawn, BendsTheRightRudderCableInItsFairlead) {
  // Seen from above: 0.225 in outboard in the 35 in from the pulley, 2.805 in inboard in the 51 in
  // to T166. Its rise of 0.04 in an inch makes the angle in space smaller by no more than a
  // hundredth of a degree.
  const double from_above = (std::atan(0.225 / 35) + std::atan(2.805 / 51)) * 180 / std::acos(-1.0);
  std::vector<double> turns;
  const json report = check_as_json(as_drawn);
  for (const json& check : report.at("checks"))
    if (check.at("rule") == "fairlead-angle" && check.at("verdict") == "fail")
      turns.push_back(check.at("value"));
  ASSERT_EQ(turns.size(), 1u);
  EXPECT_NEAR(turns.front(), from_above, 0.01);
}

TEST(DemoAsDrawn, RunsTheElevatorsTurnbuckleIntoItsFairlead) {
  // The cable goes 10 in aft and 1 in down to its pulley, then 23 in aft and 0.92 in up to the
  // fairlead; the way round the pulley is under 0.001 in shorter than by the corner. The turnbuckle
  // begins half of 5.25 in, its longest, ahead of its middle at 36 in. It comes forward by the
  // travel of 0.9 in, and by what 150 lbf stretch the longer part of the cable: AE = 100 D2 / G =
  // 111607 lbf.
  const double fairlead = std::hypot(10, 1) + std::hypot(23, 0.92);
  const json jam = judgement(check_as_json(as_drawn), "attachment-travel", "elevator-upper", "");
  const double length = fairlead + std::hypot(92, 3.68);
  const double stretch = 150 * (length - 36) / 111607;
  EXPECT_NEAR(jam.at("value").get<double>(), 36 - 2.625 - 0.9 - stretch - fairlead, 0.001);
}

TEST(DemoAsDrawn, EndsASleeveShortOfTheBulkhead) {
  // Ends at 110.3 in. To FS 150 it is 40 in aft, 5.2 inboard and 1.6 up to the pulley, 35 in aft
  // and 0.225 outboard, and 35 in aft at 0.055 inboard, all rising 0.04; the far face is half of
  // 0.032 in beyond. The way round the pulley is under 0.001 in shorter than by the corner.
  const double frame =
      std::hypot(40, 5.2, 1.6) + std::hypot(35, 0.225, 1.4) + std::hypot(35, 0.055 * 35, 1.4);
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
