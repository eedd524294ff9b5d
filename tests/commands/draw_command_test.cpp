#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <regex>

#include "commands/command_run.hpp"
#include "commands/svg_reading.hpp"
#include "render/draw/ordinates.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::number_after;
using test::run;
using test::StarterCopy;
using test::unbalanced;

const std::string demo = LINEWRIGHT_SOURCE_DIR "/routes/as-drawn.yaml";

/// How many points of the sheet one inch of paper is, by what the document says of its own size.
double points_per_inch_of(const std::string& svg) {
  return number_after(svg, "viewBox=\"0 0 ") / number_after(svg, " width=\"");
}

double bar_length(const std::string& svg, const std::string& id) {
  const std::size_t at = svg.find("id=\"" + id + "\"");
  return at == std::string::npos ? std::nan("") : number_after(svg.substr(at), "v3h");
}

const std::vector<std::vector<std::string>> all_views{
    {"--view", "side"},
    {"--view", "plan"},
    {"--view", "front", "--frame", "T150"},
    {"--view", "front", "--station", "160"},
    {"--view", "strip", "--route", "static-left"}};

CommandRun draw(const std::string& project, const std::vector<std::string>& options) {
  std::vector<std::string> words{"draw", project};
  words.insert(words.end(), options.begin(), options.end());
  return run(words);
}

/// A sheet of the demo, drawn once for all tests.
const CommandRun& demo_sheet(const std::vector<std::string>& options) {
  static std::map<std::vector<std::string>, CommandRun> drawn;
  const auto known = drawn.find(options);
  return known != drawn.end() ? known->second
                              : drawn.emplace(options, draw(demo, options)).first->second;
}

TEST(DrawCommand, GivesWellFormedSheetsWithADrawingAndFindings) {
  for (const auto& options : all_views) {
    const CommandRun& result = demo_sheet(options);
    EXPECT_EQ(result.code, 1) << result.err;  // as `check` of the demo as first drawn
    EXPECT_TRUE(result.out.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\""));
    EXPECT_EQ(unbalanced(result.out), "") << options.back();
    EXPECT_TRUE(contains(result.out, "<path class=\"route ") ||
                contains(result.out, "<ellipse class=\"solid\""))
        << options.back();
    EXPECT_TRUE(contains(result.out, "1:")) << options.back();
    EXPECT_FALSE(contains(result.out, "nan")) << options.back();
    EXPECT_FALSE(contains(result.out, "inf")) << options.back();
  }
}

TEST(DrawCommand, IsTheSameEachTime) {
  for (const auto& options : all_views)
    EXPECT_EQ(demo_sheet(options).out, draw(demo, options).out) << options.back();
}

TEST(DrawCommand, DrawsAnInchOfPaperAnInchLong) {
  for (const auto& options : all_views) {
    const std::string svg = demo_sheet(options).out;
    EXPECT_NEAR(bar_length(svg, "paper-inch"), points_per_inch_of(svg), 0.001) << options.back();
  }
}

TEST(DrawCommand, DrawsTheScaleBarToTheRatioItStates) {
  for (const auto& options : all_views) {
    const std::string svg = demo_sheet(options).out;
    std::smatch said;
    ASSERT_TRUE(
        std::regex_search(svg, said, std::regex(">([0-9]+) in of the aeroplane, 1:([0-9]+)<")));
    EXPECT_NEAR(bar_length(svg, "scale-bar") / points_per_inch_of(svg),
                std::stod(said[1]) / std::stod(said[2]), 0.001);
  }
}

TEST(DrawCommand, PutsSupportsOfAStripAtTheirDistance) {
  const json schedule = json::parse(run({"schedule", demo, "--format", "json"}).out).at("supports");
  const std::string svg = demo_sheet({"--view", "strip", "--route", "static-left"}).out;
  const double ratio = number_after(svg, "scale 1:");
  // Where distance 0 is: where the line itself starts.
  const double start = number_after(svg, "<path class=\"route static\" d=\"M");
  std::vector<double> drawn;
  const std::string mark = "<path class=\"held support\" d=\"M";
  for (std::size_t at = svg.find(mark); at != std::string::npos; at = svg.find(mark, at + 1))
    drawn.push_back((number_after(svg.substr(at), mark) - start) / points_per_inch_of(svg) * ratio);
  std::size_t expected = 0;
  for (const json& support : schedule) {
    if (support.at("route") != "static-left") continue;
    ++expected;
    const double distance = support.at("distance_in");
    // Places on the sheet are written to 0.01 point, which is so much of the aeroplane.
    const double written = 0.01 / points_per_inch_of(svg) * ratio;
    EXPECT_TRUE(std::any_of(drawn.begin(), drawn.end(), [&](double at) {
      return std::abs(at - distance) <= written;
    })) << support;
  }
  EXPECT_GT(expected, 0u);
  EXPECT_EQ(drawn.size(), expected);
}

TEST(DrawCommand, DrawsALineThroughAFrameAtItsTrueDiameter) {
  const std::string svg = demo_sheet({"--view", "front", "--frame", "T150"}).out;
  const double per_inch = points_per_inch_of(svg) / number_after(svg, "scale 1:");
  // The across-the-line radius of the first one, against the figure in its row of the table.
  const std::size_t line = svg.find("<ellipse class=\"solid\"");
  ASSERT_NE(line, std::string::npos);
  const double diameter = 2 * number_after(svg.substr(line), " ry=\"") / per_inch;
  EXPECT_TRUE(contains(svg, fmt::format(">{:.3f}<", diameter))) << diameter;
}

TEST(DrawCommand, ListsEveryLineAndHoleOfAFrame) {
  const json holes = json::parse(run({"schedule", demo, "--format", "json"}).out).at("holes");
  const std::string svg = demo_sheet({"--view", "front", "--frame", "T150"}).out;
  int lines = 0;
  for (const json& hole : holes) {
    if (hole.at("frame") != "T150") continue;
    EXPECT_TRUE(contains(svg, ">" + hole.at("name").get<std::string>() + "<")) << hole;
    for (const json& line : hole.at("lines")) {
      ++lines;
      EXPECT_TRUE(contains(svg, ">" + line.get<std::string>() + "<")) << line;
    }
  }
  EXPECT_GT(lines, 0);
}

TEST(DrawCommand, WritesEachDimensionOfAFrameOnceAlongTheEdges) {
  const std::string svg = demo_sheet({"--view", "front", "--frame", "T166"}).out;
  // Left and right rudder cables and their spare holes are 5.22 in off BL 0, at WL 11.04 and 12.37.
  for (const std::string bl : {"-10.00", "-5.22", "0.00", "5.22", "10.00"})
    EXPECT_EQ(std::ranges::count(test::words_of_class(svg, "small", "middle"), bl), 1) << bl;
  for (const std::string wl : {"20.28", "17.00", "14.75", "12.37", "11.76", "11.04", "6.76"})
    EXPECT_EQ(std::ranges::count(test::words_of_class(svg, "small", "start"), wl), 1) << wl;
}

TEST(DrawCommand, KeepsDimensionsApartAndNearTheirPlace) {
  EXPECT_EQ(kept_apart({1, 5, 9}, 2, 0, 10), (std::vector<double>{1, 5, 9}));
  EXPECT_EQ(kept_apart({4, 4.5, 5}, 2, 0, 20), (std::vector<double>{4, 6, 8}));
  EXPECT_EQ(kept_apart({8, 9, 10}, 2, 0, 10), (std::vector<double>{6, 8, 10}));
  EXPECT_TRUE(kept_apart({}, 2, 0, 10).empty());
}

TEST(DrawCommand, ThePicturesOfTheReadmeAreCurrent) {
  const std::string readme = test::read(LINEWRIGHT_SOURCE_DIR "/README.md");
  const std::vector<std::pair<std::string, std::vector<std::string>>> pictures{
      {"strip.svg", {"as-drawn.yaml", "--view", "strip", "--route", "static-right"}},
      {"frame.svg", {"mended.yaml", "--view", "front", "--frame", "T166"}}};
  for (const auto& [file, words] : pictures) {
    const std::vector<std::string> options(words.begin() + 1, words.end());
    EXPECT_EQ(test::read(LINEWRIGHT_SOURCE_DIR "/examples/pictures/" + file),
              draw(LINEWRIGHT_SOURCE_DIR "/routes/" + words.front(), options).out)
        << "bash tests/demo/refresh draws it anew";
    EXPECT_TRUE(contains(readme, "](examples/pictures/" + file + ")"));
    EXPECT_TRUE(contains(readme, "`linewright draw routes/" + words.front()));
  }
}

TEST(DrawCommand, AFindingThatTheListBesideThePictureHasNoRoomForStandsUnderIt) {
  const std::string& svg = demo_sheet({"--view", "side"}).out;
  const json checks = json::parse(run({"check", demo, "--format", "json"}).out).at("checks");
  const auto findings = std::count_if(
      checks.begin(), checks.end(), [](const json& each) { return each.at("verdict") != "pass"; });
  double rule_y = 0;  // of the tick words under the picture
  std::vector<test::WordBox> listed;
  for (const test::WordBox& box : test::word_boxes(svg)) {
    if (box.words == "FS") rule_y = box.bottom;
    if (box.words.find(": ") != std::string::npos &&
        (box.words.starts_with("fail: ") || box.words.starts_with("warn: ")))
      listed.push_back(box);
  }
  ASSERT_EQ(std::ssize(listed), findings);
  const auto under = std::count_if(listed.begin(), listed.end(),
                                   [&](const test::WordBox& box) { return box.top > rule_y; });
  EXPECT_GT(under, 0);
  EXPECT_LT(under, findings);
  const double middle = number_after(svg, "viewBox=\"0 0 ") / 2;
  for (const test::WordBox& box : listed) {
    if (box.top >= rule_y) continue;
    EXPECT_GT(box.left, middle) << box.words;
  }
  // In one column they would take a line of two each.
  const double lowest =
      std::max_element(listed.begin(), listed.end(), [](const auto& a, const auto& b) {
        return a.bottom < b.bottom;
      })->bottom;
  EXPECT_LT(lowest - rule_y, 23.0 * static_cast<double>(under) / 2);
}

TEST(DrawCommand, TakesNoNameForMarkup) {
  const StarterCopy project;
  const std::string text = test::read(project.file("project.yaml"));
  const std::size_t line = text.find("name: ");
  const std::string name = "</svg><script>alert(1)</script>&";
  test::write(project.file("project.yaml"),
              text.substr(0, line) + "name: \"" + name + "\"" + text.substr(text.find('\n', line)));
  const std::string svg = draw(project.root(), {"--view", "side"}).out;
  EXPECT_FALSE(contains(svg, "<script"));
  EXPECT_TRUE(contains(svg, "&lt;/svg&gt;&lt;script&gt;alert(1)&lt;/script&gt;&amp;"));
  EXPECT_EQ(unbalanced(svg), "");
}

TEST(DrawCommand, SaysLengthsInMillimetresWhereAskedFor) {
  const std::string svg = draw(demo, {"--view", "side", "--units", "mm"}).out;
  EXPECT_TRUE(contains(svg, "lengths in millimetres"));
  EXPECT_TRUE(contains(svg, " mm of the aeroplane"));
}

struct Refusal {
  std::vector<std::string> options;
  std::string says;
};

TEST(DrawCommand, RefusesWhatCannotBeDrawn) {
  const std::vector<Refusal> refusals{
      {{}, "draw needs --view side, plan, front or strip"},
      {{"--view", "plam"}, "not 'plam'; did you mean 'plan'?"},
      {{"--view", "front"}, "--view front needs --station or --frame"},
      {{"--view", "front", "--station", "9", "--frame", "T150"}, "one of them"},
      {{"--view", "front", "--station", "here"}, "--station: expected a length"},
      {{"--view", "front", "--frame", "F99"}, "no frame is called 'F99'"},
      {{"--view", "strip"}, "--view strip needs --route"},
      {{"--view", "strip", "--route", "static-lef"}, "did you mean 'static-left'?"},
      {{"--view", "side", "--route", "static-left"}, "--route goes with --view strip"},
      {{"--view", "side", "--station", "9"}, "go with --view front"},
  };
  for (const Refusal& each : refusals) {
    const CommandRun result = draw(demo, each.options);
    EXPECT_EQ(result.code, 2) << each.says;
    EXPECT_EQ(result.out, "") << each.says;
    EXPECT_TRUE(contains(result.err, each.says)) << result.err;
  }
}

}  // namespace
}  // namespace linewright
