#pragma once
// Exact minimum distances from segments to many triangles: the one engine behind everything that is
// measured against a mesh.
//
// A tree of our own, because the packed R-tree of Boost that holds the described structure answers
// a third to a fifteenth as many questions a second here (tests/bench measures it): its boxes know
// nothing of slanting segments, and with slivers most boxes that a segment meets hold nothing near
// it. This one bounds eight boxes, or eight triangles, at a time, along directions that fit the
// segment. A bound ends the search, never a count: the order of boxes is not that of triangles.

#include <cstddef>
#include <cstdint>
#include <functional>
#include <limits>
#include <memory>
#include <optional>
#include <span>

#include "geometry/distance.hpp"

namespace linewright {

struct TriangleTree;

/// A triangle and how near it is.
struct NearestTriangle {
  Nearest nearest;             ///< first: on the segment; second: on the triangle
  std::uint32_t triangle = 0;  ///< index as given
};

class TriangleIndex {
 public:
  /// `triangles` must outlive the index. Degenerate ones are welcome; all corners must be finite.
  /// Builds on up to `threads` threads; answers do not depend on how many.
  explicit TriangleIndex(std::span<const Triangle3> triangles, unsigned threads = 1);
  ~TriangleIndex();
  TriangleIndex(TriangleIndex&&) noexcept;
  TriangleIndex& operator=(TriangleIndex&&) noexcept;

  std::span<const Triangle3> triangles() const;
  /// Bytes that the index takes beyond the triangles themselves.
  std::size_t overhead_bytes() const;

  static constexpr double endless = std::numeric_limits<double>::infinity();

  /// The nearest triangle not farther than `within_in`, or nothing. `guess`, where given, is
  /// a triangle that is likely near: the search starts with its distance. Exact with any guess.
  std::optional<NearestTriangle> nearest(const Segment3& segment, double within_in = endless,
                                         std::optional<std::uint32_t> guess = {}) const;

  /// Given a triangle that may be nearer than the bound, gives the bound from there on: never
  /// a greater one.
  using Visit = std::function<double(std::uint32_t triangle, double bound_in)>;

  /// Visits every triangle nearer than the bound, which `visit` may lower as it goes; nearer ones
  /// rather first. May visit some that lie a little farther.
  void visit_within(const Segment3& segment, double bound_in, const Visit& visit) const;

 private:
  std::unique_ptr<TriangleTree> tree_;
};

}  // namespace linewright
