// The same as for described structure, close to fittings that stand on a mesh: one mesh may hold
// the whole aeroplane, so the part's name tells nothing.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "rules/mesh_project.hpp"
#include "rules/project_text.hpp"

namespace linewright {
namespace {

/// A skin across FS from BL -4 to 4 and WL 6 to 14, in `cells` by `cells` pieces.
std::string skin(double fs, int cells) {
  std::string text;
  const auto at = [&](int i, int j) { return Vec3{fs, -4 + 8.0 * i / cells, 6 + 8.0 * j / cells}; };
  for (int i = 0; i < cells; ++i)
    for (int j = 0; j < cells; ++j)
      text += quad(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
  return text;
}

/// A 1/4 in tube from a fitting at (100, 0, 10), on the mesh.
MeshProject from_the_mesh(const std::string& obj, Vec3 to = {112, 0, 10}, bool reversed = false) {
  ProjectSections sections;
  sections.structure = "  meshes:\n    - {name: body, file: body.obj, units: in}\n";
  sections.nodes =
      held_node("a", "100, 0, 10") + held_node("b", fmt::format("{}, {}, {}", to.x, to.y, to.z));
  sections.routes = "  - {name: tube, system: vent, line: tube-nylon-1/4, " +
                    std::string(reversed ? "from: b, to: a}\n" : "from: a, to: b}\n");
  return {sections, obj};
}

Verdict worst(const MeshProject& project, const std::string& rule) {
  Verdict found = Verdict::pass;
  for (const Judgement& each : project.judged(rule)) found = std::max(found, each.verdict);
  return found;
}

TEST(NearFittingOnAMesh, PassesOverTheSkinHoweverFinelyItIsCut) {
  for (const int cells : {1, 3, 16, 40})
    for (const Vec3 to : {Vec3{112, 0, 10}, Vec3{110, 6, 10}, Vec3{109, -3, 4}})
      for (const bool reversed : {false, true}) {
        SCOPED_TRACE(cells);
        const MeshProject project = from_the_mesh(skin(100, cells), to, reversed);
        EXPECT_EQ(worst(project, "clearance"), Verdict::pass);
        EXPECT_EQ(worst(project, "chafe"), Verdict::pass);
        EXPECT_EQ(worst(project, "frame-crossing"), Verdict::pass);
      }
}

TEST(NearFittingOnAMesh, PassesOverTheOtherFaceOfTheSheetAndADoubler) {
  for (const double thick : {0.025, 0.063, 0.12})
    for (const int cells : {1, 16}) {
      SCOPED_TRACE(std::to_string(thick) + " " + std::to_string(cells));
      const MeshProject project = from_the_mesh(skin(100, cells) + skin(100 + thick, cells));
      EXPECT_EQ(worst(project, "clearance"), Verdict::pass);
      EXPECT_EQ(worst(project, "frame-crossing"), Verdict::pass);
    }
}

TEST(NearFittingOnAMesh, FailsASecondSkinBehindIt) {
  for (const double behind : {0.14, 0.2, 0.3, 0.45, 0.7})
    for (const int cells : {1, 16})
      for (const bool reversed : {false, true}) {
        SCOPED_TRACE(std::to_string(behind) + " " + std::to_string(cells));
        const MeshProject project =
            from_the_mesh(skin(100, cells) + skin(100 + behind, cells), {112, 0, 10}, reversed);
        EXPECT_EQ(worst(project, "clearance"), Verdict::fail);
        EXPECT_EQ(worst(project, "frame-crossing"), Verdict::fail);
      }
}

TEST(NearFittingOnAMesh, FailsAFlangeThatStandsInTheTube) {
  // It stands from 0.05 or more behind the skin, 0.025 in within the surface of the tube.
  for (const double side : {-1.0, 1.0})
    for (const double from : {100.05, 100.2, 100.4})
      for (const double long_in : {0.25, 1.0}) {
        SCOPED_TRACE(std::to_string(from) + " " + std::to_string(side * long_in));
        const double bl = side * 0.1;
        const MeshProject project =
            from_the_mesh(skin(100, 4) + quad({from, bl, 8}, {from + long_in, bl, 8},
                                              {from + long_in, bl, 12}, {from, bl, 12}));
        EXPECT_EQ(worst(project, "clearance"), Verdict::fail);
      }
}

TEST(NearFittingOnAMesh, PassesOverTheRimOfAPortsHole) {
  // A hole of 0.1 in diameter under the end of the tube, as a static port has.
  constexpr int sides = 24;
  std::string obj;
  const auto on_circle = [](double radius, int i) {
    const double angle = 2 * std::numbers::pi * i / sides;
    return Vec3{100, radius * std::cos(angle), 10 + radius * std::sin(angle)};
  };
  for (int i = 0; i < sides; ++i)
    obj += quad(on_circle(0.05, i), on_circle(0.05, i + 1), on_circle(5, i + 1), on_circle(5, i));
  EXPECT_EQ(worst(from_the_mesh(obj), "clearance"), Verdict::pass);
}

TEST(NearFittingOnAMesh, FailsAnEdgeUnderTheTubeOnOneSideOnly) {
  // The skin ends 0.1 in beside the fitting's middle: half of the fitting stands on nothing.
  const std::string half = quad({100, -4, 6}, {100, 0.1, 6}, {100, 0.1, 14}, {100, -4, 14});
  EXPECT_EQ(worst(from_the_mesh(half), "clearance"), Verdict::fail);
}

/// A held fitting of 0.3 in radius that stands on the skin at FS 100, an outlet aft.
std::vector<Judgement> of_fitting_on(const std::string& obj) {
  ProjectSections sections;
  sections.build_tolerance = "0.06";
  sections.structure = "  meshes:\n    - {name: body, file: body.obj, units: in}\n";
  sections.nodes =
      "  - {name: a, kind: instrument, at: [100.32, 0, 10], body_diameter: 0.6, ports: {p: {at: "
      "[101.2, 0, 10], direction: [1, 0, 0]}}}\n" +
      held_node("b", "112, 0, 10");
  sections.routes = "  - {name: tube, system: vent, line: tube-nylon-1/4, from: a, to: b}\n";
  std::vector<Judgement> all = MeshProject(sections, obj).judged("clearance");
  std::erase_if(all, [](const Judgement& each) {
    return each.message.find("the fitting at") != 0 || each.verdict == Verdict::pass;
  });
  return all;
}

// One mesh holds skin and lip: what it stands on is its skin, 0.02 in off; a lip 0.35 in beside it
// is 0.05 in clear of the body, less 0.06 in of build tolerance.
TEST(NearFittingOnAMesh, FailsInALipOfTheMeshThatItStandsOn) {
  const auto lip = [](double bl) {
    return quad({100, bl, 6}, {102, bl, 6}, {102, bl, 14}, {100, bl, 14});
  };
  for (const int cells : {1, 16}) {
    EXPECT_TRUE(of_fitting_on(skin(100, cells)).empty()) << cells;
    EXPECT_TRUE(of_fitting_on(skin(100, cells) + lip(0.4)).empty()) << cells;
    const std::vector<Judgement> found = of_fitting_on(skin(100, cells) + lip(0.35));
    ASSERT_EQ(found.size(), 1u) << cells;
    EXPECT_EQ(found[0].verdict, Verdict::fail);
    EXPECT_NEAR(*found[0].value, 0.35 - 0.3 - 0.06, 1e-3);
  }
}

}  // namespace
}  // namespace linewright
