#pragma once
// Bytes of a file, read whole and with care.

#include <filesystem>
#include <string>

#include "input/diagnostic.hpp"
#include "model/expected.hpp"

namespace linewright {

/// The bytes of a regular file of at most `largest_file_bytes`, or why not: missing, a folder or
/// device, unreadable, too large. `shown_name` is the name used in the diagnostic.
Expected<std::string, Diagnostic> read_text_file(const std::filesystem::path& path,
                                                 const std::string& shown_name);

}  // namespace linewright
