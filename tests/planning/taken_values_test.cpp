// What was taken because a project does not say is said, a sentence for each kind of thing.

#include "planning/taken_values.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "rules/casing_project.hpp"

namespace linewright {
namespace {

bool says(const SmallProject& project, const std::string& words) {
  const std::vector<std::string> sentences = taken_values(project.project);
  return std::any_of(sentences.begin(), sentences.end(), [&](const std::string& sentence) {
    return sentence.find(words) != std::string::npos;
  });
}

SmallProject straight_cable() {
  SmallProject project;
  project.node("a", NodeKind::bulkhead, {0, 0, 0}).node("b", NodeKind::bulkhead, {50, 0, 0});
  project.route("cable", "cable-7x19-1/8-steel", "a", "b");
  project.project.routes[0].system = SystemKind::cable;
  return project;
}

TEST(TakenValues, NameTheCablesThatDoNotSayTheirTravelOrTheirControl) {
  SmallProject project = straight_cable();
  EXPECT_TRUE(says(project, "travel is not stated for cable"));
  EXPECT_TRUE(says(project, "control is not stated for cable"));
  project.project.routes[0].travel = Travel{1, 1, {}};
  project.project.routes[0].control = "rudder";
  EXPECT_FALSE(says(project, "travel is not stated"));
  EXPECT_FALSE(says(project, "control is not stated"));
}

TEST(TakenValues, NameTheEndsOfCasingsWhoseWireIsTakenToRunStraight) {
  SmallProject project = casing_project();
  EXPECT_TRUE(says(project, "no arm: throttle at panel, throttle at carburettor"));
  throttle(project).run_out->from_arm = Arm{{97, 0, 8}, {0, 1, 0}};
  EXPECT_TRUE(says(project, "no arm: throttle at carburettor"));
  EXPECT_FALSE(says(project, "excitation"));
}

TEST(TakenValues, SayWhereNothingIsKnownOfWhatShakesTheAeroplane) {
  SmallProject project = straight_cable();
  EXPECT_TRUE(says(project, "excitation is not stated"));
  project.project.excitation = Excitation{};
  EXPECT_FALSE(says(project, "excitation is not stated"));
  EXPECT_TRUE(says(project, "excitation.cruise_rpm is not stated"));
  project.project.excitation->cruise = SpeedBand{2200, 2400};
  EXPECT_FALSE(says(project, "cruise_rpm is not stated"));
}

TEST(TakenValues, NameTheCablesOfAnAirframeThatIsTakenAsRigid) {
  SmallProject project = straight_cable();
  EXPECT_TRUE(says(project, "airframe_stiffness is not stated for cable"));
  project.project.routes[0].airframe_stiffness_lbf_per_in = 5000;
  EXPECT_FALSE(says(project, "airframe_stiffness"));
  project.project.routes[0].airframe_stiffness_lbf_per_in.reset();
  project.project.airframe_stiffness_lbf_per_in = 5000;
  EXPECT_FALSE(says(project, "airframe_stiffness"));
}

TEST(TakenValues, NameTheEndsOfCablesThatAnArmMaySwing) {
  SmallProject project = straight_cable();
  EXPECT_FALSE(says(project, "arm is not stated")) << "bulkheads do not move";
  project.project.nodes[1].kind = NodeKind::horn;
  EXPECT_TRUE(says(project,
                   "ends of cables whose arm is not stated: cable at b; they were taken "
                   "as fixed where they are drawn"));
  project.project.nodes[1].arm = Arm{};
  EXPECT_FALSE(says(project, "arm is not stated"));
  project.project.nodes[1].arm.reset();
  project.project.routes[0].travel = Travel{0, 0, {}};
  EXPECT_FALSE(says(project, "arm is not stated")) << "nor does a cable without travel";
}

TEST(TakenValues, NameTheHornsThatNoMovingPartIsDrawnOf) {
  SmallProject project = straight_cable();
  const std::string undrawn =
      "horns and pedals that are not drawn as moving parts: b; lines were "
      "not held against their arms";
  EXPECT_FALSE(says(project, undrawn)) << "a bulkhead has no arm";
  project.project.nodes[1].kind = NodeKind::horn;
  EXPECT_TRUE(says(project, undrawn));
  const Vec3 pin = project.project.nodes[1].at;
  project.project.structure.movers.push_back(
      {"crank", pin + Vec3{0, 0, -3}, {0, 1, 0}, {pin + Vec3{0, 0, -3}, pin}, 0.3, -30, 30, {}});
  EXPECT_FALSE(says(project, undrawn));
  project.project.structure.movers.clear();
  project.project.routes[0].travel = Travel{0, 0, {}};
  EXPECT_FALSE(says(project, undrawn)) << "nor does a cable without travel";
}

TEST(TakenValues, NameTheEndsOfCablesOnWhatNoCableMoves) {
  SmallProject project = straight_cable();
  const std::string on_others = "ends of cables on nodes that are no horn or pedal: cable at a";
  EXPECT_TRUE(says(project, on_others));
  project.project.nodes[0].fixed = true;
  EXPECT_FALSE(says(project, on_others));
  project.project.nodes[0].fixed.reset();
  project.project.routes[0].travel = Travel{0, 0, {}};
  EXPECT_FALSE(says(project, on_others)) << "nor does a cable without travel";
}

TEST(TakenValues, NameTheBundlesThatDoNotSayHowTheyAreTiedAndEnd) {
  SmallProject project = straight_cable();
  EXPECT_FALSE(says(project, "bundles that do not state"));
  project.project.routes[0].system = SystemKind::wire;
  EXPECT_TRUE(says(project, "bundles that do not state `tied`: cable;"));
  EXPECT_TRUE(
      says(project, "ends of bundles that do not state `connector`: cable at a, cable at b;"));
  project.project.routes[0].tied = true;
  project.project.nodes[0].connector = true;
  EXPECT_FALSE(says(project, "`tied`"));
  EXPECT_TRUE(says(project, "`connector`: cable at b;"));
}

TEST(TakenValues, NameThePulleysThatDoNotSayHowWideTheyAre) {
  SmallProject project = straight_cable();
  RoutePoint pulley = held({20, 0, 0}, HoldKind::pulley);
  pulley.outside_in = 2.9;
  project.project.routes[0].points = {pulley};
  EXPECT_TRUE(says(project,
                   "pulleys that do not state their outside and width: cable at its point "
                   "1"));
  project.project.routes[0].points[0].width_in = 0.3;
  EXPECT_FALSE(says(project, "outside and width"));
}

TEST(TakenValues, NameTheGuidesThatStateNoBoreInWallsAsInFrames) {
  SmallProject project = straight_cable();
  RoutePoint guide = held({20, 0, 0}, HoldKind::fairlead);
  guide.through = "panel-hole";
  project.project.routes[0].points = {guide};
  Panel panel;
  panel.name = "panel";
  panel.holes.push_back({"panel-hole", {20, 0, 0}, 0.5, EdgeGuard::bare, std::nullopt, {}});
  project.project.structure.panels.push_back(panel);
  EXPECT_TRUE(says(project, "guides that state no bore: cable at its point 1"));
  WallHole& hole = project.project.structure.panels[0].holes[0];
  hole.edge = EdgeGuard::bushing;
  EXPECT_FALSE(says(project, "guides that state no bore"));
  EXPECT_TRUE(says(project, "grommets and bushings of holes that state no bore: panel-hole"));
  hole.bore_in = 0.25;
  EXPECT_FALSE(says(project, "bore"));
  hole.edge = EdgeGuard::grommet;
  EXPECT_TRUE(says(project,
                   "fairleads that state no bore, in a hole with a grommet: cable at its point 1; "
                   "the grommet's bore was taken as theirs"));
  project.project.routes[0].points[0].bore_in = 0.2;
  EXPECT_FALSE(says(project, "bore"));
}

TEST(TakenValues, NameTheProjectsOwnLinesThatStateNoTolerance) {
  SmallProject project = straight_cable();
  Line& line = project.line("cable-7x19-1/8-steel");
  line.where = SourceLocation{"project.yaml", 3, 5};
  line.plus_tolerance_in.reset();
  EXPECT_TRUE(says(project, "lines that state no plus_tolerance: cable-7x19-1/8-steel"));
  line.plus_tolerance_in = 0;
  EXPECT_FALSE(says(project, "plus_tolerance")) << "none is an answer";
}

TEST(TakenValues, SayThatAValveInALineIsTakenToBeOpen) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("cock", NodeKind::valve, {10, 0, 0})
      .node("altimeter", NodeKind::instrument, {20, 0, 0});
  project.route("to", "tube-nylon-1/4", "port", "cock");
  EXPECT_FALSE(says(project, "valves that lines")) << "it shuts the line that ends there";
  project.route("on", "tube-nylon-1/4", "cock", "altimeter");
  EXPECT_TRUE(says(project,
                   "valves that lines of one system go through: cock; they were taken to be open"));
  project.project.routes[1].system_name = "static: alternate";
  EXPECT_FALSE(says(project, "valves that lines")) << "between two systems it is taken to be shut";
}

TEST(TakenValues, CountInstrumentsPortsDrainsAndValvesThatAreDrawnAsPoints) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("cock", NodeKind::valve, {10, 0, 0})
      .node("drain", NodeKind::drain, {20, 0, 0})
      .node("altimeter", NodeKind::instrument, {30, 0, 0})
      .node("lamp", NodeKind::instrument, {40, 0, 0});
  project.route("to", "tube-nylon-1/4", "port", "cock");
  project.route("on", "tube-nylon-1/4", "drain", "altimeter");
  const std::string words = "ports, probes, instruments, drains and valves that state no size: ";
  EXPECT_TRUE(says(project, words + "4;")) << "no line of air ends at the lamp";
  project.project.nodes[3].body = FittingBody{0.5, 0.2};
  EXPECT_TRUE(says(project, words + "3;"));
}

TEST(TakenValues, NameTheSectorsWhoseDiscsNoLineIsHeldAgainst) {
  SmallProject project = straight_cable();
  EXPECT_FALSE(says(project, "sectors"));
  project.project.nodes[1].sector = Sector{4, 60};
  EXPECT_TRUE(says(project, "sectors and drums: b; lines were not held against their discs"));
}

TEST(TakenValues, AreSilentOfAProjectWithNothingInIt) {
  EXPECT_TRUE(taken_values(SmallProject().project).empty());
}

TEST(TakenValues, AskWhetherASweepIsMeantInDegrees) {
  SmallProject project = straight_cable();
  Mover mover;
  mover.name = "rudder-horn";
  mover.sweep_from_deg = -0.44;
  mover.sweep_to_deg = 0.44;
  project.project.structure.movers.push_back(mover);
  EXPECT_TRUE(says(project,
                   "movers that sweep less than 4 degrees in all: rudder-horn; that was taken as "
                   "it stands, in degrees"));
  project.project.structure.movers[0].sweep_from_deg = -3.53;
  EXPECT_TRUE(says(project, "movers that sweep less"));
  project.project.structure.movers[0].sweep_from_deg = -3.56;
  EXPECT_FALSE(says(project, "movers that sweep less"));
}

}  // namespace
}  // namespace linewright
