#pragma once
// Projects with one mesh, written as OBJ text in a test.

#include <fmt/format.h>

#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "input/mesh/read_mesh_file.hpp"
#include "lines/near/mesh_inside.hpp"
#include "lines/prepare.hpp"
#include "rules/project_text.hpp"

namespace linewright {

/// A project with one mesh, `body`, whose file holds this OBJ text.
class MeshProject {
 public:
  MeshProject(const ProjectSections& sections, const std::string& obj, bool read = true) {
    const ProjectFolder folder;
    folder.write("body.obj", obj);
    folder.write("project.yaml", sections.text());
    LoadResult result = load_project(folder.path() / "project.yaml", built_in_catalogue());
    if (!result.project) throw std::runtime_error(shown(result.errors) + "in\n" + sections.text());
    project_ = std::make_unique<Project>(std::move(*result.project));
    // That sums are made with little load is not what is tested.
    project_->load_factor.where.reset();
    MeshFields fields;
    for (const Mesh& mesh : project_->structure.meshes)
      if (read) fields.push_back(field_of(mesh));
    prepared_ = std::make_unique<PreparedProject>(prepare(*project_, fields));
  }

  std::vector<Judgement> judged(const std::string& rule) const {
    return judge(*prepared_, {}, rule);
  }

  /// Of the first route in the one mesh.
  bool first_runs_inside() const {
    return is_inside(*prepared_->obstacles.meshes()[0].field, middle_of(prepared_->routes[0]));
  }

 private:
  static std::shared_ptr<const MeshField> field_of(const Mesh& mesh) {
    auto reading = read_mesh_file(mesh);
    if (!reading) throw std::runtime_error(reading.error().message);
    const auto held = std::make_shared<const MeshTriangles>(*std::move(reading));
    const CornersView corners{reinterpret_cast<const char*>(held->corners.data()),
                              sizeof held->corners[0], held->corners.size()};
    return std::make_shared<const MeshField>(MeshSource{mesh, corners, held->parts, held}, 1);
  }

  std::unique_ptr<Project> project_;
  std::unique_ptr<PreparedProject> prepared_;
};

/// A quadrilateral of two triangles. Corners are counted from the last, so that more can follow.
inline std::string quad(Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
  std::string text;
  for (const Vec3& at : {a, b, c, d}) text += fmt::format("v {} {} {}\n", at.x, at.y, at.z);
  return text + "f -4 -3 -2 -1\n";
}

}  // namespace linewright
