#include "commands/mesh_store.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <thread>

#include "commands/open_project.hpp"
#include "geometry/parallel.hpp"
#include "input/mesh/read_mesh_file.hpp"
#include "lines/near/mesh_inside.hpp"
#include "lines/near/stretch.hpp"
#include "render/finding_text.hpp"

namespace linewright {

namespace {

Expected<std::shared_ptr<const MeshField>, Diagnostic> read_field(const Mesh& mesh) {
  auto read = read_mesh_file(mesh);
  if (!read) return std::move(read).error();
  const auto triangles = std::make_shared<const MeshTriangles>(*std::move(read));
  const CornersView corners{reinterpret_cast<const char*>(triangles->corners.data()),
                            sizeof triangles->corners[0], triangles->corners.size()};
  auto field =
      std::make_shared<const MeshField>(MeshSource{mesh, corners, triangles->parts, triangles},
                                        std::max(1U, std::thread::hardware_concurrency()));
  if (!field->all_within())
    return Diagnostic{mesh.where,
                      fmt::format("where mesh {} is placed, a corner of it is more than {:.0f} in "
                                  "from the datum",
                                  mesh.name, MeshField::largest_in),
                      "are its units, scale and translate right?", ""};
  return field;
}

/// What is farther from a line than this is no neighbour of it [common practice, no source].
constexpr double near_a_line_in = 1.5;

/// True where anything of the mesh may be near: cells are asked, which hold their triangles
/// tightly.
bool is_near_a_line(const MeshField& mesh, const std::vector<PreparedRoute>& routes) {
  for (const PreparedRoute& route : routes) {
    const double within =
        near_a_line_in + route.thickest_radius_in() + mesh.mesh().thickness_in / 2;
    for (const ChordBlock& block : make_stretch(route, 0, route.length_in()).blocks)
      if (!mesh.cells_near(block.bounds, within).empty()) return true;
  }
  return false;
}

/// No light aeroplane is longer or wider [common practice, no source]; a part of one is, where its
/// millimetres are taken for inches.
constexpr double longest_part_in = 1200;

std::string size_words(const Bounds& in_place) {
  const Vec3 size = in_place.max - in_place.min;
  if (std::max({size.x, size.y, size.z}) <= longest_part_in) return {};
  return "; that is larger than a light aeroplane: are its units right?";
}

/// What is said of lines that run inside of a mesh; empty for none.
std::string inside_words(const std::vector<std::string>& names) {
  if (names.empty()) return {};
  return fmt::format(
      "; {} {} inside of it, which is right for a skin: what is solid is described in `solids`",
      fmt::join(names, ", "), names.size() == 1 ? "runs" : "run");
}

}  // namespace

bool MeshStore::is_same(const Held& held, const Held& wanted) {
  const Mesh& a = held.mesh;
  const Mesh& b = wanted.mesh;
  return a.path == b.path && held.size == wanted.size && held.saved == wanted.saved &&
         a.placement == b.placement && a.crease_angle_deg == b.crease_angle_deg &&
         a.thickness_in == b.thickness_in;
}

Expected<MeshFields, Outcome> MeshStore::fields_of(const Project& project,
                                                   const std::filesystem::path& path) {
  MeshFields fields;
  std::vector<Held> held;
  std::vector<Diagnostic> errors;
  for (const Mesh& mesh : project.structure.meshes) {
    // Asked before the file is read: a file that is saved meanwhile is then read again next time.
    std::error_code ignored;
    Held wanted{mesh,
                std::filesystem::file_size(mesh.path, ignored),
                std::filesystem::last_write_time(mesh.path, ignored),
                nullptr,
                {}};
    const auto known = std::find_if(held_.begin(), held_.end(),
                                    [&](const Held& each) { return is_same(each, wanted); });
    if (known != held_.end()) {
      wanted.field = known->field;
      wanted.inside = known->inside;
    } else {
      auto read = read_field(mesh);
      if (!read) {
        errors.push_back(std::move(read).error());
        continue;
      }
      wanted.field = *std::move(read);
    }
    fields.push_back(wanted.field);
    held.push_back(std::move(wanted));
  }
  if (!errors.empty()) return refused(errors, path);
  held_ = std::move(held);
  return fields;
}

MeshFields MeshStore::last_fields() const {
  MeshFields fields;
  for (const Held& each : held_) fields.push_back(each.field);
  return fields;
}

std::vector<std::string> MeshStore::lines_inside(Held& held, const PreparedProject& prepared) {
  const std::vector<PreparedRoute>& routes = prepared.routes;
  std::vector<char> inside(routes.size());
  for_each_parallel(inside.size(), std::thread::hardware_concurrency(), [&](std::size_t i) {
    const Vec3 middle = middle_of(routes[i]);
    const auto known = held.inside.find({middle.x, middle.y, middle.z});
    inside[i] =
        (known == held.inside.end() ? is_inside(*held.field, middle) : known->second) ? 1 : 0;
  });
  held.inside.clear();
  std::vector<std::string> names;
  for (std::size_t i = 0; i < routes.size(); ++i) {
    const Vec3 middle = middle_of(routes[i]);
    held.inside[{middle.x, middle.y, middle.z}] = inside[i] != 0;
    if (inside[i] != 0) names.push_back(routes[i].route->name);
  }
  return names;
}

std::vector<std::string> MeshStore::notes_on(const PreparedProject& prepared,
                                             const Phrasing& phrasing) {
  std::vector<std::string> notes;
  const Obstacles& obstacles = prepared.obstacles;
  for (const MeshPartField& mesh : obstacles.meshes()) {
    const auto held = std::find_if(held_.begin(), held_.end(),
                                   [&](const Held& each) { return each.field == mesh.field; });
    const std::string inside = inside_words(lines_inside(*held, prepared));
    const MeshTally tally = mesh.field->tally();
    const std::string& name = obstacles.parts()[static_cast<std::size_t>(mesh.part)].name;
    const Bounds in_place = mesh.field->bounds();
    std::string note =
        fmt::format("mesh {} has {}, {}", name,
                    counted(static_cast<int>(tally.triangles), "triangle", "triangles"),
                    phrasing.extents(in_place.min, in_place.max)) +
        size_words(in_place);
    if (tally.looked_at == 0 && !is_near_a_line(*mesh.field, prepared.routes)) {
      notes.push_back(note + "; nothing of it comes near a line: is it where it should be?" +
                      inside);
      continue;
    }
    if (tally.looked_at < tally.triangles)
      note += fmt::format("; looked at near the lines: {}", tally.looked_at);
    const auto add = [&note](std::size_t count, std::string_view one, std::string_view many) {
      if (count > 0) note += "; " + counted(static_cast<int>(count), one, many);
    };
    add(tally.without_area, "has no area", "have no area");
    add(tally.duplicated, "is there twice", "are there twice");
    add(tally.turned_against, "edge has its faces turned against each other",
        "edges have their faces turned against each other");
    add(tally.open_edges, "open edge", "open edges");
    add(tally.creases, "crease", "creases");
    add(tally.shared_by_many, "edge of three faces or more", "edges of three faces or more");
    if (tally.open_edges + tally.creases + tally.shared_by_many > 0)
      note += ", which count as sharp";
    notes.push_back(note + inside);
  }
  return notes;
}

}  // namespace linewright
