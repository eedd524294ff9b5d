#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "geometry/plane/polygon.hpp"

// Ear clipping. Each hole is first joined to the outline by a bridge, a cut walked twice, so that
// one closed boundary remains; then corners whose triangle holds no other corner come off one by
// one. Corners that coincide (the ends of bridges) or lie in line are ordinary here, so every
// decision rests on a side test that says "neither" wherever rounding could have decided.

namespace linewright {
namespace {

using Boundary = std::vector<Vec2>;
using Triangle2 = std::array<Vec2, 3>;

/// +1 where a, b, c turn left, -1 right, 0 where they are in line as far as doubles can tell.
int side(Vec2 a, Vec2 b, Vec2 c) {
  const double left = (b.u - a.u) * (c.v - a.v);
  const double right = (b.v - a.v) * (c.u - a.u);
  const double doubt =
      8 * std::numeric_limits<double>::epsilon() * (std::abs(left) + std::abs(right));
  if (left - right > doubt) return 1;
  return right - left > doubt ? -1 : 0;
}

double twice_signed_area(const Boundary& boundary) {
  double sum = 0;
  for (std::size_t i = 0; i < boundary.size(); ++i)
    sum += cross(boundary[i] - boundary[0], boundary[(i + 1) % boundary.size()] - boundary[0]);
  return sum;
}

/// Without repeated neighbours, turning anticlockwise or clockwise as asked.
Boundary tidied(const Boundary& corners, bool anticlockwise) {
  Boundary result = corners;
  result.erase(std::unique(result.begin(), result.end()), result.end());
  while (result.size() > 1 && result.front() == result.back()) result.pop_back();
  if ((twice_signed_area(result) > 0) != anticlockwise) std::reverse(result.begin(), result.end());
  return result;
}

std::size_t rightmost(const Boundary& boundary) {
  return static_cast<std::size_t>(
      std::max_element(boundary.begin(), boundary.end(), [](Vec2 a, Vec2 b) { return a.u < b.u; }) -
      boundary.begin());
}

/// True where two segments share a point. An end of one that coincides with an end of the other
/// does not count.
bool blocks(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  if (a == c || a == d || b == c || b == d) return false;
  if (std::max(a.u, b.u) < std::min(c.u, d.u) || std::max(c.u, d.u) < std::min(a.u, b.u) ||
      std::max(a.v, b.v) < std::min(c.v, d.v) || std::max(c.v, d.v) < std::min(a.v, b.v))
    return false;
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0;
}

bool blocked_by(const Boundary& boundary, Vec2 from, Vec2 to) {
  for (std::size_t i = 0; i < boundary.size(); ++i)
    if (blocks(from, to, boundary[i], boundary[(i + 1) % boundary.size()])) return true;
  return false;
}

/// True where `target` lies strictly within the angle that an anticlockwise boundary opens at its
/// corner `at`. Tells apart the copies of a corner that bridges leave.
bool opens_towards(const Boundary& boundary, std::size_t at, Vec2 target) {
  const std::size_t count = boundary.size();
  const Vec2 before = boundary[(at + count - 1) % count];
  const Vec2 after = boundary[(at + 1) % count];
  const bool left_of_arrival = side(before, boundary[at], target) > 0;
  const bool left_of_departure = side(boundary[at], after, target) > 0;
  return side(before, boundary[at], after) > 0 ? left_of_arrival && left_of_departure
                                               : left_of_arrival || left_of_departure;
}

/// The corner of `boundary` nearest to `from` that can be seen from it past the boundary and the
/// holes still to be joined; the boundary's size where there is none.
std::size_t bridge_corner(const Boundary& boundary, Vec2 from, const Boundary* first_hole,
                          const Boundary* last_hole) {
  using Candidate = std::pair<double, std::size_t>;
  std::vector<Candidate> candidates;
  for (std::size_t i = 0; i < boundary.size(); ++i)
    candidates.emplace_back(distance(from, boundary[i]), i);
  std::make_heap(candidates.begin(), candidates.end(), std::greater<>());
  while (!candidates.empty()) {
    std::pop_heap(candidates.begin(), candidates.end(), std::greater<>());
    const std::size_t corner = candidates.back().second;
    candidates.pop_back();
    const Vec2 to = boundary[corner];
    if (!opens_towards(boundary, corner, from) || blocked_by(boundary, from, to)) continue;
    if (std::none_of(first_hole, last_hole,
                     [&](const Boundary& hole) { return blocked_by(hole, from, to); }))
      return corner;
  }
  return boundary.size();
}

/// One boundary for the outline and all holes. Taken from the right, so that a hole's rightmost
/// corner always sees the boundary made so far, whatever holes are left.
Boundary joined(const Boundary& outline, const std::vector<Boundary>& holes) {
  Boundary boundary = tidied(outline, true);
  std::vector<Boundary> open;
  for (const Boundary& hole : holes) {
    Boundary clockwise = tidied(hole, false);
    if (clockwise.size() >= 3) open.push_back(std::move(clockwise));
  }
  std::stable_sort(open.begin(), open.end(), [](const Boundary& a, const Boundary& b) {
    return a[rightmost(a)].u > b[rightmost(b)].u;
  });
  for (const Boundary& hole : open) {
    const std::size_t start = rightmost(hole);
    const std::size_t corner =
        bridge_corner(boundary, hole[start], &hole, open.data() + open.size());
    if (corner == boundary.size()) continue;
    Boundary detour(hole.begin() + static_cast<std::ptrdiff_t>(start), hole.end());
    detour.insert(detour.end(), hole.begin(), hole.begin() + static_cast<std::ptrdiff_t>(start));
    detour.push_back(hole[start]);
    detour.push_back(boundary[corner]);
    boundary.insert(boundary.begin() + static_cast<std::ptrdiff_t>(corner) + 1, detour.begin(),
                    detour.end());
  }
  return boundary;
}

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
  const Boundary boundary = joined(outline, holes);
  if (boundary.size() < 3) return {};
  return EarClipper(boundary).clip();
}

}  // namespace linewright
