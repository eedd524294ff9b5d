#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::lines_of;
using test::run;
using test::StarterCopy;

std::vector<std::string> keys_of(const json& object) {
  std::vector<std::string> keys;
  for (const auto& [key, value] : object.items()) keys.push_back(key);
  std::sort(keys.begin(), keys.end());
  return keys;
}

TEST(ScheduleCommand, JsonHasSupportsAndHoles) {
  const StarterCopy starter;
  const CommandRun result = run({"schedule", starter.root(), "--by", "part", "--format", "json"});
  ASSERT_EQ(result.code, 0) << result.err;
  const json schedule = json::parse(result.out);
  ASSERT_FALSE(schedule.at("supports").empty());
  ASSERT_FALSE(schedule.at("holes").empty());
  EXPECT_EQ(keys_of(schedule.at("supports")[0]),
            (std::vector<std::string>{"at", "clamp", "distance_in", "from_previous_in", "hold",
                                      "hole_in", "route", "to"}));
  EXPECT_EQ(keys_of(schedule.at("holes")[0]),
            (std::vector<std::string>{"centre", "diameter_in", "edge", "edge_distance_in", "frame",
                                      "lines", "name", "nearest"}));
  EXPECT_EQ(keys_of(schedule.at("holes")[0].at("centre")),
            (std::vector<std::string>{"bl", "fs", "wl"}));
}

TEST(ScheduleCommand, TextHasAListForEachRoutePartOrFrame) {
  const StarterCopy starter;
  for (const std::string by : {"route", "part", "frame"}) {
    const CommandRun result = run({"schedule", starter.root(), "--by", by});
    EXPECT_EQ(result.code, 0) << result.err;
    EXPECT_TRUE(contains(result.out, "drill")) << result.out;
  }
}

TEST(ScheduleCommand, CsvHasARowForEachSupportAndHole) {
  const StarterCopy starter;
  const json schedule = json::parse(run({"schedule", starter.root(), "--format", "json"}).out);
  const auto lines = lines_of(run({"schedule", starter.root(), "--format", "csv"}).out);
  EXPECT_EQ(lines.size(), 1 + schedule.at("supports").size() + schedule.at("holes").size());
  EXPECT_TRUE(lines[0].starts_with("record,part,name,route,hold,fs_in,bl_in,wl_in,"));
}

TEST(ScheduleCommand, TheDrillSheetNamesTheFairleadThatFillsAHole) {
  const std::string sheet =
      run({"schedule", LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml", "--by", "frame"}).out;
  // routes/structure.yaml drills 1/2 in there, for a fairlead of that outside diameter.
  EXPECT_TRUE(contains(sheet, "T166-rudder-left: rudder-left in a fairlead 0.500 outside; "))
      << sheet;
  EXPECT_TRUE(contains(sheet, "T182-static: static-main; ")) << sheet;
}

TEST(ScheduleCommand, RefusesAnotherOrder) {
  const CommandRun result = run({"schedule", ".", "--by", "parts"});
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err,
                       "--by takes part, route, frame, not 'parts'; did you mean "
                       "'part'?"))
      << result.err;
}

TEST(PartsCommand, JsonHasARowForEachThing) {
  const StarterCopy starter;
  const CommandRun result = run({"parts", starter.root(), "--spares", "10%", "--format", "json"});
  ASSERT_EQ(result.code, 0) << result.err;
  const json parts = json::parse(result.out).at("parts");
  ASSERT_FALSE(parts.empty());
  EXPECT_EQ(keys_of(parts[0]), (std::vector<std::string>{"for", "item", "needed_before", "quantity",
                                                         "size", "spares", "standard", "unit"}));
  EXPECT_TRUE(parts[0].at("needed_before").is_null());
}

TEST(PartsCommand, TextAndCsvHaveTheSameRows) {
  const StarterCopy starter;
  const json parts =
      json::parse(run({"parts", starter.root(), "--format", "json"}).out).at("parts");
  const auto lines = lines_of(run({"parts", starter.root(), "--format", "csv"}).out);
  EXPECT_EQ(lines.size(), 1 + parts.size());
  const std::string text = run({"parts", starter.root()}).out;
  for (const json& part : parts)
    EXPECT_TRUE(contains(text, part.at("item").get<std::string>())) << text;
}

TEST(PartsCommand, RefusesSparesThatAreNoShare) {
  for (const std::string spares : {"ten", "-1%", "5000%", ""}) {
    const CommandRun result = run({"parts", ".", "--spares=" + spares});
    EXPECT_EQ(result.code, 2) << spares;
  }
  EXPECT_EQ(run({"parts", ".", "--by", "route"}).code, 2);
}

}  // namespace
}  // namespace linewright
