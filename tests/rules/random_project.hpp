#pragma once
// A tailcone of random structure and lines, drawn as YAML in any units, place or direction.

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
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
  std::string reversed;                ///< name of a route drawn from its other end
  double side = 1;                     ///< -1: mirrored, BL to -BL
  std::vector<double> collinear = {};  ///< shares of each leg at which a point is added
  bool backwards = false;              ///< every list from its last to its first
  /// How its frame stands; what is not at a station has no shift.
  std::string stand = "station";
  /// Where FS, BL and WL go: a turn of the whole aeroplane.
  std::array<Vec3, 3> axes{Vec3{1, 0, 0}, Vec3{0, 1, 0}, Vec3{0, 0, 1}};

  Vec3 turned(Vec3 place) const {
    return axes[0] * place.x + axes[1] * (side * place.y) + axes[2] * place.z;
  }
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
  static constexpr double frame_in = 115;

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
    return "[" + length(drawing.side * bl + drawing.shift.y, drawing) + ", " +
           length(wl + drawing.shift.z, drawing) + "]";
  }
  static std::string place_words(Vec3 at, const Drawing& drawing) {
    return "[" + length(at.x, drawing) + ", " + length(at.y, drawing) + ", " +
           length(at.z, drawing) + "]";
  }
  static std::string space(Vec3 at, const Drawing& drawing) {
    return place_words(drawing.turned(at) + drawing.shift, drawing);
  }

  /// A place of a section, in the plane that a channel so directed mainly crosses.
  static Vec3 section_in_space(double u, double v, Vec3 path) {
    const double fs = std::abs(path.x);
    const double bl = std::abs(path.y);
    const double wl = std::abs(path.z);
    if (fs >= bl && fs >= wl) return {0, u, v};
    return bl >= wl ? Vec3{u, 0, v} : Vec3{u, v, 0};
  }
  static std::string section(double u, double v, Vec3 path, const Drawing& drawing) {
    const Vec3 at = drawing.turned(section_in_space(u, v, path));
    const Vec3 along = drawing.turned(path);
    const double fs = std::abs(along.x);
    const double bl = std::abs(along.y);
    const double wl = std::abs(along.z);
    const bool aft = fs >= bl && fs >= wl;
    return "[" + length(aft ? at.y : at.x, drawing) + ", " +
           length(aft || bl >= wl ? at.z : at.y, drawing) + "]";
  }

  /// Where the frame stands.
  static std::string stand(const Drawing& drawing) {
    const Vec3 at = drawing.turned({frame_in, 0, 0}) + drawing.shift;
    if (drawing.stand == "station") return "station: " + length(at.x, drawing);
    if (drawing.stand == "buttock_line") return "buttock_line: " + length(at.y, drawing);
    if (drawing.stand == "waterline") return "waterline: " + length(at.z, drawing);
    const auto direction = [](Vec3 d) { return fmt::format("[{}, {}, {}]", d.x, d.y, d.z); };
    return "plane: {point: " + place_words(at, drawing) +
           ", normal: " + direction(drawing.axes[0]) + ", up: " + direction(drawing.axes[2]) + "}";
  }

  /// The items one after another, or from the last to the first.
  static std::string listed(std::vector<std::string> items, const Drawing& drawing,
                            const std::string& between_them = "") {
    if (drawing.backwards) std::reverse(items.begin(), items.end());
    std::string text;
    for (const std::string& item : items) text += (text.empty() ? "" : between_them) + item;
    return text;
  }

  std::string structure(const Drawing& drawing) const {
    std::vector<std::string> items;
    std::string text =
        "  frames:\n    - {name: F4, " + stand(drawing) + ", thickness: " + length(0.032, drawing) +
        ", outline: [" + plane(-12, 2, drawing) + ", " + plane(12, 2, drawing) + ", " +
        plane(12, 18, drawing) + ", " + plane(-12, 18, drawing) + "],\n       holes: [";
    for (std::size_t i = 0; i < hole_edges.size(); ++i)
      items.push_back(fmt::format("{{name: hole-{}, centre: {}, diameter: {}, edge: {}}}", i,
                                  plane(2.0 * double(i) - 2, 10, drawing),
                                  length(hole_diameters[i], drawing), hole_edges[i]));
    text += listed(items, drawing, ", ") + "]}\n";
    if (!channels.empty()) text += "  channels:\n";
    items.clear();
    for (std::size_t i = 0; i < channels.size(); ++i) {
      const Vec3 path = channels[i].second - channels[i].first;
      items.push_back(fmt::format(
          "    - {{name: channel-{}, path: [{}, {}], section: [{}, {}, {}], thickness: {}, "
          "edge: {}}}\n",
          i, space(channels[i].first, drawing), space(channels[i].second, drawing),
          section(0, 0, path, drawing), section(0, 0.7, path, drawing),
          section(0.5, 0.7, path, drawing), length(0.025, drawing),
          i % 3 == 0 ? "edge-trim" : "bare"));
    }
    text += listed(items, drawing) + "  panels:\n";
    items.clear();
    for (std::size_t i = 0; i < panels.size(); ++i)
      items.push_back(
          fmt::format("    - {{name: panel-{}, corners: [{}, {}, {}], thickness: {}}}\n", i,
                      space(panels[i][0], drawing), space(panels[i][1], drawing),
                      space(panels[i][2], drawing), length(0.02, drawing)));
    text += listed(items, drawing) + "  solids:\n";
    items.clear();
    for (std::size_t i = 0; i < rods.size(); ++i)
      items.push_back(fmt::format(
          "    - {{name: rod-{}, cylinder: {{from: {}, to: {}, diameter: {}}}}}\n", i,
          space(rods[i].first, drawing), space(rods[i].second, drawing), length(0.4, drawing)));
    text += listed(items, drawing);
    return text;
  }

  /// Points that lie on the straight between two others change nothing.
  static std::vector<DrawnPoint> with_collinear(const std::vector<DrawnPoint>& points,
                                                const Drawing& drawing) {
    std::vector<DrawnPoint> all{points.front()};
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      for (const double share : drawing.collinear)
        all.push_back({between(points[i].at, points[i + 1].at, share), 0, "", 0});
      all.push_back(points[i + 1]);
    }
    return all;
  }

  static void write_route(const DrawnRoute& route, const Drawing& drawing, ProjectSections& all) {
    std::vector<DrawnPoint> points = with_collinear(route.points, drawing);
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
