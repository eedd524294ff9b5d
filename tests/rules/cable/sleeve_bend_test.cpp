// Sleeves on the turns of a cable: an arc to follow, and one that the sleeve stands.

#include "rules/cable/sleeve_bend.hpp"

#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A square turn at FS 50, bent to 4 in: the arc is from 46 to 52.28 in. The sleeve is clamped.
SmallProject sleeved_turn(double from_in, double to_in, std::optional<double> least_in,
                          double bend_in = 4, Mark mark = Mark::verified) {
  SmallProject project = cable_project({bent({50, 0, 10}, bend_in)}, {50, 40, 10});
  if (bend_in <= 0) the_route(project).points[0].bend_in.reset();
  Sleeve sleeve{from_in, to_in, 0.18, 0.25, {"routes.yaml", 108, 16}};
  if (least_in) sleeve.minimum_bend_radius_in = {*least_in, {"a table", mark}};
  the_route(project).sleeves.push_back(sleeve);
  set_travel(project, 0, 0);
  return project;
}

/// What is said after fit and hold.
std::vector<Judgement> bends_of(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("sleeve-cover");
  all.erase(all.begin(), all.begin() + 2);
  return all;
}

TEST(BentSleeve, MustStandItsRadius) {
  EXPECT_EQ(sole(bends_of(sleeved_turn(40, 60, 4))).verdict, Verdict::pass);
  const Judgement tight = sole(bends_of(sleeved_turn(40, 60, 5)));
  EXPECT_EQ(tight.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(*tight.value, 4);
  EXPECT_DOUBLE_EQ(*tight.limit, 5);
  EXPECT_TRUE(contains(tight.mend, "5.00 in")) << tight.mend;
  EXPECT_EQ(tight.location.line, SmallProject::line_of_point(0, 0));
  expect_complete(tight);
  EXPECT_EQ(sole(bends_of(sleeved_turn(40, 60, 5, 4, Mark::common_practice))).verdict,
            Verdict::warn);
}

TEST(BentSleeve, WithoutALeastRadiusIsUnknown) {
  const Judgement judgement = sole(bends_of(sleeved_turn(40, 60, std::nullopt)));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  expect_complete(judgement);
}

TEST(BentSleeve, CannotTurnAtAPoint) {
  const Judgement judgement = sole(bends_of(sleeved_turn(40, 60, 4, 0)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 90, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "at one point")) << judgement.message;
  EXPECT_TRUE(contains(judgement.mend, "bend: 4.00 in")) << judgement.mend;
  expect_complete(judgement);
}

TEST(BentSleeve, IsAskedNothingWhereItLiesStraight) {
  EXPECT_TRUE(bends_of(sleeved_turn(20, 46, std::nullopt)).empty());
  EXPECT_TRUE(bends_of(sleeved_turn(52.3, 60, std::nullopt)).empty());
  EXPECT_FALSE(bends_of(sleeved_turn(20, 46.1, std::nullopt)).empty());
}

TEST(BentSleeve, LeavesTheTurnInAFairleadToItsOwnRule) {
  const auto turned_at = [](const RoutePoint& point) {
    SmallProject project = cable_project({point}, {100, 2, 10});
    the_route(project).sleeves.push_back({40, 60, 0.18, 0.25, {"routes.yaml", 108, 16}});
    set_travel(project, 0, 0);
    return project;
  };
  const SmallProject led = turned_at(held({50, 0, 10}, HoldKind::fairlead));
  // What is left is that the sleeve covers the fairlead.
  EXPECT_TRUE(contains(sole(bends_of(led)).message, "stands out")) << sole(bends_of(led)).message;
  EXPECT_NEAR(*sole(led.judged_by("fairlead-angle")).value,
              std::atan(2.0 / 50) * 180 / std::numbers::pi, 1e-9);
  // Nothing else judges the same turn where no fairlead is.
  const SmallProject bare = turned_at(corner({50, 0, 10}));
  EXPECT_TRUE(contains(sole(bends_of(bare)).message, "turns 2.3 deg where no bend is stated"))
      << sole(bends_of(bare)).message;
}

/// The turn in a sleeve from 36 to 62 in along, clamped to structure at these stations before the
/// turn and buttock lines after it, with 100 lbf in the cable at the most.
SmallProject clamped_turn(const std::vector<double>& before, const std::vector<double>& after) {
  SmallProject project = sleeved_turn(36, 62, 4);
  std::vector<RoutePoint>& points = the_route(project).points;
  const RoutePoint turn = points.front();
  points.clear();
  for (const double station : before) points.push_back(held({station, 0, 10}, HoldKind::clamp));
  points.push_back(turn);
  for (const double line : after) points.push_back(held({50, line, 10}, HoldKind::clamp));
  set_travel(project, 1, 1);
  set_tension(project, 40, 100);
  project.project.temperature = {70, 70, 70};
  return project;
}

/// What bend-fit says of the turn besides of its arc.
Judgement turn_of(const SmallProject& project) {
  for (const Judgement& each : project.judged_by("bend-fit"))
    if (contains(each.message, "the cable turns") || contains(each.message, "the sleeve leads"))
      return each;
  return {};
}

TEST(BentSleeve, HeldOnBothSidesLeadsTheCableAndSaysWhatItBears) {
  const Judgement led = turn_of(clamped_turn({40}, {8}));
  EXPECT_EQ(led.verdict, Verdict::pass) << led.message;
  // 2 · 100 lbf · sin 45 deg = 141.4 lbf [calculated].
  EXPECT_TRUE(contains(led.message, "141 lbf across with 100 lbf")) << led.message;
}

TEST(BentSleeve, HeldOnOneSideIsAskedAbout) {
  for (const auto& [before, after] :
       {std::pair<std::vector<double>, std::vector<double>>{{40, 44}, {}}, {{}, {8}}}) {
    const Judgement half = turn_of(clamped_turn(before, after));
    EXPECT_EQ(half.verdict, Verdict::warn);
    EXPECT_TRUE(contains(half.message, "141 lbf")) << half.message;
    expect_complete(half);
  }
}

TEST(BentSleeve, ThatNothingHoldsToStructureGuidesNothing) {
  SmallProject project = clamped_turn({}, {});
  const Judgement loose = turn_of(project);
  EXPECT_EQ(loose.verdict, Verdict::fail);
  EXPECT_NEAR(*loose.value, 90, 1e-9);
  EXPECT_TRUE(contains(loose.message, "nothing holds the sleeve to structure")) << loose.message;
  EXPECT_TRUE(contains(loose.message, "141 lbf across")) << loose.message;
  expect_complete(loose);
  // Stops keep it in its place on the cable, and nowhere else.
  the_route(project).attached = {{"stop", 35.4, 1, 0.4, {"routes.yaml", 110, 9}},
                                 {"stop", 62.6, 1, 0.4, {"routes.yaml", 111, 9}}};
  EXPECT_EQ(turn_of(project).verdict, Verdict::fail);
  // A fairlead that it slides in does not hold it, nor does a clamp beyond its end.
  the_route(project).points.push_back(held({50, 9, 10}, HoldKind::fairlead));
  the_route(project).points.push_back(held({50, 30, 10}, HoldKind::clamp));
  EXPECT_EQ(turn_of(project).verdict, Verdict::fail);
}

TEST(BentSleeve, ThatEndsWithinTheTurnGuidesNothing) {
  SmallProject project = clamped_turn({40}, {8});
  the_route(project).sleeves[0].to_in = 50;
  const Judgement bare = turn_of(project);
  EXPECT_EQ(bare.verdict, Verdict::fail);
  EXPECT_FALSE(contains(bare.message, "sleeve")) << bare.message;
  // Two that overlap are no tube, either.
  the_route(project).sleeves.push_back(the_route(project).sleeves[0]);
  the_route(project).sleeves[1].from_in = 48;
  the_route(project).sleeves[1].to_in = 62;
  EXPECT_EQ(turn_of(project).verdict, Verdict::fail);
}

TEST(BentSleeve, IsJudgedTheSameFromEitherEnd) {
  for (const SmallProject& project :
       {clamped_turn({40}, {8}), clamped_turn({40}, {}), clamped_turn({}, {})})
    EXPECT_EQ(turn_of(project).verdict, turn_of(reversed(project)).verdict);
}

TEST(BentSleeve, WithoutATensionSaysThatItsSideLoadIsNotKnown) {
  SmallProject project = clamped_turn({40}, {8});
  the_route(project).tension.reset();
  EXPECT_TRUE(contains(turn_of(project).message, "not known")) << turn_of(project).message;
}

TEST(BentSleeve, OnATubeIsJudgedOnlyByARadiusThatIsKnown) {
  const auto on_tube = [](std::optional<double> least_in) {
    SmallProject project;
    project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {20, 20, 0});
    Route& route = project.route("tube", "tube-nylon-1/4", "a", "b", {bent({20, 0, 0}, 4)});
    Sleeve sleeve{10, 25, 0.3, 0.4, {"routes.yaml", 108, 16}};
    if (least_in) sleeve.minimum_bend_radius_in = {*least_in, {"a table", Mark::verified}};
    route.sleeves.push_back(sleeve);
    return not_passed(project.judged_by("sleeve-cover"));
  };
  EXPECT_TRUE(on_tube(std::nullopt).empty());
  EXPECT_TRUE(on_tube(4).empty());
  EXPECT_EQ(sole(on_tube(5)).verdict, Verdict::fail);
}

// AC 43.13-1B Table 9-3 and Fig. 9-10: hose of 0.52 in outside is bent to 3 in of its inside, so to
// 3.26 in of its centreline, which is the cable's.
TEST(BentSleeve, CutFromHoseStandsWhatTheHoseStands) {
  const auto turned = [](const std::string& bend) {
    ProjectSections sections;
    sections.nodes = held_node("forward", "0, 0, 10") + held_node("aft", "50, 40, 10");
    sections.routes =
        "  - {name: rudder, system: cable, line: cable-7x19-1/8-steel, from: forward, to: aft,\n"
        "     points: [{at: [50, 0, 10], bend: " +
        bend + "}], sleeves: [{from: 40, to: 60, line: hose-rubber-3/16}]}\n";
    for (const Judgement& each : judged(sections, "sleeve-cover"))
      if (contains(each.message, "the sleeve is bent")) return each;
    return Judgement{};
  };
  EXPECT_EQ(turned("3.26").verdict, Verdict::pass);
  const Judgement tight = turned("3.25");
  EXPECT_EQ(tight.verdict, Verdict::fail);
  EXPECT_DOUBLE_EQ(tight.limit.value(), 3.26);
  EXPECT_TRUE(contains(tight.source, "to the inside of the bend")) << tight.source;
}

TEST(BentSleeve, SaysTheSameOfAReversedRun) {
  expect_same_reversed(sleeved_turn(40, 60, 5), "sleeve-cover");
}

}  // namespace
}  // namespace linewright
