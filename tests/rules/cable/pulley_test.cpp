// Pulleys against MIL-F-18372: the table above para 3.1.1.17.8 (size; its rows paired from a column
// scan) and 3.1.1.17.8 (plane) [verified].

#include <cmath>
#include <numbers>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

constexpr double degree = std::numbers::pi / 180;

/// A square turn to the right over a pulley whose spindle leans by `lean_deg` to the rear: the leg
/// that runs aft is off its plane by as much.
SmallProject square_turn(double diameter_in, double lean_deg = 0) {
  const Vec3 axis{std::sin(lean_deg * degree), 0, std::cos(lean_deg * degree)};
  return cable_project({pulley_at({50, 0, 10}, diameter_in, axis)}, {50, 40, 10});
}

Judgement size_of(const SmallProject& project) {
  return project.judged_by("pulley").at(0);
}

Judgement plane_of(const SmallProject& project) {
  return project.judged_by("pulley").at(1);
}

// 1/8 in cable breaks at 2,000 lb [verified: AC 43.13-1B Table 7-3]: 1 % is 20 lb, and so on.
// Ratios 10, 20 and 28 make 1.25, 2.50 and 3.50 in [calculated].
TEST(Pulley, RowsOfTheTableSetTheSizeOfAnEighthInchCablesPulley) {
  struct Row {
    double load_lbf;
    double diameter_in;
  };
  for (const Row row : {Row{20, 1.25}, Row{200, 2.50}, Row{400, 3.50}}) {
    SCOPED_TRACE(row.load_lbf);
    SmallProject project = square_turn(row.diameter_in);
    set_tension(project, 10, row.load_lbf);
    EXPECT_EQ(size_of(project).verdict, Verdict::pass);
    EXPECT_NEAR(*size_of(project).limit * 0.125, row.diameter_in, 1e-12);
    SmallProject smaller = square_turn(row.diameter_in - 0.01);
    set_tension(smaller, 10, row.load_lbf);
    EXPECT_EQ(size_of(smaller).verdict, Verdict::fail);
  }
}

TEST(Pulley, SizeBetweenRowsIsOnTheStraightLineBetweenThem) {
  SmallProject project = square_turn(2);
  set_tension(project, 10, 110);  // 5.5 %: half way from 1 to 10 %
  EXPECT_NEAR(*size_of(project).limit, 15, 1e-12);
  set_tension(project, 10, 300);  // 15 %
  EXPECT_NEAR(*size_of(project).limit, 24, 1e-12);
  set_tension(project, 10);  // 0.5 %, under the table
  EXPECT_NEAR(*size_of(project).limit, 10, 1e-12);
}

TEST(Pulley, SmallPulleyFailsWithTheSizeToUse) {
  SmallProject project = square_turn(2);
  set_tension(project, 60, 200);
  const Judgement judgement = size_of(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*judgement.value, 16);
  EXPECT_DOUBLE_EQ(*judgement.limit, 20);
  EXPECT_TRUE(contains(judgement.mend, "2.50 in")) << judgement.mend;
  EXPECT_TRUE(contains(judgement.source, "MIL-F-18372"));
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  expect_complete(judgement);
}

TEST(Pulley, WithoutALimitLoadOneTooSmallForTheRiggedTensionFailsAndAnyOtherIsUnknown) {
  SmallProject small = square_turn(2);
  set_tension(small, 200);
  EXPECT_EQ(size_of(small).verdict, Verdict::fail);
  EXPECT_TRUE(contains(size_of(small).message, "no limit load is stated"));
  SmallProject large = square_turn(2.5);
  set_tension(large, 200);
  const Judgement judgement = size_of(large);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.mend, "limit_load")) << judgement.mend;
  expect_complete(judgement);
}

TEST(Pulley, RiggedTensionAboveTheLimitLoadIsTheLoad) {
  SmallProject project = square_turn(2);
  set_tension(project, 200, 20);
  EXPECT_NEAR(*size_of(project).limit, 20, 1e-12);
}

TEST(Pulley, PastTheTablesEndASmallPulleyFailsAndALargeOneIsUnknown) {
  SmallProject small = square_turn(3.4);
  set_tension(small, 60, 401);
  EXPECT_EQ(size_of(small).verdict, Verdict::fail);
  SmallProject large = square_turn(6);
  set_tension(large, 60, 401);
  EXPECT_EQ(size_of(large).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(size_of(large).mend, "cable-7x19-5/32-steel")) << size_of(large).mend;
}

TEST(Pulley, WithoutTensionOrStrengthItsSizeIsUnknown) {
  SmallProject project = square_turn(4);
  EXPECT_EQ(size_of(project).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(size_of(project).message, "tension of rudder-left"));
  expect_complete(size_of(project));
  set_tension(project, 60, 200);
  the_line(project).breaking_strength_lbf.reset();
  EXPECT_EQ(size_of(project).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(size_of(project).message, "breaking strength"));
}

// MIL-F-18372 para 3.1.1.17.8 (a) and (b) [verified].
TEST(Pulley, PrimaryCableMayLieOneDegreeOffThePlaneAndOthersTwo) {
  EXPECT_EQ(plane_of(square_turn(3)).verdict, Verdict::pass);
  EXPECT_EQ(plane_of(square_turn(3, 1)).verdict, Verdict::pass);
  const Judgement over = plane_of(square_turn(3, 1.01));
  EXPECT_EQ(over.verdict, Verdict::fail);
  EXPECT_NEAR(*over.value, 1.01, 1e-9);
  EXPECT_TRUE(contains(over.source, "3.1.1.17.8 (a)"));
  expect_complete(over);

  SmallProject secondary = square_turn(3, 2);
  the_route(secondary).primary = false;
  EXPECT_EQ(plane_of(secondary).verdict, Verdict::pass);
  secondary = square_turn(3, 2.01);
  the_route(secondary).primary = false;
  EXPECT_EQ(plane_of(secondary).verdict, Verdict::fail);
  EXPECT_TRUE(contains(plane_of(secondary).source, "3.1.1.17.8 (b)"));
}

// Half of a right angle is as far as a drift over a foot of lead says anything.
TEST(Pulley, SaysHowFarACableDriftsUpToHalfOfARightAngle) {
  EXPECT_TRUE(contains(plane_of(square_turn(3, 44.9)).message, "of lead"));
  EXPECT_FALSE(contains(plane_of(square_turn(3, 45.1)).message, "of lead"));
}

TEST(Pulley, WorseOfTheTwoLegsCounts) {
  const SmallProject project =
      cable_project({pulley_at({50, 0, 10}, 3, {0, 0, 1})}, {50, 30, 10 + 40});
  // The second leg is 3-4-5: it leaves the level plane by asin 0.8.
  EXPECT_NEAR(*plane_of(project).value, std::asin(0.8) / degree, 1e-9);
}

TEST(Pulley, LengthAndSenseOfTheStatedAxisDoNotMatter) {
  for (const Vec3 axis : {Vec3{0, 0, -1}, Vec3{0, 0, 40}})
    EXPECT_NEAR(*plane_of(cable_project({pulley_at({50, 0, 10}, 3, axis)}, {50, 40, 10})).value, 0,
                1e-9);
}

TEST(Pulley, SpindleSetAsTheMendSaysLiesInThePlane) {
  const Vec3 horn{55, 40, 18};
  const Judgement before = plane_of(cable_project({pulley_at({50, 0, 10}, 3, {0, 0, 1})}, horn));
  ASSERT_EQ(before.verdict, Verdict::fail);
  const std::string& mend = before.mend;
  const std::size_t open = mend.find('[');
  ASSERT_NE(open, std::string::npos) << mend;
  std::size_t used = 0;
  Vec3 axis;
  std::string rest = mend.substr(open + 1);
  axis.x = std::stod(rest, &used);
  rest = rest.substr(used + 1);
  axis.y = std::stod(rest, &used);
  axis.z = std::stod(rest.substr(used + 1));
  const Judgement after = plane_of(cable_project({pulley_at({50, 0, 10}, 3, axis)}, horn));
  EXPECT_EQ(after.verdict, Verdict::pass) << mend;
}

TEST(Pulley, WithoutAnAxisItsPlaneIsUnknown) {
  SmallProject project = square_turn(3);
  the_route(project).points.front().axis.reset();
  const Judgement judgement = plane_of(project);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "axis"));
  expect_complete(judgement);
}

TEST(Pulley, PulleyOnATubeIsUnknownAndFairleadsAreNotJudged) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {20, 5, 0});
  project.route("tube", "tube-nylon-1/4", "a", "b", {pulley_at({10, 0, 0}, 3, {0, 0, 1})});
  EXPECT_EQ(sole(project.judged_by("pulley")).verdict, Verdict::unknown);
  EXPECT_TRUE(cable_project({held({50, 0, 10}, HoldKind::fairlead)}).judged_by("pulley").empty());
}

TEST(Pulley, SaysTheSameOfAReversedRun) {
  SmallProject project =
      cable_project({pulley_at({50, 0, 10}, 2, {0.1, 0, 1}), pulley_at({55, 40, 12}, 3, {1, 1, 1})},
                    {90, 45, 20});
  set_tension(project, 60, 200);
  expect_same_reversed(project, "pulley");
}

}  // namespace
}  // namespace linewright
