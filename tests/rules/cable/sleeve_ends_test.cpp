// Sleeves that lie over what takes hold of a line's end: geometry. A swaged terminal is wider than
// one and a half of its cable's diameters [from memory: MS20667].

#include "rules/cable/sleeve_ends.hpp"

#include "rules/cable_project.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// Terminals take up 2 in of the cable at both ends, and the cable goes 1 in forward and 3 in aft;
/// a clamp holds the sleeve in its middle.
SmallProject with_terminals(double from_in, double to_in, bool is_clamped, double bore_in = 0.18) {
  std::vector<RoutePoint> points;
  if (is_clamped) points.push_back(clamped({(from_in + to_in) / 2, 0, 10}));
  SmallProject project = cable_project(points);
  Route& route = the_route(project);
  route.sleeves.push_back({from_in, to_in, bore_in, 0.25, {"routes.yaml", 108, 16}});
  route.ends.from = CableEnd{CableEndKind::swaged, 2, 1, {}};
  route.ends.to = CableEnd{CableEndKind::swaged, 2, 1, {}};
  set_travel(project, 1, 3);
  return project;
}

std::vector<Judgement> of_ends(const SmallProject& project) {
  std::vector<Judgement> all = project.judged_by("sleeve-cover");
  const std::string source = cite(sleeve_to_end);
  std::erase_if(all, [&](const Judgement& each) { return each.source != source; });
  return all;
}

TEST(SleeveAtAnEnd, OverATerminalFailsAtEitherEnd) {
  EXPECT_TRUE(of_ends(with_terminals(2, 12, false)).empty());
  const Judgement judgement = sole(of_ends(with_terminals(1.5, 12, false)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.5, 1e-9);
  EXPECT_EQ(judgement.message,
            "the sleeve lies over the end at pedal, which takes up 2.00 in of the cable");
  EXPECT_EQ(judgement.with, "pedal");
  expect_complete(judgement);
  EXPECT_TRUE(of_ends(with_terminals(88, 98, false)).empty());
  EXPECT_EQ(sole(of_ends(with_terminals(88, 98.5, false))).with, "horn");
}

// The pedal's end comes 3 in aft, the horn's 1 in forward.
TEST(SleeveAtAnEnd, HeldInTheWayOfATerminalFails) {
  EXPECT_TRUE(of_ends(with_terminals(5, 15, true)).empty());
  const Judgement judgement = sole(of_ends(with_terminals(4.5, 15, true)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.5, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "runs into the sleeve at full travel"))
      << judgement.message;
  EXPECT_TRUE(of_ends(with_terminals(85, 97, true)).empty());
  EXPECT_EQ(sole(of_ends(with_terminals(85, 97.5, true))).with, "horn");
}

TEST(SleeveAtAnEnd, HeldWhereTheTravelIsNotStatedIsUnknown) {
  SmallProject project = with_terminals(20, 30, true);
  the_route(project).travel.reset();
  const std::vector<Judgement> judgements = of_ends(project);
  ASSERT_EQ(judgements.size(), 2u);
  for (const Judgement& each : judgements) EXPECT_EQ(each.verdict, Verdict::unknown);
}

// One and a half diameters of a 1/8 in cable are 0.1875 in.
TEST(SleeveAtAnEnd, SoWideThatATerminalMayGoIntoItIsUnknown) {
  EXPECT_EQ(sole(of_ends(with_terminals(1, 12, false, 0.187))).verdict, Verdict::fail);
  EXPECT_EQ(sole(of_ends(with_terminals(1, 12, false, 0.188))).verdict, Verdict::unknown);
}

TEST(SleeveAtAnEnd, OfATerminalThatIsDrawnIsJudgedByItsSize) {
  SmallProject project = with_terminals(1, 12, false, 0.25);
  the_route(project).attached = {{"terminal", 1, 2, 0.22, {"routes.yaml", 109, 12}}};
  EXPECT_TRUE(of_ends(project).empty());
}

// 3 in of cable go round the thimble and back.
TEST(SleeveAtAnEnd, NearAThimbleIsUnknown) {
  SmallProject project = with_terminals(2.9, 12, false);
  the_route(project).ends.from = CableEnd{CableEndKind::thimble, 0, 3, {}};
  EXPECT_EQ(sole(of_ends(project)).verdict, Verdict::unknown);
  the_route(project).sleeves.front().from_in = 3;
  EXPECT_TRUE(of_ends(project).empty());
}

/// On a tube from a face at FS 100.7 to a mere end 20 in on: nuts of 0.65 in stand out 0.3 in.
std::vector<Judgement> on_tube(const std::string& from, const std::string& bore) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: u, kind: union, at: [100, 0, 10], fixed: true, fitting: mine, direction: [1, 0, "
      "0]}\n" +
      held_node("aft", "120.7, 0, 10");
  sections.routes =
      "  - {name: line, system: vent, line: tube-nylon-1/4, from: u, to: aft, from_port: a, "
      "sleeves: [{from: " +
      from + ", to: 10, bore: " + bore + ", outside: 0.8}]}\n";
  sections.rest =
      "fittings: [{name: mine, kind: union, tube: 1/4, take_up: [0.7], body_diameter: 0.65, nut: "
      "0.3, source: invented}]\n";
  std::vector<Judgement> all = judged(sections, "sleeve-cover");
  const std::string source = cite(sleeve_to_end);
  std::erase_if(all, [&](const Judgement& each) { return each.source != source; });
  return all;
}

TEST(SleeveAtAnEnd, OverANutFailsUnlessItGoesOverIt) {
  EXPECT_TRUE(on_tube("0.3", "0.27").empty());
  const Judgement judgement = only(on_tube("0.1", "0.27"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.2, 1e-9);
  EXPECT_TRUE(contains(judgement.message, "over the nut at u: that is 0.650 in across"))
      << judgement.message;
  EXPECT_TRUE(on_tube("0.1", "0.65").empty());
}

// An end that states nothing is a pin, which takes up no length.
TEST(SleeveAtAnEnd, HeldInTheWayOfAPinFails) {
  const auto with_pins = [](double from_in, double to_in) {
    SmallProject project = with_terminals(from_in, to_in, true);
    the_route(project).ends = {};
    return project;
  };
  EXPECT_TRUE(of_ends(with_pins(3, 15)).empty());
  const Judgement judgement = sole(of_ends(with_pins(2.5, 15)));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, -0.5, 1e-9);
  EXPECT_EQ(judgement.message, "the end at pedal runs into the sleeve at full travel");
  expect_complete(judgement);
  EXPECT_EQ(sole(of_ends(with_pins(85, 99.5))).with, "horn");
  EXPECT_EQ(of_ends(with_pins(0, 100)).size(), 2u) << "over all of the cable";
  // On a sector the cable winds up, and no pin comes.
  SmallProject on_sector = with_pins(2.5, 15);
  on_sector.project.nodes.front().sector = Sector{3, 90};
  EXPECT_TRUE(of_ends(on_sector).empty());
}

}  // namespace
}  // namespace linewright
