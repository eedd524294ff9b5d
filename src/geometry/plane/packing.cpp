#include "geometry/plane/packing.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

#include "model/vector.hpp"

namespace linewright {

namespace {

constexpr double touching = 1e-9;

struct Disc {
  Vec2 middle;
  double radius = 0;
};

/// Places whose distances from two points are given: two, one or none.
std::vector<Vec2> meets(Vec2 a, double from_a, Vec2 b, double from_b) {
  const double apart = distance(a, b);
  if (apart <= touching || apart > from_a + from_b + touching ||
      apart < std::abs(from_a - from_b) - touching)
    return {};
  const double along = (apart * apart + from_a * from_a - from_b * from_b) / (2 * apart);
  const double off = std::sqrt(std::max(0.0, from_a * from_a - along * along));
  const Vec2 way = (b - a) * (1 / apart);
  const Vec2 foot = a + way * along;
  const Vec2 side{-way.v, way.u};
  return {foot + side * off, foot - side * off};
}

/// Sets discs one by one within a circle about the origin, each against two others or against one
/// and the circle, and goes back where one has no place.
class Packing {
 public:
  Packing(const std::vector<double>& radii, double within) : radii_(radii), within_(within) {}

  bool fits() {
    if (radii_.front() > within_ + touching) return false;
    double tried = -1;
    for (std::size_t first = 0; first < radii_.size(); ++first) {
      if (radii_[first] == tried) continue;
      tried = radii_[first];
      placed_ = {{{within_ - tried, 0}, tried}};
      used_.assign(radii_.size(), false);
      used_[first] = true;
      if (place_rest()) return true;
    }
    return false;
  }

 private:
  bool is_free(Vec2 middle, double radius) const {
    if (norm(middle) + radius > within_ + touching) return false;
    return std::all_of(placed_.begin(), placed_.end(), [&](const Disc& disc) {
      return distance(disc.middle, middle) >= disc.radius + radius - touching;
    });
  }

  std::vector<Vec2> corners(double radius) const {
    std::vector<Vec2> found;
    const auto add = [&](const std::vector<Vec2>& places) {
      for (const Vec2 place : places)
        if (is_free(place, radius)) found.push_back(place);
    };
    for (std::size_t i = 0; i < placed_.size(); ++i) {
      add(meets({0, 0}, within_ - radius, placed_[i].middle, placed_[i].radius + radius));
      for (std::size_t j = 0; j < i; ++j)
        add(meets(placed_[i].middle, placed_[i].radius + radius, placed_[j].middle,
                  placed_[j].radius + radius));
    }
    // Opposite the first, where two fill the circle and touch at one place.
    add({{radius - within_, 0}});
    return found;
  }

  bool place_rest() {
    if (placed_.size() == radii_.size()) return true;
    const bool in_full = radii_.size() <= most_packed_in_full;
    double tried = -1;
    for (std::size_t i = 0; i < radii_.size(); ++i) {
      if (used_[i] || radii_[i] == tried) continue;
      tried = radii_[i];
      used_[i] = true;
      for (const Vec2 place : corners(radii_[i])) {
        placed_.push_back({place, radii_[i]});
        if (--steps_left_ > 0 && place_rest()) return true;
        placed_.pop_back();
      }
      used_[i] = false;
      if (!in_full) break;
    }
    return false;
  }

  const std::vector<double>& radii_;
  double within_;
  std::vector<Disc> placed_;
  std::vector<bool> used_;
  int steps_left_ = 1'000;  ///< places tried; with equal circles most are the same once more
};

}  // namespace

double packing_bound(const std::vector<double>& diameters) {
  double largest = 0, second = 0, squares = 0;
  for (const double each : diameters) {
    second = std::max(second, std::min(each, largest));
    largest = std::max(largest, each);
    squares += each * each;
  }
  return std::max(largest + second, std::sqrt(squares));
}

double packed_diameter(std::vector<double> diameters) {
  if (diameters.empty()) return 0;
  std::sort(diameters.begin(), diameters.end(), std::greater<>());
  if (diameters.size() == 1) return diameters.front();
  if (diameters.size() == 2) return diameters[0] + diameters[1];
  std::vector<double> radii;
  for (const double each : diameters) radii.push_back(each / 2);
  double low = packing_bound(diameters) / 2;
  double high = std::accumulate(radii.begin(), radii.end(), 0.0);
  while (high - low > 0.00025 * diameters.front()) {
    const double middle = (low + high) / 2;
    (Packing(radii, middle).fits() ? high : low) = middle;
  }
  return 2 * high;
}

}  // namespace linewright
