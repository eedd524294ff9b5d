#include "model/support_name.hpp"
#include "rules/space/measured_gap.hpp"

namespace linewright {

namespace {

constexpr LimitRow slip{.name = "slip-of-the-tape",
                        .subject = "measured place from where it is drawn",
                        .value = 1,
                        .sense = LimitSense::at_most,
                        .source = "what is built so far from its drawing was misread, or redrawn",
                        .mark = Mark::common_practice,
                        .broken = Verdict::warn};
constexpr LimitRow gap_agrees{
    .name = "gap-agrees",
    .subject = "measured gap from the one that is drawn there",
    .value = 1,
    .sense = LimitSense::at_most,
    .source = "what the tolerances of both explain; beyond it one of them is wrong",
    .mark = Mark::calculated,
    .broken = Verdict::warn,
    .times = "tolerances of the drawing and of the measure"};

constexpr auto as_built_limits = limit_table({slip, gap_agrees});

std::string measured_words(const Measurement& measured) {
  return "measured " + measured.on + " by " + measured.by;
}

/// Where the measured place is along the line, and where it is drawn.
struct BuiltPlace {
  double distance_in = 0;
  Vec3 built;
  Vec3 drawn;
  std::string name;  ///< of the support or node; empty for a mere place of the line
};

BuiltPlace place_of(const PreparedRoute& route, const Measurement& measured) {
  if (measured.of == Measurement::from_node)
    return {0, route.from->at, route.from->drawn_at.value_or(route.from->at), route.from->name};
  if (measured.of == Measurement::to_node)
    return {route.length_in(), route.to->at, route.to->drawn_at.value_or(route.to->at),
            route.to->name};
  const auto index = static_cast<std::size_t>(measured.of);
  const RoutePoint& point = route.route->points[index];
  return {route.point_distance_in[index], point.at, point.drawn_at.value_or(point.at),
          support_name(point)};
}

Judgement judge_place(const RuleContext& context, const PreparedRoute& route,
                      const Measurement& measured) {
  const BuiltPlace place = place_of(route, measured);
  Judgement judgement = context.at(route, place.distance_in);
  judgement.location = measured.where;
  if (!place.name.empty()) judgement.with = place.name;
  const double off = distance(place.built, place.drawn);
  const std::string what = place.name.empty() ? "the line" : place.name;
  const bool near = holds(judgement, off, {slip});
  judgement.message = what + " is " + context.phrasing.length(off) + " from where it is drawn, " +
                      measured_words(measured) + (near ? "" : ": a slip of the tape?");
  if (!near)
    judgement.mend = "measure " + what + " again, or draw it where it is: it is drawn at " +
                     context.phrasing.place(place.drawn);
  return judgement;
}

/// What the drawing's own tolerances leave between the gap drawn and the gap built.
double drawn_tolerance_in(const RuleContext& context, const PreparedRoute& route,
                          const MeasuredGap& gap) {
  const PreparedProject& prepared = context.prepared;
  if (!gap.line) return prepared.line_tolerance_in(false);
  return prepared.line_tolerance_in(route.is_as_built(gap.distance_in)) +
         prepared.line_tolerance_in(gap.line->is_as_built(gap.drawn->other_distance_in));
}

Judgement judge_gap(const RuleContext& context, const PreparedRoute& route,
                    const MeasuredGap& gap) {
  Judgement judgement = about_measured(context, route, gap);
  const Phrasing& phrasing = context.phrasing;
  const std::string measured =
      "the gap" + (gap.other().empty() ? std::string() : " to " + gap.other()) + " is " +
      phrasing.length(*gap.measured->gap_in) + ", " + measured_words(*gap.measured);
  if (!gap.drawn) {
    holds_true(judgement, false, gap_agrees);
    judgement.message = measured + (gap.other().empty() ? ", but nothing is drawn near there"
                                                        : ", but that is not drawn near there");
    judgement.mend = "describe what it was measured to, or correct the measure";
    return judgement;
  }
  const double drawn = gap.drawn->gap_in;
  const double explained =
      drawn_tolerance_in(context, route, gap) + context.prepared.project->measuring_tolerance_in;
  const bool agrees =
      holds(judgement, std::abs(*gap.measured->gap_in - drawn), {gap_agrees * explained});
  judgement.message = measured + "; " + phrasing.length(drawn) + " is drawn" +
                      (agrees ? "" : ": the drawing or the measure is wrong");
  if (!agrees)
    judgement.mend =
        "measure again; if it is right, measure where the line and what it is near "
        "to are, and correct the drawing";
  return judgement;
}

std::vector<Judgement> judge_as_built(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    for (const Measurement& measured : context.prepared.project->built)
      if (measured.route == route.route->name && measured.is_place())
        judgements.push_back(judge_place(context, route, measured));
    for (const MeasuredGap& gap : measured_gaps(context.prepared, route))
      judgements.push_back(judge_gap(context, route, gap));
  }
  return judgements;
}

}  // namespace

const Rule& as_built_rule() {
  static const Rule rule{
      .name = "as-built",
      .purpose = "what was measured on the aeroplane and what is drawn agree",
      .explanation =
          R"(Each measure of `built` against the drawing. A place is where it was measured, not where it is
drawn, for every rule; one that lies more than 1 in off is more likely a slip of the tape, and
is asked about. A measured gap is held against the limits of clearance, chafe, separation and
frame-crossing beside what is drawn there; here it is held against the gap that is drawn at
that place. Where the two differ by more than the build tolerance (of two lines each one's; the
measuring tolerance of a line that was measured there) and the measuring tolerance together, the
drawing or the measure is wrong. So it is where a gap was measured to something that is not
drawn near that place.)",
      .mend = "Measure again, and correct the drawing where it is not what was built.",
      .limits = as_built_limits,
      .catalogue_limits = "",
      .judge = judge_as_built};
  return rule;
}

}  // namespace linewright
