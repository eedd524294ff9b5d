#pragma once
// The program that the tests run.

#include <cstdlib>
#include <string>

namespace linewright::test {

/// Its path: LINEWRIGHT_PROGRAM where that is set, else the one that was built together with the
/// tests.
inline std::string built_program() {
  const char* told = std::getenv("LINEWRIGHT_PROGRAM");
  return told == nullptr ? LINEWRIGHT_EXECUTABLE : told;
}

}  // namespace linewright::test
