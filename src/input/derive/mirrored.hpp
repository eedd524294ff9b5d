#pragma once
// The mirror image of what a map describes, on the other side of BL 0.

#include <functional>
#include <string>
#include <string_view>

#include "input/key_spec.hpp"
#include "input/yaml_document.hpp"

namespace linewright {

/// Which coordinate of a point in a plane is BL.
enum class PlaneSide { first, second, neither };

/// The name on the other side of what a name stands for.
using TwinName = std::function<std::string(Named kind, const YamlNode& name)>;

/// A copy of the map in which every place lies on the other side of BL 0, and every name that
/// another map gives is that of its twin. Numbers keep their digits. Of a turn about an axis, its
/// image is the same turn about the image of the axis the other way round. `side` is that of the
/// map's own plane points. A slanted plane's image has its normal the other way round, so that what
/// is drawn in it keeps its numbers.
YamlNode mirrored(const YamlNode& node, const MapSpec& map, PlaneSide side,
                  const TwinName& twin_name);

/// The mirror image of one point in a plane.
void mirror_in_plane(YamlNode& point, PlaneSide side);

}  // namespace linewright
