// Guards at pulleys: near each tangent point, more between when the wrap is over 90 degrees
// (MIL-F-18372 para 3.1.1.17.13 [verified]), close even when the cable is slack (14 CFR 23.689(b)
// [verified]).

#include <cmath>
#include <numbers>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// A pulley of 3 in groove that turns the cable by `turn_deg`.
SmallProject turning(double turn_deg, std::optional<int> guards, std::optional<double> gap_in) {
  const double turn = turn_deg * std::numbers::pi / 180;
  SmallProject project = cable_project({pulley_at({50, 0, 10}, 3, {0, 0, 1})},
                                       {50 + 40 * std::cos(turn), 40 * std::sin(turn), 10});
  the_route(project).points[0].guards = guards;
  the_route(project).points[0].guard_gap_in = gap_in;
  return project;
}

/// What is said after size and plane.
std::vector<Judgement> guards_of(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("pulley");
  all.erase(all.begin(), all.begin() + 2);
  return all;
}

Verdict number_verdict(double turn_deg, int guards) {
  return guards_of(turning(turn_deg, guards, 0.05)).at(0).verdict;
}

TEST(PulleyGuards, NotStatedAreUnknownAndTheMendSaysWhatToState) {
  const Judgement judgement = sole(guards_of(turning(90, std::nullopt, std::nullopt)));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(*judgement.limit, 2);
  EXPECT_TRUE(contains(judgement.mend, "guards: 2, guard_gap:")) << judgement.mend;
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  expect_complete(judgement);
}

TEST(PulleyGuards, OneStandsAtEachTangentPointAndOneBetweenPastAQuarterTurn) {
  EXPECT_EQ(number_verdict(90, 2), Verdict::pass);
  EXPECT_EQ(number_verdict(90, 1), Verdict::fail);
  EXPECT_EQ(number_verdict(91, 2), Verdict::fail);
  EXPECT_EQ(number_verdict(91, 3), Verdict::pass);
}

// The half inch is [common practice, no source].
TEST(PulleyGuards, OneServesWhereTheTangentPointsAreHalfAnInchApart) {
  // An arc of 0.5 in on a radius of 1.5 in turns by a third of a radian: 19.1 degrees.
  EXPECT_EQ(number_verdict(19, 1), Verdict::pass);
  EXPECT_EQ(number_verdict(19.2, 1), Verdict::fail);
  EXPECT_EQ(number_verdict(0, 1), Verdict::pass);
}

TEST(PulleyGuards, NoneFailsAndItsGapIsNotAskedFor) {
  const Judgement judgement = sole(guards_of(turning(10, 0, std::nullopt)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.source, "23.689(b)"));
  expect_complete(judgement);
}

// A gap of one cable diameter lets the cable out [calculated].
TEST(PulleyGuards, LetNoCableThroughTheirGap) {
  const auto gap = [](std::optional<double> gap_in) {
    return guards_of(turning(90, 2, gap_in)).at(1);
  };
  EXPECT_EQ(gap(0.05).verdict, Verdict::pass);
  EXPECT_EQ(gap(0.125).verdict, Verdict::pass) << "exactly at a limit passes";
  EXPECT_EQ(gap(0.126).verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*gap(0.126).limit, 0.125);
  EXPECT_EQ(gap(0.126).sense, LimitSense::at_most);
  expect_complete(gap(0.126));
  EXPECT_EQ(gap(std::nullopt).verdict, Verdict::unknown);
  expect_complete(gap(std::nullopt));
}

TEST(PulleyGuards, CountTheWrapAsAnArmSwingsTheCable) {
  // A quarter turn on a groove of 3 in: the leg starts at (51.5, 1.5), 38.5 in from the horn. Its
  // arm of 5 in turns in the plane of the pulley. 3 in of travel toward the pedal bring the end to
  // 35.5 in: 1 in forward of the leg, which turns the cable by 1.6 degrees more.
  SmallProject project = turning(90, 2, 0.05);
  the_route(project).points[0].at = {51.5, 0, 10};
  project.project.nodes.back().at = {51.5, 40, 10};
  const double travel = 38.5 - std::hypot(35.5, 1);
  set_travel(project, travel, 0);
  const auto number = [&](double pivot_station) {
    project.project.nodes.back().arm = Arm{{pivot_station, 40, 10}, {0, 0, 1}};
    return guards_of(project).at(0);
  };
  const Judgement forward = number(46.5);
  EXPECT_EQ(forward.verdict, Verdict::fail);
  EXPECT_EQ(*forward.limit, 3);
  const double degrees = 90 + std::atan(1 / 35.5) * 180 / std::numbers::pi;
  EXPECT_NEAR(degrees, 91.6, 0.05);
  EXPECT_TRUE(contains(forward.message, "wrap of 91.6 deg at full travel, as horn swings"))
      << forward.message;
  expect_complete(forward);
  // An arm to the other side swings the cable off the pulley instead.
  EXPECT_EQ(number(56.5).verdict, Verdict::pass);
}

TEST(PulleyGuards, SayTheSameOfAReversedRun) {
  expect_same_reversed(turning(100, 2, 0.2), "pulley");
}

// The groove's radius is 1.5 in, and the cable up to 0.139 in thick: its outside is at 1.5695 in.
TEST(PulleyGuards, ThatStandInTheCableFail) {
  const auto guards = [](double outside_in, double gap_in) {
    SmallProject project = turning(90, 2, gap_in);
    the_route(project).points[0].outside_in = outside_in;
    return guards_of(project);
  };
  EXPECT_EQ(guards(3.05, 0.05).size(), 2u) << "a pin at 1.575 in";
  const std::vector<Judgement> pinched = guards(3.05, 0.0001);
  ASSERT_EQ(pinched.size(), 3u);
  EXPECT_EQ(pinched[2].verdict, Verdict::fail);
  EXPECT_NEAR(*pinched[2].value, 1.5251 - 1.5695, 1e-4);
  EXPECT_TRUE(contains(pinched[2].message, "into the cable in the groove")) << pinched[2].message;
  expect_complete(pinched[2]);
}

}  // namespace
}  // namespace linewright
