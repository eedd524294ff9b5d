#include "rules/space/measured_gap.hpp"

#include <algorithm>
#include <iterator>

namespace linewright {

namespace {

/// What a cable can hang off, and of another line beside it.
double hangs_off_in(const RuleContext& context, const PreparedRoute& route,
                    const MeasuredGap& gap) {
  const auto hangs = [&](const PreparedRoute& line, double distance_in) {
    return works_control(line.line->kind)
               ? reach_there_in(context.motion.hanging[context.index_of(line)], Reach::likely,
                                distance_in)
               : 0;
  };
  return hangs(route, gap.distance_in) +
         (gap.line && gap.drawn ? hangs(*gap.line, gap.drawn->other_distance_in) : 0);
}

Judgement judge_gap(const RuleContext& context, const PreparedRoute& route, const MeasuredGap& gap,
                    const std::vector<Limit>& limits) {
  Judgement judgement = about_measured(context, route, gap);
  const double hangs = hangs_off_in(context, route, gap);
  const double free =
      *gap.measured->gap_in - context.prepared.project->measuring_tolerance_in - hangs;
  const Phrasing& phrasing = context.phrasing;
  const std::string other = gap.other().empty() ? "what was found there" : gap.other();
  const bool clear = holds(judgement, free, limits);
  judgement.message = "measured " + phrasing.length(*gap.measured->gap_in) + " from " + other;
  if (hangs > 0) judgement.message += ", less " + phrasing.length(hangs) + " that cables can hang";
  if (clear) {
    judgement.message += ": clear of it";
    return judgement;
  }
  judgement.message += ": too near";
  double lacking = 0;
  for (const Limit& limit : limits) lacking = std::max(lacking, limit.lacking(free));
  judgement.mend = "lead the line " + phrasing.length_up(lacking) + " farther from " + other +
                   ", and measure again";
  return judgement;
}

}  // namespace

double reach_there_in(const std::vector<Stretch>& stretches, Reach reach, double distance_in) {
  double widest = 0;
  for (const Stretch& stretch : stretches)
    if (distance_in >= stretch.start_in && distance_in <= stretch.end_in)
      widest = std::max(widest, stretch.envelope.width_in(reach, distance_in));
  return widest;
}

Judgement about_measured(const RuleContext& context, const PreparedRoute& route,
                         const MeasuredGap& gap) {
  Judgement judgement = context.at(route, gap.distance_in);
  judgement.location = gap.measured->where;
  if (!gap.other().empty()) judgement.with = gap.other();
  judgement.with_is_route = gap.line != nullptr;
  judgement.measured = Measured{*gap.measured->gap_in, gap.measured->on, gap.measured->by};
  return judgement;
}

std::vector<Judgement> judge_measured_gaps(const RuleContext& context, const LimitsOfGap& limits) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    for (const MeasuredGap& gap : measured_gaps(context.prepared, route)) {
      const std::vector<Limit> apply = limits(route, gap);
      if (!apply.empty()) judgements.push_back(judge_gap(context, route, gap, apply));
    }
  return judgements;
}

}  // namespace linewright
