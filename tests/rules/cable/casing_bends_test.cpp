// How far a casing turns in all.

#include <gtest/gtest.h>

#include "rules/cable_project.hpp"
#include "rules/casing_project.hpp"

namespace linewright {
namespace {

/// A casing led aft, to the right and forward again: two right angles.
SmallProject turned_back(double last_bl_in = 40) {
  SmallProject project = casing_project({corner({160, 0, 10}), corner({160, last_bl_in, 10})});
  project.project.nodes[1].at = {120, last_bl_in, 10};
  return project;
}

Judgement judged(const SmallProject& project) {
  return sole(project.judged_by("casing-bends"));
}

TEST(CasingBends, AddsUpTheAnglesOfAllBends) {
  const Judgement found = judged(turned_back());
  EXPECT_EQ(found.verdict, Verdict::pass);
  EXPECT_NEAR(*found.value, 180, 1e-9);
  EXPECT_EQ(*found.limit, 270);
  EXPECT_EQ(found.unit, Unit::degree);
}

// An S comes back to its first direction, and its friction is that of both bends.
TEST(CasingBends, CountsBendsThatUndoEachOther) {
  SmallProject project = casing_project({corner({160, 0, 10}), corner({160, 40, 10})});
  project.project.nodes[1].at = {200, 40, 10};
  EXPECT_NEAR(*judged(project).value, 180, 1e-9);
}

TEST(CasingBends, FailsByTheLinesOwnFigureAndWarnsByThatOfTheCatalogue) {
  SmallProject project = turned_back();
  Line& line = project.line(quarter_inch_casing);
  line.bend_total_deg = SourcedValue{150, {"its maker's sheet", Mark::builder}};
  const Judgement failed = judged(project);
  EXPECT_EQ(failed.verdict, Verdict::fail);
  EXPECT_TRUE(contains(failed.message, "30.0 deg more")) << failed.message;
  expect_complete(failed);
  line.bend_total_deg->source.mark = Mark::common_practice;
  EXPECT_EQ(judged(project).verdict, Verdict::warn);
}

TEST(CasingBends, PassesExactlyAtTheFigure) {
  SmallProject project = turned_back();
  project.line(quarter_inch_casing).bend_total_deg->value = 180;
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
}

TEST(CasingBends, IsUnknownWhereTheLineStatesNoTotal) {
  SmallProject project = turned_back();
  project.line(quarter_inch_casing).bend_total_deg.reset();
  const Judgement found = judged(project);
  EXPECT_EQ(found.verdict, Verdict::unknown);
  EXPECT_NEAR(*found.value, 180, 1e-9);
  EXPECT_TRUE(contains(found.mend, "bend_total"));
  expect_complete(found);
}

TEST(CasingBends, LeavesOutACornerThatAStraightLineMissesByLessThanTheTolerance) {
  SmallProject project = casing_project({corner({120, 0.05, 10})});
  project.project.build_tolerance_in = 0.06;
  EXPECT_EQ(*judged(project).value, 0);
}

TEST(CasingBends, SaysNothingOfOtherLines) {
  EXPECT_TRUE(cable_project().judged_by("casing-bends").empty());
}

}  // namespace
}  // namespace linewright
