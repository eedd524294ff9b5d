#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "lines/motion/tension_change.hpp"
#include "physics/cable.hpp"
#include "rules/cable/cable_strength.hpp"
#include "rules/cable/cable_tension_limits.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

std::string at_temperature(double degf) {
  return fmt::format(" at {:g} degF", degf);
}

Judgement judge_cold(const RuleContext& context, const PreparedRoute& route,
                     const TensionRange& range) {
  const std::string airframe = " " + airframe_words(context.prepared, route);
  const bool rigid = !airframe_stiffness_lbf_per_in(context.prepared, route);
  const double rigged = route.route->tension->rigged_lbf;
  Judgement judgement = tension_judgement(context, route);
  if (holds(judgement, range.lowest_lbf, {taut})) {
    judgement.message = "still " + tension_words(range.lowest_lbf) + " taut" +
                        at_temperature(range.lowest_at_degf) + airframe + ", from " +
                        tension_words(rigged) + " as rigged";
    return judgement;
  }
  judgement.message = "slack" + at_temperature(range.lowest_at_degf) + ": " +
                      tension_words(rigged) + " as rigged falls by " +
                      tension_words(rigged - range.lowest_lbf) + airframe +
                      (rigid ? " (an upper bound: real structure gives)" : "");
  judgement.mend = "rig it to " + tension_rounded_up(rigged - range.lowest_lbf) + " or more";
  if (route.line->material == "steel")
    judgement.mend += ", or use stainless cable, whose tension changes less";
  return judgement;
}

Judgement judge_hot(const RuleContext& context, const PreparedRoute& route,
                    const TensionRange& range) {
  const Line& line = *route.line;
  const Limit proved = proved_share * line.breaking_strength_lbf->value;
  Judgement judgement = tension_judgement(context, route);
  const bool held = holds(judgement, range.highest_lbf, {proved});
  judgement.source += "; strength: " + cite(line.breaking_strength_lbf->source);
  const std::string tension = tension_words(range.highest_lbf) +
                              at_temperature(range.highest_at_degf) + " " +
                              airframe_words(context.prepared, route);
  if (held) {
    judgement.message =
        tension + ", under the " + tension_words(proved.value) + " its ends are proved to";
    return judgement;
  }
  judgement.message =
      tension + ", over the " + tension_words(proved.value) + " its ends are proved to";
  judgement.mend = stronger_cable(context, line, range.highest_lbf / proved_share.value);
  const double rigged = route.route->tension->rigged_lbf - (range.highest_lbf - proved.value);
  if (rigged >= 1)
    judgement.mend =
        fmt::format("rig it to {:.0f} lbf or less, or ", std::floor(rigged)) + judgement.mend;
  return judgement;
}

/// Asks about a control that one cable works alone, or that is written in two ways.
std::optional<Judgement> judge_pair(const RuleContext& context, const PreparedRoute& route) {
  const std::string& control = route.route->control;
  if (control.empty()) return std::nullopt;
  const auto& routes = context.prepared.routes;
  const auto count = 1 + std::count_if(routes.begin(), routes.end(), [&](const auto& other) {
                       return work_together(route, other);
                     });
  Judgement judgement = tension_judgement(context, route);
  if (holds(judgement, static_cast<double>(count), {paired})) return std::nullopt;
  judgement.message = "only one cable works control " + control +
                      ": how slack the other of a pair would be is not judged";
  judgement.mend = "give the cable that brings it back the same control, or waive this with the " +
                   std::string("reason, such as a spring");
  return judgement;
}

/// Asks about an airframe that is stated to give more, under all cables of the control, than one
/// would rig them to: so soft a one hides that they slacken.
std::optional<Judgement> judge_give(const RuleContext& context, const PreparedRoute& route) {
  const auto stiffness = airframe_stiffness_lbf_per_in(context.prepared, route);
  if (!stiffness) return std::nullopt;
  double rigged_lbf = route.route->tension->rigged_lbf;
  for (const PreparedRoute& other : context.prepared.routes)
    if (work_together(route, other) && other.route->tension)
      rigged_lbf += other.route->tension->rigged_lbf;
  const double gives_in = rigged_lbf / *stiffness;
  Judgement judgement = tension_judgement(context, route);
  if (holds(judgement, gives_in, {airframe_gives})) return std::nullopt;
  judgement.message = "an airframe of " + fmt::format("{:.4g} lbf/in", *stiffness) + " gives " +
                      context.phrasing.length(gives_in) + " under " + tension_words(rigged_lbf) +
                      " as rigged, the cables of the control together: what it does to the "
                      "tension rests on that";
  judgement.mend =
      "measure how far the cable's ends come together under a known pull, and state "
      "airframe_stiffness by that, or leave it out: the airframe is then taken as rigid";
  return judgement;
}

void judge_cable(const RuleContext& context, const PreparedRoute& route,
                 std::vector<Judgement>& judgements) {
  const Line& line = *route.line;
  const CableState& state = context.motion.cables[context.index_of(route)];
  if (state.range) {
    judgements.push_back(judge_cold(context, route, *state.range));
    if (line.breaking_strength_lbf) judgements.push_back(judge_hot(context, route, *state.range));
  } else {
    const std::string what = line.axial_stiffness_lbf ? "thermal expansion" : "stretch";
    judgements.push_back(
        not_judged(tension_judgement(context, route), taut,
                   "the " + what + " of " + line.name +
                       " is not known, so neither is its tension at the coldest",
                   "add the line to the project's lines with its stretch, expansion and source"));
  }
  judgements.push_back(judge_cable_strength(context, route, state));
  judge_pilot(context, route, judgements);
  for (const auto& asked : {judge_pair(context, route), judge_give(context, route)})
    if (asked) judgements.push_back(*asked);
}

Judgement without_tension(const RuleContext& context, const PreparedRoute& route) {
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = route.route->where;
  leave_unknown(judgement, taut);
  judgement.message = "the tension of " + route.route->name +
                      " is not stated: whether it stays taut, and is strong enough, is not known";
  judgement.mend = "state tension: {rigged: 40 lbf, limit_load: 200 lbf}, with its own figures";
  return judgement;
}

std::vector<Judgement> judge_cable_tension(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::cable) continue;
    if (route.route->tension)
      judge_cable(context, route, judgements);
    else
      judgements.push_back(without_tension(context, route));
  }
  return judgements;
}

}  // namespace

const Rule& cable_tension_rule() {
  static const Rule rule{
      .name = "cable-tension",
      .purpose = "cables stay taut when cold, and are strong enough for heat and limit load",
      .explanation =
          R"(An aluminium airframe shrinks more than a steel cable, so a cable slackens in the cold
and tightens in the heat, by (α_airframe − α_cable)·AE for each degree if the airframe were
rigid. Real structure gives, so that is an upper bound on the change. Where airframe_stiffness
k is stated, cable and airframe share it as two springs in series, (α_airframe − α_cable)·L /
(L/AE + 1/k); the cables of one control shorten the airframe together. An airframe stated so soft that it gives
1/4 in under the rigging tension is asked about. The cable must not go
slack at the coldest, nor pass at the hottest the load its swaged ends are proved to; and it
must break at no less than the factor of safety times the limit load. That load is the one
stated, or, where the route gives its lever ratio, the pilot's limit force times that ratio, if
it is larger. Two cables of one control make a loop between its levers: the pulled one gains
what the other loses, each by its stiffness AE/L, until the other is slack and the pulled one
carries the pull alone (in an airframe that gives, after it has given); that counts at the
hottest, and what it leaves the other with at the coldest is what `chafe` goes by. A control
that one cable alone names is asked about: names are compared without case and outer blanks. A
stated limit load must cover the pilot's pull, and a stated pilot force the least that counts; a
limit load under that least force is asked about where no lever ratio is stated, and one under the
least of all of a primary control without a name, or of one that only sounds like one of the three. A control is taken
to be worked by a stick unless the route says `worked_by: wheel`. The lever ratio of an aileron wheel
is for each pound at its rim, where its couple of 50 D lbf·in, D its diameter in inches, is one
force of 100 lbf; the single force of 1.25 times the couple's pulls a cable less. Above 5,000 lbf of
the project's `weight` the most of these forces rises, to 1.18 times at 12,500 lbf. The joint factor
of 14 CFR 23.693 is not applied: it is for the bearing of joints, not for the cable. A cable in no
closed loop, kept taut by springs alone, does not change its tension with temperature: waive a
finding on it with that reason. Ends are taken to be as strong as the cable, as swaged
terminals are; a hand-tucked splice has about three quarters. A cable whose tension is not
stated is unknown.)",
      .mend = "Rig to another tension, use stainless cable, or a stronger one.",
      .limits = cable_tension_limits,
      .catalogue_limits =
          "breaking_strength, stretch and expansion of each cable: `linewright catalogue` shows "
          "each figure with its mark",
      .judge = judge_cable_tension};
  return rule;
}

}  // namespace linewright
