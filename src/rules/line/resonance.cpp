#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "lines/motion/span_frequency.hpp"
#include "physics/cable.hpp"
#include "physics/vibration.hpp"
#include "rules/line/excited_band.hpp"
#include "rules/rule.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

namespace {

constexpr LimitRow margin{
    .name = "off-cruise-band",
    .subject = "a span's first frequency clear of the propeller's orders over the cruise band",
    .value = 0.1,
    .unit = Unit::hertz,
    .source = "margin between a natural frequency and what excites it",
    .mark = Mark::common_practice,
    .broken = Verdict::warn,
    .times = "band's edges"};

constexpr auto resonance_limits = limit_table({margin});

/// A new support stands no nearer to another than this.
constexpr double from_the_ends_in = 1.0;
/// A cable is not asked to be rigged to more than this many times its tension [common practice, no
/// source].
constexpr double most_retensioned = 2;

/// The propeller's orders that meet a frequency at speeds that count, in words; empty for none.
std::string orders_met(double frequency_hz, int blades, double low_rpm, double high_rpm) {
  constexpr double rounding = 1e-9;
  std::string words;
  const auto add = [&](int times, const std::string& name) {
    const double rpm = meeting_rpm(frequency_hz, times);
    if (rpm < low_rpm * (1 - rounding) || rpm > high_rpm * (1 + rounding)) return;
    words += (words.empty() ? "" : " and ") + fmt::format("{} at {:.0f} rpm", name, rpm);
  };
  add(1, "1st order");
  if (blades > 1) add(blades, "blade order");
  return words;
}

std::string swing_words(const Swing& swing, const Phrasing& phrasing) {
  return fmt::format("a span of {} swings at {:.1f} Hz, ", phrasing.length(swing.run->length_in),
                     swing.frequency_hz);
}

std::string meeting_words(const Swing& swing, const Excitation& excitation) {
  const std::string met = orders_met(swing.frequency_hz, excitation.blades, excitation.idle_rpm,
                                     excitation.redline_rpm);
  if (met.empty()) return "which the propeller meets at no speed from idle to redline";
  return "which the propeller meets with its " + met;
}

/// Where one more support leaves both parts out of all bands. Each part is held at both ends.
std::optional<PlaceRange> support_places(const Swing& swing, const std::vector<ExcitedBand>& bands,
                                         const Phrasing& phrasing) {
  double before = 0;
  for (const RunLeg* each = swing.run->legs.data(); each != swing.leg; ++each)
    before += each->length_in();
  const double length = swing.run->length_in;
  const auto is_clear = [&](double part_in) {
    return part_in >= from_the_ends_in &&
           !band_around(bands, swing.frequency_hz * std::pow(length / part_in, swing.length_power));
  };
  const double step = phrasing.tape_step_in();
  return longest_range(swing.leg->low_in(), swing.leg->high_in(), step, [&](double at) {
    const double first_part = before + std::abs(at - swing.leg->from_in);
    return is_clear(first_part) && is_clear(length - first_part);
  });
}

std::string support_mend(const Swing& swing, const std::vector<ExcitedBand>& bands,
                         const Phrasing& phrasing) {
  if (!swing.held()) return "hold its free end";
  const std::string support = swing.is_cable() ? "fairlead" : "clamp";
  const std::string& node = swing.route->from->name;
  if (const auto places = support_places(swing, bands, phrasing)) {
    if (places->last_in - places->first_in < limit_rounding)
      return "add a " + support + " " + phrasing.tape(places->first_in) + " from " + node;
    return "add a " + support + " between " + phrasing.tape_number(places->first_in) + " and " +
           phrasing.tape(places->last_in) + " from " + node;
  }
  // Any part shorter than this is above all bands.
  const double longest = swing.run->length_in * std::pow(swing.frequency_hz / bands.back().high_hz,
                                                         1 / swing.length_power);
  return "add " + support + "s so that no part of it is longer than " +
         phrasing.length(phrasing.rounded_down(longest));
}

/// Another tension at which all spans of the cable are clear, not slack when cold, not too tight
/// when hot; empty where there is none.
std::string tension_mend(const Swing& swing, const std::vector<Swing>& all,
                         const std::vector<ExcitedBand>& bands, const RuleContext& context) {
  const Line& line = *swing.route->line;
  const CableState& state = context.motion.cables[context.index_of(*swing.route)];
  const auto& thermal = state.change;
  if (!thermal || !line.breaking_strength_lbf) return {};
  std::vector<double> frequencies;
  for (const Swing& each : all)
    if (each.route == swing.route && each.missing.what.empty())
      frequencies.push_back(each.frequency_hz);
  const TensionRange change =
      tension_range(0, thermal->slope_lbf_per_degf, context.prepared.project->temperature);
  const double rigged = swing.route->route->tension->rigged_lbf;
  const Limit proved = proved_share * line.breaking_strength_lbf->value;
  const auto tension =
      tension_out_of_bands(bands, frequencies, rigged, -change.lowest_lbf,
                           std::min(most_retensioned * rigged, proved.value - change.highest_lbf));
  if (!tension) return {};
  return fmt::format(", or rig it to {:.0f} lbf, which keeps all its spans clear", *tension);
}

/// Of each band the edge nearer to a frequency, which must lie on the far side of it.
std::vector<Limit> nearest_edges(const std::vector<ExcitedBand>& bands, double frequency_hz) {
  std::vector<Limit> edges;
  for (const ExcitedBand& band : bands) {
    const bool below = frequency_hz - band.low_hz < band.high_hz - frequency_hz;
    Limit edge{below ? band.low_hz : band.high_hz, margin};
    edge.sense = below ? LimitSense::at_most : LimitSense::at_least;
    edges.push_back(edge);
  }
  return edges;
}

/// In the middle of the swing's longest leg, verdict still unknown.
Judgement at_swing(const RuleContext& context, const Swing& swing) {
  Judgement judgement = context.at(*swing.route, (swing.leg->low_in() + swing.leg->high_in()) / 2);
  leave_unknown(judgement, margin);
  return judgement;
}

Judgement judge_swing(const RuleContext& context, const Swing& swing, const std::vector<Swing>& all,
                      const std::vector<ExcitedBand>& bands) {
  const Project& project = *context.prepared.project;
  Judgement judgement = at_swing(context, swing);
  for (const RunLeg& leg : swing.run->legs)
    if (leg.route != swing.leg->route) {
      judgement.with = context.prepared.routes[static_cast<std::size_t>(leg.route)].route->name;
      judgement.with_is_route = true;
    }
  judgement.value = swing.frequency_hz;
  judgement.message =
      swing_words(swing, context.phrasing) + meeting_words(swing, *project.excitation);
  if (bands.empty()) {
    holds_true(judgement, true, margin);
    judgement.message += "; no cruise band is stated (excitation.cruise_rpm) to judge it against";
    return judgement;
  }
  if (holds(judgement, swing.frequency_hz, nearest_edges(bands, swing.frequency_hz))) {
    judgement.message += ", clear of the cruise band";
    return judgement;
  }
  const SpeedBand& cruise = *project.excitation->cruise;
  judgement.message =
      swing_words(swing, context.phrasing) + "which the propeller meets with its " +
      orders_met(swing.frequency_hz, project.excitation->blades,
                 cruise.low_rpm * (1 - margin.value), cruise.high_rpm * (1 + margin.value)) +
      fmt::format(", within {:g} % of its cruise band of {:.0f} to {:.0f} rpm", margin.value * 100,
                  cruise.low_rpm, cruise.high_rpm);
  judgement.mend = support_mend(swing, bands, context.phrasing);
  if (swing.is_cable()) judgement.mend += tension_mend(swing, all, bands, context);
  return judgement;
}

Judgement not_known(const RuleContext& context, const Swing& swing) {
  Judgement judgement = at_swing(context, swing);
  judgement.message =
      swing.missing.what + " is not known, so neither is how it swings between its supports";
  judgement.mend = swing.missing.mend;
  return judgement;
}

std::vector<Judgement> judge_resonance(const RuleContext& context) {
  const std::optional<Excitation>& excitation = context.prepared.project->excitation;
  if (!excitation) return {};
  const std::vector<Swing> swings = span_swings(context.prepared, context.motion.runs);
  const std::vector<ExcitedBand> bands = excited_bands(*excitation, margin.value);
  std::vector<Judgement> judgements;
  for (const Swing& swing : swings) {
    if (swing.missing.what.empty()) {
      judgements.push_back(judge_swing(context, swing, swings, bands));
      continue;
    }
    const Judgement judgement = not_known(context, swing);
    const bool said =
        std::any_of(judgements.begin(), judgements.end(), [&](const Judgement& other) {
          return other.route == judgement.route && other.message == judgement.message;
        });
    if (!said) judgements.push_back(judgement);
  }
  return judgements;
}

std::vector<Judgement> resonance_lacking(const RuleContext& context) {
  std::vector<Judgement> judgements;
  if (context.prepared.project->excitation) return judgements;
  for (const Swing& swing : span_swings(context.prepared, context.motion.runs)) {
    Judgement judgement = at_swing(context, swing);
    if (!judgements.empty() && judgements.back().route == judgement.route) continue;
    judgement.message =
        "the project states no `excitation`: whether the propeller shakes its spans is not known";
    judgement.mend =
        "state excitation: {propeller_rpm: [600, 2700], blades: 2}, with its own figures";
    judgements.push_back(judgement);
  }
  return judgements;
}

}  // namespace

const Rule& resonance_rule() {
  static const Rule rule{
      .name = "resonance",
      .purpose = "no span swings in time with the propeller at cruise",
      .explanation =
          R"(Judged where the project states its `excitation`. A propeller shakes once in a
turn (first order) and once for each blade (blade order). The first frequency of each span
between supports follows from its length: a cable's as a taut string at its rigged tension, a
tube's as a straight beam of its own weight clamped at both ends, or at one where the other is
free. Nearly every cable span is met by some order somewhere between idle and redline, and is
passed through; what counts is a meeting at a speed held for long. So a span is warned of only
where the project states `cruise_rpm` within its excitation, and an order meets the span's
frequency in that band, widened on both sides by the margin below. Without a cruise band the
speeds are named and nothing is judged. Where a run goes over a fitting that hangs on its
lines, the line of the longest part stands for all. Air in a tube, its bends, and the tension's
change with temperature are left out. Hoses and wires damp themselves and are not judged.)",
      .mend = "Move or add a support, or rig the cable to another tension.",
      .limits = resonance_limits,
      .catalogue_limits =
          "weight and Young's modulus of each line: `linewright catalogue` shows each figure with "
          "its mark",
      .judge = judge_resonance,
      .lacking = resonance_lacking};
  return rule;
}

}  // namespace linewright
