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
    const PilotForce* found = pilot_forces_on(row.control);
    ASSERT_NE(found, nullptr) << row.control;
    EXPECT_EQ(found->most_lbf, row.most_lbf) << row.control;
    EXPECT_EQ(found->least_lbf, row.least_lbf) << row.control;
  }
  EXPECT_EQ(pilot_forces_on("trim"), nullptr);
  EXPECT_EQ(pilot_forces_on(""), nullptr);
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
