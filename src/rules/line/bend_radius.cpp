#include <algorithm>
#include <cmath>

#include "model/angle.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

/// Why a hose that flexes is judged by a radius of its own.
const Source flexing{
    "AC 43.13-1B Figure 9-10 and US Navy 14018 p. 5-27: where a hose flexes, a multiple of its "
    "radius "
    "at rest",
    Mark::verified};

/// Widening a bend from r to R moves its tangent points out by (R − r) tan(θ/2) on both legs.
std::string mend_words(const Bend& bend, double limit_in, const Phrasing& phrasing) {
  const double radius = phrasing.rounded_up(limit_in);
  const double more = (radius - bend.drawn_radius_in) * std::tan(bend.angle_rad / 2);
  std::string words = "raise the bend radius to " + phrasing.length(radius);
  if (more < 50) words += ": needs " + phrasing.length(more) + " more straight on each side";
  return words;
}

Judgement judge_bend(const RuleContext& context, const PreparedRoute& route, const Bend& bend) {
  const Phrasing& phrasing = context.phrasing;
  const Line& line = *route.line;
  Judgement judgement = context.at(route, bend.middle_in());
  judgement.location = route.route->points[static_cast<std::size_t>(bend.corner) - 1].where;
  const std::string turn = phrasing.angle(bend.angle_rad * degrees_per_radian) + " bend";
  if (bend.drawn_radius_in <= 0) {
    judgement.message = "no radius is known for this " + turn;
    judgement.source = "the project";
    judgement.mend = "give the point a bend radius, or the line a minimum_bend_radius";
    return judgement;
  }
  if (!line.minimum_bend_radius_in) {
    judgement.value = bend.drawn_radius_in;
    judgement.message = "no minimum bend radius is known for " + line.name;
    judgement.source = "the catalogue has no figure for this line";
    judgement.mend = "add the line to the project's lines with its maker's minimum and the source";
    return judgement;
  }
  const Limit least{*line.minimum_bend_radius_in, Unit::inch, LimitSense::at_least};
  const std::string bent = turn + " at " + phrasing.length(bend.drawn_radius_in) + " radius is ";
  if (holds(judgement, bend.drawn_radius_in, {least})) {
    judgement.message = bent + "wide enough for " + line.name;
    return judgement;
  }
  judgement.message = bent + "too tight for " + line.name;
  judgement.mend = mend_words(bend, least.value, phrasing);
  return judgement;
}

/// True between what is on the engine and the first support: there a hose flexes.
bool flexes(const PreparedRoute& route, const Bend& bend) {
  const bool from = route.from->on_engine.value_or(false);
  const bool to = route.to->on_engine.value_or(false);
  if (route.line->kind != LineKind::hose || from == to) return false;
  const auto& supports = route.supports;
  return std::none_of(supports.begin(), supports.end(), [&](const Support& support) {
    return support.point >= 0 && (from ? support.distance_in <= bend.middle_in()
                                       : support.distance_in >= bend.middle_in());
  });
}

/// What a bend that is wide enough for a hose at rest is where it flexes.
Judgement judge_flexing(const RuleContext& context, const PreparedRoute& route, const Bend& bend) {
  const Line& line = *route.line;
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = context.at(route, bend.middle_in());
  judgement.location = route.route->points[static_cast<std::size_t>(bend.corner) - 1].where;
  const std::string bent =
      "the hose flexes at this bend, toward the engine: " + phrasing.length(bend.drawn_radius_in) +
      " radius is ";
  if (!line.flexing_bend_radius_in) {
    leave_unknown(judgement, {SourcedValue{0, flexing}, Unit::inch, LimitSense::at_least});
    judgement.value = bend.drawn_radius_in;
    judgement.message =
        bent + "wide enough at rest, and how wide it must be there is not known of " + line.name;
    judgement.mend =
        "add the line to the project's lines with its maker's flexing_bend_radius and the source, "
        "or clamp the hose before the bend";
    return judgement;
  }
  const Limit least{*line.flexing_bend_radius_in, Unit::inch, LimitSense::at_least};
  if (holds(judgement, bend.drawn_radius_in, {least})) {
    judgement.message = bent + "wide enough for " + line.name;
    return judgement;
  }
  judgement.message = bent + "too tight for " + line.name + " there";
  judgement.mend = mend_words(bend, least.value, phrasing) + ", or clamp the hose before the bend";
  return judgement;
}

std::vector<Judgement> judge_bend_radius(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind == LineKind::cable) continue;
    for (const Bend& bend : route.centreline.made_bends()) {
      const Judgement at_rest = judge_bend(context, route, bend);
      const bool by_rest = at_rest.verdict != Verdict::pass || !flexes(route, bend);
      judgements.push_back(by_rest ? at_rest : judge_flexing(context, route, bend));
    }
  }
  return judgements;
}

}  // namespace

const Rule& bend_radius_rule() {
  static const Rule rule{
      .name = "bend-radius",
      .purpose = "no bend is tighter than the line stands",
      .explanation =
          R"(Each corner of a tube, hose, wire bundle or casing is rounded by an arc with the point's own `bend`, or
the line's usual radius. Its radius, measured to the centreline, must not be under the least
radius of the line: tighter, a tube flattens or kinks and the bore closes. A hose that leads to a
node that is `on_engine` flexes as far as its first support: there its `flexing_bend_radius`
counts, and where none is known that is said. Cables are not judged here: they turn on pulleys and
fairleads only. A corner that a straight line misses by less than the build tolerance is no bend,
unless its `bend` is stated.)",
      .mend = "Raise the radius, or draw the turn as two gentler ones.",
      .limits = {},
      .catalogue_limits =
          "minimum_bend_radius of each line: AC 43.13-1B Table 9-2 for metal tube, Table 9-3 and "
          "half of the outside diameter for hose, SAE J844 for nylon; `linewright catalogue` shows "
          "each figure with its mark",
      .judge = judge_bend_radius};
  return rule;
}

}  // namespace linewright
