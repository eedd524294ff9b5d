#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/plane/joined_boundary.hpp"
#include "geometry/plane/polygon.hpp"
#include "geometry/plane/turn.hpp"

// Ear clipping. Each hole is first joined to the outline by a bridge, a cut walked twice, so that
// one closed boundary remains; then corners whose triangle holds no other corner come off one by
// one. Corners that coincide (the ends of bridges) or lie in line are ordinary here, so every
// decision rests on a side test that says "neither" wherever rounding could have decided.

namespace linewright {
namespace {

using Boundary = std::vector<Vec2>;
using Triangle2 = std::array<Vec2, 3>;

/// Corners by where they are, in the squares of a grid: about one to a square.
class CornerGrid {
 public:
  explicit CornerGrid(const Boundary& boundary) {
    low_ = high_ = boundary.front();
    for (const Vec2 corner : boundary) {
      low_ = {std::min(low_.u, corner.u), std::min(low_.v, corner.v)};
      high_ = {std::max(high_.u, corner.u), std::max(high_.v, corner.v)};
    }
    side_ = static_cast<std::size_t>(std::sqrt(static_cast<double>(boundary.size()))) + 1;
    squares_.resize(side_ * side_);
  }

  void add(std::size_t corner, Vec2 at) {
    squares_[row(at.v) * side_ + column(at.u)].push_back(corner);
  }

  /// True where `meets` is true of a corner in a square that the box from `low` to `high` touches;
  /// those of which `is_outdated` is true are dropped on the way.
  template <typename IsOutdated, typename Meets>
  bool any_in(Vec2 low, Vec2 high, const IsOutdated& is_outdated, const Meets& meets) {
    for (std::size_t v = row(low.v); v <= row(high.v); ++v)
      for (std::size_t u = column(low.u); u <= column(high.u); ++u) {
        std::vector<std::size_t>& corners = squares_[v * side_ + u];
        std::erase_if(corners, is_outdated);
        if (std::any_of(corners.begin(), corners.end(), meets)) return true;
      }
    return false;
  }

 private:
  std::size_t place(double at, double low, double high) const {
    if (!(high > low)) return 0;
    const double share = std::clamp((at - low) / (high - low), 0.0, 1.0);
    return std::min(side_ - 1, static_cast<std::size_t>(share * static_cast<double>(side_)));
  }
  std::size_t column(double u) const { return place(u, low_.u, high_.u); }
  std::size_t row(double v) const { return place(v, low_.v, high_.v); }

  Vec2 low_;
  Vec2 high_;
  std::size_t side_ = 1;
  std::vector<std::vector<std::size_t>> squares_;
};

class EarClipper {
 public:
  explicit EarClipper(const Boundary& boundary) : hollow_(boundary) {
    const std::size_t count = boundary.size();
    for (std::size_t i = 0; i < count; ++i)
      corners_.push_back({boundary[i], (i + count - 1) % count, (i + 1) % count, 0});
    for (std::size_t i = 0; i < count; ++i) turn(i);
    for (std::size_t i = 0; i < count; ++i)
      if (corners_[i].turn <= 0) hollow_.add(i, corners_[i].at);
    left_ = count;
  }

  std::vector<Triangle2> clip() {
    std::size_t at = 0;
    std::size_t refused = 0;
    while (left_ >= 3) {
      if (corners_[at].turn > 0 && clear(at, Contact::blocks)) {
        at = corners_[cut(at)].next;  // skips one corner, which keeps triangles from fanning
        refused = 0;
      } else if (++refused > left_) {
        if (!unstick(at)) break;
        refused = 0;
      } else {
        at = corners_[at].next;
      }
    }
    return std::move(triangles_);
  }

 private:
  struct Corner {
    Vec2 at;
    std::size_t previous;
    std::size_t next;
    int turn;  ///< side(): above zero where the boundary turns left; `gone` once cut off
  };
  static constexpr int gone = 2;
  enum class Contact { blocks, passes };

  void turn(std::size_t at) {
    Corner& corner = corners_[at];
    corner.turn = side(corners_[corner.previous].at, corner.at, corners_[corner.next].at);
  }

  Triangle2 triangle(std::size_t at) const {
    const Corner& corner = corners_[at];
    return {corners_[corner.previous].at, corner.at, corners_[corner.next].at};
  }

  /// True when no other corner lies in the ear. Only corners that do not turn left can be the
  /// deepest intruder. `contact` says whether one on the ear's edge counts.
  bool clear(std::size_t at, Contact contact) {
    const auto [a, b, c] = triangle(at);
    const double low_u = std::min({a.u, b.u, c.u}), high_u = std::max({a.u, b.u, c.u});
    const double low_v = std::min({a.v, b.v, c.v}), high_v = std::max({a.v, b.v, c.v});
    const int least = contact == Contact::blocks ? 0 : 1;
    const auto lies_in = [&, a = a, b = b, c = c](std::size_t other) {
      const Vec2 p = corners_[other].at;
      if (p.u < low_u || p.u > high_u || p.v < low_v || p.v > high_v) return false;
      if (p == a || p == b || p == c) return false;
      return side(a, b, p) >= least && side(b, c, p) >= least && side(c, a, p) >= least;
    };
    const auto is_outdated = [this](std::size_t other) { return corners_[other].turn > 0; };
    return !hollow_.any_in({low_u, low_v}, {high_u, high_v}, is_outdated, lies_in);
  }

  /// Takes the corner off the boundary and returns the one before it.
  std::size_t drop(std::size_t at) {
    const Corner corner = corners_[at];
    corners_[corner.previous].next = corner.next;
    corners_[corner.next].previous = corner.previous;
    corners_[at].turn = gone;
    --left_;
    for (const std::size_t neighbour : {corner.previous, corner.next}) {
      const int before = corners_[neighbour].turn;
      turn(neighbour);
      if (before > 0 && corners_[neighbour].turn <= 0)
        hollow_.add(neighbour, corners_[neighbour].at);
    }
    return corner.previous;
  }

  std::size_t cut(std::size_t at) {
    triangles_.push_back(triangle(at));
    return drop(at);
  }

  /// No plain ear is left: a corner in line with its neighbours comes off without a triangle,
  /// then an ear that others only touch. On a boundary that crosses itself neither may exist; then
  /// any left turn goes, so that clipping always ends.
  bool unstick(std::size_t& at) {
    const auto look = [&](auto&& suits) {
      for (std::size_t seen = 0; seen < left_; ++seen, at = corners_[at].next)
        if (suits(at)) return true;
      return false;
    };
    if (look([this](std::size_t i) { return corners_[i].turn == 0; })) {
      at = drop(at);
      return true;
    }
    const auto turns_left = [this](std::size_t i) { return corners_[i].turn > 0; };
    if (look([&](std::size_t i) { return turns_left(i) && clear(i, Contact::passes); }) ||
        look(turns_left)) {
      at = cut(at);
      return true;
    }
    return false;
  }

  std::vector<Corner> corners_;
  CornerGrid hollow_;  ///< corners that turn right or not at all, some outdated
  std::size_t left_ = 0;
  std::vector<Triangle2> triangles_;
};

}  // namespace

std::vector<std::array<Vec2, 3>> triangulate(const std::vector<Vec2>& outline,
                                             const std::vector<std::vector<Vec2>>& holes) {
  const Boundary boundary = joined_boundary(outline, holes);
  if (boundary.size() < 3) return {};
  return EarClipper(boundary).clip();
}

}  // namespace linewright
