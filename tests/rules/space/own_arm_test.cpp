// A cable's own arm is passed over near its end; every other moving part counts for every line.

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/cable_project.hpp"

namespace linewright {
namespace {

Mover bell(const std::vector<Vec3>& points, Vec3 pivot = {100, 0, 6}, Vec3 axis = {0, 1, 0}) {
  Mover mover;
  mover.name = "bell";
  mover.pivot = pivot;
  mover.axis = axis;
  mover.points = points;
  mover.radius_in = 0.2;
  mover.sweep_from_deg = -18;
  mover.sweep_to_deg = 18;
  mover.where = {"structure.yaml", 7, 5};
  return mover;
}

/// The run past a fairlead at FS 60 to a horn on an arm of 4 in below it, and a moving part.
SmallProject with_arm(const Mover& mover) {
  SmallProject project = cable_project({held({60, 0, 10}, HoldKind::fairlead)});
  project.project.nodes.back().arm = Arm{{100, 0, 6}, {0, 1, 0}};
  set_travel(project, 1, 1);
  set_tension(project, 40, 150);
  project.project.structure.movers.push_back(mover);
  return project;
}

std::vector<Judgement> broken(const SmallProject& project) {
  std::vector<Judgement> all = not_passed(project.judged_by("clearance"));
  std::erase_if(all, [](const Judgement& each) {
    return each.with != "bell" || each.verdict == Verdict::unknown;
  });
  return all;
}

const std::vector<Vec3> the_arm{{100, 0, 6}, {100, 0, 10}};

TEST(OwnArm, IsPassedOverNearItsEnd) {
  EXPECT_TRUE(broken(with_arm(bell(the_arm))).empty());
  EXPECT_TRUE(broken(reversed(with_arm(bell(the_arm)))).empty());
}

TEST(OwnArm, MayBeDescribedWithItsAxisTheOtherWayAndItsPivotAnywhereAlongIt) {
  EXPECT_TRUE(broken(with_arm(bell(the_arm, {100, 3, 6}, {0, -2, 0}))).empty());
}

TEST(OwnArm, IsNoneOnAnotherAxis) {
  // 0.3 in off; and leaning by 5.7 degrees.
  for (const Mover& mover :
       {bell(the_arm, {100, 0, 5.7}), bell(the_arm, {100, 0, 6}, {0.1, 1, 0})}) {
    EXPECT_EQ(sole(broken(with_arm(mover))).verdict, Verdict::fail);
    EXPECT_EQ(sole(broken(reversed(with_arm(mover)))).verdict, Verdict::fail);
  }
}

TEST(OwnArm, IsNoneWhereTheNodeStatesNoArmAndTheMendSaysSo) {
  SmallProject project = with_arm(bell(the_arm));
  project.project.nodes.back().arm.reset();
  const Judgement judgement = sole(broken(project));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.mend, "state the `arm` of horn, if it turns with bell"))
      << judgement.mend;
}

TEST(OwnArm, CountsByItsOtherPieces) {
  // The second arm of the bellcrank comes up through the cable at FS 92.
  const Mover crank = bell({{100, 0, 10}, {100, 0, 6}, {92, 0, 10.5}});
  EXPECT_EQ(sole(broken(with_arm(crank))).verdict, Verdict::fail);
  EXPECT_EQ(sole(broken(reversed(with_arm(crank)))).verdict, Verdict::fail);
}

// Of two on one shaft the horn is the one that the pin is on; the other sweeps through the cable.
TEST(OwnArm, IsTheNearestToTheEndOfThoseOnItsShaft) {
  for (const double side : {1.0, -1.0}) {
    SmallProject project = with_arm(bell(the_arm));
    Mover other = bell({{100, 0, 10.35}, {100, side * 3, 6}});
    other.name = "other";
    other.radius_in = 0.3;
    other.sweep_from_deg = -40;
    other.sweep_to_deg = 40;
    project.project.structure.movers.push_back(other);
    EXPECT_TRUE(broken(project).empty());
    std::vector<Judgement> all = not_passed(project.judged_by("clearance"));
    std::erase_if(all, [](const Judgement& each) { return each.with != "other"; });
    EXPECT_EQ(sole(all).verdict, Verdict::fail);
  }
}

// A horn of two plates, the cable's fork between them.
TEST(OwnArm, MayBeTwoPlatesBesideItsEnd) {
  SmallProject project = with_arm(bell({{100, 0.15, 6}, {100, 0.15, 10}}));
  project.project.structure.movers.push_back(bell({{100, -0.15, 6}, {100, -0.15, 10}}));
  project.project.structure.movers.back().name = "second";
  std::vector<Judgement> all = not_passed(project.judged_by("clearance"));
  std::erase_if(all, [](const Judgement& each) { return each.verdict == Verdict::unknown; });
  EXPECT_TRUE(all.empty());
}

TEST(OwnArm, CountsFartherOffThanItsSweepTakesIt) {
  // It lies along the cable for 20 in.
  const Mover rod = bell({{100, 0, 10}, {80, 0, 9.9}});
  EXPECT_EQ(sole(broken(with_arm(rod))).verdict, Verdict::fail);
}

TEST(ForeignMover, FailsInACableBesideItsHorn) {
  const Mover flap = bell({{94, 0, 9.5}, {100, 0.6, 10.2}}, {98, 0, 20});
  EXPECT_EQ(sole(broken(with_arm(flap))).verdict, Verdict::fail);
  EXPECT_EQ(sole(broken(reversed(with_arm(flap)))).verdict, Verdict::fail);
}

TEST(ForeignMover, FailsAtTheFittingsOfEveryOtherKindOfLine) {
  for (const std::string line :
       {"tube-nylon-1/4", "tube-aluminium-1/4", "wire-1/4", "hose-rubber-1/4"}) {
    SCOPED_TRACE(line);
    SmallProject project;
    if (!project.project.catalogue.find_line(line)) continue;
    project.node("a", NodeKind::bulkhead, {100, 0.1, 9.9})
        .node("b", NodeKind::bulkhead, {100, 9, 9.9});
    project.route("run", line, "a", "b");
    project.project.structure.movers.push_back(bell(the_arm));
    EXPECT_EQ(sole(broken(project)).verdict, Verdict::fail);
  }
}

TEST(HornsEnd, StandsOnNothingButItsArm) {
  // A bracket 0.1 in behind the pin is no mounting of what moves.
  SmallProject project = with_arm(bell({{100, 0, 6}, {100, 0, 10}}));
  Solid bracket;
  bracket.name = "bell";
  bracket.shape = Box{{100.3, -1, 9}, {101, 1, 11}};
  project.project.structure.movers.clear();
  project.project.structure.solids.push_back(bracket);
  EXPECT_EQ(sole(broken(project)).verdict, Verdict::fail);
}

}  // namespace
}  // namespace linewright
