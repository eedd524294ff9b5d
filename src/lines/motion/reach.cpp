#include "lines/motion/reach.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "lines/casing_ends.hpp"
#include "lines/motion/casing_wire.hpp"
#include "lines/motion/end_sweep.hpp"
#include "lines/motion/span_frequency.hpp"
#include "lines/runs_by_place.hpp"
#include "physics/deflection.hpp"

namespace linewright {

namespace {

struct RunPlace {
  const FreeRun* run = nullptr;
  double before_in = 0;  ///< of the run, ahead of the span's start
  double after_in = 0;
  double play_at_start_in = 0;
  double play_at_end_in = 0;
  double comes_in_at_start_in = 0;
  double comes_in_at_end_in = 0;
  bool free_at_start = true;
  bool free_at_end = true;
};

/// What holds the end; a support without play where nothing does.
Support support_at(const PreparedProject& prepared, const RunEnd& end) {
  if (!end.held()) return {};
  const PreparedRoute& route = prepared.routes[static_cast<std::size_t>(end.route)];
  return route.supports[static_cast<std::size_t>(end.support)];
}

/// What is not known of how the span's own ends move.
std::string missing_of_ends(const PreparedRoute& route, const Span& span) {
  for (const int end : {span.first, span.last}) {
    if (end < 0) continue;
    const std::string& missing = route.supports[static_cast<std::size_t>(end)].missing;
    if (!missing.empty()) return missing;
  }
  return {};
}

/// The longest run that the span belongs to, turned to the route's own direction.
RunPlace longest_run(const PreparedProject& prepared, const RunsByPlace& runs, const Span& span) {
  RunPlace best;
  for (const auto& [run, leg, walked_in] : runs.over(span.start_in, span.end_in)) {
    if (best.run && run->length_in <= best.run->length_in) continue;
    const double rest_in = run->length_in - walked_in - leg->length_in();
    const bool forward = leg->from_in <= leg->to_in;
    const RunEnd& start = forward ? run->first : run->last;
    const RunEnd& end = forward ? run->last : run->first;
    const Support first = support_at(prepared, start);
    const Support last = support_at(prepared, end);
    best = {run,
            forward ? walked_in : rest_in,
            forward ? rest_in : walked_in,
            first.play_in,
            last.play_in,
            first.comes_in_in,
            last.comes_in_in,
            !start.held(),
            !end.held()};
  }
  return best;
}

/// The largest growth of the line over the airframe at either end of the temperature range.
double thermal_surplus_in(double length_in, double expansion_per_degf,
                          const TemperatureRange& range) {
  const Expansions expansions{.line_per_degf = expansion_per_degf,
                              .airframe_per_degf = airframe_expansion_per_degf};
  const double hot = thermal_growth_in(length_in, expansions, range.max_degf - range.rigged_degf);
  const double cold = thermal_growth_in(length_in, expansions, range.min_degf - range.rigged_degf);
  return std::max({0.0, hot, cold});
}

/// A line no longer than this over the straight between its supports is drawn straight.
constexpr double straight_within_in = 1e-9;

bool holds_its_shape(LineKind kind) {
  return kind == LineKind::rigid_tube || kind == LineKind::plastic_tube;
}

/// A springy line spreads a bend toward the widest arc that fits between its neighbours: the middle
/// of an arc lies R (1/cos(θ/2) − 1) from its corner, so the spread is the difference of the two.
/// A slight corner is drawn sharp, spreads like any other, and keeps no other from spreading past
/// it.
/// `made` are the centreline's made bends.
double bend_spread_in(const PreparedRoute& route, const std::vector<Bend>& made, const Span& span) {
  double spread = 0;
  const std::vector<Bend>& bends = route.centreline.bends();
  auto next = std::partition_point(bends.begin(), bends.end(), [&](const Bend& bend) {
    return bend.middle_in() <= span.start_in;
  });
  for (; next != bends.end() && next->middle_in() < span.end_in; ++next) {
    const Bend& bend = *next;
    if (bend.built_radius_in <= 0 && !bend.slight) continue;
    double back = span.start_in;
    double ahead = span.end_in;
    const auto not_before = std::partition_point(
        made.begin(), made.end(), [&](const Bend& other) { return other.corner < bend.corner; });
    if (not_before != made.begin()) back = std::max(back, std::prev(not_before)->end_in);
    const auto after = not_before != made.end() && not_before->corner == bend.corner
                           ? std::next(not_before)
                           : not_before;
    if (after != made.end()) ahead = std::min(ahead, after->start_in);
    const double half = std::tan(bend.angle_rad / 2);
    const double tangent = bend.built_radius_in * half;
    const double room = std::max(0.0, std::min(bend.start_in - back, ahead - bend.end_in));
    const double widest = (tangent + room) / half;
    spread += (widest - bend.built_radius_in) * (1 / std::cos(bend.angle_rad / 2) - 1);
  }
  return spread;
}

void add_bow(ReachEnvelope& envelope, const PreparedRoute& route, double surplus_in) {
  const double length = envelope.end_in - envelope.start_in;
  envelope.surplus_in = std::max(0.0, surplus_in);
  envelope.clamped_shape = route.line->kind == LineKind::rigid_tube;
  envelope.bow_in = envelope.clamped_shape ? clamped_tube_bow_in(length, envelope.surplus_in)
                                           : slack_string_bow_in(length, envelope.surplus_in);
  envelope.bound_half_width_in = ellipsoid_half_width_in(length, length + envelope.surplus_in);
  // A bow is a shape of that length too, so the bound can only be the larger; keep it so in spite
  // of the bows being approximations.
  envelope.bound_half_width_in = std::max(envelope.bound_half_width_in, envelope.bow_in);
}

/// What a run has over: of each leg what a careful builder leaves, or its part of what the stated
/// length of its hose has over the drawn line, where that is more.
double left_over_in(const PreparedProject& prepared, const RunPlace& place, double slack_fraction) {
  double left_over = 0;
  for (const RunLeg& leg : place.run->legs) {
    const PreparedRoute& route = prepared.routes[static_cast<std::size_t>(leg.route)];
    const double stated = route.route->length_in.value_or(0) - route.length_in();
    left_over +=
        std::max(slack_fraction * leg.length_in(), stated * leg.length_in() / route.length_in());
  }
  return left_over;
}

/// A limp line keeps no bend that it is drawn with: whatever its shape, its ends and its length are
/// all that bounds it.
void widen_for_drawn_bow(ReachEnvelope& envelope, const PreparedProject& prepared,
                         const RunPlace& place) {
  const auto drawn = [&](const RunLeg& leg) -> const Centreline& {
    return prepared.routes[static_cast<std::size_t>(leg.route)].centreline;
  };
  const std::vector<RunLeg>& legs = place.run->legs;
  const Segment3 straight{drawn(legs.front()).at(legs.front().from_in),
                          drawn(legs.back()).at(legs.back().to_in)};
  const double length = envelope.end_in - envelope.start_in;
  const double chord = distance(straight.a, straight.b);
  if (length - chord < straight_within_in) return;
  double offset = 0;
  for (const RunLeg& leg : legs)
    for (const PathChord& piece : drawn(leg).chords(leg.low_in(), leg.high_in()))
      for (const Vec3 at : {piece.from, piece.to})
        offset = std::max(offset, nearest(at, straight).distance_in);
  envelope.drawn_excess_in = length - chord;
  envelope.drawn_offset_in = offset + Centreline::default_sagitta_in;
  envelope.bound_half_width_in = std::max(
      envelope.bound_half_width_in, ellipsoid_half_width_in(chord, length + envelope.surplus_in));
}

std::string add_tube(ReachEnvelope& envelope, const PreparedProject& prepared,
                     const PreparedRoute& route, const std::vector<Bend>& made, const Span& span,
                     const RunPlace& place) {
  const Line& line = *route.line;
  const Project& project = *prepared.project;
  if (!line.slack_fraction) return "the surplus length usual for " + line.name;
  // What a hose leaves for its changes of length under pressure is far more than heat gives it.
  if (!line.expansion_per_degf && line.kind != LineKind::hose)
    return "the thermal expansion of " + line.name;
  const double length = envelope.end_in - envelope.start_in;
  const double expansion =
      line.expansion_per_degf ? line.expansion_per_degf->value : airframe_expansion_per_degf;
  add_bow(envelope, route,
          left_over_in(prepared, place, line.slack_fraction->value) +
              thermal_surplus_in(length, expansion, project.temperature));
  if (line.kind == LineKind::plastic_tube)
    envelope.bend_spread_in = bend_spread_in(route, made, span);
  if (!holds_its_shape(line.kind)) {
    widen_for_drawn_bow(envelope, prepared, place);
    return {};
  }
  if (!line.weight_lb_per_in) return "the weight of " + line.name;
  if (!line.youngs_modulus_psi) return "Young's modulus of " + line.name;
  envelope.sag_in = project.load_factor.largest() * clamped_beam_sag_in(beam_of(line, length));
  return {};
}

/// Distances along a cable, in order, of the clamps that hold it fast, and of its ends.
std::vector<double> places_held_fast_in(const PreparedRoute& route) {
  std::vector<double> held{0};
  for (const Support& support : route.supports) {
    if (support.point < 0 || route.sleeve_at(support.distance_in)) continue;
    // A clamp counts as a support of a bare cable only where the cable does not move.
    if (route.route->points[static_cast<std::size_t>(support.point)].hold == HoldKind::clamp)
      held.push_back(support.distance_in);
  }
  held.push_back(route.length_in());
  return held;
}

/// The piece of a cable that can slide to and fro between what holds it fast.
double sliding_length_in(const std::vector<double>& held_fast_in, const Span& span) {
  const auto after = std::upper_bound(held_fast_in.begin(), held_fast_in.end(), span.start_in);
  const auto to = std::lower_bound(held_fast_in.begin(), held_fast_in.end(), span.end_in);
  const double from_in = after == held_fast_in.begin() ? 0 : *std::prev(after);
  return (to == held_fast_in.end() ? held_fast_in.back() : *to) - from_in;
}

/// All that can gather in the span of what the cable has over: its share of what heat or cold
/// leaves over between the clamps that hold it fast, and all that the other cable gives it.
double gathered_in(const PreparedRoute& route, const std::vector<double>& held_fast_in,
                   const CableState& state, const Span& span, double length_in) {
  const double share =
      std::max(length_in, sliding_length_in(held_fast_in, span)) / route.length_in();
  const double given =
      state.slack_side ? std::max(0.0, state.slack_side->slack_in - state.coldest_slack_in) : 0;
  return state.coldest_slack_in * share + given * std::max(1.0, length_in / route.length_in());
}

std::string add_cable(SpanReach& reach, ReachEnvelope& envelope, const PreparedProject& prepared,
                      const PreparedRoute& route, const std::vector<double>& held_fast_in,
                      const CableState& state, const Span& span) {
  const Line& line = *route.line;
  if (!route.route->tension) return "the rigged tension of " + route.route->name;
  if (!line.weight_lb_per_in) return "the weight of " + line.name;
  if (!line.axial_stiffness_lbf) return "the stretch of " + line.name;
  if (!line.expansion_per_degf) return "the thermal expansion of " + line.name;
  const double length = envelope.end_in - envelope.start_in;
  const double load = line.weight_lb_per_in->value * prepared.project->load_factor.largest();
  add_bow(envelope, route, state.coldest_slack_in * length / route.length_in());
  const CableLength loaded{.length_in = length,
                           .weight_lb_per_in = load,
                           .axial_stiffness_lbf = line.axial_stiffness_lbf->value};
  reach.sag_unloaded_in = envelope.bow_in + cable_sag_in(loaded, state.coldest_lbf);
  envelope.sag_in = state.slack_side ? cable_sag_in(loaded, state.slack_side->tension_lbf)
                                     : cable_sag_in(loaded, state.coldest_lbf);
  reach.sag_power = envelope.sag_in < untensioned_sag_in(loaded) ? 2 : 1;
  // Where along the cable the surplus gathers cannot be told: only the bound knows all of it.
  envelope.surplus_gathers = true;
  envelope.surplus_in =
      std::max(envelope.surplus_in, gathered_in(route, held_fast_in, state, span, length));
  envelope.bound_half_width_in = std::max(
      envelope.bound_half_width_in, ellipsoid_half_width_in(length, length + envelope.surplus_in));
  return state.missing_beside;
}

/// A free end is held by stiffness alone: a metal tube moves by its tip sag, a casing does not as
/// far as its last clamp holds it, anything softer may swing as far as it is long.
void open_free_ends(ReachEnvelope& envelope, const PreparedProject& prepared,
                    const PreparedRoute& route, const RunPlace& place) {
  const Line& line = *route.line;
  const double length = envelope.end_in - envelope.start_in;
  if (line.kind == LineKind::conduit && !(place.free_at_start && place.free_at_end) &&
      length <= casing_tail_in)
    return;
  if (line.kind != LineKind::rigid_tube) {
    envelope.swing_first_in = place.free_at_start ? length : 0;
    envelope.swing_last_in = place.free_at_end ? length : 0;
    return;
  }
  const double tip =
      prepared.project->load_factor.largest() * cantilever_tip_sag_in(beam_of(line, length));
  if (place.free_at_start) envelope.play_first_in = tip;
  if (place.free_at_end) envelope.play_last_in = tip;
}

}  // namespace

std::vector<SpanReach> span_reaches(const PreparedProject& prepared, const Stretch& drawn,
                                    const std::vector<FreeRun>& runs, const CableState& state) {
  const PreparedRoute& route = *drawn.route;
  std::vector<SpanReach> reaches;
  const RunsByPlace over(runs, static_cast<int>(&route - prepared.routes.data()));
  const std::vector<Bend> made = route.centreline.made_bends();
  const std::vector<double> held_fast = places_held_fast_in(route);
  for (const Span& span : route.spans) {
    const RunPlace place = longest_run(prepared, over, span);
    SpanReach reach;
    reach.ends_free = place.free_at_start || place.free_at_end;
    ReachEnvelope envelope;
    envelope.start_in = span.start_in - place.before_in;
    envelope.end_in = span.end_in + place.after_in;
    envelope.play_first_in = place.play_at_start_in;
    envelope.play_last_in = place.play_at_end_in;
    envelope.full_play_first_in = place.comes_in_at_start_in;
    envelope.full_play_last_in = place.comes_in_at_end_in;
    reach.missing = route.line->kind == LineKind::cable
                        ? add_cable(reach, envelope, prepared, route, held_fast, state, span)
                        : add_tube(envelope, prepared, route, made, span, place);
    reach.hang_known = reach.missing.empty();
    if (reach.missing.empty()) reach.missing = missing_of_ends(route, span);
    if (reach.missing.empty() && reach.ends_free) open_free_ends(envelope, prepared, route, place);
    reach.stretch = stretch_of(drawn, span.start_in, span.end_in, envelope);
    reaches.push_back(std::move(reach));
  }
  return reaches;
}

std::vector<Stretch> hanging_stretches(const Stretch& drawn,
                                       const std::vector<SpanReach>& reaches) {
  const PreparedRoute& route = *drawn.route;
  std::vector<Stretch> stretches;
  if (route.line->kind != LineKind::cable) {
    stretches.push_back(drawn);
    for (Stretch& wire : casing_wires(route)) stretches.push_back(std::move(wire));
    return stretches;
  }
  for (const SpanReach& reach : reaches) stretches.push_back(reach.stretch);
  for (const RouteEnd end : {RouteEnd::from, RouteEnd::to})
    if (auto swept = beyond_drawn_end(route, end)) stretches.push_back(std::move(*swept));
  return stretches;
}

}  // namespace linewright
