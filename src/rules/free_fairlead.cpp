#include "rules/free_fairlead.hpp"

#include <algorithm>

#include "rules/fairlead_angle.hpp"
#include "rules/reach.hpp"

namespace linewright {

namespace {

constexpr const LimitRow& as_drawn = free_fairlead_limits[0];
constexpr const LimitRow& as_it_moves = free_fairlead_limits[1];

/// What is left of the bore as drawn. A slanting cable takes up more of it.
double room_in(const PreparedRoute& route, const FreePassage& passage) {
  return *passage.fairlead().bore_in / 2 - passage.offset_in -
         route.radius_in(passage.distance_in) / passage.slant_cosine;
}

const SpanReach* reach_at(const std::vector<SpanReach>& reaches, double distance_in) {
  const auto found = std::find_if(reaches.begin(), reaches.end(), [&](const SpanReach& each) {
    return distance_in <= each.stretch.end_in;
  });
  return found != reaches.end() ? &*found : nullptr;
}

std::string mend_words(const RuleContext& context, const FreePassage& passage, double lacking_in) {
  const Phrasing& phrasing = context.phrasing;
  std::string words =
      "use a bore of " + phrasing.length_up(*passage.fairlead().bore_in + 2 * lacking_in);
  if (passage.offset_in >= lacking_in)
    words +=
        ", move the fairlead " + phrasing.length_up(lacking_in) + " toward the middle of the cable";
  return words +
         ", or let it guide the cable: leave out `passes: free` and draw its point on the "
         "cable's path";
}

Judgement judge_passage(const RuleContext& context, const PreparedRoute& route,
                        const FreePassage& passage, const std::vector<SpanReach>& reaches) {
  const RoutePoint& fairlead = passage.fairlead();
  const std::string name =
      "the fairlead" + (fairlead.through.empty() ? "" : " in hole " + fairlead.through);
  const double drawn = room_in(route, passage);
  const double gap = drawn - context.prepared.project->build_tolerance_in;
  Judgement judgement = judgement_at(fairlead_angle_rule(), route, passage.distance_in);
  judgement.location = fairlead.where;
  if (!fairlead.through.empty()) judgement.with = fairlead.through;
  judgement.value = gap;
  judgement.source = cite(as_it_moves);
  const SpanReach* reach = reach_at(reaches, passage.distance_in);
  const double likely =
      reach ? reach->stretch.envelope.width_in(Reach::likely, passage.distance_in) : 0;
  if (drawn < -limit_rounding_in) {
    judgement.value = drawn;
    judgement.limit = as_drawn.value;
    judgement.source = cite(as_drawn);
    judgement.verdict = as_drawn.broken;
    judgement.message = "the cable runs into " + name + ", which it is to pass free: it lies " +
                        context.phrasing.length(passage.offset_in) + " off the middle of the bore";
    judgement.mend = mend_words(context, passage, as_it_moves.value + likely - gap);
    return judgement;
  }
  if (!reach || !reach->missing.empty()) {
    judgement.message = "whether the cable passes " + name +
                        " free is not known: " + (reach ? reach->missing : "what holds it") +
                        " is missing";
    judgement.mend = "state it in the project";
    return judgement;
  }
  judgement.limit = as_it_moves.value + likely;
  const std::string numbers =
      ": room " + context.phrasing.length(gap) + ", reach " + context.phrasing.length(likely);
  if (gap >= *judgement.limit - limit_rounding_in) {
    judgement.verdict = Verdict::pass;
    judgement.message = "passes " + name + " free" + numbers;
    return judgement;
  }
  judgement.verdict = as_it_moves.broken;
  judgement.message = "can touch " + name + ", which it is to pass free" + numbers;
  judgement.mend = mend_words(context, passage, *judgement.limit - gap);
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_free_fairleads(const RuleContext& context) {
  std::vector<Judgement> judgements;
  std::vector<FreeRun> runs;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.free_passages.empty()) continue;
    if (runs.empty()) runs = free_runs(context.prepared);
    const auto reaches = span_reaches(context.prepared, route, runs);
    for (const FreePassage& passage : route.free_passages)
      judgements.push_back(judge_passage(context, route, passage, reaches));
  }
  return judgements;
}

}  // namespace linewright
