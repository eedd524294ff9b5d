// Fairleads that a cable is to pass free. A 1/8 in cable may be 0.139 in across (AC 43.13-1B Table
// 7-3 [verified]): 0.0695 in to each side. Offsets and sags are [calculated].

#include "rules/cable/free_fairlead.hpp"

#include "lines/prepare.hpp"
#include "rules/cable_project.hpp"

namespace linewright {
namespace {

/// A ring half way along the run, off its middle by `offset_in`.
SmallProject with_ring(double offset_in, double bore_in, double tension_lbf = 100) {
  SmallProject project = cable_project();
  FreeFairlead free;
  free.fairlead = held({50, offset_in, 10}, HoldKind::fairlead);
  free.fairlead.bore_in = bore_in;
  free.fairlead.where = {"routes.yaml", 130, 9};
  the_route(project).free_fairleads.push_back(free);
  set_tension(project, tension_lbf);
  return project;
}

Judgement judged(const SmallProject& project) {
  return sole(project.judged_by("fairlead-angle"));
}

// w L² / (8 T) with 0.0024167 lb/in [from memory] over 100 in.
double sag_in(double tension_lbf) {
  return 0.0024167 * 100 * 100 / (8 * tension_lbf);
}

TEST(FreeFairlead, PassesWhileTheCableHangsWithinItsRoom) {
  const Judgement judgement = judged(with_ring(0.1, 0.5));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_NEAR(*judgement.value, 0.25 - 0.1 - 0.0695, 1e-9);
  EXPECT_NEAR(*judgement.limit, sag_in(100), 1e-5);
  EXPECT_EQ(judgement.location.line, 130);
}

TEST(FreeFairlead, IsTouchedWhereTheCableHangsFartherThanItHasRoom) {
  const Judgement judgement = judged(with_ring(0.1, 0.5, 20));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.limit, sag_in(20), 1e-4);
  EXPECT_TRUE(contains(judgement.message, "can touch the fairlead")) << judgement.message;
  expect_complete(judgement);
}

TEST(FreeFairlead, CountsTheBuildTolerance) {
  SmallProject project = with_ring(0.1, 0.5);
  project.project.build_tolerance_in = 0.06;
  EXPECT_EQ(judged(project).verdict, Verdict::warn);
  EXPECT_NEAR(*judged(project).value, 0.25 - 0.1 - 0.0695 - 0.06, 1e-9);
}

TEST(FreeFairlead, DrawnIntoTheCableFails) {
  const Judgement judgement = judged(with_ring(0.2, 0.5));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 0.25 - 0.2 - 0.0695, 1e-9);
  expect_complete(judgement);
}

TEST(FreeFairlead, WithTheBoreOfTheMendIsPassedFree) {
  for (const double drawn_bore_in : {0.4, 0.3}) {
    const Judgement judgement = judged(with_ring(0.1, drawn_bore_in, 20));
    EXPECT_EQ(judgement.verdict, drawn_bore_in < 0.339 ? Verdict::fail : Verdict::warn);
    const std::string& mend = judgement.mend;
    ASSERT_TRUE(mend.starts_with("use a bore of ")) << mend;
    EXPECT_EQ(judged(with_ring(0.1, std::stod(mend.substr(14)), 20)).verdict, Verdict::pass)
        << mend;
  }
}

/// A ring in the 0.5 in hole of frame F1 at FS 50, the ring's point at `at`.
SmallProject in_hole(Vec3 at, double bore_in, double tension_lbf = 20) {
  SmallProject project = cable_project();
  add_frame(project, "F1", 50, 0.5);
  FreeFairlead free;
  free.fairlead = through(held(at, HoldKind::fairlead), "F1-a");
  free.fairlead.bore_in = bore_in;
  free.fairlead.where = {"routes.yaml", 130, 9};
  the_route(project).free_fairleads.push_back(free);
  set_tension(project, tension_lbf);
  return project;
}

TEST(FreeFairlead, IsNeverToHaveABoreLargerThanItsHole) {
  const Judgement small = judged(in_hole({50, 0, 10}, 0.2, 40));
  EXPECT_TRUE(contains(small.mend, "use a bore of 0.2")) << small.mend;
  const Judgement large = judged(in_hole({50, 0.1, 10}, 0.4, 15));
  EXPECT_EQ(large.verdict, Verdict::warn);
  EXPECT_FALSE(contains(large.mend, "use a bore")) << large.mend;
  EXPECT_TRUE(contains(large.mend, "let it guide the cable")) << large.mend;
  expect_complete(large);
}

TEST(FreeFairlead, FarFromItsFrameSaysHowFar) {
  const Judgement judgement = judged(in_hole({-48, 0, 10}, 0.4));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(
      contains(judgement.message, "its point is 98.0 in from where the cable passes frame F1"))
      << judgement.message;
  EXPECT_FALSE(contains(judgement.mend, "bore of")) << judgement.mend;
  expect_complete(judgement);
  EXPECT_TRUE(contains(judged(in_hole({52, 0, 10}, 0.4)).message, "2.00 in from where"));
}

TEST(FreeFairlead, OfAFrameThatTheCableDoesNotPassSaysSo) {
  SmallProject project = in_hole({50, 0, 10}, 0.4);
  project.project.structure.frames.front().plane = at_station(120);
  const Judgement judgement = judged(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.message, "the cable does not pass frame F1")) << judgement.message;
}

TEST(FreeFairlead, ThatTheCablePassesOutsideSaysHowFar) {
  const Judgement judgement = judged(with_ring(40, 0.5));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_TRUE(contains(judgement.message, "its point is 40.0 in from the cable"))
      << judgement.message;
  EXPECT_FALSE(contains(judgement.mend, "bore of")) << judgement.mend;
  expect_complete(judgement);
}

TEST(FreeFairlead, WithoutATensionIsUnknown) {
  SmallProject project = with_ring(0.1, 0.5);
  the_route(project).tension.reset();
  EXPECT_EQ(judged(project).verdict, Verdict::unknown);
  EXPECT_TRUE(contains(judged(project).message, "tension of rudder-left"));
  expect_complete(judged(project));
}

TEST(FreeFairlead, CountsASleeveInIt) {
  SmallProject project = with_ring(0, 0.5);
  the_route(project).sleeves.push_back({40, 60, 0.17, 0.3, {"routes.yaml", 108, 16}});
  EXPECT_NEAR(*judged(project).value, 0.25 - 0.15, 1e-9);
}

TEST(FreeFairlead, IsFilledMoreByACableThatSlants) {
  // 80 aft and 60 to the right: the cable is 1 / 0.8 as wide across the bore.
  SmallProject project = cable_project({}, {80, 60, 10});
  add_frame(project, "F1", 40, 0.5);
  project.project.structure.frames.front().outline = {{-10, 0}, {50, 0}, {50, 20}, {-10, 20}};
  project.project.structure.frames.front().holes.front().shape = Circle{{30, 10}, 0.75};
  FreeFairlead free;
  free.fairlead = through(held({40, 30, 10}, HoldKind::fairlead), "F1-a");
  free.fairlead.bore_in = 0.5;
  the_route(project).free_fairleads.push_back(free);
  set_tension(project, 100);
  EXPECT_NEAR(*judged(project).value, 0.25 - 0.0695 / 0.8, 1e-9);
  EXPECT_EQ(judged(project).with, "F1-a");
}

TEST(FreeFairlead, DoesNotHoldTheCableNorBendIt) {
  const SmallProject project = with_ring(0.1, 0.5);
  const PreparedProject prepared = prepare(project.project);
  EXPECT_EQ(prepared.routes[0].spans.size(), 1u);
  EXPECT_TRUE(prepared.routes[0].centreline.bends().empty());
}

TEST(FreeFairlead, KeepsTheCableOffTheEdgeOfItsHole) {
  SmallProject bare = cable_project();
  add_frame(bare, "F1", 50, 0.5);
  EXPECT_EQ(sole(bare.judged_by("frame-crossing")).verdict, Verdict::warn);
  SmallProject lined = bare;
  FreeFairlead free;
  free.fairlead = through(held({50, 0, 10}, HoldKind::fairlead), "F1-a");
  free.fairlead.bore_in = 0.4;
  the_route(lined).free_fairleads.push_back(free);
  EXPECT_EQ(sole(lined.judged_by("frame-crossing")).verdict, Verdict::pass);
}

TEST(FreeFairlead, IsJammedByATurnbuckleThatTravelsIntoIt) {
  SmallProject project = with_ring(0, 0.5);
  set_travel(project, 2, 2);
  the_route(project).attached.push_back({"turnbuckle", 46, 4.5, 0.44, {"routes.yaml", 120, 5}});
  EXPECT_EQ(sole(project.judged_by("attachment-travel")).verdict, Verdict::fail);
}

TEST(FreeFairlead, IsFixedToAPartInItsReach) {
  const auto verdict = [](double below_in) {
    SmallProject project = with_ring(0, 0.5);
    Solid box;
    box.name = "rail";
    box.shape = Box{{49, -1, 5}, {51, 1, 10 - below_in}};
    project.project.structure.solids.push_back(box);
    the_route(project).free_fairleads[0].fairlead.to = "rail";
    return sole(project.judged_by("support-mount")).verdict;
  };
  EXPECT_EQ(verdict(1), Verdict::pass);
  EXPECT_EQ(verdict(3), Verdict::warn);
}

TEST(FreeFairlead, SaysTheSameOfAReversedRun) {
  SmallProject project = with_ring(0.1, 0.5, 20);
  the_route(project).points = {held({20, 0, 10}, HoldKind::fairlead),
                               held({90, 0.2, 10}, HoldKind::fairlead)};
  for (RoutePoint& point : the_route(project).points) point.where = {"routes.yaml", 110, 9};
  the_route(project).free_fairleads[0].leg = 1;
  expect_same_reversed(project, "fairlead-angle");
}

}  // namespace
}  // namespace linewright
