#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "lines/access/arm_reach.hpp"
#include "lines/access/closing_order.hpp"
#include "lines/access/opening_shape.hpp"
#include "lines/access/reachable_things.hpp"
#include "lines/closed_over.hpp"
#include "model/support_name.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow shown_control{
    .name = "control-part-shown",
    .subject = "ways to see or touch each fairlead, pulley, terminal and turnbuckle, closed up",
    .value = 1,
    .unit = Unit::none,
    .source = "14 CFR 23.689(a)(3): each must be open to visual inspection",
    .mark = Mark::verified_secondary};
constexpr LimitRow reached_joint{
    .name = "joint-reached",
    .subject = "ways to reach each joint, drain and instrument connection, closed up",
    .value = 1,
    .unit = Unit::none,
    .source = "a leak can be mended, and water let out, only where a hand comes to it",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
constexpr LimitRow in_order{
    .name = "closing-order",
    .subject = "closures and tasks that wait for themselves, round through others",
    .value = 0,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = "none of them can be the first",
    .mark = Mark::calculated};

constexpr LimitRow support_on_closure{
    .name = "support-on-closure",
    .subject = "closures that a line's support goes on with",
    .value = 0,
    .unit = Unit::none,
    .sense = LimitSense::at_most,
    .source = "it is fitted blind, and comes off with what it is fixed to, the line in it",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr auto access_limits =
    limit_table({shown_control, reached_joint, in_order, support_on_closure});

/// Nothing for what stays when closures come off.
void judge_supports(const RuleContext& context, std::vector<Judgement>& judgements) {
  const Project& project = *context.prepared.project;
  for (const PreparedRoute& route : context.prepared.routes)
    for (std::size_t i = 0; i < route.route->points.size(); ++i) {
      const RoutePoint& point = route.route->points[i];
      if (!point.hold || point.to.empty()) continue;
      for (const Closure& closure : project.closures) {
        if (!goes_on_with(project, point.to, closure)) continue;
        Judgement judgement = context.at(route, route.point_distance_in[i]);
        judgement.location = point.where;
        judgement.with = point.to;
        holds(judgement, 1, {support_on_closure});
        judgement.message = "the " + support_name(point) + " goes on and comes off with " +
                            closure.name + ", and the line with it";
        judgement.mend = "fix it to what stays when " + closure.name + " comes off";
        judgements.push_back(judgement);
      }
    }
}

void judge_closures(const RuleContext& context, std::vector<Judgement>& judgements) {
  const Project& project = *context.prepared.project;
  const std::set<std::string> that_cover = closures_that_cover(project);
  for (const Closure& closure : project.closures) {
    if (that_cover.contains(closure.name)) continue;
    Judgement judgement = context.about(closure.name, closure.where);
    leave_unknown(judgement, shown_control);
    judgement.message = "closure " + closure.name + " does not say what goes on with it";
    judgement.mend = "name its panels or skins in 'covers'";
    judgements.push_back(judgement);
  }
}

/// A slip in its place would let hands in where there is no opening.
void judge_access_openings(const RuleContext& context, std::vector<Judgement>& judgements) {
  for (const Closure& closure : context.prepared.project->closures)
    for (const Opening& opening : closure.openings) {
      if (is_cut_into_something(shape_of(opening, context.prepared), context.prepared)) continue;
      Judgement judgement = context.about(closure.name, opening.where);
      leave_unknown(judgement, shown_control);
      judgement.at = opening.centre;
      judgement.message = "opening " + opening.name + " is cut into nothing: no structure lies " +
                          "within " + context.phrasing.length(opening_depth_in) + " of it";
      judgement.mend = "set right where it is, or describe what it is cut into";
      judgements.push_back(judgement);
    }
}

const SourceLocation* location_of(const Project& project, const std::string& name) {
  for (const Closure& closure : project.closures)
    if (closure.name == name) return &closure.where;
  for (const Task& task : project.tasks)
    if (task.name == name) return &task.where;
  return nullptr;
}

void judge_order(const RuleContext& context, std::vector<Judgement>& judgements) {
  const Project& project = *context.prepared.project;
  std::vector<std::string> names;
  for (const Closure& closure : project.closures) names.push_back(closure.name);
  for (const Task& task : project.tasks) names.push_back(task.name);
  for (const std::vector<std::string>& circle :
       closing_order(names, stated_order(project)).circles) {
    const SourceLocation* where = location_of(project, circle.front());
    Judgement judgement = context.about(circle.front(), where ? *where : SourceLocation{});
    holds(judgement, static_cast<double>(circle.size()), {in_order});
    judgement.message =
        fmt::format("closures and tasks wait for each other: {}", fmt::join(circle, ", then ")) +
        ", then " + circle.front() + " again";
    judgement.mend = "take one of them out of the 'after' of the next";
    judgements.push_back(judgement);
  }
}

/// The limit that a thing is held to; nullptr for what needs no access once it is fitted.
const LimitRow* limit_of(const Thing& thing) {
  const SystemKind system = thing.route->route->system;
  if (is_air(system)) return thing.kind == ThingKind::fitting ? &reached_joint : nullptr;
  if (system != SystemKind::cable) return nullptr;
  switch (thing.kind) {
    case ThingKind::fairlead:
    case ThingKind::pulley:
    case ThingKind::terminal:
    case ThingKind::turnbuckle:
      return &shown_control;
    default:
      return nullptr;
  }
}

Judgement begun(const RuleContext& context, const Thing& thing) {
  Judgement judgement = context.at(*thing.route, thing.distance_in);
  // Without its distance, which depends on the end that the route is drawn from.
  judgement.with = thing.name.substr(0, thing.name.rfind(" at "));
  judgement.at = thing.at;
  judgement.location = thing.where;
  return judgement;
}

/// The opening whose middle is nearest, with how far that is.
std::string nearest_opening(const RuleContext& context, Vec3 at) {
  const Opening* found = nullptr;
  for (const Closure& closure : context.prepared.project->closures)
    for (const Opening& opening : closure.openings)
      if (!found || distance(opening.centre, at) < distance(found->centre, at)) found = &opening;
  if (!found) return "no closure has an opening";
  return "the nearest opening, " + found->name + ", is " +
         context.phrasing.length(distance(found->centre, at)) + " away in a straight line, with " +
         context.phrasing.length(found->reach_in) + " of reach";
}

Judgement judge_thing(const RuleContext& context, const Thing& thing, const LimitRow& row,
                      const ArmReach& reach, const std::vector<ReachedBy>& reached, bool seen) {
  Judgement judgement = begun(context, thing);
  const bool visible = seen && &row == &shown_control;
  const double ways = visible || !reached.empty() ? 1 : 0;
  if (holds(judgement, ways, {row})) {
    const WayIn* way =
        reached.empty() ? nullptr : &reach.ways()[static_cast<std::size_t>(reached.front().way)];
    judgement.message = way ? thing.name + " can be reached by " + way->name + ", " +
                                  context.phrasing.length(reached.front().distance_in) + " in"
                            : thing.name + " can be seen through an opening";
    return judgement;
  }
  const bool control = &row == &shown_control;
  judgement.message = std::string(control ? "no opening shows " : "no hand comes to ") +
                      thing.name + " once all is closed up: " + nearest_opening(context, thing.at);
  judgement.mend = control ? "leave an opening from which it can be seen or touched, or move it"
                           : "leave an opening within an arm's reach of it, or move it";
  return judgement;
}

void judge_things(const RuleContext& context, std::vector<Judgement>& judgements) {
  std::vector<Thing> things = reachable_things(context.prepared);
  std::erase_if(things, [](const Thing& thing) { return !limit_of(thing); });
  if (things.empty()) return;
  std::vector<Vec3> places;
  for (const Thing& thing : things) places.push_back(thing.at);
  std::set<std::string> all;
  for (const Closure& closure : context.prepared.project->closures) all.insert(closure.name);
  const ArmReach reach(context.prepared, places);
  const auto reached = reach.reached(all);
  const std::vector<bool> seen = reach.seen(all);
  for (std::size_t i = 0; i < things.size(); ++i)
    judgements.push_back(
        judge_thing(context, things[i], *limit_of(things[i]), reach, reached[i], seen[i]));
}

std::vector<Judgement> judge_access(const RuleContext& context) {
  std::vector<Judgement> judgements;
  judge_order(context, judgements);
  judge_closures(context, judgements);
  judge_access_openings(context, judgements);
  judge_supports(context, judgements);
  if (!closures_that_cover(*context.prepared.project).empty()) judge_things(context, judgements);
  return judgements;
}

}  // namespace

const Rule& access_rule() {
  static const Rule rule{
      .name = "access",
      .purpose = "what has to be looked at or reached still can be once all closures are on",
      .explanation =
          R"(With every closure on, each fairlead, pulley, terminal and turnbuckle must be seen or
touched through an opening or from the outside, and a hand must come to each joint, drain and
instrument connection of the air lines.

What holds a line should not be fixed to a part that a closure covers: it is told, as common practice.

A hand comes to a place where an arm 3.5 in wide, no longer than the opening's reach, gets there
through free space: round frames or through their holes, past panels that are on, channels, solids
and meshes. Fingers get 4 in farther where the hand no longer fits. From the outside, where a ball
of 18 in is free, an arm gets 26 in; through an opening with 'crawl: true' a person goes in where a
ball of 12 in is free, and reaches from there. These sizes are common practice, no source. A thing is
seen where a straight line from the opening, no longer than its reach, meets nothing.

The way is searched for in cells of 1 in, larger in a project that would take more than three million
of them. Where cells leave a doubt the answer is that the hand does not come there. Lines, pulleys
and movers do not stand in the way. A project without closures has nothing to judge; a closure
that covers nothing, and an opening with no structure within 1 in of it, is unknown.)",
      .mend = "Leave an opening near it, make one larger, or move what cannot be reached.",
      .limits = access_limits,
      .catalogue_limits = "",
      .judge = judge_access};
  return rule;
}

}  // namespace linewright
