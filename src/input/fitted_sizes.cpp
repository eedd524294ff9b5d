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

/// Where a thing lies along its route.
struct AlongRoute {
  double from_in;
  double to_in;
};

/// False of places that could not be read.
bool share_length(const AlongRoute& a, const AlongRoute& b) {
  if (!std::isfinite(a.from_in + a.to_in + b.from_in + b.to_in)) return false;
  return std::min(a.to_in, b.to_in) - std::max(a.from_in, b.from_in) > smallest_length_in;
}

AlongRoute along(const Attachment& each) {
  return {each.at_in - each.length_in / 2, each.at_in + each.length_in / 2};
}

std::string along_words(const AlongRoute& place) {
  return fmt::format("from {:.4g} in to {:.4g} in along it", place.from_in, place.to_in);
}

void check_attached(const Route& route, const Line& line, ProjectDraft& draft) {
  for (auto each = route.attached.begin(); each != route.attached.end(); ++each) {
    if (each->diameter_in < line.outside_diameter_in - smallest_length_in)
      draft.add_error(
          each->where,
          fmt::format("a {} of {:.4g} in in diameter is thinner than the line it is fixed to, {} "
                      "of {:.4g} in",
                      each->kind, each->diameter_in, line.name, line.outside_diameter_in),
          std::string(units_suggestion));
    for (auto before = route.attached.begin(); before != each; ++before)
      if (share_length(along(*before), along(*each)))
        draft.add_error(each->where,
                        fmt::format("the {}, {}, overlaps the {}, {}: one line has room there for "
                                    "one of them",
                                    each->kind, along_words(along(*each)), before->kind,
                                    along_words(along(*before))));
  }
}

/// False where the one is known not to go over the other.
bool goes_over(const Sleeve& outer, const Sleeve& inner) {
  return !outer.bore_in || !inner.outside_in ||
         *inner.outside_in <= *outer.bore_in + smallest_length_in;
}

void check_sleeves(const Route& route, ProjectDraft& draft) {
  for (auto each = route.sleeves.begin(); each != route.sleeves.end(); ++each)
    for (auto before = route.sleeves.begin(); before != each; ++before) {
      const AlongRoute place{each->from_in, each->to_in};
      const AlongRoute other{before->from_in, before->to_in};
      if (!share_length(place, other) || goes_over(*each, *before) || goes_over(*before, *each))
        continue;
      draft.add_error(each->where, fmt::format("the sleeve {} overlaps the sleeve {}, and neither "
                                               "goes over the other",
                                               along_words(place), along_words(other)));
    }
}

void check_pulleys(const Route& route, const Line& line, ProjectDraft& draft) {
  for (const RoutePoint& point : route.points)
    if (point.width_in && *point.width_in < line.outside_diameter_in - smallest_length_in)
      draft.add_error(point.where,
                      fmt::format("a pulley {:.4g} in wide is narrower than its cable, {} of "
                                  "{:.4g} in",
                                  *point.width_in, line.name, line.outside_diameter_in),
                      std::string(units_suggestion));
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

void check_fitted_on_lines(ProjectDraft& draft) {
  for (const Route& route : draft.project.routes) {
    const Line* line = draft.project.catalogue.find_line(route.line);
    if (!line) continue;
    check_attached(route, *line, draft);
    check_sleeves(route, draft);
    check_pulleys(route, *line, draft);
  }
}

}  // namespace linewright
