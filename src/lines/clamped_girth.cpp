#include "lines/clamped_girth.hpp"

#include <algorithm>

#include "geometry/plane/packing.hpp"

namespace linewright {

namespace {

std::optional<double> own_girth_in(const PreparedRoute& route, double distance_in) {
  if (const Sleeve* sleeve = route.sleeve_at(distance_in)) return sleeve->outside_in;
  return route.line->outside_diameter_in;
}

bool is_tied_at(const TiedBundle& bundle, const PreparedRoute& route, double distance_in) {
  return std::any_of(bundle.members.begin(), bundle.members.end(), [&](const TiedMember& member) {
    return member.route == &route && distance_in >= member.low_in && distance_in <= member.high_in;
  });
}

}  // namespace

std::optional<double> clamped_girth_in(const PreparedRoute& route, double distance_in,
                                       const TiedLines& tied) {
  for (const TiedBundle& bundle : tied.bundles()) {
    if (!is_tied_at(bundle, route, distance_in)) continue;
    std::vector<double> diameters;
    for (const TiedMember& member : bundle.members)
      diameters.push_back(member.route->line->outside_diameter_in);
    return packed_diameter(std::move(diameters));
  }
  return own_girth_in(route, distance_in);
}

}  // namespace linewright
