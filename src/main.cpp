#include <iostream>

#include "commands/command_line.hpp"
#include "system/terminal.hpp"

int main(int argc, char** argv) {
  linewright::prepare_output();
  return linewright::run_command_line(argc, argv, std::cout, std::cerr);
}
