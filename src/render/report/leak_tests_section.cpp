#include "render/leak_test_text.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"

namespace linewright {

namespace {

std::string planned(const PlannedLeakTest& test, const ReportPage& page) {
  std::string html =
      "<details open>\n<summary><b class=\"name\">" + escaped(test.system) + "</b></summary>\n";
  if (!test.plan) return html + "<p>No plan: " + escaped(test.refusal) + ".</p>\n</details>\n";
  LeakTestReport report;
  report.project_name = page.report.project_name;
  report.plan = *test.plan;
  TextStyle style;
  style.phrasing = page.phrasing;
  style.quiet = true;
  return html + "<pre tabindex=\"0\">" + escaped_lines(leak_plan_text(report, style)) +
         "</pre>\n</details>\n";
}

}  // namespace

std::string leak_tests_section(const ReportPage& page) {
  std::string html = "<section id=\"leak-tests\">\n<h2>Leak tests</h2>\n";
  if (page.leak_tests.empty())
    return html + "<p>The project has no static or pitot system.</p>\n</section>\n";
  html +=
      "<p>As they would be done at sea level on a standard day (29.92 inHg, 59 degF). <strong>For "
      "the test itself take the figures of your field and day</strong>: <code>linewright leak-test "
      "plan</code>.</p>\n";
  for (const PlannedLeakTest& test : page.leak_tests) html += planned(test, page);
  return html + "</section>\n";
}

}  // namespace linewright
