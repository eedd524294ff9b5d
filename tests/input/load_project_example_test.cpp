// The worked example of the file format, names mended so that each resolves: every key it has
// must arrive in the model.

#include <gtest/gtest.h>

#include <filesystem>

#include "input/project_folder.hpp"

namespace linewright {
namespace {

class ExampleProject : public testing::Test {
 protected:
  void SetUp() override {
    LoadResult result =
        load_project(std::filesystem::path(LINEWRIGHT_SOURCE_DIR) / "tests/input/fixtures/example",
                     small_catalogue());
    ASSERT_EQ(shown(result.errors), "");
    ASSERT_TRUE(result.project.has_value());
    project = std::move(*result.project);
  }

  Project project;
};

TEST_F(ExampleProject, GivesItsSettings) {
  EXPECT_EQ(project.name, "(an invented aeroplane)");
  EXPECT_EQ(project.build_tolerance_in, 0.06);
  EXPECT_EQ(project.temperature.min_degf, -20);
  EXPECT_EQ(project.temperature.rigged_degf, 70);
  EXPECT_EQ(project.temperature.max_degf, 120);
  ASSERT_EQ(project.attitudes.size(), 2u);
  EXPECT_EQ(project.attitudes[1].name, "parked");
  EXPECT_EQ(project.attitudes[1].pitch_deg, 12.5);
  EXPECT_EQ(project.attitudes[1].roll_deg, 0);
  ASSERT_TRUE(project.excitation.has_value());
  EXPECT_EQ(project.excitation->idle_rpm, 600);
  EXPECT_EQ(project.excitation->redline_rpm, 2700);
  EXPECT_EQ(project.excitation->blades, 2);
  EXPECT_FALSE(project.climb_ft_per_min.has_value());
}

TEST_F(ExampleProject, SaysWhatItAssumed) {
  EXPECT_EQ(project.load_factor.positive, 3.8);
  EXPECT_EQ(project.load_factor.negative, -1.5);
  EXPECT_EQ(
      project.assumptions,
      (std::vector<std::string>{"load_factor is not stated: +3.8 and -1.5 were taken",
                                "units are not stated in structure.yaml, static.yaml, rudder.yaml: "
                                "bare lengths were taken as inches",
                                "panels that state no thickness: 1; 0.025 in was taken",
                                "meshes that state no crease_angle: tailcone; edges turned by more "
                                "than 30 deg were taken as sharp",
                                "meshes that state no thickness: tailcone; their faces were taken "
                                "as the surface itself"}));
}

TEST_F(ExampleProject, GivesItsFrameWithItsHoles) {
  ASSERT_EQ(project.structure.frames.size(), 1u);
  const Frame& frame = project.structure.frames[0];
  EXPECT_EQ(frame.name, "F4");
  EXPECT_EQ(frame.plane, at_station(190));
  EXPECT_EQ(frame.thickness_in, 0.032);
  EXPECT_EQ(frame.outline, (std::vector<Vec2>{{-14, 0}, {14, 0}, {12, 26}, {-12, 26}}));
  EXPECT_EQ(frame.where, (SourceLocation{"structure.yaml", 4, 7}));
  ASSERT_EQ(frame.holes.size(), 2u);
  EXPECT_EQ(frame.holes[0].name, "F4-a");
  EXPECT_EQ(frame.holes[0].edge, EdgeGuard::grommet);
  const auto* circle = std::get_if<Circle>(&frame.holes[0].shape);
  ASSERT_NE(circle, nullptr);
  EXPECT_EQ(circle->centre, (Vec2{-8, 14}));
  EXPECT_EQ(circle->diameter_in, 0.75);
  const auto* corners = std::get_if<std::vector<Vec2>>(&frame.holes[1].shape);
  ASSERT_NE(corners, nullptr);
  EXPECT_EQ(*corners, (std::vector<Vec2>{{-3, 4}, {3, 4}, {3, 9}, {-3, 9}}));
  EXPECT_EQ(frame.holes[1].edge, EdgeGuard::bare);
}

TEST_F(ExampleProject, GivesItsChannelPanelAndSolids) {
  const Structure& structure = project.structure;
  ASSERT_EQ(structure.channels.size(), 1u);
  EXPECT_EQ(structure.channels[0].name, "S3L");
  EXPECT_EQ(structure.channels[0].path, (std::vector<Vec3>{{150, -12, 14}, {230, -8, 16}}));
  EXPECT_EQ(structure.channels[0].section,
            (std::vector<Vec2>{{0, 0}, {0, 0.75}, {0.6, 0.75}, {0.6, 0.5}}));
  EXPECT_EQ(structure.channels[0].thickness_in, 0.025);
  EXPECT_EQ(structure.channels[0].edge, EdgeGuard::bare);
  ASSERT_EQ(structure.panels.size(), 1u);
  EXPECT_EQ(structure.panels[0].corners.size(), 4u);
  EXPECT_EQ(structure.panels[0].corners[1], (Vec3{230, -6, 20}));
  EXPECT_EQ(structure.panels[0].closure, "deck");
  EXPECT_EQ(structure.panels[0].thickness_in, 0.025);
  ASSERT_EQ(structure.solids.size(), 2u);
  const auto* box = std::get_if<Box>(&structure.solids[0].shape);
  ASSERT_NE(box, nullptr);
  EXPECT_EQ(box->min, (Vec3{160, -4, 2}));
  EXPECT_EQ(box->max, (Vec3{170, 4, 9}));
  const auto* cylinder = std::get_if<Cylinder>(&structure.solids[1].shape);
  ASSERT_NE(cylinder, nullptr);
  EXPECT_EQ(cylinder->from, (Vec3{100, 0, 5}));
  EXPECT_EQ(cylinder->to, (Vec3{112, 0, 5}));
  EXPECT_EQ(cylinder->diameter_in, 4);
}

TEST_F(ExampleProject, GivesItsMoverMeshAndClosures) {
  ASSERT_EQ(project.structure.movers.size(), 1u);
  const Mover& mover = project.structure.movers[0];
  EXPECT_EQ(mover.pivot, (Vec3{205, 0, 10}));
  EXPECT_EQ(mover.axis, (Vec3{0, 1, 0}));
  EXPECT_EQ(mover.points, (std::vector<Vec3>{{205, 0, 14}, {205, 0, 6}}));
  EXPECT_EQ(mover.radius_in, 0.4);
  EXPECT_EQ(mover.sweep_from_deg, -28);
  EXPECT_EQ(mover.sweep_to_deg, 24);
  ASSERT_EQ(project.structure.meshes.size(), 1u);
  EXPECT_EQ(project.structure.meshes[0].file, "tailcone.stl");
  EXPECT_DOUBLE_EQ(project.structure.meshes[0].inches_per_unit * 25.4, 1);
  ASSERT_EQ(project.closures.size(), 2u);
  const Closure& deck = project.closures[1];
  EXPECT_EQ(deck.after, std::vector<std::string>{"skin"});
  ASSERT_EQ(deck.openings.size(), 1u);
  EXPECT_EQ(deck.openings[0].name, "baggage bulkhead");
  EXPECT_EQ(deck.openings[0].centre, (Vec3{150, 0, 12}));
  EXPECT_EQ(deck.openings[0].diameter_in, 14);
  EXPECT_EQ(deck.openings[0].reach_in, 26);
  EXPECT_EQ(deck.reach_in, 26);
}

TEST_F(ExampleProject, GivesItsNodes) {
  ASSERT_EQ(project.nodes.size(), 6u);
  EXPECT_EQ(project.nodes[0].name, "port-left");
  EXPECT_EQ(project.nodes[0].kind, NodeKind::static_port);
  EXPECT_EQ(project.nodes[0].at, (Vec3{231, -10.2, 12.4}));
  EXPECT_EQ(project.nodes[0].where, (SourceLocation{"static.yaml", 3, 5}));
  EXPECT_EQ(project.nodes[1].volume_in3, 0.02);
  EXPECT_EQ(project.nodes[2].volume_in3, 6.0);
  EXPECT_EQ(project.nodes[3].kind, NodeKind::drain);
  EXPECT_FALSE(project.nodes[3].volume_in3.has_value());
  EXPECT_EQ(project.nodes[4].kind, NodeKind::pedal);
  EXPECT_EQ(project.nodes[5].kind, NodeKind::horn);
}

TEST_F(ExampleProject, GivesItsStaticRoute) {
  ASSERT_EQ(project.routes.size(), 2u);
  const Route& route = project.routes[0];
  EXPECT_EQ(route.name, "static-left");
  EXPECT_EQ(route.system, SystemKind::static_air);
  EXPECT_EQ(route.system_name, "static");
  EXPECT_EQ(route.line, "tube-nylon-1/4");
  EXPECT_EQ(route.line_where, (SourceLocation{"static.yaml", 11, 11}));
  EXPECT_EQ(route.from, "port-left");
  EXPECT_EQ(route.to, "tee-1");
  ASSERT_EQ(route.points.size(), 3u);
  EXPECT_EQ(route.points[0].at, (Vec3{229, -8, 15}));
  EXPECT_EQ(route.points[0].bend_in, 1.25);
  EXPECT_EQ(route.points[0].where, (SourceLocation{"static.yaml", 15, 9}));
  EXPECT_FALSE(route.points[0].hold.has_value());
  EXPECT_EQ(route.points[1].hold, HoldKind::clamp);
  EXPECT_EQ(route.points[1].to, "S3L");
  EXPECT_EQ(route.points[2].through, "F4-a");
  EXPECT_FALSE(route.tension.has_value());
}

TEST_F(ExampleProject, GivesItsCableRoute) {
  ASSERT_EQ(project.routes.size(), 2u);
  const Route& route = project.routes[1];
  EXPECT_EQ(route.system, SystemKind::cable);
  EXPECT_EQ(route.control, "rudder");
  EXPECT_TRUE(route.primary);
  ASSERT_TRUE(route.tension.has_value());
  EXPECT_EQ(route.tension->rigged_lbf, 30);
  EXPECT_EQ(route.tension->limit_load_lbf, 200);
  ASSERT_TRUE(route.travel.has_value());
  EXPECT_EQ(route.travel->forward_in, 2.1);
  EXPECT_EQ(route.travel->aft_in, 2.1);
  ASSERT_EQ(route.points.size(), 2u);
  EXPECT_EQ(route.points[0].hold, HoldKind::pulley);
  EXPECT_EQ(route.points[0].diameter_in, 2.5);
  EXPECT_EQ(route.points[0].axis, (Vec3{0, 0, 1}));
  EXPECT_EQ(route.points[1].hold, HoldKind::fairlead);
  EXPECT_EQ(route.points[1].bore_in, 0.19);
  ASSERT_EQ(route.sleeves.size(), 1u);
  EXPECT_EQ(route.sleeves[0].from_in, 30);
  EXPECT_EQ(route.sleeves[0].to_in, 44);
  EXPECT_EQ(route.sleeves[0].bore_in, 0.17);
  EXPECT_EQ(route.sleeves[0].outside_in, 0.25);
  ASSERT_EQ(route.attached.size(), 1u);
  EXPECT_EQ(route.attached[0].kind, "turnbuckle");
  EXPECT_EQ(route.attached[0].at_in, 12);
  EXPECT_EQ(route.attached[0].length_in, 4.5);
  EXPECT_EQ(route.attached[0].diameter_in, 0.44);
}

TEST_F(ExampleProject, GivesItsWaiver) {
  ASSERT_EQ(project.waivers.size(), 1u);
  EXPECT_EQ(project.waivers[0].rule, "chafe");
  EXPECT_EQ(project.waivers[0].route, "static-left");
  EXPECT_EQ(project.waivers[0].near, (Vec3{205, -8, 15}));
  EXPECT_EQ(project.waivers[0].within_in, 2);
  EXPECT_EQ(project.waivers[0].reason, "spiral wrap fitted, to be inspected yearly");
}

}  // namespace
}  // namespace linewright
