#include <fmt/format.h>

#include "render/amount.hpp"
#include "render/bend_words.hpp"
#include "render/finding_text.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"

namespace linewright {

namespace {

/// A table that is scrolled within itself where the page is narrow.
std::string table(std::string_view name, std::string_view css_class,
                  const std::vector<std::string>& heads, const std::string& rows) {
  std::string html = fmt::format(
      "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"{}\"><table "
      "class=\"{}\">\n<thead><tr>",
      escaped(name), css_class);
  for (const std::string& head : heads) html += "<th scope=\"col\">" + escaped(head) + "</th>";
  return html + "</tr></thead>\n<tbody>\n" + rows + "</tbody></table></div>\n";
}

std::string facts(const RouteReport& route, const Phrasing& phrasing) {
  const RouteCut& cut = route.cut;
  std::string html = "<dl class=\"facts\">\n";
  const auto fact = [&](std::string_view name, const std::string& text) {
    html += "<div>" + element("dt", "", name) + element("dd", "", text) + "</div>\n";
  };
  fact("from, to", route.from + ", " + route.to);
  fact("line", cut.line);
  fact(cut.casing ? "casing" : "developed", bench_length(cut.length_in, phrasing));
  if (cut.casing)
    fact("wire from pin to pin",
         cut.wire_length_in ? bench_length(*cut.wire_length_in, phrasing) : "not known");
  if (!cut.cable && !cut.casing) {
    fact("to cut", bench_length(cut.cut_length_in, phrasing));
    fact("bore", volume(cut.volume_in3, phrasing));
  }
  fact("mass", cut.mass_lb ? mass(*cut.mass_lb, phrasing) : "not known");
  if (!cut.cable)
    fact("least bend radius", cut.minimum_bend_radius_in
                                  ? bench_length(*cut.minimum_bend_radius_in, phrasing)
                                  : "not known");
  return html + "</dl>\n";
}

std::string bend_row(std::size_t number, const BendStep& bend, const Phrasing& phrasing) {
  const auto cell = [](const std::string& text) { return element("td", "number", text); };
  return "<tr>" + cell(std::to_string(number)) + cell(bench_length(bend.mark_start_in, phrasing)) +
         cell(bench_length(bend.mark_end_in, phrasing)) +
         cell(bench_length(bend.straight_before_in, phrasing)) +
         cell(phrasing.angle(bend.angle_deg)) +
         cell(number == 1 ? "-" : phrasing.angle(bend.rotation_deg)) +
         cell(bench_length(bend.radius_in, phrasing)) + "</tr>\n";
}

std::string bends(const RouteCut& cut, const Phrasing& phrasing) {
  if (cut.cable) return "<p>Pieces and ends of the cable stand under Cables.</p>\n";
  if (cut.bends.empty()) return "<p>No bends.</p>\n";
  if (cut.casing) {
    double turned = 0;
    for (const BendStep& bend : cut.bends) turned += bend.angle_deg;
    return "<p>Led in place; its bends turn " + escaped(phrasing.angle(turned)) +
           " together.</p>\n";
  }
  std::string rows;
  for (std::size_t i = 0; i < cut.bends.size(); ++i)
    rows += bend_row(i + 1, cut.bends[i], phrasing);
  return "<h4>Bends in order</h4>\n" +
         table("Bends of " + cut.name, "numbers",
               {"bend", "starts at", "ends at", "straight before", "angle", "rotation", "radius"},
               rows) +
         "<p>Straight after the last bend " +
         escaped(bench_length(cut.straight_after_in, phrasing)) + ".</p>\n";
}

std::string judgement_row(const Judgement& judgement, std::size_t index, const Phrasing& phrasing) {
  const bool passes = judgement.verdict == Verdict::pass;
  std::string what = escaped(judgement.message);
  if (!passes) what = fmt::format("<a href=\"#{}\">{}</a>", judgement_id(index), what);
  return fmt::format("<tr{}><td>{}</td>",
                     passes ? fmt::format(" id=\"{}\"", judgement_id(index)) : "",
                     verdict_badge(judgement.verdict)) +
         element("td", "", judgement.rule) +
         element("td", "number",
                 judgement.distance_in ? phrasing.length(*judgement.distance_in) : "") +
         "<td>" + what + "</td>" + element("td", "", by_how_much(judgement, phrasing)) + "<td>" +
         margin_drawing(judgement) + "</td></tr>\n";
}

std::string tally_words(const Tally& tally) {
  std::string text = fmt::format("{} passed", tally.pass);
  const auto add = [&](int count, std::string_view one, std::string_view many) {
    if (count > 0) text += ", " + counted(count, one, many);
  };
  add(tally.fail, "failed", "failed");
  add(tally.unknown, "unknown", "unknown");
  add(tally.warn, "warning", "warnings");
  add(tally.waived, "waived", "waived");
  return text;
}

/// All judgements of a route, or of none; empty where there is none.
std::string judged(const ReportPage& page, const std::string& route) {
  std::string rows;
  for (std::size_t i = 0; i < page.report.judgements.size(); ++i)
    if (page.report.judgements[i].route == route)
      rows += judgement_row(page.report.judgements[i], i, page.phrasing);
  if (rows.empty()) return {};
  return table(route.empty() ? "Judgements of no one line" : "Judgements of " + route, "judged",
               {"verdict", "rule", "at", "what", "measured", "room"}, rows);
}

std::string route_entry(const ReportPage& page, std::size_t number) {
  const RouteReport& route = page.report.routes[number];
  Tally tally;
  for (const Judgement& each : page.report.judgements)
    if (each.route == route.cut.name) tally.add(each.verdict);
  std::string html = fmt::format(
      "<details id=\"line-{}\">\n<summary><b class=\"name\">{}</b> <span>{}, {}</span> "
      "<span class=\"count\">{}</span></summary>\n",
      number + 1, escaped(route.cut.name), escaped(route.cut.system),
      escaped(bench_length(route.cut.length_in, page.phrasing)), tally_words(tally));
  for (const SceneRoute& scene : page.scene.routes)
    if (scene.name == route.cut.name && !scene.steps.empty())
      html += fmt::format(
          "<div class=\"wide\" tabindex=\"0\" role=\"region\" aria-label=\"Strip of "
          "{}\">{}</div>\n",
          escaped(scene.name), strip_drawing(scene, page));
  html += facts(route, page.phrasing) + bends(route.cut, page.phrasing);
  const std::string table_of_all = judged(page, route.cut.name);
  if (!table_of_all.empty()) html += "<h4>Judged</h4>\n" + table_of_all;
  return html + "</details>\n";
}

std::string systems(const ReportPage& page) {
  std::string rows;
  for (const SystemCut& system : page.report.systems)
    rows += "<tr>" + element("td", "name", system.name) +
            element("td", "number", bench_length(system.length_in, page.phrasing)) +
            element("td", "number",
                    system.volume_in3 > 0 ? volume(system.volume_in3, page.phrasing) : "-") +
            "</tr>\n";
  return "<h3>Systems</h3>\n" + table("Systems", "systems", {"system", "length", "volume"}, rows);
}

}  // namespace

std::string lines_section(const ReportPage& page) {
  std::string html =
      "<section id=\"lines\">\n<h2>Lines: to cut and to bend</h2>\n"
      "<p>The strip shows a line unrolled along its length. The filled band is how far the line is "
      "likely to move sideways between what holds it (triangles); the dashed one is what no shape "
      "of "
      "it can leave. A mark is a gap that was judged, the bar joined to it its limit.</p>\n"
      "<p>Bends are in order from the first node. Marks are measured on the straight line from "
      "where "
      "that end will be: the cutting allowance is not in them. ";
  html += escaped(rotation_words) + "</p>\n";
  for (std::size_t i = 0; i < page.report.routes.size(); ++i) html += route_entry(page, i);
  const std::string of_none = judged(page, "");
  if (!of_none.empty()) html += "<h3>Judged of no one line</h3>\n" + of_none;
  return html + systems(page) + "</section>\n";
}

}  // namespace linewright
