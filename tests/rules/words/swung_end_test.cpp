// Ends of cables that swing on their arms, as the rules see them. An arm of 5 in that turns by the
// angle of a 3-4-5 triangle carries its end 3 in along and 1 in down [calculated]. A fairlead may
// turn a cable by 3 degrees: 14 CFR 23.689(c) [verified].

#include "rules/words/swung_end.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "lines/prepare.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

constexpr double degree = std::numbers::pi / 180;

void set_swinging_travel(SmallProject& project, double leg_in) {
  set_travel(project, leg_in - std::hypot(leg_in - 3, 1), std::hypot(leg_in + 3, 1) - leg_in);
}

/// A fairlead at FS 60, and a horn `leg_in` behind it on an arm of 5 in that hangs below the run.
SmallProject fairlead_and_horn(double leg_in) {
  SmallProject project =
      cable_project({held({60, 0, 10}, HoldKind::fairlead)}, {60 + leg_in, 0, 10});
  project.project.nodes.back().arm = Arm{{60 + leg_in, 0, 5}, {0, 1, 0}};
  set_swinging_travel(project, leg_in);
  return project;
}

Judgement turn_of(const SmallProject& project) {
  return sole(project.judged_by("fairlead-angle"));
}

TEST(SwungFairlead, TurnsTheCableMostWhereTheEndIsNearest) {
  const Judgement far = turn_of(fairlead_and_horn(40));
  EXPECT_EQ(far.verdict, Verdict::pass);
  EXPECT_NEAR(*far.value, std::atan(1.0 / 37) / degree, 1e-9);
  EXPECT_TRUE(contains(far.message, "at full travel, as horn swings")) << far.message;
}

TEST(SwungFairlead, TooNearToTheHornFails) {
  const Judgement near = turn_of(fairlead_and_horn(15));
  EXPECT_EQ(near.verdict, Verdict::fail);
  EXPECT_NEAR(*near.value, std::atan(1.0 / 12) / degree, 1e-9);
  EXPECT_TRUE(contains(near.mend, "farther from horn")) << near.mend;
  expect_complete(near);
}

/// The same with the pedal so far off the line of the run that the drawing turns the cable by
/// `drawn_deg`, the way its horn swings it: within the tolerance it is straight.
SmallProject drawn_off(double drawn_deg) {
  SmallProject project = fairlead_and_horn(40);
  project.project.build_tolerance_in = 0.25;
  project.project.nodes.front().at.z -= 60 * std::tan(drawn_deg * degree);
  return project;
}

// What a drawing to a tenth of an inch adds to a turn, a tenth of a degree at the most [common
// practice, no source], is not held against an arm.
TEST(SwungFairlead, IsForgivenATenthOfADegreeOfItsDrawing) {
  const double swung_deg = std::atan(1.0 / 37) / degree;
  for (const double drawn_deg : {0.05, 0.099, 0.1})
    EXPECT_NEAR(*turn_of(drawn_off(drawn_deg)).value, swung_deg, 1e-6) << drawn_deg;
  for (const double drawn_deg : {0.101, 0.2, 0.5})
    EXPECT_NEAR(*turn_of(drawn_off(drawn_deg)).value, swung_deg + drawn_deg - 0.1, 1e-6)
        << drawn_deg;
}

TEST(SwungFairlead, WithoutAnArmSaysThatTheEndIsTakenAsFixed) {
  SmallProject project = fairlead_and_horn(15);
  project.project.nodes.back().arm.reset();
  const Judgement fixed = turn_of(project);
  EXPECT_EQ(fixed.verdict, Verdict::pass);
  EXPECT_NEAR(*fixed.value, 0, 1e-9);
  EXPECT_TRUE(contains(fixed.message, "horn is taken as fixed: its arm is not stated"))
      << fixed.message;
  project = fairlead_and_horn(15);
  the_route(project).travel.reset();
  EXPECT_TRUE(contains(turn_of(project).message, "the cable's travel is not stated"));
}

TEST(SwungFairlead, BetweenTwoArmsTakesBothEndsAtOneMoment) {
  // Both arms hang below and the cable moves as one: while one leg is short and steep the other is
  // long and flat, so the turn is less than if both were short at once.
  SmallProject project = fairlead_and_horn(15);
  project.project.nodes.front().at = {45, 0, 10};
  project.project.nodes.front().arm = Arm{{45, 0, 5}, {0, 1, 0}};
  const PreparedProject prepared = prepare(project.project);
  const auto from = arm_swing(prepared.routes[0], RouteEnd::from);
  const auto to = arm_swing(prepared.routes[0], RouteEnd::to);
  ASSERT_TRUE(from && to);
  const auto slope = [](Vec3 end) { return std::atan((10 - end.z) / std::abs(end.x - 60)); };
  EXPECT_NEAR(slope(to->toward_from), std::atan(1.0 / 12), 1e-9);
  const double turn = std::max(slope(from->toward_from) + slope(to->toward_from),
                               slope(from->toward_to) + slope(to->toward_to));
  EXPECT_NEAR(*turn_of(project).value, turn / degree, 1e-9);
  EXPECT_LT(turn, slope(from->toward_to) + slope(to->toward_from));
}

TEST(SwungFairlead, SaysTheSameOfAReversedRun) {
  SmallProject project = fairlead_and_horn(15);
  expect_same_reversed(project, "fairlead-angle");
}

/// A square turn over a pulley, in a plane and its spindle's direction as given.
SmallProject pulley_in(Vec3 along, Vec3 across, Vec3 off_deg_axis) {
  const Vec3 at = Vec3{0, 0, 10} + along * 50;
  return cable_project({pulley_at(at, 3, off_deg_axis)}, at + across * 40);
}

// A spindle that leans by 0.8 degrees along the outgoing leg is off that leg's square by as much,
// whichever of the three planes the turn lies in.
TEST(PulleyPlane, IsJudgedAlikeInEveryPlane) {
  const Vec3 x{1, 0, 0}, y{0, 1, 0}, z{0, 0, 1};
  struct Turn {
    Vec3 along, across, spindle;
  };
  for (const Turn& turn : {Turn{x, y, z}, Turn{x, z, y}, Turn{y, z, x}}) {
    const double lean = 0.8 * degree;
    const Vec3 leaning = turn.spindle * std::cos(lean) + turn.across * std::sin(lean);
    const SmallProject project = pulley_in(turn.along, turn.across, leaning);
    const Judgement plane = project.judged_by("pulley").at(1);
    EXPECT_NEAR(*plane.value, 0.8, 1e-9);
    const PreparedProject prepared = prepare(project.project);
    ASSERT_EQ(prepared.routes[0].centreline.bends().size(), 1u);
    const Bend& bend = prepared.routes[0].centreline.bends()[0];
    EXPECT_NEAR(bend.angle_rad, 90 * degree, 1e-9);
    // A quarter of 3 π in the groove, with 1.5 in of each leg taken up.
    EXPECT_NEAR(prepared.routes[0].length_in(), 50 + 40 - 3 + 0.75 * std::numbers::pi, 1e-9);
  }
}

// MIL-F-18372 para 3.1.1.17.8 [verified]: 1 degree, 2 where the cable travels sideways.
TEST(SwungPulley, MayLieADegreeFartherOffThanOneThatIsStill) {
  // The leg leaves the groove of 2.5 in 38.75 in from the horn, whose arm turns in the upright
  // plane: nearest, 35.75 in away and 1 in down.
  SmallProject project = cable_project({pulley_at({60, 0, 10}, 2.5, {0, 0, 1})}, {60, 40, 10});
  project.project.nodes.back().arm = Arm{{60, 40, 5}, {1, 0, 0}};
  const double travel = 38.75 - std::hypot(35.75, 1);
  set_travel(project, travel, travel);
  const auto plane = [&] { return project.judged_by("pulley").at(1); };
  EXPECT_EQ(plane().verdict, Verdict::pass);
  EXPECT_NEAR(*plane().value, std::atan(1 / 35.75) / degree, 1e-6);
  EXPECT_EQ(*plane().limit, 2);
  EXPECT_TRUE(contains(plane().source, "travels sideways"));
  // Half as far away it is 3.4 degrees.
  project.project.nodes.back().at = {60, 20, 10};
  project.project.nodes.back().arm = Arm{{60, 20, 5}, {1, 0, 0}};
  EXPECT_EQ(plane().verdict, Verdict::fail);
  EXPECT_TRUE(contains(plane().mend, "farther from horn")) << plane().mend;
  expect_complete(plane());
}

TEST(SwungPulley, InThePlaneOfTheArmStaysInItsOwn) {
  SmallProject project = cable_project({pulley_at({60, 0, 10}, 2.5, {0, 1, 0})}, {100, 0, 50});
  project.project.nodes.back().arm = Arm{{103, 0, 46}, {0, 1, 0}};
  set_travel(project, 1, 1);
  const Judgement plane = project.judged_by("pulley").at(1);
  EXPECT_NEAR(*plane.value, 0, 1e-9);
}

TEST(SwungCable, ComesNearerToWhatIsBesideItsHorn) {
  // A box below the run, 20 in from the fairlead. The end swings by 1 in where it is nearest to the
  // fairlead, 37 in from it: there the cable is 20/37 of that off.
  const auto gap = [](bool swings) {
    SmallProject project = fairlead_and_horn(40);
    if (!swings) set_travel(project, 0, 0);
    set_tension(project, 100);
    Solid box;
    box.name = "box";
    box.shape = Box{{79.99, -1, 6}, {80, 1, 8.7}};
    project.project.structure.solids.push_back(box);
    return *sole(project.judged_by("clearance")).value;
  };
  EXPECT_NEAR(gap(false) - gap(true), 20.0 / 37, 0.002);
}

TEST(Arm, ThatCannotGiveTheTravelStatedFailsBendFit) {
  SmallProject project = fairlead_and_horn(40);
  EXPECT_TRUE(not_passed(project.judged_by("bend-fit")).empty());
  set_travel(project, 0, 11);  // the arm is 5 in
  const Judgement judgement = sole(not_passed(project.judged_by("bend-fit")));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "horn");
  EXPECT_NEAR(*judgement.value, std::hypot(40, 5) + 5 - 40, 1e-9);
  EXPECT_EQ(*judgement.limit, 11);
  EXPECT_TRUE(contains(judgement.message, "it gives 5.31 in toward horn, asked 11.0 in"))
      << judgement.message;
  expect_complete(judgement);
}

TEST(Arm, ThatCannotGiveTheTravelLeavesTheSwingUnknown) {
  SmallProject project = fairlead_and_horn(40);
  set_tension(project, 100);
  set_travel(project, 0, 11);
  const auto unknown = not_passed(project.judged_by("chafe"));
  EXPECT_EQ(sole(unknown).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(sole(unknown).message,
                       "how far the line can move is not known: the arm at horn cannot move the "
                       "cable through its travel: it gives 5.31 in toward horn, asked 11.0 in"))
      << sole(unknown).message;
  EXPECT_TRUE(
      contains(turn_of(project).message, "horn is taken as fixed: its arm cannot give the travel"))
      << turn_of(project).message;
  Solid box;
  box.name = "box";
  box.shape = Box{{79.99, -1, 6}, {80, 1, 8.7}};
  project.project.structure.solids.push_back(box);
  // Half way it hangs by half of the fairlead's play and the sag of 0.0024167 lb/in at 100 lbf, and
  // swings by nothing.
  const double hangs = 1.0 / 32 / 2 + 0.0024167 * 40 * 40 / (8 * 100);
  EXPECT_NEAR(*sole(project.judged_by("clearance")).value, 10 - 8.7 - 0.0695 - hangs, 0.0002);
}

}  // namespace
}  // namespace linewright
