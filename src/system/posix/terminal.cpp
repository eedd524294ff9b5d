#include "system/terminal.hpp"

#include <unistd.h>

#include <csignal>

namespace linewright {

bool output_is_terminal() {
  return ::isatty(STDOUT_FILENO) == 1;
}

bool errors_are_terminal() {
  return ::isatty(STDERR_FILENO) == 1;
}

void prepare_output() {
  std::signal(SIGPIPE, SIG_IGN);
}

}  // namespace linewright
