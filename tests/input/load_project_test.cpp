// How a project's files become one model: units, additions to the catalogue, the ways to write a
// system, includes.

#include "input/load_project.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "input/field_words.hpp"
#include "input/keys/project_keys.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

const std::string head = "linewright: 1\nname: small\n";
const std::string two_nodes =
    "nodes:\n"
    "  - {name: port, kind: static-port, at: [0, 0, 0]}\n"
    "  - {name: dial, kind: instrument, at: [10, 0, 0]}\n";

/// The project that `text` after the usual head describes; fails the test where it has errors.
Project loaded(const std::string& text) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + text);
  LoadResult result = load_project(folder.path(), small_catalogue());
  EXPECT_EQ(shown(result.errors), "");
  return result.project ? std::move(*result.project) : Project();
}

/// The one route from port to dial with these keys.
Route loaded_route(const std::string& keys) {
  const Project project =
      loaded(two_nodes + "routes:\n  - {name: run, from: port, to: dial, " + keys + "}\n");
  return project.routes.empty() ? Route() : project.routes[0];
}

TEST(LoadProject, TakesAFileOrAFolderWithProjectYaml) {
  const ProjectFolder folder;
  folder.write("project.yaml", "linewright: 1\nname: in the folder\n");
  folder.write("other.yaml", "linewright: 1\nname: by its file\n");
  const LoadResult by_folder = load_project(folder.path(), small_catalogue());
  const LoadResult by_file = load_project(folder.path() / "other.yaml", small_catalogue());
  ASSERT_TRUE(by_folder.project && by_file.project);
  EXPECT_EQ(by_folder.project->name, "in the folder");
  EXPECT_EQ(by_file.project->name, "by its file");
}

TEST(LoadProject, ReadsTheCruiseBandOfAPropeller) {
  const Project stated = loaded(
      "excitation: {propeller_rpm: [600 rpm, 2700], cruise_rpm: [2100, 2400 rpm], blades: 2}\n");
  ASSERT_TRUE(stated.excitation && stated.excitation->cruise);
  EXPECT_EQ(stated.excitation->cruise->low_rpm, 2100);
  EXPECT_EQ(stated.excitation->cruise->high_rpm, 2400);
  const Project without = loaded("excitation: {propeller_rpm: [600, 2700], blades: 2}\n");
  ASSERT_TRUE(without.excitation.has_value());
  EXPECT_FALSE(without.excitation->cruise.has_value());
  // The ends of what the propeller does may be the ends of cruise.
  EXPECT_TRUE(
      loaded("excitation: {propeller_rpm: [600, 2700], cruise_rpm: [600, 2700], blades: 3}\n")
          .excitation.has_value());
}

TEST(LoadProject, SaysEachDefaultThatItTook) {
  const Project project = loaded("");
  EXPECT_EQ(project.build_tolerance_in, 0.06);
  EXPECT_EQ(project.temperature.min_degf, -20);
  EXPECT_EQ(project.temperature.rigged_degf, 70);
  EXPECT_EQ(project.temperature.max_degf, 120);
  EXPECT_EQ(project.load_factor.positive, 3.8);
  EXPECT_EQ(project.load_factor.negative, -1.5);
  EXPECT_EQ(project.assumptions,
            (std::vector<std::string>{
                "build_tolerance is not stated: 0.06 in was taken",
                "temperature is not stated: -20 to 120 degF, rigged at 70 degF, was taken",
                "load_factor is not stated: +3.8 and -1.5 were taken",
                "units are not stated in project.yaml: bare lengths were taken as inches"}));
}

TEST(LoadProject, SaysThatWaterIsLookedForInLevelFlightOnlyWhereNoAttitudeIsStated) {
  const std::string air =
      "nodes: [{name: a, kind: drain, at: [0, 0, 0]}, {name: b, kind: static-port, at: [9, 0, "
      "0]}]\n"
      "routes: [{name: r, system: static, line: tube-nylon-1/4, from: a, to: b}]\n";
  const std::string sentence =
      "attitudes are not stated: water was looked for in level flight only";
  const auto says = [&](const std::string& text) {
    const std::vector<std::string> said = loaded(text).assumptions;
    return std::find(said.begin(), said.end(), sentence) != said.end();
  };
  EXPECT_TRUE(says(air));
  EXPECT_FALSE(says(air + "attitudes: [{name: parked, pitch: 12}]\n"));
  EXPECT_FALSE(says(air + "attitudes: [{name: cruise, pitch: 2}, {name: parked, pitch: 12}]\n"));
  EXPECT_FALSE(says(""));
}

TEST(LoadProject, AssumesNothingWhereAllIsStated) {
  const Project project = loaded(
      "units: in\nbuild_tolerance: 0\ntemperature: {min: 0, rigged: 60, max: 100}\n"
      "load_factor: {positive: 4.4, negative: -2.2}\nclimb: 1500\n");
  EXPECT_EQ(project.assumptions, std::vector<std::string>());
  EXPECT_EQ(project.build_tolerance_in, 0);
  EXPECT_EQ(project.load_factor.positive, 4.4);
  EXPECT_EQ(project.load_factor.negative, -2.2);
  EXPECT_EQ(project.climb_ft_per_min, 1500);
}

// The inch is 25.4 mm by definition, so these hold to rounding.
TEST(LoadProject, ConvertsBareLengthsOfAFileInMillimetres) {
  const Project project = loaded(
      "units: mm\nbuild_tolerance: 2.54\nnodes:\n"
      "  - {name: tee, kind: tee, at: [254, -25.4, 1 in], volume: 16387.064}\n");
  EXPECT_DOUBLE_EQ(project.build_tolerance_in, 0.1);
  ASSERT_EQ(project.nodes.size(), 1u);
  EXPECT_DOUBLE_EQ(project.nodes[0].at.x, 10);
  EXPECT_DOUBLE_EQ(project.nodes[0].at.y, -1);
  EXPECT_EQ(project.nodes[0].at.z, 1);
  ASSERT_TRUE(project.nodes[0].volume_in3.has_value());
  EXPECT_DOUBLE_EQ(*project.nodes[0].volume_in3, 1);
}

TEST(LoadProject, TakesUnitsFileByFile) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + "units: mm\ninclude: [a.yaml]\n");
  folder.write("a.yaml", "linewright: 1\nnodes: [{name: tee, kind: tee, at: [1, 2, 3]}]\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_TRUE(result.project) << shown(result.errors);
  EXPECT_EQ(result.project->nodes.at(0).at, (Vec3{1, 2, 3}));
}

TEST(LoadProject, ReadsASystemByKindOrWithItsName) {
  const std::string tube = ", line: tube-nylon-1/4";
  EXPECT_EQ(loaded_route("system: static" + tube).system_name, "static");
  EXPECT_EQ(loaded_route("system: \"static: alternate\"" + tube).system_name, "static: alternate");
  EXPECT_EQ(loaded_route("system: {static: alternate}" + tube).system_name, "static: alternate");
  EXPECT_EQ(loaded_route("system: alpha" + tube).system, SystemKind::alpha);
  EXPECT_EQ(loaded_route("system: {pitot: heated}" + tube).system, SystemKind::pitot);
  EXPECT_EQ(loaded_route("system: vent" + tube).system, SystemKind::vent);
  EXPECT_EQ(loaded_route("system: wire, line: wire-1/4").system, SystemKind::wire);
}

TEST(LoadProject, TakesATrimCableAsSecondaryUnlessToldOtherwise) {
  const std::string cable = "system: cable, line: cable-7x19-1/8-steel";
  EXPECT_TRUE(loaded_route(cable).primary);
  EXPECT_TRUE(loaded_route(cable + ", control: rudder").primary);
  EXPECT_FALSE(loaded_route(cable + ", control: rudder, primary: false").primary);
  EXPECT_FALSE(loaded_route(cable + ", control: trim").primary);
  EXPECT_TRUE(loaded_route(cable + ", control: trim, primary: true").primary);
}

TEST(LoadProject, ReadsTheLengthOfAHose) {
  EXPECT_EQ(loaded_route("system: static, line: hose-rubber-1/4, length: 10.6").length_in, 10.6);
}

TEST(LoadProject, ReadsWhetherStructureHoldsANode) {
  const Project project = loaded(
      "nodes:\n  - {name: tee, kind: tee, at: [0, 0, 0], fixed: true}\n"
      "  - {name: port, kind: static-port, at: [1, 0, 0], fixed: false}\n"
      "  - {name: cap, kind: cap, at: [2, 0, 0]}\n");
  ASSERT_EQ(project.nodes.size(), 3u);
  EXPECT_EQ(project.nodes[0].fixed, true);
  EXPECT_EQ(project.nodes[1].fixed, false);
  EXPECT_FALSE(project.nodes[2].fixed.has_value());
}

TEST(LoadProject, AddsTheProjectsOwnLinesToTheCatalogue) {
  const Project project = loaded(two_nodes +
                                 "lines:\n"
                                 "  - {name: tube-special, kind: plastic-tube, material: nylon, "
                                 "outside: 0.25, inside: 0.17, source: data sheet}\n"
                                 "routes:\n"
                                 "  - {name: run, system: static, line: tube-special, from: port, "
                                 "to: dial}\n");
  const Line* line = project.catalogue.find_line("tube-special");
  ASSERT_NE(line, nullptr);
  EXPECT_EQ(line->kind, LineKind::plastic_tube);
  EXPECT_EQ(line->inside_diameter_in, 0.17);
  ASSERT_TRUE(line->where.has_value());
  EXPECT_EQ(*line->where, (SourceLocation{"project.yaml", 7, 5}));
  EXPECT_NE(project.catalogue.find_line("tube-nylon-1/4"), nullptr);
}

TEST(LoadProject, JoinsTheListsOfItsFilesInIncludeOrder) {
  const ProjectFolder folder;
  folder.write("project.yaml", head +
                                   "include: [parts/b.yaml, a.yaml]\n"
                                   "nodes: [{name: n1, kind: tee, at: [1, 0, 0]}]\n");
  folder.write("parts/b.yaml",
               "linewright: 1\ninclude: [c.yaml]\n"
               "nodes: [{name: n2, kind: tee, at: [2, 0, 0]}]\n");
  folder.write("parts/c.yaml", "linewright: 1\nnodes: [{name: n3, kind: tee, at: [3, 0, 0]}]\n");
  folder.write("a.yaml", "linewright: 1\nnodes: [{name: n4, kind: tee, at: [4, 0, 0]}]\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_TRUE(result.project) << shown(result.errors);
  std::vector<std::string> names;
  for (const Node& node : result.project->nodes) names.push_back(node.name);
  EXPECT_EQ(names, (std::vector<std::string>{"n1", "n2", "n3", "n4"}));
  EXPECT_EQ(result.project->nodes[2].where.file, "parts/c.yaml");
}

TEST(LoadProject, FindsAMeshBesideTheFileThatNamesIt) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + "include: [parts/b.yaml]\n");
  folder.write("parts/b.yaml",
               "linewright: 1\nstructure:\n  meshes: [{name: skin, file: skin.stl, units: ft}]\n");
  folder.write("parts/skin.stl", "");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_TRUE(result.project) << shown(result.errors);
  EXPECT_EQ(result.project->structure.meshes.at(0).file, "parts/skin.stl");
  EXPECT_EQ(result.project->structure.meshes.at(0).inches_per_unit, 12);
}

TEST(LoadProject, AcceptsACurvedPanelAndAHoleThatTouchesTheOutline) {
  const Project project = loaded(
      "structure:\n"
      "  frames:\n"
      "    - {name: F1, station: 9, thickness: 0.03, outline: [[0, 0], [4, 0], [4, 3], [0, 3]],\n"
      "       holes: [{name: slot, outline: [[0, 1], [1, 1], [1, 2], [0, 2]], edge: bare}]}\n"
      "  panels:\n"
      "    - {name: skin, corners: [[0, -5, 0], [0, 0, 5], [0, 5, 0], [9, 5, 0], [9, 0, 5], "
      "[9, -5, 0]], thickness: 0.03}\n");
  EXPECT_EQ(project.structure.panels.size(), 1u);
  EXPECT_EQ(project.structure.frames.at(0).holes.size(), 1u);
}

TEST(LoadProject, AcceptsLengthsExactlyAtTheirLimits) {
  const Project project = loaded(
      "nodes:\n  - {name: far, kind: tee, at: [10000, -10000, 0]}\n"
      "temperature: {min: 70, rigged: 70, max: 70}\n");
  EXPECT_EQ(project.nodes.at(0).at.x, 10000);
}

TEST(LoadProject, ShowsTheLineOfAnError) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + "build_tolerance: -1\r\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_EQ(result.errors.size(), 1u);
  EXPECT_EQ(result.errors[0].source_line, "build_tolerance: -1");
}

// A misspelt section hides the names in it; a misspelt setting hides none.
TEST(LoadProject, ReportsAMissingNameOnlyWhereItCannotBeInAMisspeltSection) {
  const std::string waiver = "waivers: [{rule: chafe, route: run, reason: accepted}]\n";
  const ProjectFolder folder;
  folder.write("project.yaml", head + "climbs: 500\n" + waiver);
  EXPECT_EQ(shown(load_project(folder.path(), small_catalogue()).errors),
            "project.yaml:3:1: unknown key 'climbs' in a project file | did you mean 'climb'? " +
                keys_words(project_map) +
                "\nproject.yaml:4:32: there is no route 'run' | the project has no routes\n");
  folder.write("project.yaml", head + "rotues: [{name: run}]\n" + waiver);
  EXPECT_EQ(shown(load_project(folder.path(), small_catalogue()).errors),
            "project.yaml:3:1: unknown key 'rotues' in a project file | did you mean 'routes'? " +
                keys_words(project_map) + "\n");
}

TEST(LoadProject, CountsColumnsInCharacters) {
  const ProjectFolder folder;
  folder.write("project.yaml", head + "attitudes: [{name: \xC3\xA9t\xC3\xA9, pich: 3, roll: 0}]\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  EXPECT_EQ(
      shown(result.errors),
      "project.yaml:3:25: unknown key 'pich' in an attitude | did you mean 'pitch'? keys of an "
      "attitude: name, pitch, roll\n");
}

TEST(LoadProject, TellsAPartFromAProjectAndMissesNothingThatOthersName) {
  const ProjectFolder folder;
  const std::string routes =
      "routes:\n  - {name: a, system: static, line: tube-nylon-1/4, from: x, to: y, points: []}\n";
  const std::string part =
      "project.yaml:1:1: this looks like a part of a project, not like a project file | check the "
      "project file that includes it\n";
  folder.write("project.yaml", "linewright: 1\nunits: in\n" + routes);
  EXPECT_EQ(shown(load_project(folder.path(), small_catalogue()).errors),
            part + "project.yaml:1:1: a project file needs 'name'\n");
  folder.write("project.yaml", routes);
  EXPECT_TRUE(shown(load_project(folder.path(), small_catalogue()).errors).starts_with(part));
  // With a name it is a project, and what it lacks is missing.
  folder.write("project.yaml", head + routes);
  EXPECT_TRUE(
      shown(load_project(folder.path(), small_catalogue()).errors).starts_with("project.yaml:4:"));
}

// Whoever states how the aeroplane is parked is not told less than who states nothing.
TEST(LoadProject, LooksForWaterInLevelFlightWhereNoStatedAttitudeIsNearIt) {
  const auto names = [](const std::string& attitudes) {
    std::string all;
    for (const Attitude& each : loaded("attitudes: [" + attitudes + "]\n").attitudes)
      all += each.name + " " + std::to_string(static_cast<int>(each.pitch_deg)) + "; ";
    return all;
  };
  EXPECT_EQ(names("{name: parked, pitch: 12}"), "parked 12; level flight 0; ");
  EXPECT_EQ(names("{name: banked, pitch: 0, roll: 30}"), "banked 0; level flight 0; ");
  EXPECT_EQ(names("{name: parked, pitch: 12}, {name: cruise, pitch: 3}"), "parked 12; cruise 3; ");
  EXPECT_EQ(names("{name: climb, pitch: 3.05}"), "climb 3; level flight 0; ");
  const auto said = loaded("attitudes: [{name: parked, pitch: 12}]\n").assumptions;
  EXPECT_EQ(std::count(said.begin(), said.end(),
                       "no attitude within 3 degrees of level is stated: water was looked for in "
                       "level flight, too"),
            1);
}

}  // namespace
}  // namespace linewright
