// What is judged, and what is passed over, close to the fittings at a line's ends. Each case is
// written down in every way that leaves the aeroplane the same.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <ostream>
#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// How a case is written down.
struct Written {
  double units_per_inch = 1;
  double side = 1;  ///< -1: mirrored
  bool reversed = false;
  std::vector<double> collinear = {};  ///< shares of the way at which points are added

  std::string length(double inches) const { return fmt::format("{:.9f}", inches * units_per_inch); }
  std::string at(double fs, double bl, double wl) const {
    return "[" + length(fs) + ", " + length(side * bl) + ", " + length(wl) + "]";
  }
  std::string pair(double u, double v) const { return "[" + length(u) + ", " + length(v) + "]"; }
};

std::ostream& operator<<(std::ostream& stream, const Written& written) {
  return stream << (written.units_per_inch == 1 ? "in" : "mm")
                << (written.side < 0 ? ", mirrored" : "") << (written.reversed ? ", reversed" : "")
                << ", " << written.collinear.size() << " points";
}

std::vector<Written> every_way() {
  std::vector<Written> all;
  for (const double units : {1.0, 25.4})
    for (const double side : {1.0, -1.0})
      for (const bool reversed : {false, true})
        for (const std::vector<double>& points :
             {std::vector<double>{}, std::vector<double>{0.03}, std::vector<double>{0.11, 0.52}})
          all.push_back({units, side, reversed, points});
  return all;
}

/// A 1/4 in tube straight from one bulkhead fitting to another.
std::string straight_route(const Written& as, Vec3 from, Vec3 to,
                           const std::string& line = "tube-nylon-1/4") {
  std::string points;
  for (const double share : as.collinear) {
    const Vec3 at = as.reversed ? between(to, from, share) : between(from, to, share);
    points += (points.empty() ? "" : ", ") + ("{at: " + as.at(at.x, at.y, at.z) + "}");
  }
  return fmt::format("  - {{name: tube, system: vent, line: {}, from: {}, to: {}, points: [{}]}}\n",
                     line, as.reversed ? "b" : "a", as.reversed ? "a" : "b", points);
}

std::string nodes(const Written& as, Vec3 from, Vec3 to) {
  return "  - {name: a, kind: bulkhead, at: " + as.at(from.x, from.y, from.z) + "}\n" +
         "  - {name: b, kind: bulkhead, at: " + as.at(to.x, to.y, to.z) + "}\n";
}

ProjectSections project(const Written& as, const std::string& structure, Vec3 from, Vec3 to) {
  ProjectSections sections;
  sections.units = as.units_per_inch == 1 ? "in" : "mm";
  sections.structure = structure;
  sections.nodes = nodes(as, from, to);
  sections.routes = straight_route(as, from, to);
  return sections;
}

/// The worst of what clearance says, and its value; a pass where it says nothing.
Judgement worst_clearance(const ProjectSections& sections) {
  Judgement worst;
  worst.verdict = Verdict::pass;
  for (const Judgement& each : judged(sections, "clearance"))
    if (each.verdict > worst.verdict ||
        (each.verdict == worst.verdict && each.margin() < worst.margin()))
      worst = each;
  return worst;
}

using Drawn = std::function<ProjectSections(const Written&)>;

/// The same verdict and value whichever way the case is written down, with nine decimals.
void expect_everywhere(Verdict verdict, double value_in, const Drawn& drawn,
                       double within_in = 1e-6) {
  for (const Written& as : every_way()) {
    SCOPED_TRACE(testing::PrintToString(as));
    const Judgement worst = worst_clearance(drawn(as));
    EXPECT_EQ(worst.verdict, verdict) << worst.message;
    ASSERT_TRUE(worst.value);
    EXPECT_NEAR(*worst.value, value_in, within_in);
  }
}

/// A channel up along WL at FS 99, its lip across FS 100.5, BL 0 to 1. Drawn in FS and BL.
std::string lipped_channel(const Written& as) {
  return "  channels: [{name: C, path: [" + as.at(99, 0, 0) + ", " + as.at(99, 0, 20) +
         "], section: [" + as.pair(0, 0) + ", " + as.pair(1.5, 0) + ", " +
         as.pair(1.5, as.side * 1) + "], thickness: " + as.length(0.025) + ", edge: bare}]\n";
}

TEST(NearFitting, FailsALipThatStandsAcrossTheLine) {
  // The line goes through the lip's middle plane: its radius and half the sheet deep.
  expect_everywhere(Verdict::fail, -0.125 - 0.0125, [](const Written& as) {
    return project(as, lipped_channel(as), {100, 0.15, 11}, {110, 0.15, 11});
  });
}

TEST(NearFitting, FailsALipThatTheLineOnlyGrazes) {
  // The lip ends at BL 1, the line runs at BL 1.1: 0.1 less radius and half the sheet.
  expect_everywhere(Verdict::fail, 0.1 - 0.125 - 0.0125, [](const Written& as) {
    return project(as, lipped_channel(as), {100, 1.1, 11}, {110, 1.1, 11});
  });
}

std::string upright(const Written& as, double wl_of_edge) {
  return "  channels: [{name: C, path: [" + as.at(98, 0, 5) + ", " + as.at(104, 0, 5) +
         "], section: [" + as.pair(0, 0) + ", " + as.pair(0, wl_of_edge - 5) +
         "], thickness: " + as.length(0.025) + ", edge: bare}]\n";
}

TEST(NearFitting, JudgesABareEdgeAlongAShortLine) {
  // Plastic tube wants 1/16 in at a support, by practice; half the sheet lies over the edge.
  for (const double gap : {0.005, 0.05, 0.0624})
    expect_everywhere(Verdict::warn, gap, [gap](const Written& as) {
      return project(as, upright(as, 10 - 0.125 - 0.0125 - gap), {100, 0, 10}, {101.9, 0, 10});
    });
  expect_everywhere(Verdict::fail, -0.02, [](const Written& as) {
    return project(as, upright(as, 10 - 0.125 - 0.0125 + 0.02), {100, 0, 10}, {101.9, 0, 10});
  });
}

TEST(NearFitting, JudgesAFrameOrPanelThatTheFittingIsEdgeOnTo) {
  expect_everywhere(Verdict::warn, 0.005, [](const Written& as) {
    return project(as,
                   "  panels: [{name: P, thickness: " + as.length(0.025) + ", corners: [" +
                       as.at(98, 0, 5) + ", " + as.at(104, 0, 5) + ", " + as.at(104, 0, 9.8575) +
                       ", " + as.at(98, 0, 9.8575) + "]}]\n",
                   {100, 0, 10}, {101.9, 0, 10});
  });
  expect_everywhere(Verdict::warn, 0.005, [](const Written& as) {
    return project(as,
                   "  frames: [{name: F, station: " + as.length(100) + ", thickness: " +
                       as.length(0.032) + ", holes: [], outline: [" + as.pair(-4, 2) + ", " +
                       as.pair(4, 2) + ", " + as.pair(4, 9.87) + ", " + as.pair(-4, 9.87) + "]}]\n",
                   {100, 0, 10}, {100, 1.9, 10});
  });
}

std::string skin(const Written& as, const std::string& name, double fs) {
  return "    - {name: " + name + ", thickness: " + as.length(0.025) + ", corners: [" +
         as.at(fs, -4, 4) + ", " + as.at(fs, 4, 4) + ", " + as.at(fs, 4, 16) + ", " +
         as.at(fs, -4, 16) + "]}\n";
}

TEST(NearFitting, PassesOverTheSkinThatTheFittingStandsOn) {
  for (const Written& as : every_way())
    for (const double fs : {100.0, 99.9, 99.6, 100.1})
      for (const Vec3 to : {Vec3{112, 0, 10}, Vec3{110, 6, 10}, Vec3{108, 0, 15}}) {
        SCOPED_TRACE(testing::PrintToString(as) + " " + std::to_string(fs));
        EXPECT_EQ(worst_clearance(project(as, "  panels:\n" + skin(as, "S", fs), {100, 0, 10}, to))
                      .verdict,
                  Verdict::pass);
      }
}

/// A skin of 24 by 12 in that is twisted: each of its two folds is 0.2 in off its middle.
std::string warped_skin(const Written& as) {
  return "  panels:\n    - {name: S, thickness: " + as.length(0.025) + ", corners: [" +
         as.at(99.8, -12, 4) + ", " + as.at(100.2, 12, 4) + ", " + as.at(99.8, 12, 16) + ", " +
         as.at(100.2, -12, 16) + "]}\n";
}

// A port on the skin half way between its two folds stands on the one sheet that there is.
TEST(NearFitting, PassesOverASkinThatIsNotFlat) {
  for (const Written& as : every_way())
    for (const Vec3 to : {Vec3{112, 0, 10}, Vec3{110, 4, 10}, Vec3{110, 0, 13}}) {
      SCOPED_TRACE(testing::PrintToString(as) + " " + std::to_string(to.y));
      EXPECT_EQ(worst_clearance(project(as, warped_skin(as), {100, 0, 10}, to)).verdict,
                Verdict::pass);
    }
}

TEST(NearFitting, FailsALineThatRunsAlongASkinThatIsNotFlat) {
  for (const Written& as : every_way())
    EXPECT_EQ(worst_clearance(project(as, warped_skin(as), {100, 0, 10}, {100.2, 6, 10})).verdict,
              Verdict::fail);
}

TEST(NearFitting, FailsAnotherSkinBehindTheOneThatTheFittingStandsOn) {
  for (const double behind : {0.15, 0.2, 0.3, 0.49, 0.6})
    expect_everywhere(Verdict::fail, -0.125 - 0.0125, [behind](const Written& as) {
      return project(as, "  panels:\n" + skin(as, "S", 100) + skin(as, "T", 100 + behind),
                     {100, 0, 10}, {112, 0, 10});
    });
}

TEST(NearFitting, FailsALineThatStaysInTheSkinItsFittingStandsOn) {
  // Along the skin, a tenth of an inch off its surface: 0.025 in of the tube is in it.
  expect_everywhere(Verdict::fail, -0.025, [](const Written& as) {
    return project(as, "  panels:\n" + skin(as, "S", 100 - 0.1125), {100, -0.9, 10},
                   {100, 0.9, 10});
  });
}

TEST(NearFitting, PassesOverABracketsEdgeThatTheLineLeadsAwayFrom) {
  // A bracket across the line, its upper edge 0.2 in over the fitting's middle.
  for (const Written& as : every_way()) {
    SCOPED_TRACE(testing::PrintToString(as));
    const std::string bracket = "  channels: [{name: B, path: [" + as.at(100, -2, 8) + ", " +
                                as.at(100, 2, 8) + "], section: [" + as.pair(0, 0) + ", " +
                                as.pair(0, 2.2) + "], thickness: " + as.length(0.063) +
                                ", edge: bare}]\n";
    EXPECT_EQ(worst_clearance(project(as, bracket, {100, 0, 10}, {112, 0, 10})).verdict,
              Verdict::pass);
  }
}

TEST(NearFitting, PassesOverTheRimOfAHoleThatTheFittingFills) {
  for (const Written& as : every_way()) {
    SCOPED_TRACE(testing::PrintToString(as));
    const std::string frame = "  frames: [{name: F, station: " + as.length(100) +
                              ", thickness: " + as.length(0.032) + ", outline: [" + as.pair(-6, 4) +
                              ", " + as.pair(6, 4) + ", " + as.pair(6, 16) + ", " +
                              as.pair(-6, 16) + "], holes: [{name: h, centre: " + as.pair(0, 10) +
                              ", diameter: " + as.length(0.4) + ", edge: bare}]}]\n";
    EXPECT_EQ(worst_clearance(project(as, frame, {100, 0, 10}, {112, 0, 10})).verdict,
              Verdict::pass);
  }
}

TEST(NearFitting, FailsATubeThatEndsInTheSweepOfAMovingPart) {
  // Steps of the sweep swell the part by less than 0.001 in.
  expect_everywhere(
      Verdict::fail, -0.125 - 0.2 + 0.1,
      [](const Written& as) {
        return project(as,
                       "  movers: [{name: bell, pivot: " + as.at(106, 0, 6) +
                           ", axis: [0, 1, 0], points: [" + as.at(106, 0, 6) + ", " +
                           as.at(106, 0, 10.3) + "], radius: " + as.length(0.2) +
                           ", sweep: [-0.01, 0.01]}]\n",
                       {106, 0.1, 10}, {106, 9, 10});
      },
      0.001);
}

/// Two lines from one tee at FS 100, `degrees` apart and `length_in` long.
ProjectSections two_from_a_tee(double degrees, double length_in, const std::string& line,
                               const Written& as) {
  const double half = degrees / 2 * std::numbers::pi / 180;
  const double fs = 100 + length_in * std::cos(half);
  const double bl = length_in * std::sin(half);
  ProjectSections sections;
  sections.units = as.units_per_inch == 1 ? "in" : "mm";
  sections.nodes = "  - {name: t, kind: tee, fixed: true, at: " + as.at(100, 0, 10) + "}\n" +
                   "  - {name: b, kind: bulkhead, at: " + as.at(fs, bl, 10) + "}\n" +
                   "  - {name: c, kind: bulkhead, at: " + as.at(fs, -bl, 10) + "}\n";
  const auto route = [&](const std::string& name, const std::string& to, double side) {
    std::string points;
    for (const double share : as.collinear) {
      const double from_tee = as.reversed ? 1 - share : share;
      points += (points.empty() ? "" : ", ") +
                ("{at: " + as.at(100 + (fs - 100) * from_tee, side * bl * from_tee, 10) + "}");
    }
    return "  - {name: " + name + ", system: vent, line: " + line +
           ", from: " + (as.reversed ? to : "t") + ", to: " + (as.reversed ? "t" : to) +
           ", points: [" + points + "]}\n";
  };
  sections.routes = route("first", "b", 1) + route("second", "c", -1);
  return sections;
}

Verdict worst_separation(const ProjectSections& sections) {
  Verdict worst = Verdict::pass;
  for (const Judgement& each : judged(sections, "separation"))
    worst = std::max(worst, each.verdict);
  return worst;
}

TEST(NearFitting, FailsTwoLinesInOnePlaceBeyondTheTee) {
  for (const Written& as : every_way())
    for (const std::string line : {"tube-nylon-1/4", "tube-aluminium-1/4"})
      for (const double degrees : {0.5, 2.0, 10.0}) {
        SCOPED_TRACE(testing::PrintToString(as) + line + std::to_string(degrees));
        EXPECT_EQ(worst_separation(two_from_a_tee(degrees, 1.9, line, as)), Verdict::fail);
      }
}

TEST(NearFitting, LetsLinesPartAtATeeOrYAsFittingsDo) {
  for (const Written& as : every_way())
    for (const double degrees : {30.0, 45.0, 90.0, 180.0}) {
      SCOPED_TRACE(testing::PrintToString(as) + std::to_string(degrees));
      EXPECT_EQ(worst_separation(two_from_a_tee(degrees, 12, "tube-nylon-1/4", as)), Verdict::pass);
      EXPECT_EQ(worst_separation(two_from_a_tee(degrees, 1.9, "tube-nylon-1/4", as)),
                Verdict::pass);
    }
}

TEST(NearFitting, SaysHowDeepTwoLinesLieInEachOtherPastTheFitting) {
  // 1/4 in and twice 0.25 in from the tee, the straights are 2 x 0.75 sin 5 deg apart.
  const Judgement judgement =
      only(judged(two_from_a_tee(10, 1.9, "tube-nylon-1/4", {}), "separation"));
  const double diameter = 2 * ProjectText(two_from_a_tee(10, 1.9, "tube-nylon-1/4", {}))
                                  .route("first")
                                  .line->largest_radius_in();
  const double from_tee = 0.25 + 2 * diameter;
  EXPECT_NEAR(*judgement.value, from_tee * std::sin(10 * std::numbers::pi / 180) - diameter, 1e-6);
  EXPECT_EQ(*judgement.limit, 0);
}

}  // namespace
}  // namespace linewright
