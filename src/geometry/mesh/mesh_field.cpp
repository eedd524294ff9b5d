#include "geometry/mesh/mesh_field.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <limits>
#include <mutex>
#include <tuple>
#include <utility>

#include "geometry/mesh/mesh_edges.hpp"
#include "geometry/mesh/triangle_index.hpp"
#include "geometry/parallel.hpp"
#include "model/angle.hpp"

namespace linewright {
namespace {

/// Triangles in a cell, about: few enough that making one ready takes a moment only.
constexpr std::size_t wanted_in_cell = 512;
constexpr std::size_t most_cells = 1 << 15;
/// Cells that are passed over together.
constexpr std::size_t group_size = 24;

Triangle3 placed(const Placement& placement, const std::array<float, 9>& corners) {
  return {placement.apply({corners[0], corners[1], corners[2]}),
          placement.apply({corners[3], corners[4], corners[5]}),
          placement.apply({corners[6], corners[7], corners[8]})};
}

/// Equal cells over a box; what lies outside of it belongs to the nearest cell.
struct Grid {
  Vec3 origin;
  double cells_per_in = 0;
  std::array<std::size_t, 3> size{1, 1, 1};

  std::size_t cell_count() const { return size[0] * size[1] * size[2]; }

  std::size_t cell_of(Vec3 point) const {
    const auto along = [this](double distance, std::size_t cells) {
      const double place = distance * cells_per_in;
      if (place >= static_cast<double>(cells)) return cells - 1;
      return place > 0 ? static_cast<std::size_t>(place) : 0;
    };
    const Vec3 from = point - origin;
    return (along(from.x, size[0]) * size[1] + along(from.y, size[1])) * size[2] +
           along(from.z, size[2]);
  }
};

/// A surface that fills half of its box's sides spreads evenly over cells of this size.
Grid grid_over(const Bounds& box, std::size_t triangles) {
  Grid grid;
  if (triangles <= 2 * wanted_in_cell) return grid;
  grid.origin = box.min;
  const Vec3 extent = box.max - box.min;
  const double half_area = extent.x * extent.y + extent.y * extent.z + extent.z * extent.x;
  double cell_in =
      std::sqrt(half_area * static_cast<double>(wanted_in_cell) / static_cast<double>(triangles));
  const double longest = std::max({extent.x, extent.y, extent.z});
  if (!(longest > 0)) return grid;
  cell_in = std::max(cell_in, longest / 1000);
  const auto fit = [&] {
    const auto cells = [&](double length) {
      return 1 + static_cast<std::size_t>(length / cell_in);
    };
    grid.size = {cells(extent.x), cells(extent.y), cells(extent.z)};
  };
  for (fit(); grid.cell_count() > most_cells; fit()) cell_in *= 1.25;
  grid.cells_per_in = 1 / cell_in;
  return grid;
}

/// Boxes in floats, rounded outwards, by axis: quick to compare with one box.
struct FloatBoxes {
  std::array<std::vector<float>, 3> low;
  std::array<std::vector<float>, 3> high;

  void add(const Bounds& box) {
    constexpr float further = std::numeric_limits<float>::infinity();
    const std::array lows{box.min.x, box.min.y, box.min.z};
    const std::array highs{box.max.x, box.max.y, box.max.z};
    for (std::size_t axis = 0; axis < 3; ++axis) {
      low[axis].push_back(std::nextafter(static_cast<float>(lows[axis]), -further));
      high[axis].push_back(std::nextafter(static_cast<float>(highs[axis]), further));
    }
  }

  bool meet(std::size_t a, std::size_t b) const {
    for (std::size_t axis = 0; axis < 3; ++axis)
      if (low[axis][a] > high[axis][b] || low[axis][b] > high[axis][a]) return false;
    return true;
  }
};

/// A box asked about, in floats; `error_in` is the most that rounding it may hide.
struct AskedBox {
  std::array<float, 3> low;
  std::array<float, 3> high;
  double error_in = 0;

  explicit AskedBox(const Bounds& box)
      : low{static_cast<float>(box.min.x), static_cast<float>(box.min.y),
            static_cast<float>(box.min.z)},
        high{static_cast<float>(box.max.x), static_cast<float>(box.max.y),
             static_cast<float>(box.max.z)} {
    double farthest = 1;
    for (std::size_t axis = 0; axis < 3; ++axis)
      farthest = std::max({farthest, static_cast<double>(std::abs(low[axis])),
                           static_cast<double>(std::abs(high[axis]))});
    error_in = farthest * 1e-6;
  }

  /// No more than the distance to the box.
  double gap_in(const FloatBoxes& boxes, std::size_t i) const {
    float squared = 0;
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const float gap =
          std::max({0.0F, boxes.low[axis][i] - high[axis], low[axis] - boxes.high[axis][i]});
      squared += gap * gap;
    }
    constexpr double shortened = 1 - 1e-6;
    return std::max(0.0, std::sqrt(static_cast<double>(squared)) * shortened - error_in);
  }
};

/// A cell that can be measured against. The index looks at the shapes, which stay where they are.
struct ReadyCell {
  std::vector<Triangle3> shapes;         ///< triangles, then edges
  std::vector<std::uint32_t> triangles;  ///< index in the file, of each shape
  std::size_t first_edge = 0;
  std::optional<TriangleIndex> index;
};

struct Cell {
  std::size_t begin = 0;  ///< into the order
  std::size_t end = 0;
  std::once_flag made_ready;
  std::unique_ptr<ReadyCell> ready;
};

/// What one thread finds out about its share of the triangles.
struct Share {
  std::vector<Bounds> boxes;
  std::vector<std::size_t> counts;
  bool all_within = true;
};

}  // namespace

struct MeshField::Cells {
  Cells(MeshSource from, unsigned threads) : source(std::move(from)) {
    tally.triangles = source.corners.count;
    grid = grid_over(sampled_box(), source.corners.count);
    sort_into_cells(std::max(1U, threads));
  }

  const Placement& placement() const { return source.mesh.placement; }

  Triangle3 triangle(std::size_t index) const { return placed(placement(), source.corners[index]); }

  /// Holds most of the triangles: a few that lie far out must not make the cells large.
  Bounds sampled_box() const {
    constexpr std::size_t samples = 4096;
    const std::size_t step = std::max<std::size_t>(1, source.corners.count / samples);
    std::array<std::vector<double>, 3> places;
    for (std::size_t i = 0; i < source.corners.count; i += step) {
      const Triangle3 at = triangle(i);
      if (!within_reason(at)) continue;
      const Vec3 middle = (at.a + at.b + at.c) / 3;
      places[0].push_back(middle.x);
      places[1].push_back(middle.y);
      places[2].push_back(middle.z);
    }
    if (places[0].empty()) return {};
    std::array<double, 3> low{};
    std::array<double, 3> high{};
    for (std::size_t axis = 0; axis < 3; ++axis) {
      std::sort(places[axis].begin(), places[axis].end());
      const std::size_t left_out = places[axis].size() / 100;
      low[axis] = places[axis][left_out];
      high[axis] = places[axis][places[axis].size() - 1 - left_out];
    }
    return {{low[0], low[1], low[2]}, {high[0], high[1], high[2]}};
  }

  static bool within_reason(const Triangle3& triangle) {
    bool all = true;
    for (const Vec3& corner : {triangle.a, triangle.b, triangle.c})
      for (const double number : {corner.x, corner.y, corner.z})
        all = all && std::abs(number) <= largest_in;
    return all;
  }

  void sort_into_cells(unsigned threads) {
    const std::size_t count = source.corners.count;
    std::vector<std::uint32_t> cell_of(count);
    std::vector<Share> shares(threads);
    const auto share_begin = [&](std::size_t i) { return count * i / threads; };
    for_each_parallel(threads, threads, [&](std::size_t i) {
      shares[i] = survey(share_begin(i), share_begin(i + 1), cell_of);
    });
    all_within = std::all_of(shares.begin(), shares.end(),
                             [](const Share& share) { return share.all_within; });
    if (!all_within) return;
    number_cells(shares);
    order.resize(count);
    for_each_parallel(threads, threads, [&](std::size_t i) {
      std::vector<std::size_t>& next = shares[i].counts;
      for (std::size_t k = share_begin(i); k < share_begin(i + 1); ++k)
        order[next[cell_of[k]]++] = static_cast<std::uint32_t>(k);
    });
  }

  Share survey(std::size_t begin, std::size_t end, std::vector<std::uint32_t>& cell_of) const {
    Share share;
    share.boxes.assign(grid.cell_count(), empty_bounds());
    share.counts.assign(grid.cell_count(), 0);
    for (std::size_t i = begin; i < end; ++i) {
      const Triangle3 at = triangle(i);
      if (!within_reason(at)) {
        share.all_within = false;
        return share;
      }
      const std::size_t cell = grid.cell_of((at.a + at.b + at.c) * (1.0 / 3));
      cell_of[i] = static_cast<std::uint32_t>(cell);
      const Bounds box = bounds_of(at);
      include(share.boxes[cell], box);
      ++share.counts[cell];
    }
    return share;
  }

  /// Gives cells that hold anything a number, and each share its places in the order.
  void number_cells(std::vector<Share>& shares) {
    std::size_t next = 0;
    std::vector<std::pair<std::size_t, std::size_t>> ranges;
    Bounds group = empty_bounds();
    for (std::size_t cell = 0; cell < grid.cell_count(); ++cell) {
      const std::size_t begin = next;
      Bounds box = empty_bounds();
      for (Share& share : shares) {
        next += std::exchange(share.counts[cell], next);
        include(box, share.boxes[cell]);
      }
      if (next == begin) continue;
      ranges.emplace_back(begin, next);
      boxes.add(box);
      include(whole, box);
      include(group, box);
      if (ranges.size() % group_size == 0) group_boxes.add(std::exchange(group, empty_bounds()));
    }
    if (ranges.size() % group_size != 0) group_boxes.add(group);
    cells = std::make_unique<Cell[]>(ranges.size());
    cell_count = ranges.size();
    for (std::size_t i = 0; i < ranges.size(); ++i)
      std::tie(cells[i].begin, cells[i].end) = ranges[i];
  }

  const ReadyCell& ready(std::uint32_t number) {
    Cell& cell = cells[number];
    std::call_once(cell.made_ready, [&] { make_ready(number); });
    return *cell.ready;
  }

  void make_ready(std::uint32_t number) {
    Cell& cell = cells[number];
    auto made = std::make_unique<ReadyCell>();
    made->first_edge = cell.end - cell.begin;
    std::vector<EdgeCandidate> candidates;
    for (std::size_t i = cell.begin; i < cell.end; ++i) {
      const std::uint32_t index = order[i];
      candidates.push_back({source.corners[index], index, true});
      made->shapes.push_back(triangle(index));
      made->triangles.push_back(index);
    }
    add_neighbours(number, candidates);
    const EdgeSearch edges =
        find_sharp_edges(candidates, source.mesh.crease_angle_deg / degrees_per_radian);
    for (const SharpEdge& edge : edges.sharp) {
      const Triangle3 face = placed(placement(), candidates[edge.candidate].corners);
      const std::array corners{face.a, face.b, face.c, face.a};
      const Vec3 to = corners[edge.corner + 1U];
      made->shapes.push_back({corners[edge.corner], to, to});
      made->triangles.push_back(candidates[edge.candidate].triangle);
    }
    made->index.emplace(made->shapes);
    count(edges, made->first_edge);
    cell.ready = std::move(made);
  }

  /// Triangles of other cells that may share an edge with this one's.
  void add_neighbours(std::uint32_t number, std::vector<EdgeCandidate>& candidates) const {
    std::array<float, 3> least;
    std::array<float, 3> most;
    least.fill(std::numeric_limits<float>::infinity());
    most.fill(-std::numeric_limits<float>::infinity());
    for (const EdgeCandidate& own : candidates)
      for (std::size_t i = 0; i < 9; ++i) {
        least[i % 3] = std::min(least[i % 3], own.corners[i]);
        most[i % 3] = std::max(most[i % 3], own.corners[i]);
      }
    const auto meets = [&](const std::array<float, 9>& corners) {
      bool all = true;
      for (std::size_t axis = 0; axis < 3; ++axis) {
        const float a = corners[axis];
        const float b = corners[axis + 3];
        const float c = corners[axis + 6];
        all = all && std::max({a, b, c}) >= least[axis] && std::min({a, b, c}) <= most[axis];
      }
      return all;
    };
    for (std::uint32_t other = 0; other < cell_count; ++other) {
      if (other == number || !boxes.meet(other, number)) continue;
      for (std::size_t i = cells[other].begin; i < cells[other].end; ++i) {
        const std::array<float, 9> corners = source.corners[order[i]];
        if (meets(corners)) candidates.push_back({corners, order[i], false});
      }
    }
  }

  void count(const EdgeSearch& edges, std::size_t looked_at) {
    const std::scoped_lock lock(tally_in_use);
    tally.looked_at += looked_at;
    tally.without_area += edges.without_area;
    tally.duplicated += edges.duplicated;
    tally.open_edges += edges.open;
    tally.creases += edges.creases;
    tally.shared_by_many += edges.shared_by_many;
    tally.turned_against += edges.turned_against;
  }

  MeshSource source;
  Grid grid;
  bool all_within = true;
  std::vector<std::uint32_t> order;  ///< triangles, cell by cell
  std::unique_ptr<Cell[]> cells;
  std::size_t cell_count = 0;
  Bounds whole = empty_bounds();
  FloatBoxes boxes;        ///< of each cell's triangles
  FloatBoxes group_boxes;  ///< of each `group_size` cells that follow each other
  std::mutex tally_in_use;
  MeshTally tally;
};

MeshField::MeshField(MeshSource source, unsigned threads)
    : cells_(std::make_unique<Cells>(std::move(source), threads)) {}

MeshField::~MeshField() = default;
MeshField::MeshField(MeshField&&) noexcept = default;

const Mesh& MeshField::mesh() const {
  return cells_->source.mesh;
}

bool MeshField::all_within() const {
  return cells_->all_within;
}

std::string MeshField::piece_of(std::uint32_t triangle) const {
  const auto& pieces = cells_->source.pieces;
  const auto after = std::upper_bound(
      pieces.begin(), pieces.end(), std::size_t{triangle},
      [](std::size_t index, const MeshPart& piece) { return index < piece.first; });
  if (after == pieces.begin()) return {};
  const MeshPart& piece = *std::prev(after);
  return triangle < piece.first + piece.count ? piece.name : std::string();
}

std::vector<MeshField::NearCell> MeshField::cells_near(const Bounds& box, double within_in) const {
  const Cells& cells = *cells_;
  const AskedBox asked(box);
  std::vector<NearCell> near;
  for (std::size_t group = 0; group * group_size < cells.cell_count; ++group) {
    if (asked.gap_in(cells.group_boxes, group) > within_in) continue;
    const std::size_t end = std::min(cells.cell_count, (group + 1) * group_size);
    for (std::size_t i = group * group_size; i < end; ++i)
      if (const double gap = asked.gap_in(cells.boxes, i); gap <= within_in)
        near.push_back({gap, static_cast<std::uint32_t>(i)});
  }
  std::stable_sort(near.begin(), near.end(),
                   [](const NearCell& a, const NearCell& b) { return a.least_in < b.least_in; });
  return near;
}

void MeshField::visit_within(const Segment3& segment, double bound_in,
                             std::span<const NearCell> cells, const Visit& visit) const {
  for (const NearCell& near : cells) {
    if (near.least_in > bound_in) return;
    const ReadyCell& cell = cells_->ready(near.cell);
    cell.index->visit_within(segment, bound_in, [&](std::uint32_t index, double bound) {
      bound_in = std::min(
          bound,
          visit({cell.shapes[index], index >= cell.first_edge, cell.triangles[index]}, bound));
      return bound_in;
    });
  }
}

void MeshField::visit_triangles(std::span<const NearCell> cells,
                                const std::function<void(const Triangle3&)>& visit) const {
  for (const NearCell& near : cells) {
    const Cell& cell = cells_->cells[near.cell];
    for (std::size_t i = cell.begin; i < cell.end; ++i) visit(cells_->triangle(cells_->order[i]));
  }
}

std::optional<MeshItem> MeshField::nearest_item(const Segment3& segment, double within_in) const {
  Bounds box = empty_bounds();
  include(box, segment.a);
  include(box, segment.b);
  std::optional<MeshItem> best;
  double least_in = within_in;
  visit_within(segment, within_in, cells_near(box, within_in),
               [&](const MeshItem& item, double bound_in) {
                 const double away = nearest(segment, item.shape).distance_in;
                 if (away > least_in || (best && away >= least_in)) return bound_in;
                 best = item;
                 least_in = away;
                 return away;
               });
  return best;
}

Bounds MeshField::bounds() const {
  return cells_->whole;
}

MeshTally MeshField::tally() const {
  const std::scoped_lock lock(cells_->tally_in_use);
  return cells_->tally;
}

}  // namespace linewright
