#pragma once
// What holds for the whole project: its name, tolerance, temperatures, loads, attitudes.

#include "input/keys/project_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

using ProjectReader = MapReader<project_map>;

/// Reads what only the project file itself says. What is left out of `build_tolerance`,
/// `temperature` and `load_factor` is taken as usual and said in the project's assumptions.
void read_settings(ProjectReader& fields, ReadContext& context);

/// Adds one item of an `attitudes` section.
void read_attitude(const YamlNode& node, ReadContext& context);

/// The file's `units`: inches where it does not say.
BareLength read_units(ProjectReader& fields);

}  // namespace linewright
