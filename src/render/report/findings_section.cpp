#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <numeric>

#include "render/finding_text.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"

namespace linewright {

namespace {

/// Fails, then unknowns, then warnings, then what was waived.
int gravity(Verdict verdict) {
  switch (verdict) {
    case Verdict::fail:
      return 0;
    case Verdict::unknown:
      return 1;
    case Verdict::warn:
      return 2;
    case Verdict::waived:
      return 3;
    case Verdict::pass:
      break;
  }
  return 4;
}

/// How far on the right side, as a share of the limit, so that inches and degrees compare.
double share(const Judgement& judgement) {
  const std::optional<double> margin = judgement.margin();
  if (!margin) return std::numeric_limits<double>::infinity();
  const double limit = std::abs(*judgement.limit);
  return limit > 0 ? *margin / limit : *margin;
}

std::string finding(const ReportPage& page, std::size_t index) {
  const Judgement& judgement = page.report.judgements[index];
  std::string html = fmt::format("<article class=\"finding {}\" id=\"{}\">\n<h3>",
                                 verdict_word(judgement.verdict), judgement_id(index));
  html += verdict_badge(judgement.verdict) + " " + element("code", "", judgement.rule) + " ";
  if (!judgement.route.empty()) html += element("b", "name", judgement.route) + ": ";
  html += escaped(judgement.message) + "</h3>\n" + margin_drawing(judgement) + "<dl>\n";
  for (const FindingLine& line :
       finding_lines(judgement, page.report.find_route(judgement.route), page.phrasing))
    if (!line.text.empty())
      html += element("dt", "", line.label) + element("dd", "", line.text) + "\n";
  std::string place = location_prefix(judgement.location);
  if (place.ends_with(": ")) place.resize(place.size() - 2);
  if (!place.empty()) html += "<dt>file</dt>" + element("dd", "file", place) + "\n";
  return html + "</dl>\n</article>\n";
}

}  // namespace

std::vector<std::size_t> findings_in_order(const Report& report) {
  std::vector<std::size_t> order(report.judgements.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::erase_if(order,
                [&](std::size_t i) { return report.judgements[i].verdict == Verdict::pass; });
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    const Judgement& first = report.judgements[a];
    const Judgement& second = report.judgements[b];
    if (first.verdict != second.verdict) return gravity(first.verdict) < gravity(second.verdict);
    return share(first) < share(second);
  });
  return order;
}

std::string judgement_id(std::size_t index) {
  return fmt::format("judgement-{}", index + 1);
}

std::string findings_section(const ReportPage& page) {
  std::string html = "<section id=\"findings\">\n<h2>Findings</h2>\n";
  const std::vector<std::size_t> order = findings_in_order(page.report);
  if (order.empty())
    html += page.report.judgements.empty()
                ? "<p>There was nothing to judge: that is not a pass.</p>\n"
                : "<p>All that was judged passed. What no rule judges is not judged.</p>\n";
  else
    html += "<p>The worst first; within a verdict, by how far each is off its limit.</p>\n";
  for (const std::size_t index : order) html += finding(page, index);
  return html + "</section>\n";
}

}  // namespace linewright
