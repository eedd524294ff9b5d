#include "render/report/page_frame.hpp"

#include <fmt/format.h>

#include <cstdint>
#include <stdexcept>

#include "render/report/html_text.hpp"

namespace linewright {

namespace {

const EmbeddedPageFile& page_file(std::string_view name) {
  for (const EmbeddedPageFile& file : embedded_page_files())
    if (file.name == name) return file;
  throw std::logic_error("the page's file " + std::string(name) + " is not embedded");
}

unsigned digit(char character) {
  return static_cast<unsigned>(character <= '9' ? character - '0' : character - 'a' + 10);
}

std::string base64_of_hex(std::string_view hex) {
  constexpr std::string_view letters =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string text;
  unsigned held = 0;
  unsigned bits = 0;
  for (const char character : hex) {
    held = (held << 4u) | digit(character);
    bits += 4;
    if (bits < 6) continue;
    bits -= 6;
    text += letters[(held >> bits) & 63u];
  }
  if (bits > 0) text += letters[(held << (6 - bits)) & 63u];
  while (text.size() % 4 != 0) text += '=';
  return text;
}

std::string hash_source(const EmbeddedPageFile& file) {
  return "'sha256-" + base64_of_hex(file.sha256) + "'";
}

}  // namespace

std::string page_document(std::string_view title, std::string_view body, std::string_view data) {
  const EmbeddedPageFile& style = page_file("page.css");
  const EmbeddedPageFile& script = page_file("viewer.js");
  std::string html = fmt::format(
      "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src {}; "
      "style-src {}; base-uri 'none'; form-action 'none'\">\n"
      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
      "<meta name=\"color-scheme\" content=\"light dark\">\n"
      "<meta name=\"referrer\" content=\"no-referrer\">\n"
      "<title>{}</title>\n<style>",
      hash_source(script), hash_source(style), escaped(title));
  html.append(style.text).append("</style>\n</head>\n<body>\n").append(body);
  if (!data.empty()) {
    html.append("<script type=\"application/json\" id=\"scene\">").append(data);
    html.append("</script>\n<script>").append(script.text).append("</script>\n");
  }
  return html + "</body>\n</html>\n";
}

}  // namespace linewright
