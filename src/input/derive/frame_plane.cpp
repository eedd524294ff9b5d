#include "input/derive/frame_plane.hpp"

#include "input/derive/quiet_values.hpp"

namespace linewright {

std::optional<FramePlane> frame_plane(const YamlNode& frame, BareLength bare) {
  if (const auto station = quiet_length_in(frame, "station", bare))
    return FramePlane{{*station, 0, 0}, {0, 1, 0}, {0, 0, 1}};
  return std::nullopt;
}

}  // namespace linewright
