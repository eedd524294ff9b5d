// What a project says of its control cables' ends, turnbuckles, levers and airframe. What is
// refused is under fixtures/broken.

#include "input/control_cable_reader.hpp"

#include <gtest/gtest.h>

#include <utility>

#include "input/project_folder.hpp"

namespace linewright {
namespace {

Project loaded(const std::string& project_keys, const std::string& route_keys) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: cables\n" + project_keys +
                                   "nodes:\n"
                                   "  - {name: pedal, kind: pedal, at: [0, 0, 0]}\n"
                                   "  - {name: horn, kind: horn, at: [100, 0, 0]}\n"
                                   "routes:\n"
                                   "  - name: rudder\n"
                                   "    system: cable\n"
                                   "    control: rudder\n"
                                   "    line: cable-7x19-1/8-steel\n"
                                   "    from: pedal\n"
                                   "    to: horn\n" +
                                   route_keys);
  const LoadResult result = load_project(folder.path(), small_catalogue());
  EXPECT_EQ(shown(result.errors), "");
  return result.project.value_or(Project{});
}

TEST(ControlCableReader, ReadsASwagedEndAndAThimble) {
  const Project project = loaded("",
                                 "    ends:\n"
                                 "      from: {kind: swaged, takes_up: 50.8 mm, grip: 1}\n"
                                 "      to: {kind: thimble, allowance: 4.5 in}\n");
  const CableEnds& ends = project.routes.at(0).ends;
  ASSERT_TRUE(ends.from && ends.to);
  EXPECT_EQ(ends.from->kind, CableEndKind::swaged);
  EXPECT_DOUBLE_EQ(ends.from->takes_up_in, 2);
  EXPECT_EQ(ends.from->inside_in, 1);
  EXPECT_EQ(ends.from->where.line, 14);
  EXPECT_EQ(ends.to->kind, CableEndKind::thimble);
  EXPECT_EQ(ends.to->takes_up_in, 0);
  EXPECT_EQ(ends.to->inside_in, 4.5);
}

TEST(ControlCableReader, ReadsATurnbucklesAdjustmentAndEnds) {
  const Project project = loaded("",
                                 "    attached:\n"
                                 "      - {kind: turnbuckle, at: 50, length: 4.5, diameter: 0.44,\n"
                                 "         adjustment: {shortest: 4, longest: 5.5},\n"
                                 "         ends: {to: {kind: swaged, takes_up: 0, grip: 1.25}}}\n"
                                 "      - {kind: terminal, at: 1, length: 2, diameter: 0.3}\n");
  const Attachment& turnbuckle = project.routes.at(0).attached.at(0);
  EXPECT_TRUE(turnbuckle.is_turnbuckle());
  ASSERT_TRUE(turnbuckle.adjustment.has_value());
  EXPECT_EQ(turnbuckle.adjustment->middle_in(), 4.75);
  EXPECT_EQ(turnbuckle.adjustment->each_way_in(), 0.75);
  EXPECT_FALSE(turnbuckle.ends.from.has_value());
  EXPECT_EQ(turnbuckle.ends.to->inside_in, 1.25);
  EXPECT_FALSE(project.routes.at(0).attached.at(1).is_turnbuckle());
}

TEST(ControlCableReader, TakesATurnbuckleDrawnAtTheEndOfItsAdjustment) {
  for (const auto& [text, length_in] : {std::pair{"4", 4.0}, {"5.5", 5.5}}) {
    const Project project =
        loaded("", "    attached: [{kind: turnbuckle, at: 50, length: " + std::string(text) +
                       ", diameter: 0.44, adjustment: {shortest: 4, longest: 5.5}}]\n");
    EXPECT_EQ(project.routes.at(0).attached.at(0).length_in, length_in);
  }
}

TEST(ControlCableReader, ReadsTheLeverAndThePilotsForce) {
  const Project project = loaded("", "    lever_ratio: 1.4\n    pilot_force: 578.26881 N\n");
  ASSERT_TRUE(project.routes.at(0).lever.has_value());
  EXPECT_EQ(project.routes.at(0).lever->ratio, 1.4);
  EXPECT_NEAR(*project.routes.at(0).lever->pilot_force_lbf, 130, 1e-6);
  EXPECT_EQ(project.routes.at(0).lever->where.line, 13);
}

TEST(ControlCableReader, ReadsTheAirframesStiffnessOfTheProjectAndOfARoute) {
  const Project project =
      loaded("airframe_stiffness: 1200 lbf/in\n", "    airframe_stiffness: 900\n");
  EXPECT_EQ(project.airframe_stiffness_lbf_per_in, 1200);
  EXPECT_EQ(project.routes.at(0).airframe_stiffness_lbf_per_in, 900);
}

TEST(ControlCableReader, InventsNothing) {
  const Project project = loaded("", "");
  const Route& route = project.routes.at(0);
  EXPECT_FALSE(route.ends.from || route.ends.to || route.lever ||
               route.airframe_stiffness_lbf_per_in || project.airframe_stiffness_lbf_per_in);
}

/// Two cables of controls written so, read from a file.
std::vector<Route> two_controls(const std::string& first, const std::string& second) {
  return loaded("", "  - {name: other, system: cable, control: " + second +
                        ", line: cable-7x19-1/8-steel, from: pedal, to: horn}\n"
                        "  - {name: third, system: cable, control: " +
                        first + ", line: cable-7x19-1/8-steel, from: pedal, to: horn}\n")
      .routes;
}

TEST(ControlCableReader, TakesAControlForOneHoweverItIsWritten) {
  for (const Route& route : two_controls("' RUDDER '", "Rudder"))
    EXPECT_EQ(route.control, "rudder");
  const std::vector<Route> tab = two_controls("Trim", "'trim '");
  EXPECT_EQ(tab.at(1).control, "trim");
  EXPECT_EQ(tab.at(2).control, "trim");
  for (const Route& route : {tab.at(1), tab.at(2)}) EXPECT_FALSE(route.primary);
  const std::vector<Route> apart = two_controls("elevator", "rudder-2");
  EXPECT_EQ(apart.at(1).control, "rudder-2");
  EXPECT_EQ(apart.at(2).control, "elevator");
}

TEST(ControlCableReader, ReadsDualControlsForAllLevers) {
  const std::string lever = "    lever_ratio: 1.4\n";
  EXPECT_FALSE(loaded("", lever).dual_controls.has_value());
  EXPECT_FALSE(loaded("", lever).routes.at(0).lever->two_pilots);
  EXPECT_FALSE(loaded("dual_controls: false\n", lever).routes.at(0).lever->two_pilots);
  EXPECT_TRUE(loaded("dual_controls: true\n", lever).routes.at(0).lever->two_pilots);
  EXPECT_EQ(loaded("dual_controls: true\n", lever).dual_controls, true);
}

TEST(ControlCableReader, ReadsWhatAControlIsWorkedByAndHowHeavyTheAeroplaneIs) {
  const std::string lever = "    lever_ratio: 1.2\n";
  EXPECT_FALSE(loaded("", lever).routes.at(0).worked_by.has_value());
  EXPECT_EQ(loaded("", lever + "    worked_by: wheel\n").routes.at(0).worked_by,
            ControlGrip::wheel);
  EXPECT_FALSE(loaded("", lever).routes.at(0).lever->weight_lbf.has_value());
  EXPECT_EQ(loaded("weight: 6000 lbf\n", lever).routes.at(0).lever->weight_lbf, 6000);
}

}  // namespace
}  // namespace linewright
