#include "render/close_up_text.hpp"
#include "render/parts_text.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"
#include "render/schedule_text.hpp"

namespace linewright {

namespace {

std::string listed(std::string_view title, const std::string& text) {
  return "<details>\n<summary><b>" + escaped(title) + "</b></summary>\n<pre tabindex=\"0\">" +
         escaped_lines(text) + "</pre>\n</details>\n";
}

}  // namespace

std::string schedules_section(const ReportPage& page) {
  TextStyle style;
  style.phrasing = page.phrasing;
  style.quiet = true;
  return "<section id=\"schedules\">\n<h2>Schedules: to drill and to buy</h2>\n" +
         listed("Supports and holes along each part", schedule_text(page.by_part, style)) +
         listed("What is drilled in each frame", schedule_text(page.by_frame, style)) +
         listed("What to buy", parts_text(page.parts, style)) + "</section>\n";
}

std::string close_up_section(const ReportPage& page) {
  if (!page.close_up) return {};
  TextStyle style;
  style.phrasing = page.phrasing;
  style.quiet = true;
  return "<section id=\"close-up\">\n<h2>Before it is closed up</h2>\n" +
         listed("What must be in, done and tested before each closure goes on",
                close_up_text(*page.close_up, style)) +
         "</section>\n";
}

}  // namespace linewright
