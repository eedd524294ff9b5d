#include "input/mesh/ascii_stl.hpp"

#include <fmt/format.h>

#include "input/mesh/coordinates.hpp"
#include "input/mesh/mesh_builder.hpp"
#include "input/mesh/text_words.hpp"
#include "input/utf8.hpp"

namespace linewright {
namespace {

constexpr std::size_t longest_shown_word = 40;

[[noreturn]] void refuse(const TextWord& found, std::string_view wanted) {
  if (found.text.empty())
    throw MeshFault(found.offset,
                    fmt::format("expected '{}', but the file ends here: is it cut short?", wanted));
  throw MeshFault(found.offset, fmt::format("expected '{}', found '{}'", wanted,
                                            printable(found.text, longest_shown_word)));
}

void expect(TextWords& words, std::string_view wanted) {
  const TextWord found = words.next();
  if (!is_word(found.text, wanted)) refuse(found, wanted);
}

/// One facet, after its word "facet".
std::array<float, 9> read_facet(TextWords& words, double largest_coordinate) {
  expect(words, "normal");
  for (int i = 0; i < 3; ++i) words.next();
  expect(words, "outer");
  expect(words, "loop");
  std::array<float, 9> corners{};
  for (std::size_t corner = 0; corner < 3; ++corner) {
    expect(words, "vertex");
    for (std::size_t axis = 0; axis < 3; ++axis) {
      const TextWord word = words.next();
      if (word.text.empty()) refuse(word, "vertex x y z");
      corners[3 * corner + axis] =
          static_cast<float>(read_coordinate(word.text, word.offset, largest_coordinate));
    }
  }
  expect(words, "endloop");
  expect(words, "endfacet");
  return corners;
}

}  // namespace

bool looks_like_ascii_stl(std::string_view bytes) {
  return is_word(TextWords(bytes).next().text, "solid");
}

MeshTriangles read_ascii_stl(std::string_view text, double largest_coordinate) {
  MeshBuilder mesh;
  TextWords words(text);
  for (TextWord solid = words.next(); !solid.text.empty(); solid = words.next()) {
    if (!is_word(solid.text, "solid")) refuse(solid, "solid");
    mesh.start_part(part_name(words.rest_of_line().text));
    TextWord word = words.next();
    for (; is_word(word.text, "facet"); word = words.next())
      mesh.add(read_facet(words, largest_coordinate), word.offset);
    if (!is_word(word.text, "endsolid")) refuse(word, "facet' or 'endsolid");
    words.rest_of_line();
  }
  return mesh.finish();
}

}  // namespace linewright
