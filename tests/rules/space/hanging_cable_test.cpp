// What clearance, separation and chafe make of a cable's sag, and of the slack side of a pair.

#include <gtest/gtest.h>

#include <cmath>

#include "lines/motion/reach.hpp"
#include "lines/motion/tension_change.hpp"
#include "lines/prepare.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

// 1/8 7x19 steel: 0.0024167 lb/in [from memory], AE 111,607 lb [verified, secondary], largest
// radius 0.139 in / 2 [verified: AC 43.13-1B Table 7-3].
constexpr double largest_radius_in = 0.0695;
constexpr double weight_lb_per_in = 2.90 / 1200;
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
  const double slope = tension_slope_lbf_per_degf(airframe_expansion_per_degf,
                                                  the_line(project).expansion_per_degf->value,
                                                  the_line(project).axial_stiffness_lbf->value);
  const double tension = 40 - 30 * slope;
  EXPECT_NEAR(*clearance_of(project).value,
              1 - largest_radius_in - weight_lb_per_in * 60 * 60 / (8 * tension), search_in);
}

TEST(ClearanceOfACable, IsTheDrawnOneWhereNoTensionIsStated) {
  const SmallProject project = over_box(1, std::nullopt);
  EXPECT_NEAR(*clearance_of(project).value, 1 - largest_radius_in, search_in);
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
  SpanReach reach = span_reaches(prepared, prepared.routes[0], free_runs(prepared)).front();
  reach.stretch.route = nullptr;
  return reach;
}

TEST(SlackSideOfAPair, SagsUnderWhatTheOthersLimitLoadLeaves) {
  // Two alike rigged to 40 lbf: 60 lbf on one leave 20 lbf in the other, which sags 0.054375 in.
  const SpanReach reach = first_reach(pair_of(40, 60));
  EXPECT_NEAR(reach.stretch.envelope.sag_in, 0.054375, 1e-6);
  EXPECT_NEAR(reach.sag_unloaded_in, 0.0271875, 1e-6);
  EXPECT_EQ(reach.stretch.envelope.surplus_in, 0);
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
  const double cold = coldest_tension_lbf(prepared, prepared.routes[0]);
  ASSERT_LT(cold, 30);
  EXPECT_NEAR(*slack_side_tension_lbf(prepared, prepared.routes[0]), 2 * cold - 60, 1e-9);
}

TEST(SlackSideOfAPair, IsNoneWhereTheCableIsAloneOrNoLimitLoadIsStated) {
  const auto slack = [](const SmallProject& project) {
    const PreparedProject prepared = prepare(project.project);
    return slack_side_tension_lbf(prepared, prepared.routes[0]);
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
  for (const PreparedRoute& route : prepared.routes)
    EXPECT_NEAR(*slack_side_tension_lbf(prepared, route), 20, 1e-9);
}

TEST(SlackSideOfAPair, CanReachWhatTheTautCableStaysOff) {
  const auto gravest = [](double limit_load_lbf) {
    SmallProject project = pair_of(40, limit_load_lbf);
    Solid box;
    box.name = "box";
    box.shape = Box{{28, -1, 0}, {32, 1, 9.75}};
    project.project.structure.solids.push_back(box);
    Verdict worst = Verdict::pass;
    for (const Judgement& judgement : project.judged_by("chafe"))
      if (judgement.with == "box") worst = std::max(worst, judgement.verdict);
    return worst;
  };
  EXPECT_EQ(gravest(40), Verdict::pass);
  EXPECT_EQ(gravest(120), Verdict::fail);
}

}  // namespace
}  // namespace linewright
