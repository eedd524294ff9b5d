#include "rules/space/chafe_lines.hpp"

#include <algorithm>

#include "lines/line_pairs.hpp"
#include "lines/motion/sleeve_hold.hpp"
#include "lines/near/nearest_lines.hpp"
#include "rules/space/chafe_margins.hpp"
#include "rules/space/pair_tolerance.hpp"

namespace linewright {

namespace {

/// Both hang on the fitting that they share, and move with it.
bool share_hanging_end(const Stretch& first, const Stretch& second) {
  const auto hangs_on = [](const Stretch& stretch, const Node* node) {
    const PreparedRoute& route = *stretch.route;
    return !node->held() && ((route.from == node && stretch.start_in <= 0) ||
                             (route.to == node && stretch.end_in >= route.length_in()));
  };
  return (hangs_on(first, first.route->from) && hangs_on(second, first.route->from)) ||
         (hangs_on(first, first.route->to) && hangs_on(second, first.route->to));
}

/// Lines on one hanging fitting swing with it together; against each other they move only as far as
/// if it were held.
Stretch without_common_swing(const Stretch& stretch) {
  Stretch own = stretch;
  own.envelope = shortened(stretch.envelope, stretch.start_in, stretch.end_in, 0, 4);
  return own;
}

/// True where one line may lie against another: in a sleeve, or against one; what moves along
/// itself saws through the other's, and needs one of its own.
bool sleeves_guard_pair(const PreparedRoute& route, bool sleeved, const PreparedRoute& other,
                        bool other_sleeved) {
  const bool moves = moves_control(route);
  const bool other_moves = moves_control(other);
  if (!moves && !other_moves) return sleeved || other_sleeved;
  return (sleeved || !moves) && (other_sleeved || !other_moves);
}

/// The worst place between two lines over all pairs of their spans.
std::optional<ReachPair> nearest_pair(const RuleContext& context,
                                      const std::vector<SpanReach>& first,
                                      const std::vector<SpanReach>& second,
                                      const TolerancePart& part) {
  const double tolerance_in = part.tolerance_in;
  std::optional<ReachPair> worst;
  if (first.empty() || second.empty()) return worst;
  const auto sleeves_of = [&](const std::vector<SpanReach>& spans) -> const SleeveGuards& {
    return context.motion.sleeves[context.index_of(*spans.front().stretch.route)];
  };
  const SleeveGuards& sleeves = sleeves_of(first);
  const SleeveGuards& other_sleeves = sleeves_of(second);
  for (const SpanReach& a : first) {
    for (const SpanReach& b : second) {
      if (!a.missing.empty() || !b.missing.empty()) continue;
      const double horizon =
          std::max(worst ? worst->bound.margin_in : chafe_horizon_in, tolerance_in);
      if (are_far_apart(a.stretch, b.stretch, Reach::bound, horizon)) continue;
      const PreparedRoute& route = *a.stretch.route;
      const PreparedRoute& other = *b.stretch.route;
      const auto counts = [&](double along, double other_along) {
        if (context.is_passed_over(route, along) || context.is_passed_over(other, other_along))
          return false;
        if (context.motion.ties.together(route, along, other, other_along)) return false;
        return part.counts(along, other_along) &&
               !sleeves_guard_pair(route, sleeves.guard(along), other,
                                   other_sleeves.guard(other_along)) &&
               !at_shared_node(route, along, other, other_along);
      };
      std::optional<std::pair<Stretch, Stretch>> own;
      if (share_hanging_end(a.stretch, b.stretch))
        own.emplace(without_common_swing(a.stretch), without_common_swing(b.stretch));
      const Stretch& mine = own ? own->first : a.stretch;
      const Stretch& theirs = own ? own->second : b.stretch;
      const auto bound = nearest_lines(mine, theirs, Reach::bound, horizon, counts);
      if (!bound) continue;
      if (!worst || bound->margin_in < worst->bound.margin_in)
        worst = ReachPair{*bound, worst ? worst->likely : std::nullopt};
      if (!breaks(*bound, tolerance_in)) continue;
      const auto likely = nearest_lines(mine, theirs, Reach::likely, tolerance_in, counts);
      if (likely && breaks(*likely, tolerance_in) &&
          (!worst->likely || likely->margin_in < worst->likely->margin_in))
        worst->likely = *likely;
    }
  }
  return worst;
}

/// What of two lines a sleeve would guard.
std::string which_to_sleeve(const PreparedRoute& route, const PreparedRoute& other) {
  if (moves_control(route) == moves_control(other))
    return moves_control(route) ? "both of them" : "one of them";
  return (moves_control(route) ? route : other).route->name;
}

Judgement judge_pair(const RuleContext& context, const PreparedRoute& route,
                     const PreparedRoute& other, const ReachPair& pair, double tolerance_in) {
  Judgement judgement = context.at(route, worst_place(pair).distance_in);
  judgement.with = other.route->name;
  judgement.with_is_route = true;
  judge_margins(context, pair, tolerance_in, likely_row(route.line->kind), other.route->name,
                judgement);
  if (judgement.verdict != Verdict::pass)
    judgement.mend = "move the lines " + context.phrasing.length_up(-*judgement.margin()) +
                     " apart, support them closer, or sleeve " + which_to_sleeve(route, other) +
                     " there";
  return judgement;
}

}  // namespace

std::vector<Judgement> chafe_of_later_lines(const RuleContext& context, const StillReaches& reaches,
                                            const LineNeighbours& neighbours, std::size_t index) {
  std::vector<Judgement> judgements;
  const auto& routes = context.prepared.routes;
  const PreparedRoute& route = routes[index];
  const double horizon_in = std::max(chafe_horizon_in, most_pair_tolerance_in(context.prepared));
  for (const std::size_t j : neighbours.after(index, horizon_in)) {
    if (!context.asks_for(route) && !context.asks_for(routes[j])) continue;
    if (route.line->kind == LineKind::wire && routes[j].line->kind == LineKind::wire) continue;
    std::optional<Judgement> worst;
    for (const TolerancePart& part : tolerance_parts(context.prepared, route, routes[j]))
      if (const auto pair = nearest_pair(context, reaches[index], reaches[j], part)) {
        Judgement judgement = judge_pair(context, route, routes[j], *pair, part.tolerance_in);
        if (!worst || graver(judgement, *worst)) worst = std::move(judgement);
      }
    if (worst) judgements.push_back(*std::move(worst));
  }
  return judgements;
}

}  // namespace linewright
