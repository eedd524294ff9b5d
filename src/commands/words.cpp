#include "commands/words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "commands/known_name.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

std::string listed(const std::vector<std::string>& words) {
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : ", ") + word;
  return text;
}

/// Empty where `written` is one of the option's words.
std::string wrong_word(const std::string& option, const std::string& written,
                       const std::vector<std::string>& words) {
  if (std::find(words.begin(), words.end(), written) != words.end()) return {};
  return with_suggestion(
      fmt::format("{} takes {}, not '{}'", option, listed(words), one_line(written)), written,
      words);
}

bool wants_colour(const std::string& flag, const ColourSurroundings& surroundings) {
  if (flag != "auto") return flag == "always";
  return surroundings.terminal && !surroundings.refused;
}

}  // namespace

Expected<ResultForm, std::string> read_form(const Words& words,
                                            const std::vector<std::string>& formats,
                                            const ColourSurroundings& surroundings) {
  const std::string& format = words.format.empty() ? formats.front() : words.format;
  for (const std::string& wrong : {wrong_word("--format", format, formats),
                                   wrong_word("--color", words.color, {"auto", "always", "never"}),
                                   wrong_word("--units", words.units, {"in", "fraction", "mm"}),
                                   wrong_word("--by", words.by, {"gravity", "route"})})
    if (!wrong.empty()) return wrong;
  ResultForm form;
  if (format == "json" || format == "jsonl") form.format = Format::json;
  if (format == "csv") form.format = Format::csv;
  if (format == "svg") form.format = Format::svg;
  if (format == "sarif") form.format = Format::sarif;
  if (words.units == "mm") form.style.phrasing.unit = LengthUnit::millimetre;
  if (words.units == "fraction") form.style.phrasing.unit = LengthUnit::inch_fraction;
  form.style.colour = wants_colour(words.color, surroundings);
  form.style.verbose = words.verbose;
  form.style.quiet = words.quiet;
  form.style.by_route = words.by == "route";
  return form;
}

std::string unknown_option(const std::vector<std::string>& arguments,
                           const std::vector<std::string>& options) {
  for (const std::string& argument : arguments) {
    if (argument == "--") break;
    if (argument.size() < 2 || argument[0] != '-') continue;
    if (argument[1] >= '0' && argument[1] <= '9') continue;  // a negative number
    const std::string name = argument.substr(0, argument.find('='));
    if (std::find(options.begin(), options.end(), name) != options.end()) continue;
    return with_suggestion(fmt::format("unknown option '{}'", one_line(name)), name, options);
  }
  return {};
}

}  // namespace linewright
