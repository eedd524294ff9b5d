#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "physics/pilot_force.hpp"
#include "rules/cable/pulley_guards.hpp"
#include "rules/cable/pulley_plane.hpp"
#include "rules/cable/such_as.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr std::string_view size_source =
    "MIL-F-18372, table above para 3.1.1.17.8, its rows paired from a column scan";

constexpr LimitRow first_size{
    .name = "size-at-1-per-cent",
    .subject = "pulley over cable diameter, load up to 1 % of breaking strength",
    .value = 10,
    .unit = Unit::none,
    .source = size_source,
    .mark = Mark::verified};
constexpr LimitRow second_size{
    .name = "size-at-10-per-cent",
    .subject = "pulley over cable diameter, load 10 % of breaking strength",
    .value = 20,
    .unit = Unit::none,
    .source = size_source,
    .mark = Mark::verified};
constexpr LimitRow last_size{
    .name = "size-at-20-per-cent",
    .subject = "pulley over cable diameter, load 20 % of breaking strength",
    .value = 28,
    .unit = Unit::none,
    .source = size_source,
    .mark = Mark::verified};

constexpr auto pulley_limits =
    limit_table({plane_primary, plane_other, plane_primary_swung, plane_other_swung, first_size,
                 second_size, last_size, guards_at_pulley, guards_at_tangents,
                 guards_past_quarter_turn, guard_gap, guard_clear});

struct SizeRow {
  double load_per_cent;
  const LimitRow& ratio;
};
constexpr std::array<SizeRow, 3> sizes{{{1, first_size}, {10, second_size}, {20, last_size}}};
constexpr double heaviest_per_cent = sizes.back().load_per_cent;

/// Straight between the rows, level outside them.
double least_ratio(double load_per_cent) {
  if (load_per_cent <= sizes.front().load_per_cent) return sizes.front().ratio.value;
  for (std::size_t i = 1; i < sizes.size(); ++i) {
    if (load_per_cent > sizes[i].load_per_cent) continue;
    const double share = (load_per_cent - sizes[i - 1].load_per_cent) /
                         (sizes[i].load_per_cent - sizes[i - 1].load_per_cent);
    return std::lerp(sizes[i - 1].ratio.value, sizes[i].ratio.value, share);
  }
  return sizes.back().ratio.value;
}

struct Pulley {
  const PreparedRoute& route;
  const RoutePoint& point;
  std::size_t index;
};

Judgement pulley_judgement(const RuleContext& context, const Pulley& pulley) {
  Judgement judgement = context.at(pulley.route, pulley.route.point_distance_in[pulley.index]);
  judgement.location = pulley.point.where;
  if (!pulley.point.to.empty()) judgement.with = pulley.point.to;
  return judgement;
}

Judgement unknown(Judgement judgement, const std::string& message, const std::string& mend) {
  leave_unknown(judgement, first_size);
  judgement.message = message;
  judgement.mend = mend;
  return judgement;
}

/// What the pulley is sized for, in words that start a sentence.
struct Load {
  double lbf = 0;
  std::string words;
  bool is_all = true;  ///< false where the control's pull is not known: it can only be more
};

Load load_of(const Route& route) {
  const double rigged = route.tension->rigged_lbf;
  const std::optional<double> limit = limit_load_lbf(route);
  if (limit && *limit >= rigged) return {*limit, "limit load"};
  if (limit) return {rigged, "rigged tension, above the limit load"};
  return {rigged, "rigged tension: no limit load is stated", false};
}

Judgement judge_size(const RuleContext& context, const Pulley& pulley) {
  const Line& line = *pulley.route.line;
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = pulley_judgement(context, pulley);
  if (!pulley.point.diameter_in || line.outside_diameter_in <= 0)
    return unknown(judgement, "the pulley's groove diameter is not stated", "state its diameter");
  const double ratio = *pulley.point.diameter_in / line.outside_diameter_in;
  judgement.value = ratio;
  if (!pulley.route.route->tension)
    return unknown(judgement,
                   "the tension of " + pulley.route.route->name +
                       " is not stated, so the least size of the pulley is not known",
                   "state the route's tension: rigged, and limit_load");
  if (!line.breaking_strength_lbf)
    return unknown(judgement, "no breaking strength is known for " + line.name,
                   "add the line to the project's lines with its breaking strength and source");
  const Load load = load_of(*pulley.route.route);
  const double per_cent = 100 * load.lbf / line.breaking_strength_lbf->value;
  const Limit least(least_ratio(per_cent), first_size);
  const bool large_enough = holds(judgement, ratio, {least});
  judgement.source += "; strength: " + cite(line.breaking_strength_lbf->source);
  const std::string size = fmt::format(
      "the pulley is {:.1f} times the cable's diameter at {:.1f} % of its strength ({})", ratio,
      per_cent, load.words);
  if (!large_enough) {
    judgement.message = size + fmt::format(", under {:.1f} times", least.value);
    judgement.mend = "use a pulley with a groove diameter of " +
                     phrasing.length_up(least.value * line.outside_diameter_in) + " or more";
    return judgement;
  }
  if (!load.is_all)
    return unknown(judgement, size + ", large enough for that; what the control pulls is not known",
                   "state the route's tension.limit_load, or its lever_ratio");
  if (per_cent > heaviest_per_cent + limit_rounding)
    return unknown(
        judgement, size + fmt::format(": the size table ends at {:g} %", heaviest_per_cent),
        fmt::format("use a cable that breaks at {:.0f} lbf or more",
                    std::ceil(100 * load.lbf / heaviest_per_cent)) +
            such_as(context.prepared.project->catalogue, line, [&](const Line& each) {
              return each.breaking_strength_lbf &&
                     each.breaking_strength_lbf->value >= 100 * load.lbf / heaviest_per_cent;
            }));
  judgement.message = size;
  return judgement;
}

void judge_point(const RuleContext& context, const PreparedRoute& route, std::size_t index,
                 std::vector<Judgement>& judgements) {
  const Pulley pulley{route, route.route->points[index], index};
  if (route.line->kind != LineKind::cable) {
    judgements.push_back(
        unknown(pulley_judgement(context, pulley),
                "a pulley is stated for " + route.line->name + ", which is not a cable",
                "hold it with a clamp"));
    return;
  }
  judgements.push_back(judge_size(context, pulley));
  judgements.push_back(judge_plane(context, route, index));
  for (Judgement& judgement : judge_guards(context, route, index))
    judgements.push_back(std::move(judgement));
}

std::vector<Judgement> judge_pulleys(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (route.route->points[i].hold == HoldKind::pulley)
        judge_point(context, route, i, judgements);
  return judgements;
}

}  // namespace

const Rule& pulley_rule() {
  static const Rule rule{
      .name = "pulley",
      .purpose = "pulleys lie in the cable's plane, are large enough for its load, and have guards",
      .explanation =
          R"(A pulley's point is the corner of the path: where the straight legs, drawn on, would
meet. It is not the spindle, unless the point says `given: centre`: then the cable turns about
the stated axis by the right-hand rule (the sign of `axis` says on which side it passes) and
the path is the taut one. Three things are judged. Plane: the angle between each leg and the
groove's plane, which is square to the stated `axis`; the larger counts, with the controls
neutral, and again at both ends of the travel where the horn or pedal next to the pulley states
its `arm`: there the standard allows a degree more. An end without an `arm` is taken as fixed.
(The standard allows that degree on pulleys AN219 to AN221, too: waive it then.) Size: groove
diameter over the cable's nominal diameter, against the load as a share of the breaking
strength, straight between the rows of the table; the load is the limit load, or the rigged
tension where that is more. Where no limit load is known, a pulley too small for the rigged
tension fails and any other is unknown. Under 1 % the first row holds. Past 20 % the table ends:
a pulley under its last row fails, a larger one is unknown. The standard is a Navy design
specification of 1955 and stricter than civil practice. Guards: the pins, `guards`, that keep a
slack cable in the groove, one near each tangent point and one more between where the cable
wraps over 90 degrees, as drawn or as an `arm` swings it; where the tangent points are no more
than 0.5 in apart along the groove, one is near both (common practice). A strap or cover that
follows the groove counts as three. Their `guard_gap`, between the flange's rim and the pin,
must not let the cable through, nor leave the pin in the cable where `outside` is stated. Guards that are not stated are unknown. Where each pin stands
is left to the eye.)",
      .mend = "Tilt the spindle, use a larger pulley or a stronger cable, fit or close guards.",
      .limits = pulley_limits,
      .catalogue_limits = "breaking_strength of each cable: AC 43.13-1B Table 7-3",
      .judge = judge_pulleys};
  return rule;
}

}  // namespace linewright
