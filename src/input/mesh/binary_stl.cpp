#include "input/mesh/binary_stl.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <bit>
#include <cstring>
#include <memory>
#include <new>
#include <system_error>
#include <variant>

#include "input/mesh/coordinates.hpp"
#include "input/mesh/mesh_fault.hpp"
#include "system/joined_thread.hpp"
#include "system/large_pages.hpp"

namespace linewright {
namespace {

static_assert(std::endian::native == std::endian::little, "the bytes are copied as they are");

using Corners = std::array<float, 9>;

constexpr std::size_t count_offset = 80;
/// Few enough for the processor to still have them at hand when they are copied on.
constexpr std::size_t facets_at_a_time = 4096;
/// Under this a second thread costs more than it saves.
constexpr std::size_t facets_worth_a_thread = 100'000;

std::uint32_t count_in(std::string_view head) {
  std::uint32_t count = 0;
  std::memcpy(&count, head.data() + count_offset, sizeof count);
  return count;
}

constexpr std::uint64_t bytes_for(std::uint64_t count) {
  return stl_header_bytes + count * stl_facet_bytes;
}

/// Room for `count` triangles, in large pages where the system has them: most of the time would go
/// into handing out small ones.
std::vector<Corners> room_for(std::size_t count) {
  std::vector<Corners> corners;
  corners.reserve(count);
  prefer_large_pages(corners.data(), count * sizeof(Corners));
  corners.resize(count);
  return corners;
}

enum class Outcome { sound, unreadable, unsound };

/// Facets `first` to `last`, not included, from the file to their places. Does not throw.
Outcome copy_facets(const OpenFile& file, std::size_t first, std::size_t last, float largest,
                    std::vector<Corners>& corners) {
  const std::unique_ptr<char[]> bytes(new (std::nothrow) char[facets_at_a_time * stl_facet_bytes]);
  if (!bytes) return Outcome::unreadable;
  bool sound = true;
  for (std::size_t i = first; i < last; i += facets_at_a_time) {
    const std::size_t count = std::min(facets_at_a_time, last - i);
    const auto got = file.read(bytes_for(i), bytes.get(), count * stl_facet_bytes);
    if (!got || *got != count * stl_facet_bytes) return Outcome::unreadable;
    const char* facet = bytes.get() + stl_normal_bytes;
    for (std::size_t k = i; k < i + count; ++k, facet += stl_facet_bytes) {
      std::memcpy(corners[k].data(), facet, sizeof(Corners));
      sound &= within(corners[k], largest);
    }
  }
  return sound ? Outcome::sound : Outcome::unsound;
}

void check_all(const std::vector<Corners>& corners, double largest) {
  for (std::size_t i = 0; i < corners.size(); ++i)
    for (std::size_t k = 0; k < corners[i].size(); ++k)
      check_coordinate(corners[i][k], bytes_for(i) + stl_normal_bytes + k * sizeof(float), largest);
}

}  // namespace

std::optional<std::size_t> binary_stl_count(const OpenFile& file) {
  std::array<char, stl_header_bytes> head{};
  const auto got = file.read(0, head.data(), head.size());
  if (!got || *got != head.size()) return std::nullopt;
  const std::size_t count = count_in({head.data(), head.size()});
  if (bytes_for(count) != file.size()) return std::nullopt;
  return count;
}

MeshTriangles read_binary_stl(const OpenFile& file, std::size_t count, double largest_coordinate) {
  if (count == 0) throw MeshFault(count_offset, "the mesh has no triangles");
  if (count > most_mesh_triangles)
    throw MeshFault(count_offset,
                    fmt::format("there are {} triangles; at most {} are read: simplify the mesh",
                                count, most_mesh_triangles));
  MeshTriangles mesh;
  mesh.corners = room_for(count);
  const auto largest = static_cast<float>(largest_coordinate);
  const std::size_t middle = count < facets_worth_a_thread ? count : count / 2;
  Outcome second = Outcome::sound;
  Outcome first = Outcome::sound;
  const auto copy_rest = [&] { second = copy_facets(file, middle, count, largest, mesh.corners); };
  JoinedThread other;
  if (middle < count) {
    try {
      other = JoinedThread(copy_rest);
    } catch (const std::system_error&) {
      copy_rest();  // no thread to be had
    }
  }
  first = copy_facets(file, 0, middle, largest, mesh.corners);
  other.join();
  if (first == Outcome::unreadable || second == Outcome::unreadable)
    throw MeshFault(std::nullopt, "the file could not be read to its end");
  if (first == Outcome::unsound || second == Outcome::unsound)
    check_all(mesh.corners, largest_coordinate);
  return mesh;
}

void refuse_binary_stl(std::string_view head, std::uint64_t size) {
  if (head.size() < stl_header_bytes)
    throw MeshFault(std::nullopt,
                    fmt::format("this is no STL file: it does not begin with 'solid', and {} bytes "
                                "are too few for a binary one",
                                size));
  const std::uint32_t count = count_in(head);
  throw MeshFault(count_offset,
                  fmt::format("{} triangles are counted, which take {} bytes, but the file has {}: "
                              "it is {}, or no STL file",
                              count, bytes_for(count), size,
                              bytes_for(count) > size ? "cut short" : "too long"));
}

}  // namespace linewright
