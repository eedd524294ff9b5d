// What a sleeve runs into on its way along a cable (AC 43.13-1B para 7-147 a [verified]: nothing
// can jam).

#include "rules/cable/sleeve_travel.hpp"

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// Nothing holds the sleeve, so that it goes with its cable, 2 in both ways.
SmallProject sleeved(double from_in, double to_in, const std::vector<RoutePoint>& points,
                     Vec3 horn = {100, 0, 10}) {
  SmallProject project = cable_project(points, horn);
  the_route(project).sleeves.push_back({from_in, to_in, 0.18, 0.25, {"routes.yaml", 108, 16}});
  set_travel(project, 2, 2);
  return project;
}

/// A quarter turn about a 4 in pulley at FS 50: the arc is from 48 to 51.14 in.
SmallProject past_pulley(double from_in, double to_in) {
  return sleeved(from_in, to_in, {pulley_at({50, 0, 10}, 4, {0, 0, 1})}, {50, 40, 10});
}

RoutePoint fairlead(double station, std::optional<double> bore_in) {
  RoutePoint point = held({station, 0, 10}, HoldKind::fairlead);
  point.bore_in = bore_in;
  return point;
}

std::vector<Judgement> of_travel(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("sleeve-cover");
  std::erase_if(all, [](const Judgement& each) { return !contains(each.source, "7-147 a"); });
  return all;
}

TEST(SleeveTravel, OntoAPulleyFails) {
  EXPECT_TRUE(of_travel(past_pulley(30, 46)).empty()) << "just comes to it";
  const Judgement judgement = sole(of_travel(past_pulley(30, 46.1)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.1, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "runs into the pulley at full travel"))
      << judgement.message;
  EXPECT_TRUE(contains(judgement.mend, "end the sleeve 46.0 in from pedal")) << judgement.mend;
  EXPECT_EQ(judgement.location.line, 108);
  expect_complete(judgement);
  EXPECT_EQ(sole(of_travel(past_pulley(52, 70))).verdict, Verdict::fail) << "from the other side";
}

TEST(SleeveTravel, OverAPulleyFailsEvenWhereTheCableStandsStill) {
  SmallProject project = past_pulley(40, 60);
  set_travel(project, 0, 0);
  const Judgement judgement = sole(of_travel(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.message, "lies over the pulley")) << judgement.message;
}

TEST(SleeveTravel, HeldOverAPulleysWrapFailsAsFarAsItLiesOnIt) {
  const auto held_to = [](double to_in) {
    SmallProject project = sleeved(
        30, to_in, {clamped({40, 0, 10}), pulley_at({50, 0, 10}, 4, {0, 0, 1})}, {50, 40, 10});
    return of_travel(project);
  };
  EXPECT_TRUE(held_to(48).empty()) << "ends where the cable meets the groove";
  EXPECT_EQ(sole(held_to(48.1)).verdict, Verdict::fail);
  EXPECT_EQ(sole(held_to(70)).verdict, Verdict::fail);
}

TEST(SleeveTravel, OverAPulleyGivenByItsCentreFails) {
  SmallProject project = past_pulley(40, 60);
  RoutePoint& pulley = the_route(project).points.front();
  pulley.at = {48, 2, 10};
  pulley.given = PointGiven::centre;
  EXPECT_TRUE(contains(sole(of_travel(project)).message, "lies over the pulley"));
}

TEST(SleeveTravel, IntoAGuideTooNarrowForItFails) {
  EXPECT_EQ(sole(of_travel(sleeved(30, 48.5, {fairlead(50, 0.19)}))).verdict, Verdict::fail);
  EXPECT_TRUE(of_travel(sleeved(30, 48, {fairlead(50, 0.19)})).empty()) << "just comes to it";
  EXPECT_TRUE(of_travel(sleeved(30, 48.5, {fairlead(50, 0.25)})).empty()) << "goes in";
  EXPECT_EQ(sole(of_travel(sleeved(30, 48.5, {fairlead(50, std::nullopt)}))).verdict,
            Verdict::unknown);
  EXPECT_EQ(sole(of_travel(sleeved(30, 48.5, {clamped({50, 0, 10})}))).verdict, Verdict::fail);
}

TEST(SleeveTravel, IntoAGrommetOfNoStatedBoreIsUnknownThoughNoPointNamesIt) {
  SmallProject project = sleeved(30, 48.5, {});
  add_frame(project, "F1", 50, 0.5, EdgeGuard::grommet);
  const Judgement judgement = sole(of_travel(project));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "the bore of the guide")) << judgement.message;
  project.project.structure.frames[0].holes[0].bore_in = 0.3;
  EXPECT_TRUE(of_travel(project).empty());
  project.project.structure.frames[0].holes[0].bore_in.reset();
  project.project.structure.frames[0].holes[0].edge = EdgeGuard::bare;
  EXPECT_TRUE(of_travel(project).empty()) << "an open hole";
}

TEST(SleeveTravel, OfASleeveThatDoesNotSayHowThickItIsIsUnknownAtAGuide) {
  SmallProject project = sleeved(30, 48.5, {fairlead(50, 0.25)});
  the_route(project).sleeves[0].outside_in.reset();
  const Judgement judgement = sole(of_travel(project));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "the outside of the sleeve")) << judgement.message;
  expect_complete(judgement);
}

TEST(SleeveTravel, CountsTheWayForwardAndAftApart) {
  SmallProject project = sleeved(30, 48.5, {fairlead(50, 0.19)});
  set_travel(project, 5, 0);
  EXPECT_TRUE(of_travel(project).empty());
  set_travel(project, 0, 5);
  EXPECT_NEAR(*sole(of_travel(project)).value, -3.5, 1e-9);
}

TEST(SleeveTravel, HeldByAClampGoesNowhere) {
  EXPECT_TRUE(of_travel(sleeved(30, 49, {clamped({40, 0, 10}), fairlead(50, 0.19)})).empty());
}

TEST(SleeveTravel, WithoutTheTravelIsUnknownWhereAnythingIsInItsWay) {
  SmallProject project = past_pulley(10, 20);
  the_route(project).travel.reset();
  const Judgement judgement = sole(of_travel(project));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "travel of rudder-left")) << judgement.message;
  expect_complete(judgement);
  SmallProject open = sleeved(10, 20, {fairlead(50, 0.3)});
  the_route(open).travel.reset();
  EXPECT_TRUE(of_travel(open).empty());
}

TEST(SleeveTravel, SaysTheSameOfAReversedRun) {
  SmallProject project = sleeved(30, 48.5, {fairlead(50, 0.19)});
  set_travel(project, 1, 3);
  expect_same_reversed(project, "sleeve-cover");
}

}  // namespace
}  // namespace linewright
