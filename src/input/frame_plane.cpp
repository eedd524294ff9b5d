#include "input/frame_plane.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

#include "model/angle.hpp"

namespace linewright {

namespace {

constexpr std::array<std::string_view, 4> place_keys{"station", "buttock_line", "waterline",
                                                     "plane"};

/// `up` nearer to the normal than this is a slip of the pen: what is left of it in the plane would
/// point anywhere.
constexpr double least_up_angle_deg = 5;

DrawnPlane read_plane(const YamlNode& node, ReadContext& context) {
  MapReader<plane_map> fields(node, context);
  const Vec3 point = fields.place("point");
  const Vec3 normal = fields.direction("normal");
  const Vec3 up = fields.direction("up");
  if (!std::isfinite(norm(point) + norm(normal) + norm(up))) return {};
  const double angle_deg = angle_between_rad(normal, up) * degrees_per_radian;
  const double off_deg = std::min(angle_deg, 180 - angle_deg);
  if (off_deg >= least_up_angle_deg) return plane_through(point, normal, up);
  context.error(fields.where_of("up"),
                fmt::format("'up' must lie in the plane, or lean toward it: found it {:.3g} deg "
                            "from the normal, expected at least {:g} deg",
                            off_deg, least_up_angle_deg));
  return {};
}

/// The keys that say where the frame stands, in the order of the file.
std::vector<const YamlEntry*> places_of(const YamlNode& node) {
  std::vector<const YamlEntry*> found;
  for (const YamlEntry& entry : node.entries)
    if (std::find(place_keys.begin(), place_keys.end(), entry.key) != place_keys.end())
      found.push_back(&entry);
  return found;
}

}  // namespace

DrawnPlane read_frame_plane(const YamlNode& node, MapReader<frame_map>& fields,
                            ReadContext& context) {
  const auto places = places_of(node);
  const bool says_nowhere = fields.lacks("station") && fields.lacks("buttock_line") &&
                            fields.lacks("waterline") && fields.lacks("plane");
  if (says_nowhere)
    context.error(node.where,
                  "a frame needs a 'station', a 'buttock_line', a 'waterline' or a 'plane'");
  for (std::size_t i = 1; i < places.size(); ++i)
    context.error(places[i]->key_where,
                  fmt::format("a frame stands in one place: found '{}' and '{}'; keep one",
                              places[0]->key, places[i]->key));
  if (places.size() != 1) return {};
  const std::string_view key = places[0]->key;
  if (key == "station") return at_station(fields.number("station"));
  if (key == "buttock_line") return at_buttock_line(fields.number("buttock_line"));
  if (key == "waterline") return at_waterline(fields.number("waterline"));
  return read_plane(places[0]->value, context);
}

}  // namespace linewright
