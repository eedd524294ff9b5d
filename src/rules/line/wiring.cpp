#include <algorithm>
#include <cmath>
#include <functional>

#include "lines/air_network.hpp"
#include "model/place_order.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow ties{.name = "ties-between-supports",
                        .subject = "bundle without ties between two supports",
                        .value = 12,
                        .sense = LimitSense::at_most,
                        .source = "AC 43.13-1B para 11-158 b",
                        .mark = Mark::verified};
constexpr LimitRow drip_loop{
    .name = "drip-loop",
    .subject = "drip loop below a connector that the bundle comes down to",
    .value = 1,
    .unit = Unit::none,
    .source = "AC 43.13-1B para 11-96 x: a trap or drip loop, so that no water runs into it",
    .mark = Mark::verified};

constexpr auto wiring_limits = limit_table({ties, drip_loop});

/// Of several as long the one that lies before the others.
const Span& longest_span(const PreparedRoute& route) {
  const Span* longest = &route.spans.front();
  const auto middle = [&](const Span& span) {
    return route.centreline.at((span.start_in + span.end_in) / 2);
  };
  for (const Span& span : route.spans) {
    const double longer = span.length_in() - longest->length_in();
    if (longer > limit_rounding ||
        (longer > -limit_rounding && lies_before(middle(span), middle(*longest))))
      longest = &span;
  }
  return *longest;
}

bool is_missing(const Judgement& judgement) {
  return judgement.verdict == Verdict::unknown;
}

/// Said of the longest of its spans.
Judgement judge_ties(const RuleContext& context, const PreparedRoute& route) {
  const Span& span = longest_span(route);
  Judgement judgement = context.at(route, (span.start_in + span.end_in) / 2);
  const std::string apart =
      "the bundle's supports are up to " + context.phrasing.length(span.length_in()) + " apart";
  const bool near = span.length_in() <= ties.value + limit_rounding;
  if (!near && !route.route->tied) {
    leave_unknown(judgement, ties);
    judgement.value = span.length_in();
    judgement.limit = ties.value;
    judgement.message = apart + ": whether ties hold it together between them is not stated";
    judgement.mend = "tie it, and state tied: true";
    return judgement;
  }
  if (near || *route.route->tied) {
    holds_true(judgement, true, ties);
    judgement.message = near ? apart : apart + ", with ties between";
    return judgement;
  }
  holds(judgement, span.length_in(), {ties});
  judgement.message = apart + ", without ties between";
  judgement.mend =
      "tie it between them, or support it at least every " + context.phrasing.length(ties.value);
  return judgement;
}

/// How the bundle comes to one of its ends in an attitude: what it runs down from, and whether it
/// has come up to the end from below after that.
struct Descent {
  bool comes_down = false;
  double loop_in = 0;  ///< its lowest place below the end, before it rises over it
};

Descent descent_of(const PreparedRoute& route, bool at_from, const Attitude& attitude) {
  std::vector<HeightSample> profile =
      height_profile(route.centreline, up_in_attitude(attitude.pitch_deg, attitude.roll_deg));
  if (!at_from) std::reverse(profile.begin(), profile.end());
  const double end_height = profile.front().height_in;
  Descent descent;
  for (const HeightSample& sample : profile) {
    const double over = sample.height_in - end_height;
    if (over > limit_rounding) {
      descent.comes_down = true;
      break;
    }
    descent.loop_in = std::max(descent.loop_in, -over);
  }
  return descent;
}

/// The attitude in which it comes down with the least of a loop; nothing where it comes down in
/// none.
struct WorstDescent {
  const Attitude* attitude = nullptr;
  double loop_in = 0;
};

std::optional<WorstDescent> worst_descent(const PreparedRoute& route, bool at_from,
                                          const std::vector<Attitude>& attitudes) {
  std::optional<WorstDescent> worst;
  for (const Attitude& attitude : attitudes) {
    const Descent descent = descent_of(route, at_from, attitude);
    if (!descent.comes_down || (worst && worst->loop_in <= descent.loop_in)) continue;
    worst = WorstDescent{&attitude, descent.loop_in};
  }
  return worst;
}

/// Nothing where the end is said to be no connector, or the bundle never lies over it.
std::optional<Judgement> judge_drip(const RuleContext& context, const PreparedRoute& route,
                                    bool at_from, const std::vector<Attitude>& attitudes) {
  const Node& node = at_from ? *route.from : *route.to;
  if (node.connector == false) return std::nullopt;
  const auto worst = worst_descent(route, at_from, attitudes);
  if (!worst) return std::nullopt;
  Judgement judgement = context.at(route, at_from ? 0 : route.length_in());
  judgement.with = node.name;
  judgement.location = at_from ? route.route->from_where : route.route->to_where;
  const bool has_loop =
      worst->loop_in > context.prepared.project->build_tolerance_in + limit_rounding;
  const std::string loop = context.phrasing.length(worst->loop_in);
  if (has_loop) {
    if (!node.connector) return std::nullopt;
    holds_true(judgement, true, drip_loop);
    judgement.message =
        "the bundle hangs " + loop + " below " + node.name + " before it comes to it";
    return judgement;
  }
  judgement.mend = "let it hang below " + node.name + " and come up to it";
  const std::string down = "the bundle comes down to " + node.name + " without a drip loop";
  if (node.connector) {
    holds_true(judgement, false, drip_loop);
    judgement.message = down + ", so that water runs into it, in attitude " + worst->attitude->name;
    return judgement;
  }
  leave_unknown(judgement, drip_loop);
  judgement.message = down +
                      ": whether that is a connector, terminal block, panel or junction box "
                      "is not stated";
  judgement.mend += ", or state connector: false of it";
  return judgement;
}

/// All that can be said of the bundles, with what is not known of them.
std::vector<Judgement> look_at_bundles(const RuleContext& context) {
  std::vector<Attitude> attitudes = context.prepared.project->attitudes;
  if (attitudes.empty()) attitudes.push_back({"level flight", 0, 0, {}});
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::wire) continue;
    if (!route.spans.empty()) judgements.push_back(judge_ties(context, route));
    for (const bool at_from : {true, false})
      if (const auto drip = judge_drip(context, route, at_from, attitudes))
        judgements.push_back(*drip);
  }
  return judgements;
}

/// What a project does not state is among what was taken (planning/taken_values.hpp).
std::vector<Judgement> judge_wiring(const RuleContext& context) {
  std::vector<Judgement> judgements = look_at_bundles(context);
  std::erase_if(judgements, is_missing);
  return judgements;
}

std::vector<Judgement> wiring_lacking(const RuleContext& context) {
  std::vector<Judgement> judgements = look_at_bundles(context);
  std::erase_if(judgements, std::not_fn(is_missing));
  return judgements;
}

}  // namespace

const Rule& wiring_rule() {
  static const Rule rule{
      .name = "wiring",
      .purpose = "bundles are tied between far supports and hang below connectors",
      .explanation =
          R"(Wires hang loose from one another where their supports are far apart: beyond the
limit the bundle is tied between them, which the route states (`tied: true`). Said of the longest
span of each bundle. Water runs down a wire: a bundle that comes down to a connector, terminal
block, panel or junction box must first hang below it, by more than the build tolerance, and come
up to it, in each of the project's `attitudes` (level flight where none is stated). What an end
is, its node says by `connector`. Ties and ends that are not stated are listed with what was taken,
and are unknown where this rule is asked for alone. How deep the loop is, and that its clamps let it
hang, is left to the eye.)",
      .mend = "Tie the bundle, and let it hang below a connector before it comes up to it.",
      .limits = wiring_limits,
      .catalogue_limits = "",
      .judge = judge_wiring,
      .lacking = wiring_lacking};
  return rule;
}

}  // namespace linewright
