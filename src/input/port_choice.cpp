#include "input/port_choice.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <unordered_map>

#include "model/angle.hpp"

namespace linewright {

namespace {

/// Sizes this near are one: a nominal 5/16 is written 0.3125 or 0.312.
constexpr double same_size_in = 0.005;

/// One end of a route at a node with ports.
struct TubeEnd {
  Route* route;
  bool at_from;
  Vec3 next;  ///< the first place along the line beyond the node

  std::string& port() const { return at_from ? route->from_port : route->to_port; }
  std::string_view key() const { return at_from ? "from_port" : "to_port"; }
  /// Of what it says of its port, else of its node.
  const SourceLocation& where() const {
    if (!port().empty()) return at_from ? route->from_port_where : route->to_port_where;
    return at_from ? route->from_where : route->to_where;
  }
};

class PortChoice {
 public:
  PortChoice(const Node& node, ProjectDraft& draft)
      : node_(node), draft_(draft), taken_(node.ports.size(), nullptr) {}

  void add(const TubeEnd& end) { ends_.push_back(end); }

  void choose() {
    std::vector<TubeEnd> open;
    for (const TubeEnd& end : ends_) {
      check_size(end);
      if (end.port().empty())
        open.push_back(end);
      else
        take_named(end);
    }
    // What is free is looked at before any of these takes a port: their order does not count.
    std::vector<std::vector<std::size_t>> ways;
    const std::vector<std::size_t> free = free_ports();
    for (const TubeEnd& end : open)
      ways.push_back(open.size() == 1 && free.size() == 1 ? free : leaving_by(end, free));
    for (std::size_t i = 0; i < open.size(); ++i) take_only(open[i], ways[i], free.empty());
  }

 private:
  std::vector<std::size_t> free_ports() const {
    std::vector<std::size_t> free;
    for (std::size_t i = 0; i < taken_.size(); ++i)
      if (taken_[i] == nullptr) free.push_back(i);
    return free;
  }

  std::string port_words() const {
    std::vector<std::string> names;
    for (const Port& port : node_.ports) names.push_back(port.name);
    return fmt::format("ports of {}: {}", node_.name, fmt::join(names, ", "));
  }

  void take_named(const TubeEnd& end) {
    for (std::size_t i = 0; i < node_.ports.size(); ++i)
      if (node_.ports[i].name == end.port()) return take(end, i);
    draft_.add_error(
        end.where(),
        fmt::format("node {} has no port {}", quoted_text(node_.name), quoted_text(end.port())),
        port_words());
  }

  void take(const TubeEnd& end, std::size_t index) {
    if (taken_[index] != nullptr)
      return draft_.add_error(
          end.where(),
          fmt::format("port {} of {} is taken: {} is on it", node_.ports[index].name,
                      quoted_text(node_.name), quoted_text(taken_[index]->name)),
          fmt::format("say which port each takes, by 'from_port' or 'to_port'; {}", port_words()));
    taken_[index] = end.route;
    end.port() = node_.ports[index].name;
  }

  std::vector<std::size_t> leaving_by(const TubeEnd& end,
                                      const std::vector<std::size_t>& free) const {
    std::vector<std::size_t> found;
    for (const std::size_t index : free) {
      const Port& port = node_.ports[index];
      const Vec3 way = end.next - port.at;
      if (norm(way) <= 0 ||
          angle_between_rad(way, port.direction) * degrees_per_radian <= leaves_by_deg)
        found.push_back(index);
    }
    return found;
  }

  void take_only(const TubeEnd& end, const std::vector<std::size_t>& ways, bool none_free) {
    if (ways.size() == 1) return take(end, ways.front());
    const std::string which = fmt::format("say which by '{}'; {}", end.key(), port_words());
    if (none_free)
      return draft_.add_error(end.where(),
                              fmt::format("no port of {} is left for {}", quoted_text(node_.name),
                                          quoted_text(end.route->name)),
                              port_words());
    draft_.add_error(end.where(),
                     fmt::format("{} {} the way that {} goes",
                                 ways.empty() ? "no free port" : "more than one free port",
                                 fmt::format("of {} points", quoted_text(node_.name)),
                                 quoted_text(end.route->name)),
                     which);
  }

  /// A hose is taken to have an end that fits; its outside says nothing of that.
  void check_size(const TubeEnd& end) {
    const Fitting* fitting = draft_.project.catalogue.find_fitting(node_.fitting);
    const Line* line = draft_.project.catalogue.find_line(end.route->line);
    if (fitting == nullptr || line == nullptr || line->kind == LineKind::hose) return;
    if (std::abs(line->outside_diameter_in - fitting->tube_diameter_in) <= same_size_in) return;
    draft_.add_error(
        end.at_from ? end.route->from_where : end.route->to_where,
        fmt::format("{} at {} takes tube of {:.4g} in, and {} is of {:.4g} in",
                    quoted_text(fitting->name), quoted_text(node_.name), fitting->tube_diameter_in,
                    quoted_text(line->name), line->outside_diameter_in),
        "choose the fitting for the tube, or state one that reduces under 'fittings' or 'ports'");
  }

  const Node& node_;
  ProjectDraft& draft_;
  std::vector<const Route*> taken_;
  std::vector<TubeEnd> ends_;
};

}  // namespace

void choose_ports(ProjectDraft& draft) {
  std::unordered_map<std::string_view, const Node*> nodes;
  for (const Node& node : draft.project.nodes) nodes.try_emplace(node.name, &node);
  const auto find = [&](const std::string& name) {
    const auto found = nodes.find(name);
    return found != nodes.end() ? found->second : nullptr;
  };
  std::unordered_map<const Node*, std::size_t> index;
  std::vector<PortChoice> choices;
  const auto add = [&](Route& route, bool at_from, const Node* node, const Node* other) {
    if (node == nullptr) return;
    const TubeEnd end{&route, at_from,
                      !route.points.empty()
                          ? (at_from ? route.points.front() : route.points.back()).at
                          : (other != nullptr ? other->at : node->at)};
    const bool has_ports = !node->ports.empty();
    if (!has_ports && !end.port().empty() && node->fitting.empty())
      draft.add_error(end.where(), fmt::format("node {} has no ports", quoted_text(node->name)),
                      "state its 'fitting' or its 'ports'");
    if (!has_ports || route.system_name.empty()) return;
    if (!is_air(route.system))
      return draft.add_error(at_from ? route.from_where : route.to_where,
                             fmt::format("the ports of {} are for tubes and hoses: {} is neither",
                                         quoted_text(node->name), quoted_text(route.name)));
    const auto [known, is_new] = index.try_emplace(node, choices.size());
    if (is_new) choices.emplace_back(*node, draft);
    choices[known->second].add(end);
  };
  for (Route& route : draft.project.routes) {
    const Node* from = find(route.from);
    const Node* to = find(route.to);
    add(route, true, from, to);
    add(route, false, to, from);
  }
  for (PortChoice& choice : choices) choice.choose();
}

}  // namespace linewright
