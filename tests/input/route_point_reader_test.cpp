// Points, sleeves and arms of a cable, read from a file.

#include "input/route_point_reader.hpp"

#include <gtest/gtest.h>

#include "input/project_folder.hpp"

namespace linewright {
namespace {

/// A cable with these keys, between a pedal and a horn with an arm, loaded.
Project with_cable(const std::string& keys, const std::string& units = "in") {
  const ProjectFolder folder;
  folder.write("project.yaml",
               "linewright: 1\nname: cable\nunits: " + units +
                   "\nnodes:\n"
                   "  - {name: pedal, kind: pedal, at: [0, 0, 0]}\n"
                   "  - {name: horn, kind: horn, at: [90, 0, 0], arm: {pivot: [90, 0, -4], axis: "
                   "[0, 2, 0]}}\n"
                   "routes:\n"
                   "  - name: run\n    system: cable\n    line: cable-7x19-1/8-steel\n"
                   "    from: pedal\n    to: horn\n" +
                   keys);
  Catalogue catalogue = small_catalogue();
  for (Line& line : catalogue.lines) {
    line.inside_diameter_in = 0.17;
    line.minimum_bend_radius_in = {1, {"a table", Mark::from_memory}};
  }
  const LoadResult result = load_project(folder.path() / "project.yaml", catalogue);
  EXPECT_EQ(shown(result.errors), "");
  return result.project.value_or(Project{});
}

TEST(PulleyInAFile, StatesItsGuards) {
  const Project project = with_cable(
      "    points:\n"
      "      - {at: [9, 0, 0], hold: pulley, diameter: 2, axis: [0, 0, 1], guards: 2, guard_gap: "
      "0.05}\n"
      "      - {at: [19, 0, 0], hold: pulley, diameter: 2, axis: [0, 0, 1], guards: 0}\n"
      "      - {at: [29, 0, 0], hold: pulley, diameter: 2, axis: [0, 0, 1]}\n");
  const auto& points = project.routes.at(0).points;
  ASSERT_EQ(points.size(), 3u);
  EXPECT_EQ(points[0].guards, 2);
  EXPECT_EQ(points[0].guard_gap_in, 0.05);
  EXPECT_EQ(points[1].guards, 0);
  EXPECT_FALSE(points[1].guard_gap_in.has_value());
  EXPECT_FALSE(points[2].guards.has_value());
}

/// What is said of a pulley with these keys, in millimetres.
std::string pulley_errors(const std::string& keys) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               "linewright: 1\nname: cable\nunits: mm\nnodes:\n"
               "  - {name: pedal, kind: pedal, at: [0, 0, 0]}\n"
               "  - {name: horn, kind: horn, at: [900, 0, 300]}\n"
               "routes:\n"
               "  - {name: run, system: cable, line: cable-7x19-1/8-steel, from: pedal, to: horn,\n"
               "     points: [{at: [400, 0, 0], hold: pulley, diameter: 88.9, " +
                   keys + "}]}\n");
  return shown(load_project(folder.path() / "project.yaml", small_catalogue()).errors);
}

TEST(PulleyInAFile, BendsTheCableAsItsGrooveDoes) {
  EXPECT_EQ(pulley_errors("axis: [0, 1, 0]"), "");
  EXPECT_EQ(pulley_errors("axis: [0, 1, 0], bend: 44.45"), "");
  EXPECT_EQ(pulley_errors("axis: [0, 1, 0], bend: 44.5"), "");
  for (const char* bend : {"300", "44", "45", "88.9"}) {
    const std::string errors = pulley_errors(std::string("axis: [0, 1, 0], bend: ") + bend);
    EXPECT_NE(errors.find("as the pulley's groove does, 1.75 in"), std::string::npos) << errors;
    EXPECT_NE(errors.find("project.yaml:9:"), std::string::npos) << errors;
  }
}

TEST(FairleadInAFile, PassedFreeIsNoPointOfThePath) {
  const Project project = with_cable(
      "    points:\n"
      "      - {at: [9, 0, 0], hold: fairlead}\n"
      "      - {at: [19, 0.1, 0], hold: fairlead, passes: free, bore: 0.5}\n"
      "      - {at: [29, 0, 0], hold: fairlead, passes: guided}\n");
  const Route& route = project.routes.at(0);
  ASSERT_EQ(route.points.size(), 2u);
  EXPECT_EQ(route.points[1].at, (Vec3{29, 0, 0}));
  ASSERT_EQ(route.free_fairleads.size(), 1u);
  EXPECT_EQ(route.free_fairleads[0].leg, 1);
  EXPECT_EQ(route.free_fairleads[0].fairlead.at, (Vec3{19, 0.1, 0}));
  EXPECT_EQ(route.free_fairleads[0].fairlead.bore_in, 0.5);
  EXPECT_EQ(route.free_fairleads[0].fairlead.where.line, 15);
}

TEST(SleeveInAFile, CutFromATubeIsAsWideAndBendsAsFarAsTheTube) {
  const Project project = with_cable(
      "    sleeves:\n"
      "      - {from: 1, to: 9, line: tube-nylon-1/4}\n"
      "      - {from: 11, to: 19, bore: 0.2, outside: 0.3, minimum_bend_radius: 4}\n");
  const auto& sleeves = project.routes.at(0).sleeves;
  ASSERT_EQ(sleeves.size(), 2u);
  EXPECT_EQ(sleeves[0].bore_in, 0.17);
  EXPECT_EQ(sleeves[0].outside_in, 0.25);
  EXPECT_EQ(sleeves[0].minimum_bend_radius_in, (SourcedValue{1, {"a table", Mark::from_memory}}));
  ASSERT_TRUE(sleeves[1].minimum_bend_radius_in.has_value());
  EXPECT_EQ(sleeves[1].minimum_bend_radius_in->value, 4);
  EXPECT_EQ(sleeves[1].minimum_bend_radius_in->source.mark, Mark::builder);
}

TEST(ArmInAFile, HasAPivotInTheUnitsOfTheFileAndADirection) {
  const auto arm = with_cable("", "mm").find_node("horn")->arm;
  ASSERT_TRUE(arm.has_value());
  EXPECT_NEAR(arm->pivot.x, 90 / 25.4, 1e-12);
  EXPECT_NEAR(arm->pivot.z, -4 / 25.4, 1e-12);
  EXPECT_EQ(arm->axis, (Vec3{0, 2, 0}));
  EXPECT_FALSE(with_cable("").find_node("pedal")->arm.has_value());
}

}  // namespace
}  // namespace linewright
