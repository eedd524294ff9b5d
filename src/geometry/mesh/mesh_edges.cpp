#include "geometry/mesh/mesh_edges.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <optional>

#include "model/same_bits.hpp"
#include "model/vector.hpp"

namespace linewright {
namespace {

using Corner = std::array<float, 3>;

Corner corner_of(const EdgeCandidate& candidate, std::size_t corner) {
  const std::size_t at = 3 * (corner % 3);
  return {candidate.corners[at], candidate.corners[at + 1], candidate.corners[at + 2]};
}

std::uint64_t mixed(std::uint64_t seed, const Corner& corner) {
  for (const float number : corner) {
    // Zero has two signs and is one place.
    seed ^= same_bits<std::uint32_t>(number == 0 ? 0.0F : number);
    seed *= 0x9E3779B97F4A7C15U;
    seed ^= seed >> 29;
  }
  return seed;
}

/// Does not depend on which way the edge runs.
std::uint64_t edge_hash(const Corner& from, const Corner& to) {
  return from < to ? mixed(mixed(1, from), to) : mixed(mixed(1, to), from);
}

Vec3 vector(const Corner& from, const Corner& to) {
  return {static_cast<double>(to[0]) - from[0], static_cast<double>(to[1]) - from[1],
          static_cast<double>(to[2]) - from[2]};
}

/// Square to the face; nothing for a triangle without area.
std::optional<Vec3> normal_of(const EdgeCandidate& candidate) {
  const Vec3 ab = vector(corner_of(candidate, 0), corner_of(candidate, 1));
  const Vec3 ac = vector(corner_of(candidate, 0), corner_of(candidate, 2));
  const Vec3 normal = cross(ab, ac);
  constexpr double smallest_sine = 1e-9;
  if (!(dot(normal, normal) > smallest_sine * smallest_sine * dot(ab, ab) * dot(ac, ac)))
    return std::nullopt;
  return normal;
}

/// The faces at one edge.
struct EdgeUse {
  std::uint32_t candidate;
  std::uint8_t corner;
};

constexpr std::uint32_t nothing = std::numeric_limits<std::uint32_t>::max();

class Search {
 public:
  Search(std::span<const EdgeCandidate> candidates, double crease_angle_rad)
      : candidates_(candidates), least_cosine_(std::cos(crease_angle_rad)) {
    const std::size_t slots = std::bit_ceil(6 * candidates.size() + 8);
    first_at_.assign(slots, nothing);
    mask_ = slots - 1;
    uses_.reserve(3 * candidates.size());
    next_.reserve(3 * candidates.size());
    last_.reserve(3 * candidates.size());
    linked_.reserve(3 * candidates.size());
  }

  EdgeSearch run() {
    for (std::uint32_t i = 0; i < candidates_.size(); ++i)
      for (std::uint8_t corner = 0; corner < 3 && !is_line(i); ++corner) add(i, corner);
    count_faults();
    for (std::uint32_t first = 0; first < uses_.size(); ++first)
      if (!linked_[first]) judge(first);
    return std::move(result_);
  }

 private:
  Corner from(const EdgeUse& use) const {
    return corner_of(candidates_[use.candidate], use.corner);
  }
  Corner to(const EdgeUse& use) const {
    return corner_of(candidates_[use.candidate], use.corner + 1U);
  }

  bool same_edge(const EdgeUse& a, const EdgeUse& b) const {
    return (from(a) == from(b) && to(a) == to(b)) || (from(a) == to(b) && to(a) == from(b));
  }

  /// Two corners in one place: it covers nothing, and closes no edge of another.
  bool is_line(std::uint32_t candidate) const {
    const EdgeCandidate& each = candidates_[candidate];
    const Corner a = corner_of(each, 0);
    const Corner b = corner_of(each, 1);
    const Corner c = corner_of(each, 2);
    return a == b || b == c || c == a;
  }

  /// Uses of one edge are chained from the first; the table finds the first.
  void add(std::uint32_t candidate, std::uint8_t corner) {
    const EdgeUse use{candidate, corner};
    const auto index = static_cast<std::uint32_t>(uses_.size());
    uses_.push_back(use);
    next_.push_back(nothing);
    last_.push_back(index);
    linked_.push_back(false);
    std::size_t slot = edge_hash(from(use), to(use)) & mask_;
    while (first_at_[slot] != nothing) {
      const std::uint32_t first = first_at_[slot];
      if (same_edge(uses_[first], use)) {
        next_[last_[first]] = index;
        last_[first] = index;
        linked_[index] = true;
        return;
      }
      slot = (slot + 1) & mask_;
    }
    first_at_[slot] = index;
  }

  void count_faults() {
    for (const EdgeCandidate& candidate : candidates_)
      if (candidate.asked && !normal_of(candidate)) ++result_.without_area;
  }

  void judge(std::uint32_t first) {
    gather(first);
    const EdgeUse owner =
        *std::min_element(faces_.begin(), faces_.end(), [this](const EdgeUse& a, const EdgeUse& b) {
          return candidates_[a.candidate].triangle < candidates_[b.candidate].triangle;
        });
    leave_out_copies();
    if (!candidates_[owner.candidate].asked) return;
    if (faces_.size() == 1)
      ++result_.open;
    else if (faces_.size() > 2)
      ++result_.shared_by_many;
    else if (!judge_pair(faces_[0], faces_[1]))
      return;
    result_.sharp.push_back({owner.candidate, owner.corner});
  }

  void gather(std::uint32_t first) {
    faces_.clear();
    for (std::uint32_t use = first; use != nothing; use = next_[use]) faces_.push_back(uses_[use]);
  }

  /// A copy of a face does not make its edges any less open. Faces at one edge are the same where
  /// their third corners are.
  void leave_out_copies() {
    if (faces_.size() < 2) return;
    const auto third = [this](const EdgeUse& use) {
      return corner_of(candidates_[use.candidate], use.corner + 2U);
    };
    std::stable_sort(faces_.begin(), faces_.end(),
                     [&](const EdgeUse& a, const EdgeUse& b) { return third(a) < third(b); });
    std::size_t kept = 1;
    for (std::size_t i = 1; i < faces_.size(); ++i) {
      if (third(faces_[i]) != third(faces_[kept - 1]))
        faces_[kept++] = faces_[i];
      else if (faces_[i].corner == 0 && candidates_[faces_[i].candidate].asked)
        ++result_.duplicated;
    }
    faces_.resize(kept);
  }

  /// True where two faces meet at a crease.
  bool judge_pair(const EdgeUse& a, const EdgeUse& b) {
    const bool against = from(a) == from(b);
    if (against) ++result_.turned_against;
    const std::optional<Vec3> normal_a = normal_of(candidates_[a.candidate]);
    const std::optional<Vec3> normal_b = normal_of(candidates_[b.candidate]);
    if (!normal_a || !normal_b) return false;
    const double sizes = std::sqrt(dot(*normal_a, *normal_a) * dot(*normal_b, *normal_b));
    const double cosine = dot(*normal_a, *normal_b) / sizes * (against ? -1 : 1);
    // A coordinate in 32 bits lets coplanar faces differ by less than this.
    constexpr double rounding = 1e-6;
    if (cosine >= least_cosine_ - rounding) return false;
    ++result_.creases;
    return true;
  }

  std::span<const EdgeCandidate> candidates_;
  double least_cosine_;
  std::vector<std::uint32_t> first_at_;
  std::size_t mask_ = 0;
  std::vector<EdgeUse> uses_;
  std::vector<std::uint32_t> next_;
  std::vector<std::uint32_t> last_;
  std::vector<bool> linked_;
  std::vector<EdgeUse> faces_;  ///< those at the edge that is judged
  EdgeSearch result_;
};

}  // namespace

EdgeSearch find_sharp_edges(std::span<const EdgeCandidate> candidates, double crease_angle_rad) {
  return Search(candidates, crease_angle_rad).run();
}

}  // namespace linewright
