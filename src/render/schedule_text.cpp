#include "render/schedule_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "model/units.hpp"
#include "render/amount.hpp"
#include "render/edge_word.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

/// Fractions are as wide as "-218 31/32".
std::size_t number_column(const Phrasing& phrasing) {
  return phrasing.unit == LengthUnit::inch_fraction ? 11 : 8;
}

constexpr std::size_t thing_column = 16;
constexpr std::size_t drill_column = 8;

std::string length_number(const std::optional<double>& inches, const Phrasing& phrasing) {
  if (!inches) return "-";
  if (phrasing.unit == LengthUnit::inch_fraction) return phrasing.tape_number(*inches);
  return phrasing.unit == LengthUnit::millimetre ? fixed_number(*inches * mm_per_in, 1)
                                                 : fixed_number(*inches, 2);
}

/// Sizes to a thousandth of an inch: drills and bores are sixteenths, and less.
std::string size_number(const std::optional<double>& inches, const Phrasing& phrasing) {
  if (!inches) return "-";
  return phrasing.unit == LengthUnit::millimetre ? fixed_number(*inches * mm_per_in, 1)
                                                 : fixed_number(*inches, 3);
}

std::string numbers(const std::vector<std::string>& cells, const Phrasing& phrasing) {
  std::string text;
  for (const std::string& cell : cells) text += right(cell, number_column(phrasing));
  return text;
}

std::string place_cells(Vec3 at, const Phrasing& phrasing) {
  return numbers(
      {length_number(at.x, phrasing), length_number(at.y, phrasing), length_number(at.z, phrasing)},
      phrasing);
}

/// "clamp-4", "grommet 0.312", "pulley 2.500".
std::string thing(const ScheduledSupport& support, const Phrasing& phrasing) {
  if (support.hold == "clamp") return support.clamp.empty() ? "clamp, size ?" : support.clamp;
  if (!support.size_in) return support.hold;
  return support.hold + " " + size_number(support.size_in, phrasing);
}

std::string guard_words(const ScheduledSupport& support) {
  if (support.hold != "pulley") return {};
  if (!support.guards) return ", guards not stated";
  return fmt::format(", {} guard{}", *support.guards, *support.guards == 1 ? "" : "s");
}

std::string fixed_to(const ScheduledSupport& support) {
  if (!support.through.empty()) return "hole " + support.through;
  return (support.to.empty() ? "no part named" : support.to) + guard_words(support);
}

std::string head(const std::vector<std::string>& cells, std::string_view last,
                 const Phrasing& phrasing) {
  return numbers(cells, phrasing) + "  " + left("", thing_column) + right("drill", drill_column) +
         "  " + std::string(last) + "\n";
}

std::string row(const std::string& cells, const ScheduledSupport& support, std::string_view last,
                const Phrasing& phrasing) {
  return cells + "  " + left(thing(support, phrasing), thing_column) +
         right(size_number(support.hole_in, phrasing), drill_column) + "  " + one_line(last) + "\n";
}

std::string by_route(const Schedule& schedule, const Phrasing& phrasing) {
  std::string text;
  for (const ScheduledRoute& route : schedule.routes) {
    text += wrapped("", fmt::format("{}: {}, {}, from {} to {}", route.name, route.system,
                                    route.line, route.from, route.to));
    std::string rows;
    for (const ScheduledSupport& each : schedule.supports)
      if (each.route == route.name)
        rows += row(numbers({length_number(each.distance_in, phrasing),
                             length_number(each.from_previous_in, phrasing)},
                            phrasing) +
                        place_cells(each.at, phrasing),
                    each, fixed_to(each), phrasing);
    if (rows.empty())
      rows = "  nothing holds it between its ends\n";
    else
      rows.insert(0, head({"along", "step", "FS", "BL", "WL"}, "on", phrasing));
    text += rows + "\n";
  }
  return text;
}

/// The parts of supports and holes, in the order in which they come.
std::vector<std::string> parts_of(const Schedule& schedule) {
  std::vector<std::string> parts;
  const auto add = [&](const std::string& part) {
    if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
  };
  for (const ScheduledHole& each : schedule.holes) add(each.frame);
  for (const ScheduledSupport& each : schedule.supports) add(each.to);
  return parts;
}

std::string hole_text(const ScheduledHole& hole, const Phrasing& phrasing) {
  std::string text = hole.diameter_in ? "hole" : "cut-out";
  if (guards(hole.edge)) text = edge_word(hole.edge);
  if (is_turned(hole.edge)) text = std::string(edge_word(hole.edge)) + " " + text;
  return hole.bore_in ? text + " " + size_number(hole.bore_in, phrasing) : text;
}

/// Of a line that a fairlead leads through the hole: it fills the hole.
std::string fairlead_words(const Schedule& schedule, const ScheduledHole& hole,
                           const std::string& line, const Phrasing& phrasing) {
  const bool led = std::any_of(
      schedule.supports.begin(), schedule.supports.end(), [&](const ScheduledSupport& each) {
        return each.hold == "fairlead" && each.through == hole.name && each.route == line;
      });
  if (!led) return {};
  return hole.diameter_in ? " in a fairlead " + size_number(hole.diameter_in, phrasing) + " outside"
                          : " in a fairlead";
}

std::string hole_words(const Schedule& schedule, const ScheduledHole& hole,
                       const Phrasing& phrasing) {
  std::string lines;
  for (const std::string& line : hole.lines)
    lines += (lines.empty() ? ": " : ", ") + line + fairlead_words(schedule, hole, line, phrasing);
  std::string text = hole.name + lines;
  if (hole.edge_distance_in)
    text += fmt::format("; {} left to {}", length_number(hole.edge_distance_in, phrasing),
                        hole.nearest == hole.frame ? "the edge" : hole.nearest);
  return text;
}

std::string hole_row(const std::string& cells, const Schedule& schedule, const ScheduledHole& hole,
                     const Phrasing& phrasing) {
  return cells + "  " + left(hole_text(hole, phrasing), thing_column) +
         right(size_number(hole.diameter_in, phrasing), drill_column) + "  " +
         one_line(hole_words(schedule, hole, phrasing)) + "\n";
}

/// The list to walk along a part with a tape: along the path of a channel, from its start.
std::string by_part(const Schedule& schedule, const Phrasing& phrasing) {
  std::string text;
  for (const std::string& part : parts_of(schedule)) {
    std::vector<std::pair<double, std::string>> rows;
    bool taped = false;
    const auto add = [&](const std::optional<double>& tape, Vec3 at, auto&& line) {
      taped = taped || tape;
      rows.push_back({tape.value_or(at.x), line(numbers({length_number(tape, phrasing)}, phrasing) +
                                                place_cells(at, phrasing))});
    };
    for (const ScheduledHole& each : schedule.holes)
      if (each.frame == part)
        add(each.along_part_in, each.centre,
            [&](const std::string& cells) { return hole_row(cells, schedule, each, phrasing); });
    for (const ScheduledSupport& each : schedule.supports)
      if (each.to == part && each.through.empty())
        add(each.along_part_in, each.at,
            [&](const std::string& cells) { return row(cells, each, each.route, phrasing); });
    std::stable_sort(rows.begin(), rows.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    text += wrapped("", part.empty() ? "fixed to no part that is named" : part);
    text += head({taped ? "tape" : "", "FS", "BL", "WL"}, "for", phrasing);
    for (const auto& [along, line] : rows) text += line;
    text += "\n";
  }
  return text;
}

bool has_hole_in(const Schedule& schedule, const std::string& part) {
  return std::any_of(schedule.holes.begin(), schedule.holes.end(),
                     [&](const ScheduledHole& each) { return each.frame == part; });
}

/// The drill sheet: of each frame, and each other part with holes, its holes and screw holes.
std::string by_frame(const Schedule& schedule, const Phrasing& phrasing) {
  std::string text;
  for (const std::string& part : parts_of(schedule)) {
    if (!has_hole_in(schedule, part)) continue;
    text += wrapped("", part);
    text += head({"FS", "BL", "WL"}, "for", phrasing);
    for (const ScheduledHole& each : schedule.holes)
      if (each.frame == part)
        text += hole_row(place_cells(each.centre, phrasing), schedule, each, phrasing);
    for (const ScheduledSupport& each : schedule.supports)
      if (each.to == part && each.through.empty())
        text += row(place_cells(each.at, phrasing), each, each.route, phrasing);
    text += "\n";
  }
  return text;
}

std::string lists(const Schedule& schedule, const Phrasing& phrasing) {
  switch (schedule.order) {
    case ScheduleOrder::part:
      return by_part(schedule, phrasing);
    case ScheduleOrder::route:
      return by_route(schedule, phrasing);
    case ScheduleOrder::frame:
      return by_frame(schedule, phrasing);
  }
  return {};
}

}  // namespace

std::string schedule_text(const Schedule& schedule, const TextStyle& style) {
  std::string text = lists(schedule, style.phrasing);
  if (!schedule.assumptions.empty()) {
    text += "Taken, because the project does not say:\n";
    for (const std::string& assumption : schedule.assumptions) text += wrapped("  - ", assumption);
    text += "\n";
  }
  text += wrapped("", "Lengths in " + style.phrasing.unit_name() +
                          ". Places are the line's, not the screw's: a clamp's screw hole stands "
                          "beside it by the clamp. Its drill is for a No. 10 screw (MS21919, from "
                          "memory).");
  return text;
}

}  // namespace linewright
