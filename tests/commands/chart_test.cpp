// Charts say what the figures say.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "commands/svg_reading.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::contains;
using test::run;

const std::string mended = LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml";

/// What a place on the sheet stands for, told by two ticks of an axis.
struct Axis {
  double first_pt = 0, first = 0, last_pt = 0, last = 0;

  double value(double pt) const {
    return first + (pt - first_pt) * (last - first) / (last_pt - first_pt);
  }
  /// A place is written to 0.01 point, a tick's words to 0.1.
  double tolerance() const { return 0.12 * std::abs((last - first) / (last_pt - first_pt)); }
};

/// The numbers along the foot (`anchor` "middle", by x) or the left (`anchor` "end", by y).
Axis axis_of(const std::string& svg, const std::string& anchor) {
  const bool across = anchor == "middle";
  const std::regex tick("<text x=\"(-?[0-9.]+)\" y=\"(-?[0-9.]+)\" class=\"\" text-anchor=\"" +
                        anchor + "\">(-?[0-9.]+)</text>");
  Axis axis;
  bool any = false;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), tick); it != std::sregex_iterator();
       ++it) {
    // Numbers of the left axis stand 3 points under their line.
    const double pt = across ? std::stod((*it)[1]) : std::stod((*it)[2]) - 3;
    const double value = std::stod((*it)[3]);
    if (!any) axis.first_pt = pt, axis.first = value;
    axis.last_pt = pt;
    axis.last = value;
    any = true;
  }
  EXPECT_NE(axis.first, axis.last);
  return axis;
}

std::vector<std::string> leak_words(const std::string& action) {
  return {"leak-test", action,
          mended,      "--system",
          "static",    "--field-elevation",
          "1200",      "--altimeter-setting",
          "29.92",     "--temperature",
          "64"};
}

std::string judged(const std::string& kind, const std::string& format) {
  std::vector<std::string> words = leak_words("judge");
  words.insert(words.end(),
               {"--readings", LINEWRIGHT_SOURCE_DIR "/routes/leak-test-" + kind + ".csv",
                "--format", format});
  return run(words).out;
}

std::vector<std::pair<double, double>> points_of(const std::string& svg,
                                                 const std::string& before) {
  std::vector<std::pair<double, double>> points;
  const std::size_t at = svg.find(before);
  if (at == std::string::npos) return points;
  const std::string d =
      svg.substr(at + before.size(), svg.find('"', at + before.size()) - at - before.size());
  static const std::regex point("[ML](-?[0-9.]+) (-?[0-9.]+)");
  for (auto it = std::sregex_iterator(d.begin(), d.end(), point); it != std::sregex_iterator();
       ++it)
    points.emplace_back(std::stod((*it)[1]), std::stod((*it)[2]));
  return points;
}

TEST(LeakChart, HasEveryReadingAtItsPlace) {
  const std::string svg = judged("tight", "svg");
  const Axis across = axis_of(svg, "middle");
  const Axis up = axis_of(svg, "end");
  const std::map<double, double> log{{0, 2201}, {10, 2196}, {60, 2174}, {180, 2119}};
  static const std::regex dot(
      "<circle class=\"dot\" cx=\"([0-9.]+)\" cy=\"([0-9.]+)\" r=\"2.6\"><title>");
  std::map<double, double> drawn;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), dot); it != std::sregex_iterator();
       ++it)
    drawn[std::round(across.value(std::stod((*it)[1])))] = up.value(std::stod((*it)[2]));
  EXPECT_EQ(drawn.size(), 19u);
  for (const auto& [time_s, reading] : log)
    EXPECT_NEAR(drawn[time_s], reading, up.tolerance()) << time_s;
}

TEST(LeakChart, DrawsTheLimitAsTheRuleHasIt) {
  // 14 CFR 23.1325(b)(2)(i): 100 ft in a minute.
  for (const std::string kind : {"tight", "leaking"}) {
    const std::string svg = judged(kind, "svg");
    const Axis across = axis_of(svg, "middle");
    const Axis up = axis_of(svg, "end");
    const auto limit = points_of(svg, "class=\"limit-line\" d=\"");
    ASSERT_GT(limit.size(), 2u);
    EXPECT_NEAR(across.value(limit.back().first) - across.value(limit.front().first), 60, 0.5);
    EXPECT_NEAR(up.value(limit.front().second) - up.value(limit.back().second), 100, 0.5) << kind;
  }
}

TEST(LeakChart, HasTheVerdictInWordsAndAsAMark) {
  for (const std::string kind : {"tight", "leaking", "unsettled"}) {
    const std::string verdict = json::parse(judged(kind, "json")).at("verdict");
    EXPECT_TRUE(contains(judged(kind, "svg"), ">" + verdict + "</text>")) << kind;
  }
}

TEST(LeakChart, OfAPlanFallsByTheLimitInItsPeriod) {
  std::vector<std::string> words = leak_words("plan");
  words.insert(words.end(), {"--format", "svg"});
  const std::string svg = run(words).out;
  const Axis up = axis_of(svg, "end");
  const auto limit = points_of(svg, "class=\"limit-line\" d=\"");
  ASSERT_GT(limit.size(), 2u);
  EXPECT_NEAR(up.value(limit.front().second), 2200, 0.5);
  EXPECT_NEAR(up.value(limit.back().second), 2100, 0.5);
}

TEST(RigCharts, HasTheTensionOfEveryTemperature) {
  const json rig =
      json::parse(run({"rig", mended, "--route", "rudder-left", "--format", "json"}).out);
  const std::string svg = run({"rig", mended, "--route", "rudder-left", "--format", "svg"}).out;
  const Axis across = axis_of(svg, "middle");
  const Axis up = axis_of(svg, "end");
  const auto curve = points_of(svg, "class=\"curve\" d=\"");
  const json& rows = rig.at("cables").at(0).at("tension");
  ASSERT_EQ(curve.size(), rows.size());
  for (std::size_t i = 0; i < curve.size(); ++i) {
    EXPECT_NEAR(across.value(curve[i].first), rows[i].at("temperature_degF").get<double>(),
                across.tolerance());
    EXPECT_NEAR(up.value(curve[i].second), rows[i].at("tension_lbf").get<double>(), up.tolerance());
  }
}

TEST(CutCharts, HasEveryBendWhereItIsMarkedOnTheTube) {
  const json cuts = json::parse(run({"cutlist", mended, "--format", "json"}).out);
  const std::string svg = run({"cutlist", mended, "--format", "svg", "--all-bends"}).out;
  const double ratio = test::number_after(svg, "in of the aeroplane, 1:");
  const double per_in = 72 / ratio;
  // Every tube begins at the left end of the first.
  const double left = test::number_after(svg, "class=\"cut tube\" d=\"M");
  static const std::regex bend("class=\"held bend\" d=\"M([0-9.]+) [0-9.]+H([0-9.]+)");
  std::vector<std::pair<double, double>> drawn;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), bend); it != std::sregex_iterator();
       ++it)
    drawn.emplace_back((std::stod((*it)[1]) - left) / per_in,
                       (std::stod((*it)[2]) - left) / per_in);
  std::size_t next = 0;
  for (const json& route : cuts.at("routes")) {
    // Cables are cut as `rig` says, and casings are led in place.
    const auto line = route.at("line").get<std::string>();
    if (line.starts_with("cable") || line.starts_with("conduit")) continue;
    for (const json& each : route.at("bends")) {
      ASSERT_LT(next, drawn.size());
      EXPECT_NEAR(drawn[next].first, each.at("mark_start_in").get<double>(), 0.011 / per_in);
      // No bend is drawn shorter than half a point.
      EXPECT_NEAR(drawn[next].second, each.at("mark_end_in").get<double>(), 0.51 / per_in);
      ++next;
    }
  }
  EXPECT_EQ(next, drawn.size());
  EXPECT_GT(next, 5u);
}

TEST(Charts, AreRefusedWhereThereAreNone) {
  EXPECT_EQ(run({"parts", mended, "--format", "svg"}).code, 2);
  EXPECT_EQ(run({"check", mended, "--format", "svg"}).code, 2);
}

}  // namespace
}  // namespace linewright
