#include "input/cross_check.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <map>
#include <set>
#include <unordered_map>

#include "input/fitted_sizes.hpp"
#include "input/key_spec.hpp"
#include "input/node_ports.hpp"
#include "input/port_choice.hpp"
#include "input/sleeve_lines.hpp"
#include "input/stretched_panels.hpp"
#include "input/suggest_name.hpp"

namespace linewright {

namespace {

/// Beyond this many names none is suggested: measuring the distance to each takes too long.
constexpr std::size_t most_names_for_suggestion = 10'000;

/// Up to so many names are listed; of more, a few that are near to what was written.
constexpr std::size_t most_names_listed = 12;
constexpr std::size_t nearest_listed = 3;

using NameKey = std::pair<Named, std::string_view>;

/// Closures and tasks share their names.
Named shared_kind(Named kind) {
  return kind == Named::closure || kind == Named::task ? Named::step : kind;
}

/// What mends a name given twice where 'mirror' gives it; empty where it does not.
std::string made_by_mirror(const ProjectDraft& draft, const NamePlace& place,
                           const SourceLocation& first) {
  for (const TwinPlace& twin : draft.twins)
    if (twin.name == place.name && (twin.where == place.where || twin.where == first))
      return fmt::format(
          "it is the mirror image of {} by itself: leave its own entry out, or its "
          "'mirror'",
          quoted_text(twin.original));
  return {};
}

void check_given_twice(ProjectDraft& draft, const Catalogue& built_in) {
  std::map<NameKey, const SourceLocation*> first;
  for (const NamePlace& place : draft.given) {
    const std::string_view kind = kind_word(place.kind);
    const bool is_built_in =
        (place.kind == Named::line && built_in.find_line(place.name) != nullptr) ||
        (place.kind == Named::fitting && built_in.find_fitting(place.name) != nullptr);
    if (is_built_in)
      draft.add_error(place.where,
                      fmt::format("the {} {} is in the built-in catalogue already", kind,
                                  quoted_text(place.name)),
                      "give it a name of its own");
    const auto [known, is_new] =
        first.try_emplace(NameKey{shared_kind(place.kind), place.name}, &place.where);
    if (!is_new)
      draft.add_error(place.where,
                      fmt::format("the {} {} is given twice: first at {}", kind,
                                  quoted_text(place.name), place_words(*known->second)),
                      made_by_mirror(draft, place, *known->second));
  }
}

std::string where_all_are(Named kind) {
  if (kind == Named::line || kind == Named::fitting)
    return "linewright catalogue lists all but the project's own";
  return fmt::format("the project's files have all, each as the `name` of a {}", kind_word(kind));
}

/// "did you mean 'dial'? nodes: port, dial".
std::string known_names_words(const NamePlace& place, const std::vector<std::string>& known) {
  const std::string kinds = place.kind == Named::step ? std::string("closures and tasks")
                                                      : fmt::format("{}s", kind_word(place.kind));
  if (known.empty()) return fmt::format("the project has no {}", kinds);
  if (known.size() > most_names_for_suggestion) return where_all_are(place.kind);
  const std::string meant = suggest_name(place.name, known);
  const std::string lead = meant.empty() ? std::string() : meant + " ";
  if (known.size() <= most_names_listed)
    return fmt::format("{}{}: {}", lead, kinds, fmt::join(known, ", "));
  const std::vector<std::string> near = nearest_names(place.name, known, nearest_listed);
  if (near.empty()) return where_all_are(place.kind);
  return fmt::format("{}nearest of {} {}: {}; {}", lead, known.size(), kinds, fmt::join(near, ", "),
                     where_all_are(place.kind));
}

void check_used(ProjectDraft& draft, const Catalogue& built_in) {
  if (!draft.names_complete) return;
  std::map<Named, std::vector<std::string>> known;
  std::set<NameKey> given;
  const auto add = [&](Named kind, const std::string& name) {
    if (given.insert({kind, name}).second) known[kind].push_back(name);
  };
  for (const NamePlace& place : draft.given) {
    add(place.kind, place.name);
    if (shared_kind(place.kind) != place.kind) add(shared_kind(place.kind), place.name);
  }
  for (const Line& line : built_in.lines) add(Named::line, line.name);
  for (const Fitting& fitting : built_in.fittings) add(Named::fitting, fitting.name);
  for (const NamePlace& place : draft.used) {
    if (given.contains({place.kind, place.name})) continue;
    const std::vector<std::string>& names = known[place.kind];
    draft.add_error(
        place.where,
        fmt::format("there is no {} {}", kind_word(place.kind), quoted_text(place.name)),
        known_names_words(place, names));
  }
}

std::string_view line_kind_phrase(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
    case LineKind::plastic_tube:
      return "a tube";
    case LineKind::hose:
      return "a hose";
    case LineKind::cable:
      return "a cable";
    case LineKind::wire:
      return "a wire";
    case LineKind::rod:
      return "a rod";
    case LineKind::conduit:
      return "a conduit";
  }
  return "a line";
}

bool fits(LineKind line, SystemKind system) {
  if (line == LineKind::cable) return system == SystemKind::cable;
  if (line == LineKind::wire) return system == SystemKind::wire;
  if (line == LineKind::rod) return system == SystemKind::rod;
  if (line == LineKind::conduit) return system == SystemKind::push_pull;
  return is_air(system);
}

std::string_view fitting_words(SystemKind system) {
  if (system == SystemKind::cable) return "a cable";
  if (system == SystemKind::rod) return "a rod";
  if (system == SystemKind::push_pull) return "a conduit";
  return system == SystemKind::wire ? "a wire" : "a tube or a hose";
}

void check_line(const Route& route, const Line& line, ProjectDraft& draft) {
  if (!route.system_name.empty() && !fits(line.kind, route.system))
    draft.add_error(route.line_where,
                    fmt::format("{} is {}: system {} needs {}", quoted_text(line.name),
                                line_kind_phrase(line.kind), quoted_text(route.system_name),
                                fitting_words(route.system)));
  if (route.length_in && line.kind != LineKind::hose)
    draft.add_error(route.line_where,
                    fmt::format("'length' belongs to a hose: {} is {}", quoted_text(line.name),
                                line_kind_phrase(line.kind)));
}

bool same_place(Vec3 a, Vec3 b) {
  return distance(a, b) < smallest_length_in;
}

/// Where the line begins or ends at the node, or nothing.
std::optional<Vec3> end_of(const Node* node, const std::string& port) {
  if (node == nullptr) return std::nullopt;
  const Port* face = node->find_port(port);
  return face != nullptr ? face->at : node->at;
}

void check_legs(const Route& route, const Node* from, const Node* to, ProjectDraft& draft) {
  const std::optional<Vec3> start = end_of(from, route.from_port);
  const std::optional<Vec3> end = end_of(to, route.to_port);
  const Vec3* before = start ? &*start : nullptr;
  std::string before_words = fmt::format("node {}", quoted_text(route.from));
  for (std::size_t i = 0; i < route.points.size(); ++i) {
    const RoutePoint& point = route.points[i];
    if (before != nullptr && same_place(*before, point.at))
      draft.add_error(point.where, fmt::format("this point is at the same place as {}: the line "
                                               "has no length between them",
                                               before_words));
    before = &point.at;
    before_words = "the point before it";
  }
  if (before == nullptr || !end || !same_place(*before, *end)) return;
  if (route.points.empty())
    draft.add_error(route.to_where, fmt::format("nodes {} and {} are at the same place: the line "
                                                "has no length between them",
                                                quoted_text(route.from), quoted_text(route.to)));
  else
    draft.add_error(route.points.back().where,
                    fmt::format("this point is at the same place as node {}: the line has no "
                                "length between them",
                                quoted_text(route.to)));
}

/// An arm is where the wire of a push-pull control ends; its casing ends short of it.
void check_casing_ends(const Route& route, const Node* from, const Node* to, ProjectDraft& draft) {
  if (route.system != SystemKind::push_pull) return;
  const auto check = [&](const Node* node, const SourceLocation& where) {
    if (node == nullptr || !takes_cable(node->kind)) return;
    draft.add_error(
        where,
        fmt::format("a casing does not end on an arm: node {} is a {}", quoted_text(node->name),
                    node->kind == NodeKind::horn ? "horn" : "pedal"),
        "end the route where the casing ends, at a node of kind bulkhead or end, and "
        "state the wire's `run_out`");
  };
  check(from, route.from_where);
  check(to, route.to_where);
}

void check_routes(ProjectDraft& draft) {
  std::unordered_map<std::string_view, const Node*> nodes;
  for (const Node& node : draft.project.nodes) nodes.try_emplace(node.name, &node);
  std::unordered_map<std::string_view, const Line*> lines;
  for (const Line& line : draft.project.catalogue.lines) lines.try_emplace(line.name, &line);
  const auto find = [](const auto& among, const std::string& name) {
    const auto found = among.find(name);
    return found != among.end() && !name.empty() ? found->second : nullptr;
  };
  for (const Route& route : draft.project.routes) {
    if (const Line* line = find(lines, route.line)) check_line(route, *line, draft);
    check_casing_ends(route, find(nodes, route.from), find(nodes, route.to), draft);
    if (!route.from.empty() && route.from == route.to)
      draft.add_error(route.to_where,
                      fmt::format("the route ends at {}, where it starts: its ends must be two "
                                  "nodes",
                                  quoted_text(route.to)));
    else
      check_legs(route, find(nodes, route.from), find(nodes, route.to), draft);
  }
}

/// The project says it once for all of its controls.
void give_levers_their_pilots(Project& project) {
  for (Route& route : project.routes) {
    if (!route.lever) continue;
    route.lever->two_pilots = project.dual_controls.value_or(false);
    route.lever->weight_lbf = project.weight_lbf;
  }
}

}  // namespace

void cross_check(ProjectDraft& draft, const Catalogue& built_in) {
  check_given_twice(draft, built_in);
  check_used(draft, built_in);
  give_nodes_their_ports(draft);
  check_insertions(draft);
  choose_ports(draft);
  check_routes(draft);
  stretch_panels(draft);
  check_fairleads_in_holes(draft);
  check_grips_in_pieces(draft);
  take_sleeve_lines(draft);
  check_fitted_on_lines(draft);
  give_levers_their_pilots(draft.project);
}

}  // namespace linewright
