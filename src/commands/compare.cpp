#include "commands/checked_report.hpp"
#include "commands/commands.hpp"
#include "lines/prepare.hpp"
#include "planning/parts.hpp"
#include "render/compare_json.hpp"
#include "render/compare_text.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

/// What is compared of one project.
struct Compared {
  Report report;
  std::vector<PartRow> parts;
};

/// Each project has its own meshes: those of one are of no use to the other.
Expected<Compared, Outcome> compared(const std::filesystem::path& project,
                                     const std::vector<std::string>& set, const ResultForm& form) {
  MeshStore meshes;
  CheckOptions options;
  options.project = project;
  options.form = form;
  options.set = set;
  const OpenedProject opened = open_with_files(project, set);
  auto report = checked_report(opened, options, meshes);
  if (!report) return report.error();
  const auto fields = meshes.fields_of(*opened.project, project);
  if (!fields) return fields.error();
  const PreparedProject prepared = prepare(*opened.project, *fields);
  return Compared{*std::move(report), parts_list(prepared, {.phrasing = form.phrasing()}).rows};
}

}  // namespace

Outcome compare(const CompareOptions& options) {
  if (!options.second && options.set.empty())
    return refusal(
        "nothing to compare: give a second project, or a change with --set PATH=VALUE, as in "
        "'linewright compare . --set routes.static-left.line=tube-aluminium-1/4'");
  const std::filesystem::path second = options.second.value_or(options.first);
  const auto a = compared(options.first, {}, options.form);
  if (!a) return a.error();
  const auto b = compared(second, options.set, options.form);
  if (!b) return b.error();
  const Comparison comparison{a->report,       b->report, text_of(options.first),
                              text_of(second), a->parts,  b->parts};
  Outcome outcome;
  if (is_worse(comparison)) outcome.code = ExitCode::failed;
  outcome.result = options.form.format == Format::json
                       ? compare_json(comparison)
                       : compare_text(comparison, options.form.style);
  return outcome;
}

}  // namespace linewright
