#pragma once
// A bulkhead union in a frame, between two lines of a vent.

#include <string>
#include <vector>

#include "rules/project_text.hpp"

namespace linewright {

/// The union at FS 106, BL 0, WL 10, of a body 5/8 in across its nuts, and the frame of 0.032 in
/// there with its holes, by (BL, WL).
struct BulkheadProject {
  std::string holes = "[{name: H, centre: [0, 10], diameter: 7/16}]";
  std::string size = ", fitting: through-1/4, direction: [1, 0, 0]";
  std::string at = "106, 0, 10";
  std::string beside = {};  ///< further structure, two spaces in
  bool has_frame = true;
  std::string thread = {};  ///< of its fitting; empty: not stated

  ProjectSections sections() const {
    ProjectSections all;
    if (has_frame)
      all.structure =
          "  frames: [{name: F, station: 106, thickness: 0.032, outline: [[-20, -20], [20, -20], "
          "[20, 40], [-20, 40]], holes: " +
          holes + "}]\n";
    all.structure += beside;
    all.nodes = "  - {name: union, kind: bulkhead, at: [" + at + "]" + size + "}\n" +
                held_node("forward", "94, 0, 10") + held_node("aft", "118, 0, 10");
    const bool has_ports = size.find("fitting") != std::string::npos;
    const auto led = [&](const std::string& name, const std::string& to, const std::string& port) {
      return "  - {name: " + name + ", system: vent, line: tube-nylon-1/4, from: union, to: " + to +
             (has_ports ? ", from_port: " + port : "") + "}\n";
    };
    all.routes = led("line", "aft", "a") + led("on", "forward", "b");
    all.rest = std::string(
                   "fittings: [{name: through-1/4, kind: bulkhead, tube: 1/4, take_up: [0.8], "
                   "body_diameter: "
                   "5/8, nut: 0.2, source: invented") +
               (thread.empty() ? "" : ", thread: " + thread) + "}]\n";
    return all;
  }
  std::vector<Judgement> judged() const { return linewright::judged(sections(), "support-mount"); }
};

/// A hole so wide about the union, and the union turned aslant in it by so much.
inline std::string hole_about_union(double diameter_in) {
  return "[{name: H, centre: [0, 10], diameter: " + std::to_string(diameter_in) + "}]";
}

}  // namespace linewright
