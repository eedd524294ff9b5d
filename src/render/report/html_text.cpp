#include "render/report/html_text.hpp"

#include <fmt/format.h>

#include "input/utf8.hpp"
#include "render/layout.hpp"
#include "render/report.hpp"

namespace linewright {

namespace {

/// Marks, embeddings, overrides and isolates of the bidirectional algorithm.
bool turns_direction(char32_t code) {
  return code == 0x061C || code == 0x200E || code == 0x200F || (code >= 0x202A && code <= 0x202E) ||
         (code >= 0x2066 && code <= 0x2069);
}

bool is_control(char32_t code) {
  return code < 0x20 || (code >= 0x7F && code < 0xA0);
}

void append_character(std::string& safe, std::string_view character, char32_t code) {
  switch (code) {
    case U'&':
      safe += "&amp;";
      return;
    case U'<':
      safe += "&lt;";
      return;
    case U'>':
      safe += "&gt;";
      return;
    case U'"':
      safe += "&quot;";
      return;
    case U'\'':
      safe += "&#39;";
      return;
    default:
      break;
  }
  if (turns_direction(code))
    safe += fmt::format("[U+{:04X}]", static_cast<unsigned>(code));
  else if (is_control(code) && code != U'\n')
    safe += "\uFFFD";
  else
    safe += character;
}

std::string_view shape_name(Verdict verdict) {
  return verdict_word(verdict);
}

}  // namespace

std::string escaped_lines(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t length = utf8_length(text, i);
    if (length == 0) {
      safe += "\uFFFD";
      ++i;
      continue;
    }
    append_character(safe, text.substr(i, length), code_point(text, i, length));
    i += length;
  }
  return safe;
}

std::string escaped(std::string_view text) {
  return escaped_lines(one_line(text));
}

std::string element(std::string_view tag, std::string_view css_class, std::string_view text) {
  if (css_class.empty()) return fmt::format("<{0}>{1}</{0}>", tag, escaped(text));
  return fmt::format("<{0} class=\"{1}\">{2}</{0}>", tag, css_class, escaped(text));
}

std::string verdict_badge(Verdict verdict) {
  return fmt::format(
      "<span class=\"badge {0}\"><svg class=\"mark\" viewBox=\"-8 -8 16 16\" aria-hidden=\"true\">"
      "<use href=\"#mark-{0}\"/></svg>{0}</span>",
      shape_name(verdict));
}

std::string verdict_mark(Verdict verdict, double x, double y, double size) {
  return fmt::format(
      "<use href=\"#mark-{0}\" class=\"{0}\" transform=\"translate({1:.1f} {2:.1f}) "
      "scale({3:.3g})\"/>",
      shape_name(verdict), x, y, size / 16);
}

std::string verdict_shapes() {
  return "<svg class=\"shapes\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs>"
         "<path id=\"mark-fail\" d=\"M-7-4.5-4.5-7 0-2.5 4.5-7 7-4.5 2.5 0 7 4.5 4.5 7 0 2.5-4.5 "
         "7-7 4.5-2.5 0Z\"/>"
         "<path id=\"mark-unknown\" fill-rule=\"evenodd\" "
         "d=\"M-7-7H7V7H-7ZM-4-4V4H4V-4Z\"/>"
         "<path id=\"mark-warn\" d=\"M0-7.5 8 7H-8Z\"/>"
         "<path id=\"mark-waived\" fill-rule=\"evenodd\" "
         "d=\"M0-8 8 0 0 8-8 0ZM0-4-4 0 0 4 4 0Z\"/>"
         "<circle id=\"mark-pass\" r=\"5.5\"/>"
         "</defs></svg>\n";
}

}  // namespace linewright
