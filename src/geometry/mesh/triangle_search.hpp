#pragma once
// The search through a triangle tree, in whatever vector instructions the machine has.

#include <cstdint>

#include "geometry/mesh/triangle_tree.hpp"

namespace linewright {

/// Given the index of a triangle, gives the bound from there on.
struct TreeVisitor {
  double (*visit)(void* context, std::uint32_t triangle, double bound_in);
  void* context;
};

/// Calls the visitor for every triangle that may be nearer than the bound. Never passes over one
/// that is: the bounds in floats are lowered by `float_error_in`.
void search_tree(const TriangleTree& tree, const Segment3& segment, double bound_in,
                 const TreeVisitor& visitor);

/// What rounding to floats may add to a bound, for coordinates up to `extent_in` from the origin.
constexpr double float_error_in(double extent_in) {
  return 16 * 5.97e-8 * extent_in;
}

}  // namespace linewright
