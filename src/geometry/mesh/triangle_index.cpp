#include "geometry/mesh/triangle_index.hpp"

#include "geometry/mesh/triangle_search.hpp"

namespace linewright {
namespace {

/// The nearest so far, while a search goes on.
struct NearestSoFar {
  const TriangleTree& tree;
  const Segment3& segment;
  std::optional<std::uint32_t> triangle;
  Nearest nearest;
  std::optional<std::uint32_t> guess = {};  ///< measured already, and meant to be met again

  double consider(std::uint32_t candidate, double bound_in) {
    const Nearest found = linewright::nearest(segment, tree.triangles[candidate]);
    if (found.distance_in > bound_in || (triangle && found.distance_in >= bound_in))
      return bound_in;
    triangle = candidate;
    nearest = found;
    return found.distance_in;
  }

  static double visit(void* context, std::uint32_t candidate, double bound_in) {
    auto& best = *static_cast<NearestSoFar*>(context);
    return candidate == best.guess ? bound_in : best.consider(candidate, bound_in);
  }
};

double visit_given(void* context, std::uint32_t triangle, double bound_in) {
  return (*static_cast<const TriangleIndex::Visit*>(context))(triangle, bound_in);
}

}  // namespace

TriangleIndex::TriangleIndex(std::span<const Triangle3> triangles, unsigned threads)
    : tree_(std::make_unique<TriangleTree>(build_tree(triangles, threads))) {}

TriangleIndex::~TriangleIndex() = default;
TriangleIndex::TriangleIndex(TriangleIndex&&) noexcept = default;
TriangleIndex& TriangleIndex::operator=(TriangleIndex&&) noexcept = default;

std::span<const Triangle3> TriangleIndex::triangles() const {
  return tree_->triangles;
}

std::size_t TriangleIndex::overhead_bytes() const {
  return tree_->nodes.size() * sizeof(TreeNode) + tree_->block_count() * sizeof(TreeBlock) +
         tree_->triangles.size() * sizeof(std::uint32_t);
}

std::optional<NearestTriangle> TriangleIndex::nearest(const Segment3& segment, double within_in,
                                                      std::optional<std::uint32_t> guess) const {
  NearestSoFar best{*tree_, segment, {}, {}};
  double bound_in = within_in;
  if (guess) bound_in = best.consider(*guess, bound_in);
  best.guess = guess;
  if (bound_in > 0 || !best.triangle)
    search_tree(*tree_, segment, bound_in, {&NearestSoFar::visit, &best});
  if (!best.triangle) return std::nullopt;
  return NearestTriangle{best.nearest, *best.triangle};
}

void TriangleIndex::visit_within(const Segment3& segment, double bound_in,
                                 const Visit& visit) const {
  search_tree(*tree_, segment, bound_in, {&visit_given, const_cast<Visit*>(&visit)});
}

}  // namespace linewright
