#pragma once
// The tables of keys of all maps that a project file may have.

#include <span>

#include "input/key_spec.hpp"

namespace linewright {

/// Every map, the project file first, each after a map that has it.
std::span<const MapSpec* const> all_maps();

}  // namespace linewright
