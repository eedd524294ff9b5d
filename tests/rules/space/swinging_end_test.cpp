// Where the end of a cable goes on its arm, and what is said where that is not known.

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "rules/cable_project.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// The run past a fairlead at FS 60 to a horn on an arm of 6 in square to it, `travel_in` both
/// ways.
SmallProject swinging(double travel_in = 2) {
  SmallProject project = cable_project({held({60, 0, 10}, HoldKind::fairlead)});
  project.project.nodes.back().arm = Arm{{100, -6, 10}, {0, 0, 1}};
  set_travel(project, travel_in, travel_in);
  set_tension(project, 40, 150);
  return project;
}

SmallProject with_box(SmallProject project, Vec3 min, Vec3 max) {
  Solid wall;
  wall.name = "wall";
  wall.shape = Box{min, max};
  wall.where = {"structure.yaml", 7, 5};
  project.project.structure.solids.push_back(wall);
  return project;
}

/// A wall across, `behind_in` behind the horn.
SmallProject before_wall(double behind_in, double travel_in = 2) {
  return with_box(swinging(travel_in), {100 + behind_in, -5, 5}, {101 + behind_in, 5, 15});
}

Judgement at_wall(const SmallProject& project, std::string_view rule = "clearance") {
  std::vector<Judgement> all = project.judged_by(rule);
  std::erase_if(all, [](const Judgement& each) { return each.with != "wall"; });
  return all.empty() ? Judgement{} : all.front();
}

TEST(SwingingEnd, FailsWhereItSweepsIntoWhatIsBehindIt) {
  for (const SmallProject& project : {before_wall(0.7), reversed(before_wall(0.7))}) {
    const Judgement judgement = at_wall(project);
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_TRUE(contains(judgement.message, "can be in wall, where its end swings past the place"))
        << judgement.message;
    expect_complete(judgement);
  }
}

// The end's place at a travel of 2: (40 + 6 s)² + (6 − 6 c)² = 42² gives 6 s = 1.9977 for an arm of
// 6 in and a leg of 40. The cable's radius is 0.0625 and its largest, 0.14 in, half of that.
TEST(SwingingEnd, IsMeasuredFromTheFarthestPlaceItComesTo) {
  const double largest = swinging().line(eighth_steel).largest_diameter_in() / 2;
  const Judgement judgement = at_wall(before_wall(3));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  // Every place within 0.02 in is looked at, and half of that taken off.
  EXPECT_NEAR(*judgement.value, 3 - 1.9977 - largest - 0.01, 0.002);
}

TEST(SwingingEnd, SweepsNothingWithoutTravel) {
  EXPECT_EQ(at_wall(before_wall(0.7, 0)).verdict, Verdict::pass);
}

TEST(SwingingEnd, FailsWhereItSweepsIntoAnotherLine) {
  SmallProject project = swinging();
  project.node("a", NodeKind::bulkhead, {101, -8, 10}).node("b", NodeKind::bulkhead, {101, 8, 10});
  project.route("vent", "tube-nylon-1/4", "a", "b");
  std::vector<Judgement> found = not_passed(project.judged_by("separation"));
  EXPECT_EQ(sole(found).verdict, Verdict::fail);
}

TEST(SwingingEnd, ReachesAsFarOutWhereItComesInToItsGuide) {
  // A leg of 4 in on an arm of 5 in that takes its end 3 in in and 1 in down: at the end's place
  // the cable is 1 in off, though that is a quarter of the way from the guide.
  SmallProject project = cable_project({held({60, 0, 10}, HoldKind::fairlead)}, {64, 0, 10});
  project.project.nodes.back().arm = Arm{{64, 0, 5}, {0, 1, 0}};
  set_travel(project, 4 - std::hypot(1, 1), 0);
  set_tension(project, 40, 150);
  const PreparedProject prepared = prepare(project.project);
  const Support& end = prepared.routes[0].supports.back();
  EXPECT_NEAR(end.play_in, 1, 0.001);
  EXPECT_NEAR(end.comes_in_in, 3, 0.001);
  const SmallProject beside = with_box(project, {60.9, -0.1, 8}, {61.1, 0.1, 9.1});
  EXPECT_EQ(at_wall(beside, "chafe").verdict, Verdict::fail);
}

TEST(SwingingEnd, IsUnknownWhereTheTravelIsNotStated) {
  SmallProject project = swinging();
  the_route(project).travel.reset();
  for (const SmallProject& each : {project, reversed(project)}) {
    bool said = false;
    for (const Judgement& judgement : each.judged_by("chafe"))
      said |= judgement.verdict == Verdict::unknown &&
              contains(judgement.message, "the travel of rudder-left is missing");
    EXPECT_TRUE(said);
  }
}

TEST(SwingingEnd, IsUnknownOnAnArmOfNoLength) {
  SmallProject project = swinging();
  project.project.nodes.back().arm = Arm{{100, 0, 10}, {0, 0, 1}};
  bool said = false;
  for (const Judgement& judgement : project.judged_by("chafe"))
    said |= judgement.verdict == Verdict::unknown &&
            contains(judgement.message, "an arm at horn that gives the travel");
  EXPECT_TRUE(said);
}

/// Horn and pedal without arms, and a wall beside the run near the horn.
SmallProject without_arms(double beside_in, double travel_in = 2) {
  SmallProject project = cable_project();
  set_travel(project, travel_in, travel_in);
  set_tension(project, 40, 150);
  return with_box(project, {90, beside_in, 5}, {99, beside_in + 1, 15});
}

TEST(UnknownSwing, IsSaidWhereSomethingIsWithinTheTravelOfTheEnd) {
  for (const SmallProject& project : {without_arms(0.9), reversed(without_arms(0.9))}) {
    const Judgement judgement = sole(not_passed(project.judged_by("clearance")));
    EXPECT_EQ(judgement.verdict, Verdict::unknown);
    EXPECT_EQ(judgement.with, "wall");
    EXPECT_TRUE(contains(judgement.message,
                         "how far horn swings the cable is not known: its arm is not stated"))
        << judgement.message;
    EXPECT_EQ(judgement.mend, "state the `arm` of node horn");
    expect_complete(judgement);
  }
}

TEST(UnknownSwing, IsSilentWhereNothingIsSoNearOrNothingMoves) {
  EXPECT_TRUE(not_passed(without_arms(2.2).judged_by("clearance")).empty());
  EXPECT_TRUE(not_passed(without_arms(0.9, 0).judged_by("clearance")).empty());
}

TEST(UnknownSwing, IsSaidOfWhatStandsBehindTheEnd) {
  SmallProject project = cable_project();
  set_travel(project, 2, 2);
  set_tension(project, 40, 150);
  const Judgement judgement =
      sole(not_passed(with_box(project, {100.7, -5, 5}, {101.5, 5, 15}).judged_by("clearance")));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
}

// A travel that is not stated is taken for 1 1/2 in [common practice, no source].
TEST(UnknownSwing, IsSaidOfWhatIsWithinAnInchAndAHalfOfAnEndWhoseTravelIsNotStated) {
  const auto behind = [](double gap_in) {
    SmallProject project = cable_project();
    set_tension(project, 40, 150);
    const double face = 100 + the_line(project).largest_diameter_in() / 2 + gap_in;
    return not_passed(with_box(project, {face, -5, 5}, {face + 1, 5, 15}).judged_by("clearance"));
  };
  EXPECT_EQ(sole(behind(1.49)).verdict, Verdict::unknown);
  EXPECT_TRUE(behind(1.51).empty());
}

TEST(UnknownSwing, IsSaidOfOtherLines) {
  SmallProject project = cable_project();
  set_travel(project, 2, 2);
  set_tension(project, 40, 150);
  project.node("a", NodeKind::bulkhead, {98, 1.2, 4}).node("b", NodeKind::bulkhead, {98, 1.2, 16});
  project.route("vent", "tube-nylon-1/4", "a", "b");
  const Judgement judgement = sole(not_passed(project.judged_by("clearance")));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.with, "vent");
  EXPECT_TRUE(judgement.with_is_route);
}

}  // namespace
}  // namespace linewright
