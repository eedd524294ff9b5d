// A pushrod's arms through its travel, and how its end bearings tilt.

#include <gtest/gtest.h>

#include "rules/cable_project.hpp"
#include "rules/rod_project.hpp"

namespace linewright {
namespace {

std::vector<Judgement> judged(const SmallProject& project) {
  return project.judged_by("rod-travel");
}

TEST(RodTravel, PassesWhereBothArmsFollowAndTheEndsTakeTheirTilt) {
  SmallProject project = rod_project(1.5);
  project.project.routes[0].rod_end_angle_deg = 10;
  const std::vector<Judgement> all = judged(project);
  EXPECT_EQ(verdicts(all), (std::vector{Verdict::pass, Verdict::pass}));
  EXPECT_NEAR(*all[0].value, 60, 1e-6);  // arms of 3 in turned by asin(1.5 / 3)
  EXPECT_NEAR(*all[1].value, 0, 1e-6);
}

TEST(RodTravel, FailsWhereAnArmComesOverCentre) {
  const Judgement found = sole(judged(rod_project(1.5, 3, 1)));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_EQ(found.with, "horn");
  EXPECT_TRUE(contains(found.message, "over centre")) << found.message;
  expect_complete(found);
}

TEST(RodTravel, FailsWhereTheFromArmCannotGiveTheTravel) {
  const Judgement found = sole(judged(rod_project(1.5, 1, 3)));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_EQ(found.with, "bellcrank");
  // An arm of 1 in, square to the rod, moves its end by 1 in at the most.
  EXPECT_TRUE(contains(found.message,
                       "the arm of bellcrank is too short: it gives 1.00 in toward "
                       "bellcrank, asked 1.50 in; 1.00 in toward horn, asked 1.50 in"))
      << found.message;
  expect_complete(found);
}

TEST(RodTravel, IsUnknownWithoutArmOrTravel) {
  SmallProject project = rod_project(1.5);
  project.project.nodes[1].arm.reset();
  const Judgement found = sole(judged(project));
  EXPECT_EQ(found.verdict, Verdict::unknown);
  expect_complete(found);
  project = rod_project(1.5);
  project.project.routes[0].travel.reset();
  EXPECT_EQ(sole(judged(project)).verdict, Verdict::unknown);
}

TEST(RodTravel, IsUnknownWhereItIsNotStatedHowFarTheEndsTilt) {
  const Judgement found = sole(not_passed(judged(rod_project(1.5))));
  EXPECT_EQ(found.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(found.mend, "rod_end_angle"));
}

TEST(RodTravel, SaysNothingOfOtherLines) {
  EXPECT_TRUE(judged(cable_project()).empty());
}

}  // namespace
}  // namespace linewright
