#include "input/mesh/read_mesh_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <limits>
#include <memory>
#include <new>
#include <string_view>
#include <utility>

#include "input/mesh/ascii_stl.hpp"
#include "input/mesh/binary_stl.hpp"
#include "input/mesh/coordinates.hpp"
#include "input/mesh/glb.hpp"
#include "input/mesh/glb_file.hpp"
#include "input/mesh/known_format.hpp"
#include "input/mesh/mesh_fault.hpp"
#include "input/mesh/obj.hpp"
#include "input/utf8.hpp"
#include "model/units.hpp"
#include "system/open_file.hpp"
#include "system/path_text.hpp"

namespace linewright {
namespace {

constexpr double metre_in = 1000 / mm_per_in;
/// Longer lines are no help under an error.
constexpr std::size_t longest_shown_line_bytes = 1000;

/// Enough to come to the first line of a text that is not a comment.
constexpr std::size_t sniffed_bytes = 4096;

constexpr double largest_float = std::numeric_limits<float>::max();

/// All bytes of a file.
class FileBytes {
 public:
  explicit FileBytes(const OpenFile& file)
      : bytes_(new char[static_cast<std::size_t>(file.size())]) {
    const auto got = file.read(0, bytes_.get(), static_cast<std::size_t>(file.size()));
    if (!got) throw MeshFault(std::nullopt, got.error());
    size_ = *got;
  }

  std::string_view view() const { return {bytes_.get(), size_}; }

 private:
  std::unique_ptr<char[]> bytes_;
  std::size_t size_ = 0;
};

/// The error at a byte of a text: its line and column, and the line itself.
Diagnostic in_text(const MeshFault& fault, const std::string& shown_name, std::string_view text) {
  Diagnostic diagnostic{{shown_name, 0, 0}, fault.what(), "", ""};
  if (!fault.offset()) return diagnostic;
  const std::string_view before = text.substr(0, *fault.offset());
  const std::size_t first = before.rfind('\n') + 1;  // npos + 1 is the text's start
  diagnostic.where.line = static_cast<int>(std::count(before.begin(), before.end(), '\n')) + 1;
  diagnostic.where.column = static_cast<int>(character_count(before.substr(first))) + 1;
  std::string_view line = text.substr(first, text.find('\n', first) - first);
  if (line.ends_with('\r')) line.remove_suffix(1);
  if (line.size() <= longest_shown_line_bytes) diagnostic.source_line = line;
  return diagnostic;
}

Diagnostic in_bytes(const MeshFault& fault, const std::string& shown_name) {
  const std::string words = fault.offset()
                                ? fmt::format("byte {}: {}", *fault.offset(), fault.what())
                                : std::string(fault.what());
  return {{shown_name, 0, 0}, words, "", ""};
}

using Reading = Expected<MeshTriangles, Diagnostic>;

template <typename Reader>
Reading read_text_mesh(Reader reader, const FileBytes& bytes, const std::string& shown_name,
                       double largest_coordinate) {
  try {
    return reader(bytes.view(), largest_coordinate);
  } catch (const MeshFault& fault) {
    return in_text(fault, shown_name, bytes.view());
  }
}

Reading read_stl(const OpenFile& file, const std::string& shown_name, double largest_coordinate) {
  if (const auto count = binary_stl_count(file))
    return read_binary_stl(file, *count, largest_coordinate);
  const FileBytes bytes(file);
  const std::string_view head = bytes.view().substr(0, stl_header_bytes);
  if (!looks_like_ascii_stl(bytes.view()))
    if (const auto other = format_words(bytes.view().substr(0, sniffed_bytes)); !other.empty())
      throw MeshFault(std::nullopt, fmt::format("this is no STL file: it looks like {}", other));
  // A binary file may begin with "solid" too; what follows in its head is most often zeros.
  if (!looks_like_ascii_stl(bytes.view()) || head.find('\0') != head.npos)
    refuse_binary_stl(head, file.size());
  return read_text_mesh(read_ascii_stl, bytes, shown_name, largest_coordinate);
}

std::string lower_extension(const std::filesystem::path& path) {
  std::string extension = text_of(path.extension());
  for (char& c : extension)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return extension;
}

[[noreturn]] void refuse_format(const std::filesystem::path& path) {
  throw MeshFault(std::nullopt,
                  lower_extension(path) == ".gltf"
                      ? "a .gltf file keeps its figures in other files, which are not read: export "
                        "as .glb"
                      : "a mesh must be a .stl, .obj or .glb file");
}

/// What another thing than a mesh shows in its first bytes, without reading the rest of it.
void check_first_bytes(const OpenFile& file, MeshFormat format) {
  std::array<char, sniffed_bytes> first;
  const auto got = file.read(0, first.data(), first.size());
  if (!got) throw MeshFault(std::nullopt, got.error());
  const std::string_view head(first.data(), *got);
  if (format == MeshFormat::glb) check_glb_head(head.substr(0, glb_head_bytes), file.size());
  const std::size_t nought = head.find('\0');
  if (format == MeshFormat::obj && nought != head.npos)
    throw MeshFault(nought, "a NUL byte: this is no OBJ file, which is a text");
}

Reading read_opened(const OpenFile& file, MeshFormat format, const std::string& shown_name,
                    double largest_coordinate) {
  if (file.size() == 0) throw MeshFault(std::nullopt, "the file is empty");
  check_first_bytes(file, format);
  if (format == MeshFormat::stl) return read_stl(file, shown_name, largest_coordinate);
  const FileBytes bytes(file);
  if (format == MeshFormat::obj)
    return read_text_mesh(read_obj, bytes, shown_name, largest_coordinate);
  return read_glb(bytes.view(), largest_coordinate);
}

Reading read_by_format(const std::filesystem::path& path, const std::string& shown_name,
                       double largest_coordinate) {
  const auto file = open_file(path, largest_mesh_file_bytes);
  if (!file) throw MeshFault(std::nullopt, file.error());
  const std::optional<MeshFormat> format = mesh_format(path);
  if (!format) refuse_format(path);
  try {
    Reading reading = read_opened(*file, *format, shown_name, largest_coordinate);
    if (!file->changed()) return reading;
  } catch (const MeshFault&) {
    if (!file->changed()) throw;
  }
  throw MeshFault(std::nullopt, std::string(changed_words));
}

}  // namespace

std::optional<MeshFormat> mesh_format(const std::filesystem::path& path) {
  const std::string extension = lower_extension(path);
  if (extension == ".stl") return MeshFormat::stl;
  if (extension == ".obj") return MeshFormat::obj;
  if (extension == ".glb") return MeshFormat::glb;
  return std::nullopt;
}

double usual_inches_per_unit(const std::filesystem::path& path) {
  return mesh_format(path) == MeshFormat::glb ? metre_in : 1;
}

Expected<MeshTriangles, Diagnostic> read_mesh_file(const Mesh& mesh) {
  return read_mesh_file(mesh.path, mesh.file,
                        farthest_coordinate_in / (mesh.inches_per_unit * mesh.scale));
}

Expected<MeshTriangles, Diagnostic> read_mesh_file(const std::filesystem::path& path,
                                                   const std::string& shown_name,
                                                   double largest_coordinate) {
  try {
    return read_by_format(path, shown_name, std::min(largest_coordinate, largest_float));
  } catch (const MeshFault& fault) {
    return in_bytes(fault, shown_name);
  } catch (const std::bad_alloc&) {
    return Diagnostic{{shown_name, 0, 0}, "the mesh does not fit into memory: simplify it", "", ""};
  }
}

}  // namespace linewright
