#include "lines/motion/tension_change.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "physics/cable.hpp"

namespace linewright {

namespace {

std::optional<TiedCable> tied(const PreparedRoute& route) {
  const Line& line = *route.line;
  if (line.kind != LineKind::cable || !line.axial_stiffness_lbf || !line.expansion_per_degf)
    return std::nullopt;
  const double length = route.length_in();
  return TiedCable{line.axial_stiffness_lbf->value / length,
                   (airframe_expansion_per_degf - line.expansion_per_degf->value) * length};
}

/// The other cables of the same control.
std::vector<TiedCable> tied_beside(const PreparedProject& prepared, const PreparedRoute& route) {
  std::vector<TiedCable> others;
  for (const PreparedRoute& other : prepared.routes) {
    if (!work_together(route, other)) continue;
    if (const auto each = tied(other)) others.push_back(*each);
  }
  return others;
}

}  // namespace

bool work_together(const PreparedRoute& route, const PreparedRoute& other) {
  return &route != &other && other.line->kind == LineKind::cable && !route.route->control.empty() &&
         is_same_control(route.route->control, other.route->control);
}

std::optional<double> airframe_stiffness_lbf_per_in(const PreparedProject& prepared,
                                                    const PreparedRoute& route) {
  const std::optional<double>& own = route.route->airframe_stiffness_lbf_per_in;
  return own ? own : prepared.project->airframe_stiffness_lbf_per_in;
}

std::optional<TensionChange> tension_change(const PreparedProject& prepared,
                                            const PreparedRoute& route) {
  const std::optional<TiedCable> cable = tied(route);
  if (!cable) return std::nullopt;
  const Line& line = *route.line;
  const TensionChange rigid{
      tension_slope_lbf_per_degf({.line_per_degf = line.expansion_per_degf->value,
                                  .airframe_per_degf = airframe_expansion_per_degf},
                                 line.axial_stiffness_lbf->value),
      1 / cable->stiffness_lbf_per_in};
  const std::optional<double> airframe = airframe_stiffness_lbf_per_in(prepared, route);
  if (!airframe) return rigid;
  const double slope =
      tied_tension_slope_lbf_per_degf(*cable, tied_beside(prepared, route), *airframe);
  // An airframe that no cable shortens any more outgrows them freely again.
  if (slope * cable->outgrown_in_per_degf <= 0)
    return TensionChange{slope, 1 / cable->stiffness_lbf_per_in};
  return TensionChange{slope, cable->outgrown_in_per_degf / slope};
}

std::string airframe_words(const PreparedProject& prepared, const PreparedRoute& route) {
  const std::optional<double> stiffness = airframe_stiffness_lbf_per_in(prepared, route);
  return stiffness ? fmt::format("in an airframe of {:.10g} lbf/in", *stiffness)
                   : std::string("in a rigid airframe");
}

}  // namespace linewright
