#pragma once
// The meshes of a project, read from their files once.

#include <array>
#include <filesystem>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include "commands/outcome.hpp"
#include "lines/prepared.hpp"
#include "model/expected.hpp"
#include "model/project.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// Keeps what it has read, so that a project that is checked again costs only what has changed. Not
/// for use by several threads at once.
class MeshStore {
 public:
  /// The project's meshes in its order, or a refusal that says what is wrong with their files.
  /// `path` is the project's as the user gave it. Files that have not changed since the last call
  /// are not read again, and what the last call held and this project does not name is let go.
  Expected<MeshFields, Outcome> fields_of(const Project& project,
                                          const std::filesystem::path& path);

  /// What the last call gave, where that was no refusal.
  MeshFields last_fields() const;

  /// What a report says of its meshes, a sentence each: how many triangles, where they stand, and
  /// what is wrong with those near the lines, or that none are. Ask after everything was judged, of
  /// a project made ready with the fields of the last call.
  std::vector<std::string> notes_on(const PreparedProject& prepared, const Phrasing& phrasing);

 private:
  struct Held {
    Mesh mesh;
    std::uintmax_t size = 0;
    std::filesystem::file_time_type saved;
    std::shared_ptr<const MeshField> field;
    /// Places that were asked about last, and whether each is inside of the mesh: a ray that tells
    /// it goes through much of a mesh.
    std::map<std::array<double, 3>, bool> inside = {};
  };
  static bool is_same(const Held& held, const Held& wanted);
  static std::vector<std::string> lines_inside(Held& held, const PreparedProject& prepared);

  std::vector<Held> held_;
};

}  // namespace linewright
