#include "commands/checked_report.hpp"
#include "commands/commands.hpp"
#include "render/compare_json.hpp"
#include "render/compare_text.hpp"

namespace linewright {

namespace {

/// Each project has its own meshes: those of one are of no use to the other.
Expected<Report, Outcome> report_on(const std::filesystem::path& project,
                                    const std::vector<std::string>& set, const ResultForm& form) {
  MeshStore meshes;
  CheckOptions options;
  options.project = project;
  options.form = form;
  options.set = set;
  return checked_report(options, meshes);
}

}  // namespace

Outcome compare(const CompareOptions& options) {
  if (!options.second && options.set.empty())
    return refusal(
        "nothing to compare: give a second project, or a change with --set PATH=VALUE, as in "
        "'linewright compare . --set routes.static-left.line=tube-aluminium-1/4'");
  const std::filesystem::path second = options.second.value_or(options.first);
  const auto a = report_on(options.first, {}, options.form);
  if (!a) return a.error();
  const auto b = report_on(second, options.set, options.form);
  if (!b) return b.error();
  const Comparison comparison{*a, *b, options.first.string(), second.string()};
  Outcome outcome;
  if (is_worse(comparison)) outcome.code = ExitCode::failed;
  outcome.result = options.form.format == Format::json
                       ? compare_json(comparison)
                       : compare_text(comparison, options.form.style);
  return outcome;
}

}  // namespace linewright
