#include "geometry/pulley_wrap.hpp"

#include <cmath>
#include <numbers>

namespace linewright {
namespace {

/// Contacts that move less than this in a step have settled.
constexpr double settled_in = 1e-12;
/// Steps converge with the square of the error in one plane, and more slowly the more the planes of
/// two pulleys differ: far more than any leg near its pulleys' planes takes.
constexpr int most_steps = 500;
/// A neighbour must lie this far outside the groove.
constexpr double outside_by_in = 1e-9;
/// A wrap this little under a whole turn is no wrap, but for rounding.
constexpr double no_wrap_rad = 1e-9;

enum class End { arriving, leaving };

/// Where a leg meets a place: unit vector from a pulley's centre to the contact.
struct Contact {
  Vec3 at;
  Vec3 outward;
};

/// The contact of a leg between a pulley and a point, in the pulley's plane. With m the distance
/// of the point from the axis, u toward it and v = axis × u, the radius to the contact makes the
/// angle γ = acos(r/m) with u: toward v where the cable arrives, away from it where it leaves.
std::optional<Contact> tangent_contact(const WrapCircle& pulley, Vec3 point, End end) {
  Vec3 toward = point - pulley.centre;
  toward = toward - pulley.axis * dot(toward, pulley.axis);
  const double away = norm(toward);
  if (!(away > pulley.radius_in + outside_by_in)) return std::nullopt;
  const Vec3 u = toward / away;
  const Vec3 v = cross(pulley.axis, u);
  const double cosine = pulley.radius_in / away;
  const double sine = std::sqrt((1 - cosine) * (1 + cosine));
  const Vec3 outward = unit(u * cosine + v * (end == End::arriving ? sine : -sine));
  return Contact{pulley.centre + outward * pulley.radius_in, outward};
}

struct Leg {
  Contact first;
  Contact last;
};

/// The leg from one place to the next, each contact tangent to where the other one is.
std::optional<Leg> leg_between(const GivenPlace& from, const GivenPlace& to) {
  Leg leg;
  leg.first.at = from.pulley ? from.pulley->centre : from.corner.at;
  leg.last.at = to.pulley ? to.pulley->centre : to.corner.at;
  for (int step = 0; step < most_steps; ++step) {
    const Leg before = leg;
    if (from.pulley) {
      const auto contact = tangent_contact(*from.pulley, leg.last.at, End::leaving);
      if (!contact) return std::nullopt;
      leg.first = *contact;
    }
    if (to.pulley) {
      const auto contact = tangent_contact(*to.pulley, leg.first.at, End::arriving);
      if (!contact) return std::nullopt;
      leg.last = *contact;
    }
    if (distance(before.first.at, leg.first.at) < settled_in &&
        distance(before.last.at, leg.last.at) < settled_in)
      return leg;
    if (!from.pulley || !to.pulley) return leg;
  }
  return std::nullopt;
}

/// How far the cable wraps from one contact to the next, by the right-hand rule: 0 to a whole turn.
double wrap_rad(Vec3 arriving, Vec3 leaving, Vec3 axis) {
  const double turn = std::atan2(dot(cross(arriving, leaving), axis), dot(arriving, leaving));
  const double wrap = turn < 0 ? turn + 2 * std::numbers::pi : turn;
  return wrap > 2 * std::numbers::pi - no_wrap_rad ? 0 : wrap;
}

/// Where the two legs, drawn on, meet: R / cos(θ/2) from the centre, half way round the wrap.
PathCorner corner_of(const WrapCircle& pulley, Vec3 arriving, double wrap) {
  const double half = wrap / 2;
  const Vec3 ahead = cross(pulley.axis, arriving);
  const Vec3 middle = arriving * std::cos(half) + ahead * std::sin(half);
  return {pulley.centre + middle * (pulley.radius_in / std::cos(half)), pulley.radius_in};
}

/// Gives a pulley up: a sharp corner at its centre.
void give_up(std::vector<GivenPlace>& places, WrappedPath& path, std::size_t index,
             WrapFault fault) {
  path.faults[index] = fault;
  path.corners[index] = places[index].corner = {places[index].pulley->centre, 0};
  places[index].pulley.reset();
}

/// Draws every corner; false where a pulley had to be given up, which changes its neighbours.
bool draw(std::vector<GivenPlace>& places, WrappedPath& path) {
  std::vector<Leg> legs;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const auto leg = leg_between(places[i], places[i + 1]);
    if (!leg) {
      for (const std::size_t end : {i, i + 1})
        if (places[end].pulley) give_up(places, path, end, WrapFault::no_tangent);
      return false;
    }
    legs.push_back(*leg);
  }
  for (std::size_t i = 1; i + 1 < places.size(); ++i) {
    if (!places[i].pulley) continue;
    const Vec3 arriving = legs[i - 1].last.outward;
    const double wrap = wrap_rad(arriving, legs[i].first.outward, places[i].pulley->axis);
    if (wrap > largest_wrap_rad) {
      give_up(places, path, i, WrapFault::half_turn);
      return false;
    }
    path.corners[i] = corner_of(*places[i].pulley, arriving, wrap);
    // Legs far out of a pulley's plane can bring two corners together.
    const bool meets_next = !places[i + 1].pulley &&
                            distance(path.corners[i].at, path.corners[i + 1].at) < outside_by_in;
    if (distance(path.corners[i - 1].at, path.corners[i].at) >= outside_by_in && !meets_next)
      continue;
    give_up(places, path, i, WrapFault::no_tangent);
    return false;
  }
  return true;
}

}  // namespace

WrappedPath wrap_pulleys(const std::vector<GivenPlace>& places) {
  std::vector<GivenPlace> left = places;
  WrappedPath path;
  path.faults.resize(places.size());
  for (const GivenPlace& place : places) path.corners.push_back(place.corner);
  // Each round that does not end gives a pulley up, so there are no more rounds than pulleys.
  while (!draw(left, path)) {
  }
  return path;
}

}  // namespace linewright
