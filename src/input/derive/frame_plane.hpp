#pragma once
// The plane that a frame's web lies in, as its map says.

#include <optional>

#include "input/quantity.hpp"
#include "input/yaml_document.hpp"
#include "model/vector.hpp"

namespace linewright {

struct FramePlane {
  Vec3 origin;
  Vec3 first;   ///< direction of the first coordinate of its outline
  Vec3 second;  ///< direction of the second
  Vec3 normal() const { return cross(first, second); }
  Vec3 at(Vec2 place) const { return origin + first * place.u + second * place.v; }
  Vec2 seen(Vec3 place) const { return {dot(place - origin, first), dot(place - origin, second)}; }
};

/// Nothing where the map does not say, or not in a way that can be read.
std::optional<FramePlane> frame_plane(const YamlNode& frame, BareLength bare);

}  // namespace linewright
