// `check --format sarif` against the SARIF 2.1.0 OASIS Standard (27 March 2020): its schema, and
// its sections, which are named beside what is checked; their numbers are from memory, not checked
// against it.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

#include "commands/command_run.hpp"
#include "commands/json_schema.hpp"
#include "rules/registry.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::run;
using test::StarterCopy;

json sarif_of(const std::string& project, int code) {
  const CommandRun result = run({"check", project, "--format", "sarif"});
  EXPECT_EQ(result.code, code) << result.err;
  return json::parse(result.out);
}

const json& run_of(const json& log) {
  return log.at("runs").at(0);
}

/// The only result of a rule.
json only_result(const json& log, const std::string& rule) {
  json found;
  for (const json& result : run_of(log).at("results")) {
    if (result.at("ruleId") != rule) continue;
    EXPECT_TRUE(found.is_null()) << "two results of " << rule;
    found = result;
  }
  EXPECT_FALSE(found.is_null()) << "no result of " << rule;
  return found;
}

void waive_the_bend(const StarterCopy& project) {
  project.edit(
      "static.yaml", "nodes:\n",
      "waivers:\n  - {rule: bend-radius, route: static-altimeter, reason: \"measured round "
      "after bending\"}\nnodes:\n");
}

/// A line of the builder's own whose spacing of supports nobody states.
void use_a_line_without_spacing(const StarterCopy& project) {
  project.edit("static.yaml", "nodes:\n",
               "lines:\n"
               "  - {name: tube-soft, kind: plastic-tube, material: nylon, outside: 0.25, "
               "inside: 0.17, minimum_bend_radius: 1, source: the maker's data sheet}\nnodes:\n");
  project.edit("static.yaml", "    line: tube-nylon-1/4\n    from: tee-drain\n    to: drain\n",
               "    line: tube-soft\n    from: tee-drain\n    to: drain\n");
}

const std::string demo = LINEWRIGHT_SOURCE_DIR "/routes/as-drawn.yaml";

/// The OASIS schema of the format, 2.1.0-rtm.5, as it is published; it is draft 4, of which draft 7
/// knows all that it uses.
const test::JsonSchema& oasis_schema() {
  static const test::JsonSchema schema(json::parse(
      test::read(LINEWRIGHT_SOURCE_DIR "/tests/commands/schemas/sarif-2.1.0-rtm.5.json")));
  return schema;
}

TEST(CheckSarif, IsValidByTheSchemaOfTheStandard) {
  const StarterCopy passes;
  EXPECT_EQ(oasis_schema().faults(sarif_of(passes.root(), 0)), "");
  const StarterCopy waived;
  waived.bend_too_tightly();
  waive_the_bend(waived);
  EXPECT_EQ(oasis_schema().faults(sarif_of(waived.root(), 0)), "");
  const StarterCopy unknown;
  use_a_line_without_spacing(unknown);
  EXPECT_EQ(oasis_schema().faults(sarif_of(unknown.root(), 1)), "");
  EXPECT_EQ(oasis_schema().faults(sarif_of(LINEWRIGHT_SOURCE_DIR "/routes/as-drawn.yaml", 1)), "");
}

TEST(CheckSarif, ThatSchemaRefusesWhatTheStandardDoes) {
  const StarterCopy project;
  project.bend_too_tightly();
  const json good = sarif_of(project.root(), 1);
  const auto with = [&](const std::string& place, const json& value) {
    json log = good;
    log[json::json_pointer(place)] = value;
    return oasis_schema().faults(log);
  };
  EXPECT_NE(with("/version", "2.0.0"), "");
  EXPECT_NE(with("/runs/0/results/0/level", "fail"), "");
  EXPECT_NE(with("/runs/0/results/0/kind", "unknown"), "");
  EXPECT_NE(with("/runs/0/results/0/locations/0/physicalLocation/region/startLine", 0), "");
  EXPECT_NE(with("/runs/0/tool/driver/colour", "red"), "");
}

TEST(CheckSarif, IsALogOfOneRunByTheTool) {
  const StarterCopy project;
  const json log = sarif_of(project.root(), 0);
  EXPECT_EQ(log.at("version"), "2.1.0");                                                   // 3.13.2
  EXPECT_TRUE(log.at("$schema").get<std::string>().ends_with("sarif-schema-2.1.0.json"));  // 3.13.3
  ASSERT_EQ(log.at("runs").size(), 1u);                                                    // 3.13.4
  const json driver = run_of(log).at("tool").at("driver");                         // 3.14.6, 3.18.2
  EXPECT_EQ(driver.at("name"), "linewright");                                      // 3.19.8
  EXPECT_TRUE(driver.at("version").is_string());                                   // 3.19.13
  EXPECT_EQ(run_of(log).at("columnKind"), "unicodeCodePoints");                    // 3.14.17
  EXPECT_EQ(run_of(log).at("invocations").at(0).at("executionSuccessful"), true);  // 3.20.14
}

TEST(CheckSarif, LeavesOutWhatPasses) {
  const StarterCopy project;
  EXPECT_EQ(run_of(sarif_of(project.root(), 0)).at("results"), json::array());  // 3.14.23
}

TEST(CheckSarif, HasEveryRuleInItsDriver) {
  const StarterCopy project;
  const json rules = run_of(sarif_of(project.root(), 0)).at("tool").at("driver").at("rules");
  std::set<std::string> ids;
  for (const json& rule : rules) {
    EXPECT_TRUE(ids.insert(rule.at("id")).second);                         // 3.49.3
    EXPECT_FALSE(rule.at("shortDescription").at("text").empty()) << rule;  // 3.49.9
    EXPECT_FALSE(rule.at("help").at("text").empty()) << rule;              // 3.49.13
  }
  for (const Rule* rule : all_rules()) EXPECT_TRUE(ids.contains(std::string(rule->name)));
  EXPECT_EQ(ids.size(), all_rules().size() + 1);
  EXPECT_TRUE(ids.contains("waivers"));
}

TEST(CheckSarif, HasAResultForEveryFindingOfTheJsonForm) {
  const json log = sarif_of(demo, 1);
  const json checks = json::parse(run({"check", demo, "--format", "json"}).out).at("checks");
  std::size_t findings = 0;
  for (const json& check : checks)
    if (check.at("verdict") != "pass") ++findings;
  EXPECT_GE(findings, 8u);
  EXPECT_EQ(run_of(log).at("results").size(), findings);
}

TEST(CheckSarif, SaysOfEveryResultWhichRuleWhatAndWhere) {
  const json log = sarif_of(demo, 1);
  const json rules = run_of(log).at("tool").at("driver").at("rules");
  for (const json& result : run_of(log).at("results")) {
    const std::size_t index = result.at("ruleIndex");  // 3.27.6
    ASSERT_LT(index, rules.size());
    EXPECT_EQ(rules.at(index).at("id"), result.at("ruleId"));                   // 3.27.5
    EXPECT_FALSE(result.at("message").at("text").empty());                      // 3.27.11, 3.11.8
    const json physical = result.at("locations").at(0).at("physicalLocation");  // 3.27.12, 3.28.3
    const std::string uri = physical.at("artifactLocation").at("uri");          // 3.4.3
    EXPECT_FALSE(uri.starts_with("/")) << uri;
    EXPECT_EQ(uri.find(':'), std::string::npos) << uri;
    EXPECT_GE(physical.at("region").at("startLine"), 1);    // 3.30.5
    EXPECT_GE(physical.at("region").at("startColumn"), 1);  // 3.30.6
  }
}

TEST(CheckSarif, CallsAFailAnError) {
  const StarterCopy project;
  project.bend_too_tightly();
  const json result = only_result(sarif_of(project.root(), 1), "bend-radius");
  EXPECT_EQ(result.at("kind"), "fail");                 // 3.27.9
  EXPECT_EQ(result.at("level"), "error");               // 3.27.10
  EXPECT_EQ(result.at("suppressions"), json::array());  // 3.27.23
  EXPECT_EQ(result.at("properties").at("limit"), 1.0);  // the least radius of tube-nylon-1/4
}

TEST(CheckSarif, CallsAWarningAWarning) {
  const StarterCopy project;
  project.edit("static.yaml", "      - {spaced: 12 1/2, hold: clamp, to: C1}\n", "");
  // Without it the tube can reach the channel, too, which is a fail.
  const json result = only_result(sarif_of(project.root(), 1), "support-spacing");
  EXPECT_EQ(result.at("kind"), "fail");
  EXPECT_EQ(result.at("level"), "warning");
}

// 3.27.10: a level is given to nothing but a kind of "fail".
TEST(CheckSarif, CallsAnUnknownOpenAndGivesItNoLevel) {
  const StarterCopy project;
  use_a_line_without_spacing(project);
  const json log = sarif_of(project.root(), 1);
  std::size_t open = 0;
  for (const json& result : run_of(log).at("results")) {
    EXPECT_EQ(result.at("kind") != "fail", result.at("level") == "none") << result;
    if (result.at("kind") == "open") ++open;
  }
  EXPECT_GE(open, 1u);
}

TEST(CheckSarif, CallsAWaivedFailAnErrorThatIsSuppressed) {
  const StarterCopy project;
  project.bend_too_tightly();
  waive_the_bend(project);
  const json result = only_result(sarif_of(project.root(), 0), "bend-radius");
  EXPECT_EQ(result.at("kind"), "fail");
  EXPECT_EQ(result.at("level"), "error");
  EXPECT_EQ(result.at("suppressions"), json::parse(R"([{"kind": "inSource", "status": "accepted",
      "justification": "measured round after bending"}])"));  // 3.35
}

TEST(CheckSarif, NamesAResultOfAnIdleWaiver) {
  const StarterCopy project;
  waive_the_bend(project);
  EXPECT_EQ(only_result(sarif_of(project.root(), 0), "waivers").at("level"), "warning");
}

// 3.27.17: the same finding is known again though lines of the file have been added above it.
TEST(CheckSarif, KnowsAFindingAgainByRuleRouteAndNeighbour) {
  const StarterCopy project;
  project.bend_too_tightly();
  const json before = only_result(sarif_of(project.root(), 1), "bend-radius");
  project.edit("static.yaml", "nodes:\n", "# one line more\nnodes:\n");
  const json after = only_result(sarif_of(project.root(), 1), "bend-radius");
  EXPECT_NE(before.at("locations"), after.at("locations"));
  EXPECT_EQ(before.at("partialFingerprints"), after.at("partialFingerprints"));
  EXPECT_EQ(after.at("partialFingerprints").at("ruleRouteNeighbour/v1"),
            "bend-radius:static-altimeter:");
}

TEST(CheckSarif, EscapesWhatAReferenceCannotHold) {
  const StarterCopy project;
  project.bend_too_tightly();
  project.edit("project.yaml", "static.yaml", "'a b%é:1.yaml'");
  std::filesystem::rename(project.file("static.yaml"), project.file("a b%é:1.yaml"));
  const json result = only_result(sarif_of(project.root(), 1), "bend-radius");
  EXPECT_EQ(result.at("locations").at(0).at("physicalLocation").at("artifactLocation").at("uri"),
            "a%20b%25%C3%A9%3A1.yaml");
}

TEST(CheckSarif, NotesWhatWasTakenForWantOfAStatement) {
  const json notes =
      run_of(sarif_of(demo, 1)).at("invocations").at(0).at("toolExecutionNotifications");
  ASSERT_FALSE(notes.empty());
  for (const json& note : notes) EXPECT_EQ(note.at("level"), "note");  // 3.58.6
  EXPECT_TRUE(test::contains(notes.dump(), "excitation.cruise_rpm is not stated"));
}

}  // namespace
}  // namespace linewright
