#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <span>
#include <tuple>
#include <utility>

#include "lines/free_run.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow with_fitting{
    .name = "span-with-fitting",
    .subject = "span that carries a tee or union",
    .value = 0.8,
    .sense = LimitSense::at_most,
    .source = "MIL-H-8891A, paragraph above Table II: cut the spacing by about 20 %",
    .mark = Mark::verified,
    .times = "spacing"};
constexpr LimitRow of_average{.name = "span-of-mixed-lines",
                              .subject = "span over lines of different sizes",
                              .value = 1,
                              .sense = LimitSense::at_most,
                              .source = "MIL-H-8891A, paragraph above Table II",
                              .mark = Mark::verified,
                              .times = "average of their spacings"};
constexpr LimitRow free_end{
    .name = "free-end",
    .subject = "free end past the last support",
    .value = 0.4,
    .sense = LimitSense::at_most,
    .source =
        "equal first frequency: the square root of 3.516/22.373, clamped-free against "
        "clamped-clamped",
    .mark = Mark::common_practice,
    .broken = Verdict::warn,
    .times = "spacing"};

constexpr auto support_spacing_limits = limit_table({with_fitting, of_average, free_end});

const PreparedRoute& route_of(const PreparedProject& prepared, const RunLeg& leg) {
  return prepared.routes[static_cast<std::size_t>(leg.route)];
}

const RunLeg& longest_leg(const FreeRun& run) {
  return *std::max_element(run.legs.begin(), run.legs.end(), [](const RunLeg& a, const RunLeg& b) {
    return a.length_in() < b.length_in();
  });
}

/// Average of the spacings of the lines along the legs, and the weakest source behind it; nothing
/// where a line's spacing is not known.
std::optional<SourcedValue> spacing(const PreparedProject& prepared, std::span<const RunLeg> legs) {
  std::map<std::string, SourcedValue> by_line;
  for (const RunLeg& leg : legs) {
    const Line& line = *route_of(prepared, leg).line;
    if (!line.support_spacing_in) return std::nullopt;
    by_line.emplace(line.name, *line.support_spacing_in);
  }
  SourcedValue average{0, by_line.begin()->second.source};
  for (const auto& [name, each] : by_line) {
    average.value += of_average.value * each.value / static_cast<double>(by_line.size());
    if (each.source.mark == Mark::common_practice) average.source = each.source;
  }
  return average;
}

bool mixes_lines(const PreparedProject& prepared, const FreeRun& run) {
  const Line* first = route_of(prepared, run.legs.front()).line;
  return std::any_of(run.legs.begin(), run.legs.end(),
                     [&](const RunLeg& leg) { return route_of(prepared, leg).line != first; });
}

std::string end_words(const PreparedProject& prepared, const RunEnd& end) {
  if (!end.held()) return "a free end";
  const PreparedRoute& route = prepared.routes[static_cast<std::size_t>(end.route)];
  return route.supports[static_cast<std::size_t>(end.support)].name;
}

/// The longest that legs between two supports, or from one to a free end, may be.
double limit_in(double spacing_in, std::size_t legs, bool held) {
  if (!held) return spacing_in * free_end.value;
  return legs > 1 ? spacing_in * with_fitting.value : spacing_in;
}

/// Where one more support on `leg` would leave nothing too long on either side of it. Each side is
/// held to the run's own limit too, which keeps a fitting's fifth off both.
std::string mend_words(const RuleContext& context, const FreeRun& run, const RunLeg& leg,
                       double spacing_in) {
  const PreparedRoute& route = route_of(context.prepared, leg);
  const std::span<const RunLeg> legs(run.legs);
  const std::size_t index = static_cast<std::size_t>(&leg - run.legs.data());
  double before = 0;
  for (const RunLeg& each : legs.first(index)) before += each.length_in();
  const double after = run.length_in - before - leg.length_in();
  const auto reach = [&](std::span<const RunLeg> side, bool held) {
    const double side_spacing = spacing(context.prepared, side)->value;
    return std::min(limit_in(spacing_in, legs.size(), held),
                    limit_in(side_spacing, side.size(), held));
  };
  const double reach_back = reach(legs.first(index + 1), run.first.held());
  const double reach_ahead = reach(legs.subspan(index), run.last.held());
  const double low = std::max(0.0, leg.length_in() + after - reach_ahead);
  const double high = std::min(leg.length_in(), reach_back - before);
  const Phrasing& phrasing = context.phrasing;
  const bool forward = leg.from_in <= leg.to_in;
  const double first = phrasing.tape_up(forward ? leg.from_in + low : leg.from_in - high);
  const double last = phrasing.tape_down(forward ? leg.from_in + high : leg.from_in - low);
  if (first > last + limit_rounding)
    return "add supports on " + route.route->name + " so that no free length is over " +
           phrasing.length(phrasing.rounded_down(limit_in(spacing_in, legs.size(), true)));
  if (last - first < limit_rounding)
    return "add a support " + phrasing.tape(first) + " from " + route.from->name;
  return "add a support between " + phrasing.tape_number(first) + " and " + phrasing.tape(last) +
         " from " + route.from->name;
}

/// What breaking it gives is up to the source of the spacing; at a free end, to its share of it.
Limit limit_of(const FreeRun& run, const SourcedValue& spacing) {
  const bool held = run.first.held() && run.last.held();
  const double longest = limit_in(spacing.value, run.legs.size(), held);
  if (!held) return {longest, free_end};
  return {SourcedValue{longest, spacing.source}, Unit::inch, LimitSense::at_most};
}

std::string source_words(const PreparedProject& prepared, const FreeRun& run, const Source& usual) {
  const bool held = run.first.held() && run.last.held();
  std::string words = cite(usual);
  if (mixes_lines(prepared, run)) words += "; averaged: " + cite(of_average);
  if (run.carries_fitting() && held)
    words += fmt::format("; less {:g} %: {}", (1 - with_fitting.value) * 100, cite(with_fitting));
  if (!held) words += "; free end: " + cite(free_end);
  return words;
}

Judgement judge_run(const RuleContext& context, const FreeRun& run) {
  const RunLeg& leg = longest_leg(run);
  const PreparedRoute& route = route_of(context.prepared, leg);
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = context.at(route, (leg.low_in() + leg.high_in()) / 2);
  leave_unknown(judgement, of_average);
  judgement.value = run.length_in;
  const std::string between = "between " + end_words(context.prepared, run.first) + " and " +
                              end_words(context.prepared, run.last);
  const std::optional<SourcedValue> usual = spacing(context.prepared, run.legs);
  for (const RunLeg& each : run.legs)
    if (each.route != leg.route) {
      judgement.with = route_of(context.prepared, each).route->name;
      judgement.with_is_route = true;
    }
  if (!usual) {
    judgement.message = "no support spacing is known for " + route.line->name + " " + between;
    judgement.source = "the catalogue has no figure for this line";
    judgement.mend = "add the line to the project's lines with a support_spacing and its source";
    return judgement;
  }
  if (run.cut_short) {
    judgement.value.reset();
    judgement.message = "the lines hang on one another in more ways than can be followed";
    judgement.source = "this version of the program";
    judgement.mend =
        "fix a tee to structure (fixed: true), or add supports on " + route.route->name;
    return judgement;
  }
  const std::string source = source_words(context.prepared, run, usual->source);
  const std::string free_length = phrasing.length(run.length_in) + " free length";
  if (!run.first.held() && !run.last.held()) {
    holds_true(judgement, false, free_end);
    judgement.source = source;
    judgement.message = free_length + " " + between + ": nothing holds it";
    judgement.mend = mend_words(context, run, leg, usual->value);
    return judgement;
  }
  const Limit longest = limit_of(run, *usual);
  const bool short_enough = holds(judgement, run.length_in, {longest});
  judgement.source = source;
  judgement.message =
      free_length + (run.carries_fitting() ? " with a fitting on it " : " ") + between;
  if (short_enough) return judgement;
  judgement.message += ": " + phrasing.length(longest.lacking(run.length_in)) + " too long";
  judgement.mend = mend_words(context, run, leg, usual->value);
  return judgement;
}

/// Several runs go through one fitting. Where they are too long because of the same leg and against
/// the same limit, one support on it mends them all: the longest stands for them. True for each
/// judgement that another stands for.
std::vector<bool> stood_for(const std::vector<FreeRun>& runs,
                            const std::vector<Judgement>& judgements) {
  using Fault = std::tuple<int, double, Verdict, std::optional<double>>;
  std::map<Fault, std::size_t> longest;
  std::vector<bool> hidden(runs.size(), false);
  for (std::size_t i = 0; i < runs.size(); ++i) {
    if (!runs[i].carries_fitting() || judgements[i].verdict == Verdict::pass) continue;
    const RunLeg& leg = longest_leg(runs[i]);
    const Fault fault{leg.route, leg.low_in(), judgements[i].verdict, judgements[i].limit};
    const auto [known, is_new] = longest.emplace(fault, i);
    if (is_new) continue;
    const bool longer = runs[i].length_in > runs[known->second].length_in;
    hidden[longer ? known->second : i] = true;
    if (longer) known->second = i;
  }
  return hidden;
}

std::vector<Judgement> judge_support_spacing(const RuleContext& context) {
  std::vector<FreeRun> runs = context.motion.runs;
  std::erase_if(runs, [&](const FreeRun& run) {
    return works_control(route_of(context.prepared, run.legs.front()).line->kind);
  });
  std::vector<Judgement> all;
  for (const FreeRun& run : runs) all.push_back(judge_run(context, run));
  const std::vector<bool> hidden = stood_for(runs, all);
  std::vector<Judgement> judgements;
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (!hidden[i]) judgements.push_back(all[i]);
  return judgements;
}

}  // namespace

const Rule& support_spacing_rule() {
  static const Rule rule{
      .name = "support-spacing",
      .purpose = "no free length between supports is too long",
      .explanation =
          R"(The free length is measured along the line between two things that hold it
sideways: a clamp, a grommet or bushing that the line nearly fills, a fairlead, a bulkhead
union or a fitting fixed to structure. A tee or union hangs on its lines unless its node says
`fixed: true`: the free length then goes on through it, and the limit falls by a fifth. A tail
past the last support is judged against a share of the spacing. Control cables are held by
tension, pushrods by their two ends: they are not judged here.)",
      .mend = "Add a support where the message says, or fix the tee to structure.",
      .limits = support_spacing_limits,
      .catalogue_limits =
          "support_spacing of each line: FAA-H-8083-30 Table 7-5 and MIL-H-8891A "
          "Table II for metal tube, AC 43.13-1B para 9-30 for hose, 11-96 for wires; plastic tube "
          "borrows the aluminium row",
      .judge = judge_support_spacing};
  return rule;
}

}  // namespace linewright
