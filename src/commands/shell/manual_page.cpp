#include <fmt/format.h>

#include "commands/shell/shell_pages.hpp"
#include "render/version.hpp"

namespace linewright {

namespace {

/// Roff takes a backslash for itself, a line that begins with a point or an apostrophe for a
/// request, and a minus for a hyphen that may be broken.
std::string roff(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (c == '\\')
      safe += "\\e";
    else if (c == '-')
      safe += "\\-";
    else if ((c == '.' || c == '\'') && (safe.empty() || safe.back() == '\n'))
      safe += fmt::format("\\&{}", c);
    else
      safe += c;
  }
  return safe;
}

std::string option_item(const ShellOption& option) {
  std::string head = "\\fB" + roff(option.name) + "\\fR";
  if (!option.value.empty()) head += " \\fI" + roff(option.value) + "\\fR";
  return ".TP\n" + head + "\n" + roff(option.says) + "\n";
}

}  // namespace

std::string manual_page(const std::vector<ShellCommand>& commands, std::string_view date) {
  std::string page = fmt::format(
      ".TH LINEWRIGHT 1 \"{}\" \"linewright {}\" \"User commands\"\n"
      ".SH NAME\nlinewright \\- checks how the lines and control cables of a light aeroplane are "
      "run\n"
      ".SH SYNOPSIS\n.B linewright\n.I COMMAND\n[\\fIWORDS\\fR]\n"
      ".SH DESCRIPTION\n"
      "Reads a project of YAML files that describe the structure of a light aeroplane under\n"
      "construction and the static, pitot and vent lines, control cables and wires in it; judges\n"
      "every bend, span and gap against limits, each with its source; and says what to buy, cut,\n"
      "drill, rig and test. It compares a drawing with stated limits and does not make an "
      "aeroplane\n"
      "airworthy: inspect the lines as built, and follow your local authority.\n"
      ".SH COMMANDS\n",
      date, version());
  for (const ShellCommand& command : commands) {
    page += fmt::format(".SS linewright {} {}\n{}.\n", roff(command.name), roff(command.words),
                        roff(command.purpose));
    for (const ShellOption& option : command.options)
      if (option.name != "--help") page += option_item(option);
    page += fmt::format(".PP\nExample:\n.EX\n{}\n.EE\n", roff(command.example));
  }
  page +=
      ".SH EXIT STATUS\n"
      ".TP\n.B 0\nnothing failed\n.TP\n.B 1\na fail or an unknown; with \\fB\\-\\-strict\\fR also "
      "a "
      "warning\n"
      ".TP\n.B 2\nbad input or usage; nothing was judged\n.TP\n.B 3\nan error of the program "
      "itself\n"
      ".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nwhere set and not empty, verdicts are not coloured\n"
      ".SH FILES\n.TP\n.I project.yaml\nthe project, in the folder that a command is given\n"
      ".SH SEE ALSO\nThe manual of project files and commands: "
      "/usr/share/doc/linewright/manual\n";
  return page;
}

}  // namespace linewright
