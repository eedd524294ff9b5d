#include <csignal>
#include <iostream>

#include "commands/command_line.hpp"

int main(int argc, char** argv) {
  // A reader that goes away is then an error of the output stream, reported like any other.
  std::signal(SIGPIPE, SIG_IGN);
  return linewright::run_command_line(argc, argv, std::cout, std::cerr);
}
