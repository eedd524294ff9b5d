#include <fmt/format.h>

#include <algorithm>

#include "render/amount.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"
#include "render/rig_text.hpp"

namespace linewright {

namespace {

constexpr double left_px = 44;
constexpr double right_px = 306;
constexpr double top_px = 14;
constexpr double base_px = 140;

struct Scale {
  double least_degf = 0;
  double most_degf = 1;
  double most_lbf = 1;

  double x(double degf) const {
    return left_px + (right_px - left_px) * (degf - least_degf) / (most_degf - least_degf);
  }
  double y(double lbf) const { return base_px - (base_px - top_px) * lbf / most_lbf; }
};

std::string grid(const Scale& scale, const RiggedCable& cable) {
  std::string svg =
      fmt::format("<path class=\"axis\" d=\"M{} {}V{}H{}\"/>", left_px, top_px, base_px, right_px);
  for (const double share : {0.0, 0.5, 1.0})
    svg += fmt::format(
        "<path class=\"grid\" d=\"M{} {:.1f}H{}\"/><text x=\"{}\" y=\"{:.1f}\" "
        "text-anchor=\"end\">{:.0f}</text>",
        left_px, scale.y(share * scale.most_lbf), right_px, left_px - 5,
        scale.y(share * scale.most_lbf) + 4, share * scale.most_lbf);
  for (const double degf : {scale.least_degf, scale.most_degf})
    svg += fmt::format("<text x=\"{:.1f}\" y=\"{}\" text-anchor=\"middle\">{:g}</text>",
                       scale.x(degf), base_px + 16, degf);
  for (const ChartRow& row : cable.chart)
    if (row.as_rigged && row.temperature_degf > scale.least_degf &&
        row.temperature_degf < scale.most_degf)
      svg += fmt::format("<text x=\"{:.1f}\" y=\"{}\" text-anchor=\"middle\">{:g} rigged</text>",
                         scale.x(row.temperature_degf), base_px + 16, row.temperature_degf);
  return svg;
}

/// Tension against temperature; the rigged one ringed. Empty where no tension is known.
std::string tension_chart(const RiggedCable& cable) {
  Scale scale;
  double most = 0;
  for (const ChartRow& row : cable.chart) most = std::max(most, row.tension_lbf.value_or(0));
  if (cable.chart.size() < 2 || most <= 0) return {};
  scale.least_degf = cable.chart.front().temperature_degf;
  scale.most_degf = cable.chart.back().temperature_degf;
  scale.most_lbf = 20 * std::ceil(most / 20);
  std::string path;
  std::string marks;
  for (const ChartRow& row : cable.chart) {
    if (!row.tension_lbf) continue;
    path += fmt::format("{}{:.1f} {:.1f}", path.empty() ? "M" : "L", scale.x(row.temperature_degf),
                        scale.y(*row.tension_lbf));
    marks += fmt::format(
        "<circle{} cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{}\"><title>{} lbf at {:g} "
        "degF</title></circle>",
        row.as_rigged ? " class=\"rigged\"" : "", scale.x(row.temperature_degf),
        scale.y(*row.tension_lbf), row.as_rigged ? 6 : 3, fixed_number(*row.tension_lbf, 1),
        row.temperature_degf);
  }
  return fmt::format(
      "<svg class=\"chart tension\" viewBox=\"0 0 320 176\" role=\"img\" aria-label=\"Tension "
      "of {} against temperature; the figures stand below\">{}<path class=\"line\" "
      "d=\"{}\"/>{}<text x=\"{}\" y=\"172\" text-anchor=\"end\">degF; tension in lbf "
      "upwards</text></svg>\n",
      escaped(cable.name), grid(scale, cable), path, marks, right_px);
}

}  // namespace

std::string cables_section(const ReportPage& page) {
  std::string html = "<section id=\"cables\">\n<h2>Cables: to cut and to rig</h2>\n";
  if (page.rig.cables.empty())
    return html + "<p>The project has no control cable.</p>\n</section>\n";
  html +=
      "<p>Tension against temperature. Rig by a tension meter, at the temperature of the day."
      "</p>\n<div class=\"charts\">\n";
  for (const RiggedCable& cable : page.rig.cables) {
    const std::string chart = tension_chart(cable);
    html += "<figure>" + element("figcaption", "name", cable.name) +
            (chart.empty() ? "<p>Tension not known.</p>" : chart) + "</figure>\n";
  }
  TextStyle style;
  style.phrasing = page.phrasing;
  style.quiet = true;
  return html + "</div>\n<h3>Every figure</h3>\n<pre tabindex=\"0\">" +
         escaped_lines(rig_text(page.rig, style)) + "</pre>\n</section>\n";
}

}  // namespace linewright
