#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "render/amount.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"

namespace linewright {

namespace {

/// Half a chart's width stands for so many limits, and nothing is drawn farther out.
constexpr double drawn_share = 1.0;

/// Margin as a share of the limit, within the chart; nothing where there is no limit to share.
std::optional<double> drawn_margin(const Judgement& judgement) {
  const std::optional<double> margin = judgement.margin();
  if (!margin) return std::nullopt;
  const double limit = std::abs(*judgement.limit);
  return std::clamp(limit > 0 ? *margin / limit : *margin, -drawn_share, drawn_share);
}

constexpr double left_px = 152;
constexpr double half_px = 220;
constexpr double row_px = 20;

double x_of(double share) {
  return left_px + half_px * (1 + share / drawn_share);
}

std::string rule_row(const std::string& rule, const std::vector<const Judgement*>& judgements,
                     double y) {
  std::string svg = fmt::format(
      "<text x=\"{:.0f}\" y=\"{:.0f}\" text-anchor=\"end\">{}</text>"
      "<path class=\"rail\" d=\"M{:.0f} {:.0f}H{:.0f}\"/>",
      left_px - 12, y + 4, escaped(rule), x_of(-drawn_share), y, x_of(drawn_share));
  for (const bool passes : {true, false})
    for (const Judgement* each : judgements)
      if ((each->verdict == Verdict::pass) == passes)
        svg += verdict_mark(each->verdict, x_of(*drawn_margin(*each)), y, passes ? 8 : 13);
  return svg + "\n";
}

std::string chart(const std::map<std::string, std::vector<const Judgement*>>& rules) {
  const double height = 30 + row_px * static_cast<double>(rules.size());
  std::string svg = fmt::format(
      "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Chart of margins\">"
      "<svg class=\"chart margins\" viewBox=\"0 0 612 {0:.0f}\" role=\"img\" aria-label=\"Margins "
      "of every rule, as a share of the limit; the tables of the lines have the figures\">"
      "<path class=\"broken\" d=\"M{1:.0f} 22H{2:.0f}V{0:.0f}H{1:.0f}Z\"/>"
      "<text x=\"{1:.0f}\" y=\"14\">limit broken</text>"
      "<text x=\"{2:.0f}\" y=\"14\" text-anchor=\"middle\">limit</text>"
      "<text x=\"{3:.0f}\" y=\"14\" text-anchor=\"end\">room left</text>"
      "<path class=\"limit\" d=\"M{2:.0f} 20V{0:.0f}\"/>\n",
      height, x_of(-drawn_share), x_of(0), x_of(drawn_share));
  double y = 34;
  for (const auto& [rule, judgements] : rules) {
    svg += rule_row(rule, judgements, y);
    y += row_px;
  }
  return svg + "</svg></div>\n";
}

std::string tightest_row(const Judgement& judgement, const Phrasing& phrasing) {
  return "<tr>" + element("td", "name", judgement.route) + element("td", "", judgement.rule) +
         element("td", "", by_how_much(judgement, phrasing)) + "<td>" + margin_drawing(judgement) +
         "</td></tr>\n";
}

/// True for what is measured; a count that is right is at its limit by nature.
bool is_measured(const Judgement& judgement) {
  return judgement.unit != Unit::none && drawn_margin(judgement);
}

/// True where being right is being at the limit: no water at all, where none may stand.
bool has_no_room_to_lose(const Judgement& judgement) {
  return *judgement.limit == 0 && *judgement.margin() == 0;
}

/// What passed with the least room: the first to look at when something is moved.
std::string tightest(const ReportPage& page) {
  std::vector<const Judgement*> passes;
  for (const Judgement& each : page.report.judgements)
    if (each.verdict == Verdict::pass && is_measured(each) && !has_no_room_to_lose(each))
      passes.push_back(&each);
  std::stable_sort(passes.begin(), passes.end(), [](const Judgement* a, const Judgement* b) {
    return *drawn_margin(*a) < *drawn_margin(*b);
  });
  constexpr std::size_t shown = 12;
  passes.resize(std::min(shown, passes.size()));
  if (passes.empty()) return {};
  std::string html =
      "<h3>What passed with the least room</h3>\n<div class=\"wide\" tabindex=\"0\" "
      "role=\"region\" aria-label=\"What passed with the least room\"><table class=\"tightest\">\n"
      "<thead><tr><th scope=\"col\">line</th><th scope=\"col\">rule</th>"
      "<th scope=\"col\">measured</th><th scope=\"col\">against its limit</th></tr></thead>\n"
      "<tbody>\n";
  for (const Judgement* each : passes) html += tightest_row(*each, page.phrasing);
  return html + "</tbody></table></div>\n";
}

}  // namespace

std::string margin_drawing(const Judgement& judgement) {
  const std::optional<double> margin = drawn_margin(judgement);
  if (!margin) return {};
  // The limit stands in the middle; whichever sense it has, what is right of it is room.
  const double x = 60 + 52 * *margin / drawn_share;
  return fmt::format(
      "<svg class=\"bar\" viewBox=\"0 0 120 16\" aria-hidden=\"true\"><path class=\"broken\" "
      "d=\"M4 3H60V13H4Z\"/><path class=\"room\" d=\"M60 3H116V13H60Z\"/><path class=\"limit\" "
      "d=\"M60 0V16\"/>{}</svg>\n",
      verdict_mark(judgement.verdict, x, 8, 11));
}

std::string margins_section(const ReportPage& page) {
  std::map<std::string, std::vector<const Judgement*>> rules;
  for (const Judgement& each : page.report.judgements)
    if (is_measured(each)) rules[each.rule].push_back(&each);
  std::string html = "<section id=\"margins\">\n<h2>Margins</h2>\n";
  if (rules.empty()) return html + "<p>Nothing was measured.</p>\n</section>\n";
  html +=
      "<p>Everything that was measured against a limit, a row a rule: how much room is left, as a "
      "share of the limit; where the limit is zero, in inches or the like. Left of the middle the "
      "limit is broken. What has more room than its whole limit stands at the edge.</p>\n";
  return html + chart(rules) + tightest(page) + "</section>\n";
}

}  // namespace linewright
