#pragma once
// Straight lines of known free length: alone, joined by a fitting, or three at a tee.

#include <optional>
#include <string>

#include "rules/small_project.hpp"

namespace linewright {

/// One line over a length, held at both ends.
inline SmallProject one_span(const std::string& line, double length_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {100, 0, 0})
      .node("altimeter", NodeKind::instrument, {100 + length_in, 0, 0});
  project.route("main", line, "port", "altimeter");
  return project;
}

/// Two lines that meet at a fitting.
inline SmallProject joined_lines(NodeKind fitting, std::optional<bool> fixed,
                                 const std::string& first_line, double first_in,
                                 const std::string& second_line, double second_in) {
  SmallProject project;
  project.node("port", NodeKind::static_port, {0, 0, 0})
      .node("joint", fitting, {first_in, 0, 0}, fixed)
      .node("altimeter", NodeKind::instrument, {first_in + second_in, 0, 0});
  project.route("left", first_line, "port", "joint");
  project.route("main", second_line, "joint", "altimeter");
  return project;
}

inline SmallProject joined_by_tee(double first_in, double second_in) {
  return joined_lines(NodeKind::tee, std::nullopt, "tube-steel-1/4", first_in, "tube-steel-1/4",
                      second_in);
}

/// Three steel tubes of these lengths from held nodes to one tee.
inline SmallProject star(double left_in, double right_in, double main_in,
                         std::optional<bool> fixed = std::nullopt) {
  SmallProject project;
  project.node("port-left", NodeKind::static_port, {0, -left_in, 0})
      .node("port-right", NodeKind::static_port, {0, right_in, 0})
      .node("altimeter", NodeKind::instrument, {-main_in, 0, 0})
      .node("tee", NodeKind::tee, {0, 0, 0}, fixed);
  project.route("left", "tube-steel-1/4", "port-left", "tee");
  project.route("right", "tube-steel-1/4", "port-right", "tee");
  project.route("main", "tube-steel-1/4", "tee", "altimeter");
  return project;
}

}  // namespace linewright
