#include <utility>

#include "commands/checked_report.hpp"
#include "commands/commands.hpp"
#include "commands/open_project.hpp"
#include "commands/written_report.hpp"
#include "lines/near/passed_over.hpp"
#include "lines/prepare.hpp"
#include "planning/air_system.hpp"
#include "planning/parts.hpp"
#include "planning/rig.hpp"
#include "planning/scene.hpp"
#include "planning/schedule.hpp"
#include "render/report/report_page.hpp"
#include "render/time_of_day.hpp"

namespace linewright {

namespace {

/// Sea level on a standard day: a page is not written for one field.
constexpr LeakTestSetup standard_day{0, 29.92, 59, {}, {}, {}};

PlannedLeakTest planned(const std::string& name, const std::vector<AirSystem>& pieces) {
  if (pieces.size() != 1) return {name, {}, "the system is in pieces that no node joins"};
  auto plan = plan_leak_test(pieces.front(), standard_day);
  if (std::string* refusal = std::get_if<std::string>(&plan)) return {name, {}, *refusal};
  return {name, std::get<LeakTestPlan>(std::move(plan)), {}};
}

std::vector<PlannedLeakTest> leak_tests(const PreparedProject& prepared) {
  std::vector<PlannedLeakTest> tests;
  for (const std::string& name : system_names(*prepared.project)) {
    const SystemKind kind = kind_of_system(*prepared.project, name);
    if (kind == SystemKind::static_air || kind == SystemKind::pitot)
      tests.push_back(planned(name, air_systems(prepared, name)));
  }
  return tests;
}

}  // namespace

Expected<std::string, Outcome> written_report(const Project& project, const Report& report,
                                              const std::filesystem::path& path,
                                              const PageOrder& order, MeshStore& meshes) {
  const auto fields = meshes.fields_of(project, path);
  if (!fields) return fields.error();
  const PreparedProject prepared = prepare(project, *fields);
  ReportPage page;
  page.report = report;
  page.report.passed_over = passed_over_near_fittings(prepared, "");
  page.phrasing = order.phrasing;
  page.watched = order.watched;
  page.written = date_of(order.now) + " " + time_of_day(order.now);
  page.rig = plan_rig(prepared);
  page.leak_tests = leak_tests(prepared);
  page.by_part = schedule(prepared, ScheduleOrder::part);
  page.by_frame = schedule(prepared, ScheduleOrder::frame);
  PartsOptions shopping;
  shopping.phrasing = order.phrasing;
  page.parts = parts_list(prepared, shopping);
  if (!project.closures.empty()) page.close_up = close_up(prepared);
  for (RiggedCable& cable : page.rig.cables)
    cable.least_gaps = least_gaps(report.judgements, cable.name);
  page.scene = scene_of(prepared, motion_of(prepared));
  return report_page(page);
}

Outcome report(const CheckOptions& options) {
  const OpenedProject opened = open_with_files(options.project, options.set);
  if (!opened.project) return opened.project.error();
  MeshStore meshes;
  const auto judged = checked_report(opened, options, meshes);
  if (!judged) return judged.error();
  auto page = written_report(*opened.project, *judged, options.project,
                             {options.form.phrasing(), false, std::time(nullptr)}, meshes);
  if (!page) return page.error();
  return {exit_code(*judged, options.strict), *std::move(page), ""};
}

}  // namespace linewright
