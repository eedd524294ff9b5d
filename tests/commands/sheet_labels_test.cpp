// No words lie on each other on any sheet of the demo.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "commands/svg_reading.hpp"
#include "one_case_in.hpp"

namespace linewright {
namespace {

using test::run;

const std::string as_drawn = LINEWRIGHT_SOURCE_DIR "/routes/as-drawn.yaml";
const std::string mended = LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml";
const std::string readings = LINEWRIGHT_SOURCE_DIR "/routes/leak-test-";

void expect_clear(const std::vector<std::string>& words) {
  const std::string svg = run(words).out;
  std::string command;
  for (const std::string& word : words) command += word + " ";
  EXPECT_GT(test::word_boxes(svg).size(), 4u) << command;
  EXPECT_EQ(test::overlapping_words(svg), "") << command;
  EXPECT_EQ(test::unbalanced(svg), "") << command;
}

std::vector<std::string> names(const std::string& project, const std::string& list,
                               const std::string& key) {
  std::vector<std::string> all;
  const auto schedule = nlohmann::json::parse(run({"schedule", project, "--format", "json"}).out);
  for (const auto& each : schedule.at(list)) {
    const std::string name = each.at(key);
    if (all.empty() || all.back() != name) all.push_back(name);
  }
  return all;
}

TEST(SheetLabels, KeepOffEachOtherFromTheSideAndAbove) {
  std::vector<std::vector<std::string>> sheets;
  for (const std::string& project : {as_drawn, mended})
    for (const std::string view : {"side", "plan"})
      for (const std::string units : {"in", "mm", "fraction"})
        sheets.push_back({"draw", project, "--view", view, "--units", units});
  for (const std::vector<std::string>& sheet : test::some_of(sheets)) expect_clear(sheet);
}

TEST(SheetLabels, KeepOffEachOtherAtEveryFrame) {
  std::vector<std::string> frames = names(as_drawn, "holes", "frame");
  // A rib has no view from the front.
  std::erase_if(frames, [](const std::string& name) { return name.starts_with("W"); });
  EXPECT_GE(frames.size(), 3u);
  for (const std::string& frame : frames)
    expect_clear({"draw", as_drawn, "--view", "front", "--frame", frame});
}

TEST(SheetLabels, KeepOffEachOtherOnEveryStrip) {
  const std::vector<std::string> routes = names(as_drawn, "supports", "route");
  EXPECT_GE(routes.size(), 8u);
  for (const std::string& route : test::some_of(routes))
    expect_clear({"draw", as_drawn, "--view", "strip", "--route", route});
}

TEST(SheetLabels, KeepOffEachOtherAtFullSize) {
  expect_clear({"draw", mended, "--view", "front", "--frame", "T166", "--true-scale"});
  for (const std::string& route : test::some_of(names(mended, "supports", "route")))
    expect_clear({"draw", mended, "--view", "strip", "--route", route, "--true-scale"});
}

TEST(SheetLabels, KeepOffEachOtherOnCharts) {
  expect_clear({"cutlist", mended, "--format", "svg"});
  expect_clear({"cutlist", mended, "--format", "svg", "--all-bends"});
  expect_clear({"rig", mended, "--format", "svg"});
  for (const std::string kind : {"plan", "tight", "leaking", "unsettled"}) {
    std::vector<std::string> words{"leak-test", kind == "plan" ? "plan" : "judge",
                                   mended,      "--system",
                                   "static",    "--field-elevation",
                                   "1200",      "--altimeter-setting",
                                   "29.92",     "--temperature",
                                   "64",        "--format",
                                   "svg"};
    if (kind != "plan") words.insert(words.end(), {"--readings", readings + kind + ".csv"});
    expect_clear(words);
  }
}

}  // namespace
}  // namespace linewright
