#pragma once
// The edge of the program: words in, exit code out.

#include <ostream>

namespace linewright {

/// Runs one command. Results go to `out` (or to --output), everything else to `err`. Returns 0
/// where nothing failed, 1 for a fail or an unknown, 2 for bad input or usage (output that cannot
/// be written included), 3 for an error of the program itself. Never throws.
int run_command_line(int argc, const char* const* argv, std::ostream& out, std::ostream& err);

}  // namespace linewright
