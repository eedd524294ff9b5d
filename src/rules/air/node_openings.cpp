#include "rules/air/node_openings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

namespace linewright {

namespace {

/// How many lines a fitting needs so that none of its openings is left open.
const LimitRow& lines_needed(const Node& node) {
  switch (node.kind) {
    case NodeKind::tee:
      return tee_lines;
    case NodeKind::union_fitting:
    case NodeKind::bulkhead:
      return lines_through;
    default:
      return line_end;
  }
}

/// How many lines it takes at most; nullptr where that is not known. The reader sees to it that
/// each port that is stated takes one line.
const LimitRow* most_lines(const Node& node) {
  if (!joins_air(node.kind)) return node.kind == NodeKind::cap ? &most_at_cap : &joins_none;
  if (!node.ports.empty()) return nullptr;
  switch (node.kind) {
    case NodeKind::tee:
      return &most_at_tee;
    case NodeKind::union_fitting:
    case NodeKind::bulkhead:
      return &most_at_union;
    case NodeKind::static_port:
    case NodeKind::pitot_probe:
    case NodeKind::instrument:
      return &most_at_other;
    default:
      return nullptr;
  }
}

/// What ends at a node that closes no line: its message and mend.
void say_not_closed(Judgement& judgement, const Node& node, std::size_t lines) {
  judgement.mend = "lead the line to a port, instrument, drain or cap";
  if (takes_cable(node.kind)) {
    judgement.message = "an air line ends at " + node.name + ", which moves a control";
  } else if (lines == 1) {
    judgement.message = "the line ends open at " + node.name;
  } else {
    judgement.message = std::to_string(lines) + " lines end open at " + node.name +
                        ": a bare end does not join them";
    judgement.mend = "make it the fitting that joins them: a union, or a tee";
  }
}

/// More lines than it has openings for them; nothing where there are not.
std::optional<Judgement> judge_too_many(const RuleContext& context, const Node& node,
                                        const Routes& routes) {
  const LimitRow* most = most_lines(node);
  if (!most) return std::nullopt;
  Judgement judgement = at_node(context, *most, *routes.front(), node);
  if (holds(judgement, static_cast<double>(routes.size()), {*most})) return std::nullopt;
  if (most == &joins_none) {
    say_not_closed(judgement, node, routes.size());
    return judgement;
  }
  judgement.message = std::to_string(routes.size()) + " lines end at " + node.name;
  if (node.kind == NodeKind::cap) {
    judgement.message += ": a cap closes one line, and joins none";
    judgement.mend = "join the lines at a union or tee, or give each a cap of its own";
  } else if (most == &most_at_other) {
    judgement.message += ": by what do they meet there?";
    judgement.mend = "put a tee before it, or state its `ports`";
  } else {
    judgement.message += fmt::format(": {} has {} openings",
                                     node.kind == NodeKind::tee ? "a tee" : "a union", most->value);
    judgement.mend = node.kind == NodeKind::tee ? "put a second tee into one of the lines"
                                                : "use a tee, or a second one where there are four";
  }
  return judgement;
}

}  // namespace

Judgement at_node(const RuleContext& context, const LimitRow& row, const PreparedRoute& route,
                  const Node& node) {
  const bool start = route.from == &node;
  Judgement judgement = context.at(route, start ? 0 : route.length_in());
  judgement.with = node.name;
  judgement.location = start ? route.route->from_where : route.route->to_where;
  leave_unknown(judgement, row);
  return judgement;
}

std::optional<Judgement> judge_openings(const RuleContext& context, const Node& node,
                                        const Routes& routes) {
  // It is no fault of an end that it is still to be connected, and is tied up until then.
  if (node.loose) return std::nullopt;
  // A vent ends in the open: that is what it is for.
  const bool vent = std::all_of(routes.begin(), routes.end(), [](const PreparedRoute* route) {
    return route->route->system == SystemKind::vent;
  });
  if (vent && node.kind == NodeKind::end) return std::nullopt;
  if (auto too_many = judge_too_many(context, node, routes)) return too_many;
  if (vent) return std::nullopt;
  const LimitRow& needed = lines_needed(node);
  Judgement judgement = at_node(context, needed, *routes.front(), node);
  if (holds(judgement, static_cast<double>(routes.size()), {needed})) {
    judgement.message = "no opening of " + node.name + " is left open";
    return judgement;
  }
  judgement.message = node.kind == NodeKind::tee
                          ? "tee " + node.name + " joins " + std::to_string(routes.size()) +
                                (routes.size() == 1 ? " line" : " lines") +
                                ": an opening is left open"
                          : "the line ends open at " + node.name;
  judgement.mend = node.kind == NodeKind::tee ? "join the third line, or use a union"
                                              : "lead the line to a port, instrument, drain or cap";
  return judgement;
}

}  // namespace linewright
