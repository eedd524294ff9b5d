#include <fmt/format.h>

#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr std::string_view navy_slack =
    "US Navy 14105 p. 5-11: slack of 5 to 8 %; the share is taken of the distance between supports";

constexpr LimitRow least{.name = "least-slack",
                         .subject = "hose longer than the distance it spans",
                         .value = 0.05,
                         .source = navy_slack,
                         .mark = Mark::verified,
                         .times = "distance"};
constexpr LimitRow most{.name = "most-slack",
                        .subject = "hose longer than the distance it spans",
                        .value = 0.08,
                        .sense = LimitSense::at_most,
                        .source = navy_slack,
                        .mark = Mark::verified,
                        .times = "distance"};

constexpr auto limits = limit_table({least, most});

/// The length that leaves so much slack over a distance.
Limit hose_length(const LimitRow& row, double spanned_in) {
  return {spanned_in * (1 + row.value), row};
}

std::string percent(const LimitRow& row) {
  return fmt::format("{:g} %", row.value * 100);
}

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
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = route.route->where;
  const Limit shortest = hose_length(least, spanned);
  const Limit longest = hose_length(most, spanned);
  judgement.message =
      "the hose is " + phrasing.length(length) + " long over " + phrasing.length(spanned) +
      fmt::format(" between its supports: {:.1f} % slack", (length / spanned - 1) * 100);
  if (holds(judgement, length, {shortest, longest})) return judgement;
  const std::string no_longer = phrasing.length(phrasing.rounded_down(longest.value));
  if (judgement.sense == LimitSense::at_least) {
    judgement.message += ", under " + percent(least);
    judgement.mend =
        "make the hose " + phrasing.length_up(shortest.value) + " to " + no_longer + " long";
  } else {
    judgement.message += ", over " + percent(most);
    judgement.mend = "shorten the hose to " + no_longer + " or less, or hold it where it turns";
  }
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
          R"(A hose shortens under pressure and must not pull on its fittings. Its length is
the route's `length` where stated, over the drawn path; else the developed length of the drawn
path, over the straight distances from support to support.)",
      .mend = "Draw the hose with a shallow bow, or state its cut `length`.",
      .limits = limits,
      .catalogue_limits = "",
      .judge = judge_slack};
  return rule;
}

}  // namespace linewright
