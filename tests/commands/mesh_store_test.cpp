#include "commands/mesh_store.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>
#include <chrono>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "commands/checked_report.hpp"
#include "commands/command_run.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"

namespace linewright {
namespace {

using test::contains;
using test::run;
using test::TempFolder;

/// Text STL of a plate at a level, BL -5 to 5, FS 105 to 125.
std::string plate_stl(double wl) {
  std::string text = "solid plate\n";
  for (const auto& [b, c] : {std::pair{"125 -5", "125 5"}, {"125 5", "105 5"}})
    text += fmt::format(
        "facet normal 0 0 1\nouter loop\nvertex 105 -5 {0}\nvertex {1} {0}\nvertex {2} "
        "{0}\nendloop\nendfacet\n",
        wl, b, c);
  return text + "endsolid plate\n";
}

/// A line at WL 10 over a plate, with a mesh entry that more can be said of.
struct PlateProject {
  TempFolder folder;
  std::string path = folder / "project.yaml";
  std::string file = folder / "plate.stl";

  PlateProject() {
    write_entry();
    test::write(file, plate_stl(9));
  }

  void write_entry(const std::string& more = "", const std::string& name = "plate.stl",
                   const std::string& second = "") const {
    test::write(path,
                "linewright: 1\nname: test\nunits: in\nbuild_tolerance: 0\n"
                "temperature: {min: 70 degF, rigged: 70 degF, max: 70 degF}\n"
                "load_factor: {positive: 1, negative: -1}\n"
                "structure:\n  meshes:\n    - {name: plate, file: " +
                    name + ", units: in" + more + "}\n" + second +
                    "nodes:\n  - {name: forward, kind: bulkhead, at: [100, 0, 10]}\n"
                    "  - {name: aft, kind: bulkhead, at: [130, 0, 10]}\n"
                    "routes:\n  - {name: route, system: static, line: tube-nylon-1/4, "
                    "from: forward, to: aft, points: []}\n");
  }

  Project loaded() const {
    const auto opened = open_project(path);
    if (!opened) throw std::runtime_error(opened.error().errors);
    return *opened;
  }

  /// The one field; a null pointer where the store refuses.
  std::shared_ptr<const MeshField> field(MeshStore& store) const {
    const auto fields = store.fields_of(loaded(), path);
    return fields ? fields->at(0) : nullptr;
  }

  test::CommandRun check(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"check", path, "--rule", "clearance", "--verbose"};
    words.insert(words.end(), more.begin(), more.end());
    return run(words);
  }
};

/// Leaves no doubt that a file was saved later than before.
void save_later(const std::string& file, const std::string& text) {
  const auto before = std::filesystem::last_write_time(file);
  test::write(file, text);
  std::filesystem::last_write_time(file, before + std::chrono::seconds(2));
}

TEST(MeshStore, KeepsWhatHasNotChanged) {
  const PlateProject project;
  MeshStore store;
  const auto first = project.field(store);
  ASSERT_TRUE(first);
  EXPECT_EQ(project.field(store), first);
  // What else the project says does not matter, nor where in it.
  test::write(project.path, "\n" + test::read(project.path));
  EXPECT_EQ(project.field(store), first);
  MeshStore other;
  EXPECT_NE(project.field(other), first);
}

TEST(MeshStore, ReadsAChangedFileAgain) {
  const PlateProject project;
  MeshStore store;
  const auto first = project.field(store);
  save_later(project.file, plate_stl(8));  // of the same size
  const auto second = project.field(store);
  EXPECT_NE(second, first);
  const Segment3 line{{115, 0, 10}, {116, 0, 10}};
  const auto away = [&](const MeshField& field) {
    return nearest(line, field.nearest_item(line, 100)->shape).distance_in;
  };
  EXPECT_EQ(away(*first), 1);
  EXPECT_EQ(away(*second), 2);
}

TEST(MeshStore, ReadsAgainWhereTheProjectSaysOtherwise) {
  const PlateProject project;
  MeshStore store;
  auto last = project.field(store);
  for (const std::string more :
       {", translate: [0, 0, 1]", ", scale: 2", ", rotate: [{about: FS, angle: 5 deg}]",
        ", thickness: 0.04", ", crease_angle: 40 deg", ""}) {
    project.write_entry(more);
    const auto next = project.field(store);
    ASSERT_TRUE(next);
    EXPECT_NE(next, last) << more;
    EXPECT_EQ(project.field(store), next) << more;
    last = next;
  }
}

TEST(MeshStore, ReadsEachMeshAndKeepsTheOthers) {
  const PlateProject project;
  test::write(project.folder / "other.stl", plate_stl(4));
  project.write_entry("", "plate.stl", "    - {name: other, file: other.stl, units: in}\n");
  MeshStore store;
  const auto first = *store.fields_of(project.loaded(), project.path);
  ASSERT_EQ(first.size(), 2U);
  save_later(project.folder / "other.stl", plate_stl(5));
  const auto second = *store.fields_of(project.loaded(), project.path);
  EXPECT_EQ(second[0], first[0]);
  EXPECT_NE(second[1], first[1]);
}

TEST(MeshStore, LetsGoWhatIsNoLongerNamed) {
  const PlateProject project;
  MeshStore store;
  const std::weak_ptr<const MeshField> held = project.field(store);
  EXPECT_FALSE(held.expired());
  EXPECT_TRUE(store.fields_of(Project(), project.path));
  EXPECT_TRUE(held.expired());
}

TEST(MeshStore, KeepsWhatItHeldWhileAFileIsBroken) {
  const PlateProject project;
  MeshStore store;
  const auto first = project.field(store);
  const std::string whole = test::read(project.file);
  const auto saved = std::filesystem::last_write_time(project.file);
  save_later(project.file, "solid plate\nfacet");
  EXPECT_FALSE(project.field(store));
  test::write(project.file, whole);
  std::filesystem::last_write_time(project.file, saved);
  EXPECT_EQ(project.field(store), first);
}

TEST(MeshStore, ABrokenFileIsOneErrorWithItsPlace) {
  const PlateProject project;
  std::string text = plate_stl(9);
  const std::string bad = "vertex 125 five 9";
  text.replace(text.find("vertex 125 5 9"), 14, bad);
  test::write(project.file, text);
  const auto result = project.check();
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, "plate.stl:6:12")) << result.err;
  EXPECT_TRUE(contains(result.err, "'five'")) << result.err;
  EXPECT_TRUE(contains(result.err, "1 error in the project's files; nothing was judged"))
      << result.err;
}

TEST(MeshStore, EveryBrokenFileIsTold) {
  const PlateProject project;
  test::write(project.file, "");
  test::write(project.folder / "other.stl", std::string(90, 'x'));
  project.write_entry("", "plate.stl", "    - {name: other, file: other.stl, units: in}\n");
  const auto result = project.check();
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err, "plate.stl")) << result.err;
  EXPECT_TRUE(contains(result.err, "other.stl")) << result.err;
  EXPECT_TRUE(contains(result.err, "2 errors in the project's files")) << result.err;
}

TEST(MeshStore, APlacementThatTakesItTooFarIsRefused) {
  const PlateProject project;
  // A corner 11/8 of 800 thousand inches out once it is turned.
  std::string text = plate_stl(9);
  text.replace(text.find("105 -5 9"), 8, "800000 800000 9");
  test::write(project.file, text);
  project.write_entry(", rotate: [{about: WL, angle: 45 deg}]");
  const auto result = project.check();
  EXPECT_EQ(result.code, 2);
  EXPECT_TRUE(contains(result.err, "project.yaml:9:7")) << result.err;
  EXPECT_TRUE(contains(result.err,
                       "where mesh plate is placed, a corner of it is more than 1000000 in from "
                       "the datum"))
      << result.err;
}

TEST(MeshStore, CheckMeasuresToAMesh) {
  const PlateProject project;
  const auto result = project.check();
  EXPECT_EQ(result.code, 0) << result.err;
  EXPECT_TRUE(contains(result.out, "clear of an edge of mesh plate")) << result.out;
  // 10 - 9.8 - 0.125: a tube of nylon is only to be told.
  test::write(project.file, plate_stl(9.8));
  EXPECT_EQ(project.check().code, 0);
  EXPECT_EQ(project.check({"--strict"}).code, 1);
  EXPECT_TRUE(contains(project.check().out, "too near to an edge of mesh plate"))
      << project.check().out;
  test::write(project.file, plate_stl(9.9));
  EXPECT_EQ(project.check().code, 1);
  EXPECT_TRUE(contains(project.check().out, "can be in an edge of mesh plate"))
      << project.check().out;
}

/// Text without the line ends within an item of a list.
std::string unwrapped(std::string text) {
  for (std::size_t at; (at = text.find("\n    ")) != std::string::npos;) text.replace(at, 5, " ");
  return text;
}

TEST(MeshStore, TheReportSaysWhatTheMeshIs) {
  const PlateProject project;
  const std::string note =
      "mesh plate has 2 triangles, FS 105.0 to 125.0, BL -5.0 to 5.0, WL 9.0 to 9.0; 4 open edges, "
      "which count as sharp";
  EXPECT_TRUE(contains(unwrapped(project.check().out), note)) << project.check().out;
  const auto report = nlohmann::json::parse(project.check({"--format", "json"}).out);
  EXPECT_TRUE(contains(report.dump(), note)) << report.dump(2);
}

TEST(MeshStore, TheReportSaysWhatIsWrongWithTheMesh) {
  const PlateProject project;
  std::string text = plate_stl(9);
  const std::string again =
      text.substr(text.find("facet"), text.find("endfacet") + 9 - text.find("facet"));
  const std::string point =
      "facet normal 0 0 0\nouter loop\nvertex 115 0 9\nvertex 115 0 9\nvertex 115 0 "
      "9\nendloop\nendfacet\n";
  text.insert(text.find("endsolid"), again + point);
  test::write(project.file, text);
  const std::string out = project.check().out;
  EXPECT_TRUE(contains(unwrapped(out),
                       "mesh plate has 4 triangles, FS 105.0 to 125.0, BL -5.0 to 5.0, WL 9.0 to "
                       "9.0; 1 has no area; 1 is there twice; 4 open edges, which count as sharp"))
      << out;
}

TEST(MeshStore, AMeshFarFromTheLinesIsAskedAbout) {
  const PlateProject project;
  project.write_entry(", translate: [0, 0, -500]");
  EXPECT_TRUE(
      contains(unwrapped(project.check().out),
               "mesh plate has 2 triangles, FS 105.0 to 125.0, BL -5.0 to 5.0, WL -491.0 to "
               "-491.0; nothing of it comes near a line: is it where it should be?"))
      << project.check().out;
}

// A plate of 20 by 10 in, scaled up to just under and over 1200 in.
TEST(MeshStore, AMeshLargerThanALightAeroplaneIsAskedAbout) {
  const PlateProject project;
  project.write_entry(", scale: 59.9, translate: [-6180, 0, -530]");
  const std::string asked = "that is larger than a light aeroplane: are its units right?";
  EXPECT_FALSE(contains(unwrapped(project.check().out), asked));
  project.write_entry(", scale: 60.1, translate: [-6200, 0, -532]");
  EXPECT_TRUE(contains(unwrapped(project.check().out), asked)) << project.check().out;
}

TEST(MeshStore, AMeshNearALineIsNotAskedAboutWhereNoRuleLooks) {
  const PlateProject project;
  const std::string out = run({"check", project.path, "--rule", "network"}).out;
  EXPECT_TRUE(contains(unwrapped(out), "looked at near the lines: 0")) << out;
  EXPECT_FALSE(contains(unwrapped(out), "where it should be")) << out;
}

TEST(MeshStore, EveryRuleAndThreadSaysTheSame) {
  const PlateProject project;
  test::write(project.file, plate_stl(9.9));
  const auto first = run({"check", project.path, "--format", "json"});
  for (int i = 0; i < 3; ++i)
    EXPECT_EQ(run({"check", project.path, "--format", "json"}).out, first.out);
}

/// Text STL of a closed box about FS 105 to 125, BL -5 to 5.
std::string box_stl(double bottom_wl, double top_wl) {
  const auto corner = [&](int i) {
    return fmt::format("vertex {} {} {}\n", (i & 1) != 0 ? 125 : 105, (i & 2) != 0 ? 5 : -5,
                       (i & 4) != 0 ? top_wl : bottom_wl);
  };
  std::string text = "solid box\n";
  for (const std::array<int, 4>& side : {std::array{0, 1, 3, 2},
                                         {4, 6, 7, 5},
                                         {0, 4, 5, 1},
                                         {2, 3, 7, 6},
                                         {0, 2, 6, 4},
                                         {1, 5, 7, 3}})
    for (const auto& [b, c] : {std::pair{1, 2}, {2, 3}})
      text += "facet normal 0 0 0\nouter loop\n" + corner(side[0]) +
              corner(side[static_cast<std::size_t>(b)]) +
              corner(side[static_cast<std::size_t>(c)]) + "endloop\nendfacet\n";
  return text + "endsolid box\n";
}

// What is kept of which lines run inside is of the same mesh and the same place of the line.
TEST(MeshStore, TellsAnewWhetherALineRunsInsideWhereItOrTheMeshHasMoved) {
  const PlateProject project;
  test::write(project.file, box_stl(0, 20));
  MeshStore store;
  const auto is_inside = [&](double wl) {
    Project moved = project.loaded();
    for (Node& node : moved.nodes) node.at.z = wl;
    const auto fields = store.fields_of(moved, project.path);
    const PreparedProject prepared = prepare(moved, *fields);
    return contains(store.notes_on(prepared, Phrasing{}).at(0), "route runs inside of it");
  };
  EXPECT_TRUE(is_inside(10));
  EXPECT_TRUE(is_inside(10));
  EXPECT_FALSE(is_inside(30));
  EXPECT_TRUE(is_inside(10));
  save_later(project.file, box_stl(0, 5));
  EXPECT_FALSE(is_inside(10));
}

// A mesh that was saved anew is another one, whatever the project says.
TEST(MeshStore, NothingIsAnsweredAtOnceWhereAMeshWasSaved) {
  const PlateProject project;
  CheckOptions options;
  options.project = project.path;
  MeshStore store;
  const OpenedProject opened = open_with_files(project.path);
  const auto report = checked_report(opened, options, store);
  ASSERT_TRUE(report);
  const JudgedProject before{*opened.project, store.last_fields()};
  const auto at_once = report_at_once(opened, options, store, before, report->judgements);
  ASSERT_TRUE(at_once);
  EXPECT_EQ(at_once->judgements, report->judgements);
  save_later(project.file, plate_stl(9.5));
  EXPECT_FALSE(report_at_once(opened, options, store, before, report->judgements));
}

}  // namespace
}  // namespace linewright
