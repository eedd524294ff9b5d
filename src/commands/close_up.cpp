#include "planning/close_up.hpp"

#include "commands/commands.hpp"
#include "commands/mesh_store.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "render/close_up_json.hpp"
#include "render/close_up_text.hpp"

namespace linewright {

Outcome close_up(const std::filesystem::path& project, const ResultForm& form) {
  const auto opened = open_project(project);
  if (!opened) return opened.error();
  MeshStore meshes;
  const auto fields = meshes.fields_of(*opened, project);
  if (!fields) return fields.error();
  const PreparedProject prepared = prepare(*opened, *fields);
  const CloseUp plan = close_up(prepared);
  return {plan.is_sound() ? ExitCode::nothing_failed : ExitCode::failed,
          form.format == Format::json ? close_up_json(plan) : close_up_text(plan, form.style), ""};
}

}  // namespace linewright
