#pragma once

#include <string>
#include <vector>

namespace linewright {

/// What the program was called with, its own name first, in UTF-8.
std::vector<std::string> program_arguments(int argc, const char* const* argv);

}  // namespace linewright
