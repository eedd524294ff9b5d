#include "input/derive/frame_plane.hpp"

#include <cmath>

#include "input/derive/quiet_values.hpp"

namespace linewright {

namespace {

std::optional<DrawnPlane> slanted(const YamlNode& plane, BareLength bare) {
  const auto point = quiet_place(plane.find("point"), bare);
  const auto normal = quiet_direction(plane.find("normal"));
  const auto up = quiet_direction(plane.find("up"));
  if (!point || !normal || !up || norm(cross(*up, *normal)) == 0) return std::nullopt;
  return plane_through(*point, *normal, *up);
}

}  // namespace

std::optional<DrawnPlane> frame_plane(const YamlNode& frame, BareLength bare) {
  if (const auto station = quiet_length_in(frame, "station", bare)) return at_station(*station);
  if (const auto line = quiet_length_in(frame, "buttock_line", bare)) return at_buttock_line(*line);
  if (const auto line = quiet_length_in(frame, "waterline", bare)) return at_waterline(*line);
  const YamlNode* plane = frame.find("plane");
  return plane != nullptr ? slanted(*plane, bare) : std::nullopt;
}

PlaneSide plane_side(const DrawnPlane& plane) {
  const auto is_bl = [](Vec3 direction) { return std::abs(std::abs(direction.y) - 1) < 1e-9; };
  if (std::abs(plane.origin.y) > on_middle_in) return PlaneSide::neither;
  if (is_bl(plane.across)) return PlaneSide::first;
  return is_bl(plane.up) ? PlaneSide::second : PlaneSide::neither;
}

}  // namespace linewright
