// Holes of channels, panels and boxes as they are read.

#include <gtest/gtest.h>

#include <string>

#include "catalogue/catalogue.hpp"
#include "input/load_project.hpp"
#include "input/project_folder.hpp"

namespace linewright {
namespace {

LoadResult loaded(const std::string& structure, const std::string& points = "[]") {
  const ProjectFolder folder;
  folder.write("project.yaml",
               "linewright: 1\nname: t\nunits: mm\nstructure:\n" + structure +
                   "nodes:\n  - {name: a, kind: bulkhead, at: [0, 0, 0]}\n  - {name: b, kind: "
                   "bulkhead, at: [500, 0, 0]}\nroutes:\n  - {name: r, system: vent, line: "
                   "tube-nylon-1/4, from: a, to: b, points: " +
                   points + "}\n");
  return load_project(folder.path() / "project.yaml", built_in_catalogue());
}

std::string channel(const std::string& hole) {
  return "  channels: [{name: c, path: [[254, -99, 0], [254, 99, 0]], section: [[0, -50], [0, "
         "50]], "
         "thickness: 1, edge: bare, holes: [" +
         hole + "]}]\n";
}

TEST(WallHoles, AreReadInTheFilesUnits) {
  const LoadResult result = loaded(
      channel("{name: h, at: [254, 0, 25.4], diameter: 25.4, edge: grommet, bore: 12.7}") +
          "  solids: [{name: s, box: {min: [300, -9, -9], max: [310, 9, 9]}, holes: [{name: g, at: "
          "[305, 0, 0], diameter: 8, edge: bare}]}]\n"
          "  panels: [{name: p, corners: [[400, -9, -9], [400, 9, -9], [400, 9, 9]], thickness: 1, "
          "holes: [{name: k, at: [400, 0, 0], diameter: 8, edge: rolled}]}]\n",
      "[{at: [254, 0, 25.4], hold: grommet, through: h}]");
  ASSERT_EQ(shown(result.errors), "");
  const WallHole& hole = result.project->structure.channels.at(0).holes.at(0);
  EXPECT_EQ(hole.name, "h");
  EXPECT_NEAR(hole.at.z, 1, 1e-12);
  EXPECT_NEAR(hole.diameter_in, 1, 1e-12);
  EXPECT_NEAR(*hole.bore_in, 0.5, 1e-12);
  EXPECT_EQ(hole.edge, EdgeGuard::grommet);
  EXPECT_EQ(result.project->structure.panels.at(0).holes.at(0).edge, EdgeGuard::rolled);
  EXPECT_EQ(result.project->structure.solids.at(0).holes.size(), 1u);
}

TEST(WallHoles, AreRefusedWhereTheyMakeNoSense) {
  const auto error = [](const LoadResult& result) { return shown(result.errors); };
  EXPECT_NE(
      error(loaded(channel("{name: h, at: [254, 0, 0], diameter: 8, edge: grommet, bore: 9}")))
          .find("the bore must be smaller than the hole"),
      std::string::npos);
  EXPECT_NE(error(loaded(channel("{name: h, centre: [0, 0], diameter: 8, edge: bare}")))
                .find("unknown key 'centre' in a hole in a wall"),
            std::string::npos);
  EXPECT_NE(error(loaded("  solids: [{name: s, cylinder: {from: [300, 0, 0], to: [310, 0, 0], "
                         "diameter: 9}, holes: [{name: g, at: [305, 0, 0], diameter: 3}]}]\n"))
                .find("only a 'box' can have 'holes'"),
            std::string::npos);
  EXPECT_NE(error(loaded(channel("{name: h, at: [254, 0, 0], diameter: 8, edge: bare}"),
                         "[{at: [254, 0, 0], hold: grommet, through: h, bore: 8}]"))
                .find("must be smaller than the hole it is fitted in"),
            std::string::npos);
}

}  // namespace
}  // namespace linewright
