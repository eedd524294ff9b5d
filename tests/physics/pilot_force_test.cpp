// What the pilot can pull: limit forces by 14 CFR 23.397(b) [verified].

#include "physics/pilot_force.hpp"

#include <gtest/gtest.h>

namespace linewright {
namespace {

Route levered(const std::string& control, double ratio, std::optional<double> force_lbf = {}) {
  Route route;
  route.control = control;
  route.lever = ControlLever{ratio, force_lbf, {}};
  return route;
}

TEST(PilotForce, IsThatOfTheRegulation) {
  struct Row {
    const char* control;
    double most_lbf;
    double least_lbf;
  };
  for (const Row& row :
       {Row{"rudder", 200, 150}, Row{"elevator", 167, 100}, Row{"aileron", 67, 40}}) {
    const PilotForce* found = pilot_forces_on(levered(row.control, 1));
    ASSERT_NE(found, nullptr) << row.control;
    EXPECT_EQ(found->most_lbf, row.most_lbf) << row.control;
    EXPECT_EQ(found->least_lbf, row.least_lbf) << row.control;
  }
  EXPECT_EQ(pilot_forces_on(levered("trim", 1)), nullptr);
  EXPECT_EQ(pilot_forces_on(levered("", 1)), nullptr);
}

// An aileron wheel of D has a couple of 50 D, or 40 D, inch-pounds. At its rim, D / 2 from the
// middle, that is 100, or 80, lbf.
TEST(PilotForce, OfAWheelIsLargerThanOfAStick) {
  Route route = levered("elevator", 1.5);
  route.worked_by = ControlGrip::wheel;
  EXPECT_EQ(pilot_force_lbf(route), 200);
  EXPECT_EQ(pilot_forces_on(route)->least_lbf, 100);
  route.control = "aileron";
  EXPECT_EQ(pilot_force_lbf(route), 100);
  EXPECT_EQ(pilot_forces_on(route)->least_lbf, 80);
  route.control = "rudder";
  EXPECT_EQ(pilot_force_lbf(route), 200);
  route.worked_by = ControlGrip::stick;
  route.control = "aileron";
  EXPECT_EQ(pilot_force_lbf(route), 67);
}

// Note 1 of 14 CFR 23.397(b) [verified]: in a straight line from 5,000 lb to 1.18 times at 12,500.
TEST(PilotForce, RisesWithTheWeightAboveFiveThousand) {
  Route route = levered("rudder", 1);
  const auto force = [&](double weight_lbf) {
    route.lever->weight_lbf = weight_lbf;
    return *pilot_force_lbf(route);
  };
  EXPECT_DOUBLE_EQ(force(1'000), 200);
  EXPECT_DOUBLE_EQ(force(5'000), 200);
  EXPECT_DOUBLE_EQ(force(8'750), 218);
  EXPECT_DOUBLE_EQ(force(12'500), 236);
  route.lever->pilot_force_lbf = 150;  // the builder's own stays
  EXPECT_DOUBLE_EQ(force(12'500), 150);
}

// 0.75 times the force of one from each of two pilots: 14 CFR 23.399(b) [from memory; 25.399(b) and
// 27.399(b) say the same, verified].
TEST(PilotForce, OfTwoPilotsIsOneAndAHalfTimesThatOfOne) {
  Route route = levered("rudder", 2);
  EXPECT_DOUBLE_EQ(pilot_pull_lbf(route).value(), 400);
  route.lever->two_pilots = true;
  EXPECT_DOUBLE_EQ(pilot_pull_lbf(route).value(), 600);
}

TEST(PilotForce, IsTheBuildersWhereStated) {
  EXPECT_EQ(pilot_force_lbf(levered("elevator", 1.5, 100)), 100);
  EXPECT_EQ(pilot_force_lbf(levered("elevator", 1.5)), 167);
  EXPECT_FALSE(pilot_force_lbf(levered("flap", 1.5)).has_value());
  EXPECT_FALSE(pilot_force_lbf(Route{}).has_value());
}

TEST(PilotPull, IsTheForceTimesTheLeverRatio) {
  EXPECT_DOUBLE_EQ(*pilot_pull_lbf(levered("rudder", 1.4)), 280);
  EXPECT_DOUBLE_EQ(*pilot_pull_lbf(levered("flap", 3, 50)), 150);
}

TEST(LimitLoad, IsTheStatedOneElseThePilotsPull) {
  Route route = levered("rudder", 1.4);
  EXPECT_DOUBLE_EQ(*limit_load_lbf(route), 280);
  route.tension = Tension{40, std::nullopt, {}};
  EXPECT_DOUBLE_EQ(*limit_load_lbf(route), 280);
  route.tension->limit_load_lbf = 150;
  EXPECT_EQ(limit_load_lbf(route), 150);
  route.lever.reset();
  EXPECT_EQ(limit_load_lbf(route), 150);
  route.tension->limit_load_lbf.reset();
  EXPECT_FALSE(limit_load_lbf(route).has_value());
}

TEST(PilotForce, IsTakenWhereOnlyTheLeverIsStated) {
  EXPECT_TRUE(takes_pilot_force(levered("aileron", 1)));
  EXPECT_FALSE(takes_pilot_force(levered("aileron", 1, 50)));
  EXPECT_FALSE(takes_pilot_force(levered("flap", 1)));
  EXPECT_FALSE(takes_pilot_force(Route{}));
}

// Statics of two alike springs in a rigid loop [calculated].
TEST(PulledTension, IsHalfThePullAboveTheRiggedOneUntilTheOtherCableIsSlack) {
  EXPECT_EQ(pulled_alone_lbf(40, 0), 40);
  EXPECT_EQ(pulled_alone_lbf(40, 60), 70);
  EXPECT_EQ(pulled_alone_lbf(40, 80), 80);
  EXPECT_EQ(pulled_alone_lbf(40, 200), 200);
}

}  // namespace
}  // namespace linewright
