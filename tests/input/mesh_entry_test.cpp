// A mesh as the project file places it.

#include <numbers>
#include <random>

#include "input/mesh_reading.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

/// The project with one mesh, `skin`, of these further keys.
LoadResult load_with_mesh(const ProjectFolder& folder, const std::string& file,
                          const std::string& keys) {
  folder.write(file, "");
  folder.write(
      "project.yaml",
      "linewright: 1\nname: a\nunits: in\nbuild_tolerance: 0.06\ntemperature: {min: -20, rigged: "
      "70, max: 120}\n"
      "load_factor: {positive: 3.8, negative: -1.5}\nstructure:\n  meshes:\n    - {name: "
      "skin, file: " +
          file + keys + "}\n");
  return load_project(folder.path(), small_catalogue());
}

Mesh loaded_mesh(const std::string& file, const std::string& keys) {
  const ProjectFolder folder;
  const LoadResult result = load_with_mesh(folder, file, keys);
  EXPECT_EQ(shown(result.errors), "");
  if (!result.project) return {};
  return result.project->structure.meshes.at(0);
}

std::string errors_of(const std::string& keys) {
  const ProjectFolder folder;
  return shown(load_with_mesh(folder, "a.stl", keys).errors);
}

void expect_near(Vec3 found, Vec3 wanted) {
  EXPECT_NEAR(found.x, wanted.x, 1e-12);  // a few roundings of figures of about ten
  EXPECT_NEAR(found.y, wanted.y, 1e-12);
  EXPECT_NEAR(found.z, wanted.z, 1e-12);
}

TEST(MeshEntry, StaysWhereItIsUnlessToldOtherwise) {
  const Mesh mesh = loaded_mesh("a.stl", ", units: in");
  EXPECT_EQ(mesh.placement, Placement());
  EXPECT_EQ(mesh.scale, 1);
  EXPECT_EQ(mesh.thickness_in, 0);
  EXPECT_EQ(mesh.crease_angle_deg, 30);
}

TEST(MeshEntry, IsScaledThenTurnedInOrderThenMoved) {
  const Mesh mesh = loaded_mesh("a.stl",
                                ", units: ft, scale: 0.5, rotate: [{about: FS, angle: 90}, {about: "
                                "WL, angle: 90 deg}], translate: [100, 25.4 mm, -3]");
  // 12 x 0.5 = 6 in a unit. About FS: (1, 2, 3) to (1, -3, 2); about WL: to (3, 1, 2).
  expect_near(mesh.placement.apply({1, 2, 3}), {118, 7, 9});
  EXPECT_EQ(mesh.translate, (Vec3{100, 1, -3}));
  ASSERT_EQ(mesh.turns.size(), 2u);
  EXPECT_EQ(mesh.turns[1].axis, (Vec3{0, 0, 1}));
}

TEST(MeshEntry, TurnsByTheRightHandRule) {
  const auto turned_corner = [](const std::string& axis) {
    return loaded_mesh("a.stl", ", units: in, rotate: [{about: " + axis + ", angle: 90}]")
        .placement.apply({1, 2, 3});
  };
  EXPECT_EQ(turned_corner("FS"), (Vec3{1, -3, 2}));
  EXPECT_EQ(turned_corner("BL"), (Vec3{3, 2, -1}));
  EXPECT_EQ(turned_corner("WL"), (Vec3{-2, 1, 3}));
  const Mesh mesh = loaded_mesh("a.stl", ", units: in, rotate: [{about: WL, angle: -30}]");
  const double root3 = std::numbers::sqrt3;
  expect_near(mesh.placement.apply({2, 0, 5}), {root3, -1, 5});
}

TEST(MeshEntry, TurnsOfRandomAnglesKeepLengthsAndUndoEachOther) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> number(-180, 180);
  for (int round = 0; round < 200; ++round) {
    const Vec3 axis{number(random), number(random), number(random)};
    const Vec3 place{number(random), number(random), number(random)};
    const double angle = number(random);
    const Vec3 there = turned(axis, angle).apply(place);
    EXPECT_NEAR(norm(there), norm(place), 1e-11);
    EXPECT_NEAR(dot(there, axis), dot(place, axis), 1e-8);
    const Vec3 back = composed(turned(axis, -angle), turned(axis, angle)).apply(place);
    EXPECT_LT(distance(back, place), 1e-11);
  }
}

TEST(MeshEntry, IsInMetresForGlbAndInchesForOthersWhereUnitsAreNotStated) {
  EXPECT_DOUBLE_EQ(loaded_mesh("a.glb", "").inches_per_unit * 25.4, 1000);  // glTF 2.0, 3.4
  EXPECT_DOUBLE_EQ(loaded_mesh("a.GLB", ", units: mm").inches_per_unit * 25.4, 1);
  EXPECT_EQ(loaded_mesh("a.stl", "").inches_per_unit, 1);
  EXPECT_EQ(loaded_mesh("a.obj", "").inches_per_unit, 1);
}

TEST(MeshEntry, SaysWhatWasTakenForWhatItDoesNotState) {
  const ProjectFolder folder;
  const LoadResult bare = load_with_mesh(folder, "a.glb", "");
  ASSERT_TRUE(bare.project) << shown(bare.errors);
  EXPECT_EQ(bare.project->assumptions,
            (std::vector<std::string>{
                "units of meshes are not stated: skin; metres were taken",
                "meshes that state no crease_angle: skin; edges turned by more than 30 deg were "
                "taken as sharp",
                "meshes that state no thickness: skin; their faces were taken as the surface "
                "itself"}));
  const LoadResult full =
      load_with_mesh(folder, "a.glb", ", units: m, crease_angle: 45, thickness: 0.032");
  ASSERT_TRUE(full.project) << shown(full.errors);
  EXPECT_TRUE(full.project->assumptions.empty());
  const Mesh& mesh = full.project->structure.meshes.at(0);
  EXPECT_EQ(mesh.crease_angle_deg, 45);
  EXPECT_EQ(mesh.thickness_in, 0.032);
}

TEST(MeshEntry, CanBeOpenedWhateverTheWorkingFolder) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: a\ninclude: [parts/b.yaml]\n");
  folder.write("parts/b.yaml",
               "linewright: 1\nstructure:\n  meshes: [{name: skin, file: skin.stl, units: mm}]\n");
  const Corners corners{0, 0, 0, 3, 0, 0, 0, 4, 0};
  folder.write("parts/skin.stl", binary_stl({corners}));
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_TRUE(result.project) << shown(result.errors);
  const Mesh& mesh = result.project->structure.meshes.at(0);
  EXPECT_TRUE(mesh.path.is_absolute());
  EXPECT_EQ(mesh_of(read_mesh_file(mesh)).corners, std::vector<Corners>{corners});
}

TEST(MeshEntry, MeasuresHowFarOutACoordinateIsInInches) {
  const ProjectFolder folder;
  folder.write("a.obj", "v 0 0 0\nv 30000 0 0\nv 0 1 0\nf 1 2 3\n");
  Mesh mesh;
  mesh.path = folder.path() / "a.obj";
  mesh.file = "a.obj";
  mesh.inches_per_unit = 1 / 25.4;
  EXPECT_EQ(fault_of(read_mesh_file(mesh)), "read");
  mesh.inches_per_unit = 1000 / 25.4;
  EXPECT_EQ(fault_of(read_mesh_file(mesh)),
            "a.obj:2:3: a coordinate of 30000 is 1000000 in or more from the datum in these units: "
            "are the units right?");
}

TEST(MeshEntry, RefusesKeysThatCannotBe) {
  const std::string at = "project.yaml:9:";
  EXPECT_EQ(errors_of(", scale: 0"), at + "40: a scale must be greater than zero, found 0\n");
  EXPECT_EQ(errors_of(", rotate: [{about: x, angle: 90}]"),
            at + "50: the axis of a turn must be FS, BL or WL, found 'x'\n");
  EXPECT_EQ(errors_of(", rotate: [{about: FS}]"), at + "42: a turn needs 'angle'\n");
  EXPECT_EQ(errors_of(", rotate: {about: FS, angle: 90}"),
            at + "41: expected a list, found a map | put '- ' before each item of the list\n");
  EXPECT_EQ(errors_of(", rotate: [{about: FS, angle: 361}]"),
            at + "61: an angle must not be beyond 360 deg, found 361\n");
  EXPECT_EQ(errors_of(", crease_angle: 0"),
            at + "47: a crease angle must be greater than zero, found 0\n");
  EXPECT_EQ(errors_of(", thickness: -1"),
            at + "44: a thickness must not be less than zero, found -1\n");
  EXPECT_EQ(errors_of(", translate: [1, 2]"),
            at + "44: expected three lengths [FS, BL, WL], found a list of 2\n");
}

TEST(MeshEntry, SuggestsAMeshFileThatIsThere) {
  const ProjectFolder folder;
  folder.write("tailcone.stl", "");
  folder.write("tailcone.txt", "");
  EXPECT_TRUE(
      shown(load_with_mesh(folder, "body.obj", "}\n    - {name: b, file: tailcoen.stl").errors)
          .ends_with("there is no file 'tailcoen.stl' | did you mean 'tailcone.stl'?\n"));
}

}  // namespace
}  // namespace linewright
