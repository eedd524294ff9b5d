// Writes a project to measure whole checks on: an invented tailcone as binary STL and lines through
// it, clamped every few inches.
//   write_project FOLDER TRIANGLES ROUTES
// The folder must be there; `tailcone.stl` and `project.yaml` in it are written over.

#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <numbers>
#include <random>
#include <string>

#include "bench/tailcone.hpp"

namespace linewright::bench {
namespace {

void put(std::ofstream& file, const void* bytes, std::size_t count) {
  file.write(static_cast<const char*>(bytes), static_cast<std::streamsize>(count));
}

bool write_stl(const std::string& path, const std::vector<std::array<float, 9>>& triangles) {
  std::ofstream file(path, std::ios::binary);
  const std::string head(80, ' ');
  const auto count = static_cast<std::uint32_t>(triangles.size());
  put(file, head.data(), head.size());
  put(file, &count, sizeof count);
  for (const auto& corners : triangles) {
    const std::array<float, 3> no_normal{};
    const std::uint16_t nothing = 0;
    put(file, no_normal.data(), sizeof no_normal);
    put(file, corners.data(), sizeof corners);
    put(file, &nothing, sizeof nothing);
  }
  file.flush();
  return static_cast<bool>(file);
}

std::string place(Vec3 at) {
  char text[80];
  std::snprintf(text, sizeof text, "[%.4f, %.4f, %.4f]", at.x, at.y, at.z);
  return text;
}

/// From bay to bay along the cone, each line at a place of its own around it and at its own depth.
bool write_yaml(const std::string& path, int routes, bool with_mesh) {
  constexpr int clamps = 3;
  std::mt19937_64 random(7);
  const auto between_values = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  std::string nodes = "nodes:\n";
  std::string lines = "routes:\n";
  for (int i = 0; i < routes; ++i) {
    const std::string name = std::to_string(i);
    const double angle = 2 * std::numbers::pi * i / routes;
    const double inward = 3 + 1.1 * (i % 4) + between_values(-0.05, 0.05);
    const auto at = [&](int k) { return inside_tailcone(152 + 8.0 * k, angle, inward); };
    nodes += "  - {name: a" + name + ", kind: bulkhead, at: " + place(at(0)) + "}\n";
    nodes += "  - {name: b" + name + ", kind: bulkhead, at: " + place(at(clamps + 1)) + "}\n";
    lines += "  - name: line-" + name + "\n    system: 'static: s" + name +
             "'\n    line: tube-aluminium-1/4\n    from: a" + name + "\n    to: b" + name +
             "\n    points:\n";
    for (int k = 1; k <= clamps; ++k) lines += "      - {at: " + place(at(k)) + ", hold: clamp}\n";
  }
  std::ofstream file(path);
  file << "linewright: 1\nname: An invented tailcone, to measure with\nunits: in\n"
          "build_tolerance: 0.06\ntemperature: {min: 30 degF, rigged: 70 degF, max: 110 degF}\n"
          "load_factor: {positive: 3.8, negative: -1.5}\n";
  if (with_mesh)
    file << "structure:\n  meshes:\n    - {name: tailcone, file: tailcone.stl, units: in, "
            "crease_angle: 30, thickness: 0}\n";
  file << nodes << lines;
  file.flush();
  return static_cast<bool>(file);
}

}  // namespace
}  // namespace linewright::bench

int main(int count, char** words) {
  using namespace linewright::bench;
  const std::size_t triangles = count == 4 ? std::strtoul(words[2], nullptr, 10) : 0;
  const int routes = count == 4 ? std::atoi(words[3]) : 0;
  if (count != 4 || routes < 1 || routes > 1000) {
    std::fprintf(stderr,
                 "usage: write_project FOLDER TRIANGLES ROUTES (no mesh for 0 triangles)\n");
    return 2;
  }
  const std::string folder = words[1];
  const bool written =
      (triangles == 0 || write_stl(folder + "/tailcone.stl", tailcone_corners(triangles))) &&
      write_yaml(folder + "/project.yaml", routes, triangles > 0);
  if (!written) std::fprintf(stderr, "write_project: cannot write in %s\n", folder.c_str());
  return written ? 0 : 1;
}
