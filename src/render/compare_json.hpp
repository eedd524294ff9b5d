#pragma once

#include <string>

#include "render/comparison.hpp"

namespace linewright {

/// {"linewright", "a": {"path", "project", "summary", "set", "assumptions"}, "b" (the same),
/// "worse", "changes" (as in `watch`), "routes": [{"name", "a": {"line", "length_in",
/// "cut_length_in", "volume_in3", "mass_lb"} or null, "b"}], "systems": [{"name", "a":
/// {"length_in", "volume_in3"} or null, "b"}]}. `worse`: the second has a fail or an unknown that
/// the first has not.
std::string compare_json(const Comparison& comparison);

}  // namespace linewright
