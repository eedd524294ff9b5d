#include "lines/wall_web.hpp"

#include <cmath>

#include "geometry/structure/wall_place.hpp"

namespace linewright {

namespace {

constexpr double rounding_in = 1e-6;

}  // namespace

double cut_diameter_in(const Wall& wall) {
  return std::get<Circle>(wall.hole().shape).diameter_in;
}

std::optional<double> sheet_between_in(const Wall& first, const Wall& second) {
  if (first.part != second.part ||
      std::abs(first.frame.plane.above(second.middle())) > rounding_in + at_wall_in)
    return std::nullopt;
  return distance(first.middle(), second.middle()) -
         (cut_diameter_in(first) + cut_diameter_in(second)) / 2;
}

}  // namespace linewright
