#pragma once
// Which edges of a mesh are sharp: those that bound a sheet, and those where faces meet at more
// than an angle.

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace linewright {

/// A triangle as in its file, and whether its own edges are asked for or it is there because it may
/// share one.
struct EdgeCandidate {
  std::array<float, 9> corners;
  std::uint32_t triangle = 0;
  bool asked = false;
};

/// An edge by the triangle it was found on: from that one's corner `corner` to the next.
struct SharpEdge {
  std::uint32_t candidate = 0;
  std::uint8_t corner = 0;
};

struct EdgeSearch {
  std::vector<SharpEdge> sharp;  ///< each once
  std::size_t open = 0;
  std::size_t creases = 0;
  std::size_t shared_by_many = 0;
  std::size_t turned_against = 0;
  std::size_t duplicated = 0;
  std::size_t without_area = 0;
};

/// Edges are the same where their ends are the same numbers, as in files whose corners are not
/// joined; corners that only nearly meet leave two open edges, which errs on the sharp side. An
/// edge of three faces or more counts as sharp. A triangle without area has no direction and so no
/// crease; one with two corners in one place has no edges at all. Each edge and triangle is counted
/// with the asked candidate of the lowest index.
EdgeSearch find_sharp_edges(std::span<const EdgeCandidate> candidates, double crease_angle_rad);

}  // namespace linewright
