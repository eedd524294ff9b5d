#include "commands/commands.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "render/chart/cut_charts.hpp"
#include "render/cutlist_csv.hpp"
#include "render/cutlist_json.hpp"
#include "render/cutlist_text.hpp"

namespace linewright {

namespace {

std::string cutlist_rendered(const Report& report, const ResultForm& form) {
  switch (form.format) {
    case Format::json:
      return cutlist_json(report);
    case Format::csv:
      return cutlist_csv(report, form.style.phrasing.unit);
    case Format::svg:
      return cut_charts(report, form.style);
    case Format::sarif:  // only of `check`
    case Format::text:
      break;
  }
  return cutlist_text(report, form.style);
}

}  // namespace

Outcome cutlist(const std::filesystem::path& project, const ResultForm& form) {
  const auto opened = open_project(project);
  if (!opened) return opened.error();
  const PreparedProject prepared = prepare(*opened);
  return {ExitCode::nothing_failed, cutlist_rendered(describe(prepared), form), ""};
}

}  // namespace linewright
