#include "rules/slack.hpp"

#include <fmt/format.h>

#include <array>

namespace linewright {

namespace {

constexpr std::array<LimitRow, 2> limits{{
    {"hose longer than the distance it spans, at least", 0.05, "of distance",
     "US Navy 14105 p. 5-11: slack of 5 to 8 %; the share is taken of the distance between "
     "supports",
     Mark::verified, Verdict::fail},
    {"hose longer than the distance it spans, at most", 0.08, "of distance",
     "US Navy 14105 p. 5-11: slack of 5 to 8 %; the share is taken of the distance between "
     "supports",
     Mark::verified, Verdict::fail},
}};
constexpr const LimitRow& least = limits[0];
constexpr const LimitRow& most = limits[1];

/// Straight distances from support to support, ends included: the least length that could span it.
double distance_spanned_in(const PreparedRoute& route) {
  Vec3 last = route.centreline.at(0);
  double sum = 0;
  for (const Support& support : route.supports) {
    const Vec3 here = route.centreline.at(support.distance_in);
    sum += distance(last, here);
    last = here;
  }
  return sum + distance(last, route.centreline.at(route.length_in()));
}

Judgement judge_hose(const RuleContext& context, const PreparedRoute& route) {
  const Phrasing& phrasing = context.phrasing;
  // With the cut length stated the drawn path is the distance; without it the drawn path is the
  // hose.
  const double length = route.route->length_in.value_or(route.length_in());
  const double spanned = route.route->length_in ? route.length_in() : distance_spanned_in(route);
  Judgement judgement = judgement_at(slack_rule(), route, route.length_in() / 2);
  judgement.location = route.route->where;
  judgement.value = length;
  judgement.limit = spanned * (1 + least.value);
  judgement.source = cite(least);
  const std::string measured =
      "the hose is " + phrasing.length(length) + " long over " + phrasing.length(spanned) +
      fmt::format(" between its supports: {:.1f} % slack", (length / spanned - 1) * 100);
  judgement.message = measured;
  if (length < *judgement.limit - limit_rounding_in) {
    judgement.verdict = least.broken;
    judgement.message += ", under 5 %";
    judgement.mend = "make the hose " + phrasing.length_up(*judgement.limit) + " to " +
                     phrasing.length(phrasing.rounded_down(spanned * (1 + most.value))) + " long";
    return judgement;
  }
  judgement.verdict = Verdict::pass;
  if (length <= spanned * (1 + most.value) + limit_rounding_in) return judgement;
  judgement.limit = spanned * (1 + most.value);
  judgement.sense = LimitSense::at_most;
  judgement.source = cite(most);
  judgement.verdict = most.broken;
  judgement.message += ", over 8 %";
  judgement.mend = "shorten the hose to " +
                   phrasing.length(phrasing.rounded_down(*judgement.limit)) +
                   " or less, or hold it where it turns";
  return judgement;
}

std::vector<Judgement> judge_slack(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    if (route.line->kind == LineKind::hose) judgements.push_back(judge_hose(context, route));
  return judgements;
}

}  // namespace

const Rule& slack_rule() {
  static const Rule rule{
      .name = "slack",
      .purpose = "a hose is 5 to 8 % longer than the distance it spans",
      .explanation =
          "A hose shortens under pressure and must not pull on its fittings. Its length is the "
          "route's `length` where stated, over the drawn path; else the developed length of the "
          "drawn path, over the straight distances from support to support.",
      .mend = "Draw the hose with a shallow bow, or state its cut `length`.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_slack};
  return rule;
}

}  // namespace linewright
