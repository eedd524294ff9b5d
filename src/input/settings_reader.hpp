#pragma once
// What holds for the whole project: its name, tolerance, temperatures, loads, attitudes.

#include "input/field_reader.hpp"

namespace linewright {

/// Keys that only the project file itself may have.
inline constexpr std::array<std::string_view, 8> project_keys{
    "name",  "build_tolerance", "temperature", "load_factor",
    "climb", "dual_controls",   "excitation",  "airframe_stiffness"};

/// Reads the project keys. What is left out of `build_tolerance`, `temperature` and `load_factor`
/// is taken as usual and said in the project's assumptions.
void read_settings(FieldReader& fields, ReadContext& context);

/// Adds one item of an `attitudes` section.
void read_attitude(const YamlNode& node, ReadContext& context);

/// The file's `units`: inches where it does not say.
BareLength read_units(FieldReader& fields);

}  // namespace linewright
