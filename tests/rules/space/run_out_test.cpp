// What comes out of a casing, against structure and other lines.

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "rules/cable_project.hpp"
#include "rules/casing_project.hpp"

namespace linewright {
namespace {

SmallProject with_box(SmallProject project, Vec3 min, Vec3 max) {
  project.project.structure.solids.push_back({"wall", Box{min, max}, {"structure.yaml", 7, 5}});
  return project;
}

std::vector<Judgement> against(std::vector<Judgement> all, const std::string& name) {
  std::erase_if(all, [&](const Judgement& each) { return each.with != name; });
  return all;
}

/// What clearance says of the wire beyond the casing, not of the casing itself.
std::vector<Judgement> of_wire(const SmallProject& project, const std::string& name) {
  std::vector<Judgement> all = against(project.judged_by("clearance"), name);
  std::erase_if(all, [](const Judgement& each) { return !contains(each.message, "comes out"); });
  return all;
}

// The casing ends at FS 140, the wire is pushed out to 144.
TEST(RunOut, FailsWhereTheWireIsPushedIntoSomething) {
  const SmallProject project = with_box(casing_project(), {143.5, -2, 8}, {146, 2, 12});
  const Judgement found = sole(of_wire(project, "wall"));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_TRUE(contains(found.message, "carburettor")) << found.message;
  EXPECT_GE(found.at->x, 143.5 - 1e-6);
  expect_complete(found);
}

TEST(RunOut, PassesWhereItIsStillClearPushedAllTheWayOut) {
  const SmallProject project = with_box(casing_project(), {144.5, -2, 8}, {146, 2, 12});
  const Judgement found = sole(of_wire(project, "wall"));
  EXPECT_EQ(found.verdict, Verdict::pass);
  EXPECT_NEAR(*found.value, 0.5 - casing_radius_in, 1e-9);
}

// What is farther than 1 1/2 in is no neighbour of the wire [common practice, no source].
TEST(RunOut, IsHeldAgainstWhatIsWithinAnInchAndAHalfAndNothingFarther) {
  const auto behind = [](double gap_in) {
    const double face = 144 + casing_radius_in + gap_in;
    return of_wire(with_box(casing_project(), {face, -2, 8}, {face + 1, 2, 12}), "wall");
  };
  EXPECT_NEAR(*sole(behind(1.49)).value, 1.49, 1e-9);
  EXPECT_TRUE(behind(1.51).empty());
}

TEST(RunOut, IsUnknownWithoutRunOutAndNothingIsPassed) {
  SmallProject project = with_box(casing_project(), {110, -2, 10.5}, {120, 2, 12});
  throttle(project).run_out.reset();
  const Judgement found = sole(project.judged_by("clearance"));
  EXPECT_EQ(found.verdict, Verdict::unknown);
  EXPECT_TRUE(contains(found.mend, "run_out"));
  expect_complete(found);
}

/// A bracket at FS 140, square to the casing, in which its end is fixed.
SmallProject in_bracket() {
  SmallProject project = casing_project();
  Panel bracket;
  bracket.name = "bracket";
  bracket.corners = {{140, -3, 7}, {140, 3, 7}, {140, 3, 13}, {140, -3, 13}};
  bracket.thickness_in = 0.063;
  project.project.structure.panels.push_back(bracket);
  return project;
}

TEST(RunOut, IsNotJudgedAgainstTheBracketThatItGoesThrough) {
  EXPECT_TRUE(of_wire(in_bracket(), "bracket").empty());
}

// Structure does not hold an end that only hangs there.
TEST(RunOut, IsJudgedAgainstAPlateThatItsEndIsNotFixedTo) {
  SmallProject project = in_bracket();
  project.project.nodes[1].kind = NodeKind::end;
  EXPECT_EQ(sole(of_wire(project, "bracket")).verdict, Verdict::fail);
}

// The casing leads away from the plate ahead of it; the wire runs into it.
TEST(RunOut, IsJudgedAgainstWhatTheCasingLeavesBehind) {
  const SmallProject project = with_box(casing_project(), {140.3, -2, 10.05}, {141.3, 2, 12});
  EXPECT_EQ(sole(of_wire(project, "wall")).verdict, Verdict::fail);
}

/// A lever along WL at FS 143, which the pin at its lower end goes round with.
SmallProject with_lever(double station) {
  SmallProject project = casing_project();
  Mover lever;
  lever.name = "lever";
  lever.pivot = {station, 0, 14};
  lever.axis = {0, 1, 0};
  lever.points = {{station, 0, 14}, {station, 0, 10}};
  lever.radius_in = 0.2;
  lever.sweep_from_deg = -15;
  lever.sweep_to_deg = 15;
  project.project.structure.movers.push_back(lever);
  return project;
}

TEST(RunOut, IsNotJudgedAgainstTheLeverThatItsPinIsOn) {
  SmallProject project = with_lever(143);
  throttle(project).run_out->to_arm = Arm{{143, 3, 14}, {0, -1, 0}};
  EXPECT_TRUE(against(project.judged_by("clearance"), "lever").empty());
  project = with_lever(142.2);
  throttle(project).run_out->to_arm = Arm{{142.2, 0, 14}, {0, 1, 0}};
  const std::vector<Judgement> other = against(project.judged_by("clearance"), "lever");
  EXPECT_EQ(sole(not_passed(other)).verdict, Verdict::fail);
}

// What is near a pin need not be what it is on.
TEST(RunOut, IsJudgedAgainstAMoverThatNoArmSaysItIsOn) {
  const SmallProject silent = with_lever(143);
  const Judgement found = sole(not_passed(against(silent.judged_by("clearance"), "lever")));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_TRUE(contains(found.mend, "state its arm in `run_out`, if the pin turns with lever"));
  SmallProject other_axis = with_lever(143);
  throttle(other_axis).run_out->to_arm = Arm{{143, 0, 14}, {1, 0, 0}};
  EXPECT_FALSE(not_passed(against(other_axis.judged_by("clearance"), "lever")).empty());
}

TEST(RunOut, IsJudgedAgainstAnotherPieceOfItsLever) {
  SmallProject project = with_lever(143);
  throttle(project).run_out->to_arm = Arm{{143, 0, 14}, {0, 1, 0}};
  Mover& lever = project.project.structure.movers.back();
  lever.points.insert(lever.points.begin(), {{141.2, 0, 9.6}, {141.2, 3, 14}});
  const std::vector<Judgement> found = not_passed(of_wire(project, "lever"));
  EXPECT_EQ(sole(found).verdict, Verdict::fail);
}

/// A pin at FS 143 on an arm of 2 in under it: pushed 1.5 in out it comes down.
SmallProject on_arm() {
  SmallProject project = casing_project();
  throttle(project).travel = Travel{0, 1.5, {}};
  throttle(project).run_out->to_arm = Arm{{143, 0, 8}, {0, 1, 0}};
  return project;
}

// 4.5 in from the casing and 2 in from the pivot, √13 in apart: by Heron's formula so far off the
// line between the two.
TEST(RunOut, GoesWhereTheArmTakesItsPin) {
  const double apart = std::sqrt(13);
  const double along = (4.5 * 4.5 + 13 - 4) / (2 * apart);
  const double off = std::sqrt(4.5 * 4.5 - along * along);
  // That line goes down by 2 in 3.
  const double pin_level = 10 - (along * 2 - off * 3) / apart;
  const double top = pin_level - casing_radius_in - 0.2;
  SmallProject project = with_box(on_arm(), {141, -2, top - 3}, {147, 2, top});
  const Judgement found = sole(of_wire(project, "wall"));
  EXPECT_EQ(found.verdict, Verdict::warn);
  EXPECT_LE(*found.value, 0.2 + 1e-9);
  EXPECT_GE(*found.value, 0.2 - 0.01);  // half of the distance between the places looked at
  throttle(project).run_out->to_arm.reset();
  EXPECT_EQ(sole(of_wire(project, "wall")).verdict, Verdict::pass);
}

TEST(RunOut, CountsAgainstOtherLines) {
  SmallProject project = casing_project();
  project.node("a", NodeKind::bulkhead, {143, -8, 10}).node("b", NodeKind::bulkhead, {143, 8, 10});
  project.route("vent", "tube-nylon-1/4", "a", "b");
  const Judgement found = sole(not_passed(project.judged_by("separation")));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_TRUE(contains(found.message, "out of its casing")) << found.message;
}

// Led round by FS 120 and back up to BL 1.5, the casing points at its own first leg; the wire is
// pushed 4 in out of it.
TEST(RunOut, CountsAgainstItsOwnCasing) {
  SmallProject project =
      casing_project({corner({120, 0, 10}), corner({120, 16, 10}), corner({110, 16, 10})});
  project.project.nodes.back().at = {110, 1.5, 10};
  const Judgement found = sole(not_passed(project.judged_by("separation")));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_EQ(found.with, "throttle");
  EXPECT_TRUE(contains(found.message, "touch the control itself")) << found.message;
  expect_complete(found);
  throttle(project).run_out->to_in = 0.2;
  throttle(project).travel = Travel{0, 0.1, {}};
  EXPECT_TRUE(not_passed(project.judged_by("separation")).empty());
}

// The ends of a casing that comes back face each other, 5 in apart; the wire stands out 3 in.
TEST(RunOut, CountsAgainstWhatComesOutOfItsOtherEnd) {
  SmallProject project = casing_project(
      {corner({80, 0, 10}), corner({80, 16, 10}), corner({125, 16, 10}), corner({125, 0, 10})});
  project.project.nodes.back().at = {105, 0, 10};
  const Judgement found = sole(not_passed(project.judged_by("separation")));
  EXPECT_EQ(found.verdict, Verdict::fail);
  EXPECT_EQ(found.with, "throttle");
}

// A casing is a line that does not move: clamped, led through holes, and judged as flexible.
TEST(Casing, IsJudgedAsALineThatStandsStill) {
  SmallProject project = casing_project({clamped({110, 0, 10}), clamped({125, 0, 10})});
  EXPECT_TRUE(not_passed(project.judged_by("support-spacing")).empty());
  EXPECT_TRUE(not_passed(project.judged_by("chafe")).empty());
  project = casing_project();
  EXPECT_EQ(sole(not_passed(project.judged_by("support-spacing"))).verdict, Verdict::warn);
  for (const char* rule : {"network", "drainage", "lag", "slack", "straight-run", "resonance",
                           "pulley", "fairlead-angle", "cable-size", "cable-end", "cable-tension",
                           "control-feel", "attachment-travel", "sleeve-cover", "rod-travel"})
    EXPECT_TRUE(project.judged_by(rule).empty()) << rule;
}

TEST(Casing, IsBentNoTighterThanItsLineSays) {
  SmallProject project = casing_project({bent({120, 0, 10}, 4)});
  project.project.nodes[1].at = {120, 30, 10};
  EXPECT_EQ(sole(project.judged_by("bend-radius")).verdict, Verdict::warn);
  project.line(quarter_inch_casing).minimum_bend_radius_in->source.mark = Mark::builder;
  EXPECT_EQ(sole(project.judged_by("bend-radius")).verdict, Verdict::fail);
}

// Within 2 in of its last clamp a casing keeps its direction; farther on its end swings.
TEST(Casing, IsHeldStraightPastItsLastClamp) {
  const auto chafe = [](double last_clamp) {
    return not_passed(hanging_casing({clamped({101, 0, 10}), clamped({110, 0, 10}),
                                      clamped({125, 0, 10}), clamped({last_clamp, 0, 10})})
                          .judged_by("chafe"));
  };
  EXPECT_TRUE(chafe(138.5).empty());
  EXPECT_EQ(sole(chafe(137)).verdict, Verdict::warn);
}

}  // namespace
}  // namespace linewright
