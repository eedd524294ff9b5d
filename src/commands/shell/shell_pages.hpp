#pragma once
// What an installed program brings along for the shell: its manual page and what completes its
// words. All are written from the list of commands.

#include <string>
#include <string_view>
#include <vector>

namespace linewright {

/// An option as its command declares it.
struct ShellOption {
  std::string name;                  ///< "--format"
  std::string value;                 ///< "text|json"; empty for a flag
  std::vector<std::string> choices;  ///< of the value, where it is one of a few
  std::string says;
};

struct ShellCommand {
  std::string name;
  std::string purpose;
  std::string example;
  std::string words;  ///< "PROJECT", "A [B]"
  std::vector<ShellOption> options;
};

std::vector<ShellCommand> shell_commands();

/// In roff, for section 1 of the manual. `date`: "2026-11-28".
std::string manual_page(const std::vector<ShellCommand>& commands, std::string_view date);

std::string bash_completion(const std::vector<ShellCommand>& commands);
std::string zsh_completion(const std::vector<ShellCommand>& commands);
std::string fish_completion(const std::vector<ShellCommand>& commands);

}  // namespace linewright
