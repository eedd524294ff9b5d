#include "render/catalogue_text.hpp"

#include <fmt/format.h>

#include <array>
#include <vector>

#include "model/units.hpp"
#include "render/amount.hpp"
#include "render/layout.hpp"
#include "words/fitting_words.hpp"

namespace linewright {

namespace {

constexpr std::size_t name_column = 34;
constexpr std::size_t column = 9;

char mark_letter(Mark mark) {
  switch (mark) {
    case Mark::verified:
      return 'v';
    case Mark::verified_secondary:
      return 's';
    case Mark::from_memory:
      return 'm';
    case Mark::common_practice:
      return 'p';
    case Mark::calculated:
      return 'c';
    case Mark::builder:
      return 'b';
  }
  return 'm';
}

/// Catalogue sizes are exact; rounding them as the findings do would show a sixteenth wrongly.
std::string size_number(double inches, const Phrasing& phrasing) {
  if (phrasing.unit == LengthUnit::millimetre) return fixed_number(inches * mm_per_in, 2);
  std::string number = fixed_number(inches, 4);
  if (number.back() == '0') number.pop_back();
  return number;
}

std::string marked(const std::string& number, Mark mark) {
  return fmt::format("{} {}", number, mark_letter(mark));
}

std::string marked_length(const std::optional<SourcedValue>& value, const Phrasing& phrasing) {
  return value ? marked(size_number(value->value, phrasing), value->source.mark) : "-  ";
}

std::string table_line(std::string_view name, const std::vector<std::string>& cells) {
  const std::string shown = one_line(name);
  std::string text = left(shown, name_column);
  if (columns_of(shown) > name_column) text += "\n" + std::string(name_column, ' ');
  for (const std::string& cell : cells) text += right(cell, column);
  text.erase(text.find_last_not_of(' ') + 1);
  return text + "\n";
}

std::string line_row(const Line& line, const Phrasing& phrasing) {
  const auto& strength = line.breaking_strength_lbf;
  return table_line(
      line.name,
      {marked(size_number(line.outside_diameter_in, phrasing), line.size_source.mark),
       line.inside_diameter_in > 0
           ? marked(size_number(line.inside_diameter_in, phrasing), line.size_source.mark)
           : "-  ",
       marked_length(line.minimum_bend_radius_in, phrasing),
       marked_length(line.support_spacing_in, phrasing),
       strength ? marked(fixed_number(strength->value, 0), strength->source.mark) : "-  "});
}

std::string lines_table(const Catalogue& catalogue, LineKind kind, const Phrasing& phrasing) {
  std::string rows;
  for (const Line& line : catalogue.lines)
    if (line.kind == kind) rows += line_row(line, phrasing);
  if (rows.empty()) return {};
  const std::string unit = phrasing.unit_name() + "  ";
  std::string text =
      table_line(line_kind_name(kind), {"OD  ", "bore  ", "bend  ", "spacing  ", "strength"});
  text += table_line("", {unit, unit, unit, unit, "lbf  "});
  return text + rows + "\n";
}

std::string clamps_table(const Catalogue& catalogue, const Phrasing& phrasing) {
  if (catalogue.clamps.empty()) return {};
  std::string text = table_line("clamp", {"for OD  "});
  text += table_line("", {phrasing.unit_name() + "  "});
  for (const ClampSize& clamp : catalogue.clamps)
    text += table_line(
        clamp.name, {marked(size_number(clamp.nominal_diameter_in, phrasing), clamp.source.mark)});
  return text + "\n";
}

std::string fittings_table(const Catalogue& catalogue, const Phrasing& phrasing) {
  if (catalogue.fittings.empty()) return {};
  const std::string unit = phrasing.unit_name() + "  ";
  std::string text = table_line("fitting", {"for OD  ", "body  ", "a  ", "b  ", "c  "});
  text += table_line("", {unit, unit, unit, unit, unit});
  for (const Fitting& fitting : catalogue.fittings) {
    std::vector<std::string> cells{
        marked(size_number(fitting.tube_diameter_in, phrasing), fitting.source.mark),
        marked_length(fitting.body_diameter_in, phrasing)};
    for (const SourcedValue& each : fitting.take_up_in)
      cells.push_back(marked_length(each, phrasing));
    cells.resize(5, "-  ");
    text += table_line(fitting.name, cells);
  }
  return text + "\n";
}

std::string legend() {
  std::string text = "bend: least bend radius, to centreline; spacing: between supports\n";
  text += "a, b, c: from where a fitting's axes meet, of a bulkhead from the web, to the\n";
  text += "face of each port\n";
  text += "-: not known, or without meaning for this line. How each value was checked:\n";
  for (const Mark mark : {Mark::verified, Mark::verified_secondary, Mark::from_memory,
                          Mark::common_practice, Mark::calculated, Mark::builder})
    text += fmt::format("  {}  {}\n", mark_letter(mark), mark_words(mark));
  return text;
}

std::string labelled_row(std::string_view label, std::string_view value) {
  constexpr std::size_t label_columns = 28;
  return wrapped(left(fmt::format("  {}:", label), label_columns), value);
}

std::string sourced(std::string_view label, const std::string& value, const Source& source) {
  return labelled_row(label, value) + wrapped("      ", cite(source));
}

std::string known(std::string_view label, const std::optional<SourcedValue>& value,
                  const std::string& shown) {
  return value ? sourced(label, shown, value->source) : std::string();
}

std::string length_or_unknown(std::string_view label, const std::optional<SourcedValue>& value,
                              const Phrasing& phrasing) {
  if (!value) return labelled_row(label, "not known");
  return sourced(label, size_number(value->value, phrasing) + " " + phrasing.unit_name(),
                 value->source);
}

std::string plain_number(const std::optional<SourcedValue>& value, std::string_view unit) {
  return value ? fmt::format("{:.6g}{}", value->value, unit) : std::string();
}

std::string line_entry(const Line& line, const Phrasing& phrasing) {
  const auto length = [&](double inches) {
    return size_number(inches, phrasing) + " " + phrasing.unit_name();
  };
  std::string words = std::string(line_kind_name(line.kind)) + ", " + line.material;
  if (!line.construction.empty()) words += ", " + line.construction;
  if (line.where) words += fmt::format(" (defined in {}:{})", line.where->file, line.where->line);
  std::string text = wrapped("", line.name + ": " + words);
  text += sourced("outside diameter", length(line.outside_diameter_in), line.size_source);
  if (line.inside_diameter_in > 0) text += labelled_row("bore", length(line.inside_diameter_in));
  if (line.plus_tolerance_in.value_or(0) > 0)
    text += labelled_row("may be larger by", length(*line.plus_tolerance_in));
  text += length_or_unknown("least bend radius", line.minimum_bend_radius_in, phrasing);
  if (line.usual_bend_radius_in)
    text += labelled_row("bend where none is drawn", length(*line.usual_bend_radius_in));
  if (line.kind == LineKind::conduit)
    text += line.bend_total_deg ? known("all bends together", line.bend_total_deg,
                                        phrasing.angle(line.bend_total_deg->value))
                                : labelled_row("all bends together", "not known");
  text += length_or_unknown("spacing of supports", line.support_spacing_in, phrasing);
  if (line.weight_lb_per_in)
    text += known("weight of a foot", line.weight_lb_per_in,
                  mass(line.weight_lb_per_in->value * 12, phrasing));
  text += known("Young's modulus", line.youngs_modulus_psi,
                plain_number(line.youngs_modulus_psi, " psi"));
  text += known("thermal expansion", line.expansion_per_degf,
                plain_number(line.expansion_per_degf, " per degF"));
  text += known("surplus length", line.slack_fraction,
                plain_number(line.slack_fraction, " of the length"));
  text += known("breaking strength", line.breaking_strength_lbf,
                plain_number(line.breaking_strength_lbf, " lbf"));
  text += known("axial stiffness AE", line.axial_stiffness_lbf,
                plain_number(line.axial_stiffness_lbf, " lbf"));
  text += labelled_row("cutting allowance", length(line.cut_allowance_in));
  for (const SourcedValue& each : line.stock_lengths_in)
    text += sourced("sold in lengths of", length(each.value), each.source);
  return text;
}

std::string clamp_entry(const ClampSize& clamp, const Phrasing& phrasing) {
  return wrapped("", fmt::format("{}: cushion clamp, dash {}", clamp.name, clamp.dash)) +
         sourced("for lines of",
                 size_number(clamp.nominal_diameter_in, phrasing) + " " + phrasing.unit_name(),
                 clamp.source);
}

std::string fitting_entry(const Fitting& fitting, const Phrasing& phrasing) {
  const auto length = [&](double inches) {
    return size_number(inches, phrasing) + " " + phrasing.unit_name();
  };
  std::string words{fitting_kind_words(fitting.kind)};
  if (!fitting.standard.empty()) words += ", " + fitting.standard;
  if (fitting.where)
    words += fmt::format(" (defined in {}:{})", fitting.where->file, fitting.where->line);
  std::string text = wrapped("", fitting.name + ": " + words);
  text += sourced("for tubes of", length(fitting.tube_diameter_in), fitting.source);
  constexpr std::array<std::string_view, 3> ports{"a", "b", "c"};
  for (std::size_t i = 0; i < fitting.take_up_in.size(); ++i)
    text += sourced(fmt::format("to the face of port {}", ports[i]),
                    length(fitting.take_up_in[i].value), fitting.take_up_in[i].source);
  text += sourced("diameter of its body", length(fitting.body_diameter_in.value),
                  fitting.body_diameter_in.source);
  const auto stated = [&](std::string_view label, const std::optional<SourcedValue>& value) {
    return value ? sourced(label, length(value->value), value->source) : std::string();
  };
  text += stated("nut past the face", fitting.nut_in);
  text += stated("tube goes in by", fitting.insertion_in);
  text += stated("least bore", fitting.bore_in);
  return text + stated("thread in the sheet", fitting.thread_in);
}

}  // namespace

std::string_view line_kind_name(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
      return "rigid tube";
    case LineKind::plastic_tube:
      return "plastic tube";
    case LineKind::hose:
      return "hose";
    case LineKind::cable:
      return "cable";
    case LineKind::wire:
      return "wire";
    case LineKind::rod:
      return "pushrod";
    case LineKind::conduit:
      return "push-pull casing";
  }
  return "line";
}

std::string catalogue_text(const Catalogue& catalogue, const TextStyle& style) {
  std::string text;
  for (const LineKind kind : {LineKind::rigid_tube, LineKind::plastic_tube, LineKind::hose,
                              LineKind::cable, LineKind::wire, LineKind::rod, LineKind::conduit})
    text += lines_table(catalogue, kind, style.phrasing);
  text += clamps_table(catalogue, style.phrasing) + fittings_table(catalogue, style.phrasing) +
          legend();
  if (!style.quiet) text += "\nFor one entry with its sources: linewright catalogue NAME\n";
  return text;
}

std::string catalogue_entries_text(const Catalogue& catalogue, const TextStyle& style) {
  std::string text;
  for (const Line& line : catalogue.lines) text += line_entry(line, style.phrasing);
  for (const ClampSize& clamp : catalogue.clamps) text += clamp_entry(clamp, style.phrasing);
  for (const Fitting& fitting : catalogue.fittings) text += fitting_entry(fitting, style.phrasing);
  return text;
}

}  // namespace linewright
