// What clearance, separation and chafe make of a cable's sag, and of the slack side of a pair.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "lines/motion/line_motion.hpp"
#include "lines/motion/taut_raise.hpp"
#include "lines/motion/tension_change.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

// 1/8 7x19 steel: 0.0024167 lb/in [from memory], AE 111,607 lb [verified, secondary], largest
// radius 0.139 in / 2 [verified: AC 43.13-1B Table 7-3].
constexpr double largest_radius_in = 0.0695;
constexpr double weight_lb_per_in = 2.90 / 1200;
// Aluminium 12.8e-6 less steel 6.5e-6 per degF [verified: engineering tables], on that AE.
constexpr double lost_lbf_per_degf = 6.3e-6 * 111'607;
// Margins from one search inside another.
constexpr double search_in = 1e-4;

/// A run of 60 in past a flat box whose top is `below_in` under its centre line.
SmallProject over_box(double below_in, std::optional<double> tension_lbf) {
  SmallProject project = cable_project({}, {60, 0, 10});
  Solid box;
  box.name = "box";
  box.shape = Box{{28, -2, 0}, {32, 2, 10 - below_in}};
  project.project.structure.solids.push_back(box);
  if (tension_lbf) set_tension(project, *tension_lbf);
  set_travel(project, 0, 0);  // its ends swing nowhere
  return project;
}

Judgement clearance_of(const SmallProject& project) {
  return sole(project.judged_by("clearance"));
}

TEST(ClearanceOfACable, IsTheGapLessTheSagAtItsTension) {
  // w L² / (8 T) = 0.036250 in at 30 lbf [calculated].
  const Judgement judgement = clearance_of(over_box(1, 30));
  EXPECT_NEAR(*judgement.value, 1 - largest_radius_in - 0.03625, search_in);
  EXPECT_EQ(judgement.verdict, Verdict::pass);
}

TEST(ClearanceOfACable, CountsTheLoadFactorAndTheBuildTolerance) {
  SmallProject project = over_box(1, 30);
  project.project.load_factor = {3.8, -1.5};
  project.project.build_tolerance_in = 0.06;
  EXPECT_NEAR(*clearance_of(project).value, 1 - largest_radius_in - 3.8 * 0.03625 - 0.06,
              search_in);
}

TEST(ClearanceOfACable, CountsTheTensionThatColdLeaves) {
  SmallProject project = over_box(1, 40);
  project.project.temperature = {40, 70, 100};
  const double tension = 40 - 30 * lost_lbf_per_degf;
  EXPECT_NEAR(*clearance_of(project).value,
              1 - largest_radius_in - weight_lb_per_in * 60 * 60 / (8 * tension), search_in);
}

TEST(ClearanceOfACable, IsTheDrawnOneAndNotKnownWhereNoTensionIsStated) {
  const SmallProject project = over_box(1, std::nullopt);
  const auto clearance = project.judged_by("clearance");
  ASSERT_EQ(clearance.size(), 2u);
  EXPECT_NEAR(*clearance[0].value, 1 - largest_radius_in, search_in);
  EXPECT_EQ(clearance[1].verdict, Verdict::unknown);
  const auto chafe = project.judged_by("chafe");
  EXPECT_TRUE(std::any_of(chafe.begin(), chafe.end(),
                          [](const Judgement& each) { return each.verdict == Verdict::unknown; }));
}

TEST(ClearanceOfACable, SaysHowMuchOfTheGapTheSagTakes) {
  const Judgement judgement = clearance_of(over_box(0.6, 30));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_TRUE(contains(judgement.message, "can hang 0.036 in off")) << judgement.message;
  expect_complete(judgement);
}

TEST(SeparationFromACable, IsTheGapLessItsSag) {
  SmallProject project = cable_project({}, {60, 0, 10});
  set_tension(project, 30);
  project.node("low", NodeKind::bulkhead, {30, -20, 9})
      .node("high", NodeKind::bulkhead, {30, 20, 9});
  project.route("static", "tube-aluminium-1/4", "low", "high");
  const Judgement judgement = sole(project.judged_by("separation"));
  EXPECT_NEAR(*judgement.value, 1 - largest_radius_in - 0.125 - 0.03625, 1e-3);
}

/// Two runs of 60 in side by side, 4 in apart.
SmallProject pair_of(double rigged_lbf, std::optional<double> limit_load_lbf) {
  SmallProject project = cable_project({}, {60, 0, 10});
  set_tension(project, rigged_lbf, limit_load_lbf);
  project.node("pedal-right", NodeKind::pedal, {0, 4, 10})
      .node("horn-right", NodeKind::horn, {60, 4, 10});
  Route& right = project.route("rudder-right", eighth_steel, "pedal-right", "horn-right");
  right.control = "rudder";
  right.tension = the_route(project).tension;
  return project;
}

SpanReach first_reach(const SmallProject& project) {
  const PreparedProject prepared = prepare(project.project);
  SpanReach reach = motion_of(prepared).reaches.at(0).front();
  reach.stretch.route = nullptr;
  return reach;
}

TEST(SlackSideOfAPair, SagsUnderWhatTheOthersLimitLoadLeaves) {
  // Two alike rigged to 40 lbf: of a pull of 60 lbf each takes half, which leaves 10 lbf in the
  // other: it sags four times the 0.0271875 in that it does at 40.
  const SpanReach reach = first_reach(pair_of(40, 60));
  EXPECT_NEAR(reach.stretch.envelope.sag_in, 0.10875, 1e-6);
  EXPECT_NEAR(reach.sag_unloaded_in.value(), 0.0271875, 1e-6);
  EXPECT_EQ(reach.stretch.envelope.surplus_in, 0);
}

TEST(SlackSideOfAPair, IsTautAgainWhereBothAreRiggedTighterByWhatTheyLack) {
  const auto raise_of = [](const SmallProject& project) {
    const PreparedProject prepared = prepare(project.project);
    return taut_raise_lbf(prepared, motion_of(prepared).cables, 0);
  };
  // Of a pull of 200 lbf each takes half: from 100 lbf on nothing is left over.
  EXPECT_NEAR(raise_of(pair_of(40, 200)).value(), 60, 0.01);
  EXPECT_FALSE(raise_of(pair_of(40, 80)));
  // Alone it lacks what the cold takes beyond its tension.
  SmallProject alone = over_box(1, 40);
  alone.project.temperature = {-10, 70, 100};
  EXPECT_NEAR(raise_of(alone).value(), 80 * lost_lbf_per_degf - 40, 0.01);
}

// 120 lbf beyond twice its tension leave 0.0645 in over: at the most the cable comes out by
// half of root(60.0645² - 60²), 1.39 in, and likely by its sag of a quarter of an inch.
TEST(SlackSideOfAPair, IsToBeRiggedTighterWhereOnlySlackLetsItReach) {
  SmallProject project = pair_of(40, 200);
  for (const double middle_in : {20.0, 40.0}) {
    Solid box;
    box.name = "box-" + std::to_string(static_cast<int>(middle_in));
    box.shape = Box{{middle_in - 1, -1, 0}, {middle_in + 1, 1, 9}};
    project.project.structure.solids.push_back(box);
  }
  std::vector<std::string> mends;
  for (const Judgement& each : project.judged_by("chafe"))
    if (each.with && each.with->starts_with("box") && each.verdict == Verdict::warn)
      mends.push_back(each.mend);
  ASSERT_GE(mends.size(), 2u);
  EXPECT_TRUE(contains(mends[0], " and rudder-right 60 lbf tighter or more")) << mends[0];
  // One cause has one mend, which a list of both places says once.
  EXPECT_EQ(mends[0], mends[1]);
}

TEST(SlackSideOfAPair, HangsAsOneStrungWithoutTensionFromTwiceItsTensionOn) {
  // L (3 w L / (64 AE))^(1/3) = 0.2360 in [calculated].
  const double most = 60 * std::cbrt(3 * weight_lb_per_in * 60 / (64 * 111607));
  for (const double load : {80.0, 120.0, 200.0}) {
    const SpanReach reach = first_reach(pair_of(40, load));
    EXPECT_NEAR(reach.stretch.envelope.sag_in, most, 1e-4) << load;
    // What the other stretches beyond is left over: (P − 2 T) L / (AE).
    EXPECT_NEAR(reach.stretch.envelope.surplus_in, (load - 80) * 60 / 111607, 1e-5) << load;
    EXPECT_EQ(reach.stretch.envelope.bow_in, 0);
  }
}

TEST(SlackSideOfAPair, IsWorkedOutAtTheLowestTensionOfBoth) {
  SmallProject project = pair_of(40, 60);
  project.project.temperature = {40, 70, 100};
  const PreparedProject prepared = prepare(project.project);
  const CableState state = cable_states(prepared).at(0);
  ASSERT_LT(state.coldest_lbf, 30);
  const SlackSide side = state.slack_side.value();
  EXPECT_EQ(side.tension_lbf, 0);
  EXPECT_NEAR(side.slack_in, (60 - 2 * state.coldest_lbf) * 60 / 111607, 1e-6);
  EXPECT_EQ(side.pulled->route->name, "rudder-right");
}

TEST(SlackSideOfAPair, IsNoneWhereTheCableIsAloneOrNoLimitLoadIsStated) {
  const auto slack = [](const SmallProject& project) {
    const PreparedProject prepared = prepare(project.project);
    return cable_states(prepared).at(0).slack_side;
  };
  EXPECT_TRUE(slack(pair_of(40, 60)).has_value());
  EXPECT_FALSE(slack(pair_of(40, std::nullopt)).has_value());
  SmallProject other_control = pair_of(40, 60);
  other_control.project.routes[1].control = "elevator";
  EXPECT_FALSE(slack(other_control).has_value());
  SmallProject no_control = pair_of(40, 60);
  for (Route& route : no_control.project.routes) route.control.clear();
  EXPECT_FALSE(slack(no_control).has_value());
}

TEST(SlackSideOfAPair, TakesTheLimitLoadOfEitherWhereOneIsNotStated) {
  SmallProject project = pair_of(40, 60);
  project.project.routes[1].tension->limit_load_lbf.reset();
  const PreparedProject prepared = prepare(project.project);
  for (const CableState& state : cable_states(prepared))
    EXPECT_NEAR(state.slack_side.value().tension_lbf, 10, 1e-9);
}

TEST(SlackSideOfAPair, FollowsFromThePilotsPullWhereThatIsMore) {
  SmallProject project = pair_of(40, 100);
  project.project.routes[1].lever = ControlLever{1, 120.0, {}};
  const PreparedProject prepared = prepare(project.project);
  const std::vector<CableState> states = cable_states(prepared);
  EXPECT_EQ(states[0].slack_side.value().pull_lbf, 120);
  EXPECT_NEAR(states[0].slack_side.value().slack_in, 40 * 60 / 111607.0, 1e-6);
  EXPECT_NEAR(states[1].slack_side.value().slack_in, 20 * 60 / 111607.0, 1e-6);
}

TEST(SlackSideOfAPair, CanReachWhatTheTautCableStaysOff) {
  const auto gravest = [](double limit_load_lbf) {
    SmallProject project = pair_of(40, limit_load_lbf);
    Solid box;
    box.name = "box";
    box.shape = Box{{28, -1, 0}, {32, 1, 9.75}};
    project.project.structure.solids.push_back(box);
    std::vector<Verdict> with_box;
    for (const Judgement& judgement : project.judged_by("chafe"))
      if (judgement.with == "box") with_box.push_back(judgement.verdict);
    return with_box.empty() ? Verdict::unknown
                            : *std::max_element(with_box.begin(), with_box.end());
  };
  EXPECT_EQ(gravest(40), Verdict::pass);
  EXPECT_EQ(gravest(120), Verdict::fail);
}

}  // namespace
}  // namespace linewright
