#include "render/chart/chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "render/report/html_text.hpp"

namespace linewright {

namespace {

constexpr double tick_room_pt = 44;

/// Multiples of a round step within the range.
std::vector<double> round_ticks(AxisRange range, double room_pt) {
  const double step = tick_step((range.to - range.from) * tick_room_pt / room_pt);
  std::vector<double> ticks;
  for (double i = std::ceil(range.from / step - 1e-9); i * step <= range.to + 1e-9 * step; ++i)
    ticks.push_back(i * step + 0.0);
  return ticks;
}

}  // namespace

AxisRange AxisRange::about(const std::vector<double>& values) {
  const auto ends = std::minmax_element(values.begin(), values.end());
  const double least = *ends.first;
  const double most = *ends.second;
  const double width = most > least ? most - least : std::max(1.0, std::abs(most));
  constexpr double beyond = 0.08;
  return {least - beyond * width, most + beyond * width};
}

Chart::Chart(Sheet& sheet, const PaperBox& room, AxisRange across, AxisRange up,
             std::string_view across_title, std::string_view up_title)
    : sheet_(sheet), room_(room), across_(across), up_(up) {
  for (const double tick : round_ticks(across_, room.right - room.left)) {
    sheet.path("grid", fmt::format("M{:.2f} {:.1f}V{:.1f}", x(tick), room.top, room.bottom));
    sheet.text(x(tick), room.bottom + 11, "", "middle", fmt::format("{:g}", tick));
  }
  for (const double tick : round_ticks(up_, room.bottom - room.top)) {
    sheet.path("grid", fmt::format("M{:.1f} {:.2f}H{:.1f}", room.left, y(tick), room.right));
    sheet.text(room.left - 5, y(tick) + 3, "", "end", fmt::format("{:g}", tick));
  }
  sheet.path("axis", fmt::format("M{:.1f} {:.1f}V{:.1f}H{:.1f}", room.left, room.top, room.bottom,
                                 room.right));
  sheet.text(room.right, room.bottom + 23, "head", "end", across_title);
  sheet.text(room.left - 30, room.top - 8, "head", "start", up_title);
}

double Chart::x(double across) const {
  return room_.left +
         (room_.right - room_.left) * (across - across_.from) / (across_.to - across_.from);
}

double Chart::y(double up) const {
  return room_.bottom - (room_.bottom - room_.top) * (up - up_.from) / (up_.to - up_.from);
}

std::string Chart::path_of(const Points& points) const {
  std::string d;
  for (const auto& [across, up] : points)
    d += fmt::format("{}{:.2f} {:.2f}", d.empty() ? 'M' : 'L', x(across), y(up));
  return d;
}

void Chart::curve(std::string_view css_class, const Points& points) {
  if (points.size() > 1) sheet_.path(css_class, path_of(points));
}

void Chart::area(std::string_view css_class, const Points& points) {
  if (points.size() > 2) sheet_.path(css_class, path_of(points) + "Z");
}

void Chart::dot(std::string_view css_class, double across, double up, std::string_view title) {
  sheet_.add(
      fmt::format("<circle class=\"{}\" cx=\"{:.2f}\" cy=\"{:.2f}\" r=\"2.6\"><title>{}"
                  "</title></circle>\n",
                  css_class, x(across), y(up), escaped(title)));
}

}  // namespace linewright
