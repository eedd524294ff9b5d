#include "lines/casing_ends.hpp"

#include <algorithm>
#include <optional>

#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow anchored{.name = "anchored",
                            .subject = "clamps and fixed ends that keep a casing from sliding",
                            .value = 1,
                            .unit = Unit::none,
                            .source =
                                "mechanics: a casing that nothing holds slides instead of its "
                                "wire",
                            .mark = Mark::calculated};
constexpr LimitRow clamped_end{.name = "clamped-end",
                               .subject = "end of a casing from its last clamp",
                               .value = casing_tail_in,
                               .sense = LimitSense::at_most,
                               .source = "a push on the wire bends a longer tail aside",
                               .mark = Mark::common_practice,
                               .broken = Verdict::warn};
constexpr LimitRow stays_out{.name = "stays-out",
                             .subject = "wire that stands out of its casing, drawn all the way in",
                             .value = 0,
                             .source = "geometry: what is on the wire's end jams on the casing",
                             .mark = Mark::calculated};

constexpr LimitRow arm_follows{.name = "arm-follows",
                               .subject = "an arm takes the wire's pin as far as the travel says",
                               .value = 1,
                               .unit = Unit::none,
                               .source = "geometry: a pin goes round its arm",
                               .mark = Mark::calculated};
constexpr LimitRow swivel{.name = "swivel",
                          .subject = "wire off the line of its casing, on its arm",
                          .value = 8,
                          .unit = Unit::degree,
                          .sense = LimitSense::at_most,
                          .source = "ends that swivel take so much; others take less",
                          .mark = Mark::common_practice,
                          .broken = Verdict::warn};
constexpr LimitRow stated_swivel{.name = "stated-swivel",
                                 .subject =
                                     "wire off the line of its casing, times what its ends "
                                     "are stated to take",
                                 .value = 1,
                                 .unit = Unit::degree,
                                 .sense = LimitSense::at_most,
                                 .source = "the run_out's swivel, as the builder states it",
                                 .mark = Mark::builder,
                                 .times = "swivel"};

constexpr auto casing_ends_limits =
    limit_table({anchored, clamped_end, stays_out, arm_follows, swivel, stated_swivel});

/// Distances along the line at which the casing is kept from sliding: clamps, and ends that
/// structure holds.
std::vector<double> anchors_of(const PreparedRoute& route) {
  std::vector<double> anchors;
  for (const Support& support : route.supports) {
    const auto& points = route.route->points;
    if (support.point < 0 ||
        points[static_cast<std::size_t>(support.point)].hold == HoldKind::clamp)
      anchors.push_back(support.distance_in);
  }
  return anchors;
}

Judgement judge_unanchored(const RuleContext& context, const PreparedRoute& route) {
  Judgement judgement = context.at(route, 0);
  judgement.location = route.route->where;
  holds(judgement, 0, {anchored});
  judgement.message =
      "nothing keeps the casing from sliding: no clamp is about it, and no end of it is fixed";
  judgement.mend = "clamp it near both ends, or state `fixed: true` for nodes that structure holds";
  return judgement;
}

Judgement judge_clamped(const RuleContext& context, const PreparedRoute& route, const Node& node,
                        double end_in, const std::vector<double>& anchors) {
  const double nearest = end_in <= 0 ? anchors.front() : anchors.back();
  const double tail = std::abs(end_in - nearest);
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = context.at(route, end_in);
  judgement.with = node.name;
  const bool held = holds(judgement, tail, {clamped_end});
  judgement.message = node.held() ? "the casing is fixed at " + node.name
                                  : "the casing ends at " + node.name + ", " +
                                        phrasing.length(tail) + " past its last clamp";
  if (held) return judgement;
  judgement.mend = "clamp the casing within " + phrasing.length(clamped_end.value) + " of " +
                   node.name + ", or fix its end in a bracket (`fixed: true`)";
  return judgement;
}

Judgement judge_unstated(const RuleContext& context, const PreparedRoute& route,
                         const std::string& missing) {
  Judgement judgement = context.at(route, 0);
  judgement.location = route.route->where;
  leave_unknown(judgement, stays_out);
  judgement.message =
      "how far the wire moves out of its casing and into it is not known: " + missing +
      " is missing";
  judgement.mend = "state the route's `travel` and its `run_out` at both ends";
  return judgement;
}

Judgement judge_stays_out(const RuleContext& context, const PreparedRoute& route,
                          const CasingEnd& end) {
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = context.at(route, end.distance_in);
  judgement.with = end.node->name;
  if (holds(judgement, end.least_in, {stays_out})) {
    judgement.message = "drawn all the way in at " + end.node->name + ", the wire stands out " +
                        phrasing.length(end.least_in);
    return judgement;
  }
  if (end.surely_least_in >= 0) {
    leave_unknown(judgement, stays_out);
    judgement.value.reset();
    judgement.limit.reset();
    judgement.message = "whether the wire's pin is drawn into its casing at " + end.node->name +
                        " is not known: the casing leaves " + route.from->name +
                        " square to FS, so that `forward` and `aft` have no sense along it";
    judgement.mend = "let the wire stand out " + phrasing.length_up(-end.least_in) +
                     " more, or state the larger travel for both ways";
    return judgement;
  }
  holds(judgement, end.surely_least_in, {stays_out});
  judgement.message = "drawn all the way in at " + end.node->name + ", the wire's pin is " +
                      phrasing.length(-end.surely_least_in) + " inside its casing";
  judgement.mend = "let the wire stand out " + phrasing.length_up(-end.least_in) +
                   " more there at neutral, or give it less travel";
  return judgement;
}

Judgement judge_arm(const RuleContext& context, const PreparedRoute& route, const CasingEnd& end) {
  const Phrasing& phrasing = context.phrasing;
  const std::optional<PinWay> way = pin_way(end);
  Judgement judgement = context.at(route, end.distance_in);
  judgement.location = route.route->run_out->where;
  judgement.with = end.node->name;
  if (!way || !way->reaches) {
    holds_true(judgement, false, arm_follows);
    judgement.message = "the arm beyond " + end.node->name +
                        (way ? " cannot take the wire's pin as far as the travel says"
                             : " has no length: the wire's pin lies on its axis");
    judgement.mend = "state the arm's true pivot and axis, the run-out, and the travel it gives";
    return judgement;
  }
  const std::optional<double>& stated = route.route->run_out->swivel_deg;
  const Limit most = stated ? stated_swivel * *stated : Limit(swivel);
  const std::string off = "beyond " + end.node->name + " the wire turns " +
                          phrasing.angle(way->most_angle_deg) + " off the line of its casing";
  if (holds(judgement, way->most_angle_deg, {most})) {
    judgement.message = off + " at the most, on its arm";
    return judgement;
  }
  judgement.message =
      off + ", on its arm: " + phrasing.angle(most.lacking(way->most_angle_deg)) + " too much";
  judgement.mend =
      "point the casing's end at the middle of the pin's way, let the wire stand out "
      "farther, or make the arm longer";
  return judgement;
}

void judge_casing(const RuleContext& context, const PreparedRoute& route,
                  std::vector<Judgement>& judgements) {
  const std::vector<double> anchors = anchors_of(route);
  if (anchors.empty()) {
    judgements.push_back(judge_unanchored(context, route));
  } else {
    judgements.push_back(judge_clamped(context, route, *route.from, 0, anchors));
    judgements.push_back(judge_clamped(context, route, *route.to, route.length_in(), anchors));
  }
  const auto ends = casing_ends(route);
  if (!ends) {
    judgements.push_back(judge_unstated(context, route, missing_of_casing(route)));
    return;
  }
  for (const CasingEnd& end : *ends) judgements.push_back(judge_stays_out(context, route, end));
  for (const CasingEnd& end : *ends)
    if (end.arm) judgements.push_back(judge_arm(context, route, end));
}

std::vector<Judgement> judge_casing_ends(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    if (route.line->kind == LineKind::conduit) judge_casing(context, route, judgements);
  return judgements;
}

}  // namespace

const Rule& casing_ends_rule() {
  static const Rule rule{
      .name = "casing-ends",
      .purpose = "a push-pull control's casing is held near its ends, and its wire stays out of it",
      .explanation =
          R"(A push on the wire is a pull on its casing. So the casing must be clamped, or its ends fixed in
brackets, and near its ends: what is left past the last clamp is held against common practice. A
grommet, bushing or fairlead lets it slide, and does not count. The `run_out` says how far the wire
stands out of the casing at both ends, with the control at neutral, to the middle of the pin or ball
that it works; `travel`, how far it moves to either side, `forward` being the way it goes toward
smaller FS at the route's `from`. Drawn all the way in, it must still stand out: a pin that comes to
the casing jams there, and its fitting before it, whose length is left to the builder. Where the
casing leaves its `from` square to FS, the larger travel counts both ways. Without travel or run-out
the answer is unknown. A pin that goes round on an arm (`from_arm`, `to_arm`) takes the wire off the line
of its casing: the farthest angle on its way is held against the maker's `swivel`, or else against
common practice. An end that states no arm is taken to run straight out. What the wire sweeps beyond
the casing is judged by clearance and separation, as thick as the casing. Not judged: whether what
stands out buckles when it is pushed, what is on its end and thicker than the casing, and whether the
end of the casing is made to swivel at all.)",
      .mend =
          "Clamp the casing near its end, or fix the end in a bracket; let the wire stand out "
          "more.",
      .limits = casing_ends_limits,
      .catalogue_limits = "",
      .judge = judge_casing_ends};
  return rule;
}

}  // namespace linewright
