// The ends of cables moved through full travel. Runs are level and aft, so distances are stations.

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

const RoutePoint fairlead_near_horn = held({97, 0, 10}, HoldKind::fairlead);

/// A cable that moves forward by so much, whose end at the horn is stiff for 2 in.
SmallProject with_terminal(double forward_in, const std::vector<RoutePoint>& points) {
  SmallProject project = cable_project(points);
  set_travel(project, forward_in, 0);
  set_tension(project, 60, 200);
  CableEnd end;
  end.takes_up_in = 2;
  end.inside_in = 1;
  end.where = {"routes.yaml", 109, 13};
  the_route(project).ends.to = end;
  return project;
}

SmallProject with_thimble(double forward_in, double allowance_in) {
  SmallProject project = with_terminal(forward_in, {fairlead_near_horn});
  the_route(project).ends.to->kind = CableEndKind::thimble;
  the_route(project).ends.to->takes_up_in = 0;
  the_route(project).ends.to->inside_in = allowance_in;
  return project;
}

/// Neither arm nor end is stated.
SmallProject with_pin(double forward_in, const std::vector<RoutePoint>& points) {
  SmallProject project = with_terminal(forward_in, points);
  the_route(project).ends.to.reset();
  return project;
}

std::vector<Judgement> judged_all(const SmallProject& project) {
  return project.judged_by("attachment-travel");
}

Judgement judged_end(const SmallProject& project) {
  return sole(judged_all(project));
}

// A fairlead 3 in from the pin of a terminal of 2 in leaves 1 in [calculated]; nothing can jam at
// any point of travel: AC 43.13-1B para 7-147 a [verified].
TEST(EndTravel, TerminalOfAnEndThatRunsIntoAGuideFails) {
  for (const HoldKind hold :
       {HoldKind::fairlead, HoldKind::grommet, HoldKind::bushing, HoldKind::clamp}) {
    const RoutePoint guide = held({97, 0, 10}, hold);
    EXPECT_EQ(judged_end(with_terminal(1, {guide})).verdict, Verdict::warn) << "just touches";
    const Judgement judgement = judged_end(with_terminal(1.01, {guide}));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_NEAR(*judgement.value, -0.01, 1e-9);
    EXPECT_TRUE(contains(judgement.source, "nothing can jam"));
    EXPECT_TRUE(contains(judgement.mend, "leave 5.01 in of cable or more")) << judgement.mend;
    EXPECT_EQ(judgement.location.line, 109);
    expect_complete(judgement);
  }
}

TEST(EndTravel, SaysTheSameOfTheOtherEnd) {
  SmallProject project = with_terminal(1.5, {fairlead_near_horn});
  SmallProject back = reversed(project);
  std::swap(the_route(back).ends.from, the_route(back).ends.to);
  const Judgement there = judged_end(project);
  const Judgement here = judged_end(back);
  EXPECT_EQ(here.verdict, Verdict::fail);
  EXPECT_NEAR(*here.value, *there.value, 1e-9);
  EXPECT_LT(distance(*here.at, *there.at), 1e-9);
  EXPECT_EQ(here.message, there.message);
}

// A square turn over a 3 in groove ends 1.5 in past its corner: 7.5 in from the horn [calculated].
TEST(EndTravel, TerminalThatRunsOntoAPulleyFails) {
  const auto over_pulley = [](double forward_in) {
    SmallProject project = with_terminal(forward_in, {pulley_at({50, 0, 10}, 3, {0, 0, 1})});
    project.project.nodes.back().at = {50, 9, 10};
    return judged_end(project);
  };
  EXPECT_EQ(over_pulley(3.5).verdict, Verdict::pass);
  EXPECT_EQ(over_pulley(3.51).verdict, Verdict::warn);
  EXPECT_EQ(over_pulley(5.51).verdict, Verdict::fail);
  EXPECT_NEAR(*over_pulley(5.51).value, -0.01, 1e-9);
}

// For what is no splice the 2 in are borrowed [common practice, no source].
TEST(EndTravel, TerminalShouldKeepTheDistanceOfAttachments) {
  EXPECT_EQ(judged_end(with_terminal(1, {held({95, 0, 10}, HoldKind::fairlead)})).verdict,
            Verdict::pass);
  const Judgement judgement =
      judged_end(with_terminal(1.01, {held({95, 0, 10}, HoldKind::fairlead)}));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 1.99, 1e-9);
}

TEST(EndTravel, TravelAwayFromTheGuideDoesNotCount) {
  SmallProject project = with_terminal(0, {held({95, 0, 10}, HoldKind::fairlead)});
  set_travel(project, 0, 5);
  EXPECT_EQ(judged_end(project).verdict, Verdict::pass);
  EXPECT_NEAR(*judged_end(project).value, 3, 1e-9);
}

TEST(EndTravel, EndDrawnUnderAttachedIsJudgedAsThatAlone) {
  SmallProject project = with_terminal(1.5, {fairlead_near_horn});
  the_route(project).attached.push_back({"terminal", 99, 2, 0.22, {"routes.yaml", 110, 9}});
  EXPECT_EQ(judged_end(project).location.line, 110);
  EXPECT_EQ(judged_end(project).verdict, Verdict::fail);
}

TEST(EndTravel, EndWithoutItsCablesTravelIsUnknownUnlessItFailsAsDrawn) {
  SmallProject project = with_terminal(0, {held({90, 0, 10}, HoldKind::fairlead)});
  the_route(project).travel.reset();
  EXPECT_EQ(judged_end(project).verdict, Verdict::unknown);
  expect_complete(judged_end(project));
  the_route(project).points.front().at = {98.5, 0, 10};
  EXPECT_EQ(judged_end(project).verdict, Verdict::fail);
}

// The pin itself goes 1.5 in past a fairlead 0.5 in from it that moves 2 in [calculated].
TEST(EndTravel, PinThatWouldGoPastAGuideFails) {
  const RoutePoint at_pin = held({99.5, 0, 10}, HoldKind::fairlead);
  const Judgement judgement = judged_end(with_pin(2, {at_pin}));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -1.5, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "would have to go 1.50 in past the fairlead"))
      << judgement.message;
  expect_complete(judgement);
  EXPECT_EQ(judged_end(with_pin(0.5, {at_pin})).verdict, Verdict::warn) << "just touches";
  EXPECT_TRUE(judged_all(with_pin(2, {held({96, 0, 10}, HoldKind::fairlead)})).empty());
  EXPECT_TRUE(judged_all(with_pin(0, {at_pin})).empty()) << "a cable that stays";
}

// `bend-fit` fails an arm that would have to go past the guide.
TEST(EndTravel, PinOnAnArmThatCannotGoSoFarIsSaidOnce) {
  SmallProject project = with_pin(2, {held({99.5, 0, 10}, HoldKind::fairlead)});
  project.project.nodes.back().arm = Arm{{100, 0, 20}, {0, 1, 0}};
  EXPECT_TRUE(judged_all(project).empty());
  EXPECT_EQ(project.judged_by("bend-fit").front().verdict, Verdict::fail);
}

TEST(EndTravel, EndOnASectorIsNotMovedAlongTheCable) {
  SmallProject project = with_pin(2, {held({99.5, 0, 10}, HoldKind::fairlead)});
  project.project.nodes.back().sector = Sector{3, 90};
  EXPECT_TRUE(judged_all(project).empty());
}

// How thick an end is is not stated, so a hole may let it through or not.
TEST(EndTravel, EndThatComesIntoABareHoleIsUnknown) {
  SmallProject project = with_terminal(1.5, {});
  add_frame(project, "F1", 97, 2);
  const Judgement judgement = judged_end(project);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.with, "F1-a");
  expect_complete(judgement);
  set_travel(project, 0.9, 0);
  EXPECT_TRUE(judged_all(project).empty());
}

// The cable of a thimble goes round it and back: what holds it reaches no farther than that.
TEST(EndTravel, ThimbleNearAGuideIsUnknownAndPastItFails) {
  EXPECT_EQ(judged_end(with_thimble(0.9, 2)).verdict, Verdict::pass);
  EXPECT_EQ(judged_end(with_thimble(1, 2.1)).verdict, Verdict::unknown);
  expect_complete(judged_end(with_thimble(1, 2.1)));
  EXPECT_EQ(judged_end(with_thimble(3.1, 2.1)).verdict, Verdict::fail);
}

/// The horn's pin goes 2 in aft of FS 100, on an arm of 30 in, through a hole of so much at FS 101.
std::vector<Judgement> through_hole_beyond(double hole_in, double diameter_in = 0) {
  SmallProject project = cable_project();
  project.project.nodes[1].arm = Arm{{100, 0, -20}, {0, 1, 0}};
  set_travel(project, 0, 2);
  set_tension(project, 60, 200);
  add_frame(project, "F101", 101, hole_in);
  if (diameter_in > 0)
    the_route(project).attached = {{"fork", 99, 1.9, diameter_in, {"routes.yaml", 109, 12}}};
  std::vector<Judgement> all = judged_all(project);
  std::erase_if(all,
                [](const Judgement& each) { return !contains(each.message, "past the place"); });
  return all;
}

TEST(EndTravel, AnEndThatGoesThroughAHolePastItsPlaceIsUnknownUntilItsSizeIsStated) {
  const Judgement judgement = sole(through_hole_beyond(1));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.with, "F101-a");
  expect_complete(judgement);
  EXPECT_EQ(sole(through_hole_beyond(1, 0.9)).verdict, Verdict::pass);
  EXPECT_EQ(sole(through_hole_beyond(1, 1.1)).verdict, Verdict::fail);
  EXPECT_EQ(sole(through_hole_beyond(2.1)).verdict, Verdict::pass) << "any end goes through";
}

TEST(EndTravel, AFrameThatTheEndDoesNotReachIsNotJudged) {
  SmallProject project = cable_project();
  project.project.nodes[1].arm = Arm{{100, 0, -20}, {0, 1, 0}};
  set_travel(project, 2, 0.9);
  set_tension(project, 60, 200);
  add_frame(project, "F101", 101, 1);
  for (const Judgement& each : judged_all(project))
    EXPECT_FALSE(contains(each.message, "past the place")) << each.message;
}

}  // namespace
}  // namespace linewright
