#include "planning/rig.hpp"

#include <algorithm>

#include "commands/commands.hpp"
#include "commands/known_name.hpp"
#include "commands/mesh_store.hpp"
#include "commands/open_project.hpp"
#include "lines/prepare.hpp"
#include "render/chart/rig_charts.hpp"
#include "render/rig_csv.hpp"
#include "render/rig_json.hpp"
#include "render/rig_text.hpp"
#include "rules/judge.hpp"

namespace linewright {

namespace {

std::string rig_rendered(const Rig& rig, const ResultForm& form) {
  switch (form.format) {
    case Format::json:
      return rig_json(rig);
    case Format::csv:
      return rig_csv(rig, form.style.phrasing.unit);
    case Format::svg:
      return rig_charts(rig);
    case Format::sarif:  // only of `check`
    case Format::text:
      break;
  }
  return rig_text(rig, form.style);
}

/// Asks the rules how near each cable comes to anything.
void add_gaps(Rig& plan, const PreparedProject& prepared, const Phrasing& phrasing) {
  if (plan.cables.empty()) return;
  std::vector<Judgement> judgements;
  for (const std::string_view rule : gap_rules)
    for (Judgement& each : judge(prepared, phrasing, std::string(rule)))
      judgements.push_back(std::move(each));
  for (RiggedCable& cable : plan.cables) cable.least_gaps = least_gaps(judgements, cable.name);
}

/// Empty where the route asked for is a cable.
std::string wrong_route(const Project& project, const Rig& rig, const std::string& asked) {
  std::vector<std::string> cables;
  for (const RiggedCable& cable : rig.cables) cables.push_back(cable.name);
  const std::string wrong =
      unknown_name("control cable", asked, cables, "linewright rig lists them");
  const bool other = std::any_of(project.routes.begin(), project.routes.end(),
                                 [&](const Route& route) { return route.name == asked; });
  return !wrong.empty() && other ? "route '" + asked + "' is no control cable" : wrong;
}

}  // namespace

Outcome rig(const std::filesystem::path& project, const std::optional<std::string>& only_route,
            const ResultForm& form) {
  const auto opened = open_project(project);
  if (!opened) return opened.error();
  MeshStore meshes;
  const auto fields = meshes.fields_of(*opened, project);
  if (!fields) return fields.error();
  const PreparedProject prepared = prepare(*opened, *fields);
  Rig plan = plan_rig(prepared);
  if (only_route) {
    const std::string wrong = wrong_route(*prepared.project, plan, *only_route);
    if (!wrong.empty()) return refusal(wrong);
    std::erase_if(plan.cables, [&](const RiggedCable& each) { return each.name != *only_route; });
  }
  add_gaps(plan, prepared, form.phrasing());
  return {ExitCode::nothing_failed, rig_rendered(plan, form), ""};
}

}  // namespace linewright
