#pragma once
// An input error as a person reads it in a terminal or an editor jumps to it.

#include <string>

#include "input/diagnostic.hpp"

namespace linewright {

/// Lines, each ended by a newline:
///
///     static.yaml:14:9: error: expected a length …, found a force: '30 lbf'
///         bend: 30 lbf
///               ^
///     help: did you mean 'clearance'?
///
/// A file-level error (line 0) shows neither place nor source line. Tabs are expanded, a source
/// line over about 100 characters is cut around the column, and control characters and bytes that
/// are not UTF-8 are shown as U+FFFD. `path_prefix` is put before the file's name as it is.
std::string diagnostic_text(const Diagnostic& diagnostic, const std::string& path_prefix);

}  // namespace linewright
