#include "input/mesh_entry.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <system_error>

#include "input/field_reader.hpp"
#include "input/mesh/read_mesh_file.hpp"
#include "input/project_paths.hpp"
#include "input/suggest_name.hpp"
#include "model/sheet.hpp"

namespace linewright {
namespace {

constexpr std::array units{Choice<double>{"in", 1.0}, Choice<double>{"mm", 1 / 25.4},
                           Choice<double>{"m", 1000 / 25.4}, Choice<double>{"ft", 12.0}};

constexpr std::array axes{Choice<Vec3>{"FS", {1, 0, 0}}, Choice<Vec3>{"BL", {0, 1, 0}},
                          Choice<Vec3>{"WL", {0, 0, 1}}};

constexpr NumberSpec scale{"a scale", Dimension::plain, Sign::positive, 1e6, ""};
constexpr NumberSpec turn_angle{"an angle", Dimension::angle, Sign::any, 360, "deg"};
constexpr NumberSpec crease_angle{"a crease angle", Dimension::angle, Sign::positive, 180, "deg"};
constexpr NumberSpec thickness{"a thickness", Dimension::length, Sign::not_negative,
                               largest_sheet_thickness_in};

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
    if (mesh_format(entry->path())) names.push_back(entry->path().filename().string());
  std::sort(names.begin(), names.end());
  return names;
}

/// The file that the project names, or an empty path after an error.
ProjectPath find_file(FieldReader& fields, ReadContext& context) {
  const std::string written = fields.text("file", "a file name");
  if (written.empty()) return {};
  auto resolved = resolve_project_path(context.project_folder, context.file_folder, written);
  if (const auto* why_not = std::get_if<std::string>(&resolved)) {
    context.error(fields.where_of("file"), *why_not);
    return {};
  }
  ProjectPath& file = std::get<ProjectPath>(resolved);
  context.draft.note_file(context.file_folder / written);
  std::error_code failure;
  const auto status = std::filesystem::status(file.path, failure);
  if (!std::filesystem::exists(status))
    context.error(fields.where_of("file"), fmt::format("there is no file {}", quoted_text(written)),
                  suggest_name(file.path.filename().string(), meshes_in(file.path.parent_path())));
  else if (!std::filesystem::is_regular_file(status))
    context.error(fields.where_of("file"), fmt::format("{} is not a file", quoted_text(written)));
  return std::move(file);
}

Turn read_turn(const YamlNode& node, ReadContext& context) {
  FieldReader fields(node, "a turn", context, {"about", "angle"});
  Turn turn;
  turn.axis = fields.choice("about", "the axis of a turn", axes).value_or(Vec3{1, 0, 0});
  turn.angle_deg = fields.number("angle", turn_angle);
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
  FieldReader fields(
      node, "a mesh", context,
      {"name", "file", "units", "scale", "rotate", "translate", "crease_angle", "thickness"});
  Mesh mesh;
  mesh.where = node.where;
  mesh.name = fields.give_name(Named::part);
  ProjectPath file = find_file(fields, context);
  mesh.path = std::move(file.path);
  mesh.file = std::move(file.shown);
  mesh.inches_per_unit = fields.optional_choice("units", "the units of a mesh", units)
                             .value_or(usual_inches_per_unit(mesh.path));
  mesh.scale = fields.optional_number("scale", scale).value_or(1);
  for (const YamlNode& item : fields.items("rotate"))
    mesh.turns.push_back(read_turn(item, context));
  if (fields.has("translate")) mesh.translate = fields.place("translate");
  mesh.placement = placement_of(mesh);
  mesh.crease_angle_deg =
      fields.optional_number("crease_angle", crease_angle).value_or(usual_crease_angle_deg);
  mesh.thickness_in = fields.optional_number("thickness", thickness).value_or(0);
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
