#pragma once
// A mesh from a file, as structure that lines come near to: its triangles where they stand in the
// aeroplane, and its sharp edges. Most of a large mesh is far from every line, so the triangles are
// sorted into the cells of a coarse grid at once, and a cell is made ready to be measured against
// when something first comes near it.

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/bounds.hpp"
#include "geometry/distance.hpp"
#include "model/mesh_triangles.hpp"
#include "model/structure.hpp"

namespace linewright {

/// Triangles where they lie in memory: nine floats each, `stride_bytes` from one to the next, which
/// need not be aligned.
struct CornersView {
  const char* first = nullptr;
  std::size_t stride_bytes = sizeof(std::array<float, 9>);
  std::size_t count = 0;

  std::array<float, 9> operator[](std::size_t index) const {
    std::array<float, 9> corners;
    std::memcpy(corners.data(), first + index * stride_bytes, sizeof corners);
    return corners;
  }
};

/// What a mesh's file holds, ready to be placed. `keeps` holds what `corners` and `pieces` look at.
struct MeshSource {
  Mesh mesh;  ///< what the project says of it
  CornersView corners;
  std::span<const MeshPart> pieces;
  std::shared_ptr<const void> keeps;
};

/// What such files have wrong, and what was made of it. All but `triangles` are counted where lines
/// come near, and `looked_at` says of how many triangles.
struct MeshTally {
  std::size_t triangles = 0;
  std::size_t looked_at = 0;
  std::size_t without_area = 0;
  std::size_t duplicated = 0;      ///< the same three corners as another
  std::size_t open_edges = 0;      ///< of one face only
  std::size_t creases = 0;         ///< of two faces that meet at more than the crease angle
  std::size_t shared_by_many = 0;  ///< edges of three faces or more
  std::size_t turned_against = 0;  ///< edges whose two faces are wound against each other
};

/// A triangle, or a sharp edge as a triangle whose corner c repeats b.
struct MeshItem {
  Triangle3 shape;
  bool is_edge = false;
  std::uint32_t triangle = 0;  ///< index in the file
};

class MeshField {
 public:
  /// Sorts the triangles into cells on up to `threads` threads; the result does not depend on how
  /// many. All members below may be called from several threads at once.
  MeshField(MeshSource source, unsigned threads);
  ~MeshField();
  MeshField(MeshField&&) noexcept;

  const Mesh& mesh() const;
  /// False where a coordinate is not finite or farther than `largest_in` from the datum: the field
  /// is then empty and of no use.
  bool all_within() const;
  static constexpr double largest_in = 1e6;

  /// The file's name of the piece that a triangle belongs to; empty for none.
  std::string piece_of(std::uint32_t triangle) const;

  /// Cells, nearest first, with lower bounds on how near their triangles are.
  struct NearCell {
    double least_in = 0;
    std::uint32_t cell = 0;
  };
  std::vector<NearCell> cells_near(const Bounds& box, double within_in) const;

  /// Given an item that may be nearer than the bound, gives the bound from there on.
  using Visit = std::function<double(const MeshItem&, double bound_in)>;

  /// Visits every item of the cells that is nearer to the segment than the bound, and maybe others.
  /// `cells` must come from a box that holds the segment, and the bound must not be above theirs.
  void visit_within(const Segment3& segment, double bound_in, std::span<const NearCell> cells,
                    const Visit& visit) const;

  /// Visits every triangle of the cells, as they are: none is made ready, and no edge looked for.
  void visit_triangles(std::span<const NearCell> cells,
                       const std::function<void(const Triangle3&)>& visit) const;

  /// The nearest item that is not farther than `within_in`, or nothing.
  std::optional<MeshItem> nearest_item(const Segment3& segment, double within_in) const;

  MeshTally tally() const;

  /// Where the triangles stand; of no use where `all_within` is false.
  Bounds bounds() const;

 private:
  struct Cells;
  std::unique_ptr<Cells> cells_;
};

}  // namespace linewright
