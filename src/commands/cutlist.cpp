#include "commands/commands.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "render/cutlist_csv.hpp"
#include "render/cutlist_json.hpp"
#include "render/cutlist_text.hpp"

namespace linewright {

namespace {

std::string rendered(const Report& report, const ResultForm& form) {
  switch (form.format) {
    case Format::json:
      return cutlist_json(report);
    case Format::csv:
      return cutlist_csv(report, form.style.phrasing.unit);
    case Format::text:
      break;
  }
  return cutlist_text(report, form.style);
}

}  // namespace

Outcome cutlist(const std::filesystem::path& project, const ResultForm& form) {
  const std::variant<Project, Outcome> opened = open_project(project);
  if (const Outcome* refused = std::get_if<Outcome>(&opened)) return *refused;
  const PreparedProject prepared = prepare(std::get<Project>(opened));
  return {ExitCode::nothing_failed, rendered(describe(prepared), form), ""};
}

}  // namespace linewright
