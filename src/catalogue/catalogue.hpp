#pragma once
// The built-in catalogue: published tables of lines and clamps, embedded as YAML at build time.

#include "model/line.hpp"

namespace linewright {

/// Parses the embedded tables; the same reader serves a project's own `lines`. The result is
/// complete or the program is broken: throws std::logic_error naming the bad entry.
const Catalogue& built_in_catalogue();

}  // namespace linewright
