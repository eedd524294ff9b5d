// What the page's worker calls: a command line in, its outcome out. Files are those of the worker's
// own file system, in memory.

#include <cstddef>
#include <sstream>
#include <string>
#include <vector>

#include "commands/command_line.hpp"

namespace {

/// What the last command printed, until the next one.
struct Printed {
  std::string result;
  std::string errors;
};

Printed& printed() {
  static Printed last;
  return last;
}

}  // namespace

extern "C" {

/// Runs the command line whose words stand in `words`, each ended by a NUL, and returns its exit
/// code.
int linewright_run(const char* words, std::size_t size) {
  std::vector<const char*> arguments{"linewright"};
  for (std::size_t at = 0; at < size; at += std::string(words + at).size() + 1)
    arguments.push_back(words + at);
  std::ostringstream out;
  std::ostringstream err;
  const int code =
      linewright::run_command_line(static_cast<int>(arguments.size()), arguments.data(), out, err);
  printed() = {out.str(), err.str()};
  return code;
}

/// What the last command wrote to standard output, which may hold any byte, and to standard error.
const char* linewright_result() {
  return printed().result.data();
}
std::size_t linewright_result_size() {
  return printed().result.size();
}
const char* linewright_errors() {
  return printed().errors.c_str();
}

}  // extern "C"
