// Sleeves: fit, hold and cover. A 1/8 in cable may be 0.139 in across (AC 43.13-1B Table 7-3
// [verified]), so a bore of 0.17 in leaves 1/32 in. All limits but the geometry are common
// practice, no source; that a sleeve must be held is builders' report [verified, secondary].

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// Clamped in its middle, over nothing yet.
SmallProject with_sleeve(double from_in, double to_in, bool is_clamped = true,
                         std::optional<double> bore_in = 0.18,
                         std::optional<double> outside_in = 0.25) {
  std::vector<RoutePoint> points;
  if (is_clamped) points.push_back(clamped({(from_in + to_in) / 2, 0, 10}));
  SmallProject project = cable_project(points);
  the_route(project).sleeves.push_back(
      {from_in, to_in, bore_in, outside_in, {"routes.yaml", 108, 16}});
  set_travel(project, 0, 0);
  return project;
}

std::vector<Judgement> judged(const SmallProject& project) {
  return project.judged_by("sleeve-cover");
}

/// What is said of the frame's hole, after fit and hold.
Judgement cover_of(const SmallProject& project) {
  const std::vector<Judgement> all = judged(project);
  EXPECT_EQ(all.size(), 3u);
  return all.at(2);
}

Judgement fit_with_bore(double bore_in) {
  return judged(with_sleeve(40, 60, true, bore_in, 0.4)).at(0);
}

TEST(SleeveCover, ClampedSleeveThatFitsPasses) {
  SmallProject project = with_sleeve(40, 60);
  add_frame(project, "F1", 55, 0.75);
  EXPECT_EQ(verdicts(judged(project)), (std::vector{Verdict::pass, Verdict::pass, Verdict::pass}));
}

TEST(SleeveCover, BoreUnderTheLargestCableFails) {
  const Judgement judgement = fit_with_bore(0.138);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.001, 1e-12);
  EXPECT_DOUBLE_EQ(*judgement.limit, 0);
  EXPECT_TRUE(contains(judgement.mend, "0.170 in to 0.202 in")) << judgement.mend;
  EXPECT_EQ(judgement.location.line, 108);
  expect_complete(judgement);
  EXPECT_EQ(fit_with_bore(0.139).verdict, Verdict::warn) << "goes on, but tightly";
}

TEST(SleeveCover, RoomOfAThirtySecondToASixteenthIsRight) {
  EXPECT_EQ(fit_with_bore(0.169).verdict, Verdict::warn);
  EXPECT_EQ(fit_with_bore(0.170).verdict, Verdict::pass);
  EXPECT_EQ(fit_with_bore(0.202).verdict, Verdict::pass);
  const Judgement loose = fit_with_bore(0.203);
  EXPECT_EQ(loose.verdict, Verdict::warn);
  EXPECT_EQ(loose.sense, LimitSense::at_most);
  EXPECT_TRUE(contains(loose.message, "loose"));
  EXPECT_TRUE(contains(loose.source, "common practice"));
}

TEST(SleeveCover, WithoutBoreOrOutsideOneUnknownNamesWhatIsMissing) {
  SmallProject project = with_sleeve(40, 60, true, std::nullopt, 0.25);
  EXPECT_EQ(verdicts(judged(project)), (std::vector{Verdict::unknown, Verdict::pass}));
  EXPECT_TRUE(contains(judged(project).at(0).message, "bore"));
  project = with_sleeve(40, 60, true, 0.18, std::nullopt);
  EXPECT_EQ(verdicts(judged(project)),
            (std::vector{Verdict::unknown, Verdict::pass, Verdict::pass}));
  EXPECT_TRUE(contains(judged(project).at(0).message, "outside diameter"));
  project = with_sleeve(40, 60, true, std::nullopt, std::nullopt);
  EXPECT_EQ(verdicts(judged(project)), (std::vector{Verdict::unknown, Verdict::pass}));
  expect_complete(judged(project).at(0));
}

TEST(SleeveCover, SleeveThatNothingHoldsIsWarned) {
  const Judgement judgement = judged(with_sleeve(40, 60, false)).at(1);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_TRUE(contains(judgement.message, "nothing holds the sleeve"));
  EXPECT_TRUE(contains(judgement.source, "restatement"));
  EXPECT_TRUE(contains(judgement.mend, "40.0 in and 60.0 in")) << judgement.mend;
  expect_complete(judgement);
}

TEST(SleeveCover, ClampOutsideTheSleeveDoesNotHoldIt) {
  SmallProject project = with_sleeve(40, 60, false);
  the_route(project).points.push_back(clamped({60.01, 0, 10}));
  EXPECT_EQ(judged(project).at(1).verdict, Verdict::warn);
  the_route(project).points.front().at.x = 60;
  EXPECT_EQ(judged(project).at(1).verdict, Verdict::pass);
}

TEST(SleeveCover, GrommetHoldsASleeveItFitsClosely) {
  for (const double bore : {0.25, 0.26}) {
    SmallProject project = with_sleeve(40, 60, false);
    RoutePoint grommet = through(held({50, 0, 10}, HoldKind::grommet), "F1-a");
    grommet.bore_in = bore;
    the_route(project).points.push_back(grommet);
    add_frame(project, "F1", 50, 0.5, EdgeGuard::grommet);
    EXPECT_EQ(judged(project).at(1).verdict, bore == 0.25 ? Verdict::pass : Verdict::warn);
  }
}

TEST(SleeveCover, StopsOnTheCableHoldASleeveWhichThenMovesWithIt) {
  SmallProject project = with_sleeve(40, 60, false);
  set_travel(project, 2, 2);
  add_frame(project, "F1", 50, 0.75);
  Route& route = the_route(project);
  route.attached = {{"stop", 39.5, 1, 0.3, {}}, {"stop", 60.75, 1, 0.3, {}}};
  EXPECT_EQ(judged(project).at(1).verdict, Verdict::pass);
  // One diameter, the travel, and at its far end the quarter inch to the stop.
  EXPECT_NEAR(*cover_of(project).limit, 0.25 + 2.25, 1e-9);
  the_route(project).attached.back().at_in = 60.76;
  EXPECT_EQ(judged(project).at(1).verdict, Verdict::warn) << "too far off";
  the_route(project).attached = {{"stop", 39.5, 1, 0.18, {}}, {"stop", 60.5, 1, 0.18, {}}};
  EXPECT_EQ(judged(project).at(1).verdict, Verdict::warn) << "the bore slips over them";
}

// 0.04 in sheet at 50: a 0.25 in sleeve must run from 49.73 to 50.27.
TEST(SleeveCover, ClampedSleeveMustStandOutByItsDiameter) {
  SmallProject project = with_sleeve(40, 50.27);
  add_frame(project, "F1", 50, 0.75);
  EXPECT_EQ(cover_of(project).verdict, Verdict::pass);
  EXPECT_NEAR(*cover_of(project).value, 0.25, 1e-9);
  the_route(project).sleeves.front().to_in = 50.26;
  const Judgement judgement = cover_of(project);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.with, "F1-a");
  EXPECT_NEAR(*judgement.value, 0.24, 1e-9);
  EXPECT_NEAR(*judgement.limit, 0.25, 1e-9);
  EXPECT_TRUE(contains(judgement.mend, "to 50.3 in from pedal")) << judgement.mend;
  expect_complete(judgement);
}

TEST(SleeveCover, UnheldSleeveMustAlsoStandOutByTheTravelOnEachSide) {
  SmallProject project = with_sleeve(40, 60, false);
  add_frame(project, "F1", 50, 0.75);
  set_travel(project, 9.73, 9.73);  // 10 - 0.02 - 0.25
  EXPECT_EQ(cover_of(project).verdict, Verdict::pass);
  set_travel(project, 9.74, 9.73);
  EXPECT_EQ(cover_of(project).verdict, Verdict::warn);
  set_travel(project, 9.73, 9.74);
  EXPECT_EQ(cover_of(project).verdict, Verdict::warn);
}

TEST(SleeveCover, TravelForwardUncoversTheAftFace) {
  SmallProject project = with_sleeve(49, 60, false);
  add_frame(project, "F1", 50, 0.75);
  set_travel(project, 5, 0);
  EXPECT_EQ(cover_of(project).verdict, Verdict::pass);
  set_travel(project, 0, 5);
  EXPECT_EQ(cover_of(project).verdict, Verdict::warn);
}

TEST(SleeveCover, UnheldSleeveWithoutTravelIsUnknownUnlessTooShortAnyway) {
  SmallProject project = with_sleeve(40, 60, false);
  add_frame(project, "F1", 50, 0.75);
  the_route(project).travel.reset();
  EXPECT_EQ(cover_of(project).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(cover_of(project).message, "travel of rudder-left"));
  expect_complete(cover_of(project));
  the_route(project).sleeves.front().to_in = 50.1;
  EXPECT_EQ(cover_of(project).verdict, Verdict::warn);
}

TEST(SleeveCover, SleeveThatEndsShortOfABareHoleIsWarned) {
  SmallProject project = with_sleeve(40, 48);
  add_frame(project, "F1", 50, 0.75);
  const Judgement judgement = cover_of(project);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 48 - 50.02, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "short of the far face of the hole F1-a"));
  EXPECT_TRUE(contains(judgement.mend, "40.0 to 50.3 in")) << judgement.mend;
}

TEST(SleeveCover, HolesItWasNotMeantForAreLeftAlone) {
  SmallProject far = with_sleeve(40, 47.97);
  add_frame(far, "F1", 50, 0.75);
  EXPECT_EQ(judged(far).size(), 2u) << "over 2 in away";
  SmallProject wide = with_sleeve(40, 48.5);
  add_frame(wide, "F1", 50, 4);
  EXPECT_EQ(judged(wide).size(), 2u) << "its edge is far from the cable";
  SmallProject guarded = with_sleeve(40, 48.5);
  add_frame(guarded, "F1", 50, 0.75, EdgeGuard::grommet);
  EXPECT_EQ(judged(guarded).size(), 2u) << "the hole has a guard of its own";
}

TEST(SleeveCover, SleeveExtendedAsTheMendSaysIsLongEnough) {
  SmallProject project = with_sleeve(49.9, 50.1, false);
  add_frame(project, "F1", 50, 0.75);
  set_travel(project, 1.5, 0.7);
  const std::string mend = cover_of(project).mend;
  // Forward travel uncovers the aft face: from 49.98 - 0.25 - 0.7 to 50.02 + 0.25 + 1.5.
  EXPECT_TRUE(contains(mend, "run the sleeve from 49.0 to 51.8 in from pedal")) << mend;
  the_route(project).sleeves.front().from_in = 49.0;
  the_route(project).sleeves.front().to_in = 51.8;
  EXPECT_EQ(cover_of(project).verdict, Verdict::pass);
}

TEST(SleeveCover, GuideInsideTheSleeveMustBeCoveredToo) {
  SmallProject project = with_sleeve(40, 50.2);
  the_route(project).points.push_back(held({50, 0, 10}, HoldKind::fairlead));
  EXPECT_EQ(cover_of(project).verdict, Verdict::warn);
  the_route(project).sleeves.front().to_in = 50.25;
  EXPECT_EQ(cover_of(project).verdict, Verdict::pass);
}

TEST(SleeveCover, SleeveBeyondTheEndOfItsLineFails) {
  const Judgement judgement = sole(judged(with_sleeve(90, 100.5)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.5, 1e-9);
  expect_complete(judgement);
  EXPECT_EQ(judged(with_sleeve(90, 100)).size(), 2u);
}

TEST(SleeveCover, SleeveOnATubeNeedsNoHoldAndOnlyGoesOn) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 10}).node("b", NodeKind::bulkhead, {100, 0, 10});
  Route& route = project.route("tube", "tube-nylon-1/4", "a", "b");
  route.sleeves.push_back({40, 60, 0.5, 0.6, {"routes.yaml", 108, 16}});
  EXPECT_EQ(sole(judged(project)).verdict, Verdict::pass);
  the_route(project).sleeves.front().bore_in = 0.2;
  EXPECT_EQ(sole(judged(project)).verdict, Verdict::fail);
}

TEST(SleeveCover, LinesWithoutSleevesAreSilent) {
  EXPECT_TRUE(judged(cable_project()).empty());
}

TEST(SleeveCover, SaysTheSameOfAReversedRun) {
  SmallProject project = with_sleeve(49, 60, false);
  the_route(project).sleeves.push_back({20, 30, 0.15, 0.25, {"routes.yaml", 109, 16}});
  the_route(project).attached = {{"stop", 48.9, 0.2, 0.3, {}}, {"stop", 60.3, 0.2, 0.3, {}}};
  add_frame(project, "F1", 50, 0.75);
  add_frame(project, "F2", 31, 0.75);
  set_travel(project, 3, 1);
  expect_same_reversed(project, "sleeve-cover");
}

}  // namespace
}  // namespace linewright
