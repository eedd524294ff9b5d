// How tension changes with temperature, in rigid airframes and in ones that give.

#include "lines/motion/tension_change.hpp"

#include "lines/motion/line_motion.hpp"
#include "lines/prepare.hpp"
#include "physics/cable.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// 100 in long, of 1000 lbf/in; aluminium gains 1e-3 in a degree on it: 1 lbf per degF if rigid.
SmallProject one_pound_a_degree(double rigged_lbf) {
  SmallProject project = cable_project();
  project.project.temperature = {20, 70, 110};
  the_line(project).expansion_per_degf->value = airframe_expansion_per_degf - 1e-5;
  the_line(project).axial_stiffness_lbf->value = 1e5;
  set_tension(project, rigged_lbf, 200);
  return project;
}

/// The same with a second cable of the control, 5 in beside it.
SmallProject pair(double rigged_lbf) {
  SmallProject project = one_pound_a_degree(rigged_lbf);
  project.node("pedal-right", NodeKind::pedal, {0, 5, 10});
  project.node("horn-right", NodeKind::horn, {100, 5, 10});
  Route& right = project.route("rudder-right", eighth_steel, "pedal-right", "horn-right", {});
  right.control = "rudder";
  right.tension = the_route(project).tension;
  return project;
}

double slope(const SmallProject& project, std::size_t route = 0) {
  const PreparedProject prepared = prepare(project.project);
  return tension_change(prepared, prepared.routes.at(route)).value().slope_lbf_per_degf;
}

TEST(TensionChange, InARigidAirframeIsThatOfTheCableAlone) {
  EXPECT_NEAR(slope(one_pound_a_degree(40)), 1, 1e-9);
  EXPECT_NEAR(slope(pair(40)), 1, 1e-9);
}

TEST(TensionChange, InAnAirframeAsStiffAsTheCableIsHalf) {
  SmallProject project = one_pound_a_degree(40);
  project.project.airframe_stiffness_lbf_per_in = 1000;
  EXPECT_NEAR(slope(project), 0.5, 1e-9);
  the_route(project).airframe_stiffness_lbf_per_in = 3000;  // its own counts
  EXPECT_NEAR(slope(project), 0.75, 1e-9);
}

TEST(TensionChange, OfAPairIsSharedByBothCables) {
  SmallProject project = pair(40);
  project.project.airframe_stiffness_lbf_per_in = 1000;
  // 1 / (1 + 2 · 1000 / 1000).
  EXPECT_NEAR(slope(project), 1.0 / 3, 1e-9);
  project.project.routes[1].control = "elevator";
  EXPECT_NEAR(slope(project), 0.5, 1e-9);
}

TEST(TensionChange, IsNotKnownWithoutStretchOrExpansion) {
  SmallProject project = one_pound_a_degree(40);
  the_line(project).expansion_per_degf.reset();
  const PreparedProject prepared = prepare(project.project);
  EXPECT_FALSE(tension_change(prepared, prepared.routes[0]).has_value());
  const CableState state = cable_states(prepared).at(0);
  EXPECT_EQ(state.coldest_lbf, 40);
  EXPECT_FALSE(state.range.has_value());
}

// Aluminium 12.8e-6 less steel 6.5e-6 or stainless 9.6e-6 per degF [verified: engineering tables],
// on 111,607 lbf of steel and 96,451 of stainless [verified, secondary: a wire-rope maker's stretch
// table]; products [calculated].
TEST(ColdestTension, FallsWithTheColdForCableThatShrinksLessThanTheAirframe) {
  for (const auto& [line, slope] : {std::pair{"cable-7x19-1/8-steel", 6.3e-6 * 111'607},
                                    std::pair{"cable-7x19-1/8-stainless", 3.2e-6 * 96'451}}) {
    SmallProject project = cable_project({}, {100, 0, 10}, line);
    set_tension(project, 100);
    project.project.temperature = {-20, 70, 120};
    const PreparedProject prepared = prepare(project.project);
    EXPECT_NEAR(cable_states(prepared).at(0).coldest_lbf, 100 - 90 * slope, 0.01);
    project.project.temperature = {70, 70, 120};
    const PreparedProject warm = prepare(project.project);
    EXPECT_EQ(cable_states(warm).at(0).coldest_lbf, 100);
  }
}

TEST(ThermalSlack, IsWhatTheAirframeShrinksBeyondWhereTheCableWentSlack) {
  // Rigid, 30 lbf are gone after 30 of the 50 degrees; the other 20 leave 20e-3 in.
  SmallProject project = one_pound_a_degree(30);
  PreparedProject prepared = prepare(project.project);
  EXPECT_NEAR(cable_states(prepared).at(0).coldest_slack_in, 0.020, 1e-9);
  // At half a pound a degree 20 lbf are gone after 40 degrees; the other 10 leave 10e-3 in.
  project = one_pound_a_degree(20);
  project.project.airframe_stiffness_lbf_per_in = 1000;
  prepared = prepare(project.project);
  EXPECT_NEAR(cable_states(prepared).at(0).coldest_slack_in, 0.010, 1e-9);
  project = one_pound_a_degree(60);
  EXPECT_EQ(cable_states(prepare(project.project)).at(0).coldest_slack_in, 0);
}

TEST(AirframeWords, SayWhatWasTaken) {
  SmallProject project = one_pound_a_degree(30);
  const PreparedProject rigid = prepare(project.project);
  EXPECT_EQ(airframe_words(rigid, rigid.routes[0]), "in a rigid airframe");
  project.project.airframe_stiffness_lbf_per_in = 1200;
  const PreparedProject giving = prepare(project.project);
  EXPECT_EQ(airframe_words(giving, giving.routes[0]), "in an airframe of 1200 lbf/in");
}

/// Two spans of 30 and 70 in of a cable that cold leaves 0.010 in too long.
SmallProject two_spans(double rigged_lbf = 20) {
  SmallProject project = one_pound_a_degree(rigged_lbf);
  the_route(project).points = {held({30, 0, 10}, HoldKind::fairlead)};
  project.project.airframe_stiffness_lbf_per_in = 1000;
  return project;
}

std::vector<SpanReach> reaches_of(const SmallProject& project) {
  return motion_of(prepare(project.project)).reaches.at(0);
}

// It slides in its guides: all that it has over may be in either span; likely is a share by length.
TEST(Reach, OfACableThatColdLeavesSlackBoundsEachSpanByAllOfIt) {
  const auto reaches = reaches_of(two_spans());
  ASSERT_EQ(reaches.size(), 2u);
  for (const SpanReach& reach : reaches) {
    const ReachEnvelope& envelope = reach.stretch.envelope;
    const double length = envelope.end_in - envelope.start_in;
    EXPECT_NEAR(envelope.surplus_in, 0.010, 1e-9);
    // Half the square root of (L + d)^2 - L^2, and root(3 L d / 8) of the share.
    EXPECT_NEAR(envelope.bound_half_width_in, std::sqrt(0.010 * (2 * length + 0.010)) / 2, 1e-9);
    EXPECT_NEAR(envelope.bow_in, std::sqrt(3 * length * (0.010 * length / 100) / 8), 1e-9);
  }
}

TEST(Reach, OfACableBoundsEachSpanByAllThatTheOtherCableGives) {
  SmallProject project = pair(40);
  project.project.temperature = {70, 70, 70};
  const double whole = (200 - 80) / 1000.0;
  for (const std::vector<double>& guides :
       {std::vector<double>{}, {50}, {30, 60}, {10, 20, 30, 99}}) {
    the_route(project).points.clear();
    for (const double at : guides)
      the_route(project).points.push_back(held({at, 0, 10}, HoldKind::fairlead));
    for (const SpanReach& reach : reaches_of(project))
      EXPECT_NEAR(reach.stretch.envelope.surplus_in, whole, 1e-9) << guides.size();
  }
}

TEST(Reach, OfACableIsBoundedByAClampThatHoldsItFast) {
  SmallProject project = two_spans();
  project.project.routes[0].points[0].hold = HoldKind::clamp;
  set_travel(project, 0, 0);
  const auto still = reaches_of(project);
  EXPECT_NEAR(still[0].stretch.envelope.surplus_in, 0.003, 1e-9);
  EXPECT_NEAR(still[1].stretch.envelope.surplus_in, 0.007, 1e-9);
  // About a sleeve a clamp holds the sleeve, and the cable slides in it.
  Sleeve sleeve;
  sleeve.from_in = 25;
  sleeve.to_in = 35;
  project.project.routes[0].sleeves = {sleeve};
  set_travel(project, 1, 1);
  for (const SpanReach& reach : reaches_of(project))
    EXPECT_NEAR(reach.stretch.envelope.surplus_in, 0.010, 1e-9);
}

// A guide put in between does not take the surplus away.
TEST(Reach, OfACableWithOneMoreGuideKeepsItsSurplus) {
  SmallProject project = two_spans();
  const ReachEnvelope drawn = reaches_of(project)[1].stretch.envelope;
  const ReachEnvelope part = shortened(drawn, 30, 60, 0, 2);
  the_route(project).points.push_back(held({60, 0, 10}, HoldKind::fairlead));
  const ReachEnvelope guided = reaches_of(project)[1].stretch.envelope;
  EXPECT_NEAR(part.surplus_in, guided.surplus_in, 1e-9);
  EXPECT_NEAR(part.bound_half_width_in, guided.bound_half_width_in, 1e-9);
}

}  // namespace
}  // namespace linewright
