#pragma once
// The page of a report, written from what was judged.

#include <ctime>

#include "commands/commands.hpp"
#include "commands/mesh_store.hpp"
#include "model/expected.hpp"
#include "render/report.hpp"

namespace linewright {

/// Who asks for a page, and when.
struct PageOrder {
  Phrasing phrasing;
  bool watched = false;  ///< written again on each save
  std::time_t now = 0;
};

/// The page of a project whose `report` has every rule's judgements of every route. A refusal where
/// its meshes cannot be read. `path` is the project's as the user gave it.
Expected<std::string, Outcome> written_report(const Project& project, const Report& report,
                                              const std::filesystem::path& path,
                                              const PageOrder& order, MeshStore& meshes);

}  // namespace linewright
