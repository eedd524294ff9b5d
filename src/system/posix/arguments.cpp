#include "system/arguments.hpp"

namespace linewright {

std::vector<std::string> program_arguments(int argc, const char* const* argv) {
  return {argv, argv + argc};
}

}  // namespace linewright
