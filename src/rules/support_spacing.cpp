#include "rules/support_spacing.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <utility>

#include "geometry/free_run.hpp"

namespace linewright {

namespace {

constexpr std::array<LimitRow, 3> limits{{
    {"span that carries a tee or union, share of the spacing", 0.8, "of spacing",
     "MIL-H-8891A, paragraph above Table II: cut the spacing by about 20 %", Mark::verified,
     Verdict::fail},
    {"span over lines of different sizes: average of their spacings", 1, "of average",
     "MIL-H-8891A, paragraph above Table II", Mark::verified, Verdict::fail},
    {"free end past the last support, share of the spacing", 0.4, "of spacing",
     "equal first frequency: the square root of 3.516/22.373, clamped-free against clamped-clamped",
     Mark::common_practice, Verdict::warn},
}};
constexpr const LimitRow& with_fitting = limits[0];
constexpr const LimitRow& free_end = limits[2];

const PreparedRoute& route_of(const PreparedProject& prepared, const RunLeg& leg) {
  return prepared.routes[static_cast<std::size_t>(leg.route)];
}

const RunLeg& longest_leg(const FreeRun& run) {
  return *std::max_element(run.legs.begin(), run.legs.end(), [](const RunLeg& a, const RunLeg& b) {
    return a.length_in() < b.length_in();
  });
}

/// Average of the spacings of the lines along the run, and the weakest source behind it; nothing
/// where a line's spacing is not known.
std::optional<SourcedValue> spacing(const PreparedProject& prepared, const FreeRun& run) {
  std::map<std::string, SourcedValue> by_line;
  for (const RunLeg& leg : run.legs) {
    const Line& line = *route_of(prepared, leg).line;
    if (!line.support_spacing_in) return std::nullopt;
    by_line.emplace(line.name, *line.support_spacing_in);
  }
  SourcedValue average{0, by_line.begin()->second.source};
  for (const auto& [name, each] : by_line) {
    average.value += each.value / static_cast<double>(by_line.size());
    if (each.source.mark == Mark::common_practice) average.source = each.source;
  }
  return average;
}

std::string end_words(const PreparedProject& prepared, const RunEnd& end) {
  if (!end.held()) return "a free end";
  const PreparedRoute& route = prepared.routes[static_cast<std::size_t>(end.route)];
  return route.supports[static_cast<std::size_t>(end.support)].name;
}

/// Where one more support on `leg` would leave no free length over `limit_in`.
std::string mend_words(const RuleContext& context, const FreeRun& run, const RunLeg& leg,
                       double limit_in, double free_limit_in) {
  const PreparedRoute& route = route_of(context.prepared, leg);
  double before = 0;
  for (const RunLeg& each : run.legs) {
    if (&each == &leg) break;
    before += each.length_in();
  }
  const double after = run.length_in - before - leg.length_in();
  const double reach_back = run.first.held() ? limit_in : free_limit_in;
  const double reach_ahead = run.last.held() ? limit_in : free_limit_in;
  const double low = std::max(0.0, leg.length_in() + after - reach_ahead);
  const double high = std::min(leg.length_in(), reach_back - before);
  const Phrasing& phrasing = context.phrasing;
  if (low > high)
    return "add supports on " + route.route->name + " so that no free length is over " +
           phrasing.length(limit_in);
  const bool forward = leg.from_in <= leg.to_in;
  const double first = forward ? leg.from_in + low : leg.from_in - high;
  const double last = forward ? leg.from_in + high : leg.from_in - low;
  if (last - first < 0.005)
    return "add a support " + phrasing.length(first) + " from " + route.from->name;
  return "add a support between " + phrasing.length_number(first) + " and " +
         phrasing.length(last) + " from " + route.from->name;
}

Judgement judge_run(const RuleContext& context, const FreeRun& run) {
  const RunLeg& leg = longest_leg(run);
  const PreparedRoute& route = route_of(context.prepared, leg);
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement =
      judgement_at(support_spacing_rule(), route, (leg.low_in() + leg.high_in()) / 2);
  judgement.sense = LimitSense::at_most;
  judgement.value = run.length_in;
  const std::string between = "between " + end_words(context.prepared, run.first) + " and " +
                              end_words(context.prepared, run.last);
  const std::optional<SourcedValue> usual = spacing(context.prepared, run);
  for (const RunLeg& each : run.legs)
    if (each.route != leg.route) judgement.with = route_of(context.prepared, each).route->name;
  if (!usual) {
    judgement.message = "no support spacing is known for " + route.line->name + " " + between;
    judgement.source = "the catalogue has no figure for this line";
    judgement.mend = "add the line to the project's lines with a support_spacing and its source";
    return judgement;
  }
  const bool held = run.first.held() && run.last.held();
  const double span_limit = usual->value * (run.carries_fitting() ? with_fitting.value : 1);
  const double limit = held ? span_limit : usual->value * free_end.value;
  judgement.limit = limit;
  judgement.source = cite(usual->source);
  if (run.carries_fitting() && held) judgement.source += "; less 20 %: " + cite(with_fitting);
  if (!held) judgement.source += "; free end: " + cite(free_end);
  const std::string carries = run.carries_fitting() ? " with a fitting on it" : "";
  if (run.length_in <= limit + limit_rounding_in) {
    judgement.verdict = Verdict::pass;
    judgement.message = phrasing.length(run.length_in) + " free length" + carries + " " + between;
    return judgement;
  }
  judgement.verdict = held ? broken_limit(usual->source.mark) : free_end.broken;
  judgement.message = phrasing.length(run.length_in) + " free length" + carries + " " + between +
                      ": " + phrasing.length(run.length_in - limit) + " too long";
  judgement.mend = mend_words(context, run, leg, span_limit, usual->value * free_end.value);
  return judgement;
}

/// Several runs go through one fitting. Where they are too long because of the same leg, one
/// support on it mends them all: the longest stands for them.
bool stands_behind(const FreeRun& run, const Judgement& judgement, const FreeRun& other,
                   const Judgement& judged) {
  return &run != &other && run.carries_fitting() && other.carries_fitting() &&
         judgement.verdict != Verdict::pass && judged.verdict == judgement.verdict &&
         longest_leg(run).route == longest_leg(other).route &&
         longest_leg(run).low_in() == longest_leg(other).low_in() &&
         (other.length_in > run.length_in || (other.length_in == run.length_in && &other < &run));
}

std::vector<Judgement> judge_support_spacing(const RuleContext& context) {
  std::vector<FreeRun> runs = free_runs(context.prepared);
  std::erase_if(runs, [&](const FreeRun& run) {
    return route_of(context.prepared, run.legs.front()).line->kind == LineKind::cable;
  });
  std::vector<Judgement> all;
  for (const FreeRun& run : runs) all.push_back(judge_run(context, run));
  std::vector<Judgement> judgements;
  for (std::size_t i = 0; i < runs.size(); ++i) {
    bool hidden = false;
    for (std::size_t j = 0; j < runs.size(); ++j)
      hidden = hidden || stands_behind(runs[i], all[i], runs[j], all[j]);
    if (!hidden) judgements.push_back(all[i]);
  }
  return judgements;
}

}  // namespace

const Rule& support_spacing_rule() {
  static const Rule rule{
      .name = "support-spacing",
      .purpose = "no free length between supports is too long",
      .explanation =
          "The free length is measured along the line between two things that hold it sideways: a "
          "clamp, a grommet or bushing that the line nearly fills, a fairlead, a bulkhead union or "
          "a "
          "fitting fixed to structure. A tee or union hangs on its lines unless its node says "
          "`fixed: true`: the free length then goes on through it, and the limit falls by a fifth. "
          "A tail past the last support is judged against a share of the spacing. Control cables "
          "are held by tension and are not judged here.",
      .mend = "Add a support where the message says, or fix the tee to structure.",
      .limits = limits,
      .catalogue_limits =
          "support_spacing of each line: the fluid-lines chapter of FAA-H-8083-31 and MIL-H-8891A "
          "Table II for metal tube, AC 43.13-1B para 9-30 for hose, 11-96 for wires; plastic tube "
          "borrows the aluminium row",
      .judge = judge_support_spacing};
  return rule;
}

}  // namespace linewright
