#include <fmt/format.h>
#include <fmt/ranges.h>

#include "commands/shell/shell_pages.hpp"

namespace linewright {

namespace {

/// Within single quotes of a shell.
std::string in_quotes(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (c == '\'')
      safe += "'\\''";
    else
      safe += c;
  }
  return "'" + safe + "'";
}

std::string names_of(const std::vector<ShellCommand>& commands) {
  std::string names;
  for (const ShellCommand& command : commands) names += (names.empty() ? "" : " ") + command.name;
  return names;
}

/// Zsh takes a colon and brackets in a description for its own.
std::string zsh_words(std::string_view text) {
  std::string safe;
  for (const char c : text) {
    if (c == ':' || c == '[' || c == ']' || c == '\\') safe += '\\';
    safe += c;
  }
  return safe;
}

std::string zsh_option(const ShellOption& option) {
  std::string words = fmt::format("{}[{}]", option.name, zsh_words(option.says));
  if (!option.choices.empty())
    words += fmt::format(":value:({})", fmt::join(option.choices, " "));
  else if (option.value == "FILE")
    words += ":file:_files";
  else if (!option.value.empty())
    words += ":" + zsh_words(option.value) + ": ";
  return in_quotes(words);
}

}  // namespace

std::string bash_completion(const std::vector<ShellCommand>& commands) {
  std::string script = fmt::format(
      "# bash completion of linewright\n"
      "_linewright() {{\n"
      "  local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD - 1]}}\n"
      "  if ((COMP_CWORD == 1)); then\n"
      "    mapfile -t COMPREPLY < <(compgen -W {} -- \"$word\")\n"
      "    return\n"
      "  fi\n"
      "  local options=\n"
      "  case ${{COMP_WORDS[1]}} in\n",
      in_quotes(names_of(commands) + " --help --version"));
  for (const ShellCommand& command : commands) {
    script += fmt::format("    {})\n", command.name);
    std::string options;
    std::string choices;
    for (const ShellOption& option : command.options) {
      options += (options.empty() ? "" : " ") + option.name;
      if (!option.choices.empty())
        choices += fmt::format(
            "        {})\n          mapfile -t COMPREPLY < <(compgen -W {} -- \"$word\")\n"
            "          return\n          ;;\n",
            option.name, in_quotes(fmt::format("{}", fmt::join(option.choices, " "))));
    }
    if (!choices.empty()) script += "      case $before in\n" + choices + "      esac\n";
    script += fmt::format("      options={}\n      ;;\n", in_quotes(options));
  }
  return script +
         "  esac\n"
         "  if [[ $word == -* ]]; then\n"
         "    mapfile -t COMPREPLY < <(compgen -W \"$options\" -- \"$word\")\n"
         "  else\n"
         "    compopt -o filenames\n"
         "    mapfile -t COMPREPLY < <(compgen -f -- \"$word\")\n"
         "  fi\n"
         "}\n"
         "complete -F _linewright linewright\n";
}

std::string zsh_completion(const std::vector<ShellCommand>& commands) {
  std::string script =
      "#compdef linewright\n"
      "local -a commands\n"
      "commands=(\n";
  for (const ShellCommand& command : commands)
    script += "  " + in_quotes(command.name + ":" + zsh_words(command.purpose)) + "\n";
  script +=
      ")\n"
      "if (( CURRENT == 2 )); then\n"
      "  _describe command commands\n"
      "  return\n"
      "fi\n"
      "case $words[2] in\n";
  for (const ShellCommand& command : commands) {
    script += fmt::format("  {})\n    _arguments '1: :' \\\n", command.name);
    for (const ShellOption& option : command.options)
      script += "      " + zsh_option(option) + " \\\n";
    script += "      '*:file:_files'\n    ;;\n";
  }
  return script + "esac\n";
}

std::string fish_completion(const std::vector<ShellCommand>& commands) {
  std::string script = "# fish completion of linewright\n";
  for (const ShellCommand& command : commands) {
    script += fmt::format("complete -c linewright -n __fish_use_subcommand -a {} -d {}\n",
                          command.name, in_quotes(command.purpose));
    for (const ShellOption& option : command.options) {
      script += fmt::format("complete -c linewright -n {} -l {} -d {}",
                            in_quotes("__fish_seen_subcommand_from " + command.name),
                            option.name.substr(2), in_quotes(option.says));
      if (!option.choices.empty())
        script +=
            fmt::format(" -x -a {}", in_quotes(fmt::format("{}", fmt::join(option.choices, " "))));
      else if (!option.value.empty())
        script += option.value == "FILE" ? " -r" : " -x";
      script += "\n";
    }
  }
  return script;
}

}  // namespace linewright
