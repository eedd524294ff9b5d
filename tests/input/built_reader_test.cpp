#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

#include "input/project_folder.hpp"

namespace linewright {
namespace {

const std::string lines = R"(linewright: 1
name: measured
units: mm
measuring_tolerance: 0.8
structure:
  frames:
    - name: F4
      station: 4000
      thickness: 0.8
      outline: [[-300, 0], [300, 0], [300, 600], [-300, 600]]
      holes: [{name: F4-a, centre: [0, 250], diameter: 20, edge: grommet}]
  solids:
    - {name: shelf, box: {min: [3000, -100, 0], max: [3500, 100, 200]}}
nodes:
  - {name: port, kind: static-port, at: [5080, 0, 254]}
  - {name: dial, kind: instrument, at: [2540, 0, 254]}
routes:
  - name: line
    system: static
    line: tube-nylon-1/4
    from: port
    to: dial
    points:
      - {at: [4572, 0, 254], hold: clamp}
      - {at: [4300, 0, 254]}
      - {at: [4000, 0, 254], through: F4-a}
      - {at: [3300, 0, 254], hold: clamp, to: shelf}
built:
)";

/// What the project has of one measure.
Measurement read(const std::string& entry) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               lines + "  - {route: line, " + entry + ", on: 2024-02-29, by: AB}\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  if (!result.project) throw std::runtime_error(shown(result.errors));
  return result.project->built.at(0);
}

TEST(BuiltReader, ReadsAMeasureInTheFilesUnits) {
  const Measurement measured = read("distance: 254, gap: 12.7, to: shelf");
  EXPECT_EQ(measured.route, "line");
  EXPECT_NEAR(*measured.distance_in, 10, 1e-12);
  EXPECT_NEAR(*measured.gap_in, 0.5, 1e-12);
  EXPECT_EQ(measured.to, "shelf");
  EXPECT_EQ(measured.on, "2024-02-29") << "a leap year has that day";
  EXPECT_EQ(measured.by, "AB");
  EXPECT_EQ(measured.of, Measurement::a_distance);
}

TEST(BuiltReader, CountsSupportsAndHolesAlongTheLine) {
  EXPECT_EQ(read("support: 1, fs: 4570").of, 0);
  EXPECT_EQ(read("support: 2, fs: 4000").of, 2) << "the corner before it has no number";
  EXPECT_EQ(read("support: 3, fs: 3300").of, 3);
}

TEST(BuiltReader, KnowsSupportsByWhatTheyAreCalledAndByWhatTheyAreOn) {
  for (const std::string& name : std::vector<std::string>{"clamp on shelf", "shelf"})
    EXPECT_EQ(read("support: " + name + ", fs: 3300").of, 3) << name;
  for (const std::string& name : std::vector<std::string>{"F4-a", "hole F4-a", "grommet F4-a"})
    EXPECT_EQ(read("support: " + name + ", fs: 4000").of, 2) << name;
  EXPECT_EQ(read("support: clamp, fs: 4570").of, 0);
}

TEST(BuiltReader, KnowsTheNodesAtItsEnds) {
  EXPECT_EQ(read("support: port, at: [5080, 0, 250]").of, Measurement::from_node);
  EXPECT_EQ(read("support: dial, at: [2540, 0, 250]").of, Measurement::to_node);
}

TEST(BuiltReader, AGapMayBeToAPartAHoleOrARoute) {
  for (const std::string& name : std::vector<std::string>{"F4", "F4-a", "shelf"})
    EXPECT_EQ(read("support: 1, gap: 5, to: " + name).to, name);
}

TEST(BuiltReader, SaysWhatMeasuringToleranceWasTaken) {
  const ProjectFolder folder;
  std::string text = lines;
  text.erase(text.find("measuring_tolerance"), std::string("measuring_tolerance: 0.8\n").size());
  folder.write("project.yaml",
               text + "  - {route: line, support: 1, fs: 4570, on: 2026-11-20, by: AB}\n");
  const LoadResult result = load_project(folder.path(), small_catalogue());
  ASSERT_TRUE(result.project);
  EXPECT_EQ(result.project->measuring_tolerance_in, 1.0 / 32);
  const std::vector<std::string>& taken = result.project->assumptions;
  EXPECT_EQ(std::count(taken.begin(), taken.end(),
                       "measuring_tolerance is not stated: 1/32 in was taken"),
            1);
}

}  // namespace
}  // namespace linewright
