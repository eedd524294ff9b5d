#include "lines/cable_travel.hpp"

#include <algorithm>

namespace linewright {

namespace {

/// A route whose tangent everywhere has this much of FS in it, one way, runs fore and aft.
constexpr double fore_and_aft_cosine = 0.1;

bool runs_one_way(const Centreline& centreline, double sense) {
  const auto along = [&](Vec3 direction) { return direction.x * sense > fore_and_aft_cosine; };
  return std::all_of(centreline.pieces().begin(), centreline.pieces().end(),
                     [&](const PathPiece& piece) {
                       return along(piece.direction) &&
                              along(centreline.direction(piece.start_in + piece.length_in));
                     });
}

}  // namespace

std::optional<Movement> movement(const Route& route, const Line& line,
                                 const Centreline& centreline) {
  if (!works_control(line.kind)) return Movement{};
  if (!route.travel) return std::nullopt;
  const Travel& travel = *route.travel;
  if (runs_one_way(centreline, 1)) return Movement{travel.forward_in, travel.aft_in};
  if (runs_one_way(centreline, -1)) return Movement{travel.aft_in, travel.forward_in};
  const double larger = std::max(travel.forward_in, travel.aft_in);
  return Movement{larger, larger};
}

}  // namespace linewright
