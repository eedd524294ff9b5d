#include "lines/motion/end_sweep.hpp"

namespace linewright {

namespace {

/// Nothing shorter than this reaches past the drawn end.
constexpr double least_past_in = 1e-6;

}  // namespace

std::optional<Stretch> beyond_drawn_end(const PreparedRoute& route, RouteEnd end) {
  const std::optional<EndWay> way = end_way(route, end, end_places_apart_in);
  if (!way) return std::nullopt;
  const Node& node = end == RouteEnd::to ? *route.to : *route.from;
  const double along = end == RouteEnd::to ? route.length_in() : 0;
  const double drawn = distance(way->start, node.at);
  const Vec3 leg = (node.at - way->start) / drawn;
  Stretch swept;
  swept.route = &route;
  swept.start_in = swept.end_in = along;
  swept.swings_with = &node;
  swept.thickest_radius_in = route.thickest_radius_in();
  swept.envelope.start_in = end == RouteEnd::to ? along - 1 : 0;
  swept.envelope.end_in = swept.envelope.start_in + 1;
  swept.envelope.play_first_in = swept.envelope.play_last_in = way->stray_in;
  std::vector<PathChord> chords;
  for (const Vec3 place : way->places) {
    const double seen = dot(place - way->start, leg);
    if (seen < drawn + least_past_in) continue;
    chords.push_back({between(way->start, place, drawn / seen), place, along, along});
  }
  if (chords.empty()) return std::nullopt;
  take_chords(swept, std::move(chords));
  return swept;
}

}  // namespace linewright
