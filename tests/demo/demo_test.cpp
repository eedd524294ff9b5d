// The demo aeroplane: as first drawn it has four faults and no others; mended it has none.

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
  for (const std::string rule : {"bend-radius", "bend-fit", "support-spacing", "straight-run",
                                 "frame-crossing", "clearance", "chafe", "separation", "network"})
    EXPECT_TRUE(answering.contains(rule)) << rule;
}

TEST(DemoAsDrawn, HasTheFourFaultsThatBuildersMakeAndNoOthers) {
  const std::set<std::string> expected{
      "fail: bend-radius: static-left: ",
      "fail: chafe: static-right: stringer-upper-right",
      "warn: support-spacing: static-main: static-right",
      "fail: chafe: rudder-left: T182",
      "warn: frame-crossing: rudder-left: T182-lightening-left",
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
  // Half way between its guides the cable is half an inch above where it should be, at WL 12.18:
  // hypot(0.04, 1.33) from the middle of a hole of 1.5 in radius. Off that come the half cable, at
  // most 0.139 / 2 in, and the build tolerance of 0.06 in. At its slope and through the thickness
  // of the sheet it comes no more than 0.002 in nearer.
  const double gap = 1.5 - std::hypot(0.04, 1.33) - 0.0695 - 0.06;
  const json crossing =
      judgement(check_as_json(as_drawn), "frame-crossing", "rudder-left", "T182-lightening-left");
  EXPECT_LE(crossing.at("value").get<double>(), gap + 1e-9);
  EXPECT_NEAR(crossing.at("value").get<double>(), gap, 0.002);
}

TEST(DemoBoth, AreTheSameAeroplane) {
  const json drawn = check_as_json(as_drawn);
  const json right = check_as_json(mended);
  std::vector<std::string> drawn_names, right_names;
  for (const json& route : drawn.at("routes")) drawn_names.push_back(route.at("name"));
  for (const json& route : right.at("routes")) right_names.push_back(route.at("name"));
  EXPECT_EQ(drawn_names, right_names);
}

TEST(DemoBoth, SayTheSameFromRunToRun) {
  const std::string command = "check --format json " + as_drawn;
  EXPECT_EQ(run_program(command).output, run_program(command).output);
}

}  // namespace
}  // namespace linewright
