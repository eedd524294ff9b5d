#include "planning/taken_values.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <set>
#include <span>
#include <string_view>

#include "lines/prepare.hpp"
#include "model/angle.hpp"
#include "model/sheet.hpp"
#include "physics/pilot_force.hpp"

namespace linewright {

namespace {

/// So many parts are named in one sentence; the rest are counted.
constexpr std::size_t most_named = 12;
/// A smaller turn is a drawing's misfit, and its radius matters to nothing.
constexpr double least_turn_deg = 5;

using Names = std::vector<std::string>;
using Routes = std::vector<const Route*>;

std::string listed(const Names& names) {
  const auto last = names.begin() + static_cast<std::ptrdiff_t>(std::min(most_named, names.size()));
  std::string list = fmt::format("{}", fmt::join(names.begin(), last, ", "));
  if (names.size() > most_named) list += fmt::format(" and {} more", names.size() - most_named);
  return list;
}

/// The sentences, each of what some parts lack.
class Sentences {
 public:
  /// `words` with the names for {}; nothing where there are none.
  void add(const Names& names, std::string_view words) {
    if (!names.empty()) sentences_.push_back(fmt::format(fmt::runtime(words), listed(names)));
  }
  void add(std::string sentence) { sentences_.push_back(std::move(sentence)); }
  std::vector<std::string> take() { return std::move(sentences_); }

 private:
  std::vector<std::string> sentences_;
};

template <typename Picks>
Names names_of(const Routes& routes, const Picks& picks) {
  Names names;
  for (const Route* route : routes)
    if (picks(*route)) names.push_back(route->name);
  return names;
}

Routes cables_of(const Project& project) {
  Routes cables;
  for (const Route& route : project.routes)
    if (route.system == SystemKind::cable) cables.push_back(&route);
  return cables;
}

std::string at_point(const Route& route, std::size_t index) {
  return fmt::format("{} at its point {}", route.name, index + 1);
}

const Hole* hole_named(const Project& project, const std::string& name) {
  for (const Frame& frame : project.structure.frames)
    for (const Hole& hole : frame.holes)
      if (hole.name == name) return &hole;
  return nullptr;
}

void add_bores(const Project& project, Sentences& sentences) {
  Names holes;
  for (const Frame& frame : project.structure.frames)
    for (const Hole& hole : frame.holes)
      if (!hole.bore_in && usual_bore_in(hole)) holes.push_back(hole.name);
  sentences.add(holes,
                fmt::format("grommets and bushings of holes that state no bore: {{}}; a grommet's "
                            "was taken as {:g} in less than its hole, a bushing's as {:g} in less",
                            grommet_hole_over_bore_in, bushing_hole_over_bore_in));
  Names points;
  for (const Route& route : project.routes)
    for (std::size_t i = 0; i < route.points.size(); ++i) {
      const RoutePoint& point = route.points[i];
      if (!point.is_bored_guide() || point.bore_in) continue;
      const Hole* hole = hole_named(project, point.through);
      if (!hole && !point.through.empty()) continue;  // a hole in a wall has its own bore
      if (!hole || (!hole->bore_in && !usual_bore_in(*hole))) points.push_back(at_point(route, i));
    }
  sentences.add(points, fmt::format("guides that state no bore: {{}}; they were taken to hold the "
                                    "line with {:.3f} in of play",
                                    guide_play_in));
}

double turn_deg(Vec3 from, Vec3 corner, Vec3 to) {
  return angle_between_rad(corner - from, to - corner) * degrees_per_radian;
}

/// Corners of a tube, hose or wire that are drawn with their line's usual radius.
void add_bends_of(const Project& project, const Route& route, Names& bends) {
  const Line* line = project.catalogue.find_line(route.line);
  const Node* from = project.find_node(route.from);
  const Node* to = project.find_node(route.to);
  if (!line || !line->usual_bend_radius_in || !from || !to) return;
  for (std::size_t i = 0; i < route.points.size(); ++i) {
    const Vec3 before = i > 0 ? route.points[i - 1].at : from->at;
    const Vec3 after = i + 1 < route.points.size() ? route.points[i + 1].at : to->at;
    if (!route.points[i].bend_in && turn_deg(before, route.points[i].at, after) >= least_turn_deg)
      bends.push_back(at_point(route, i));
  }
}

void add_bends(const Project& project, Sentences& sentences) {
  Names bends;
  for (const Route& route : project.routes)
    if (route.system != SystemKind::cable) add_bends_of(project, route, bends);
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

void add_resonance(const Project& project, Sentences& sentences) {
  const bool any =
      std::any_of(project.routes.begin(), project.routes.end(), [&](const Route& route) {
        const Line* line = project.catalogue.find_line(route.line);
        return line && line->kind != LineKind::wire && line->kind != LineKind::hose &&
               line->kind != LineKind::rod;
      });
  if (!any) return;
  if (!project.excitation)
    sentences.add(
        "excitation is not stated: whether spans swing with the propeller was not judged");
}

/// What the forces of 14 CFR 23.397(b) hang on.
void add_weight_and_grip(const Project& project, Sentences& sentences) {
  const Routes cables = cables_of(project);
  if (!project.weight_lbf)
    sentences.add(
        names_of(cables, takes_pilot_force),
        fmt::format("weight is not stated: the aeroplane of {{}} was taken to weigh no more than "
                    "{:.0f} lbf; in a heavier one a pilot pulls harder",
                    light_weight_lbf));
  sentences.add(names_of(cables,
                         [](const Route& route) {
                           return route.lever && !route.worked_by &&
                                  std::any_of(wheel_forces.begin(), wheel_forces.end(),
                                              [&](const PilotForce& wheel) {
                                                return is_same_control(wheel.control,
                                                                       route.control);
                                              });
                         }),
                "worked_by is not stated for {}: a stick was taken; a wheel is pulled harder");
}

/// Of each control what the pilot pulls it with.
void add_pilot_forces(const Project& project, Sentences& sentences) {
  const double factor = project.weight_lbf ? weight_factor(*project.weight_lbf) : 1;
  for (const std::span<const PilotForce> rows :
       {std::span<const PilotForce>(pilot_forces), std::span<const PilotForce>(wheel_forces)})
    for (const PilotForce& row : rows)
      sentences.add(names_of(cables_of(project),
                             [&](const Route& route) {
                               return pilot_forces_on(route) == &row && takes_pilot_force(route);
                             }),
                    fmt::format("pilot_force is not stated for {{}}: {:.0f} lbf at {} was taken, "
                                "the most of 14 CFR 23.397(b)",
                                factor * row.most_lbf, row.grip));
  add_weight_and_grip(project, sentences);
  const Names pulled = names_of(cables_of(project), [](const Route& route) {
    return route.is_primary_control() && pilot_pull_lbf(route);
  });
  if (!project.dual_controls)
    sentences.add(pulled, fmt::format("dual_controls is not stated: one pilot was taken to pull on "
                                      "{{}}; two together pull {:g} times as much (14 CFR "
                                      "23.399(b))",
                                      two_pilots_ratio));
}

void add_cables(const Project& project, Sentences& sentences) {
  const Routes cables = cables_of(project);
  sentences.add(names_of(cables,
                         [](const Route& route) {
                           return route.is_primary_control() && route.control.empty();
                         }),
                "control is not stated for {}: each was taken to work alone, on a primary control, "
                "so that no other cable's pull slackens it");
  sentences.add(names_of(cables, [](const Route& route) { return !route.travel; }),
                "travel is not stated for {}: what it carries along, and what stretch takes from "
                "it, were not judged");
  add_pilot_forces(project, sentences);
  const auto has_load = [](const Route& route) {
    return route.tension && route.tension->limit_load_lbf;
  };
  sentences.add(names_of(cables,
                         [&](const Route& route) {
                           return route.tension && !has_load(route) && pilot_pull_lbf(route);
                         }),
                "tension.limit_load is not stated for {}: the pilot's pull by the lever ratio was "
                "taken");
  sentences.add(
      names_of(cables, [&](const Route& route) { return !route.lever && has_load(route); }),
      "lever_ratio is not stated for {}: the limit load was taken to cover what the pilot can "
      "pull, "
      "and friction at the pilot's end was not judged");
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

/// Ends on arms, which turn.
void add_joints(const Project& project, Sentences& sentences) {
  Names ends;
  for (const Route* route : cables_of(project))
    for (const bool at_from : {true, false}) {
      const Node* node = project.find_node(at_from ? route->from : route->to);
      const auto& end = at_from ? route->ends.from : route->ends.to;
      if (node && node->arm && (!end || !end->joint))
        ends.push_back(route->name + " at " + node->name);
    }
  sentences.add(
      ends,
      "ends of cables whose joint is not stated: {}; each was taken to turn on a pin along "
      "its arm's axis");
}

void add_attachments(const Project& project, Sentences& sentences) {
  Names turnbuckles;
  for (const Route* route : cables_of(project))
    for (const Attachment& each : route->attached)
      if (each.is_turnbuckle() && !each.adjustment)
        turnbuckles.push_back(fmt::format("{} at {:g} in", route->name, each.at_in));
  sentences.add(turnbuckles,
                "turnbuckles that state no adjustment: {}; they were taken to be no longer than "
                "drawn");
}

void add_lines(const Project& project, Sentences& sentences) {
  Names names;
  for (const Line& line : project.catalogue.lines)
    if (line.where && line.plus_tolerance_in == 0) names.push_back(line.name);
  sentences.add(names,
                "lines with no plus_tolerance: {}; none was taken to be larger than "
                "its outside diameter");
}

}  // namespace

std::vector<std::string> taken_values(const Project& project) {
  Sentences sentences;
  add_bores(project, sentences);
  add_bends(project, sentences);
  add_lag(project, sentences);
  add_resonance(project, sentences);
  add_cables(project, sentences);
  add_joints(project, sentences);
  add_attachments(project, sentences);
  add_hoses_and_sleeves(project, sentences);
  add_lines(project, sentences);
  return sentences.take();
}

}  // namespace linewright
