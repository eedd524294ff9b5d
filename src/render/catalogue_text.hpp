#pragma once

#include <string>

#include "model/line.hpp"
#include "render/report.hpp"

namespace linewright {

/// A table of every line, clamp and fitting, each value with a letter that says how far it was
/// checked.
std::string catalogue_text(const Catalogue& catalogue, const TextStyle& style);

/// Everything that is known of each line, clamp and fitting here, with full sources.
std::string catalogue_entries_text(const Catalogue& catalogue, const TextStyle& style);

/// "rigid tube", "plastic tube", "hose", "cable", "wire".
std::string_view line_kind_name(LineKind kind);

}  // namespace linewright
