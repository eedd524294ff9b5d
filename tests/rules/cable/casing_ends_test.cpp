// What holds a casing near its ends, and the wire that must stay out of it.

#include <gtest/gtest.h>

#include "rules/cable_project.hpp"
#include "rules/casing_project.hpp"

namespace linewright {
namespace {

std::vector<Judgement> judged(const SmallProject& project) {
  return project.judged_by("casing-ends");
}

TEST(CasingEnds, PassWhereBothAreFixedAndTheWireStaysOut) {
  const std::vector<Judgement> all = judged(casing_project());
  EXPECT_EQ(verdicts(all), std::vector<Verdict>(4, Verdict::pass));
  EXPECT_EQ(*all[0].value, 0);
  EXPECT_EQ(*all[2].value, 2);  // 3 in, less 1 in of travel
}

TEST(CasingEnds, WarnWhereTheLastClampIsFarFromThem) {
  const SmallProject project = hanging_casing({clamped({102, 0, 10}), clamped({135, 0, 10})});
  const Judgement found = sole(not_passed(judged(project)));
  EXPECT_EQ(found.verdict, Verdict::warn);
  EXPECT_EQ(found.with, "carburettor");
  EXPECT_EQ(*found.value, 5);
  EXPECT_EQ(*found.limit, 2);
  expect_complete(found);
}

// In a grommet the casing slides to and fro with its wire.
TEST(CasingEnds, AreNotHeldByWhatTheCasingSlidesIn) {
  RoutePoint grommet = held({139, 0, 10}, HoldKind::grommet);
  grommet.bore_in = 0.25;
  const SmallProject project = hanging_casing({clamped({101, 0, 10}), grommet});
  EXPECT_EQ(*sole(not_passed(judged(project))).value, 39);
}

TEST(CasingEnds, FailWhereNothingHoldsTheCasing) {
  const Judgement found = sole(not_passed(judged(hanging_casing({corner({120, 0, 10})}))));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_TRUE(contains(found.message, "sliding")) << found.message;
  expect_complete(found);
}

// Forward draws the wire out at the panel and into the casing at the carburettor, which is aft.
TEST(CasingEnds, FailWhereTheWiresEndIsDrawnIn) {
  SmallProject project = casing_project();
  throttle(project).travel = Travel{3.5, 1, {}};
  const Judgement found = sole(not_passed(judged(project)));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_EQ(found.with, "carburettor");
  EXPECT_EQ(*found.value, -0.5);
  expect_complete(found);
  throttle(project).travel = Travel{1, 3.5, {}};
  EXPECT_EQ(sole(not_passed(judged(project))).with, "panel");
}

/// A casing that leaves its panel to the right.
SmallProject square_to_fs(Travel travel) {
  SmallProject project = casing_project();
  project.project.nodes[1].at = {100, 40, 10};
  throttle(project).travel = travel;
  return project;
}

TEST(CasingEnds, AreUnknownWhereForwardHasNoSenseAndTheLargerTravelIsTooLong) {
  const std::vector<Judgement> found = not_passed(judged(square_to_fs({3.5, 1, {}})));
  EXPECT_EQ(verdicts(found), std::vector<Verdict>(2, Verdict::unknown));
  expect_complete(found.front());
  EXPECT_TRUE(not_passed(judged(square_to_fs({3, 1, {}}))).empty());
  const std::vector<Judgement> both = not_passed(judged(square_to_fs({3.5, 3.25, {}})));
  EXPECT_EQ(verdicts(both), std::vector<Verdict>(2, Verdict::fail));
  EXPECT_EQ(*both.front().value, -0.25);
}

TEST(CasingEnds, AreUnknownWithoutTravelOrRunOut) {
  SmallProject project = casing_project();
  throttle(project).travel.reset();
  const Judgement found = sole(not_passed(judged(project)));
  EXPECT_EQ(found.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(found.message, "the travel of throttle")) << found.message;
  expect_complete(found);
  project = casing_project();
  throttle(project).run_out.reset();
  EXPECT_TRUE(contains(sole(not_passed(judged(project))).message, "the run_out of throttle"));
}

TEST(CasingEnds, SayNothingOfOtherLines) {
  EXPECT_TRUE(judged(cable_project()).empty());
}

}  // namespace
}  // namespace linewright
