// What stretch leaves of a control's travel, and what friction asks of its pilot.

#include <cmath>

#include "lines/cable_friction.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// 100 in of 1000 lbf/in, rigged to 40 lbf, pulled by 200: 0.16 in of stretch beside a slack cable.
SmallProject pulled(double travel_in) {
  SmallProject project = cable_project();
  the_line(project).axial_stiffness_lbf->value = 1e5;
  set_tension(project, 40, 200);
  set_travel(project, travel_in, 2 * travel_in);
  return project;
}

std::vector<Judgement> judged(const SmallProject& project) {
  return project.judged_by("control-feel");
}

TEST(ControlFeel, StretchMustLeaveHalfOfTheSmallerTravel) {
  EXPECT_EQ(sole(judged(pulled(0.3200001))).verdict, Verdict::pass);
  EXPECT_EQ(sole(judged(pulled(0.32))).verdict, Verdict::pass);
  const Judgement finding = sole(judged(pulled(0.3199)));
  EXPECT_EQ(finding.verdict, Verdict::warn);
  EXPECT_NEAR(*finding.value, 0.16, 1e-9);
  EXPECT_NEAR(*finding.limit, 0.15995, 1e-9);
  expect_complete(finding);
}

// A cable that goes one way from neutral has that travel alone.
TEST(ControlFeel, StretchIsHeldAgainstTheOneWayThatItGoes) {
  for (const double forward_in : {0.3199, 0.0}) {
    SmallProject project = pulled(1);
    set_travel(project, forward_in, 0.3199 - forward_in);
    EXPECT_EQ(sole(judged(project)).verdict, Verdict::warn);
    EXPECT_NEAR(*sole(judged(project)).limit, 0.15995, 1e-9);
  }
}

TEST(ControlFeel, StretchIsNotJudgedWithoutTravel) {
  SmallProject still = pulled(0.2);
  set_travel(still, 0, 0);
  EXPECT_FALSE(contains(sole(judged(still)).message, "stretch"));
  the_route(still).travel.reset();
  EXPECT_TRUE(judged(still).empty());
}

void expect_unknown(const SmallProject& project, const std::string& missing,
                    const std::string& mend) {
  const Judgement finding = sole(judged(project));
  EXPECT_EQ(finding.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(finding.message, missing)) << finding.message;
  EXPECT_TRUE(contains(finding.mend, mend)) << finding.mend;
  expect_complete(finding);
}

TEST(ControlFeel, StretchIsUnknownWithoutTensionPullOrStiffness) {
  SmallProject slack = pulled(0.2);
  the_route(slack).tension.reset();
  expect_unknown(slack, "the rigged tension of ", "tension.rigged");
  SmallProject free = pulled(0.2);
  set_tension(free, 40);
  expect_unknown(free, "the limit load of ", "limit_load");
  SmallProject unknown = pulled(0.2);
  the_line(unknown).axial_stiffness_lbf.reset();
  expect_unknown(unknown, "the stretch of ", "axial_stiffness");
}

TEST(ControlFeel, AskedForAloneSaysEachLackOnce) {
  SmallProject slack = pulled(0.2);
  the_route(slack).tension.reset();
  expect_unknown(slack, "the rigged tension of ", "tension.rigged");
  const Judgement more = sole(slack.lacking_for("control-feel"));
  EXPECT_TRUE(contains(more.message, "for want of its limit load, its lever ratio"))
      << more.message;
  the_route(slack).travel.reset();
  const Judgement all = sole(slack.lacking_for("control-feel"));
  EXPECT_TRUE(contains(all.message, "for want of its rigged tension, its limit load, its travel"))
      << all.message << ": nothing else says so, for without travel the rule is silent";
}

/// A quarter turn in a fairlead.
SmallProject rubbing(const std::string& control, double rigged_lbf) {
  SmallProject project = cable_project({held({50, 0, 10}, HoldKind::fairlead)}, {50, 40, 10});
  the_route(project).control = control;
  set_tension(project, rigged_lbf, 200);
  the_route(project).lever = ControlLever{2, 150.0, {"routes.yaml", 107, 18}};
  return project;
}

TEST(ControlFeel, FrictionAtTheGripIsHeldAgainstWhatTheControlStands) {
  const double per_pound = (std::exp(fairlead_friction * std::acos(-1.0) / 2) - 1) / 2;
  for (const auto& [control, most] :
       {std::pair{"rudder", 7.0}, std::pair{"Elevator", 3.0}, std::pair{"aileron", 2.0}}) {
    EXPECT_EQ(sole(judged(rubbing(control, most / per_pound))).verdict, Verdict::pass) << control;
    const Judgement finding = sole(judged(rubbing(control, 1.001 * most / per_pound)));
    EXPECT_EQ(finding.verdict, Verdict::warn) << control;
    EXPECT_NEAR(*finding.value, 1.001 * most, 1e-6);
    expect_complete(finding);
  }
  EXPECT_TRUE(judged(rubbing("flap", 1000)).empty());
}

TEST(ControlFeel, FrictionIsThatOfAllCablesOfTheControlAndSaidOnce) {
  SmallProject project = rubbing("rudder", 40);
  const double alone = *sole(judged(project)).value;
  Route second = the_route(project);
  second.name = "rudder-right";
  second.control = "Rudder";
  second.lever->ratio = 1;
  project.project.routes.push_back(second);
  EXPECT_NEAR(*sole(judged(project)).value, 3 * alone, 1e-9);
}

TEST(ControlFeel, FrictionIsUnknownWhereThatOfOneCableIs) {
  SmallProject project = rubbing("rudder", 40);
  Route second = the_route(project);
  second.name = "rudder-right";
  project.project.routes.push_back(second);
  project.project.routes[1].lever.reset();
  expect_unknown(project, "the lever ratio of rudder-right", "lever_ratio");
  // Whichever of them is the first.
  std::swap(project.project.routes[0].lever, project.project.routes[1].lever);
  expect_unknown(project, "the lever ratio of ", "lever_ratio");
  project.project.routes[0].lever = project.project.routes[1].lever;
  project.project.routes[1].tension.reset();
  expect_unknown(project, "the rigged tension of rudder-right", "tension.rigged");
  for (Route& route : project.project.routes) route.lever.reset();
  EXPECT_TRUE(judged(project).empty());
}

}  // namespace
}  // namespace linewright
