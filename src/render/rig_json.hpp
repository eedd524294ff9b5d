#pragma once

#include <string>

#include "planning/rig.hpp"

namespace linewright {

/// The rig of the project's cables as JSON, in inches, pounds-force and degrees Fahrenheit. What is
/// not known is null, and named under "missing".
std::string rig_json(const Rig& rig);

}  // namespace linewright
