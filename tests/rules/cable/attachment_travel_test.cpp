// Attachments moved through full travel. Runs are level and aft, so distances are stations; where
// no load is stated the stretch is left out of what must fail anyway.

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

const RoutePoint pulley = pulley_at({50, 0, 10}, 3, {0, 1, 0});
const RoutePoint fairlead = held({50, 0, 10}, HoldKind::fairlead);

/// One attachment an inch long and 0.4 in thick.
SmallProject with_attached(const std::string& kind, double at_in,
                           const std::vector<RoutePoint>& points, double length_in = 1) {
  SmallProject project = cable_project(points);
  the_route(project).attached.push_back({kind, at_in, length_in, 0.4, {"routes.yaml", 107, 17}});
  return project;
}

/// Neither stretch nor travel, until a test sets them.
SmallProject unmoved(const std::string& kind, double at_in, const std::vector<RoutePoint>& points,
                     double length_in = 1) {
  SmallProject project = with_attached(kind, at_in, points, length_in);
  set_travel(project, 0, 0);
  set_tension(project, 60, 200);
  the_line(project).axial_stiffness_lbf->value = 1e15;
  return project;
}

Judgement judged(const SmallProject& project) {
  return sole(project.judged_by("attachment-travel"));
}

// Worked example [calculated; AC 43.13-1B para 7-147 a, verified]: 2.6 in from a pulley, travels
// 0.9 in toward it: 1.7 in clear, under 2 in.
TEST(AttachmentTravel, SpliceThatTravelsTowardAPulleyFailsTheTwoInchRule) {
  SmallProject project = with_attached("splice", 50 - 2.6 - 0.5, {pulley});
  set_travel(project, 0, 0.9);
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 1.7, 1e-9);
  EXPECT_DOUBLE_EQ(*judgement.limit, 2);
  EXPECT_TRUE(contains(judgement.source, "7-147 a"));
  EXPECT_EQ(judgement.location.line, 107);
  expect_complete(judgement);
}

TEST(AttachmentTravel, TurnbuckleIsJudgedAtItsLongest) {
  SmallProject project = unmoved("turnbuckle", 47.5, {fairlead});
  the_route(project).attached.front().adjustment = Adjustment{0.8, 1.2};
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 50 - 47.5 - 0.6, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "the turnbuckle, 1.20 in at its longest, keeps"))
      << judgement.message;
  const double moved_to = std::stod(judgement.mend.substr(judgement.mend.find("middle is ") + 10));
  EXPECT_LE(moved_to, 50 - 2 - 0.6 + 1e-9) << judgement.mend;
}

TEST(AttachmentTravel, TravelAwayFromTheGuideDoesNotCount) {
  SmallProject project = unmoved("splice", 50 - 2.6 - 0.5, {pulley});
  set_travel(project, 0.9, 0);
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
  EXPECT_NEAR(*judged(project).value, 2.6, 1e-9);
}

// No part of a splice within 2 in of a fairlead or pulley: AC 43.13-1B para 7-147 a [verified].
TEST(AttachmentTravel, TwoInchesExactlyPassAndJustUnderFails) {
  EXPECT_EQ(judged(unmoved("splice", 47.5, {fairlead})).verdict, Verdict::pass);
  EXPECT_EQ(judged(unmoved("splice", 47.51, {fairlead})).verdict, Verdict::fail);
}

// For other attachments, and at clamps, the 2 in are borrowed [common practice, no source].
TEST(AttachmentTravel, OtherAttachmentsBorrowTheDistanceAndAreWarned) {
  EXPECT_EQ(judged(unmoved("turnbuckle", 47.5, {fairlead})).verdict, Verdict::pass);
  const Judgement judgement = judged(unmoved("turnbuckle", 47.51, {fairlead}));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_TRUE(contains(judgement.source, "common practice"));
}

TEST(AttachmentTravel, SpliceNearAClampIsWarned) {
  EXPECT_EQ(judged(unmoved("splice", 48, {clamped({50, 0, 10})})).verdict, Verdict::warn);
}

// Nothing can jam at any point of travel: AC 43.13-1B para 7-147 a [verified].
TEST(AttachmentTravel, RunningIntoAGuideFailsWhateverItIs) {
  for (const RoutePoint& point : {pulley, fairlead, clamped({50, 0, 10})}) {
    SmallProject project = unmoved("turnbuckle", 48, {point});
    set_travel(project, 0, 1.5);
    EXPECT_EQ(judged(project).verdict, Verdict::warn) << "just touches";
    set_travel(project, 0, 1.51);
    EXPECT_EQ(judged(project).verdict, Verdict::fail);
    EXPECT_NEAR(*judged(project).value, -0.01, 1e-9);
    EXPECT_TRUE(contains(judged(project).source, "nothing can jam"));
  }
}

TEST(AttachmentTravel, PulleyIsMetWhereTheCableMeetsIt) {
  // A square turn over a 3 in groove starts 1.5 in before the corner.
  SmallProject project = unmoved("splice", 45.5, {pulley_at({50, 0, 10}, 3, {0, 0, 1})});
  project.project.nodes.back().at = {50, 50, 10};
  EXPECT_NEAR(*judged(project).value, 2.5, 1e-9);
}

// P L / AE with 200 lbf over the 60 in to the farther end at 1e5 lbf: 0.12 in.
TEST(AttachmentTravel, StretchFromTheFartherEndIsAdded) {
  SmallProject project = unmoved("splice", 40, {fairlead}, 2);
  the_line(project).axial_stiffness_lbf->value = 1e5;
  set_travel(project, 0, 1);
  EXPECT_NEAR(*judged(project).value, 9 - 1 - 0.12, 1e-9);
}

TEST(AttachmentTravel, ForwardIsTowardSmallerStationsWhicheverWayTheRouteIsWritten) {
  SmallProject project = unmoved("splice", 46, {fairlead});
  set_travel(project, 3, 1);
  EXPECT_NEAR(*judged(project).value, 3.5 - 1, 1e-9);
  EXPECT_NEAR(*judged(reversed(project)).value, 3.5 - 1, 1e-9);
}

TEST(AttachmentTravel, WhereTheRouteTurnsBackTheLargerTravelCountsBothWays) {
  SmallProject project = unmoved("splice", 46, {fairlead, pulley_at({80, 0, 10}, 3, {0, 0, 1})});
  project.project.nodes.back().at = {20, 30, 10};
  set_travel(project, 3, 1);
  EXPECT_NEAR(*judged(project).value, 3.5 - 3, 1e-9);
}

TEST(AttachmentTravel, WithoutTravelItIsUnknownUnlessItFailsAnyway) {
  SmallProject project = unmoved("splice", 30, {fairlead});
  the_route(project).travel.reset();
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judgement.message, "travel of rudder-left"));
  expect_complete(judgement);
  the_route(project).attached.front().at_in = 49;
  EXPECT_EQ(judged(project).verdict, Verdict::fail);
}

// The stretch cannot pass that at the breaking strength, 2,000 lbf (AC 43.13-1B Table 7-3
// [verified]): over 60 in at 1e5 lbf 1.2 in.
TEST(AttachmentTravel, WithoutALimitLoadItPassesOnlyWhereNoLoadCouldMatter) {
  SmallProject project = unmoved("splice", 40, {fairlead});
  the_line(project).axial_stiffness_lbf->value = 1e5;
  set_tension(project, 60);
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
  set_travel(project, 0, 9.5 - 2 - 1.19);
  EXPECT_EQ(judged(project).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judged(project).message, "limit load of rudder-left"));
  the_line(project).axial_stiffness_lbf.reset();
  set_travel(project, 0, 0);
  EXPECT_EQ(judged(project).verdict, Verdict::unknown);
}

TEST(AttachmentTravel, SmallHoleNearItsTravelIsWarnedAndARunIntoItFails) {
  SmallProject project = unmoved("turnbuckle", 47.52, {});
  add_frame(project, "F1", 50, 0.75);
  const Judgement near = judged(project);
  EXPECT_EQ(near.verdict, Verdict::warn);
  EXPECT_EQ(near.with, "F1-a");
  EXPECT_NEAR(*near.value, 50 - 0.02 - 48.02, 1e-9) << "to the nearer face of 0.04 in sheet";
  // Sliding 0.4 in of metal through 0.3 in of hole jams.
  SmallProject tight = unmoved("turnbuckle", 48, {});
  add_frame(tight, "F1", 50, 0.3);
  set_travel(tight, 0, 3);
  EXPECT_EQ(judged(tight).verdict, Verdict::fail);
}

// Half an inch where either can move [common practice, no source].
TEST(AttachmentTravel, GoesThroughAHoleWithHalfAnInchAllRound) {
  // 0.4 in thick in the middle of a hole: 1.4 in leaves 0.5 in all round.
  SmallProject project = unmoved("turnbuckle", 49, {});
  add_frame(project, "F1", 50, 1.4001);
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
  EXPECT_TRUE(contains(judged(project).message, "free to pass"));
  SmallProject narrower = unmoved("turnbuckle", 49.8, {});
  add_frame(narrower, "F1", 50, 1.3);
  EXPECT_EQ(judged(narrower).verdict, Verdict::warn);
  EXPECT_NEAR(*judged(narrower).value, 0.45, 1e-3);
}

TEST(AttachmentTravel, TakesTheUsualBoreOfABushingThatStatesNone) {
  // A hole of 0.5 in takes a bushing of 0.375 in bore, too narrow for 0.4 in of metal.
  SmallProject project = unmoved("turnbuckle", 48, {});
  add_frame(project, "F1", 50, 0.5, EdgeGuard::bushing);
  set_travel(project, 0, 3);
  EXPECT_EQ(judged(project).verdict, Verdict::fail);
  project.project.structure.frames[0].holes[0].bore_in = 0.45;
  EXPECT_EQ(judged(project).verdict, Verdict::warn);
  EXPECT_NEAR(*judged(project).value, 0.025, 1e-9);
}

TEST(AttachmentTravel, FairleadInAFramesHoleIsOneThingNotTwo) {
  SmallProject project = unmoved("splice", 45, {through(fairlead, "F1-a")});
  add_frame(project, "F1", 50, 0.5, EdgeGuard::bushing);
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.with, "F1-a");
  EXPECT_NEAR(*judgement.value, 4.48, 1e-9);
}

TEST(AttachmentTravel, ReachingBeyondTheEndOfItsLineFails) {
  EXPECT_EQ(judged(unmoved("terminal", 0.5, {})).verdict, Verdict::pass);
  const Judgement judgement = judged(unmoved("terminal", 0.4, {}));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.1, 1e-9);
  EXPECT_EQ(judged(unmoved("terminal", 300, {})).verdict, Verdict::fail);
  expect_complete(judgement);
}

TEST(AttachmentTravel, MendNamesTheNearestPlaceThatIsClear) {
  SmallProject project = unmoved("splice", 48, {fairlead});
  set_travel(project, 1, 1);
  ASSERT_EQ(judged(project).verdict, Verdict::fail);
  EXPECT_TRUE(contains(judged(project).mend, "46.5 in from pedal")) << judged(project).mend;
  the_route(project).attached.front().at_in = 46.5;
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
}

TEST(AttachmentTravel, SaysSoWhereNoPlaceIsClear) {
  SmallProject project = unmoved(
      "splice", 51, {held({48, 0, 10}, HoldKind::fairlead), held({54, 0, 10}, HoldKind::fairlead)});
  set_travel(project, 60, 60);
  std::vector<Judgement> judgements = project.judged_by("attachment-travel");
  std::erase_if(judgements, [](const Judgement& each) { return each.location.line != 107; });
  ASSERT_EQ(judgements.size(), 2u) << "one to each fairlead";
  for (const Judgement& each : judgements) {
    EXPECT_EQ(each.verdict, Verdict::fail) << each.message;
    EXPECT_TRUE(contains(each.mend, "no place near")) << each.mend;
  }
}

TEST(AttachmentTravel, BareRunPassesAndUnattachedRunsAreSilent) {
  EXPECT_EQ(judged(unmoved("turnbuckle", 50, {})).verdict, Verdict::pass);
  EXPECT_TRUE(cable_project({fairlead}).judged_by("attachment-travel").empty());
}

TEST(AttachmentTravel, FittingOnATubeMustOnlyClearItsSupports) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {20, 0, 0});
  Route& route = project.route("tube", "tube-nylon-1/4", "a", "b", {clamped({10, 0, 0})});
  route.attached.push_back({"union", 9.5, 1, 0.4, {"routes.yaml", 107, 17}});
  EXPECT_EQ(judged(project).verdict, Verdict::pass);
  the_route(project).attached.front().at_in = 9.51;
  EXPECT_EQ(judged(project).verdict, Verdict::fail);
}

TEST(AttachmentTravel, SaysTheSameOfAReversedRun) {
  SmallProject project = unmoved("splice", 46, {fairlead, held({70, 1, 10}, HoldKind::fairlead)});
  the_line(project).axial_stiffness_lbf->value = 1e5;
  set_travel(project, 3, 1);
  the_route(project).attached.push_back({"turnbuckle", 66, 4, 0.44, {"routes.yaml", 108, 17}});
  add_frame(project, "F1", 30, 0.75);
  expect_same_reversed(project, "attachment-travel");
}

// A cable of 2 in travel winds up so much on the sector at its pedal.
TEST(AttachmentTravel, WhatWouldWindOntoASectorFails) {
  const auto at = [](double at_in) {
    SmallProject project = unmoved("turnbuckle", at_in, {}, 4);
    set_travel(project, 2, 1);
    project.project.nodes.front().sector = Sector{3, 90};
    return judged(project);
  };
  EXPECT_EQ(at(4.5).verdict, Verdict::pass);
  EXPECT_EQ(at(4).verdict, Verdict::pass) << "just short of it";
  const Judgement judgement = at(3.6);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 3.6 - 2 - 2, 1e-6);
  EXPECT_EQ(judgement.with, "pedal");
  EXPECT_TRUE(contains(judgement.message, "runs into the sector of pedal")) << judgement.message;
  expect_complete(judgement);
}

}  // namespace
}  // namespace linewright
