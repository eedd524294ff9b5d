// What a project says of its push-pull controls. What is refused is under fixtures/broken.

#include <gtest/gtest.h>

#include "input/project_folder.hpp"

namespace linewright {
namespace {

Project loaded(const std::string& route_keys) {
  const ProjectFolder folder;
  folder.write(
      "project.yaml",
      "linewright: 1\nname: controls\nunits: in\n"
      "nodes:\n"
      "  - {name: panel, kind: bulkhead, at: [60, -3, 20], mirror: panel-right}\n"
      "  - {name: bracket, kind: end, at: [30, -3, 20], mirror: bracket-right}\n"
      "lines:\n"
      "  - {name: mine, kind: conduit, outside: 0.25, minimum_bend_radius: 127 mm, "
      "bend_total: 5.2359877559829882 rad, source: a sheet}\n"
      "routes:\n"
      "  - {name: heater, system: push-pull, line: mine, from: panel, to: bracket, control: "
      "heater" +
          route_keys + "}\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  EXPECT_EQ(shown(result.errors), "");
  return result.project.value_or(Project{});
}

TEST(PushPullReader, ReadsTravelRunOutAndArms) {
  const Project project = loaded(
      ", travel: {forward: 1, aft: 25.4 mm}, run_out: {from: 3, to: 2 1/2, to_arm: {pivot: "
      "[27.5, -3, 17], axis: [0, 1, 0]}, swivel: 10}");
  const Route& route = project.routes.at(0);
  EXPECT_EQ(route.system, SystemKind::push_pull);
  EXPECT_EQ(route.control, "heater");
  EXPECT_NEAR(route.travel->aft_in, 1, 1e-12);
  ASSERT_TRUE(route.run_out.has_value());
  EXPECT_EQ(route.run_out->from_in, 3);
  EXPECT_EQ(route.run_out->to_in, 2.5);
  EXPECT_FALSE(route.run_out->from_arm.has_value());
  EXPECT_EQ(route.run_out->to_arm->pivot, (Vec3{27.5, -3, 17}));
  EXPECT_EQ(route.run_out->swivel_deg, 10);
}

TEST(PushPullReader, ReadsTheFiguresOfALineOfTheProjectsOwn) {
  const Project project = loaded("");
  const Line* line = project.catalogue.find_line("mine");
  ASSERT_NE(line, nullptr);
  EXPECT_NEAR(line->minimum_bend_radius_in->value, 5, 1e-12);
  EXPECT_NEAR(line->bend_total_deg->value, 300, 1e-9);
  EXPECT_EQ(line->bend_total_deg->source.mark, Mark::builder);
  EXPECT_FALSE(project.routes.at(0).run_out.has_value());
}

TEST(PushPullReader, MirrorsTheArmOfAPin) {
  const Project project = loaded(
      ", mirror: heater-right, run_out: {from: 3, to: 2, to_arm: {pivot: [28, -3, 17], axis: "
      "[0, 1, 0]}}");
  ASSERT_EQ(project.routes.size(), 2u);
  EXPECT_EQ(project.routes[1].from, "panel-right");
  EXPECT_EQ(project.routes[1].run_out->to_arm->pivot, (Vec3{28, 3, 17}));
}

}  // namespace
}  // namespace linewright
