#include "planning/air_system.hpp"

#include <gtest/gtest.h>

#include <numbers>

#include "planning/air_rig.hpp"
#include "planning/cutlist.hpp"

namespace linewright {
namespace {

using Names = std::vector<std::string>;

/// A bore of 0.18 in holds this much an inch of length.
constexpr double bore_in3_per_in = std::numbers::pi * 0.18 * 0.18 / 4;

TEST(AirSystem, HoldsItsBoresAndItsNodes) {
  const AirRig rig(two_ports());
  EXPECT_NEAR(rig.system().volume_in3(), 120 * bore_in3_per_in + 10.02, 1e-9);
}

TEST(AirSystem, HoldsWhatTheCutListSays) {
  const AirRig rig(two_ports());
  EXPECT_DOUBLE_EQ(rig.system().volume_in3(), cut_list(rig.prepared()).systems.at(0).volume_in3);
}

TEST(AirSystem, CountsALoopOnce) {
  TubeProject tubes;
  tubes.node("a", {0, 0, 0}, NodeKind::tee, 1.0).node("b", {30, 0, 0}, NodeKind::tee, 2.0);
  tubes.route("short", "a", "b");
  tubes.route("long", "a", "b", {{{15, 20, 0}, 0}});
  // Legs of 15 and 20 in make 25 in, twice.
  const AirRig rig(std::move(tubes));
  EXPECT_NEAR(rig.system().volume_in3(), 80 * bore_in3_per_in + 3, 1e-9);
}

TEST(AirSystem, NamesWhatItCountsAsNothing) {
  TubeProject tubes = two_ports();
  tubes.project.nodes[2].volume_in3.reset();
  tubes.project.nodes[3].volume_in3.reset();
  const AirRig rig(std::move(tubes));
  EXPECT_EQ(rig.system().nodes_without_volume, (Names{"tee", "altimeter"}));
  EXPECT_NEAR(rig.system().volume_in3(), 120 * bore_in3_per_in, 1e-9);
}

TEST(AirSystem, ComesInPiecesWhereNoNodeJoinsIt) {
  TubeProject tubes = two_ports();
  tubes.node("far-port", {0, -10, 50}, NodeKind::static_port)
      .node("far-altimeter", {0, 10, 50}, NodeKind::instrument, 5.0);
  tubes.route("apart", "far-port", "far-altimeter");
  const AirRig rig(std::move(tubes));
  EXPECT_EQ(rig.pieces().size(), 2u);
}

TEST(AirSystem, SaysWhichOtherAirItMeets) {
  TubeProject tubes = two_ports();
  tubes.node("cabin", {50, 0, 0}, NodeKind::end);
  tubes.route("spare", "tee", "cabin").system_name = "static: alternate";
  const AirRig rig(std::move(tubes));
  EXPECT_EQ(rig.system().joined_systems, Names{"static: alternate at tee"});
  EXPECT_EQ(rig.system("static: alternate").joined_systems, Names{"static at tee"});
}

TEST(AirSystem, IsNoneForCablesAndVents) {
  TubeProject tubes = two_ports();
  Route& vent = tubes.project.routes.back();
  vent.system = SystemKind::vent;
  vent.system_name = "vent";
  const AirRig rig(std::move(tubes));
  EXPECT_TRUE(rig.pieces("vent").empty());
  EXPECT_TRUE(rig.pieces("rudder").empty());
}

Project with_systems(const Names& names) {
  Project project;
  for (const std::string& name : names) {
    Route route;
    route.system_name = name;
    project.routes.push_back(route);
  }
  return project;
}

TEST(SystemsMeant, AreTheOneSoCalledInFull) {
  const Project project = with_systems({"static", "static: alternate"});
  EXPECT_EQ(systems_meant(project, "static"), Names{"static"});
  EXPECT_EQ(systems_meant(project, "static: alternate"), Names{"static: alternate"});
  EXPECT_EQ(systems_meant(project, "alternate"), Names{"static: alternate"});
}

TEST(SystemsMeant, AreAllOfTheKindWhereNoneIsSoCalled) {
  const Project project = with_systems({"static: main", "pitot", "static: alternate"});
  EXPECT_EQ(systems_meant(project, "static"), (Names{"static: main", "static: alternate"}));
  EXPECT_EQ(systems_meant(project, "pitot"), Names{"pitot"});
  EXPECT_TRUE(systems_meant(project, "statc").empty());
  EXPECT_TRUE(systems_meant(project, "").empty());
}

}  // namespace
}  // namespace linewright
