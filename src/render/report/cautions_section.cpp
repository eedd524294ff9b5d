#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"

namespace linewright {

namespace {

std::string listed(std::string_view title, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string html = element("h3", "", title) + "\n<ul>\n";
  for (const std::string& item : items) html += element("li", "", item) + "\n";
  return html + "</ul>\n";
}

std::vector<std::string> passed_over(const ReportPage& page) {
  std::vector<std::string> items;
  for (const PassedOver& each : page.report.passed_over)
    items.push_back(each.route + " to " + each.with + ", gap " + page.phrasing.length(each.gap_in) +
                    " at " + page.phrasing.place(each.at) + ": " + each.reason);
  return items;
}

}  // namespace

std::string cautions_section(const ReportPage& page) {
  return "<section id=\"cautions\">\n<h2>Cautions</h2>\n<ul>\n"
         "<li>Nothing here makes an aeroplane airworthy. A drawing was checked against limits; the "
         "lines as built have to be looked at by someone who knows what to look for.</li>\n"
         "<li>Local rules come first. The limits are yardsticks, many from rules for certificated "
         "aeroplanes that do not bind a home-built one. Your authority decides.</li>\n"
         "<li>Limits said to be from memory were not checked against the source they name. Look "
         "them up before you rely on them.</li>\n"
         "<li>A pass is only as good as the drawing. What is not in the files is not judged, and "
         "what no rule judges is not judged.</li>\n"
         "<li>The picture shows the drawing. Sheet is drawn thinner than it is, and large meshes "
         "with a part of their faces; nothing may be measured off it.</li>\n</ul>\n" +
         listed("Taken, because the project does not say", page.report.assumptions) +
         listed("Found on the way", page.report.notes) +
         listed("Passed over near fittings", passed_over(page)) + "</section>\n";
}

}  // namespace linewright
