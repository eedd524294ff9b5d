#pragma once
// Where a frame stands: at a station, a buttock line or a waterline, or in a plane of its own.

#include "input/keys/structure_keys.hpp"
#include "input/map_reader.hpp"
#include "input/project_draft.hpp"

namespace linewright {

/// Reads the one of the four keys that `node`, the frame's map, has. None, and more than one, are
/// errors.
DrawnPlane read_frame_plane(const YamlNode& node, MapReader<frame_map>& fields,
                            ReadContext& context);

}  // namespace linewright
