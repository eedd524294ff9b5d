#include "rules/space/unknown_girth.hpp"

#include <algorithm>
#include <cmath>

#include "lines/prepare.hpp"

namespace linewright {

namespace {

bool lacks_outside(const Sleeve& sleeve) {
  return !sleeve.outside_in;
}

bool any_lacks_outside(const Route& route) {
  return std::any_of(route.sleeves.begin(), route.sleeves.end(), lacks_outside);
}

double widest_in(const Sleeve& sleeve, const Line& line) {
  return std::max(sleeve.bore_in.value_or(0), line.largest_diameter_in()) +
         2 * thickest_sleeve_wall_in;
}

/// The project with every such sleeve as thick as it may be.
Project thickened(const PreparedProject& prepared) {
  Project project = *prepared.project;
  for (std::size_t i = 0; i < project.routes.size(); ++i)
    for (Sleeve& sleeve : project.routes[i].sleeves)
      if (lacks_outside(sleeve)) sleeve.outside_in = widest_in(sleeve, *prepared.routes[i].line);
  return project;
}

std::vector<Judgement> judged_thick(const RuleContext& context,
                                    std::vector<Judgement> (*judge)(const RuleContext&)) {
  const Project project = thickened(context.prepared);
  MeshFields meshes;
  for (const MeshPartField& mesh : context.prepared.obstacles.meshes())
    meshes.push_back(mesh.field);
  const PreparedProject prepared = prepare(project, meshes);
  const LineMotion motion = motion_of(prepared);
  return judge({context.rule, prepared, motion, context.phrasing, context.passed_over,
                context.asked_routes, context.alone});
}

/// How many are as grave between the same two things.
std::ptrdiff_t as_grave(const std::vector<Judgement>& judgements, const Judgement& as) {
  return std::count_if(judgements.begin(), judgements.end(), [&](const Judgement& each) {
    return each.route == as.route && each.with == as.with && each.verdict >= as.verdict;
  });
}

struct SleeveOnRoute {
  const PreparedRoute* route = nullptr;
  const Sleeve* sleeve = nullptr;
  double middle_in() const { return (sleeve->from_in + sleeve->to_in) / 2; }
};

/// The sleeve that makes the judgement worse: the nearest to its place that states no outside, or
/// one of the route that it speaks of.
std::optional<SleeveOnRoute> blamed(const RuleContext& context, const Judgement& judgement) {
  for (const std::string& name : {judgement.route, judgement.with.value_or("")}) {
    const PreparedRoute* route = context.prepared.find_route(name);
    if (!route || !any_lacks_outside(*route->route)) continue;
    SleeveOnRoute nearest{route};
    const auto away = [&](const Sleeve& sleeve) {
      const double at = name == judgement.route ? judgement.distance_in.value_or(0) : 0;
      return std::max({0.0, sleeve.from_in - at, at - sleeve.to_in});
    };
    for (const Sleeve& sleeve : route->route->sleeves)
      if (lacks_outside(sleeve) && (!nearest.sleeve || away(sleeve) < away(*nearest.sleeve)))
        nearest.sleeve = &sleeve;
    return nearest;
  }
  return std::nullopt;
}

Judgement not_known(const RuleContext& context, const LimitRow& row, const SleeveOnRoute& at,
                    const Judgement& thick) {
  const bool is_own = thick.route == at.route->route->name;
  const double along = is_own ? thick.distance_in.value_or(at.middle_in()) : at.middle_in();
  Judgement judgement = context.at(*at.route, along);
  judgement.location = at.sleeve->where;
  judgement.with = is_own ? thick.with : thick.route;
  judgement.with_is_route = !is_own || thick.with_is_route;
  leave_unknown(judgement, row);
  const double widest = widest_in(*at.sleeve, *at.route->line);
  judgement.message = "the outside of the sleeve is missing: " + context.phrasing.length(widest) +
                      " across, as it may be, " + thick.message;
  judgement.mend = "state the sleeve's `outside`";
  return judgement;
}

}  // namespace

std::vector<Judgement> with_unknown_girths(const RuleContext& context, const LimitRow& row,
                                           std::vector<Judgement> (*judge)(const RuleContext&)) {
  std::vector<Judgement> judgements = judge(context);
  const std::vector<Route>& routes = context.prepared.project->routes;
  if (std::none_of(routes.begin(), routes.end(), any_lacks_outside)) return judgements;
  std::vector<const Sleeve*> said;
  std::vector<Judgement> unknown;
  const std::vector<Judgement> all_thick = judged_thick(context, judge);
  for (const Judgement& thick : all_thick) {
    if (thick.verdict == Verdict::pass || as_grave(all_thick, thick) <= as_grave(judgements, thick))
      continue;
    const auto sleeve = blamed(context, thick);
    if (!sleeve || std::find(said.begin(), said.end(), sleeve->sleeve) != said.end()) continue;
    said.push_back(sleeve->sleeve);
    unknown.push_back(not_known(context, row, *sleeve, thick));
  }
  judgements.insert(judgements.end(), unknown.begin(), unknown.end());
  return judgements;
}

}  // namespace linewright
