// `suggest`: what it prints, and that what it prints can be pasted and makes the rules pass.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using nlohmann::json;

const std::string as_drawn = LINEWRIGHT_SOURCE_DIR "/routes/as-drawn.yaml";

/// A tube beside an angle, the clamps that it has in `points`.
std::string project_text(const std::string& points, const std::string& units = "in") {
  return "linewright: 1\nname: one tube\nunits: " + units +
         "\nbuild_tolerance: 0.06 in\n"
         "temperature: {min: 30 degF, rigged: 70 degF, max: 110 degF}\n"
         "load_factor: {positive: 3.8, negative: -1.5}\n"
         "structure:\n  channels:\n"
         "    - {name: angle, path: [[-5 in, 0, 0], [50 in, 0, 0]], section: [[0, 1 in], [0, 0], "
         "[1 in, 0]], thickness: 0.04 in, edge: bare}\n"
         "nodes:\n"
         "  - {name: port, kind: static-port, at: [0, -0.8 in, 0.5 in]}\n"
         "  - {name: dial, kind: instrument, at: [40 in, -0.8 in, 0.5 in]}\n"
         "routes:\n  - name: line\n    system: static\n    line: tube-aluminium-1/4\n"
         "    from: port\n    to: dial\n" +
         points;
}

/// The `points:` of one route as they stand in what is printed to paste.
std::string pasted(const std::string& yaml) {
  return yaml.substr(yaml.find("    points:"));
}

std::vector<std::string> faults_of(const std::string& project) {
  const test::CommandRun run = test::run({"check", project, "--format", "json"});
  const json checked = json::parse(run.out);
  std::vector<std::string> found;
  for (const json& each : checked.at("checks")) {
    const std::string rule = each.at("rule");
    if (each.at("verdict") != "pass" &&
        (rule == "support-spacing" || rule == "bend-fit" || rule == "chafe" || rule == "resonance"))
      found.push_back(rule);
  }
  return found;
}

TEST(SuggestCommand, PrintsPointsThatMakeTheRulesPassWhenPasted) {
  for (const std::string units : {"in", "mm"})
    for (const std::string shown : {"in", "fraction", "mm"}) {
      const test::TempFolder folder;
      const std::string project = folder / "project.yaml";
      test::write(project, project_text("", units));
      EXPECT_FALSE(faults_of(project).empty());
      const test::CommandRun run =
          test::run({"suggest", project, "--route", "line", "--write", "--units", shown});
      ASSERT_EQ(run.code, 0) << run.err << run.out;
      EXPECT_TRUE(run.out.starts_with("routes:\n  - name: line\n    points:\n")) << run.out;
      test::write(project, project_text(pasted(run.out), units));
      EXPECT_TRUE(faults_of(project).empty()) << units << shown << run.out;
      const test::CommandRun again =
          test::run({"suggest", project, "--route", "line", "--write", "--units", shown});
      EXPECT_EQ(again.out, run.out) << units << shown;
    }
}

// Its measures name supports by number, and these are others now.
TEST(SuggestCommand, SaysThatMeasuresOfTheLineGoOutWithItsOldPoints) {
  const test::TempFolder folder;
  const std::string project = folder / "project.yaml";
  test::write(project,
              project_text("    points: [{at: [20 in, -0.8 in, 0.5 in], hold: clamp, to: angle}]\n"
                           "built:\n  - {route: line, support: 1, at: [20 in, -0.8 in, 0.6 in], "
                           "on: 2026-11-20, by: AB}\n"));
  const std::string words = "take its measures out of `built`";
  const test::CommandRun written = test::run({"suggest", project, "--write"});
  EXPECT_TRUE(test::contains(written.err, words)) << written.err;
  EXPECT_FALSE(test::contains(written.out, words));
  EXPECT_TRUE(test::contains(test::run({"suggest", project}).out, "Before you paste: "));
  test::write(project, project_text(""));
  EXPECT_EQ(test::run({"suggest", project, "--write"}).err, "");
}

TEST(SuggestCommand, WritesTapeNumbersWhereFractionsAreAskedFor) {
  const test::TempFolder folder;
  test::write(folder / "project.yaml", project_text(""));
  const test::CommandRun run =
      test::run({"suggest", folder / "project.yaml", "--write", "--units", "fraction"});
  EXPECT_TRUE(test::contains(run.out, ", -13/16, 1/2], hold: clamp, to: angle}")) << run.out;
}

TEST(SuggestCommand, NeverEditsAndNeverWritesOverAFileUnasked) {
  const test::TempFolder folder;
  const std::string project = folder / "project.yaml";
  test::write(project, project_text(""));
  const std::string out = folder / "points.yaml";
  EXPECT_EQ(test::run({"suggest", project, "--write", "--output", out}).code, 0);
  EXPECT_EQ(test::read(project), project_text(""));
  EXPECT_TRUE(test::read(out).starts_with("routes:\n"));
  EXPECT_EQ(test::run({"suggest", project, "--write", "--output", out}).code, 2);
  EXPECT_EQ(test::run({"suggest", project, "--write", "--output", project}).code, 2);
  EXPECT_EQ(test::read(project), project_text(""));
}

TEST(SuggestCommand, SaysEachSupportInJson) {
  const test::TempFolder folder;
  test::write(folder / "project.yaml",
              project_text("    points: [{at: [3, -0.8, 0.5], hold: clamp, to: angle}]\n"));
  const test::CommandRun run = test::run({"suggest", folder / "project.yaml", "--format", "json"});
  ASSERT_EQ(run.code, 0) << run.err;
  const json routes = json::parse(run.out).at("routes");
  ASSERT_EQ(routes.size(), 1u);
  EXPECT_EQ(routes[0].at("name"), "line");
  EXPECT_EQ(routes[0].at("possible"), true);
  EXPECT_EQ(routes[0].at("replaces"), 1);
  ASSERT_EQ(routes[0].at("supports").size(), 2u);
  const json& support = routes[0].at("supports")[0];
  EXPECT_NEAR(support.at("distance_in"), support.at("at").at("fs"), 0.001);
  EXPECT_EQ(support.at("on"), "angle");
  EXPECT_EQ(support.at("hold"), "clamp");
  EXPECT_TRUE(test::contains(support.at("why"), "support-spacing: ")) << support;
}

// Nothing to fix the tube to but at one end: what stops it, and where.
TEST(SuggestCommand, FailsAndSaysWhereNothingCanHoldTheLine) {
  const test::TempFolder folder;
  std::string text = project_text("");
  text.replace(text.find("[50 in, 0, 0]"), 13, "[8 in, 0, 0]");
  test::write(folder / "project.yaml", text);
  const test::CommandRun run = test::run({"suggest", folder / "project.yaml"});
  EXPECT_EQ(run.code, 1);
  EXPECT_TRUE(test::contains(run.out, "line: no choice of supports does")) << run.out;
  EXPECT_TRUE(test::contains(run.out, "support-spacing")) << run.out;
  EXPECT_TRUE(test::contains(run.out, " in from port")) << run.out;
  // What the rule asks for is what nothing can carry.
  EXPECT_TRUE(test::contains(one_line(run.out),
                             "mend: no part that is described offers a place for one more support "
                             "there: describe a part or a bracket that does"))
      << run.out;
  const test::CommandRun yaml = test::run({"suggest", folder / "project.yaml", "--write"});
  EXPECT_EQ(yaml.code, 1);
  EXPECT_EQ(yaml.out, "");
  EXPECT_TRUE(test::contains(yaml.err, "no choice of supports does")) << yaml.err;
}

TEST(SuggestCommand, RefusesLinesThatWorkAControl) {
  const test::CommandRun run = test::run({"suggest", as_drawn, "--route", "rudder-left"});
  EXPECT_EQ(run.code, 2);
  EXPECT_TRUE(test::contains(run.err, "works a control")) << run.err;
  EXPECT_EQ(test::run({"suggest", as_drawn, "--route", "rudder"}).code, 2);
}

// The 13 in behind the tee, and the tube over the stringer's edge: both are mended by supports, and
// `suggest` names no line that works a control.
TEST(SuggestCommand, MendsTheDemosFaultsOfSupports) {
  const test::CommandRun run = test::run({"suggest", as_drawn, "--format", "json"});
  const json report = json::parse(run.out);
  EXPECT_EQ(report.at("routes").size(), 14u);
  for (const json& route : report.at("routes")) {
    EXPECT_EQ(route.at("possible"), true) << route;
    for (const json& support : route.at("supports")) EXPECT_FALSE(support.at("why").is_null());
  }
  for (const json& fault : report.at("new_faults")) EXPECT_NE(fault.at("verdict"), "fail") << fault;
}

}  // namespace
}  // namespace linewright
