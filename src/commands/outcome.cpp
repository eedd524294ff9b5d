#include "commands/outcome.hpp"

namespace linewright {

Outcome refusal(const std::string& message) {
  return {ExitCode::bad_input, "", "linewright: error: " + message + "\n"};
}

}  // namespace linewright
