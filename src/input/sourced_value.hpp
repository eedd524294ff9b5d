#pragma once
// Values that rest on a source, in entries of the catalogue and of a project.

#include <optional>

#include "input/field_reader.hpp"
#include "model/source.hpp"

namespace linewright {

/// The `source` of an entry or of a value in it, with its `mark` where the entry is built in.
Source read_source(FieldReader& fields, bool built_in, ValueContext& context);

/// A number under `key` that stands in `node`, with its source: the entry's `own` unless a built-in
/// value states another. Nothing after some errors.
std::optional<SourcedValue> read_sourced_value(FieldReader& fields, const KeySpec& key,
                                               const YamlNode& node, const Source& own,
                                               bool built_in, ValueContext& context);

}  // namespace linewright
