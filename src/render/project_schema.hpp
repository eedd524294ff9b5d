#pragma once

#include <string>

namespace linewright {

/// The JSON Schema (draft 7) of project files and of what they include, from the tables of keys: a
/// definition a map. What depends on other keys or files it leaves to the loader, and it refuses
/// nothing that the loader takes.
std::string project_schema();

}  // namespace linewright
