// Pulleys given by their centres: the path, what the rules make of it, and those out of reach.

#include <gtest/gtest.h>

#include <numbers>

#include "rules/cable_project.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double rounding_in = 1e-9;

RoutePoint centred(Vec3 at, double diameter_in, Vec3 axis) {
  RoutePoint point = pulley_at(at, diameter_in, axis);
  point.given = PointGiven::centre;
  return point;
}

/// Along FS to a pulley of 4 in, and square to the right from there.
SmallProject square_turn(const RoutePoint& pulley) {
  return cable_project({pulley}, {42, 60, 10});
}

TEST(PulleyGivenByItsCentre, IsTheSamePathAsByItsCorner) {
  const PreparedProject by_centre =
      prepare(square_turn(centred({40, 2, 10}, 4, {0, 0, 1})).project);
  const PreparedProject by_corner =
      prepare(square_turn(pulley_at({42, 0, 10}, 4, {0, 0, 1})).project);
  const PreparedRoute& route = by_centre.routes[0];
  // 40 in, a quarter of 4 π, 58 in.
  EXPECT_NEAR(route.length_in(), 40 + pi + 58, rounding_in);
  EXPECT_NEAR(route.length_in(), by_corner.routes[0].length_in(), rounding_in);
  EXPECT_NEAR(route.point_distance_in[0], 40 + pi / 2, rounding_in);
  ASSERT_EQ(route.supports.size(), 3u);
  EXPECT_NEAR(route.supports[1].distance_in, 40 + pi / 2, rounding_in);
}

TEST(PulleyGivenByItsCentre, IsJudgedAsByItsCorner) {
  SmallProject by_centre = square_turn(centred({40, 2, 10}, 4, {0, 0, 1}));
  SmallProject by_corner = square_turn(pulley_at({42, 0, 10}, 4, {0, 0, 1}));
  for (SmallProject* each : {&by_centre, &by_corner}) {
    set_tension(*each, 40, 120);
    the_route(*each).points[0].guards = 2;
    the_route(*each).points[0].guard_gap_in = 0.05;
  }
  // Size, plane, number of guards and their gap; the straights before and after.
  for (const auto& [rule, count] :
       {std::pair{std::string_view("pulley"), std::size_t{4}}, {"bend-fit", std::size_t{2}}}) {
    const auto there = by_centre.judged_by(rule);
    const auto here = by_corner.judged_by(rule);
    ASSERT_EQ(there.size(), count) << rule;
    ASSERT_EQ(here.size(), count) << rule;
    for (std::size_t i = 0; i < there.size(); ++i) {
      EXPECT_EQ(there[i].verdict, here[i].verdict);
      EXPECT_EQ(there[i].verdict, Verdict::pass) << there[i].message;
      EXPECT_NEAR(*there[i].value, *here[i].value, 1e-6);
    }
  }
}

TEST(PulleyGivenByItsCentre, ReadsFromAFile) {
  ProjectSections sections;
  sections.units = "mm";
  sections.nodes = held_node("from", "0, 0, 0") + held_node("to", "1066.8, 1524, 0");
  sections.routes =
      "  - {name: route, system: cable, line: cable-7x19-1/8-steel, from: from, to: to,\n"
      "     points: [{at: [1016, 50.8, 0], hold: pulley, diameter: 101.6, axis: [0, 0, 3], "
      "given: centre}]}\n";
  const ProjectText project(sections);
  EXPECT_NEAR(project.route("route").length_in(), 40 + pi + 58, 1e-6);
}

TEST(PulleyGivenByItsCorner, SaysSoOrSaysNothing) {
  const auto length = [](const std::string& given) {
    ProjectSections sections;
    sections.nodes = held_node("from", "0, 0, 0") + held_node("to", "42, 60, 0");
    sections.routes =
        "  - {name: route, system: cable, line: cable-7x19-1/8-steel, from: from, to: to,\n"
        "     points: [{at: [42, 0, 0], hold: pulley, diameter: 4, axis: [0, 0, 1]" +
        given + "}]}\n";
    return ProjectText(sections).route("route").length_in();
  };
  EXPECT_NEAR(length(""), 40 + pi + 58, rounding_in);
  EXPECT_EQ(length(", given: corner"), length(""));
}

Judgement wrap_finding(const SmallProject& project) {
  for (const Judgement& judgement : project.judged_by("bend-fit"))
    if (judgement.verdict == Verdict::fail) return judgement;
  ADD_FAILURE() << "bend-fit finds nothing";
  return {};
}

TEST(PulleyOutOfReach, FailsBendFitAtItsPlaceInTheFile) {
  // The pedal lies inside the groove.
  const SmallProject project = square_turn(centred({1, 0, 10}, 4, {0, 0, 1}));
  const Judgement judgement = wrap_finding(project);
  EXPECT_TRUE(contains(judgement.message, "the pulley at point 1 cannot be reached"));
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  EXPECT_EQ(judgement.route, "rudder-left");
  expect_complete(judgement);
}

TEST(PulleyOutOfReach, IsOneThatItsAxisTurnsTheWrongWayRound) {
  const Judgement judgement = wrap_finding(square_turn(centred({40, 2, 10}, 4, {0, 0, -1})));
  EXPECT_TRUE(contains(judgement.message, "is not wrapped as its axis says")) << judgement.message;
  EXPECT_TRUE(contains(judgement.mend, "turn the sign of the axis"));
  expect_complete(judgement);
}

TEST(PulleyOutOfReach, NeverLeavesTheRouteWithoutAPath) {
  for (const Vec3 centre : {Vec3{0.5, 0, 10}, Vec3{42, 59.5, 10}, Vec3{40, 2, 10}})
    for (const Vec3 axis : {Vec3{0, 0, 1}, Vec3{0, 0, -1}, Vec3{1, 0, 0}, Vec3{0, 1, 0}}) {
      const PreparedProject prepared = prepare(square_turn(centred(centre, 4, axis)).project);
      EXPECT_GT(prepared.routes[0].length_in(), 70);
      EXPECT_LT(prepared.routes[0].length_in(), 130);
    }
}

}  // namespace
}  // namespace linewright
