#include "render/cutlist_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "render/amount.hpp"
#include "render/bend_words.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

constexpr std::size_t bend_column = 6;
constexpr std::size_t column = 11;
/// "123 15/32 in" with a blank before it: six columns still fit a terminal.
constexpr std::size_t fraction_column = 13;

struct Cell {
  std::string text;
  bool is_length = true;
};

std::string table_row(std::string_view first, const std::vector<Cell>& cells,
                      const Phrasing& phrasing) {
  const bool wide = phrasing.unit == LengthUnit::inch_fraction;
  std::string row = right(first, bend_column);
  for (const Cell& cell : cells)
    row += right(cell.text, wide && cell.is_length ? fraction_column : column);
  return row + "\n";
}

/// Only what is bent on a tool before it is fitted needs the mark where an arc ends.
std::string schedule_head(const RouteCut& cut, const Phrasing& phrasing) {
  std::vector<Cell> over = {{"bend"}, {"straight"}};
  std::vector<Cell> under = {
      {"starts at"}, {"before"}, {"angle", false}, {"rotation", false}, {"radius"}};
  if (cut.rigid) {
    over.insert(over.begin() + 1, {"bend"});
    under.insert(under.begin() + 1, {"ends at"});
  }
  return table_row("", over, phrasing) + table_row("bend", under, phrasing);
}

std::string schedule_row(std::size_t number, const BendStep& bend, const RouteCut& cut,
                         const Phrasing& phrasing) {
  std::vector<Cell> cells = {{bench_length(bend.mark_start_in, phrasing)},
                             {bench_length(bend.straight_before_in, phrasing)},
                             {phrasing.angle(bend.angle_deg), false},
                             {number == 1 ? "-" : phrasing.angle(bend.rotation_deg), false},
                             {bench_length(bend.radius_in, phrasing)}};
  if (cut.rigid) cells.insert(cells.begin() + 1, {bench_length(bend.mark_end_in, phrasing)});
  return table_row(std::to_string(number), cells, phrasing);
}

std::string route_schedule(const RouteCut& cut, const Phrasing& phrasing) {
  if (cut.bends.empty()) return "  no bends\n";
  std::string text = schedule_head(cut, phrasing);
  for (std::size_t i = 0; i < cut.bends.size(); ++i)
    text += schedule_row(i + 1, cut.bends[i], cut, phrasing);
  text += fmt::format("  straight after the last bend {}\n",
                      bench_length(cut.straight_after_in, phrasing));
  return text;
}

std::string mass_words(const RouteCut& cut, const Phrasing& phrasing) {
  return cut.mass_lb ? mass(*cut.mass_lb, phrasing) : "not known";
}

/// A cable is not bent to a schedule, and has no bore.
std::string cable_text(const RouteCut& cut, const Phrasing& phrasing) {
  return fmt::format("  developed length {}, mass {}\n  pieces and ends: linewright rig\n\n",
                     bench_length(cut.length_in, phrasing), mass_words(cut, phrasing));
}

/// What is straight asks for none.
std::string radius_text(const RouteCut& cut, const Phrasing& phrasing) {
  if (cut.bends.empty() && !cut.minimum_bend_radius_in) return {};
  return fmt::format("  least bend radius of the line {}\n",
                     cut.minimum_bend_radius_in
                         ? bench_length(*cut.minimum_bend_radius_in, phrasing.decimals())
                         : "not known");
}

/// What is not bent before it is fitted.
std::string led_in_place(const RouteCut& cut, const Phrasing& phrasing) {
  if (cut.bends.empty()) return "  no bends\n";
  double turned = 0;
  for (const BendStep& bend : cut.bends) turned += bend.angle_deg;
  if (cut.bends.size() == 1)
    return fmt::format("  led in place in 1 bend of {}\n", phrasing.angle(turned));
  return fmt::format("  led in place in {} bends, which turn {} together\n", cut.bends.size(),
                     phrasing.angle(turned));
}

/// A casing is ordered by its length and led in place.
std::string casing_text(const RouteCut& cut, const Phrasing& phrasing) {
  const std::string lengths = fmt::format(
      "casing {}, wire from pin to pin {}, mass {}", bench_length(cut.cut_length_in, phrasing),
      cut.wire_length_in ? bench_length(*cut.wire_length_in, phrasing)
                         : "not known (run_out is not stated)",
      mass_words(cut, phrasing));
  return wrapped("  ", lengths) + radius_text(cut, phrasing) + led_in_place(cut, phrasing);
}

/// Soft tube, hose and wire are bent by hand as they are led; what is rigid, before.
bool has_schedule(const RouteCut& cut, const TextStyle& style) {
  return !cut.cable && !cut.casing && (cut.rigid || style.verbose);
}

std::string route_text(const RouteReport& route, const TextStyle& style) {
  const RouteCut& cut = route.cut;
  const Phrasing& phrasing = style.phrasing;
  std::string text = wrapped("", fmt::format("{}: {}, {}, from {} to {}", cut.name, cut.system,
                                             cut.line, route.from, route.to));
  if (cut.cable) return text + cable_text(cut, phrasing);
  if (cut.casing) {
    text += casing_text(cut, phrasing);
    if (!cut.straightened.empty()) text += wrapped("  ", straightened_words(cut));
    return text + "\n";
  }
  text +=
      fmt::format("  developed length {}, cut length {}\n", bench_length(cut.length_in, phrasing),
                  bench_length(cut.cut_length_in, phrasing));
  text += fmt::format("  bore volume {}, mass {}\n", volume(cut.volume_in3, phrasing),
                      mass_words(cut, phrasing));
  text += radius_text(cut, phrasing) +
          (has_schedule(cut, style) ? route_schedule(cut, phrasing) : led_in_place(cut, phrasing));
  if (!cut.straightened.empty()) text += wrapped("  ", straightened_words(cut));
  return text + "\n";
}

std::string systems_text(const std::vector<SystemCut>& systems, const Phrasing& phrasing) {
  constexpr std::size_t widest_name = 40;
  std::size_t widest = columns_of("system");
  for (const SystemCut& system : systems)
    widest = std::max(widest, columns_of(one_line(system.name)));
  widest = std::min(widest, widest_name);
  std::string text = fmt::format("{}{:>14}{:>16}\n", left("system", widest), "length", "volume");
  for (const SystemCut& system : systems) {
    text += fmt::format("{}{:>14}{:>16}\n", left(one_line(system.name), widest),
                        bench_length(system.length_in, phrasing),
                        system.volume_in3 > 0 ? volume(system.volume_in3, phrasing) : "-");
    if (system.nodes_without_volume.empty()) continue;
    std::string names;
    for (const std::string& node : system.nodes_without_volume)
      names += (names.empty() ? "" : ", ") + node;
    text += wrapped("  ", "volume not stated and counted as nothing: " + names);
  }
  return text;
}

/// What is cut of each line: cables are cut in pieces, which `rig` tells.
std::string lines_text(const Report& report, const Phrasing& phrasing) {
  struct Total {
    std::string line;
    double cut_in = 0;
    int pieces = 0;
  };
  std::vector<Total> totals;
  std::size_t widest = columns_of("line");
  for (const RouteReport& route : report.routes) {
    if (route.cut.cable) continue;
    auto found = std::find_if(totals.begin(), totals.end(),
                              [&](const Total& total) { return total.line == route.cut.line; });
    if (found == totals.end()) found = totals.insert(totals.end(), Total{route.cut.line});
    found->cut_in += route.cut.cut_length_in;
    ++found->pieces;
    widest = std::max(widest, columns_of(one_line(route.cut.line)));
  }
  if (totals.empty()) return {};
  std::string text = fmt::format("\n{}{:>14}{:>10}\n", left("line", widest), "to cut", "pieces");
  for (const Total& total : totals)
    text += fmt::format("{}{:>14}{:>10}\n", left(one_line(total.line), widest),
                        bench_length(total.cut_in, phrasing), total.pieces);
  return text;
}

}  // namespace

std::string cutlist_text(const Report& report, const TextStyle& style) {
  std::string text;
  bool bent = false;
  for (const RouteReport& route : report.routes) {
    text += route_text(route, style);
    bent = bent || (has_schedule(route.cut, style) && !route.cut.bends.empty());
  }
  text += systems_text(report.systems, style.phrasing);
  text += lines_text(report, style.phrasing);
  if (!bent) return text;
  text += "\n";
  text += wrapped("",
                  "Bends are in order from the first node. Marks are measured on the straight line "
                  "from where that end will be: the cutting allowance is not in them.");
  return text + wrapped("", std::string(rotation_words));
}

}  // namespace linewright
