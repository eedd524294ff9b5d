#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;

/// A tube of 32 in over a box 1/2 in below it, with two clamps, and what was measured of it.
std::string project_text(const std::string& built) {
  return R"(linewright: 1
name: measured
units: in
build_tolerance: 0.06
temperature: {min: 70, rigged: 70, max: 70}
load_factor: {positive: 1, negative: -1}
structure:
  solids:
    - {name: box, box: {min: [113, -4, 2], max: [119, 4, 9.375]}}
nodes:
  - {name: forward, kind: bulkhead, at: [100, 0, 10]}
  - {name: aft, kind: bulkhead, at: [132, 0, 10]}
routes:
  - name: vent-line
    system: vent
    line: tube-aluminium-1/4
    from: forward
    to: aft
    points:
      - {at: [110, 0, 10], hold: clamp}
      - {at: [122, 0, 10], hold: clamp}
built:
)" + built;
}

class Built {
 public:
  explicit Built(const std::string& built) { test::write(file(), project_text(built)); }
  std::string file() const { return folder_ / "project.yaml"; }
  CommandRun check(std::vector<std::string> more = {}) const {
    more.insert(more.begin(), {"check", file()});
    return run(more);
  }

 private:
  test::TempFolder folder_;
};

const std::string two_clamps = R"(
  - {route: vent-line, support: 1, at: [110, 0.1, 10], on: 2026-11-20, by: AB}
  - {route: vent-line, support: 2, at: [122, 0.1, 10], on: 2026-11-21, by: CD}
)";

TEST(AsBuiltCommand, CheckSaysHowMuchIsAsBuilt) {
  const std::string text = one_line(Built(two_clamps).check().out);
  EXPECT_TRUE(contains(text,
                       "As built, and as drawn: - vent-line: 12.0 in (37 %) is as built, "
                       "20.0 in (63 %) still as drawn; 2 measures"))
      << text;
  EXPECT_TRUE(contains(text, "measuring_tolerance is not stated: 1/32 in was taken")) << text;
}

TEST(AsBuiltCommand, CheckSaysItInJson) {
  const json built = json::parse(Built(two_clamps).check({"--format", "json"}).out)["built"];
  ASSERT_EQ(built.size(), 1u);
  EXPECT_EQ(built[0]["name"], "vent-line");
  // Between the middles of the bends at the clamps, which are less than a degree.
  EXPECT_NEAR(built[0]["as_built_in"], 12, 1e-6);
  // Two legs of 10 in, each 0.1 in off at one end: longer by 0.0005 in each.
  EXPECT_NEAR(built[0]["as_drawn_in"], 20.001, 1e-5);
  EXPECT_EQ(built[0]["measured"], 2);
}

TEST(AsBuiltCommand, WithoutMeasuresTheListIsEmpty) {
  const test::StarterCopy project;
  EXPECT_TRUE(json::parse(run({"check", project.root(), "--format", "json"}).out)["built"].empty());
  EXPECT_FALSE(contains(run({"check", project.root()}).out, "As built"));
}

TEST(AsBuiltCommand, AMeasuredGapThatIsTooSmallFails) {
  const Built project(
      "  - {route: vent-line, distance: 16, gap: 0.26, to: box, on: 2026-11-20, by: AB}\n");
  const CommandRun text = project.check();
  EXPECT_EQ(text.code, 1);
  EXPECT_TRUE(contains(one_line(text.out),
                       "fail: clearance: vent-line: measured 0.260 in from box: too near"))
      << text.out;
  EXPECT_TRUE(contains(one_line(text.out),
                       "warn: as-built: vent-line: the gap to box is 0.260 in, measured "
                       "2026-11-20 by AB; 0.500 in is drawn: the drawing or "
                       "the measure is wrong"))
      << text.out;
  int measured = 0;
  const json checks = json::parse(project.check({"--format", "json"}).out)["checks"];
  for (const json& check : checks) {
    if (check["rule"] != "clearance" || check["measured"].is_null()) continue;
    ++measured;
    EXPECT_NEAR(check["value"], 0.26 - 1.0 / 32, 1e-9);
    EXPECT_EQ(check["measured"], (json{{"value", 0.26}, {"on", "2026-11-20"}, {"by", "AB"}}));
  }
  EXPECT_EQ(measured, 1);
}

TEST(AsBuiltCommand, WhatCannotBeAMeasureIsRefusedAtItsPlace) {
  const Built project(
      "  - {route: vent-line, distance: 33, at: [133, 0, 10], on: 2026-11-20, by: AB}\n");
  const CommandRun result = project.check();
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(result.out.empty());
  EXPECT_TRUE(contains(result.err,
                       "project.yaml:23:5: error: 33 in from forward is off the line: "
                       "vent-line is 32 in long as drawn"))
      << result.err;
  EXPECT_TRUE(contains(result.err, "{route: vent-line, distance: 33,")) << result.err;
}

TEST(AsBuiltCommand, TwoMeasuresThatDifferAreRefusedAndBothNamed) {
  const Built project(two_clamps +
                      "  - {route: vent-line, support: 1, fs: 111, on: 2026-11-25, by: CD}\n");
  const CommandRun result = project.check();
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(one_line(result.err),
                       "clamp of vent-line was measured twice: FS 110 BL 0.1 "
                       "WL 10 on 2026-11-20 at project.yaml:24, and FS 111 "
                       "BL 0 WL 10 on 2026-11-25 at project.yaml:26"))
      << result.err;
}

TEST(AsBuiltCommand, WalkRoundPrintsWhatIsMeasuredAlready) {
  const Built project(two_clamps +
                      "  - {route: vent-line, distance: 16, gap: 0.47, on: 2026-11-22, by: AB}\n");
  const std::string sheet = run({"walk-round", project.file()}).out;
  EXPECT_TRUE(contains(one_line(sheet),
                       "[x] support 1: clamp found at FS 110.0 BL 0.1 WL 10.0 on "
                       "2026-11-20 by AB"))
      << sheet;
  EXPECT_TRUE(contains(one_line(sheet), "measured 0.470 in on 2026-11-22 by AB")) << sheet;
  EXPECT_TRUE(contains(one_line(sheet), "[ ] support aft found at __________")) << sheet;
  const std::string csv = run({"walk-round", project.file(), "--format", "csv"}).out;
  EXPECT_TRUE(contains(csv, "110.0000 0.1000 10.0000,2026-11-20,AB\n")) << csv;
}

TEST(AsBuiltCommand, ExpandKeepsWhatWasMeasured) {
  const Built project(two_clamps);
  const CommandRun result = run({"expand", project.file()});
  EXPECT_EQ(result.code, 0) << result.err;
  EXPECT_TRUE(contains(result.out, "built:")) << result.out;
  EXPECT_TRUE(contains(result.out, "2026-11-21")) << result.out;
  EXPECT_TRUE(contains(result.out, "[110, 0, 10]")) << "the drawn place stays: " << result.out;
}

TEST(AsBuiltCommand, ValuesOfMeasuresCanBeSetForARun) {
  const Built project(two_clamps);
  const CommandRun result =
      project.check({"--set", "measuring_tolerance=0.01", "--format", "json"});
  EXPECT_EQ(result.err, "");
  EXPECT_EQ(json::parse(result.out)["set"].size(), 1u);
}

}  // namespace
}  // namespace linewright
