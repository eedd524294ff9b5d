#include "input/fitted_sizes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <unordered_map>

#include "input/field_words.hpp"

namespace linewright {

namespace {

/// Diameters of the round ones.
using Holes = std::unordered_map<std::string_view, double>;
using Nodes = std::unordered_map<std::string_view, const Node*>;

std::string_view guide_word(const RoutePoint& point) {
  if (point.hold == HoldKind::grommet) return "grommet";
  return point.hold == HoldKind::bushing ? "bushing" : "fairlead";
}

void check_in_hole(const RoutePoint& point, const Holes& holes, ProjectDraft& draft) {
  const auto hole = holes.find(point.through);
  if (!point.bore_in || point.through.empty() || hole == holes.end()) return;
  if (!(*point.bore_in > hole->second - smallest_length_in)) return;
  draft.add_error(
      point.where,
      fmt::format("the bore of a {} must be smaller than the hole it is fitted in: "
                  "{:.4g} in, in hole {} of {:.4g} in",
                  guide_word(point), *point.bore_in, quoted_text(point.through), hole->second));
}

/// No shorter than the cable: from corner to corner, and once round each pulley given by its
/// centre. Nothing where a node is not known.
std::optional<double> longest_run_in(const Route& route, const Nodes& nodes) {
  const auto from = nodes.find(route.from);
  const auto to = nodes.find(route.to);
  if (from == nodes.end() || to == nodes.end()) return std::nullopt;
  double length = 0;
  Vec3 before = from->second->at;
  for (const RoutePoint& point : route.points) {
    length += distance(before, point.at);
    if (point.given == PointGiven::centre)
      length += std::numbers::pi * point.diameter_in.value_or(0);
    before = point.at;
  }
  return length + distance(before, to->second->at);
}

/// One side of a node or turnbuckle, where a piece of cable begins or ends.
struct PieceEnd {
  const std::optional<CableEnd>* end;
  double at_in;
};

void check_piece(const PieceEnd& first, const PieceEnd& last, ProjectDraft& draft) {
  const double length = last.at_in - first.at_in;
  for (const auto* end : {first.end, last.end})
    if (*end && (*end)->kind == CableEndKind::swaged && (*end)->inside_in > length && length > 0)
      draft.add_error((*end)->where,
                      fmt::format("a grip of {:.4g} in is longer than the piece of cable it is on, "
                                  "{:.4g} in from end to end",
                                  (*end)->inside_in, length),
                      std::string(units_suggestion));
}

void check_pieces(const Route& route, double length_in, ProjectDraft& draft) {
  std::vector<const Attachment*> turnbuckles;
  for (const Attachment& each : route.attached) {
    if (!std::isfinite(each.at_in)) return;
    if (each.is_turnbuckle()) turnbuckles.push_back(&each);
  }
  std::stable_sort(turnbuckles.begin(), turnbuckles.end(),
                   [](const Attachment* a, const Attachment* b) { return a->at_in < b->at_in; });
  PieceEnd first{&route.ends.from, 0};
  for (const Attachment* each : turnbuckles) {
    check_piece(first, {&each->ends.from, each->at_in - each->length_in / 2}, draft);
    first = {&each->ends.to, each->at_in + each->length_in / 2};
  }
  check_piece(first, {&route.ends.to, length_in}, draft);
}

}  // namespace

void check_fairleads_in_holes(ProjectDraft& draft) {
  Holes holes;
  for (const Frame& frame : draft.project.structure.frames)
    for (const Hole& hole : frame.holes)
      if (const auto* circle = std::get_if<Circle>(&hole.shape))
        holes.try_emplace(hole.name, circle->diameter_in);
  const auto add_walls = [&holes](const auto& parts) {
    for (const auto& part : parts)
      for (const WallHole& hole : part.holes) holes.try_emplace(hole.name, hole.diameter_in);
  };
  add_walls(draft.project.structure.channels);
  add_walls(draft.project.structure.panels);
  add_walls(draft.project.structure.solids);
  for (const Route& route : draft.project.routes) {
    for (const RoutePoint& point : route.points) check_in_hole(point, holes, draft);
    for (const FreeFairlead& free : route.free_fairleads)
      check_in_hole(free.fairlead, holes, draft);
  }
}

void check_grips_in_pieces(ProjectDraft& draft) {
  Nodes nodes;
  for (const Node& node : draft.project.nodes) nodes.try_emplace(node.name, &node);
  for (const Route& route : draft.project.routes)
    if (const auto length = longest_run_in(route, nodes)) check_pieces(route, *length, draft);
}

}  // namespace linewright
