#include "render/rig_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/angle.hpp"
#include "model/units.hpp"
#include "physics/cable.hpp"
#include "render/amount.hpp"
#include "render/layout.hpp"
#include "render/rig_words.hpp"

namespace linewright {

namespace {

constexpr std::size_t longest_bar = 40;
constexpr std::string_view not_known = "not known";
/// In place of figures that a cable which breaks does not have.
constexpr std::string_view no_figures = "over the breaking strength: see check";

std::string_view absent(const RiggedCable& cable) {
  return cable.is_rigged_over_strength() ? no_figures : not_known;
}

std::string force(double lbf) {
  return fixed_number(lbf, 1) + " lbf";
}

std::string force(const std::optional<double>& lbf) {
  return lbf ? force(*lbf) : std::string(not_known);
}

std::string fine_number(double inches, const Phrasing& phrasing) {
  return phrasing.unit == LengthUnit::millimetre ? fixed_number(inches * mm_per_in, 2)
                                                 : fixed_number(inches, 3);
}

std::string fine_length(const std::optional<double>& inches, const Phrasing& phrasing) {
  return inches ? fine_number(*inches, phrasing) + " " + phrasing.unit_name()
                : std::string(not_known);
}

std::string temperature(double degf) {
  return fmt::format("{:.4g} degF", degf);
}

std::string item(std::string_view name, const std::string& text) {
  return wrapped("  " + left(name, 12), text);
}

std::string length_words(const RiggedCable& cable, const Phrasing& phrasing) {
  std::string text = bench_length(cable.length_in, phrasing) + " developed";
  if (!cable.cut.cut_length_in)
    return text + ", cut length " + (cable.is_rigged_over_strength() ? "of a cable " : "") +
           std::string(absent(cable));
  return text + ", " + bench_length(*cable.cut.cut_length_in, phrasing) + " to cut";
}

std::string cut_words(const CableCut& cut, const Phrasing& phrasing) {
  std::string text;
  for (const CablePiece& piece : cut.pieces)
    text += (text.empty() ? "" : "; ") +
            (piece.cut_length_in ? bench_length(*piece.cut_length_in, phrasing) + " " : "") +
            "from " + piece.from + " to " + piece.to +
            (piece.cut_length_in ? "" : " " + std::string(not_known));
  return text;
}

std::string turnbuckle_words(const CableCut& cut, const Phrasing& phrasing) {
  std::string text;
  for (const Turnbuckle& each : cut.turnbuckles) {
    text += (text.empty() ? "" : "; ") + std::string("at ") + bench_length(each.at_in, phrasing);
    if (!each.adjustment) return text + ", its adjustment not known";
    text += ", " + bench_length(each.adjustment->middle_in(), phrasing) +
            " long in the middle of " + bench_length(each.adjustment->shortest_in, phrasing) +
            " to " + bench_length(each.adjustment->longest_in, phrasing);
  }
  return text + "; " + take_up_words(cut, phrasing);
}

std::string cable_tension_words(const RiggedCable& cable, const TemperatureRange& range) {
  std::string text = force(cable.rigged_lbf);
  if (cable.rigged_lbf) text += " at " + temperature(range.rigged_degf);
  if (cable.is_rigged_over_strength()) text.append(", ").append(no_figures);
  if (!cable.minimum_rigged_lbf) return text;
  const double least = std::ceil(*cable.minimum_rigged_lbf * 10 - 1e-6) / 10;
  text += fmt::format("; {} or more keeps it taut at {}", force(least),
                      temperature(*cable.slackest_degf));
  if (cable.airframe_stiffness_lbf_per_in)
    text += fmt::format(", in an airframe of {:.10g} lbf/in", *cable.airframe_stiffness_lbf_per_in);
  return text;
}

std::string stretch_words(const RiggedCable& cable, const Phrasing& phrasing) {
  if (!cable.stretch_as_rigged_in && !cable.stretch_at_limit_load_in)
    return std::string(cable.is_loaded_over_strength() ? no_figures : absent(cable));
  std::string load = "the limit load";
  if (cable.limit_load_lbf) load += " of " + force(*cable.limit_load_lbf);
  const std::string as_rigged = fine_length(cable.stretch_as_rigged_in, phrasing) + " as rigged";
  if (cable.is_loaded_over_strength())
    return as_rigged + "; " + load + " is " + std::string(no_figures);
  const std::string at_load = fine_length(cable.stretch_at_limit_load_in, phrasing) + " at " + load;
  if (cable.is_rigged_over_strength()) return at_load + "; as rigged " + std::string(no_figures);
  std::string text = as_rigged + ", " + at_load;
  if (cable.travel_lost_in)
    text += "; that costs " + fine_length(cable.travel_lost_in, phrasing) + " of travel";
  if (cable.travel_lost_share)
    text += fmt::format(", {} % of the {}", fixed_number(100 * *cable.travel_lost_share, 1),
                        bench_length(*cable.smaller_travel_in, phrasing));
  return text;
}

std::string friction_words(const RiggedCable& cable, const Phrasing& phrasing) {
  std::string text = cable.friction_lbf ? force(*cable.friction_lbf) + " to make it move"
                                        : std::string(absent(cable));
  if (cable.friction_lbf && *cable.friction_lbf > 0)
    text +=
        fmt::format(" ({} % of the tension)", fixed_number(100 * (cable.friction.ratio() - 1), 1));
  const std::vector<GuidedTurn>& turns = cable.friction.turns;
  for (std::size_t i = 0; i < turns.size(); ++i)
    text += (i == 0 ? "; it turns " : ", ") +
            fixed_number(turns[i].turn_rad * degrees_per_radian, 1) + " deg in " + turns[i].guide +
            " at " + bench_length(turns[i].at_in, phrasing);
  if (turns.empty() && cable.friction.missing.empty()) text += "; it runs straight";
  return text;
}

std::string slack_side_words(const RigSlackSide& side, const Phrasing& phrasing) {
  const std::string pulled =
      " while " + force(side.pull_lbf) + " pull on " + side.pulled + ", at the coldest";
  if (side.slack_in <= 0) return force(side.tension_lbf) + " left" + pulled;
  return fine_length(side.slack_in, phrasing) + " too long" + pulled +
         "; it can gather in any one span";
}

/// What each guide bears of the cable that turns in it.
std::string side_load_words(const RiggedCable& cable) {
  std::string text = "at " + force(cable.most_lbf) + " in the cable, ";
  const std::vector<GuidedTurn>& turns = cable.friction.turns;
  for (std::size_t i = 0; i < turns.size(); ++i)
    text += (i == 0 ? "" : ", ") + force(guide_push_lbf(*cable.most_lbf, turns[i].turn_rad)) +
            " on " + turns[i].guide;
  return text;
}

std::string strength_words(const RiggedCable& cable) {
  if (!cable.breaking_strength_lbf) return std::string(not_known);
  std::string text = fixed_number(*cable.breaking_strength_lbf, 0) + " lbf";
  if (cable.strength_factor)
    text += fmt::format(", {} times the limit load", fixed_number(*cable.strength_factor, 2));
  return text;
}

std::string pilot_words(const PilotPull& pilot) {
  if (!pilot.pull_lbf) return "the limit force on the control is " + std::string(not_known);
  std::string text = fmt::format("{} at {} ({}), times {:g}, pull {} on it", force(pilot.force_lbf),
                                 pilot.grip, pilot.stated ? "stated" : "14 CFR 23.397(b), verified",
                                 pilot.lever_ratio, force(pilot.pull_lbf));
  if (pilot.tension_lbf && *pilot.tension_lbf > *pilot.pull_lbf)
    text += ", which leaves " + force(pilot.tension_lbf) + " in it, its own tension counted";
  if (pilot.strength_factor)
    text += fmt::format("; it breaks at {} times", fixed_number(*pilot.strength_factor, 2)) +
            (pilot.tension_lbf > pilot.pull_lbf ? " that" : " the pull");
  return text;
}

std::string breakout_words(const RiggedCable& cable) {
  const PilotPull& pilot = *cable.pilot;
  if (!pilot.breakout_lbf) return std::string(absent(cable));
  return force(pilot.breakout_lbf) + " at " + pilot.grip + " for this cable, " +
         force(pilot.breakout_all_lbf) + " for all cables of the control";
}

std::string gap_words(const LeastGap& gap, const Phrasing& phrasing) {
  const std::string word = gap.rule + ", " + std::string(verdict_word(gap.verdict));
  if (!gap.gap_in) return word + ": " + gap.message;
  std::string text = word + ": " + fine_length(gap.gap_in, phrasing);
  if (!gap.with.empty()) text += " to " + gap.with;
  if (gap.distance_in) text += " at " + bench_length(*gap.distance_in, phrasing);
  if (!gap.limit_in) return text;
  return text + (gap.rule == "chafe" ? ", where it can move by " : ", limit ") +
         fine_length(gap.limit_in, phrasing);
}

/// A line a rule; what is far from everything was not measured.
std::string gaps_text(const RiggedCable& cable, const Phrasing& phrasing) {
  if (cable.least_gaps.empty()) return item("gaps", "nothing is near");
  std::string text;
  for (const LeastGap& gap : cable.least_gaps)
    text += item(text.empty() ? "gaps" : "", gap_words(gap, phrasing));
  return text;
}

std::string chart_row(const ChartRow& row, double most_lbf, const Phrasing& phrasing) {
  std::string text = right(temperature(row.temperature_degf), 14);
  if (row.over_strength) return text + "  " + std::string(no_figures) + "\n";
  text += right(row.tension_lbf ? force(*row.tension_lbf) : std::string("-"), 14) + "  ";
  if (row.tension_lbf && most_lbf > 0)
    text.append(static_cast<std::size_t>(
                    std::lround(static_cast<double>(longest_bar) * *row.tension_lbf / most_lbf)),
                '#');
  if (row.slack_in && *row.slack_in > 0)
    text += "slack: " + fine_length(row.slack_in, phrasing) + " too long";
  if (row.as_rigged) text += row.tension_lbf ? " rigged" : "rigged";
  while (text.ends_with(' ')) text.pop_back();
  return text + "\n";
}

std::string chart_text(const RiggedCable& cable, const Phrasing& phrasing) {
  double most = 0;
  for (const ChartRow& row : cable.chart) most = std::max(most, row.tension_lbf.value_or(0));
  std::string text = "\n" + right("temperature", 14) + right("tension", 14) + "\n";
  for (const ChartRow& row : cable.chart) text += chart_row(row, most, phrasing);
  return text;
}

std::string rpm_cell(const RigSpan& span, int times_per_turn) {
  for (const OrderMeeting& each : span.meetings)
    if (each.times_per_turn == times_per_turn)
      return fixed_number(each.rpm, 0) + (each.in_range ? "*" : " ");
  return "- ";
}

std::string span_row(const std::vector<std::string>& cells) {
  constexpr std::size_t widths[] = {11, 11, 11, 12, 9, 13, 13};
  std::string row;
  for (std::size_t i = 0; i < cells.size(); ++i) row += right(cells[i], widths[i]);
  while (row.ends_with(' ')) row.pop_back();
  return row + "\n";
}

std::string spans_text(const RiggedCable& cable, const Rig& rig, const Phrasing& phrasing) {
  std::vector<std::string> over = {"span from", "to", "sag, 1 g",
                                   "sag, " + fmt::format("{:.3g} g", rig.load_factor), "first"};
  std::vector<std::string> under = {phrasing.unit_name(), phrasing.unit_name(),
                                    "rigged, " + phrasing.unit_name(),
                                    "least, " + phrasing.unit_name(), "Hz"};
  if (rig.blades > 0) {
    over.insert(over.end(), {"met by 1st ", rig.blades > 1 ? "by blades " : ""});
    under.insert(under.end(), {"order, rpm ", rig.blades > 1 ? "rpm " : ""});
  }
  std::string text = "\n" + span_row(over) + span_row(under);
  for (const RigSpan& span : cable.spans) {
    const auto cell = [&](const std::optional<double>& inches) {
      return inches ? fine_number(*inches, phrasing) : std::string("-");
    };
    std::vector<std::string> cells = {
        bench_number(span.from_in, phrasing), bench_number(span.to_in, phrasing), cell(span.sag_in),
        cell(span.sag_at_load_factor_in),
        span.natural_frequency_hz ? fixed_number(*span.natural_frequency_hz, 1) : std::string("-")};
    if (rig.blades > 0) cells.push_back(rpm_cell(span, 1));
    if (rig.blades > 1) cells.push_back(rpm_cell(span, rig.blades));
    text += span_row(cells);
  }
  return text;
}

std::string cable_text(const RiggedCable& cable, const Rig& rig, const Phrasing& phrasing) {
  std::string text = wrapped(
      "", fmt::format("{}: {}, from {} to {}", cable.name, cable.line, cable.from, cable.to));
  for (const std::string& each : cable.missing) text += wrapped("  not known: ", each);
  text += item("length", length_words(cable, phrasing));
  if (!cable.cut.pieces.empty() && !cable.is_rigged_over_strength())
    text += item("pieces", cut_words(cable.cut, phrasing));
  if (!cable.cut.turnbuckles.empty())
    text += item("turnbuckle", turnbuckle_words(cable.cut, phrasing));
  text += item("tension", cable_tension_words(cable, rig.temperature));
  text += item("stretch", stretch_words(cable, phrasing));
  if (cable.slack_side) text += item("slack side", slack_side_words(*cable.slack_side, phrasing));
  text += item("friction", friction_words(cable, phrasing));
  if (cable.most_lbf && !cable.friction.turns.empty() && !cable.is_rigged_over_strength())
    text += item("side loads", side_load_words(cable));
  text += item("strength", strength_words(cable));
  if (cable.pilot) {
    text += item("pilot", pilot_words(*cable.pilot));
    text += item("breakout", breakout_words(cable));
  }
  text += gaps_text(cable, phrasing);
  text += chart_text(cable, phrasing);
  text += spans_text(cable, rig, phrasing);
  return text + "\n";
}

bool any_in_range(const Rig& rig) {
  for (const RiggedCable& cable : rig.cables)
    for (const RigSpan& span : cable.spans)
      for (const OrderMeeting& each : span.meetings)
        if (each.in_range) return true;
  return false;
}

}  // namespace

std::string rig_text(const Rig& rig, const TextStyle& style) {
  if (rig.cables.empty()) return "no control cables\n";
  std::string text;
  for (const RiggedCable& cable : rig.cables) text += cable_text(cable, rig, style.phrasing);
  if (any_in_range(rig)) text += wrapped("", "* Between idle and redline.");
  for (const std::string& note : rig.notes) text += wrapped("", note);
  if (!rig.assumptions.empty()) text += "\nTaken, because the project does not say:\n";
  for (const std::string& assumption : rig.assumptions) text += wrapped("  - ", assumption);
  return text;
}

}  // namespace linewright
