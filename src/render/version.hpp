#pragma once

#include <string_view>

namespace linewright {

/// Version of the program, "0.1.0".
std::string_view version();

/// Version of the JSON forms; keys may be added under one number, never renamed.
inline constexpr int json_format = 1;

/// How it was built: the compiler, and each library with its version, a line each.
std::string_view build_words();

}  // namespace linewright
