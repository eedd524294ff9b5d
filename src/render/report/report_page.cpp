#include "render/report/report_page.hpp"

#include <fmt/format.h>

#include "render/finding_text.hpp"
#include "render/report/html_text.hpp"
#include "render/report/page_frame.hpp"
#include "render/report/sections.hpp"
#include "render/version.hpp"

namespace linewright {

namespace {

constexpr std::string_view caution =
    "This compares a drawing with stated limits. It does not make an aeroplane airworthy: inspect "
    "the lines as built, and follow your local authority.";

std::string tally_item(Verdict verdict, int count) {
  return fmt::format("<li class=\"{}\">{} <b>{}</b></li>\n", count == 0 ? "none" : "some",
                     verdict_badge(verdict), count);
}

/// What the verdicts rest on that the files do not say.
std::string tried(const ReportPage& page) {
  if (page.report.set_values.empty()) return {};
  std::string html = "<p class=\"caution\">Judged as if the files said:</p>\n<ul>\n";
  for (const SetValue& each : page.report.set_values)
    html +=
        "<li>" + element("code", "", each.path + ": " + each.value) +
        (each.was.empty() ? " (the files do not state it)" : " (was " + escaped(each.was) + ")") +
        "</li>\n";
  return html + "</ul>\n";
}

std::string summary(const ReportPage& page) {
  const Tally tally = tally_of(page.report.judgements);
  std::string html = "<header class=\"top\">\n<p class=\"maker\">linewright: routing report</p>\n" +
                     element("h1", "", page.report.project_name) + "\n<ul class=\"tally\">\n";
  html += tally_item(Verdict::fail, tally.fail) + tally_item(Verdict::unknown, tally.unknown) +
          tally_item(Verdict::warn, tally.warn) + tally_item(Verdict::waived, tally.waived) +
          tally_item(Verdict::pass, tally.pass) + "</ul>\n";
  html += "<p>" + escaped(summary_lines(page.report)) + "</p>\n";
  html += tried(page) + element("p", "caution", caution) + "\n";
  html += fmt::format("<p class=\"written\">Written {} by linewright {}.</p>\n",
                      escaped(page.written), escaped(version()));
  return html + "</header>\n";
}

std::string contents(const ReportPage& page) {
  const std::string close_up = page.close_up ? "<li><a href=\"#close-up\">Close-up</a></li>\n" : "";
  return "<nav aria-label=\"Contents\"><ul>\n"
         "<li><a href=\"#picture\">Picture</a></li>\n<li><a href=\"#findings\">Findings</a></li>\n"
         "<li><a href=\"#margins\">Margins</a></li>\n<li><a href=\"#lines\">Lines</a></li>\n"
         "<li><a href=\"#schedules\">Schedules</a></li>\n" +
         close_up +
         "<li><a href=\"#cables\">Cables</a></li>\n<li><a href=\"#leak-tests\">Leak "
         "tests</a></li>\n"
         "<li><a href=\"#cautions\">Cautions</a></li>\n</ul></nav>\n";
}

std::string picture(bool watched) {
  return fmt::format(
      "<section id=\"picture\"{}>\n<h2>Picture</h2>\n"
      "<p class=\"without-script\">Here stands a picture in space that can be turned, cut and "
      "asked. It needs JavaScript and WebGL; everything that it shows is said below without.</p>\n"
      "<div id=\"viewer\" hidden></div>\n</section>\n",
      watched ? " data-watched=\"yes\"" : "");
}

}  // namespace

std::string report_page(const ReportPage& page) {
  const std::string body = "<a class=\"skip\" href=\"#findings\">To the findings</a>\n" +
                           verdict_shapes() + summary(page) + contents(page) + "<main>\n" +
                           picture(page.watched) + findings_section(page) + margins_section(page) +
                           lines_section(page) + schedules_section(page) + close_up_section(page) +
                           cables_section(page) + leak_tests_section(page) +
                           cautions_section(page) + "</main>\n";
  return page_document(page.report.project_name + ": routing report", body, scene_json(page));
}

std::string refused_page(const std::string& errors, const std::string& written) {
  const std::string body =
      verdict_shapes() +
      "<header class=\"top\"><p class=\"maker\">linewright: routing report</p>\n"
      "<h1>Nothing was judged</h1>\n<p>The project's files have errors.</p>\n" +
      fmt::format("<p class=\"written\">Written {}.</p></header>\n<main>\n", escaped(written)) +
      "<section id=\"picture\" data-watched=\"yes\"><div id=\"viewer\" hidden></div></section>\n"
      "<section id=\"findings\"><h2>Errors</h2>\n<pre tabindex=\"0\">" +
      escaped_lines(errors) + "</pre></section>\n</main>\n";
  return page_document("Nothing was judged: routing report", body, "{}");
}

}  // namespace linewright
