#pragma once

#include <string>
#include <vector>

#include "render/keys_text.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// A manual as JSON: "rule" where there is one, and "keys", one for each map that has the key,
/// where there are any.
std::string manual_json(const Rule* rule, const std::vector<KeyPlace>& places);

}  // namespace linewright
