// Writes the manual page and the completions into a folder, when the program is built.

#include <fstream>
#include <iostream>
#include <string>

#include "commands/shell/shell_pages.hpp"

int main(int argc, char** argv) {
  using namespace linewright;
  if (argc != 3) {
    std::cerr << "usage: shell-pages FOLDER DATE\n";
    return 2;
  }
  const std::string folder = std::string(argv[1]) + "/";
  const std::vector<ShellCommand> commands = shell_commands();
  std::ofstream(folder + "linewright.1") << manual_page(commands, argv[2]);
  std::ofstream(folder + "linewright.bash") << bash_completion(commands);
  std::ofstream(folder + "_linewright") << zsh_completion(commands);
  std::ofstream(folder + "linewright.fish") << fish_completion(commands);
  return 0;
}
