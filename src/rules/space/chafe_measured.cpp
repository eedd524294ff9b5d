#include "rules/space/chafe_measured.hpp"

#include <algorithm>

#include "lines/edge_guard.hpp"
#include "lines/line_pairs.hpp"
#include "rules/space/chafe_margins.hpp"
#include "rules/space/measured_gap.hpp"

namespace linewright {

namespace {

/// The span that a place lies in; nothing where its reach is not known.
const SpanReach* span_at(const RuleContext& context, const PreparedRoute& route,
                         double distance_in) {
  for (const SpanReach& reach : context.motion.reaches[context.index_of(route)])
    if (distance_in >= reach.stretch.start_in && distance_in <= reach.stretch.end_in)
      return reach.missing.empty() ? &reach : nullptr;
  return nullptr;
}

bool is_sleeved(const RuleContext& context, const PreparedRoute& route, double distance_in) {
  return context.motion.sleeves[context.index_of(route)].guard(distance_in);
}

/// True where the line may touch what the gap is to, or never meets it for another reason.
bool may_touch(const RuleContext& context, const PreparedRoute& route, const MeasuredGap& gap) {
  if (gap.hole || is_sleeved(context, route, gap.distance_in)) return true;
  if (!gap.drawn) return false;
  if (gap.drawn->obstacle) return guards_line(gap.drawn->obstacle->guard, route);
  if (!gap.line) return false;
  const double there = gap.drawn->other_distance_in;
  const bool wires = route.line->kind == LineKind::wire && gap.line->line->kind == LineKind::wire;
  return wires || is_sleeved(context, *gap.line, there) ||
         at_shared_node(route, gap.distance_in, *gap.line, there) ||
         context.motion.ties.together(route, gap.distance_in, *gap.line, there);
}

/// How far line and other line reach toward each other there; nothing where that is not known.
std::optional<double> both_reach_in(const RuleContext& context, const PreparedRoute& route,
                                    const MeasuredGap& gap, Reach reach) {
  const SpanReach* own = span_at(context, route, gap.distance_in);
  if (!own) return std::nullopt;
  const double width = own->stretch.envelope.width_in(reach, gap.distance_in);
  if (!gap.line) return width;
  if (!gap.drawn) return std::nullopt;
  const SpanReach* other = span_at(context, *gap.line, gap.drawn->other_distance_in);
  if (!other) return std::nullopt;
  return width + other->stretch.envelope.width_in(reach, gap.drawn->other_distance_in);
}

Approach approach_of(const MeasuredGap& gap, double reach_in) {
  Approach approach = gap.drawn.value_or(Approach{});
  approach.distance_in = gap.distance_in;
  approach.gap_in = *gap.measured->gap_in;
  approach.margin_in = approach.gap_in - reach_in;
  return approach;
}

}  // namespace

std::vector<Judgement> chafe_of_measured_gaps(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const double tolerance = context.prepared.project->measuring_tolerance_in;
  for (const PreparedRoute& route : context.prepared.routes)
    for (const MeasuredGap& gap : measured_gaps(context.prepared, route)) {
      if (may_touch(context, route, gap)) continue;
      const auto bound = both_reach_in(context, route, gap, Reach::bound);
      const auto likely = both_reach_in(context, route, gap, Reach::likely);
      if (!bound || !likely) continue;
      ReachPair pair{approach_of(gap, *bound), approach_of(gap, *likely)};
      if (!breaks(*pair.likely, tolerance)) pair.likely.reset();
      Judgement judgement = about_measured(context, route, gap);
      judge_margins(context, pair, tolerance, likely_row(route.line->kind),
                    gap.other().empty() ? "what was found there" : gap.other(), judgement);
      judgement.message.insert(
          0, "measured " + context.phrasing.length(*gap.measured->gap_in) + " away: ");
      if (judgement.verdict != Verdict::pass)
        judgement.mend =
            "add a support near the place, guard what it can rub on, or lead the line farther off, "
            "and measure again";
      judgements.push_back(std::move(judgement));
    }
  return judgements;
}

}  // namespace linewright
