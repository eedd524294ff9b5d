#pragma once

#include <string>

#include "model/line.hpp"

namespace linewright {

/// {"linewright", "lines": [...], "clamps": [...]}, every value with its source and mark; null
/// where a value is not known.
std::string catalogue_json(const Catalogue& catalogue);

}  // namespace linewright
