#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;
using test::StarterCopy;

std::size_t count_of(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1))
    ++count;
  return count;
}

TEST(WalkRound, HasASheetForEveryRouteWithinEightyColumns) {
  const StarterCopy project;
  const CommandRun result = run({"walk-round", project.root()});
  ASSERT_EQ(result.code, 0) << result.err;
  EXPECT_EQ(count_of(result.out, "Date __________  By __________"), 5u);
  for (const std::string& line : test::lines_of(result.out))
    EXPECT_LE(columns_of(line), text_columns) << line;
}

TEST(WalkRound, AsksForTheMeasureBesideItsLimit) {
  const StarterCopy project;
  const std::string sheet = run({"walk-round", project.root(), "--route", "static-left"}).out;
  EXPECT_TRUE(contains(sheet, "[ ] support   port-left")) << sheet;
  EXPECT_TRUE(contains(sheet, "[ ] bend      bend-radius: ")) << sheet;
  EXPECT_TRUE(contains(sheet, "drawn 1.25 in, at least 1.00 in: measured __________")) << sheet;
  EXPECT_FALSE(contains(sheet, "static-right:"));
}

TEST(WalkRound, SaysWhatTheDrawingFailsAlready) {
  const StarterCopy project;
  project.bend_too_tightly();
  const CommandRun result = run({"walk-round", project.root(), "--route", "static-altimeter"});
  EXPECT_EQ(result.code, 0) << "the sheets are no verdict";
  EXPECT_TRUE(contains(one_line(result.out), "[the drawing: fail]")) << result.out;
}

TEST(WalkRound, EveryLimitOfACheckThatCanBeMeasuredIsOnASheet) {
  const StarterCopy project;
  const json checks = json::parse(run({"check", project.root(), "--format", "json"}).out)["checks"];
  std::size_t gaps = 0;
  for (const json& check : checks)
    if (check["rule"] == "clearance" || check["rule"] == "chafe" || check["rule"] == "separation")
      ++gaps;
  ASSERT_GT(gaps, 0u);
  const std::string csv = run({"walk-round", project.root(), "--format", "csv"}).out;
  EXPECT_EQ(count_of(csv, ",gap,"), gaps);
}

TEST(WalkRound, CsvLeavesTheColumnsToFillInEmpty) {
  const StarterCopy project;
  const std::vector<std::string> lines =
      test::lines_of(run({"walk-round", project.root(), "--format", "csv"}).out);
  ASSERT_GT(lines.size(), 1u);
  EXPECT_EQ(lines[0],
            "route,distance_in,fs_in,bl_in,wl_in,kind,rule,what,drawn,limit,sense,unit,verdict,"
            "measured,on,by");
  for (std::size_t i = 1; i < lines.size(); ++i) EXPECT_TRUE(lines[i].ends_with(",,,")) << lines[i];
}

TEST(WalkRound, RefusesARouteThatIsNotThere) {
  const StarterCopy project;
  const CommandRun result = run({"walk-round", project.root(), "--route", "static-lft"});
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err, "did you mean 'static-left'?")) << result.err;
}

}  // namespace
}  // namespace linewright
