#pragma once
// A tree as the text of a project file.

#include <string>

#include "input/yaml_document.hpp"

namespace linewright {

/// One map, its keys in their order; what fits on a line stands on one. Notes become comments.
std::string yaml_text_of(const YamlNode& map);

}  // namespace linewright
