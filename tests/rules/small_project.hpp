#pragma once
// Small projects of lines and nodes for the rules, made of plain values with the built-in
// catalogue. Each item has a place of its own in a made-up file, so that a judgement's place can be
// told: see `line_of_route` and `line_of_point`.

#include <algorithm>
#include <cstddef>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "lines/prepare.hpp"
#include "rules/judge.hpp"
#include "rules/registry.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// A corner with the line's usual radius.
inline RoutePoint corner(Vec3 at) {
  RoutePoint point;
  point.at = at;
  return point;
}

inline RoutePoint bent(Vec3 at, double radius_in) {
  RoutePoint point = corner(at);
  point.bend_in = radius_in;
  return point;
}

inline RoutePoint held(Vec3 at, HoldKind hold) {
  RoutePoint point = corner(at);
  point.hold = hold;
  return point;
}

inline RoutePoint clamped(Vec3 at) {
  return held(at, HoldKind::clamp);
}

inline RoutePoint clamped_to(Vec3 at, const std::string& part) {
  RoutePoint point = clamped(at);
  point.to = part;
  return point;
}

/// A project put together node by node and route by route.
class SmallProject {
 public:
  SmallProject() {
    project.name = "small project";
    project.temperature = {70, 70, 70};
    project.load_factor = {1, -1};
    project.catalogue = built_in_catalogue();
  }

  SmallProject& node(const std::string& name, NodeKind kind, Vec3 at,
                     std::optional<bool> fixed = std::nullopt) {
    Node node;
    node.name = name;
    node.kind = kind;
    node.at = at;
    node.fixed = fixed;
    project.nodes.push_back(node);
    return *this;
  }

  /// A route of the system that suits its line. The reference holds until the next route is added.
  Route& route(const std::string& name, const std::string& line, const std::string& from,
               const std::string& to, const std::vector<RoutePoint>& points = {}) {
    const int first_line = line_of_route(project.routes.size());
    Route route;
    route.name = name;
    route.line = line;
    route.from = from;
    route.to = to;
    route.points = points;
    route.where = {"routes.yaml", first_line, 5};
    route.from_where = {"routes.yaml", first_line + 1, 11};
    route.to_where = {"routes.yaml", first_line + 2, 9};
    for (std::size_t i = 0; i < points.size(); ++i)
      route.points[i].where = {"routes.yaml", line_of_point(project.routes.size(), i), 9};
    const Line* known = project.catalogue.find_line(line);
    if (!known) throw std::invalid_argument("the catalogue has no " + line);
    if (known->kind == LineKind::cable) set_system(route, SystemKind::cable, "cable");
    if (known->kind == LineKind::wire) set_system(route, SystemKind::wire, "wire");
    if (known->kind == LineKind::rod) set_system(route, SystemKind::rod, "rod");
    if (known->kind == LineKind::conduit) set_system(route, SystemKind::push_pull, "push-pull");
    if (route.system_name.empty()) set_system(route, SystemKind::static_air, "static");
    project.routes.push_back(route);
    return project.routes.back();
  }

  Waiver& waive(const std::string& rule, const std::string& route) {
    Waiver waiver;
    waiver.rule = rule;
    waiver.route = route;
    waiver.reason = "accepted by the builder";
    waiver.where = {"waivers.yaml", 10 + static_cast<int>(project.waivers.size()), 5};
    project.waivers.push_back(waiver);
    return project.waivers.back();
  }

  /// The project's own copy of a line of the catalogue, to change.
  Line& line(std::string_view name) {
    for (Line& each : project.catalogue.lines)
      if (each.name == name) return each;
    throw std::invalid_argument("the catalogue has no " + std::string(name));
  }

  /// Where the nth route is written, and the mth point of it, counted from zero.
  static int line_of_route(std::size_t route) { return 100 * (static_cast<int>(route) + 1); }
  static int line_of_point(std::size_t route, std::size_t point) {
    return line_of_route(route) + 10 + static_cast<int>(point);
  }

  /// What one rule says, before any waiver.
  /// What the rule says besides where it is asked for alone.
  std::vector<Judgement> lacking_for(std::string_view rule_name) const {
    const Rule* rule = find_rule(rule_name);
    if (!rule || !rule->lacking) throw std::runtime_error("no rule " + std::string(rule_name));
    const PreparedProject prepared = prepare(project);
    const LineMotion motion = motion_of(prepared);
    return rule->lacking({*rule, prepared, motion, {}});
  }

  std::vector<Judgement> judged_by(std::string_view rule_name, Phrasing phrasing = {}) const {
    const Rule* rule = find_rule(rule_name);
    if (!rule) throw std::runtime_error("no rule " + std::string(rule_name));
    const PreparedProject prepared = prepare(project);
    const LineMotion motion = motion_of(prepared);
    return rule->judge({*rule, prepared, motion, phrasing});
  }

  /// What all rules say, waivers applied.
  std::vector<Judgement> judged(const std::optional<std::string>& only_rule = std::nullopt,
                                const std::optional<std::string>& only_route = std::nullopt) const {
    return judge(prepare(project), {}, only_rule, only_route);
  }

  Project project;

 private:
  static void set_system(Route& route, SystemKind kind, const std::string& name) {
    route.system = kind;
    route.system_name = name;
  }
};

/// The one judgement there must be.
inline Judgement sole(const std::vector<Judgement>& judgements) {
  if (judgements.size() != 1)
    throw std::runtime_error("expected one judgement, found " + std::to_string(judgements.size()));
  return judgements.front();
}

/// Those that did not pass.
inline std::vector<Judgement> not_passed(std::vector<Judgement> judgements) {
  std::erase_if(judgements, [](const Judgement& each) { return each.verdict == Verdict::pass; });
  return judgements;
}

inline std::vector<Verdict> verdicts(const std::vector<Judgement>& judgements) {
  std::vector<Verdict> all;
  for (const Judgement& each : judgements) all.push_back(each.verdict);
  return all;
}

inline bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

}  // namespace linewright
