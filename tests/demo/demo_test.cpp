// The demo aeroplane: as first drawn it has four faults and no others; mended it has none.

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include "demo/program_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;

const std::string as_drawn = "routes/as-drawn.yaml";
const std::string mended = "routes/mended.yaml";

struct Finding {
  std::string rule;
  std::string verdict;
  std::string route;
  std::string with;

  friend auto operator<=>(const Finding&, const Finding&) = default;
};

std::set<Finding> findings(const json& report) {
  std::set<Finding> found;
  for (const json& check : report.at("checks")) {
    if (check.at("verdict") == "pass") continue;
    found.insert({check.at("rule"), check.at("verdict"), check.at("route"),
                  check.at("with").is_null() ? "" : check.at("with").get<std::string>()});
  }
  return found;
}

/// The one judgement, passes too, of a rule on a route with another thing.
json judgement(const json& report, const std::string& rule, const std::string& route,
               const std::string& with) {
  std::vector<json> found;
  for (const json& check : report.at("checks"))
    if (check.at("rule") == rule && check.at("route") == route &&
        (check.at("with").is_null() ? "" : check.at("with").get<std::string>()) == with)
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
  for (const json& check : check_as_json(mended).at("checks")) answering.insert(check.at("rule"));
  for (const std::string rule : {"bend-radius", "bend-fit", "support-spacing", "straight-run",
                                 "frame-crossing", "clearance", "chafe", "separation", "network"})
    EXPECT_TRUE(answering.contains(rule)) << rule;
}

TEST(DemoAsDrawn, Fails) { EXPECT_EQ(run_program("check " + as_drawn).exit_status, 1); }

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
