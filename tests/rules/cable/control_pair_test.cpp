// The cables of one control against each other. Both run aft, 3 in apart, to horns on one shaft,
// the first above it and the second below; what a pair is held against is common practice, no
// source.

#include <utility>

#include "rules/cable_project.hpp"
#include "rules/rod_project.hpp"

namespace linewright {
namespace {

struct Ways {
  double forward_in = 0;
  double aft_in = 0;
};

struct OfCable {
  Ways travel = {};
  double rigged_lbf = 100;
  double arm_in = 10;
};

SmallProject two_cables(const OfCable& first, const OfCable& second) {
  SmallProject project = cable_project();
  project.node("pedal-2", NodeKind::pedal, {0, 3, 10}).node("horn-2", NodeKind::horn, {100, 3, 10});
  project.project.nodes[1].arm = Arm{{100, 0, 10 - first.arm_in}, {0, 1, 0}};
  project.project.nodes[3].arm = Arm{{100, 3, 10 + second.arm_in}, {0, -1, 0}};
  project.project.nodes[3].at = {100, 3, 10 - first.arm_in - second.arm_in};
  project.project.nodes[3].arm->pivot = {100, 3, 10 - first.arm_in};
  project.route("rudder-right", eighth_steel, "pedal-2", "horn-2").control = "Rudder";
  auto& routes = project.project.routes;
  for (std::size_t i = 0; i < 2; ++i) {
    const OfCable& each = i == 0 ? first : second;
    routes[i].travel = Travel{each.travel.forward_in, each.travel.aft_in, {"routes.yaml", 106, 13}};
    routes[i].tension = Tension{each.rigged_lbf, 150, {"routes.yaml", 105, 14}};
  }
  return project;
}

/// What is said of the two together, or of one that is said to stay.
std::vector<Judgement> asked_about(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("control-feel");
  std::erase_if(all, [](const Judgement& each) {
    return each.verdict == Verdict::pass ||
           (!contains(each.message, "shaft") && !contains(each.message, "stated as none"));
  });
  return all;
}

TEST(ControlPair, AlikeIsNotAskedAbout) {
  EXPECT_TRUE(asked_about(two_cables({{1, 2}}, {{2, 1}})).empty());
}

// Above its shaft the first goes aft where the second, below, goes forward.
TEST(ControlPair, ThatDoesNotGoTheOtherWayAsFarIsUnknown) {
  const Judgement judgement = sole(asked_about(two_cables({{1, 3}}, {{1, 3}})));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.route, "rudder-right");
  EXPECT_TRUE(contains(judgement.message, "do not turn it to either side alike"))
      << judgement.message;
  expect_complete(judgement);
  EXPECT_TRUE(asked_about(two_cables({{1, 3}}, {{3, 1}})).empty());
  EXPECT_TRUE(asked_about(two_cables({{1, 3}}, {{2.6, 1}})).empty()) << "within a quarter";
  EXPECT_EQ(sole(asked_about(two_cables({{2, 0}}, {{2, 0}}))).verdict, Verdict::unknown);
  // Arms of 10 in and 5 in.
  EXPECT_TRUE(asked_about(two_cables({{1, 3}}, {{1.5, 0.5}, 200, 5})).empty());
}

// On one side of the shaft both go the same way.
TEST(ControlPair, OnOneSideGoesWithTheOther) {
  SmallProject project = two_cables({{1, 3}}, {{1, 3}});
  project.project.nodes[3].at.z = 10;
  EXPECT_EQ(sole(asked_about(project)).verdict, Verdict::fail) << "nothing pulls it back";
  project = two_cables({{1, 3}}, {{3, 1}});
  project.project.nodes[3].at.z = 10;
  EXPECT_EQ(asked_about(project).size(), 2u);
  EXPECT_EQ(asked_about(project).at(0).verdict, Verdict::unknown);
  // Two pedals beside each other turn each by itself.
  project.project.nodes[1].kind = project.project.nodes[3].kind = NodeKind::pedal;
  EXPECT_TRUE(asked_about(project).empty());
}

// A cable only pulls: of two on one side of their shaft none pulls it back.
TEST(ControlPair, ThatPullsOneWayAloneFails) {
  SmallProject project = two_cables({{1, 1}}, {{1, 1}});
  EXPECT_TRUE(asked_about(project).empty());
  project.project.nodes[3].at.z = 10;
  const Judgement judgement = sole(asked_about(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.message, "both pull it the same way")) << judgement.message;
  expect_complete(judgement);
  // The same, whichever way the second arm's axis is written.
  project.project.nodes[3].arm->axis = {0, 1, 0};
  EXPECT_EQ(sole(asked_about(project)).verdict, Verdict::fail);
  // A third cable, of any control, that pulls the other way.
  project.node("spring", NodeKind::bulkhead, {0, 6, -10})
      .node("horn-3", NodeKind::horn, {100, 6, -10});
  project.project.nodes[5].arm = Arm{{100, 6, 0}, {0, 1, 0}};
  project.route("balance", eighth_steel, "spring", "horn-3").travel = Travel{1, 1, {}};
  EXPECT_TRUE(asked_about(project).empty());
}

/// Two rods between shafts at FS 100 and FS 140, on arms of 3 in above both; the second below, at
/// one end or at both.
SmallProject two_rods(bool below_at_from, bool below_at_to) {
  SmallProject project = rod_project(1);
  project.node("bellcrank-2", NodeKind::horn, {100, 3, below_at_from ? 4.0 : 10.0})
      .node("horn-2", NodeKind::horn, {140, 3, below_at_to ? 4.0 : 10.0});
  project.project.nodes[2].arm = Arm{{100, 3, 7}, {0, 1, 0}};
  project.project.nodes[3].arm = Arm{{140, 3, 7}, {0, -1, 0}};
  project.route("second-rod", half_inch_rod, "bellcrank-2", "horn-2").travel = Travel{1, 1, {}};
  for (Route& route : project.project.routes) route.system = SystemKind::rod;
  return project;
}

std::vector<Judgement> locks(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("control-feel");
  std::erase_if(all, [](const Judgement& each) { return !contains(each.message, "lock"); });
  return all;
}

TEST(ControlPair, ARodThatTurnsAShaftAgainstAnotherLocksIt) {
  EXPECT_TRUE(locks(two_rods(false, false)).empty());
  EXPECT_TRUE(locks(two_rods(true, true)).empty());
  for (const SmallProject& project : {two_rods(true, false), two_rods(false, true)}) {
    const Judgement judgement = sole(locks(project));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    expect_complete(judgement);
  }
  SmallProject project = two_rods(true, false);
  project.project.routes[0].control = "elevator";
  EXPECT_EQ(locks(project).size(), 1u) << "a rod that names no control may be of any";
  project.project.routes[1].control = "flap";
  EXPECT_TRUE(locks(project).empty());
}

/// The first cable alone, 2 in both ways on its horn 10 in above the shaft, and a rod on an arm of
/// 5 in beside it, which goes so far.
SmallProject with_rod(double forward_in, double aft_in) {
  SmallProject project = cable_project();
  const Arm shaft{{100, 0, 0}, {0, 1, 0}};
  project.project.nodes[1].arm = shaft;
  set_travel(project, 2, 2);
  project.node("crank", NodeKind::horn, {100, 3, 5}).node("out", NodeKind::horn, {140, 3, 5});
  project.project.nodes[2].arm = Arm{{100, 3, 0}, {0, 1, 0}};
  project.project.nodes[3].arm = Arm{{140, 3, 0}, {0, 1, 0}};
  Route& rod = project.route("rod", "rod-aluminium-3/4", "crank", "out");
  rod.system = SystemKind::rod;
  rod.control = "rudder";
  rod.travel = Travel{forward_in, aft_in, {"routes.yaml", 120, 13}};
  return project;
}

TEST(ControlPair, ARodOnTheShaftOfACableTurnsItAlike) {
  EXPECT_TRUE(asked_about(with_rod(1, 1)).empty());
  for (const auto& [forward, aft] : {std::pair{0.2, 0.2}, {1.0, 0.5}}) {
    const Judgement judgement = sole(asked_about(with_rod(forward, aft)));
    EXPECT_EQ(judgement.verdict, Verdict::unknown);
    EXPECT_EQ(judgement.route, "rod");
    EXPECT_EQ(judgement.location.line, 120);
    expect_complete(judgement);
  }
  SmallProject project = with_rod(0.2, 0.2);
  project.project.routes[1].control = "flap";
  EXPECT_TRUE(asked_about(project).empty()) << "what shares no control may share a hinge line";
}

TEST(ControlPair, ControlThatMovesNothingIsWarned) {
  const std::vector<Judgement> both = asked_about(two_cables({{0, 0}}, {{0, 0}}));
  ASSERT_EQ(both.size(), 2u);
  for (const Judgement& each : both) {
    EXPECT_EQ(each.verdict, Verdict::warn);
    expect_complete(each);
  }
  SmallProject alone = cable_project();
  set_travel(alone, 0, 0);
  EXPECT_EQ(sole(asked_about(alone)).verdict, Verdict::warn);
  set_travel(alone, 0, 1);
  EXPECT_TRUE(asked_about(alone).empty());
  set_travel(alone, 0, 0);
  the_route(alone).control.clear();
  EXPECT_EQ(sole(asked_about(alone)).verdict, Verdict::warn) << "it ends on a horn";
  for (Node& node : alone.project.nodes) node.kind = NodeKind::bulkhead;
  EXPECT_TRUE(asked_about(alone).empty()) << "a wire that only holds";

  SmallProject rod = rod_project(0);
  the_route(rod).system = SystemKind::rod;
  EXPECT_EQ(sole(asked_about(rod)).verdict, Verdict::warn);
}

TEST(ControlPair, OneThatStaysWhileTheOtherMovesIsUnknown) {
  for (const bool first_stays : {true, false}) {
    const Judgement judgement = sole(
        asked_about(first_stays ? two_cables({{0, 0}}, {{1, 1}}) : two_cables({{1, 1}}, {{0, 0}})));
    EXPECT_EQ(judgement.verdict, Verdict::unknown);
    EXPECT_EQ(judgement.route, first_stays ? "rudder-left" : "rudder-right");
    expect_complete(judgement);
  }
}

TEST(ControlPair, TravelsThatTurnOneShaftUnlikeAreWarned) {
  EXPECT_TRUE(asked_about(two_cables({{1, 1}}, {{1.25, 1.25}})).empty());
  for (const Judgement& each : {sole(asked_about(two_cables({{1, 1}}, {{1.26, 1.26}}))),
                                sole(asked_about(two_cables({{1.26, 1.26}}, {{1, 1}})))}) {
    EXPECT_EQ(each.verdict, Verdict::warn);
    EXPECT_NEAR(*each.value, 1.26, 1e-9);
    EXPECT_TRUE(contains(each.source, "common practice"));
    expect_complete(each);
  }
}

TEST(ControlPair, ShorterArmTakesLessTravelAndMoreTension) {
  EXPECT_TRUE(asked_about(two_cables({{1, 1}, 100, 10}, {{0.5, 0.5}, 200, 5})).empty());
  EXPECT_EQ(asked_about(two_cables({{1, 1}, 100, 10}, {{1, 1}, 100, 5})).size(), 2u);
}

TEST(ControlPair, TensionsThatDoNotHoldTheShaftAreWarned) {
  EXPECT_TRUE(asked_about(two_cables({{1, 1}, 100}, {{1, 1}, 125})).empty());
  const Judgement judgement = sole(asked_about(two_cables({{1, 1}, 126}, {{1, 1}, 100})));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 1.26, 1e-9);
  EXPECT_EQ(judgement.location.line, 105);
  expect_complete(judgement);
}

TEST(ControlPair, ArmsOnShaftsOfTheirOwnAreNotCompared) {
  SmallProject project = two_cables({{1, 1}, 200}, {{2, 2}, 100});
  EXPECT_EQ(asked_about(project).size(), 2u);
  project.project.nodes[3].arm->pivot.x += 1;
  EXPECT_TRUE(asked_about(project).empty());
}

}  // namespace
}  // namespace linewright
