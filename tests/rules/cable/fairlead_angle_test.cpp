// Turns in fairleads against the 3 degrees of 14 CFR 23.689(c) [verified]. Worked angles are
// [calculated].

#include <cmath>
#include <numbers>
#include <random>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

SmallProject turning(Vec3 from, Vec3 at, Vec3 to, HoldKind hold = HoldKind::fairlead) {
  SmallProject project = cable_project({held(at, hold)}, to);
  project.project.nodes.front().at = from;
  return project;
}

Judgement judged(const SmallProject& project) {
  return sole(project.judged_by("fairlead-angle"));
}

TEST(FairleadAngle, WorkedAnglesUnderTheLimitPass) {
  const Judgement first = judged(turning({0, 0, 0}, {30, 0, 0}, {60, 1.5, 0}));
  EXPECT_EQ(first.verdict, Verdict::pass);
  EXPECT_NEAR(*first.value, 2.86241, 0.5e-5);
  const Judgement second = judged(turning({60, 10, 20}, {90, 10, 20.5}, {120, 10.8, 21}));
  EXPECT_EQ(second.verdict, Verdict::pass);
  EXPECT_NEAR(*second.value, 1.52731, 0.5e-5);
}

TEST(FairleadAngle, JustOverThreeDegreesFails) {
  const Judgement judgement = judged(turning({0, 0, 0}, {10, 0, 0}, {20, 0.5241, 0}));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 3.00013, 0.5e-5);
  EXPECT_DOUBLE_EQ(*judgement.limit, 3);
  EXPECT_EQ(judgement.sense, LimitSense::at_most);
  EXPECT_EQ(judgement.unit, Unit::degree);
  EXPECT_TRUE(contains(judgement.source, "23.689(c)"));
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_point(0, 0));
  expect_complete(judgement);
}

TEST(FairleadAngle, ThreeDegreesExactlyPass) {
  const double rise = 10 * std::tan(3 * std::numbers::pi / 180);
  EXPECT_EQ(judged(turning({0, 0, 0}, {10, 0, 0}, {20, rise, 0})).verdict, Verdict::pass);
}

TEST(FairleadAngle, GrommetsAndBushingsThatLeadACableCountAsFairleads) {
  for (const HoldKind hold : {HoldKind::grommet, HoldKind::bushing})
    EXPECT_EQ(judged(turning({0, 0, 0}, {10, 0, 0}, {20, 1, 0}, hold)).verdict, Verdict::fail);
}

TEST(FairleadAngle, PulleysAndClampsAreNotFairleads) {
  for (const HoldKind hold : {HoldKind::pulley, HoldKind::clamp})
    EXPECT_TRUE(
        turning({0, 0, 0}, {10, 0, 0}, {20, 5, 0}, hold).judged_by("fairlead-angle").empty());
}

TEST(FairleadAngle, TubesInGrommetsAreNotJudged) {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {20, 5, 0});
  project.route("tube", "tube-nylon-1/4", "a", "b", {held({10, 0, 0}, HoldKind::grommet)});
  EXPECT_TRUE(project.judged_by("fairlead-angle").empty());
}

// What the mend says is enough: moved so far toward the line between its neighbours, it passes.
TEST(FairleadAngle, MovingTheFairleadAsTheMendSaysIsEnough) {
  std::mt19937 random(17);
  std::uniform_real_distribution<double> leg(5, 60);
  std::uniform_real_distribution<double> height(0.5, 5);
  int failed = 0;
  for (int trial = 0; trial < 200; ++trial) {
    const double p = leg(random);
    const double q = leg(random);
    const double h = height(random);
    const Judgement judgement = judged(turning({0, 0, 0}, {p, h, 0}, {p + q, 0, 0}));
    if (judgement.verdict == Verdict::pass) continue;
    ++failed;
    ASSERT_TRUE(judgement.mend.starts_with("move the fairlead ")) << judgement.mend;
    const double move = std::stod(judgement.mend.substr(18));
    EXPECT_EQ(judged(turning({0, 0, 0}, {p, h - move, 0}, {p + q, 0, 0})).verdict, Verdict::pass)
        << judgement.mend;
    // And no more than is needed: short of it by twice the printed step, it still fails.
    EXPECT_EQ(judged(turning({0, 0, 0}, {p, h - move + 0.02, 0}, {p + q, 0, 0})).verdict,
              Verdict::fail);
  }
  EXPECT_GT(failed, 50);
}

// Where an end swings, too, what the drawing says of the turn does not tell how far is enough.
TEST(FairleadAngle, NamesNoDistanceWhereAnEndSwings) {
  SmallProject project = cable_project({held({90, 0.8, 10}, HoldKind::fairlead)});
  project.project.nodes.back().arm = Arm{{100, 0, 6}, {0, 1, 0}};
  set_travel(project, 2, 2);
  set_tension(project, 40, 150);
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.message, "at full travel, as horn swings")) << judgement.message;
  EXPECT_EQ(judgement.mend,
            "move the fairlead to the straight line between its neighbours, and farther from horn "
            "if that is not enough, or put a pulley there");
}

TEST(FairleadAngle, CableThatDoublesBackIsToldToUseAPulley) {
  const Judgement judgement = judged(turning({0, 0, 0}, {20, 0, 0}, {5, 5, 0}));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.mend, "put a pulley there");
}

TEST(FairleadAngle, SaysTheSameOfAReversedRun) {
  expect_same_reversed(
      cable_project({held({20, 0, 10}, HoldKind::fairlead), held({50, 2, 10}, HoldKind::bushing),
                     held({70, 3, 11}, HoldKind::fairlead)}),
      "fairlead-angle");
}

// A clamp 20 in from the horn holds a sleeve. The horn's arm of 5 in, square to the cable, turns
// until its end is 21 in from the clamp for 1 in of travel: 0.99977 in aft and 0.10097 in down.
// That is 0.2755 degrees at the clamp, and atan(20 x 0.10097 / 20.99977), 5.49 degrees, in a mouth
// an inch from the horn [calculated].
TEST(FairleadAngle, TheMouthOfAHeldSleeveTurnsACableAsItsEndSwings) {
  const auto with_mouth = [](double from_horn_in, double travel_in) {
    SmallProject project = cable_project({clamped({80, 0, 10})});
    the_route(project).sleeves.push_back({70, 100 - from_horn_in, 0.17, 0.25, {}});
    project.project.nodes[1].arm = Arm{{100, 0, 5}, {0, 1, 0}};
    set_travel(project, 0, travel_in);
    return project.judged_by("fairlead-angle");
  };
  const Judgement judgement = sole(with_mouth(1, 1));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 5.493, 0.002);
  EXPECT_TRUE(contains(judgement.message, "the mouth of the sleeve that the clamp holds"))
      << judgement.message;
  expect_complete(judgement);
  EXPECT_TRUE(with_mouth(10, 1).empty()) << "a tenth of that";
  EXPECT_TRUE(with_mouth(1, 0).empty()) << "a cable that stays";
}

}  // namespace
}  // namespace linewright
