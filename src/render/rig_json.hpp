#pragma once

#include <string>

#include "planning/rig.hpp"

namespace linewright {

/// The rig of the project's cables as JSON, in inches, pounds-force and degrees Fahrenheit. What is
/// not known is null, and named under "missing"; null, too, are figures of a cable that is rigged
/// or loaded over its breaking strength.
std::string rig_json(const Rig& rig);

}  // namespace linewright
