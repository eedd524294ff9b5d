#include "rules/space/failed_clamp.hpp"

#include <algorithm>
#include <functional>
#include <optional>
#include <set>

#include "lines/motion/merged_spans.hpp"
#include "lines/motion/reach.hpp"
#include "lines/near/nearest_lines.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/neighbour_filter.hpp"
#include "rules/space/chafe_margins.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

constexpr std::string_view lost_clamp_lead = "if the ";

/// Two spans and the clamp between them.
struct Failure {
  const Support* clamp = nullptr;
  const SpanReach* before = nullptr;
  const SpanReach* after = nullptr;
  Stretch merged;
};

bool is_whole(const SpanReach& reach, const Span& span) {
  const ReachEnvelope& envelope = reach.stretch.envelope;
  return reach.missing.empty() && !reach.ends_free && envelope.start_in == span.start_in &&
         envelope.end_in == span.end_in;
}

std::vector<Failure> failures_of(const PreparedRoute& route,
                                 const std::vector<SpanReach>& reaches) {
  std::vector<Failure> failures;
  for (std::size_t i = 0; i + 1 < route.spans.size(); ++i) {
    const int last = route.spans[i].last;
    if (last < 0 || !is_whole(reaches[i], route.spans[i]) ||
        !is_whole(reaches[i + 1], route.spans[i + 1]))
      continue;
    const Support& support = route.supports[static_cast<std::size_t>(last)];
    if (support.point < 0 ||
        route.route->points[static_cast<std::size_t>(support.point)].hold != HoldKind::clamp)
      continue;
    const ReachEnvelope merged =
        merged_envelope(route, reaches[i].stretch.envelope, reaches[i + 1].stretch.envelope);
    failures.push_back({&support, &reaches[i], &reaches[i + 1],
                        make_stretch(route, merged.start_in, merged.end_in, merged)});
  }
  return failures;
}

bool is_bundle(const PreparedRoute& line) {
  return line.line->kind == LineKind::wire;
}

/// How near a stretch of the line can come to one control, in either reach.
using Measure = std::function<std::optional<Approach>(const Stretch&, Reach)>;

/// The worst of all failures against one control; nothing where none lets the line reach it.
struct Worst {
  ReachPair pair;
  const Support* clamp = nullptr;
};

std::optional<Worst> worst_failure(const PreparedRoute& line, const std::vector<Failure>& failures,
                                   const Measure& measure, double tolerance_in) {
  std::optional<Worst> worst;
  const auto reaches = [&](const std::optional<Approach>& approach) {
    return approach && breaks(*approach, tolerance_in);
  };
  for (const Failure& failure : failures) {
    const auto bound = measure(failure.merged, Reach::bound);
    if (!reaches(bound)) continue;
    const auto reached_with_clamp = [&](Reach reach) {
      return reaches(measure(failure.before->stretch, reach)) ||
             reaches(measure(failure.after->stretch, reach));
    };
    auto likely = measure(failure.merged, Reach::likely);
    if (!reaches(likely)) likely.reset();
    if (!likely && !is_bundle(line)) continue;
    // What is as grave with the clamp in place is said of that.
    const bool is_graver_without = likely && is_bundle(line);
    if (reached_with_clamp(is_graver_without ? Reach::likely : Reach::bound)) continue;
    const bool graver = !worst || (likely && !worst->pair.likely) ||
                        (likely.has_value() == worst->pair.likely.has_value() &&
                         (likely ? likely->margin_in < worst->pair.likely->margin_in
                                 : bound->margin_in < worst->pair.bound.margin_in));
    if (graver) worst = Worst{{*bound, likely}, failure.clamp};
  }
  return worst;
}

Judgement judgement_of(const RuleContext& context, const PreparedRoute& line, const Worst& worst,
                       const std::string& what, const LimitRow& row, double tolerance_in) {
  Judgement judgement = context.at(line, worst_place(worst.pair).distance_in);
  judge_margins(context, worst.pair, tolerance_in, row, what, judgement);
  const std::string name = is_bundle(line) ? "the bundle" : "the line";
  judgement.message.insert(
      0, std::string(lost_clamp_lead) + worst.clamp->name + " lets go, " + name + " ");
  judgement.mend = "add a clamp beside it, or lead " + name + " and " + what + " farther apart";
  return judgement;
}

const LimitRow& row_at_controls(const PreparedRoute& line) {
  return is_bundle(line) ? clamp_failed : tube_clamp_failed;
}

/// What a line that hangs loose must not touch; nullptr for lines of no such harm.
const LimitRow* row_against(const PreparedRoute& line, const PreparedRoute& other) {
  if (works_control(other.line->kind)) return &row_at_controls(line);
  return is_bundle(line) && other.route->system == SystemKind::vent ? &clamp_failed_by_vent
                                                                    : nullptr;
}

}  // namespace

std::vector<Judgement> judge_failed_clamps(const RuleContext& context, const PreparedRoute& line,
                                           const LineNeighbours& neighbours, double tolerance_in) {
  std::vector<Judgement> judgements;
  if (line.line->kind == LineKind::cable) return judgements;
  const std::vector<Failure> failures =
      failures_of(line, context.motion.reaches[context.index_of(line)]);
  if (failures.empty()) return judgements;
  const double between_lines = 2 * tolerance_in;
  std::set<std::size_t> near;
  for (const Failure& failure : failures)
    for (const std::size_t each : neighbours.near(failure.merged, Reach::bound, between_lines))
      near.insert(each);
  for (const std::size_t index : near) {
    const PreparedRoute& other = context.prepared.routes[index];
    const LimitRow* row = row_against(line, other);
    if (!row || !(context.asks_for(line) || context.asks_for(other))) continue;
    // Of a rod whose sweep is not known `clearance` says so.
    if (!context.motion.rods[index].missing.empty()) continue;
    const Measure measure = [&](const Stretch& stretch, Reach reach) {
      std::optional<Approach> nearest;
      for (const Stretch& hanging : context.motion.hanging[index]) {
        const auto found = nearest_lines(
            stretch, hanging, reach, nearest ? nearest->margin_in : between_lines,
            [&](double along, double) { return !context.is_passed_over(line, along); });
        if (found) nearest = found;
      }
      return nearest;
    };
    if (const auto worst = worst_failure(line, failures, measure, between_lines)) {
      judgements.push_back(
          judgement_of(context, line, *worst, other.route->name, *row, between_lines));
      judgements.back().with = other.route->name;
      judgements.back().with_is_route = true;
    }
  }
  if (!context.asks_for(line)) return judgements;
  const Obstacles& obstacles = context.prepared.obstacles;
  const NeighbourFilter filter(context.prepared, line);
  for (std::size_t i = 0; i < obstacles.parts().size(); ++i) {
    const Part& part = obstacles.parts()[i];
    if (!part.moves) continue;
    const Measure measure = [&](const Stretch& stretch, Reach reach) {
      return nearest_of_part(stretch, reach, obstacles, static_cast<int>(i), tolerance_in,
                             [&](const Obstacle& obstacle, double along) {
                               return filter.counts(obstacle, along) &&
                                      !context.is_passed_over(line, along);
                             });
    };
    if (const auto worst = worst_failure(line, failures, measure, tolerance_in)) {
      judgements.push_back(
          judgement_of(context, line, *worst, part.name, row_at_controls(line), tolerance_in));
      judgements.back().with = part.name;
    }
  }
  return judgements;
}

bool is_of_lost_clamp(const Judgement& judgement) {
  return judgement.rule == "chafe" && judgement.message.starts_with(lost_clamp_lead);
}

}  // namespace linewright
