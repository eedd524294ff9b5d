#include "planning/taken_values.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string_view>

#include "lines/prepare.hpp"
#include "model/angle.hpp"
#include "model/nodes_by_name.hpp"
#include "model/sheet.hpp"
#include "planning/taken_of_cables.hpp"

namespace linewright {

namespace {

/// A smaller turn is a drawing's misfit, and its radius matters to nothing.
constexpr double least_turn_deg = 5;

/// Those of frames, and of walls with them: each described hole of a wall as one of a frame.
std::vector<Hole> all_holes(const Structure& structure) {
  std::vector<Hole> holes;
  for (const Frame& frame : structure.frames)
    holes.insert(holes.end(), frame.holes.begin(), frame.holes.end());
  const auto add_walls = [&](const auto& parts) {
    for (const auto& part : parts)
      for (const WallHole& hole : part.holes)
        holes.push_back(
            {hole.name, Circle{{}, hole.diameter_in}, hole.edge, hole.bore_in, hole.where});
  };
  add_walls(structure.channels);
  add_walls(structure.panels);
  add_walls(structure.solids);
  return holes;
}

bool has_bore(const Hole& hole) {
  return hole.bore_in || usual_bore_in(hole);
}

/// What a guide that states no bore itself stands in says which it has.
bool has_bore(const std::vector<Hole>& holes, const std::string& name) {
  return std::any_of(holes.begin(), holes.end(),
                     [&](const Hole& hole) { return hole.name == name && has_bore(hole); });
}

/// A grommet is rubber and a fairlead a block of its own: which of them leads the cable is asked.
void add_shared_bores(const Project& project, const std::vector<Hole>& holes,
                      Sentences& sentences) {
  const auto has_grommet = [&](const std::string& name) {
    return std::any_of(holes.begin(), holes.end(), [&](const Hole& hole) {
      return hole.name == name && hole.edge == EdgeGuard::grommet && has_bore(hole);
    });
  };
  Names points;
  for (const Route& route : project.routes)
    for (std::size_t i = 0; i < route.points.size(); ++i) {
      const RoutePoint& point = route.points[i];
      if (point.hold == HoldKind::fairlead && !point.bore_in && has_grommet(point.through))
        points.push_back(at_point(route, i));
    }
  sentences.add(
      points,
      "fairleads that state no bore, in a hole with a grommet: {}; the grommet's bore was "
      "taken as theirs");
}

void add_bores(const Project& project, Sentences& sentences) {
  const std::vector<Hole> holes = all_holes(project.structure);
  Names guarded;
  for (const Hole& hole : holes)
    if (!hole.bore_in && usual_bore_in(hole)) guarded.push_back(hole.name);
  sentences.add(guarded,
                fmt::format("grommets and bushings of holes that state no bore: {{}}; a grommet's "
                            "was taken as {:g} in less than its hole, a bushing's as {:g} in less",
                            grommet_hole_over_bore_in, bushing_hole_over_bore_in));
  Names points;
  for (const Route& route : project.routes)
    for (std::size_t i = 0; i < route.points.size(); ++i) {
      const RoutePoint& point = route.points[i];
      if (point.is_bored_guide() && !point.bore_in && !has_bore(holes, point.through))
        points.push_back(at_point(route, i));
    }
  sentences.add(points, fmt::format("guides that state no bore: {{}}; they were taken to hold the "
                                    "line with {:.3f} in of play",
                                    guide_play_in));
  add_shared_bores(project, holes, sentences);
}

double turn_deg(Vec3 from, Vec3 corner, Vec3 to) {
  return angle_between_rad(corner - from, to - corner) * degrees_per_radian;
}

/// Corners of a tube, hose or wire that are drawn with their line's usual radius.
void add_bends_of(const Project& project, const NodesByName& nodes, const Route& route,
                  Names& bends) {
  const Line* line = project.catalogue.find_line(route.line);
  const Node* from = nodes.find(route.from);
  const Node* to = nodes.find(route.to);
  if (!line || !line->usual_bend_radius_in || !from || !to) return;
  for (std::size_t i = 0; i < route.points.size(); ++i) {
    const Vec3 before =
        i > 0 ? route.points[i - 1].at : end_place(*from, from->find_port(route.from_port));
    const Vec3 after = i + 1 < route.points.size() ? route.points[i + 1].at
                                                   : end_place(*to, to->find_port(route.to_port));
    if (!route.points[i].bend_in && turn_deg(before, route.points[i].at, after) >= least_turn_deg)
      bends.push_back(at_point(route, i));
  }
}

void add_bends(const Project& project, Sentences& sentences) {
  const NodesByName nodes(project);
  Names bends;
  for (const Route& route : project.routes)
    if (route.system != SystemKind::cable) add_bends_of(project, nodes, route, bends);
  sentences.add(bends, "bends that state no radius: {}; the usual one of their line was taken");
}

/// `names` of what instruments breathe through: the nodes of pressure lines.
std::set<std::string_view> nodes_of_pressure(const Project& project) {
  std::set<std::string_view> names;
  for (const Route& route : project.routes)
    if (is_air(route.system) && route.system != SystemKind::vent)
      names.insert({route.from, route.to});
  return names;
}

void add_lag(const Project& project, Sentences& sentences) {
  const std::set<std::string_view> in_use = nodes_of_pressure(project);
  Names instruments;
  Names others;
  for (const Node& node : project.nodes) {
    if (!in_use.contains(node.name)) continue;
    if (node.kind == NodeKind::instrument)
      instruments.push_back(node.name);
    else if (!node.volume_in3 && node.kind != NodeKind::cap && node.kind != NodeKind::end)
      others.push_back(node.name);
  }
  if (instruments.empty()) return;
  if (!project.climb_ft_per_min)
    sentences.add("climb is not stated: whether instruments trail in a climb was not judged");
  else
    sentences.add(others,
                  "nodes that state no volume: {}; none was counted for how instruments trail");
}

/// Valves with lines of one system on two sides: how they stand decides what is joined.
void add_valves(const Project& project, Sentences& sentences) {
  Names open;
  for (const Node& node : project.nodes) {
    if (node.kind != NodeKind::valve) continue;
    std::set<std::string_view> met;
    bool through = false;
    for (const Route& route : project.routes)
      if (is_air(route.system) && (route.from == node.name || route.to == node.name))
        through = !met.insert(route.system_name).second || through;
    if (through) open.push_back(node.name);
  }
  sentences.add(open, "valves that lines of one system go through: {}; they were taken to be open");
}

void add_resonance(const Project& project, Sentences& sentences) {
  const bool any =
      std::any_of(project.routes.begin(), project.routes.end(), [&](const Route& route) {
        const Line* line = project.catalogue.find_line(route.line);
        return line && line->kind != LineKind::wire && line->kind != LineKind::hose &&
               line->kind != LineKind::rod && line->kind != LineKind::conduit;
      });
  if (!any) return;
  if (!project.excitation)
    sentences.add(
        "excitation is not stated: whether spans swing with the propeller was not judged");
  else if (!project.excitation->cruise)
    sentences.add(
        "excitation.cruise_rpm is not stated: whether spans swing with the propeller at cruise was "
        "not judged");
}

void add_hoses_and_sleeves(const Project& project, Sentences& sentences) {
  Names hoses;
  Names sleeved;
  for (const Route& route : project.routes) {
    const Line* line = project.catalogue.find_line(route.line);
    if (line && line->kind == LineKind::hose && !route.length_in) hoses.push_back(route.name);
    if (route.system != SystemKind::cable &&
        std::any_of(route.sleeves.begin(), route.sleeves.end(),
                    [](const Sleeve& each) { return !each.minimum_bend_radius_in; }))
      sleeved.push_back(route.name);
  }
  sentences.add(hoses, "hoses that state no length: {}; each was taken to be as long as drawn");
  sentences.add(sleeved,
                "sleeves that state no minimum_bend_radius, on {}: they were taken to stand the "
                "bends of their line");
}

/// Ends of casings beyond which no arm takes the wire aside.
void add_casings(const Project& project, Sentences& sentences) {
  Names straight;
  for (const Route& route : project.routes) {
    if (!route.run_out) continue;
    if (!route.run_out->from_arm) straight.push_back(route.name + " at " + route.from);
    if (!route.run_out->to_arm) straight.push_back(route.name + " at " + route.to);
  }
  sentences.add(straight,
                "run-outs that state no arm: {}; the wire was taken to run straight out there");
}

void add_wiring(const Project& project, Sentences& sentences) {
  const NodesByName nodes(project);
  Names untied;
  Names ends;
  for (const Route& route : project.routes) {
    if (route.system != SystemKind::wire) continue;
    if (!route.tied) untied.push_back(route.name);
    for (const std::string& name : {route.from, route.to}) {
      const Node* node = nodes.find(name);
      if (node && !node->connector) ends.push_back(route.name + " at " + name);
    }
  }
  sentences.add(untied,
                "bundles that do not state `tied`: {}; whether ties hold them together where "
                "supports are over 12 in apart was not judged");
  sentences.add(ends,
                "ends of bundles that do not state `connector`: {}; whether water runs down into "
                "one was not judged");
}

bool joins_tubes(NodeKind kind) {
  return kind == NodeKind::tee || kind == NodeKind::union_fitting || kind == NodeKind::bulkhead;
}

/// What else stands in a line's way by itself, and has no size of its own.
bool is_mounted(NodeKind kind) {
  return kind == NodeKind::static_port || kind == NodeKind::pitot_probe ||
         kind == NodeKind::instrument || kind == NodeKind::drain || kind == NodeKind::valve;
}

/// No control's part sweeps less in all [common practice, no source]; in radians any would.
constexpr double little_sweep_deg = 4;

void add_sweeps(const Project& project, Sentences& sentences) {
  Names names;
  for (const Mover& mover : project.structure.movers)
    if (mover.sweep_to_deg - mover.sweep_from_deg < little_sweep_deg) names.push_back(mover.name);
  sentences.add(names,
                fmt::format("movers that sweep less than {:g} degrees in all: {{}}; that was "
                            "taken as it stands, in degrees",
                            little_sweep_deg));
}

/// A sector is a place where its cable leaves it, and a radius: its disc is no part of structure.
void add_sectors(const Project& project, Sentences& sentences) {
  Names names;
  for (const Node& node : project.nodes)
    if (node.sector) names.push_back(node.name);
  sentences.add(names, "sectors and drums: {}; lines were not held against their discs");
}

/// Those that state neither a `fitting` nor `ports` with a `body_diameter`.
void add_fittings(const Project& project, Sentences& sentences) {
  std::set<std::string_view> on_air;
  for (const Route& route : project.routes)
    if (is_air(route.system)) on_air.insert({route.from, route.to});
  const auto points = [&](bool (*is_of)(NodeKind)) {
    return std::count_if(project.nodes.begin(), project.nodes.end(), [&](const Node& node) {
      return is_of(node.kind) && !node.body && on_air.contains(node.name);
    });
  };
  if (const auto count = points(joins_tubes); count > 0)
    sentences.add(
        fmt::format("tees and unions that state no size: {}; they were taken as points", count));
  if (const auto count = points(is_mounted); count > 0)
    sentences.add(fmt::format(
        "ports, probes, instruments, drains and valves that state no size: {}; they "
        "were taken as points: what they fill is in the way only where it is drawn as a solid",
        count));
}

/// Bulkhead unions of a size, whose fitting does not say what goes through the sheet.
void add_threads(const Project& project, Sentences& sentences) {
  Names names;
  for (const Node& node : project.nodes) {
    const Fitting* fitting = project.catalogue.find_fitting(node.fitting);
    const bool is_union = node.kind == NodeKind::bulkhead ||
                          (fitting && fitting->kind == FittingKind::bulkhead_union);
    if (is_union && node.body && !(fitting && fitting->thread_in)) names.push_back(node.name);
  }
  sentences.add(names,
                fmt::format("bulkhead unions that state no thread: {{}}; one {:.4g} in wider "
                            "than their tube was taken",
                            usual_thread_over_tube_in));
}

void add_lines(const Project& project, Sentences& sentences) {
  Names names;
  for (const Line& line : project.catalogue.lines)
    if (line.where && !line.plus_tolerance_in) names.push_back(line.name);
  sentences.add(names,
                "lines that state no plus_tolerance: {}; none was taken to be larger than "
                "its outside diameter");
}

}  // namespace

std::vector<std::string> taken_values(const Project& project) {
  Sentences sentences;
  add_bores(project, sentences);
  add_bends(project, sentences);
  add_lag(project, sentences);
  add_valves(project, sentences);
  add_resonance(project, sentences);
  add_taken_of_cables(project, sentences);
  add_hoses_and_sleeves(project, sentences);
  add_casings(project, sentences);
  add_wiring(project, sentences);
  add_fittings(project, sentences);
  add_threads(project, sentences);
  add_sectors(project, sentences);
  add_sweeps(project, sentences);
  add_lines(project, sentences);
  return sentences.take();
}

}  // namespace linewright
