#include "input/mesh/obj.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cstdint>
#include <optional>
#include <vector>

#include "input/mesh/coordinates.hpp"
#include "input/mesh/mesh_builder.hpp"
#include "input/mesh/polygon_corners.hpp"
#include "input/mesh/text_words.hpp"
#include "input/utf8.hpp"

namespace linewright {
namespace {

constexpr std::size_t longest_shown_word = 40;
constexpr std::size_t most_polygon_corners = 10'000;

/// Statements that say nothing on where the surface is.
constexpr std::array<std::string_view, 23> passed_over{
    "vt",        "vn",     "vp",     "p",      "l",      "s",        "mg",       "bevel",
    "lod",       "usemtl", "mtllib", "maplib", "usemap", "c_interp", "d_interp", "shadow_obj",
    "trace_obj", "ctech",  "stech",  "deg",    "bmat",   "step",     "cstype"};

/// Statements of curves, curved surfaces and other files.
constexpr std::array<std::string_view, 12> not_read{"curv", "curv2", "surf", "bsp", "bzp",  "cdc",
                                                    "cdp",  "res",   "call", "csh", "trim", "hole"};

template <std::size_t Count>
bool is_among(std::string_view word, const std::array<std::string_view, Count>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

class ObjReader {
 public:
  ObjReader(std::string_view text, double largest_coordinate)
      : words_(text), largest_coordinate_(largest_coordinate) {}

  MeshTriangles read() {
    while (!words_.at_end()) {
      const TextWord statement = words_.next_on_line();
      if (statement.text == "v")
        read_vertex();
      else if (statement.text == "f" || statement.text == "fo")
        read_face(statement);
      else if (statement.text == "o" || statement.text == "g")
        mesh_.start_part(part_name(words_.rest_of_line().text));
      else
        pass_over(statement);
    }
    return mesh_.finish();
  }

 private:
  void read_vertex() {
    std::array<double, 3> at{};
    for (double& coordinate : at) {
      const TextWord word = words_.next_on_line();
      if (word.text.empty()) throw MeshFault(word.offset, "a vertex needs three coordinates");
      coordinate = read_coordinate(word.text, word.offset, largest_coordinate_);
    }
    vertices_.push_back({at[0], at[1], at[2]});
    pass_over_rest();
  }

  void read_face(const TextWord& statement) {
    polygon_.clear();
    for (TextWord word = words_.next_on_line(); !word.text.empty() && word.text[0] != '#';
         word = words_.next_on_line())
      polygon_.push_back(vertices_[vertex_index(word)]);
    pass_over_rest();
    if (polygon_.size() < 3) throw MeshFault(statement.offset, "a face needs three corners");
    if (polygon_.size() > most_polygon_corners)
      throw MeshFault(statement.offset,
                      fmt::format("a face of {} corners is more than is read: export the mesh as "
                                  "triangles",
                                  polygon_.size()));
    triangles_.clear();
    if (!add_polygon(polygon_, budget_, triangles_))
      throw MeshFault(statement.offset,
                      "too many large hollow polygons: export the mesh as triangles");
    for (const auto& triangle : triangles_) add(triangle, statement.offset);
  }

  void add(const std::array<Vec3, 3>& triangle, std::size_t offset) {
    std::array<float, 9> corners{};
    for (std::size_t i = 0; i < 3; ++i) {
      corners[3 * i] = static_cast<float>(triangle[i].x);
      corners[3 * i + 1] = static_cast<float>(triangle[i].y);
      corners[3 * i + 2] = static_cast<float>(triangle[i].z);
    }
    mesh_.add(corners, offset);
  }

  /// The vertex that "7", "7/1", "7//3", "7/1/3" or the same with numbers below zero means.
  std::size_t vertex_index(const TextWord& word) const {
    std::string_view left = word.text;
    const std::optional<std::int64_t> vertex = take_number(left);
    bool sound = vertex.has_value();
    for (int part = 0; sound && part < 2 && left.starts_with('/'); ++part) {
      left.remove_prefix(1);
      if (!left.empty() && left[0] != '/') sound = take_number(left).has_value();
    }
    if (!sound || !left.empty())
      throw MeshFault(word.offset, fmt::format("expected a corner as vertex, vertex/texture or "
                                               "vertex/texture/normal, found '{}'",
                                               printable(word.text, longest_shown_word)));
    const auto count = static_cast<std::int64_t>(vertices_.size());
    if (*vertex == 0 || *vertex > count || *vertex < -count)
      throw MeshFault(word.offset, fmt::format("there is no vertex {}: {} stand above this line",
                                               *vertex, count));
    return static_cast<std::size_t>(*vertex > 0 ? *vertex - 1 : count + *vertex);
  }

  static std::optional<std::int64_t> take_number(std::string_view& text) {
    std::int64_t number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc()) return std::nullopt;
    text.remove_prefix(static_cast<std::size_t>(end - text.data()));
    return number;
  }

  void pass_over(const TextWord& statement) {
    if (is_among(statement.text, not_read))
      throw MeshFault(
          statement.offset,
          fmt::format("'{}' is not read: export the mesh as polygons in one file", statement.text));
    if (statement.text.starts_with('#')) {
      words_.rest_of_line();
      return;
    }
    if (!statement.text.empty() && !is_among(statement.text, passed_over))
      throw MeshFault(statement.offset, fmt::format("'{}' is no statement of a Wavefront OBJ file",
                                                    printable(statement.text, longest_shown_word)));
    pass_over_rest();
  }

  /// The rest of a statement, with the lines that a backslash joins to it. A comment is one line.
  void pass_over_rest() {
    bool joined = true;
    while (joined) {
      const std::string_view rest = words_.rest_of_line().text;
      joined = rest.ends_with('\\') && rest.find('#') == rest.npos;
    }
  }

  TextWords words_;
  double largest_coordinate_;
  std::vector<Vec3> vertices_;
  std::vector<Vec3> polygon_;
  std::vector<std::array<Vec3, 3>> triangles_;
  TilingBudget budget_ = whole_tiling_budget;
  MeshBuilder mesh_;
};

}  // namespace

MeshTriangles read_obj(std::string_view text, double largest_coordinate) {
  return ObjReader(text, largest_coordinate).read();
}

}  // namespace linewright
