#include "geometry/mesh/triangle_search.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#undef HWY_TARGET_INCLUDE
#define HWY_TARGET_INCLUDE "geometry/mesh/triangle_search.cpp"
#include <hwy/cache_control.h>
#include <hwy/foreach_target.h>
#include <hwy/highway.h>

HWY_BEFORE_NAMESPACE();
namespace linewright {
namespace HWY_NAMESPACE {
namespace {

namespace hn = hwy::HWY_NAMESPACE;
using Tag = hn::CappedTag<float, tree_width>;
using Floats = hn::Vec<Tag>;
using Lanes = std::array<float, tree_width>;

struct Vector3 {
  Floats x, y, z;
};

Vector3 load(const std::array<Lanes, 3>& from, std::size_t lane) {
  const Tag tag;
  return {hn::Load(tag, from[0].data() + lane), hn::Load(tag, from[1].data() + lane),
          hn::Load(tag, from[2].data() + lane)};
}

HWY_INLINE Vector3 operator-(const Vector3& a, const Vector3& b) {
  return {hn::Sub(a.x, b.x), hn::Sub(a.y, b.y), hn::Sub(a.z, b.z)};
}
HWY_INLINE Floats dot(const Vector3& a, const Vector3& b) {
  return hn::MulAdd(a.x, b.x, hn::MulAdd(a.y, b.y, hn::Mul(a.z, b.z)));
}
HWY_INLINE Vector3 cross(const Vector3& a, const Vector3& b) {
  return {hn::NegMulAdd(a.z, b.y, hn::Mul(a.y, b.z)), hn::NegMulAdd(a.x, b.z, hn::Mul(a.z, b.x)),
          hn::NegMulAdd(a.y, b.x, hn::Mul(a.x, b.y))};
}
HWY_INLINE Vector3 choose(hn::Mask<Tag> mask, const Vector3& yes, const Vector3& no) {
  return {hn::IfThenElse(mask, yes.x, no.x), hn::IfThenElse(mask, yes.y, no.y),
          hn::IfThenElse(mask, yes.z, no.z)};
}
/// Of eight values a bit each, the first the lowest, of those that are no greater than the limit.
HWY_INLINE unsigned bits_within(const Lanes& values, float limit) {
  const Tag tag;
  unsigned bits = 0;
  for (std::size_t lane = 0; lane < tree_width; lane += hn::Lanes(tag)) {
    std::array<std::uint8_t, 8> bytes{};
    hn::StoreMaskBits(tag, hn::Le(hn::Load(tag, values.data() + lane), hn::Set(tag, limit)),
                      bytes.data());
    bits |= static_cast<unsigned>(bytes[0]) << lane;
  }
  return bits;
}
HWY_INLINE Floats held(Floats value) {
  const Tag tag;
  return hn::Min(hn::Max(value, hn::Zero(tag)), hn::Set(tag, 1.0F));
}

/// The segment in floats, and what every box is compared with.
struct Query {
  std::array<float, 3> start, span, low, high;
  float span_squared = 0;
  float inverse_span_squared = 0;
  /// Directions square to the segment and to one axis each, twice the place of the segment along
  /// them. All zero where the segment runs along the axis.
  std::array<std::array<float, 3>, 3> square;
  std::array<float, 3> twice_place;
};

Query make_query(const TriangleTree& tree, const Segment3& segment) {
  Query query{};
  const Vec3 from = segment.a - tree.origin;
  const Vec3 to = segment.b - tree.origin;
  const std::array<double, 3> start{from.x, from.y, from.z};
  const std::array<double, 3> end{to.x, to.y, to.z};
  std::array<double, 3> span{};
  for (std::size_t i = 0; i < 3; ++i) {
    span[i] = end[i] - start[i];
    query.start[i] = static_cast<float>(start[i]);
    query.span[i] = static_cast<float>(span[i]);
    query.low[i] = static_cast<float>(std::min(start[i], end[i]));
    query.high[i] = static_cast<float>(std::max(start[i], end[i]));
    query.span_squared += query.span[i] * query.span[i];
  }
  query.inverse_span_squared = query.span_squared > 0 ? 1 / query.span_squared : 0;
  for (std::size_t i = 0; i < 3; ++i) {
    const std::size_t j = (i + 1) % 3;
    const std::size_t k = (i + 2) % 3;
    const double length = std::sqrt(span[j] * span[j] + span[k] * span[k]);
    if (length <= 0) continue;
    query.square[i][j] = static_cast<float>(-span[k] / length);
    query.square[i][k] = static_cast<float>(span[j] / length);
    query.twice_place[i] =
        static_cast<float>(2 * (start[j] * -span[k] + start[k] * span[j]) / length);
  }
  return query;
}

/// Squares of distances no greater than those from the segment to each box. What lies between the
/// two along an axis, and along the direction square to that axis and to the segment, adds up by
/// Pythagoras.
HWY_INLINE void bound_boxes(const Query& query, const TreeNode& node, Lanes& bound) {
  const Tag tag;
  const Floats zero = hn::Zero(tag);
  for (std::size_t lane = 0; lane < tree_width; lane += hn::Lanes(tag)) {
    std::array<Floats, 3> gap_squared;
    std::array<Floats, 3> twice_middle;
    std::array<Floats, 3> twice_half;
    for (std::size_t i = 0; i < 3; ++i) {
      const Floats low = hn::Load(tag, node.low[i].data() + lane);
      const Floats high = hn::Load(tag, node.high[i].data() + lane);
      const Floats gap = hn::Max(zero, hn::Max(hn::Sub(low, hn::Set(tag, query.high[i])),
                                               hn::Sub(hn::Set(tag, query.low[i]), high)));
      gap_squared[i] = hn::Mul(gap, gap);
      twice_middle[i] = hn::Add(low, high);
      twice_half[i] = hn::Sub(high, low);
    }
    Floats best = hn::Add(gap_squared[0], hn::Add(gap_squared[1], gap_squared[2]));
    for (std::size_t i = 0; i < 3; ++i) {
      const std::size_t j = (i + 1) % 3;
      const std::size_t k = (i + 2) % 3;
      const Floats nj = hn::Set(tag, query.square[i][j]);
      const Floats nk = hn::Set(tag, query.square[i][k]);
      const Floats away =
          hn::Abs(hn::Sub(hn::MulAdd(nj, twice_middle[j], hn::Mul(nk, twice_middle[k])),
                          hn::Set(tag, query.twice_place[i])));
      const Floats covered =
          hn::MulAdd(hn::Abs(nj), twice_half[j], hn::Mul(hn::Abs(nk), twice_half[k]));
      const Floats across = hn::Mul(hn::Set(tag, 0.5F), hn::Max(zero, hn::Sub(away, covered)));
      best = hn::Max(best, hn::MulAdd(across, across, gap_squared[i]));
    }
    hn::Store(best, tag, bound.data() + lane);
  }
}

/// The way from the segment to a triangle where they are (about) nearest.
struct Way {
  Vector3 way;
  Floats squared;
};

HWY_INLINE void keep_shorter(Way& best, const Vector3& way, const Floats squared,
                             const hn::Mask<Tag> where) {
  const auto shorter = hn::And(where, hn::Lt(squared, best.squared));
  best.way = choose(shorter, way, best.way);
  best.squared = hn::IfThenElse(shorter, squared, best.squared);
}

struct SplatQuery {
  Vector3 span;
  Floats span_squared, inverse_span_squared;
};

/// From the segment (at the origin) to the edge that starts at `from` and runs along `edge`.
HWY_INLINE Vector3 to_edge(const SplatQuery& query, const Vector3& from, const Vector3& edge) {
  const Tag tag;
  const Floats least = hn::Set(tag, 1e-30F);
  const Floats edge_squared = hn::Max(dot(edge, edge), least);
  const Floats both = dot(query.span, edge);
  const Floats from_span = dot(query.span, from);
  const Floats from_edge = dot(edge, from);
  const Floats divisor =
      hn::Max(hn::NegMulAdd(both, both, hn::Mul(query.span_squared, edge_squared)), least);
  const Floats first_s =
      held(hn::Mul(hn::NegMulAdd(both, from_edge, hn::Mul(from_span, edge_squared)),
                   hn::ApproximateReciprocal(divisor)));
  const Floats t =
      held(hn::Mul(hn::MulSub(first_s, both, from_edge), hn::ApproximateReciprocal(edge_squared)));
  const Floats s = held(hn::Mul(hn::MulAdd(t, both, from_span), query.inverse_span_squared));
  return {hn::NegMulAdd(s, query.span.x, hn::MulAdd(t, edge.x, from.x)),
          hn::NegMulAdd(s, query.span.y, hn::MulAdd(t, edge.y, from.y)),
          hn::NegMulAdd(s, query.span.z, hn::MulAdd(t, edge.z, from.z))};
}

/// Distances not greater than those from the segment to eight triangles. Any direction n bounds
/// the distance: the least of n over the triangle less the most of n over the segment. The way
/// between their nearest points is the best one; where rounding has bent it, the bound is lower,
/// and never wrong.
HWY_INLINE void bound_triangles(const Query& query, const TreeBlock& block, Lanes& bound) {
  const Tag tag;
  const Vector3 start{hn::Set(tag, query.start[0]), hn::Set(tag, query.start[1]),
                      hn::Set(tag, query.start[2])};
  const SplatQuery splat{
      {hn::Set(tag, query.span[0]), hn::Set(tag, query.span[1]), hn::Set(tag, query.span[2])},
      hn::Set(tag, query.span_squared),
      hn::Set(tag, query.inverse_span_squared)};
  for (std::size_t lane = 0; lane < tree_width; lane += hn::Lanes(tag)) {
    const Vector3 a = load(block.corner[0], lane) - start;
    const Vector3 b = load(block.corner[1], lane) - start;
    const Vector3 c = load(block.corner[2], lane) - start;
    const Vector3 ab = b - a;
    const Vector3 ac = c - a;
    const auto everywhere = hn::FirstN(tag, tree_width);

    Way best{to_edge(splat, a, ab), {}};
    best.squared = dot(best.way, best.way);
    const Vector3 way_bc = to_edge(splat, b, c - b);
    keep_shorter(best, way_bc, dot(way_bc, way_bc), everywhere);
    const Vector3 way_ac = to_edge(splat, a, ac);
    keep_shorter(best, way_ac, dot(way_ac, way_ac), everywhere);

    // From each end of the segment square to the face, where its foot falls inside.
    const Vector3 normal = cross(ab, ac);
    const Floats normal_squared = hn::Max(dot(normal, normal), hn::Set(tag, 1e-30F));
    const Floats height_per_square = hn::Div(hn::Set(tag, 1.0F), normal_squared);
    const Floats ab_ab = dot(ab, ab);
    const Floats ab_ac = dot(ab, ac);
    const Floats ac_ac = dot(ac, ac);
    // A sliver, or an edge as a triangle, has no normal worth the name: its edges tell how near it
    // is.
    const auto is_face =
        hn::Gt(normal_squared, hn::Mul(hn::Set(tag, 1e-10F), hn::Mul(ab_ab, ac_ac)));
    const auto consider_end = [&](const Vector3& to_a) {
      // `to_a` leads from the end to the corner a.
      const Floats along_ab = hn::Neg(dot(to_a, ab));
      const Floats along_ac = hn::Neg(dot(to_a, ac));
      const Floats v = hn::NegMulAdd(ab_ac, along_ac, hn::Mul(ac_ac, along_ab));
      const Floats w = hn::NegMulAdd(ab_ac, along_ab, hn::Mul(ab_ab, along_ac));
      const auto inside = hn::And(hn::And(hn::Ge(v, hn::Zero(tag)), hn::Ge(w, hn::Zero(tag))),
                                  hn::And(is_face, hn::Le(hn::Add(v, w), normal_squared)));
      const Floats height = hn::Mul(dot(to_a, normal), height_per_square);
      const Vector3 way{hn::Mul(height, normal.x), hn::Mul(height, normal.y),
                        hn::Mul(height, normal.z)};
      keep_shorter(best, way, dot(way, way), inside);
    };
    consider_end(a);
    consider_end(a - splat.span);

    const Floats nearest_corner =
        hn::Min(dot(best.way, a), hn::Min(dot(best.way, b), dot(best.way, c)));
    const Floats farthest_end = hn::Max(hn::Zero(tag), dot(best.way, splat.span));
    const Floats length = hn::Sqrt(hn::Max(best.squared, hn::Set(tag, 1e-30F)));
    hn::Store(hn::Div(hn::Sub(nearest_corner, farthest_end), length), tag, bound.data() + lane);
  }
}

/// Squares of distances not greater than those from the segment's box to each triangle's box.
HWY_INLINE bool any_box_within(const Query& query, const TreeBlock& block, float limit_squared) {
  const Tag tag;
  const Floats zero = hn::Zero(tag);
  bool any = false;
  for (std::size_t lane = 0; lane < tree_width; lane += hn::Lanes(tag)) {
    Floats sum = zero;
    for (std::size_t i = 0; i < 3; ++i) {
      const Floats a = hn::Load(tag, block.corner[0][i].data() + lane);
      const Floats b = hn::Load(tag, block.corner[1][i].data() + lane);
      const Floats c = hn::Load(tag, block.corner[2][i].data() + lane);
      const Floats low = hn::Min(a, hn::Min(b, c));
      const Floats high = hn::Max(a, hn::Max(b, c));
      const Floats gap = hn::Max(zero, hn::Max(hn::Sub(low, hn::Set(tag, query.high[i])),
                                               hn::Sub(hn::Set(tag, query.low[i]), high)));
      sum = hn::MulAdd(gap, gap, sum);
    }
    any = any || !hn::AllFalse(tag, hn::Le(sum, hn::Set(tag, limit_squared)));
  }
  return any;
}

struct Waiting {
  float bound_squared;
  std::uint32_t child;
};

class Search {
 public:
  Search(const TriangleTree& tree, const Segment3& segment, double bound_in,
         const TreeVisitor& visitor)
      : tree_(tree), query_(make_query(tree, segment)), visitor_(visitor) {
    double extent = tree.half_extent_in;
    for (std::size_t i = 0; i < 3; ++i)
      extent = std::max({extent, std::abs(static_cast<double>(query_.low[i])),
                         std::abs(static_cast<double>(query_.high[i]))});
    error_in_ = float_error_in(extent);
    lower_bound_to(bound_in);
  }

  void run() {
    if (tree_.nodes.empty()) return;
    open_node(0);
    while (depth_ > 0) {
      const Waiting next = stack_[--depth_];
      if (next.bound_squared > limit_squared_) continue;
      if ((next.child & block_flag) != 0)
        open_block(next.child & ~block_flag);
      else
        open_node(next.child);
    }
  }

 private:
  void lower_bound_to(double bound_in) {
    bound_in_ = bound_in;
    limit_ = std::nextafter(static_cast<float>(bound_in + error_in_),
                            std::numeric_limits<float>::infinity());
    limit_squared_ = limit_ * limit_ * 1.000001F;
  }

  /// Puts the children within the limit on the stack, the nearest on top.
  void open_node(std::uint32_t index) {
    const TreeNode& node = tree_.nodes[index];
    alignas(32) Lanes bound;
    bound_boxes(query_, node, bound);
    const std::size_t bottom = depth_;
    for (unsigned left = bits_within(bound, limit_squared_); left != 0; left &= left - 1) {
      const std::size_t i = hwy::Num0BitsBelowLS1Bit_Nonzero32(left);
      if (node.child[i] == 0) continue;
      std::size_t at = depth_++;
      while (at > bottom && stack_[at - 1].bound_squared < bound[i]) {
        stack_[at] = stack_[at - 1];
        --at;
      }
      stack_[at] = {bound[i], node.child[i]};
      fetch_early(node.child[i]);
    }
  }

  /// In a large tree, most of the time goes by waiting for memory.
  HWY_INLINE void fetch_early(std::uint32_t child) const {
    const bool block = (child & block_flag) != 0;
    const char* const start =
        block ? reinterpret_cast<const char*>(&tree_.blocks[child & ~block_flag])
              : reinterpret_cast<const char*>(&tree_.nodes[child]);
    constexpr std::size_t line = 64;
    const std::size_t size = block ? sizeof(TreeBlock) : sizeof(TreeNode);
    for (std::size_t at = 0; at < size; at += line) hwy::Prefetch(start + at);
  }

  void open_block(std::uint32_t index) {
    const TreeBlock& block = tree_.blocks[index];
    if (!any_box_within(query_, block, limit_squared_)) return;
    alignas(32) Lanes bound;
    bound_triangles(query_, block, bound);
    const std::size_t first = index * tree_width;
    const std::size_t held_here = std::min(tree_width, tree_.triangles.size() - first);
    unsigned left = bits_within(bound, limit_) & ((1U << held_here) - 1);
    while (left != 0) {
      std::size_t nearest = hwy::Num0BitsBelowLS1Bit_Nonzero32(left);
      for (unsigned others = left & (left - 1); others != 0; others &= others - 1) {
        const std::size_t i = hwy::Num0BitsBelowLS1Bit_Nonzero32(others);
        if (bound[i] < bound[nearest]) nearest = i;
      }
      if (!(bound[nearest] <= limit_)) return;
      const double bound_in =
          visitor_.visit(visitor_.context, tree_.order[first + nearest], bound_in_);
      if (bound_in < bound_in_) lower_bound_to(bound_in);
      left &= ~(1U << nearest);
    }
  }

  // Each level leaves up to seven children waiting. 24 levels, and below those at least two-fold
  // ones over up to 2^29 blocks: no tree fills this.
  static constexpr std::size_t stack_size = 512;

  const TriangleTree& tree_;
  Query query_;
  TreeVisitor visitor_;
  double error_in_ = 0;
  double bound_in_ = 0;
  float limit_ = 0;
  float limit_squared_ = 0;
  std::size_t depth_ = 0;
  std::array<Waiting, stack_size> stack_;
};

void search(const TriangleTree& tree, const Segment3& segment, double bound_in,
            const TreeVisitor& visitor) {
  Search(tree, segment, bound_in, visitor).run();
}

}  // namespace
}  // namespace HWY_NAMESPACE
}  // namespace linewright
HWY_AFTER_NAMESPACE();

#if HWY_ONCE
namespace linewright {

HWY_EXPORT(search);

void search_tree(const TriangleTree& tree, const Segment3& segment, double bound_in,
                 const TreeVisitor& visitor) {
  HWY_DYNAMIC_DISPATCH(search)(tree, segment, bound_in, visitor);
}

}  // namespace linewright
#endif
