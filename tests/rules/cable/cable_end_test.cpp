// Where a cable meets a horn or pedal. Wrap left on a sector: MIL-F-18372 para 3.1.1.17.12; no
// critical bend at terminals: above 3.1.1.17.8; turnbuckles on parts that turn: 14 CFR 23.689(e)
// [all verified].

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

constexpr double degree = std::numbers::pi / 180;

std::vector<Judgement> ends(const SmallProject& project) {
  return project.judged_by("cable-end");
}

/// The pedal's sector of 3 in; `forward` goes toward the pedal, `aft` takes cable off it.
SmallProject on_sector(std::optional<double> wrap_deg) {
  SmallProject project = cable_project();
  project.project.nodes.front().sector = Sector{3, wrap_deg};
  set_travel(project, 5, 2);
  return project;
}

void set_joint(SmallProject& project, std::optional<EndJoint> joint) {
  CableEnd end;
  end.joint = joint;
  the_route(project).ends.from = end;
}

/// The pedal turns about an axis that leans by `lean_deg` toward the cable.
SmallProject on_arm(double lean_deg, std::optional<EndJoint> joint) {
  SmallProject project = cable_project({held({50, 0, 10}, HoldKind::fairlead)});
  const Vec3 axis{std::sin(lean_deg * degree), std::cos(lean_deg * degree), 0};
  project.project.nodes.front().arm = Arm{{0, 0, 5}, axis};
  set_joint(project, joint);
  return project;
}

TEST(CableEnd, KeepsTheWrapLessTheTravelThatUnwindsIt) {
  const Judgement few = sole(ends(on_sector(40)));
  EXPECT_EQ(few.verdict, Verdict::fail);
  EXPECT_NEAR(*few.value, 40 - 2.0 / 3 / degree, 1e-9);
  EXPECT_EQ(few.limit, 10);
  EXPECT_EQ(few.unit, Unit::degree);
  EXPECT_EQ(few.with, "pedal");
  EXPECT_EQ(few.message, "2.00 in of travel leave 1.8 deg of cable on the sector of pedal");
  EXPECT_EQ(few.mend, "hold the cable 9.0 deg farther round the sector, or use a larger one");
  EXPECT_EQ(sole(ends(on_sector(50))).verdict, Verdict::pass);
}

TEST(CableEnd, OfACableThatMovesIsNotOnWhatStructureHolds) {
  SmallProject project = cable_project();
  project.project.nodes.back().kind = NodeKind::bulkhead;
  EXPECT_TRUE(ends(project).empty()) << "its travel is not stated";
  set_travel(project, 2, 0);
  const Judgement judgement = sole(ends(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message,
            "the cable is stated to move, and its end at horn is held by structure: it cannot go "
            "there");
  EXPECT_EQ(judgement.with, "horn");
  expect_complete(judgement);
  set_travel(project, 0, 0);
  EXPECT_TRUE(ends(project).empty());
  // A spring on a hook gives, and the builder says where it is held.
  set_travel(project, 2, 0);
  project.project.nodes.back().kind = NodeKind::end;
  project.project.nodes.back().fixed = true;
  EXPECT_TRUE(ends(project).empty());
  // Springs at both ends, and nothing that moves it.
  project.project.nodes.front().kind = NodeKind::end;
  project.project.nodes.front().fixed = true;
  EXPECT_EQ(ends(project).size(), 2u);
  // What else is held is no spring, whatever the builder says of it.
  for (const NodeKind kind : {NodeKind::bulkhead, NodeKind::valve, NodeKind::tee, NodeKind::cap}) {
    SmallProject held = cable_project();
    set_travel(held, 2, 0);
    held.project.nodes.back().kind = kind;
    held.project.nodes.back().fixed = true;
    EXPECT_EQ(sole(ends(held)).verdict, Verdict::fail);
  }
}

TEST(CableEnd, OnASectorOfUnstatedWrapOrTravelIsUnknown) {
  EXPECT_EQ(sole(ends(on_sector(std::nullopt))).verdict, Verdict::unknown);
  SmallProject still = on_sector(90);
  the_route(still).travel.reset();
  const Judgement unknown = sole(ends(still));
  EXPECT_EQ(unknown.verdict, Verdict::unknown);
  EXPECT_EQ(unknown.mend, "state the route's travel");
}

TEST(CableEnd, TheOtherEndIsUnwoundByTheOtherTravel) {
  SmallProject project = cable_project();
  project.project.nodes.back().sector = Sector{3, 106};
  set_travel(project, 5, 2);
  EXPECT_NEAR(*sole(ends(project)).value, 106 - 5.0 / 3 / degree, 1e-9);
}

TEST(CableEnd, OnAPinIsBentByWhatItLeavesThePinsPlaneBy) {
  const Judgement bent = sole(ends(on_arm(7, EndJoint::pin)));
  EXPECT_EQ(bent.verdict, Verdict::warn);
  EXPECT_NEAR(*bent.value, 7, 1e-9);
  EXPECT_EQ(bent.message, "the cable leaves the plane in which its end turns at pedal by 7.0 deg");
  EXPECT_EQ(sole(ends(on_arm(2, EndJoint::pin))).verdict, Verdict::pass);
  EXPECT_EQ(sole(ends(on_arm(7, EndJoint::ball))).verdict, Verdict::pass);
}

TEST(CableEnd, OfUnstatedJointIsUnknownWhereAPinWouldBendIt) {
  EXPECT_EQ(sole(ends(on_arm(7, std::nullopt))).verdict, Verdict::unknown);
  EXPECT_EQ(sole(ends(on_arm(2, std::nullopt))).verdict, Verdict::pass);
}

// An arm of 5 in moves its cable 2 in by turning some 24 deg.
TEST(CableEnd, FixedToItsArmIsBentAsTheArmTurns) {
  SmallProject fixed = on_arm(0, EndJoint::fixed);
  EXPECT_EQ(sole(ends(fixed)).verdict, Verdict::pass);
  set_travel(fixed, 2, 2);
  const Judgement bent = sole(ends(fixed));
  EXPECT_EQ(bent.verdict, Verdict::warn);
  EXPECT_NEAR(*bent.value, std::asin(2.0 / 5) / degree, 1.5);  // the cable turns a little, too
  SmallProject pinned = on_arm(0, EndJoint::pin);
  set_travel(pinned, 2, 2);
  EXPECT_EQ(sole(ends(pinned)).verdict, Verdict::pass);
}

TEST(CableEnd, ATurnbuckleOnAPartThatTurnsIsOnAJoint) {
  const auto with_joint = [](std::optional<EndJoint> joint, double at_in) {
    SmallProject project = cable_project();
    set_travel(project, 2, 2);
    set_joint(project, joint);
    Attachment turnbuckle;
    turnbuckle.kind = "turnbuckle";
    turnbuckle.at_in = at_in;
    turnbuckle.length_in = 4.5;
    turnbuckle.diameter_in = 0.44;
    the_route(project).attached.push_back(turnbuckle);
    return ends(project);
  };
  const Judgement binds = sole(with_joint(EndJoint::fixed, 2.5));
  EXPECT_EQ(binds.verdict, Verdict::fail);
  EXPECT_EQ(binds.message, "the turnbuckle at pedal, which turns, is fixed to it, and binds");
  EXPECT_EQ(sole(with_joint(EndJoint::pin, 2.5)).verdict, Verdict::pass);
  EXPECT_EQ(sole(with_joint(std::nullopt, 2.5)).verdict, Verdict::unknown);
  EXPECT_TRUE(with_joint(std::nullopt, 50).empty());
  // One that begins within an inch takes hold of the pedal [common practice, no source].
  EXPECT_EQ(with_joint(std::nullopt, 3.24).size(), 1u);
  EXPECT_TRUE(with_joint(std::nullopt, 3.26).empty());
}

TEST(CableEnd, AHornWithNeitherArmNorSectorIsNotJudged) {
  EXPECT_TRUE(ends(cable_project()).empty());
}

}  // namespace
}  // namespace linewright
