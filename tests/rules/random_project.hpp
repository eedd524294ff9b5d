#pragma once
// A tailcone of random structure and lines, drawn as YAML in any units, place or direction.

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "oracles/random_path.hpp"
#include "rules/project_text.hpp"

namespace linewright {

/// How a project is written down; what it describes stays the same.
struct Drawing {
  double units_per_inch = 1;
  std::string units = "in";
  Vec3 shift;
  std::string reversed;  ///< name of a route drawn from its other end
};

struct DrawnPoint {
  Vec3 at;
  double bend_in = 0;
  std::string hold;  ///< "hold: clamp", or nothing
  double bore_in = 0;
};

struct DrawnRoute {
  std::string name;
  std::string system;
  std::string line;
  std::vector<DrawnPoint> points;  ///< the first and last are its nodes
  std::optional<double> tension_lbf;
};

/// Lines run from FS 100 to 130 near BL 0, WL 10, through a frame at FS 115.
class RandomProject {
 public:
  explicit RandomProject(oracles::Random& random) {
    for (const auto& [name, system, line, bl] :
         {std::tuple{"nylon", "static", "tube-nylon-1/4", -2.0},
          std::tuple{"metal", "static", "tube-aluminium-1/4", 0.0},
          std::tuple{"wires", "wire", "wire-1/4", 2.0},
          std::tuple{"cable", "cable", "cable-7x19-1/8-steel", -3.0}})
      add_route(random, {name, system, line, {}, {}}, bl);
    for (int i = 0; i < 5; ++i) {
      const Vec3 at = place(random);
      channels.push_back({at, at + random.direction() * random.between(1, 8)});
      const Vec3 rod = place(random);
      rods.push_back({rod, rod + random.direction() * random.between(1, 4)});
      const Vec3 corner = place(random);
      panels.push_back({corner, corner + random.point(4), corner + random.point(4)});
    }
    for (int i = 0; i < 4; ++i) {
      hole_edges.push_back(random.whole(0, 1) == 0 ? "bare" : "grommet");
      hole_diameters.push_back(random.between(1, 1.9));
    }
  }

  ProjectSections sections(const Drawing& drawing) const {
    ProjectSections all;
    all.units = drawing.units;
    all.build_tolerance = length(0.06, drawing);
    all.temperature = "{min: 40 degF, rigged: 70 degF, max: 100 degF}";
    all.load_factor = "{positive: 3.8, negative: -1.5}";
    all.structure = structure(drawing);
    for (const DrawnRoute& route : routes) write_route(route, drawing, all);
    return all;
  }

  std::vector<DrawnRoute> routes;
  std::vector<std::pair<Vec3, Vec3>> channels;
  std::vector<std::pair<Vec3, Vec3>> rods;
  std::vector<std::array<Vec3, 3>> panels;
  std::vector<std::string> hole_edges;
  std::vector<double> hole_diameters;

 private:
  static Vec3 place(oracles::Random& random) {
    const double fs = random.between(103, 127);
    const double bl = random.between(-4, 6);
    return {fs, bl, random.between(8.5, 11.5)};
  }

  void add_route(oracles::Random& random, DrawnRoute route, double bl) {
    const bool is_cable = route.system == "cable";
    const auto near = [&](double fs) {
      const double off = random.between(-0.5, 0.5);
      return Vec3{fs, bl + off, 10 + random.between(-0.5, 0.5)};
    };
    route.points.push_back({near(100), 0, {}, 0});
    if (!is_cable)
      for (const double fs : {107.0, 112.5, 122.0})
        route.points.push_back(
            {near(fs), random.between(2.5, 4), random.whole(0, 1) == 0 ? "hold: clamp" : "", 0});
    route.points.push_back({near(130), 0, {}, 0});
    if (is_cable) {
      route.points.insert(
          route.points.begin() + 1,
          {between(route.points[0].at, route.points[1].at, 0.4), 0, "hold: fairlead", 0.19});
      route.tension_lbf = random.between(30, 60);
    }
    routes.push_back(route);
  }

  static std::string length(double inches, const Drawing& drawing) {
    return fmt::format("{:.12f}", inches * drawing.units_per_inch);
  }
  static std::string plane(double bl, double wl, const Drawing& drawing) {
    return "[" + length(bl + drawing.shift.y, drawing) + ", " +
           length(wl + drawing.shift.z, drawing) + "]";
  }
  static std::string space(Vec3 at, const Drawing& drawing) {
    const Vec3 moved = at + drawing.shift;
    return "[" + length(moved.x, drawing) + ", " + length(moved.y, drawing) + ", " +
           length(moved.z, drawing) + "]";
  }

  std::string structure(const Drawing& drawing) const {
    std::string text =
        "  frames:\n    - {name: F4, station: " + length(115 + drawing.shift.x, drawing) +
        ", thickness: " + length(0.032, drawing) + ", outline: [" + plane(-12, 2, drawing) + ", " +
        plane(12, 2, drawing) + ", " + plane(12, 18, drawing) + ", " + plane(-12, 18, drawing) +
        "],\n       holes: [";
    for (std::size_t i = 0; i < hole_edges.size(); ++i)
      text += fmt::format("{}{{name: hole-{}, centre: {}, diameter: {}, edge: {}}}",
                          i == 0 ? "" : ", ", i, plane(2.0 * double(i) - 2, 10, drawing),
                          length(hole_diameters[i], drawing), hole_edges[i]);
    text += "]}\n  channels:\n";
    for (std::size_t i = 0; i < channels.size(); ++i)
      text += fmt::format(
          "    - {{name: channel-{}, path: [{}, {}], section: [[0, 0], [0, {}], [{}, {}]], "
          "thickness: {}, edge: {}}}\n",
          i, space(channels[i].first, drawing), space(channels[i].second, drawing),
          length(0.7, drawing), length(0.5, drawing), length(0.7, drawing), length(0.025, drawing),
          i % 3 == 0 ? "edge-trim" : "bare");
    text += "  panels:\n";
    for (std::size_t i = 0; i < panels.size(); ++i)
      text += fmt::format("    - {{name: panel-{}, corners: [{}, {}, {}], thickness: {}}}\n", i,
                          space(panels[i][0], drawing), space(panels[i][1], drawing),
                          space(panels[i][2], drawing), length(0.02, drawing));
    text += "  solids:\n";
    for (std::size_t i = 0; i < rods.size(); ++i)
      text += fmt::format("    - {{name: rod-{}, cylinder: {{from: {}, to: {}, diameter: {}}}}}\n",
                          i, space(rods[i].first, drawing), space(rods[i].second, drawing),
                          length(0.4, drawing));
    return text;
  }

  static void write_route(const DrawnRoute& route, const Drawing& drawing, ProjectSections& all) {
    std::vector<DrawnPoint> points = route.points;
    const bool reversed = drawing.reversed == route.name;
    if (reversed) std::reverse(points.begin(), points.end());
    const std::string first = route.name + (reversed ? "-aft" : "-forward");
    const std::string last = route.name + (reversed ? "-forward" : "-aft");
    const auto node = [&](const std::string& name, Vec3 at) {
      return "  - {name: " + name + ", kind: bulkhead, at: " + space(at, drawing) + "}\n";
    };
    all.nodes += node(first, points.front().at) + node(last, points.back().at);
    all.routes += "  - {name: " + route.name + ", system: " + route.system +
                  ", line: " + route.line + ", from: " + first + ", to: " + last;
    if (route.tension_lbf)
      all.routes += fmt::format(", tension: {{rigged: {:.12f} lbf}}", *route.tension_lbf);
    all.routes += ",\n     points: [";
    for (std::size_t i = 1; i + 1 < points.size(); ++i) {
      const DrawnPoint& point = points[i];
      all.routes += std::string(i == 1 ? "" : ", ") + "{at: " + space(point.at, drawing);
      if (point.bend_in > 0) all.routes += ", bend: " + length(point.bend_in, drawing);
      if (!point.hold.empty()) all.routes += ", " + point.hold;
      if (point.bore_in > 0) all.routes += ", bore: " + length(point.bore_in, drawing);
      all.routes += "}";
    }
    all.routes += "]}\n";
  }
};

}  // namespace linewright
