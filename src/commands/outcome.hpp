#pragma once
// What a command comes to. Commands write nothing themselves: a result is whole before any of it
// is shown.

#include <optional>
#include <string>

#include "system/whole_file.hpp"

namespace linewright {

enum class ExitCode {
  nothing_failed = 0,
  failed = 1,  ///< a fail or an unknown; with --strict also a warning
  bad_input = 2,
  internal_error = 3,
};

struct Outcome {
  ExitCode code = ExitCode::nothing_failed;
  std::string result;  ///< for stdout or --output; empty for none
  std::string errors;  ///< for stderr, whole lines
  /// A new file that belongs to the result: both are written, or neither.
  std::optional<NewFile> beside = {};
  bool binary = false;  ///< bytes that no terminal can show
};

/// Bad input or usage: "linewright: error: MESSAGE".
Outcome refusal(const std::string& message);

/// `write_whole_file`, for an option that goes with --force: what went wrong names it where it
/// mends that.
std::string write_output_file(const NewFile& file, bool force);

}  // namespace linewright
