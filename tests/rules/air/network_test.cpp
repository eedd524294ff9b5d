// How air lines are joined: openings and mixed pressures, by 14 CFR 23.1323 and 23.1325 [verified];
// a port on each side, a drain and an instrument for each system [common practice, no source].

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "rules/small_project.hpp"

namespace linewright {
namespace {

/// Two ports join at a tee; the line forward feeds an altimeter and has a drain.
SmallProject sound_static_system() {
  SmallProject project;
  project.node("port-left", NodeKind::static_port, {230, -10, 12})
      .node("port-right", NodeKind::static_port, {230, 10, 12})
      .node("tee-ports", NodeKind::tee, {220, 0, 16})
      .node("tee-drain", NodeKind::tee, {120, 0, 6})
      .node("drain", NodeKind::drain, {120, 0, 3})
      .node("altimeter", NodeKind::instrument, {60, 4, 28});
  project.route("left", "tube-nylon-1/4", "port-left", "tee-ports");
  project.route("right", "tube-nylon-1/4", "port-right", "tee-ports");
  project.route("main", "tube-nylon-1/4", "tee-ports", "tee-drain");
  project.route("down", "tube-nylon-1/4", "tee-drain", "drain");
  project.route("forward", "tube-nylon-1/4", "tee-drain", "altimeter");
  return project;
}

/// A probe, a drain and an airspeed indicator on one tee.
SmallProject sound_pitot_system() {
  SmallProject project;
  project.node("probe", NodeKind::pitot_probe, {80, -90, 8})
      .node("tee", NodeKind::tee, {80, -20, 8})
      .node("drain", NodeKind::drain, {80, -20, 4})
      .node("airspeed", NodeKind::instrument, {60, -4, 28});
  project.route("wing", "tube-aluminium-1/4", "probe", "tee");
  project.route("down", "tube-aluminium-1/4", "tee", "drain");
  project.route("cabin", "tube-aluminium-1/4", "tee", "airspeed");
  for (Route& route : project.project.routes) {
    route.system = SystemKind::pitot;
    route.system_name = "pitot";
  }
  return project;
}

std::vector<Judgement> judged(const SmallProject& project) {
  return project.judged_by("network");
}

/// The one judgement that did not pass.
Judgement fault(const SmallProject& project) {
  return sole(not_passed(judged(project)));
}

Route& route_of(SmallProject& project, std::string_view name) {
  for (Route& route : project.project.routes)
    if (route.name == name) return route;
  throw std::invalid_argument("no such route");
}

void remove_route(SmallProject& project, std::string_view name) {
  std::erase_if(project.project.routes, [&](const Route& route) { return route.name == name; });
}

void change_kind(SmallProject& project, std::string_view node, NodeKind kind) {
  for (Node& each : project.project.nodes)
    if (each.name == node) each.kind = kind;
}

/// Of one opening more than a tee.
void make_cross(SmallProject& project, std::string_view node) {
  for (Node& each : project.project.nodes)
    if (each.name == node) each.ports.assign(4, {"port", each.at, {1, 0, 0}, 0, {}});
}

void call_system(Route& route, SystemKind kind, const std::string& name) {
  route.system = kind;
  route.system_name = name;
}

/// Of those judged at this node, the one whose message says so.
bool any_says(const std::vector<Judgement>& judgements, std::string_view words) {
  return std::any_of(judgements.begin(), judgements.end(),
                     [&](const Judgement& each) { return contains(each.message, words); });
}

TEST(Network, SoundSystemsPassEverywhere) {
  for (const SmallProject& project : {sound_static_system(), sound_pitot_system()}) {
    const std::vector<Judgement> judgements = judged(project);
    EXPECT_TRUE(not_passed(judgements).empty());
    EXPECT_TRUE(any_says(judgements, "no opening of"));
    EXPECT_TRUE(any_says(judgements, "one system meets at"));
    EXPECT_TRUE(any_says(judgements, "reaches the air outside"));
    EXPECT_TRUE(any_says(judgements, "feeds an instrument"));
    EXPECT_TRUE(any_says(judgements, "has a drain"));
    for (const Judgement& each : judgements) EXPECT_EQ(each.mend, "") << each.message;
  }
}

TEST(Network, LineThatEndsOpenFailsAtItsEnd) {
  SmallProject project = sound_static_system();
  change_kind(project, "drain", NodeKind::end);
  const std::vector<Judgement> broken = not_passed(judged(project));
  ASSERT_EQ(broken.size(), 2u);
  const Judgement& judgement = broken[0];
  EXPECT_EQ(judgement.rule, "network");
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.route, "down");
  EXPECT_EQ(judgement.with, "drain");
  EXPECT_EQ(judgement.message, "the line ends open at drain");
  EXPECT_EQ(judgement.mend, "lead the line to a port, instrument, drain or cap");
  EXPECT_EQ(judgement.source, "14 CFR 23.1325 (verified)");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 1);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 0);
  EXPECT_EQ(judgement.unit, Unit::none);
  EXPECT_DOUBLE_EQ(judgement.distance_in.value(), 3);
  EXPECT_EQ(judgement.at.value(), (Vec3{120, 0, 3}));
  // The `to` of the fourth route.
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_route(3) + 2);
  EXPECT_EQ(broken[1].message, "system 'static' has no drain");
}

TEST(Network, CapClosesALine) {
  SmallProject project = sound_static_system();
  project.node("cap", NodeKind::cap, {50, 4, 28});
  project.node("tee-panel", NodeKind::tee, {55, 4, 28});
  route_of(project, "forward").to = "tee-panel";
  project.route("spare", "tube-nylon-1/4", "tee-panel", "cap");
  project.route("to-altimeter", "tube-nylon-1/4", "tee-panel", "altimeter");
  EXPECT_TRUE(not_passed(judged(project)).empty());
}

TEST(Network, UnionOrBulkheadWithOneLineEndsOpen) {
  for (const NodeKind kind : {NodeKind::union_fitting, NodeKind::bulkhead}) {
    SmallProject project = sound_static_system();
    project.node("joint", kind, {50, 0, 6});
    project.node("tee-spare", NodeKind::tee, {100, 0, 6});
    route_of(project, "forward").from = "tee-spare";
    project.route("on", "tube-nylon-1/4", "tee-drain", "tee-spare");
    project.route("spare", "tube-nylon-1/4", "tee-spare", "joint");
    EXPECT_EQ(fault(project).message, "the line ends open at joint");
  }
}

TEST(Network, UnionThatJoinsTwoLinesIsClosed) {
  SmallProject project = sound_static_system();
  project.node("joint", NodeKind::union_fitting, {90, 0, 6});
  route_of(project, "forward").from = "joint";
  project.route("on", "tube-nylon-1/4", "tee-drain", "joint");
  EXPECT_TRUE(not_passed(judged(project)).empty());
}

/// The line forward is cut in two at `middle`.
SmallProject fed_through(NodeKind middle) {
  SmallProject project = sound_static_system();
  project.node("middle", middle, {90, 0, 12});
  route_of(project, "forward").to = "middle";
  project.route("on", "tube-nylon-1/4", "middle", "altimeter");
  return project;
}

TEST(Network, NoAirGoesThroughACapABareEndAHornOrAPedal) {
  for (const auto& [kind, words] :
       {std::pair{NodeKind::cap, "2 lines end at middle: a cap closes one line, and joins none"},
        std::pair{NodeKind::end, "2 lines end open at middle: a bare end does not join them"},
        std::pair{NodeKind::horn, "an air line ends at middle, which moves a control"},
        std::pair{NodeKind::pedal, "an air line ends at middle, which moves a control"}}) {
    SCOPED_TRACE(words);
    const std::vector<Judgement> broken = not_passed(judged(fed_through(kind)));
    const auto at_middle = std::find_if(
        broken.begin(), broken.end(),
        [&, said = std::string(words)](const Judgement& each) { return each.message == said; });
    ASSERT_NE(at_middle, broken.end());
    EXPECT_EQ(at_middle->verdict, Verdict::fail);
    EXPECT_EQ(at_middle->with, "middle");
    EXPECT_FALSE(at_middle->mend.empty());
    EXPECT_TRUE(any_says(broken, "system 'static' feeds no instrument"));
    EXPECT_TRUE(any_says(broken, "system 'static' reaches no static port"));
  }
}

TEST(Network, AirGoesThroughAUnionABulkheadUnionAndAValve) {
  for (const NodeKind kind : {NodeKind::union_fitting, NodeKind::bulkhead, NodeKind::valve})
    EXPECT_TRUE(not_passed(judged(fed_through(kind))).empty());
}

TEST(Network, AVentThatEndsAtAHornFailsToo) {
  SmallProject project;
  project.node("tank", NodeKind::bulkhead, {0, 0, 0}).node("horn", NodeKind::horn, {10, 0, -5});
  call_system(project.route("vent-line", "tube-aluminium-1/4", "tank", "horn"), SystemKind::vent,
              "vent");
  EXPECT_TRUE(any_says(not_passed(judged(project)), "an air line ends at horn"));
}

TEST(Network, MoreLinesThanAUnionOrATeeHasOpeningsFail) {
  SmallProject third = fed_through(NodeKind::union_fitting);
  third.node("spare", NodeKind::cap, {90, 0, 2});
  third.route("third", "tube-nylon-1/4", "middle", "spare");
  EXPECT_EQ(fault(third).message, "3 lines end at middle: a union has 2 openings");
  EXPECT_EQ(fault(third).verdict, Verdict::fail);
  change_kind(third, "middle", NodeKind::tee);
  EXPECT_TRUE(not_passed(judged(third)).empty());
  third.node("spare-2", NodeKind::cap, {92, 0, 2});
  third.route("fourth", "tube-nylon-1/4", "middle", "spare-2");
  EXPECT_EQ(fault(third).message, "4 lines end at middle: a tee has 3 openings");
  make_cross(third, "middle");
  EXPECT_TRUE(not_passed(judged(third)).empty()) << "a cross, by its ports";
}

TEST(Network, TwoLinesAtOneConnectionAreAskedAbout) {
  for (const NodeKind kind : {NodeKind::instrument, NodeKind::static_port}) {
    const Judgement judgement = fault(fed_through(kind));
    EXPECT_EQ(judgement.verdict, Verdict::warn);
    EXPECT_EQ(judgement.message, "2 lines end at middle: by what do they meet there?");
  }
  EXPECT_TRUE(not_passed(judged(fed_through(NodeKind::drain))).empty()) << "a sump has several";
}

TEST(Network, AWireToAnInstrumentClosesNoOpeningAndJoinsNoPressure) {
  SmallProject project = sound_static_system();
  project.node("lamp", NodeKind::end, {60, 8, 28});
  project.route("light", "wire-1/4", "altimeter", "lamp");
  EXPECT_TRUE(not_passed(judged(project)).empty());
  remove_route(project, "forward");
  project.node("cap", NodeKind::cap, {110, 0, 6});
  project.route("closed", "tube-nylon-1/4", "tee-drain", "cap");
  EXPECT_EQ(fault(project).message, "system 'static' feeds no instrument");
}

TEST(Network, TeeWithTwoLinesHasAnOpeningLeftOpen) {
  SmallProject project = sound_static_system();
  project.node("tee-spare", NodeKind::tee, {90, 0, 6});
  route_of(project, "forward").from = "tee-spare";
  project.route("on", "tube-nylon-1/4", "tee-drain", "tee-spare");
  const Judgement judgement = fault(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "tee-spare");
  EXPECT_EQ(judgement.message, "tee tee-spare joins 2 lines: an opening is left open");
  EXPECT_EQ(judgement.mend, "join the third line, or use a union");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 2);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 3);
}

TEST(Network, TeeWithOneLineIsSaidInTheSingular) {
  SmallProject project = sound_static_system();
  make_cross(project, "tee-drain");
  project.node("tee-spare", NodeKind::tee, {90, 0, 6});
  project.route("spare", "tube-nylon-1/4", "tee-drain", "tee-spare");
  EXPECT_EQ(fault(project).message, "tee tee-spare joins 1 line: an opening is left open");
}

TEST(Network, StaticLineJoinedToAPitotLineFails) {
  SmallProject project = sound_static_system();
  project.node("probe", NodeKind::pitot_probe, {80, -90, 8});
  project.node("airspeed", NodeKind::instrument, {60, -4, 28});
  project.node("tee-pitot", NodeKind::tee, {80, -20, 8});
  project.node("drain-pitot", NodeKind::drain, {80, -20, 4});
  call_system(project.route("wing", "tube-nylon-1/4", "probe", "tee-pitot"), SystemKind::pitot,
              "pitot");
  call_system(project.route("pitot-down", "tube-nylon-1/4", "tee-pitot", "drain-pitot"),
              SystemKind::pitot, "pitot");
  call_system(project.route("cabin", "tube-nylon-1/4", "tee-pitot", "airspeed"), SystemKind::pitot,
              "pitot");
  EXPECT_TRUE(not_passed(judged(project)).empty());
  make_cross(project, "tee-drain");
  make_cross(project, "tee-pitot");
  call_system(project.route("wrong", "tube-nylon-1/4", "tee-drain", "tee-pitot"),
              SystemKind::static_air, "static");
  const Judgement judgement = fault(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.with, "tee-pitot");
  EXPECT_EQ(judgement.route, "wing");
  EXPECT_EQ(judgement.message, "system 'pitot' is joined to system 'static' at tee-pitot");
  EXPECT_EQ(judgement.mend, "lead one of the two lines to a node of its own system");
  EXPECT_TRUE(contains(judgement.source, "14 CFR 23.1323 and 23.1325"));
}

TEST(Network, InstrumentOnTwoPressuresIsToldToHaveTwoNodes) {
  SmallProject project = sound_static_system();
  project.node("probe", NodeKind::pitot_probe, {80, -90, 8});
  call_system(project.route("wing", "tube-nylon-1/4", "probe", "altimeter"), SystemKind::pitot,
              "pitot");
  const std::vector<Judgement> broken = not_passed(judged(project));
  ASSERT_FALSE(broken.empty());
  EXPECT_EQ(broken[0].verdict, Verdict::fail);
  EXPECT_EQ(broken[0].message, "system 'static' is joined to system 'pitot' at altimeter");
  EXPECT_EQ(broken[0].mend,
            "state the instrument's `ports`, or give it one node for each of its connections");
}

// The case of an airspeed indicator hears the static pressure, and its capsule the pitot.
TEST(Network, AnInstrumentWithPortsKeepsStaticAndPitotApart) {
  SmallProject project = sound_static_system();
  project.node("probe", NodeKind::pitot_probe, {80, -90, 8});
  call_system(project.route("wing", "tube-nylon-1/4", "probe", "altimeter"), SystemKind::pitot,
              "pitot");
  for (Node& each : project.project.nodes)
    if (each.name == "altimeter")
      each.ports = {{"static", each.at, {1, 0, 0}, 0, {}}, {"pitot", each.at, {0, 1, 0}, 0, {}}};
  EXPECT_FALSE(any_says(not_passed(judged(project)), "is joined to system"));
  // Two of one pressure would meet in its case.
  call_system(route_of(project, "wing"), SystemKind::static_air, "static: alternate");
  EXPECT_TRUE(any_says(not_passed(judged(project)), "is joined to system"));
}

TEST(Network, TwoSystemsOfOneKindDoNotMix) {
  SmallProject project = sound_static_system();
  route_of(project, "right").system_name = "static: alternate";
  EXPECT_TRUE(any_says(not_passed(judged(project)),
                       "system 'static' is joined to system 'static: alternate' at tee-ports"));
}

/// Two static systems, each with two ports, a drain and an altimeter, that meet at `middle`.
SmallProject two_static_systems(NodeKind middle) {
  SmallProject project = sound_static_system();
  project.node("port-left-2", NodeKind::static_port, {200, -10, 12})
      .node("port-right-2", NodeKind::static_port, {200, 10, 12})
      .node("tee-ports-2", NodeKind::tee, {190, 0, 16})
      .node("tee-drain-2", NodeKind::tee, {130, 0, 6})
      .node("tee-valve", NodeKind::tee, {70, 4, 20})
      .node("tee-valve-2", NodeKind::tee, {70, -4, 20})
      .node("drain-2", NodeKind::drain, {130, 0, 3})
      .node("altimeter-2", NodeKind::instrument, {60, -4, 28})
      .node("middle", middle, {65, 0, 22});
  std::erase_if(project.project.routes, [](const Route& route) { return route.name == "forward"; });
  project.route("forward", "tube-nylon-1/4", "tee-drain", "tee-valve");
  project.route("gauge", "tube-nylon-1/4", "tee-valve", "altimeter");
  project.route("across", "tube-nylon-1/4", "tee-valve", "middle");
  const std::size_t first_of_second = project.project.routes.size();
  project.route("left-2", "tube-nylon-1/4", "port-left-2", "tee-ports-2");
  project.route("right-2", "tube-nylon-1/4", "port-right-2", "tee-ports-2");
  project.route("main-2", "tube-nylon-1/4", "tee-ports-2", "tee-drain-2");
  project.route("down-2", "tube-nylon-1/4", "tee-drain-2", "drain-2");
  project.route("forward-2", "tube-nylon-1/4", "tee-drain-2", "tee-valve-2");
  project.route("gauge-2", "tube-nylon-1/4", "tee-valve-2", "altimeter-2");
  project.route("across-2", "tube-nylon-1/4", "tee-valve-2", "middle");
  for (std::size_t i = first_of_second; i < project.project.routes.size(); ++i)
    project.project.routes[i].system_name = "static: alternate";
  return project;
}

// An alternate static source comes in by a valve [common practice, no source].
TEST(Network, AValveMayJoinTwoSystemsOfOnePressure) {
  EXPECT_TRUE(not_passed(judged(two_static_systems(NodeKind::valve))).empty());
  const Judgement joint = fault(two_static_systems(NodeKind::union_fitting));
  EXPECT_EQ(joint.verdict, Verdict::fail);
  EXPECT_EQ(joint.with, "middle");
}

TEST(Network, AValveDoesNotJoinTwoPressures) {
  SmallProject project = two_static_systems(NodeKind::valve);
  for (Route& route : project.project.routes) {
    if (route.name != "across-2") continue;
    route.system = SystemKind::pitot;
    route.system_name = "pitot";
  }
  const std::vector<Judgement> faults = not_passed(judged(project));
  EXPECT_TRUE(std::any_of(faults.begin(), faults.end(), [](const Judgement& each) {
    return each.verdict == Verdict::fail && each.with == "middle";
  }));
}

TEST(Network, AValveShutsALineThatEndsAtIt) {
  SmallProject project = two_static_systems(NodeKind::valve);
  project.node("shut", NodeKind::valve, {66, 2, 22});
  for (Route& route : project.project.routes)
    if (route.name == "across") route.to = "shut";
  EXPECT_TRUE(not_passed(judged(project)).empty());
}

TEST(Network, SystemThatReachesNoPortFails) {
  SmallProject project = sound_static_system();
  change_kind(project, "port-left", NodeKind::drain);
  change_kind(project, "port-right", NodeKind::drain);
  const Judgement judgement = fault(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.route, "left");
  EXPECT_EQ(judgement.message, "system 'static' reaches no static port");
  EXPECT_EQ(judgement.mend, "join it to a static port");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 0);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 1);
  EXPECT_EQ(judgement.location.line, SmallProject::line_of_route(0));
}

TEST(Network, SystemThatReachesNoProbeFails) {
  SmallProject project = sound_pitot_system();
  change_kind(project, "probe", NodeKind::drain);
  const Judgement judgement = fault(project);
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_EQ(judgement.message, "system 'pitot' reaches no probe");
  EXPECT_EQ(judgement.mend, "join it to its probe");
}

TEST(Network, SingleStaticPortWarnsAndTwoPass) {
  SmallProject project = sound_static_system();
  change_kind(project, "port-right", NodeKind::cap);
  const Judgement judgement = fault(project);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.message, "system 'static' has a single static port");
  EXPECT_EQ(judgement.mend, "add a port on the other side and join the two");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 1);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 2);
  EXPECT_TRUE(contains(judgement.source, "(common practice, no source)"));
}

TEST(Network, TwoStaticPortsOnOneSideWarn) {
  SmallProject project = sound_static_system();
  for (Node& node : project.project.nodes)
    if (node.name == "port-right") node.at = {226, -10, 12};
  const Judgement judgement = fault(project);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.message, "system 'static' has its static ports on one side only");
  EXPECT_DOUBLE_EQ(judgement.value.value(), 1);
  EXPECT_DOUBLE_EQ(judgement.limit.value(), 2);
}

TEST(Network, InstrumentThatNoRouteEndsAtWarns) {
  SmallProject project = sound_static_system();
  project.node("climb-indicator", NodeKind::instrument, {60, 8, 28});
  const Judgement judgement = fault(project);
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  EXPECT_EQ(judgement.message, "no route ends at climb-indicator");
  EXPECT_EQ(judgement.with, "climb-indicator");
  EXPECT_TRUE(judgement.route.empty());
}

TEST(Network, HornOrPedalThatNoCableEndsAtWarns) {
  for (const NodeKind kind : {NodeKind::horn, NodeKind::pedal}) {
    SmallProject project = sound_static_system();
    project.node("rudder-horn", kind, {200, 0, 10});
    const Judgement judgement = fault(project);
    EXPECT_EQ(judgement.verdict, Verdict::warn);
    EXPECT_EQ(judgement.with, "rudder-horn");
    EXPECT_EQ(judgement.message, "no cable ends at rudder-horn");
    EXPECT_EQ(judgement.mend, "draw the cable to it, or remove the node");
  }
}

TEST(Network, WireToAHornIsNoCable) {
  SmallProject project = sound_static_system();
  project.node("horn", NodeKind::horn, {200, 0, 10}).node("end", NodeKind::end, {150, 0, 10});
  project.route("bonding", "wire-1/4", "end", "horn");
  EXPECT_EQ(fault(project).message, "no cable ends at horn");
}

TEST(Network, OpenEndThatNoRouteEndsAtIsNotItsConcern) {
  SmallProject project = sound_static_system();
  project.node("spare", NodeKind::end, {60, 8, 28});
  EXPECT_TRUE(not_passed(judged(project)).empty());
}

TEST(Network, OneProbeIsEnough) {
  EXPECT_FALSE(any_says(judged(sound_pitot_system()), "port"));
}

TEST(Network, SystemWithoutADrainWarns) {
  for (SmallProject project : {sound_static_system(), sound_pitot_system()}) {
    change_kind(project, "drain", NodeKind::cap);
    const Judgement judgement = fault(project);
    EXPECT_EQ(judgement.verdict, Verdict::warn);
    EXPECT_TRUE(contains(judgement.message, "has no drain")) << judgement.message;
    EXPECT_TRUE(contains(judgement.mend, "put a drain at each low point")) << judgement.mend;
  }
}

TEST(Network, SystemThatFeedsNothingWarns) {
  for (const auto& [project, instrument] :
       {std::pair{sound_static_system(), "altimeter"}, {sound_pitot_system(), "airspeed"}}) {
    SmallProject changed = project;
    change_kind(changed, instrument, NodeKind::cap);
    const Judgement judgement = fault(changed);
    EXPECT_EQ(judgement.verdict, Verdict::warn);
    EXPECT_TRUE(contains(judgement.message, "feeds no instrument")) << judgement.message;
    EXPECT_EQ(judgement.mend, "lead it to an instrument");
  }
}

TEST(Network, PartsOfASystemThatDoNotMeetAreJudgedApart) {
  SmallProject project = sound_static_system();
  remove_route(project, "main");
  // The ports feed nothing and the instrument hears nothing; both tees have lost a line.
  const std::vector<Judgement> broken = not_passed(judged(project));
  EXPECT_TRUE(any_says(broken, "reaches no static port"));
  EXPECT_TRUE(any_says(broken, "feeds no instrument"));
  EXPECT_TRUE(any_says(broken, "tee tee-ports joins 2 lines"));
  EXPECT_TRUE(any_says(broken, "tee tee-drain joins 2 lines"));
}

TEST(Network, ProbeOnAStaticSystemFails) {
  SmallProject project = sound_static_system();
  change_kind(project, "drain", NodeKind::pitot_probe);
  const std::vector<Judgement> broken = not_passed(judged(project));
  ASSERT_EQ(broken.size(), 2u);
  EXPECT_EQ(broken[0].message, "system 'static' has no drain");
  EXPECT_EQ(broken[1].verdict, Verdict::fail);
  EXPECT_EQ(broken[1].message, "a static system ends at a pitot probe");
  EXPECT_EQ(broken[1].mend, "lead the line to its own kind of opening");
  EXPECT_DOUBLE_EQ(broken[1].value.value(), 1);
  EXPECT_DOUBLE_EQ(broken[1].limit.value(), 0);
  EXPECT_EQ(broken[1].sense, LimitSense::at_most);
}

TEST(Network, StaticPortOnAPitotSystemFails) {
  SmallProject project = sound_pitot_system();
  change_kind(project, "drain", NodeKind::static_port);
  EXPECT_TRUE(any_says(not_passed(judged(project)), "a pitot system ends at a static port"));
}

TEST(Network, VentMayEndInTheOpen) {
  SmallProject project;
  project.node("tank", NodeKind::bulkhead, {0, 0, 0}).node("outside", NodeKind::end, {10, 0, -5});
  call_system(project.route("vent-line", "tube-aluminium-1/4", "tank", "outside"), SystemKind::vent,
              "vent");
  EXPECT_TRUE(not_passed(judged(project)).empty());
}

TEST(Network, VentJoinedToAPressureFails) {
  SmallProject project = sound_static_system();
  make_cross(project, "tee-drain");
  project.node("outside", NodeKind::end, {120, 0, -5});
  call_system(project.route("vent-line", "tube-nylon-1/4", "tee-drain", "outside"),
              SystemKind::vent, "vent");
  EXPECT_EQ(fault(project).message, "system 'static' is joined to system 'vent' at tee-drain");
}

TEST(Network, CablesAndWiresAreNotJudged) {
  SmallProject project;
  project.node("pedal", NodeKind::pedal, {0, 0, 0})
      .node("horn", NodeKind::horn, {200, 0, 0})
      .node("switch", NodeKind::end, {0, 5, 0})
      .node("lamp", NodeKind::end, {200, 5, 0});
  project.route("rudder", "cable-7x19-1/8-steel", "pedal", "horn");
  project.route("tail-wires", "wire-1/4", "switch", "lamp");
  EXPECT_TRUE(judged(project).empty());
}

}  // namespace
}  // namespace linewright
