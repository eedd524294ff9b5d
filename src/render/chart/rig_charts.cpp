#include "render/chart/rig_charts.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "render/chart/chart.hpp"

namespace linewright {

namespace {

constexpr double width_pt = 11 * points_per_inch;
constexpr double left_pt = 70;
constexpr double wide_pt = 300;
constexpr double high_pt = 150;
constexpr double column_pt = 376;
constexpr double row_pt = 236;
constexpr double first_row_pt = 100;

void draw_cable(Sheet& sheet, const RiggedCable& cable, double left, double top) {
  sheet.text(left - 30, top - 34, "head", "start", cable.name, 48);
  std::string line = cable.line;
  if (cable.rigged_lbf) line += fmt::format(", rigged to {:g} lbf", *cable.rigged_lbf);
  sheet.text(left - 30, top - 23, "small", "start", line, 70);
  Chart::Points taut;
  std::vector<double> across;
  std::vector<double> up{0};
  for (const ChartRow& row : cable.chart) {
    across.push_back(row.temperature_degf);
    if (!row.tension_lbf) continue;
    taut.emplace_back(row.temperature_degf, *row.tension_lbf);
    up.push_back(*row.tension_lbf);
  }
  if (taut.empty()) {
    sheet.text(left, top + 20, "", "start", "Not known: the project does not state what it takes.");
    return;
  }
  up.push_back(cable.minimum_rigged_lbf.value_or(0));
  Chart chart(sheet, {left, top, left + wide_pt, top + high_pt}, AxisRange::about(across),
              {0, AxisRange::about(up).to}, "degF", "lbf");
  if (cable.minimum_rigged_lbf)
    chart.curve("limit-line", {{across.front(), *cable.minimum_rigged_lbf},
                               {across.back(), *cable.minimum_rigged_lbf}});
  chart.curve("curve", taut);
  for (const ChartRow& row : cable.chart) {
    if (!row.tension_lbf) continue;
    const std::string title = fmt::format(
        "{:g} degF: {:.0f} lbf{}", row.temperature_degf, *row.tension_lbf,
        row.slack_in && *row.slack_in > 0 ? fmt::format(", slack {:.2f} in", *row.slack_in) : "");
    const bool slack = row.slack_in && *row.slack_in > 0;
    if (row.as_rigged || slack)
      chart.dot(row.as_rigged ? "dot odd" : "dot", row.temperature_degf, *row.tension_lbf, title);
  }
  const auto breaks = std::count_if(cable.chart.begin(), cable.chart.end(),
                                    [](const ChartRow& row) { return row.over_strength; });
  if (breaks > 0)
    sheet.text(left + 8, top + 14, "head", "start",
               fmt::format("it would break at {} of these temperatures", breaks));
}

}  // namespace

std::string rig_charts(const Rig& rig) {
  Sheet sheet(width_pt);
  sheet.text(36, 34, "title", "start", rig.project_name, 60);
  sheet.text(36, 50, "", "start",
             "Tension of each cable against temperature, unloaded. Filled: as rigged. Open: slack. "
             "Dashed: the least to rig to that leaves it taut over the whole range.",
             170);
  double end = first_row_pt + 0.3 * row_pt;
  double top = first_row_pt;
  bool on_the_left = true;
  for (const RiggedCable& cable : rig.cables) {
    draw_cable(sheet, cable, left_pt + (on_the_left ? 0 : column_pt), top);
    end = top + row_pt - 20;
    if (!on_the_left) top += row_pt;
    on_the_left = !on_the_left;
  }
  if (rig.cables.empty()) sheet.text(36, 70, "", "start", "No control cables.");
  sheet.text(36, end, "small", "start", "linewright rig tells what the figures hold for.");
  return sheet.finished(end + 24, rig.project_name + ": cable tensions");
}

}  // namespace linewright
