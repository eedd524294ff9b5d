#include "input/mesh/known_format.hpp"

#include <algorithm>
#include <array>

#include "input/mesh/text_words.hpp"

namespace linewright {
namespace {

struct KnownStart {
  std::string_view bytes;
  std::string_view words;
};

constexpr std::array<KnownStart, 6> known_starts{{
    {"glTF", "a binary glTF file: name it .glb"},
    {"ISO-10303-21", "a STEP file: export the part as STL"},
    {"ply\n", "a PLY file: export it as STL or OBJ"},
    {"ply\r", "a PLY file: export it as STL or OBJ"},
    {"PK\x03\x04", "a compressed archive: unpack it, or export the part as STL"},
    {"{", "JSON, perhaps glTF as text: export it as .glb"},
}};

constexpr std::array<std::string_view, 11> obj_words{"v", "vn", "vt",     "vp",     "f", "l",
                                                     "o", "g",  "mtllib", "usemtl", "s"};

bool is_obj_line(std::string_view line) {
  const std::string_view word = TextWords(line).next().text;
  return std::find(obj_words.begin(), obj_words.end(), word) != obj_words.end();
}

/// The first line that is neither empty nor a comment as OBJ has them.
std::string_view first_line(std::string_view text) {
  while (!text.empty()) {
    const std::string_view line = text.substr(0, text.find('\n'));
    const std::string_view word = TextWords(line).next().text;
    if (!word.empty() && !word.starts_with('#')) return line;
    text.remove_prefix(std::min(text.size(), line.size() + 1));
  }
  return {};
}

bool is_plain_text(std::string_view bytes) {
  return !bytes.empty() && std::all_of(bytes.begin(), bytes.end(), [](char c) {
    return (c >= ' ' && c <= '~') || c == '\n' || c == '\r' || c == '\t';
  });
}

}  // namespace

std::string_view format_words(std::string_view head) {
  for (const KnownStart& known : known_starts)
    if (head.starts_with(known.bytes)) return known.words;
  if (!is_plain_text(head)) return {};
  if (is_obj_line(first_line(head))) return "an OBJ file: name it .obj";
  return "text, but a text STL begins with the word 'solid'";
}

}  // namespace linewright
