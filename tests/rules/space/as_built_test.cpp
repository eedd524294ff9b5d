#include "lines/as_built.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/cable_project.hpp"
#include "rules/small_project.hpp"

namespace linewright {
namespace {

// Lengths of tens of inches; slopes of a tenth of an inch in 15 in change a gap by less than 1e-4.
constexpr double rounding_in = 1e-9;
constexpr double slope_in = 2e-4;

/// 0.25 in across at its largest: by the catalogue no tolerance of its diameter is known.
const std::string metal = "tube-aluminium-1/4";
constexpr double radius_in = 0.125;

Measurement measure(const std::string& route) {
  Measurement measured;
  measured.route = route;
  measured.on = "2026-11-20";
  measured.by = "AB";
  measured.where = {"built.yaml", 4, 5};
  return measured;
}

Measurement found(const std::string& route, int of, Vec3 at) {
  Measurement measured = measure(route);
  measured.of = of;
  measured.at = at;
  return measured;
}

Measurement gap_at(const std::string& route, double distance_in, double gap_in,
                   const std::string& to = {}) {
  Measurement measured = measure(route);
  measured.distance_in = distance_in;
  measured.gap_in = gap_in;
  measured.to = to;
  return measured;
}

SmallProject with(SmallProject project, std::vector<Measurement> built) {
  project.project.built = std::move(built);
  const std::vector<MeasureFault> faults = take_measured(project.project);
  if (!faults.empty()) throw std::runtime_error(faults.front().words);
  return project;
}

/// A tube along FS from 100 to 130 with a clamp at 115, over a box whose top is `gap_in` below it.
SmallProject over_box(double gap_in, double build_in = 0, double measuring_in = 0) {
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {130, 0, 10});
  project.route("tube", metal, "forward", "aft", {clamped({115, 0, 10})});
  project.project.structure.solids.push_back(
      {"box", Box{{110, -5, 5}, {120, 5, 10 - radius_in - gap_in}}, {}});
  project.project.build_tolerance_in = build_in;
  project.project.measuring_tolerance_in = measuring_in;
  return project;
}

std::vector<Judgement> drawn_of(std::vector<Judgement> judgements) {
  std::erase_if(judgements, [](const Judgement& each) { return bool(each.measured); });
  return judgements;
}

std::vector<Judgement> measured_of(std::vector<Judgement> judgements) {
  std::erase_if(judgements, [](const Judgement& each) { return !each.measured; });
  return judgements;
}

// The limit of 1/4 in for metal tube away from supports is that of `clearance`.

TEST(BuiltPlace, ASupportThatWasBuiltLowerFailsWhereTheDrawingPasses) {
  const SmallProject drawn = over_box(0.28);
  EXPECT_EQ(sole(drawn.judged_by("clearance")).verdict, Verdict::pass);
  const SmallProject built = with(drawn, {found("tube", 0, {115, 0, 9.95})});
  const Judgement judgement = sole(built.judged_by("clearance"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  // An inch from the clamp the line has come up by 0.05/15 in.
  EXPECT_NEAR(*judgement.value, 0.28 - 0.05 + 0.05 / 15, slope_in);
}

TEST(BuiltPlace, ASupportThatWasBuiltHigherPassesWhereTheDrawingFails) {
  const SmallProject drawn = over_box(0.24);
  EXPECT_EQ(sole(drawn.judged_by("clearance")).verdict, Verdict::fail);
  // 5 in from the clamp, over the box's edge, it is higher by two thirds of 0.06 in.
  const SmallProject built = with(drawn, {found("tube", 0, {115, 0, 10.06})});
  const Judgement judgement = sole(built.judged_by("clearance"));
  EXPECT_EQ(judgement.verdict, Verdict::pass);
  EXPECT_NEAR(*judgement.value, 0.28, slope_in);
}

TEST(BuiltPlace, TheBuildToleranceStaysInGapsToStructure) {
  const SmallProject built =
      with(over_box(0.4, 0.06, 1.0 / 32),
           {found("tube", Measurement::from_node, {100, 0, 10}), found("tube", 0, {115, 0, 10}),
            found("tube", Measurement::to_node, {130, 0, 10})});
  EXPECT_NEAR(*sole(built.judged_by("clearance")).value, 0.4 - 0.06, rounding_in);
}

/// Two tubes side by side for 30 in, each clamped in its middle.
SmallProject side_by_side_tubes(double gap_in) {
  SmallProject project;
  const double bl = 2 * radius_in + gap_in;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {130, 0, 10})
      .node("forward-2", NodeKind::bulkhead, {100, bl, 10})
      .node("aft-2", NodeKind::bulkhead, {130, bl, 10});
  project.route("tube", metal, "forward", "aft", {clamped({115, 0, 10})});
  project.route("other", metal, "forward-2", "aft-2", {clamped({115, bl, 10})});
  project.project.build_tolerance_in = 0.06;
  project.project.measuring_tolerance_in = 1.0 / 32;
  return project;
}

std::vector<Measurement> all_of(const SmallProject& project, const std::string& name) {
  const Node* from = project.project.find_node(name == "tube" ? "forward" : "forward-2");
  const Node* to = project.project.find_node(name == "tube" ? "aft" : "aft-2");
  return {found(name, Measurement::from_node, from->at), found(name, 0, (from->at + to->at) / 2),
          found(name, Measurement::to_node, to->at)};
}

double separation_of(const SmallProject& project) {
  return *sole(project.judged_by("separation")).value;
}

TEST(BuiltPlace, EachLineTakesOffItsOwnTolerance) {
  const SmallProject drawn = side_by_side_tubes(1);
  EXPECT_NEAR(separation_of(drawn), 1 - 2 * 0.06, rounding_in);
  std::vector<Measurement> built = all_of(drawn, "tube");
  EXPECT_NEAR(separation_of(with(drawn, built)), 1 - 0.06 - 1.0 / 32, rounding_in);
  for (const Measurement& each : all_of(drawn, "other")) built.push_back(each);
  EXPECT_NEAR(separation_of(with(drawn, built)), 1 - 2.0 / 32, rounding_in);
}

TEST(BuiltPlace, APartThatIsStillAsDrawnKeepsTheBuildTolerance) {
  const SmallProject drawn = side_by_side_tubes(1);
  std::vector<Measurement> built = all_of(drawn, "tube");
  built.pop_back();
  for (const Measurement& each : all_of(drawn, "other")) built.push_back(each);
  const Judgement judgement = sole(with(drawn, built).judged_by("separation"));
  EXPECT_NEAR(*judgement.value, 1 - 0.06 - 1.0 / 32, rounding_in);
  EXPECT_GE(*judgement.distance_in, 15) << "past the clamp, where the first line is as drawn";
}

TEST(BuiltPlace, TheWiderGapMayBeTheWorseWhereLessIsKnownOfIt) {
  // 0.02 in nearer where both were measured: there the tolerances are smaller by 0.0575 in.
  const SmallProject drawn = side_by_side_tubes(1);
  std::vector<Measurement> built = {
      found("tube", Measurement::from_node, {100, 0.02, 10}), found("tube", 0, {115, 0.02, 10}),
      found("other", Measurement::from_node, {100, 1.25, 10}), found("other", 0, {115, 1.25, 10})};
  const Judgement judgement = sole(with(drawn, built).judged_by("separation"));
  EXPECT_NEAR(*judgement.value, 1 - 0.02 - 2 * 0.06, slope_in);
  EXPECT_NEAR(*judgement.distance_in, 15, 0.5);
}

TEST(BuiltPlace, ChafeBetweenLinesTakesTheSameTolerances) {
  const SmallProject drawn = side_by_side_tubes(0.3);
  const auto gap = [](const SmallProject& project) {
    std::vector<Judgement> all = project.judged_by("chafe");
    std::erase_if(all, [](const Judgement& each) { return !each.with_is_route; });
    return *sole(all).value;
  };
  std::vector<Measurement> built = all_of(drawn, "tube");
  for (const Measurement& each : all_of(drawn, "other")) built.push_back(each);
  EXPECT_NEAR(gap(with(drawn, built)) - gap(drawn), 2 * (0.06 - 1.0 / 32), rounding_in);
}

TEST(MeasuredGap, IsHeldAgainstTheLimitsLessTheMeasuringTolerance) {
  const SmallProject built = with(over_box(0.5, 0.06, 1.0 / 32), {gap_at("tube", 12, 0.27, "box")});
  const std::vector<Judgement> all = built.judged_by("clearance");
  const Judgement measured = sole(measured_of(all));
  EXPECT_EQ(measured.verdict, Verdict::fail);
  EXPECT_NEAR(*measured.value, 0.27 - 1.0 / 32, rounding_in);
  EXPECT_EQ(*measured.limit, 0.25);
  EXPECT_EQ(measured.with, "box");
  EXPECT_EQ(measured.measured->value, 0.27);
  EXPECT_EQ(measured.location.file, "built.yaml");
  EXPECT_EQ(sole(drawn_of(all)).verdict, Verdict::pass) << "the drawing is judged beside it";
}

TEST(MeasuredGap, AtTheLimitPasses) {
  const SmallProject built =
      with(over_box(0.5, 0.06, 1.0 / 32), {gap_at("tube", 12, 0.25 + 1.0 / 32, "box")});
  EXPECT_EQ(sole(measured_of(built.judged_by("clearance"))).verdict, Verdict::pass);
}

TEST(MeasuredGap, NeverTurnsAnotherPlaceIntoAPass) {
  const SmallProject built = with(over_box(0.2), {gap_at("tube", 12, 0.5, "box")});
  const std::vector<Judgement> all = built.judged_by("clearance");
  EXPECT_EQ(sole(measured_of(all)).verdict, Verdict::pass);
  EXPECT_EQ(sole(drawn_of(all)).verdict, Verdict::fail);
}

TEST(MeasuredGap, AtASupportTheLimitIsThatOfSupports) {
  const SmallProject built = with(over_box(0.5), {gap_at("tube", 15.5, 0.07, "box")});
  const Judgement measured = sole(measured_of(built.judged_by("clearance")));
  EXPECT_EQ(*measured.limit, 0.0625);
  EXPECT_EQ(measured.verdict, Verdict::pass);
}

TEST(MeasuredGap, WithoutANameIsToWhatIsDrawnNearest) {
  SmallProject project = over_box(0.5);
  project.project.structure.solids.push_back({"roof", Box{{110, -5, 10.9}, {120, 5, 12}}, {}});
  const Judgement measured =
      sole(measured_of(with(project, {gap_at("tube", 12, 0.5)}).judged_by("clearance")));
  EXPECT_EQ(measured.with, "box");
}

TEST(MeasuredGap, ToAnotherLineIsJudgedBySeparation) {
  const SmallProject built =
      with(side_by_side_tubes(1), {gap_at("tube", 7, 0.4, "other"), gap_at("tube", 20, 0.5)});
  const std::vector<Judgement> measured = measured_of(built.judged_by("separation"));
  ASSERT_EQ(measured.size(), 2u);
  EXPECT_NEAR(*measured[0].value, 0.4 - 1.0 / 32, rounding_in);
  EXPECT_TRUE(measured[0].with_is_route);
  EXPECT_EQ(measured[1].with, "other") << "it is what is drawn nearest";
  EXPECT_TRUE(measured_of(built.judged_by("clearance")).empty());
}

TEST(MeasuredGap, ToTheEdgeOfAHoleIsJudgedByFrameCrossing) {
  SmallProject project = over_box(0.5);
  add_frame(project, "F1", 105, 2);
  // AC 43.13-1B CHG 1 para 11-115, borrowed from wires: 3/8 in to a bare edge.
  for (const auto& [gap, verdict] :
       {std::pair(0.36, Verdict::warn), std::pair(0.376, Verdict::pass)}) {
    const SmallProject built = with(project, {gap_at("tube", 5, gap, "F1-a")});
    const Judgement measured = sole(measured_of(built.judged_by("frame-crossing")));
    EXPECT_EQ(measured.verdict, verdict);
    EXPECT_NEAR(*measured.value, gap, rounding_in);
  }
}

TEST(MeasuredGap, IsHeldAgainstTheLinesReach) {
  // A wire's free play is some inches over 30 in: a gap of 0.05 in is well within it.
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {130, 0, 10});
  project.route("bundle", "wire-1/4", "forward", "aft");
  project.project.structure.solids.push_back({"box", Box{{110, -5, -5}, {120, 5, 0}}, {}});
  project.project.measuring_tolerance_in = 1.0 / 32;
  const Judgement measured =
      sole(measured_of(with(project, {gap_at("bundle", 15, 0.05, "box")}).judged_by("chafe")));
  EXPECT_NEAR(*measured.value, 0.05 - 1.0 / 32, rounding_in);
  EXPECT_NE(measured.verdict, Verdict::pass);
  EXPECT_EQ(
      sole(measured_of(with(project, {gap_at("bundle", 15, 8, "box")}).judged_by("chafe"))).verdict,
      Verdict::pass);
}

TEST(AsBuiltRule, AGapThatTheTolerancesExplainAgrees) {
  const double tolerances = 0.06 + 1.0 / 32;
  const SmallProject built =
      with(over_box(0.5, 0.06, 1.0 / 32), {gap_at("tube", 12, 0.5 - tolerances, "box")});
  EXPECT_EQ(sole(built.judged_by("as-built")).verdict, Verdict::pass);
  const SmallProject off =
      with(over_box(0.5, 0.06, 1.0 / 32), {gap_at("tube", 12, 0.5 - tolerances - 0.001, "box")});
  const Judgement judgement = sole(off.judged_by("as-built"));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NE(judgement.message.find("the drawing or the measure is wrong"), std::string::npos);
}

TEST(AsBuiltRule, AGapToWhatIsNotDrawnThereIsAskedAbout) {
  // The box ends at FS 120, 24 in and more from the end of a longer tube.
  SmallProject project;
  project.node("forward", NodeKind::bulkhead, {100, 0, 10})
      .node("aft", NodeKind::bulkhead, {160, 0, 10});
  project.route("tube", metal, "forward", "aft");
  const SmallProject built = with(project, {gap_at("tube", 30, 0.3)});
  const Judgement judgement = sole(built.judged_by("as-built"));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NE(judgement.message.find("nothing is drawn near there"), std::string::npos);
  const Judgement clearance = sole(measured_of(built.judged_by("clearance")));
  EXPECT_EQ(clearance.verdict, Verdict::pass);
  EXPECT_FALSE(clearance.with);
}

TEST(AsBuiltRule, APlaceFarFromItsDrawingIsASlipOfTheTape) {
  const Judgement judgement =
      sole(with(over_box(3), {found("tube", 0, {115, 1.2, 10})}).judged_by("as-built"));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_NEAR(*judgement.value, 1.2, rounding_in);
  EXPECT_NE(judgement.message.find("a slip of the tape?"), std::string::npos);
}

TEST(AsBuiltRule, HasNothingToSayWithoutMeasures) {
  EXPECT_TRUE(over_box(0.5).judged_by("as-built").empty());
}

}  // namespace
}  // namespace linewright
