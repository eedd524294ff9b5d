#pragma once
// A small tailcone in which tests place things by reference.

#include <gtest/gtest.h>

#include <string>

#include "input/project_folder.hpp"

namespace linewright {

/// Two frames, a Z-shaped stringer along FS on the left, a flat floor and a sloping side, and a few
/// nodes; `more` follows.
inline std::string tailcone(const std::string& more) {
  return "linewright: 1\n"
         "name: a\n"
         "build_tolerance: 0.06\n"
         "structure:\n"
         "  frames:\n"
         "    - {name: F1, station: 100, thickness: 0.04, outline: [[-14, 0], [14, 0], [14, 26], "
         "[-14, 26]], holes: [{name: round, centre: [-8, 14], diameter: 0.75, edge: grommet, bore: "
         "0.5}, {name: tall, outline: [[2, 4], [6, 4], [6, 10], [2, 10]], edge: bare}]}\n"
         "    - {name: F2, station: 140, thickness: 0.04, outline: [[-14, 0], [14, 0], [14, 26], "
         "[-14, 26]]}\n"
         "  channels:\n"
         "    - {name: S, path: [[100, -10, 14], [140, -10, 18]], section: [[-0.5, 0], [0, 0], [0, "
         "1], [0.5, 1]], thickness: 0.04, edge: bare}\n"
         "  panels:\n"
         "    - {name: floor, corners: [[100, -10, 2], [140, -10, 2], [140, 10, 2], [100, 10, 2]], "
         "thickness: 0.04}\n"
         "nodes:\n"
         "  - {name: from, kind: end, at: [90, -8, 14]}\n"
         "  - {name: to, kind: end, at: [150, -8, 20]}\n" +
         more;
}

/// The only route of the project, made of the points given, which must load.
inline Route route_of(const std::string& keys, const std::string& points) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               tailcone("routes:\n  - {name: r, system: wire, line: wire-1/4, from: "
                        "from, to: to, " +
                        keys + "points: [" + points + "]}\n"));
  const LoadResult loaded = load_project(folder.path(), small_catalogue());
  EXPECT_EQ(shown(loaded.errors), "");
  return loaded.project ? loaded.project->routes.front() : Route();
}

/// What is wrong with such a route, without its places.
inline std::string fault_of(const std::string& keys, const std::string& points) {
  const ProjectFolder folder;
  folder.write("project.yaml",
               tailcone("routes:\n  - {name: r, system: wire, line: wire-1/4, from: "
                        "from, to: to, " +
                        keys + "points: [" + points + "]}\n"));
  std::string all;
  for (const Diagnostic& error : load_project(folder.path(), small_catalogue()).errors)
    all += error.message + "\n";
  return all;
}

inline void expect_place(Vec3 found, Vec3 expected) {
  EXPECT_NEAR(found.x, expected.x, 2e-9);
  EXPECT_NEAR(found.y, expected.y, 2e-9);
  EXPECT_NEAR(found.z, expected.z, 2e-9);
}

}  // namespace linewright
