#include <iostream>
#include <string>
#include <vector>

#include "commands/command_line.hpp"
#include "system/arguments.hpp"
#include "system/terminal.hpp"

int main(int argc, char** argv) {
  linewright::prepare_output();
  const std::vector<std::string> words = linewright::program_arguments(argc, argv);
  std::vector<const char*> arguments;
  for (const std::string& word : words) arguments.push_back(word.c_str());
  return linewright::run_command_line(static_cast<int>(arguments.size()), arguments.data(),
                                      std::cout, std::cerr);
}
