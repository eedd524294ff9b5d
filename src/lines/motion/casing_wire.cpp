#include "lines/motion/casing_wire.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace linewright {

namespace {

/// Where the pin is looked at, and what may lie between: all the way out where it runs straight.
PinWay places_of_pin(const CasingEnd& end) {
  if (auto way = pin_way(end)) return *std::move(way);
  return {true, {end.node->at + end.out * end.most_in}, 0, 0};
}

/// The wire from `from_in` to `to_in` beyond the casing, wherever it goes.
std::optional<Stretch> beyond(const PreparedRoute& route, const CasingEnd& end, const PinWay& way,
                              double from_in, double to_in) {
  const Vec3 mouth = end.node->at;
  Stretch wire;
  wire.route = &route;
  wire.start_in = wire.end_in = end.distance_in;
  wire.swings_with = end.node;
  wire.thickest_radius_in = route.thickest_radius_in();
  wire.envelope.start_in = end.end == RouteEnd::to ? end.distance_in - 1 : 0;
  wire.envelope.end_in = wire.envelope.start_in + 1;
  wire.envelope.play_first_in = wire.envelope.play_last_in = way.stray_in;
  std::vector<PathChord> chords;
  for (const Vec3 pin : way.places) {
    const double length = distance(mouth, pin);
    if (length <= from_in) continue;
    chords.push_back({between(mouth, pin, from_in / length),
                      between(mouth, pin, std::min(to_in, length) / length), end.distance_in,
                      end.distance_in});
  }
  if (chords.empty()) return std::nullopt;
  take_chords(wire, std::move(chords));
  return wire;
}

}  // namespace

std::vector<Stretch> casing_wires(const PreparedRoute& route) {
  std::vector<Stretch> wires;
  const auto ends = casing_ends(route);
  if (!ends) return wires;
  for (const CasingEnd& end : *ends) {
    const PinWay way = places_of_pin(end);
    const double farthest = end.most_in + at_support_in;
    for (const auto& [from_in, to_in] :
         {std::pair{0.0, at_support_in}, std::pair{at_support_in, farthest}})
      if (auto wire = beyond(route, end, way, from_in, to_in)) wires.push_back(*std::move(wire));
  }
  return wires;
}

}  // namespace linewright
