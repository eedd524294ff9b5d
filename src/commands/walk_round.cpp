#include "planning/walk_round.hpp"

#include <algorithm>

#include "commands/known_name.hpp"
#include "commands/mesh_store.hpp"
#include "commands/open_project.hpp"
#include "commands/walk_round.hpp"
#include "lines/prepare.hpp"
#include "render/walk_round_csv.hpp"
#include "render/walk_round_text.hpp"
#include "rules/judge.hpp"

namespace linewright {

Outcome walk_round(const std::filesystem::path& path, const std::optional<std::string>& only_route,
                   const ResultForm& form) {
  const auto project = open_project(path);
  if (!project) return project.error();
  if (only_route) {
    std::vector<std::string> routes;
    for (const Route& route : project->routes) routes.push_back(route.name);
    const std::string wrong = unknown_name("route", *only_route, routes);
    if (!wrong.empty()) return refusal(wrong);
  }
  MeshStore meshes;
  const auto fields = meshes.fields_of(*project, path);
  if (!fields) return fields.error();
  const PreparedProject prepared = prepare(*project, *fields);
  std::vector<WalkSheet> sheets =
      walk_round_sheets(prepared, judge(prepared, form.phrasing(), std::nullopt, std::nullopt));
  if (only_route)
    std::erase_if(sheets,
                  [&](const WalkSheet& sheet) { return sheet.route->route->name != *only_route; });
  return {ExitCode::nothing_failed,
          form.format == Format::csv ? walk_round_csv(sheets, form.style.phrasing.unit)
                                     : walk_round_text(project->name, sheets, form.style),
          ""};
}

}  // namespace linewright
