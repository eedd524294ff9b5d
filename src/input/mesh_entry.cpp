#include "input/mesh_entry.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <system_error>

#include "input/keys/structure_keys.hpp"
#include "input/map_reader.hpp"
#include "input/mesh/read_mesh_file.hpp"
#include "input/project_paths.hpp"
#include "input/suggest_name.hpp"
#include "model/sheet.hpp"
#include "system/path_text.hpp"

namespace linewright {
namespace {

/// A folder with more in it is not searched for a misspelt name.
constexpr std::size_t most_files_searched = 10'000;

/// Names of the mesh files in a folder, in order; none where it cannot be read.
std::vector<std::string> meshes_in(const std::filesystem::path& folder) {
  std::vector<std::string> names;
  std::error_code failure;
  std::size_t searched = 0;
  for (std::filesystem::directory_iterator entry(folder, failure), end;
       !failure && entry != end && searched < most_files_searched;
       entry.increment(failure), ++searched)
    if (mesh_format(entry->path())) names.push_back(text_of(entry->path().filename()));
  std::sort(names.begin(), names.end());
  return names;
}

using MeshReader = MapReader<mesh_map>;

/// The file that the project names, or an empty path after an error.
ProjectPath find_file(MeshReader& fields, ReadContext& context) {
  const std::string written = fields.text("file");
  if (written.empty()) return {};
  auto file = resolve_project_path(context.project_folder, context.file_folder, written);
  if (!file) {
    context.error(fields.where_of("file"), file.error());
    return {};
  }
  context.draft.note_file(context.file_folder / path_of(written));
  std::error_code failure;
  const auto status = std::filesystem::status(file->path, failure);
  if (!std::filesystem::exists(status))
    context.error(
        fields.where_of("file"), fmt::format("there is no file {}", quoted_text(written)),
        suggest_name(text_of(file->path.filename()), meshes_in(file->path.parent_path())));
  else if (!std::filesystem::is_regular_file(status))
    context.error(fields.where_of("file"), fmt::format("{} is not a file", quoted_text(written)));
  return *std::move(file);
}

Turn read_turn(const YamlNode& node, ReadContext& context) {
  MapReader<turn_map> fields(node, context);
  Turn turn;
  turn.axis = fields.word<turn_axes>("about").value_or(Vec3{1, 0, 0});
  turn.angle_deg = fields.number("angle");
  return turn;
}

Placement placement_of(const Mesh& mesh) {
  Placement placement = scaled(mesh.inches_per_unit * mesh.scale);
  for (const Turn& turn : mesh.turns)
    placement = composed(turned(turn.axis, turn.angle_deg), placement);
  return composed(moved(mesh.translate), placement);
}

/// Names of the meshes that the predicate picks.
template <typename Predicate>
std::vector<std::string> names_where(const std::vector<UnstatedMesh>& meshes, Predicate picks) {
  std::vector<std::string> names;
  for (const UnstatedMesh& mesh : meshes)
    if (picks(mesh)) names.push_back(mesh.name);
  return names;
}

}  // namespace

void read_mesh(const YamlNode& node, ReadContext& context) {
  MeshReader fields(node, context);
  Mesh mesh;
  mesh.where = node.where;
  mesh.name = fields.own_name(context.draft);
  ProjectPath file = find_file(fields, context);
  mesh.path = std::move(file.path);
  mesh.file = std::move(file.shown);
  mesh.inches_per_unit =
      fields.optional_word<mesh_units>("units").value_or(usual_inches_per_unit(mesh.path));
  mesh.scale = fields.optional_number("scale").value_or(1);
  for (const YamlNode& item : fields.items("rotate"))
    mesh.turns.push_back(read_turn(item, context));
  mesh.translate = fields.optional_place("translate").value_or(Vec3{});
  mesh.placement = placement_of(mesh);
  mesh.crease_angle_deg = fields.optional_number("crease_angle").value_or(usual_crease_angle_deg);
  mesh.thickness_in = fields.optional_number("thickness").value_or(0);
  context.draft.unstated_meshes.push_back({mesh.name,
                                           fields.has("units")        ? ""
                                           : mesh.inches_per_unit > 1 ? "metres"
                                                                      : "inches",
                                           !fields.has("crease_angle"), !fields.has("thickness")});
  context.draft.project.structure.meshes.push_back(std::move(mesh));
}

void add_mesh_assumptions(ProjectDraft& draft) {
  const auto add = [&](auto picks, std::string_view words, auto... taken) {
    const std::vector<std::string> names = names_where(draft.unstated_meshes, picks);
    if (!names.empty())
      draft.project.assumptions.push_back(
          fmt::format(fmt::runtime(words), fmt::join(names, ", "), taken...));
  };
  for (const std::string_view unit : {"inches", "metres"})
    add([unit](const UnstatedMesh& mesh) { return mesh.unit_taken == unit; },
        "units of meshes are not stated: {}; {} were taken", unit);
  add([](const UnstatedMesh& mesh) { return mesh.crease_angle; },
      "meshes that state no crease_angle: {}; edges turned by more than {} deg were taken as sharp",
      usual_crease_angle_deg);
  add([](const UnstatedMesh& mesh) { return mesh.thickness; },
      "meshes that state no thickness: {}; their faces were taken as the surface itself");
}

}  // namespace linewright
