#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <optional>

#include "geometry/mesh/triangle_tree.hpp"
#include "geometry/parallel.hpp"
#include "model/same_bits.hpp"

// The tree is built from the top down by the surface-area heuristic: a box is opened by a search
// about as often as its area says. Splits fall on whole blocks, so that every block but the last
// is full and each range of triangles knows its blocks without asking the others: branches can be
// built side by side.

namespace linewright {
namespace {

/// Four numbers that the machine handles as one.
using Float4 = float __attribute__((vector_size(16)));

Float4 least(Float4 a, Float4 b) {
  return a < b ? a : b;
}

Float4 most(Float4 a, Float4 b) {
  return a > b ? a : b;
}

/// Three coordinates in a vector of four; the fourth is of no account.
struct FloatBox {
  Float4 low;
  Float4 high;
};

FloatBox empty_box() {
  constexpr float far = std::numeric_limits<float>::infinity();
  return {Float4{far, far, far, far}, Float4{-far, -far, -far, -far}};
}

FloatBox joined(const FloatBox& a, const FloatBox& b) {
  return {least(a.low, b.low), most(a.high, b.high)};
}

FloatBox joined(const FloatBox& a, Float4 point) {
  return {least(a.low, point), most(a.high, point)};
}

float half_area(const FloatBox& box) {
  const Float4 size = box.high - box.low;
  return size[0] * size[1] + size[1] * size[2] + size[2] * size[0];
}

/// A triangle's box, with its index in the place of the fourth number of `low`.
struct Entry {
  FloatBox box;

  std::uint32_t triangle() const { return same_bits<std::uint32_t>(box.low[3]); }
  float twice_middle(std::size_t axis) const { return box.low[axis] + box.high[axis]; }
};

/// A run of entries and what bounds them and their middles.
struct Range {
  std::size_t begin = 0;
  std::size_t end = 0;
  FloatBox box = empty_box();
  FloatBox twice_middles = empty_box();

  std::size_t size() const { return end - begin; }

  void include(const FloatBox& entry) {
    box = joined(box, entry);
    twice_middles = joined(twice_middles, entry.low + entry.high);
  }
};

constexpr std::size_t most_bins = 16;
/// Ranges from this size on are worth more care than setting it up costs.
constexpr std::size_t many = 4096;
/// No mesh that is drawn for use gets this deep. Triangles that crowd ever closer to one place do:
/// below this, ranges are halved by count, so that the depth has a bound.
constexpr std::size_t deepest_by_area = 24;

std::size_t blocks_of(std::size_t count) {
  return (count + tree_width - 1) / tree_width;
}

class Builder {
 public:
  Builder(std::span<const Triangle3> triangles, unsigned threads)
      : given_(triangles), threads_(std::max(1U, threads)) {
    tree_.triangles = triangles;
  }

  TriangleTree build() {
    if (given_.empty()) return std::move(tree_);
    choose_origin();
    const Range all = make_entries();
    tree_.blocks.reset(new TreeBlock[tree_.block_count()]);
    tree_.order.reset(new std::uint32_t[given_.size()]);
    grow_branches(all);
    return std::move(tree_);
  }

 private:
  /// Nodes of one branch; `child` counts within the branch until they are joined.
  using Nodes = std::vector<TreeNode>;

  static constexpr std::size_t share = 1 << 14;

  std::size_t shares() const { return (given_.size() + share - 1) / share; }

  template <typename Work>
  void for_each_share(const Work& work) {
    for_each_parallel(shares(), threads_, [&](std::size_t i) {
      work(i, i * share, std::min(given_.size(), (i + 1) * share));
    });
  }

  void choose_origin() {
    struct Reach {
      Vec3 low;
      Vec3 high;
    };
    const auto join = [](Reach& reach, Vec3 low, Vec3 high) {
      reach.low = {std::min(reach.low.x, low.x), std::min(reach.low.y, low.y),
                   std::min(reach.low.z, low.z)};
      reach.high = {std::max(reach.high.x, high.x), std::max(reach.high.y, high.y),
                    std::max(reach.high.z, high.z)};
    };
    const Vec3 first = given_.front().a;
    std::vector<Reach> reaches(shares(), Reach{first, first});
    for_each_share([&](std::size_t i, std::size_t begin, std::size_t end) {
      Reach reach = reaches[i];
      for (const Triangle3& triangle : given_.subspan(begin, end - begin))
        for (const Vec3& corner : {triangle.a, triangle.b, triangle.c}) join(reach, corner, corner);
      reaches[i] = reach;
    });
    Reach whole = reaches.front();
    for (const Reach& reach : reaches) join(whole, reach.low, reach.high);
    tree_.origin = (whole.low + whole.high) / 2;
    const Vec3 size = whole.high - whole.low;
    tree_.half_extent_in = std::max({size.x, size.y, size.z}) / 2;
  }

  Float4 local(Vec3 point) const {
    const Vec3 from_origin = point - tree_.origin;
    return Float4{static_cast<float>(from_origin.x), static_cast<float>(from_origin.y),
                  static_cast<float>(from_origin.z), 0};
  }

  Range make_entries() {
    entries_.reset(new Entry[given_.size()]);
    std::vector<Range> ranges(shares());
    for_each_share([&](std::size_t share_index, std::size_t begin, std::size_t end) {
      Range range;
      for (std::size_t i = begin; i < end; ++i) {
        const Triangle3& triangle = given_[i];
        const Float4 a = local(triangle.a);
        const FloatBox box = joined(joined({a, a}, local(triangle.b)), local(triangle.c));
        range.include(box);
        entries_[i].box = box;
        entries_[i].box.low[3] = same_bits<float>(static_cast<std::uint32_t>(i));
      }
      ranges[share_index] = range;
    });
    Range all;
    for (const Range& range : ranges) {
      all.box = joined(all.box, range.box);
      all.twice_middles = joined(all.twice_middles, range.twice_middles);
    }
    all.end = given_.size();
    return all;
  }

  /// Where to cut a range: places along the axis are put in bins of equal width.
  struct Cut {
    std::size_t axis = 0;
    float low = 0;
    float bins_per_unit = 0;
    std::size_t bins = most_bins;
    std::size_t first_right = 0;

    std::size_t bin_of(float place) const {
      return std::min(bins - 1, static_cast<std::size_t>((place - low) * bins_per_unit));
    }
  };

  /// Chooses `first_right` and gives its cost: endless where no cut parts anything.
  float choose_bin(const Range& range, Cut& cut) const {
    std::array<FloatBox, most_bins> boxes;
    std::array<std::size_t, most_bins> counts{};
    boxes.fill(empty_box());
    const auto add = [&](std::size_t i, std::array<FloatBox, most_bins>& to) {
      const std::size_t bin = cut.bin_of(entries_[i].twice_middle(cut.axis));
      to[bin] = joined(to[bin], entries_[i].box);
      ++counts[bin];
    };
    std::size_t i = range.begin;
    if (range.size() >= many) {
      // Neighbours tend to fall in one bin, and would wait for each other there.
      std::array<FloatBox, most_bins> others;
      others.fill(empty_box());
      for (; i + 1 < range.end; i += 2) {
        add(i, boxes);
        add(i + 1, others);
      }
      for (std::size_t bin = 0; bin < most_bins; ++bin)
        boxes[bin] = joined(boxes[bin], others[bin]);
    }
    for (; i < range.end; ++i) add(i, boxes);
    std::array<float, most_bins> right_cost{};
    FloatBox box = empty_box();
    std::size_t count = 0;
    const auto cost = [&] {
      return count == 0 ? 0.0F : half_area(box) * static_cast<float>(blocks_of(count));
    };
    for (std::size_t bin = cut.bins - 1; bin > 0; --bin) {
      box = joined(box, boxes[bin]);
      count += counts[bin];
      right_cost[bin] = cost();
    }
    box = empty_box();
    count = 0;
    float lowest = std::numeric_limits<float>::infinity();
    for (std::size_t bin = 1; bin < cut.bins; ++bin) {
      box = joined(box, boxes[bin - 1]);
      count += counts[bin - 1];
      if (count == 0 || count == range.size()) continue;
      if (const float here = cost() + right_cost[bin]; here < lowest) {
        lowest = here;
        cut.first_right = bin;
      }
    }
    return lowest;
  }

  /// Puts the entries left of the cut first, and gives the place of the first one right of it.
  std::size_t part(const Range& range, const Cut& cut) {
    std::size_t first = range.begin;
    std::size_t last = range.end;
    for (;;) {
      while (first < last && cut.bin_of(entries_[first].twice_middle(cut.axis)) < cut.first_right)
        ++first;
      while (first < last &&
             cut.bin_of(entries_[last - 1].twice_middle(cut.axis)) >= cut.first_right)
        --last;
      if (first >= last) return first;
      std::swap(entries_[first++], entries_[--last]);
    }
  }

  Range bounded(std::size_t begin, std::size_t end) const {
    Range range;
    range.begin = begin;
    range.end = end;
    for (std::size_t i = begin; i < end; ++i) range.include(entries_[i].box);
    return range;
  }

  /// Moves the cut to a whole number of blocks, by carrying over the entries nearest to it.
  std::size_t at_whole_block(const Range& range, std::size_t axis, std::size_t middle) {
    const std::size_t on_left = middle - range.begin;
    std::size_t wanted = (on_left + tree_width / 2) / tree_width * tree_width;
    wanted = std::clamp(wanted, tree_width, blocks_of(range.size() - tree_width) * tree_width);
    const auto lower = [axis](const Entry& a, const Entry& b) {
      return a.twice_middle(axis) < b.twice_middle(axis);
    };
    Entry* const begin = entries_.get() + range.begin;
    Entry* const cut = entries_.get() + middle;
    if (wanted < on_left)
      std::nth_element(begin, begin + wanted, cut, lower);
    else if (wanted > on_left)
      std::nth_element(cut, begin + wanted, entries_.get() + range.end, lower);
    return range.begin + wanted;
  }

  /// The cheapest cut: across the longest axis where the range is large, else across any.
  std::optional<Cut> cheapest_cut(const Range& range) const {
    const FloatBox& places = range.twice_middles;
    const Float4 extent = places.high - places.low;
    std::size_t longest = 0;
    for (std::size_t axis = 1; axis < 3; ++axis)
      if (extent[axis] > extent[longest]) longest = axis;
    std::optional<Cut> best;
    float lowest = std::numeric_limits<float>::infinity();
    for (std::size_t axis = 0; axis < 3; ++axis) {
      if (axis != longest && range.size() >= many) continue;
      Cut cut;
      cut.axis = axis;
      cut.bins = range.size() > 64 ? most_bins : most_bins / 2;
      cut.low = places.low[axis];
      cut.bins_per_unit = static_cast<float>(cut.bins) / extent[axis];
      if (!std::isfinite(cut.bins_per_unit)) continue;
      if (const float cost = choose_bin(range, cut); cost < lowest) {
        lowest = cost;
        best = cut;
      }
    }
    return best;
  }

  std::pair<Range, Range> split(const Range& range, std::size_t depth) {
    const std::optional<Cut> cut = depth < deepest_by_area ? cheapest_cut(range) : std::nullopt;
    std::size_t middle = cut ? part(range, *cut) : range.begin + range.size() / 2;
    middle = at_whole_block(range, cut ? cut->axis : 0, middle);
    return {bounded(range.begin, middle), bounded(middle, range.end)};
  }

  /// Opens the child with the greatest area until there are eight.
  std::size_t split_wide(const Range& range, std::size_t depth,
                         std::array<Range, tree_width>& children) {
    children[0] = range;
    std::size_t count = 1;
    while (count < tree_width) {
      std::size_t widest = tree_width;
      float area = -1;
      for (std::size_t i = 0; i < count; ++i)
        if (children[i].size() > tree_width && half_area(children[i].box) > area) {
          area = half_area(children[i].box);
          widest = i;
        }
      if (widest == tree_width) break;
      const auto [left, right] = split(children[widest], depth);
      children[widest] = left;
      children[count++] = right;
    }
    return count;
  }

  static TreeNode node_of(const std::array<Range, tree_width>& children, std::size_t count) {
    TreeNode node;
    node.child.fill(0);
    for (std::size_t i = 0; i < tree_width; ++i) {
      constexpr float nowhere = 1e15F;
      for (std::size_t axis = 0; axis < 3; ++axis) {
        node.low[axis][i] = i < count ? children[i].box.low[axis] : nowhere;
        node.high[axis][i] = i < count ? children[i].box.high[axis] : nowhere;
      }
    }
    return node;
  }

  /// The root's children are built side by side.
  void grow_branches(const Range& all) {
    std::array<Range, tree_width> children;
    const std::size_t count = split_wide(all, 0, children);
    TreeNode root = node_of(children, count);
    std::array<Nodes, tree_width> branches;
    std::array<std::uint32_t, tree_width> child{};
    for_each_parallel(count, threads_, [&](std::size_t i) {
      branches[i].reserve(children[i].size() / 32 + 1);
      child[i] = write_child(children[i], 1, branches[i]);
    });
    tree_.nodes.push_back(root);
    for (std::size_t i = 0; i < count; ++i) {
      const auto shift = static_cast<std::uint32_t>(tree_.nodes.size());
      const auto shifted = [shift](std::uint32_t index) {
        return (index & block_flag) != 0 ? index : index + shift;
      };
      tree_.nodes.front().child[i] = shifted(child[i]);
      for (TreeNode node : branches[i]) {
        for (std::size_t k = 0; k < tree_width; ++k)
          if (node.low[0][k] <= node.high[0][k] && node.child[k] != no_child)
            node.child[k] = shifted(node.child[k]);
        tree_.nodes.push_back(node);
      }
    }
  }

  static constexpr std::uint32_t no_child = 0;

  std::uint32_t write_child(const Range& range, std::size_t depth, Nodes& nodes) {
    return range.size() > tree_width ? write_node(range, depth, nodes)
                                     : block_flag | write_block(range);
  }

  std::uint32_t write_node(const Range& range, std::size_t depth, Nodes& nodes) {
    std::array<Range, tree_width> children;
    const std::size_t count = split_wide(range, depth, children);
    const auto index = static_cast<std::uint32_t>(nodes.size());
    nodes.push_back(node_of(children, count));
    for (std::size_t i = 0; i < count; ++i) {
      const std::uint32_t child = write_child(children[i], depth + 1, nodes);
      nodes[index].child[i] = child;
    }
    return index;
  }

  std::uint32_t write_block(const Range& range) {
    TreeBlock& block = tree_.blocks[range.begin / tree_width];
    for (std::size_t i = 0; i < tree_width; ++i) {
      const std::uint32_t index = entries_[std::min(range.begin + i, range.end - 1)].triangle();
      const Triangle3& triangle = given_[index];
      if (i < range.size()) tree_.order[range.begin + i] = index;
      const std::array corners{local(triangle.a), local(triangle.b), local(triangle.c)};
      for (std::size_t corner = 0; corner < 3; ++corner)
        for (std::size_t axis = 0; axis < 3; ++axis)
          block.corner[corner][axis][i] = corners[corner][axis];
    }
    return static_cast<std::uint32_t>(range.begin / tree_width);
  }

  std::span<const Triangle3> given_;
  unsigned threads_;
  std::unique_ptr<Entry[]> entries_;
  TriangleTree tree_;
};

}  // namespace

TriangleTree build_tree(std::span<const Triangle3> triangles, unsigned threads) {
  return Builder(triangles, threads).build();
}

}  // namespace linewright
