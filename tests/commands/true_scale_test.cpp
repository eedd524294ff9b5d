// Sheets at full size: what is an inch in the aeroplane is an inch of paper, on whichever page it
// lies.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <regex>

#include "commands/command_run.hpp"
#include "model/vector.hpp"

namespace linewright {
namespace {

using test::CommandRun;
using test::contains;
using test::run;

const std::string demo = LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml";
constexpr double points = 72;
/// Places are written to a thousandth of a point.
constexpr double written = 2e-3;

/// A frame larger than a page, a tube of 44 in with a clamp at 12.4 in, and a rib.
const std::string project =
    "linewright: 1\n"
    "name: a\n"
    "build_tolerance: 0.06\n"
    "structure:\n"
    "  frames:\n"
    "    - {name: F, station: 120, thickness: 0.04, outline: [[-14, 0], [14, 0], [14, 26], [-14, "
    "26]], holes: [{name: low, centre: [-8, 3], diameter: 0.75, edge: grommet, bore: 0.5}, {name: "
    "high, centre: [9.25, 21.5], diameter: 1.5, edge: bare}]}\n"
    "    - {name: R, buttock_line: 30, thickness: 0.04, outline: [[100, 0], [106, 0], [106, 5], "
    "[100, "
    "5]]}\n"
    "  channels:\n"
    "    - {name: S, path: [[90, -8, 2], [150, -8, 2]], section: [[0, 0], [0.5, 0]], thickness: "
    "0.04, "
    "edge: bare}\n"
    "nodes:\n"
    "  - {name: fore, kind: end, at: [100, -8, 3]}\n"
    "  - {name: aft, kind: end, at: [144, -8, 3]}\n"
    "routes:\n"
    "  - {name: tube, system: static, line: tube-aluminium-1/4, from: fore, to: aft, points: "
    "[{hold: "
    "clamp, to: S, at: [112.4, -8, 3]}, {hold: grommet, through: low}]}\n";

class TrueScale : public testing::Test {
 protected:
  TrueScale() { test::write(folder_.path() / "project.yaml", project); }

  CommandRun drawn(const std::vector<std::string>& options) const {
    std::vector<std::string> words{"draw", folder_.path().string(), "--true-scale"};
    words.insert(words.end(), options.begin(), options.end());
    return run(words);
  }
  std::string frame(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"--view", "front", "--frame", "F"};
    words.insert(words.end(), more.begin(), more.end());
    return drawn(words).out;
  }
  std::string strip(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"--view", "strip", "--route", "tube"};
    words.insert(words.end(), more.begin(), more.end());
    return drawn(words).out;
  }

  test::TempFolder folder_;
};

std::vector<std::smatch> all_of(const std::string& text, const std::regex& pattern) {
  return {std::sregex_iterator(text.begin(), text.end(), pattern), {}};
}

double number(const std::smatch& match, std::size_t group) {
  return std::stod(match[group]);
}

/// Width and height of the document in inches of paper, which must be its points, too.
std::pair<double, double> paper_of(const std::string& svg) {
  static const std::regex size(
      "width=\"([0-9.]+)in\" height=\"([0-9.]+)in\" viewBox=\"0 0 ([0-9.]+) ([0-9.]+)\"");
  std::smatch match;
  if (!std::regex_search(svg, match, size)) return {};
  // The view box is written to a tenth of a point, the inches to a thousandth.
  EXPECT_NEAR(number(match, 1) * points, number(match, 3), 0.1);
  EXPECT_NEAR(number(match, 2) * points, number(match, 4), 0.1);
  return {number(match, 1), number(match, 2)};
}

/// The parts of the document that are pages.
std::vector<std::string> pages_of(const std::string& svg) {
  std::vector<std::string> pages;
  const std::string begins = "<g class=\"page\"";
  for (std::size_t at = svg.find(begins); at != std::string::npos;) {
    const std::size_t next = svg.find(begins, at + 1);
    pages.push_back(svg.substr(at, next - at));
    at = next;
  }
  return pages;
}

// The paper: ANSI/ASME Y14.1 size A is 8.5 by 11 in, ISO 216 A4 is 210 by 297 mm.
TEST_F(TrueScale, EveryPageIsAsLargeAsThePaper) {
  const std::string letter = frame();
  const double pages = static_cast<double>(pages_of(letter).size());
  EXPECT_EQ(pages, 10) << "three rows of four, two of which have nothing on them";
  EXPECT_NEAR(paper_of(letter).first, 8.5, 1e-3);
  EXPECT_NEAR(paper_of(letter).second, 11 * pages, 1e-3);
  const std::string a4 = frame({"--paper", "a4"});
  EXPECT_NEAR(paper_of(a4).first, 210 / 25.4, 1e-3);
  EXPECT_NEAR(paper_of(a4).second, 297 / 25.4 * static_cast<double>(pages_of(a4).size()), 2e-3);
  EXPECT_NEAR(paper_of(frame({"--units", "mm"})).first, 210 / 25.4, 1e-3)
      << "where lengths are metric";
  EXPECT_TRUE(contains(letter, "@page{size:8.5000in 11.0000in;margin:0}"));
  EXPECT_TRUE(contains(strip(), "@page{size:11.0000in 8.5000in;margin:0}")) << "on its side";
}

TEST_F(TrueScale, EveryPageHasARulerOfRealLength) {
  static const std::regex ruler("class=\"bar ruler\" d=\"M[0-9.]+ [0-9.]+v-9v4h([0-9.]+)v-4v9\"");
  for (const std::string& page : pages_of(frame())) {
    std::smatch match;
    ASSERT_TRUE(std::regex_search(page, match, ruler));
    EXPECT_NEAR(number(match, 1), 4 * points, written);
  }
  std::smatch match;
  const std::string metric = strip({"--units", "mm"});
  ASSERT_TRUE(std::regex_search(metric, match, ruler));
  EXPECT_NEAR(number(match, 1), 100 / 25.4 * points, written);
}

/// Where a hole's middle lies in the frame, by the page's own corner, on each page that shows it.
std::vector<Vec2> hole_places(const std::string& svg, double radius_in) {
  static const std::regex tile("data-left=\"(-?[0-9.]+)\" data-top=\"(-?[0-9.]+)\"");
  static const std::regex hole(
      "<circle class=\"cut hole\" cx=\"(-?[0-9.]+)\" cy=\"(-?[0-9.]+)\" "
      "r=\"([0-9.]+)\"");
  constexpr double margin_pt = 0.4 * points;
  std::vector<Vec2> places;
  for (const std::string& page : pages_of(svg)) {
    std::smatch corner;
    EXPECT_TRUE(std::regex_search(page, corner, tile));
    for (const std::smatch& match : all_of(page, hole)) {
      if (std::abs(number(match, 3) - radius_in * points) > written) continue;
      places.push_back({number(corner, 1) + (number(match, 1) - margin_pt) / points,
                        number(corner, 2) - (number(match, 2) - margin_pt) / points});
    }
  }
  return places;
}

TEST_F(TrueScale, AHoleLiesWhereItIsInTheFrameOnEveryPage) {
  for (const std::string paper : {"letter", "a4"}) {
    const std::string svg = frame({"--paper", paper});
    const std::map<double, Vec2> holes{{0.375, {-8, 3}}, {0.75, {9.25, 21.5}}};
    for (const auto& [radius_in, centre] : holes) {
      const std::vector<Vec2> places = hole_places(svg, radius_in);
      EXPECT_FALSE(places.empty());
      for (const Vec2 at : places) {
        // Corners of pages are written to 1e-4 in.
        EXPECT_NEAR(at.u, centre.u, 2e-4);
        EXPECT_NEAR(at.v, centre.v, 2e-4);
      }
    }
  }
}

TEST_F(TrueScale, ACrossOnTwoPagesIsTheSamePlaceOfTheFrame) {
  static const std::regex tile("data-left=\"(-?[0-9.]+)\" data-top=\"(-?[0-9.]+)\"");
  static const std::regex cross(
      "class=\"bar joint\" d=\"M([0-9.]+) ([0-9.]+)h14.*\\n<text[^>]*>([0-9]+/[0-9]+)</text>");
  std::map<std::string, std::vector<Vec2>> places;
  for (const std::string& page : pages_of(frame())) {
    std::smatch corner;
    ASSERT_TRUE(std::regex_search(page, corner, tile));
    for (const std::smatch& match : all_of(page, cross))
      places[match[3]].push_back({number(corner, 1) + number(match, 1) / points,
                                  number(corner, 2) - number(match, 2) / points});
  }
  std::size_t shared = 0;
  for (const auto& [name, all] : places) {
    shared += all.size() > 1 ? 1 : 0;
    for (const Vec2 at : all) {
      EXPECT_NEAR(at.u, all.front().u, 2e-4) << name;
      EXPECT_NEAR(at.v, all.front().v, 2e-4) << name;
    }
  }
  EXPECT_GE(shared, 6u);
}

TEST_F(TrueScale, ARibIsDrawnInItsOwnPlane) {
  const std::string rib = drawn({"--view", "front", "--frame", "R"}).out;
  EXPECT_EQ(pages_of(rib).size(), 1u);
  EXPECT_TRUE(contains(rib, ">R at BL 30.0, FS right, WL up<"));
  EXPECT_TRUE(contains(rib, ">page 1 of 1: row 1 of 1, column 1 of 1<"));
}

/// Distances along the line of its marks of a class, by the row that each lies in.
std::vector<double> marks_along(const std::string& svg, const std::string& css_class) {
  static const std::regex row("class=\"row\"[^>]*data-from=\"([0-9.]+)\" data-left=\"([0-9.]+)\"");
  const std::regex mark("class=\"" + css_class + "\" d=\"M([0-9.]+) ");
  std::vector<double> places;
  const std::vector<std::smatch> rows = all_of(svg, row);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto begins = static_cast<std::size_t>(rows[i].position());
    const std::size_t ends =
        i + 1 < rows.size() ? static_cast<std::size_t>(rows[i + 1].position()) : svg.size();
    const std::string text = svg.substr(begins, ends - begins);
    for (const std::smatch& match : all_of(text, mark))
      places.push_back(number(rows[i], 1) + (number(match, 1) - number(rows[i], 2)) / points);
  }
  return places;
}

TEST_F(TrueScale, AClampLiesAtItsDistanceAlongTheStrip) {
  const std::vector<double> supports = marks_along(strip(), "held support");
  const auto times = [&](double along_in) {
    return std::count_if(supports.begin(), supports.end(),
                         [&](double each) { return std::abs(each - along_in) < 2e-4; });
  };
  EXPECT_GE(times(12.4), 1);
  EXPECT_GE(times(20), 1);
  for (const double each : supports)
    EXPECT_TRUE(std::abs(each - 12.4) < 2e-4 || std::abs(each - 20) < 2e-4) << each;
}

TEST_F(TrueScale, TicksOfTheStripAreInchesApart) {
  std::vector<double> ticks = marks_along(strip(), "tick");
  std::sort(ticks.begin(), ticks.end());
  EXPECT_NEAR(ticks.front(), 0, 1e-4);
  EXPECT_NEAR(ticks.back(), 44, 1e-4);
  for (const double tick : ticks) EXPECT_NEAR(tick, std::round(tick), 1e-4);
}

TEST_F(TrueScale, WrongWordsAreToldInOneError) {
  const auto refused = [&](const std::vector<std::string>& options, const std::string& part) {
    std::vector<std::string> words{"draw", folder_.path().string()};
    words.insert(words.end(), options.begin(), options.end());
    const CommandRun result = run(words);
    EXPECT_EQ(result.code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_TRUE(contains(result.err, part)) << result.err;
  };
  refused({"--view", "side", "--true-scale"}, "--true-scale goes with --view front --frame NAME");
  refused({"--view", "front", "--station", "120", "--true-scale"}, "--true-scale goes with");
  refused({"--view", "front", "--frame", "F", "--paper", "a4"}, "--paper goes with --true-scale");
  refused({"--view", "front", "--frame", "F", "--true-scale", "--paper", "a3"},
          "--paper takes letter or a4, not 'a3'");
}

}  // namespace
}  // namespace linewright
