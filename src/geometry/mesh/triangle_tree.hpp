#pragma once
// The inside of the triangle index: a tree of eight-wide nodes over blocks of eight triangles, in
// 32-bit floats relative to `origin`. Floats serve for bounds only, which are lowered by what
// rounding may have added to them; distances themselves are worked out in double.

#include <array>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "geometry/distance.hpp"

namespace linewright {

inline constexpr std::size_t tree_width = 8;

/// Boxes of up to eight children, rounded outwards. An empty place has an endlessly far box.
struct alignas(32) TreeNode {
  std::array<std::array<float, tree_width>, 3> low;
  std::array<std::array<float, tree_width>, 3> high;
  std::array<std::uint32_t, tree_width> child;
};

/// Marks a child that is a block of triangles, not a node.
inline constexpr std::uint32_t block_flag = 0x80000000U;

/// Corners of eight triangles: corner, axis, triangle. Block i holds places 8 i to 8 i + 7 of the
/// tree's order; empty places at the very end repeat the last triangle.
struct alignas(32) TreeBlock {
  std::array<std::array<std::array<float, tree_width>, 3>, 3> corner;
};

struct TriangleTree {
  std::span<const Triangle3> triangles;  ///< as given
  Vec3 origin;
  /// Greatest distance of a corner from the origin along any axis.
  double half_extent_in = 0;
  std::vector<TreeNode> nodes;  ///< the first is the root; none where there are no triangles
  std::unique_ptr<TreeBlock[]> blocks;
  std::unique_ptr<std::uint32_t[]> order;  ///< index, as given, of the triangle at each place

  std::size_t block_count() const { return (triangles.size() + tree_width - 1) / tree_width; }
};

/// Builds the tree on up to `threads` threads; the result does not depend on their number.
TriangleTree build_tree(std::span<const Triangle3> triangles, unsigned threads);

}  // namespace linewright
