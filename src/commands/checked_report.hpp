#pragma once
// What `check` finds, before it is shown.

#include <optional>
#include <vector>

#include "commands/commands.hpp"
#include "commands/mesh_store.hpp"
#include "commands/open_project.hpp"
#include "model/expected.hpp"
#include "render/report.hpp"

namespace linewright {

/// Loads, prepares and judges the project; a refusal where it or the options are wrong. `meshes`
/// may be kept from one check to the next.
Expected<Report, Outcome> checked_report(const CheckOptions& options, MeshStore& meshes);

/// The same of a project that is read already, or of the refusal of it.
Expected<Report, Outcome> checked_report(const OpenedProject& opened, const CheckOptions& options,
                                         MeshStore& meshes);

/// A project as it was judged.
struct JudgedProject {
  Project project;
  MeshFields meshes;
};

/// The same where most of `said`, which was said of all of the project before, can be kept, in a
/// part of the time; nothing where it cannot. It is to be confirmed: see `judge_again`.
std::optional<Report> report_at_once(const OpenedProject& opened, const CheckOptions& options,
                                     MeshStore& meshes, const JudgedProject& before,
                                     const std::vector<Judgement>& said);

/// Whether anything failed or is unknown, or nothing was judged; where `strict`, also whether there
/// is a warning.
ExitCode exit_code(const Report& report, bool strict);

}  // namespace linewright
