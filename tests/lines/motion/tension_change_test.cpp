// How tension changes with temperature, in rigid airframes and in ones that give.

#include "lines/motion/tension_change.hpp"

#include "lines/motion/reach.hpp"
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
  EXPECT_EQ(coldest_tension_lbf(prepared, prepared.routes[0]), 40);
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
    EXPECT_NEAR(coldest_tension_lbf(prepared, prepared.routes[0]), 100 - 90 * slope, 0.01);
    project.project.temperature = {70, 70, 120};
    const PreparedProject warm = prepare(project.project);
    EXPECT_EQ(coldest_tension_lbf(warm, warm.routes[0]), 100);
  }
}

TEST(ThermalSlack, IsWhatTheAirframeShrinksBeyondWhereTheCableWentSlack) {
  // Rigid, 30 lbf are gone after 30 of the 50 degrees; the other 20 leave 20e-3 in.
  SmallProject project = one_pound_a_degree(30);
  PreparedProject prepared = prepare(project.project);
  EXPECT_NEAR(thermal_slack_in(prepared, prepared.routes[0],
                               coldest_tension_lbf(prepared, prepared.routes[0])),
              0.020, 1e-9);
  // At half a pound a degree 20 lbf are gone after 40 degrees; the other 10 leave 10e-3 in.
  project = one_pound_a_degree(20);
  project.project.airframe_stiffness_lbf_per_in = 1000;
  prepared = prepare(project.project);
  EXPECT_NEAR(thermal_slack_in(prepared, prepared.routes[0],
                               coldest_tension_lbf(prepared, prepared.routes[0])),
              0.010, 1e-9);
  EXPECT_EQ(thermal_slack_in(prepared, prepared.routes[0], 5), 0);
}

TEST(AirframeWords, SayWhatWasTaken) {
  SmallProject project = one_pound_a_degree(30);
  const PreparedProject rigid = prepare(project.project);
  EXPECT_EQ(airframe_words(rigid, rigid.routes[0]), "in a rigid airframe");
  project.project.airframe_stiffness_lbf_per_in = 1200;
  const PreparedProject giving = prepare(project.project);
  EXPECT_EQ(airframe_words(giving, giving.routes[0]), "in an airframe of 1200 lbf/in");
}

// What cold leaves over hangs in the span, as much of it as the span has of the cable.
TEST(Reach, OfACableInAnAirframeThatGivesHasItsSlackInTheSpan) {
  SmallProject project = one_pound_a_degree(20);
  the_route(project).points = {held({50, 0, 10}, HoldKind::fairlead)};
  project.project.airframe_stiffness_lbf_per_in = 1000;
  const PreparedProject prepared = prepare(project.project);
  const auto reaches = span_reaches(prepared, prepared.routes[0], free_runs(prepared));
  ASSERT_EQ(reaches.size(), 2u);
  EXPECT_NEAR(reaches[0].stretch.envelope.surplus_in, 0.005, 1e-9);
}

}  // namespace
}  // namespace linewright
