#include <sstream>

#include "commands/command_list.hpp"
#include "commands/shell/shell_pages.hpp"

namespace linewright {

namespace {

std::vector<std::string> parted(const std::string& words, char by) {
  std::vector<std::string> parts;
  std::istringstream stream(words);
  for (std::string part; std::getline(stream, part, by);) parts.push_back(part);
  return parts;
}

ShellOption shell_option(const CLI::Option& option) {
  ShellOption told{"--" + option.get_lnames().front(), {}, {}, option.get_description()};
  if (option.get_type_size() == 0) return told;
  told.value = option.get_type_name();
  if (told.value.find('|') != std::string::npos) told.choices = parted(told.value, '|');
  return told;
}

}  // namespace

std::vector<ShellCommand> shell_commands() {
  CLI::App app;
  Words words;
  declare_all(app, words);
  std::vector<ShellCommand> commands;
  for (const Command& command : all_commands()) {
    const CLI::App* sub = app.get_subcommand(std::string(command.name));
    ShellCommand told{std::string(command.name),
                      std::string(command.purpose),
                      std::string(command.example),
                      {},
                      {}};
    for (const CLI::Option* option : sub->get_options()) {
      if (!option->get_lnames().empty()) {
        told.options.push_back(shell_option(*option));
        continue;
      }
      const std::string word =
          option->get_required() ? option->get_name() : "[" + option->get_name() + "]";
      told.words += (told.words.empty() ? "" : " ") + word;
    }
    commands.push_back(std::move(told));
  }
  return commands;
}

}  // namespace linewright
