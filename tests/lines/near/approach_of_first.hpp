#pragma once
// The nearest approach of the first route of a project to its structure or to its second route.

#include <gtest/gtest.h>

#include <optional>

#include "lines/near/nearest_lines.hpp"
#include "lines/near/nearest_structure.hpp"
#include "lines/route_project.hpp"
#include "physics/deflection.hpp"

namespace linewright {

/// Far enough that nothing in a test is beyond it.
inline constexpr double everything_in = 1000;

inline bool all(const Obstacle&, double) {
  return true;
}
inline int by_part(const Obstacle& obstacle) {
  return obstacle.part;
}

inline ReachEnvelope slack_envelope(double length_in, double slack_fraction) {
  ReachEnvelope envelope;
  envelope.end_in = length_in;
  envelope.surplus_in = slack_fraction * length_in;
  envelope.bow_in = slack_string_bow_in(length_in, envelope.surplus_in);
  envelope.bound_half_width_in =
      ellipsoid_half_width_in(length_in, length_in + envelope.surplus_in);
  return envelope;
}

/// The least margin of the first route over all its length to the first part.
inline Approach to_structure(const PreparedProject& prepared, Reach reach,
                             const ReachEnvelope& envelope = {}) {
  const PreparedRoute& route = prepared.routes.at(0);
  const Stretch stretch = make_stretch(route, 0, route.length_in(), envelope);
  const auto found =
      nearest_structure(stretch, reach, prepared.obstacles, everything_in, by_part, all);
  EXPECT_EQ(found.size(), 1u);
  return found.empty() ? Approach{} : found.begin()->second;
}

inline std::optional<Approach> between_lines(const PreparedProject& prepared, Reach reach,
                                             const ReachEnvelope& first = {},
                                             const ReachEnvelope& second = {},
                                             double horizon_in = everything_in) {
  const PreparedRoute& one = prepared.routes.at(0);
  const PreparedRoute& other = prepared.routes.at(1);
  return nearest_lines(make_stretch(one, 0, one.length_in(), first),
                       make_stretch(other, 0, other.length_in(), second), reach, horizon_in,
                       [](double, double) { return true; });
}

}  // namespace linewright
