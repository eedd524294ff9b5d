#include "rules/cable_tension.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "physics/cable.hpp"
#include "rules/cable_run.hpp"

namespace linewright {

namespace {

constexpr double rounding_lbf = 1e-6;

constexpr std::array<LimitRow, 3> limits{{
    {"tension at the coldest, at least", 0, "lbf",
     "14 CFR 23.689(a)(2): no hazardous change of tension with temperature", Mark::verified,
     Verdict::fail},
    {"breaking strength over limit load, at least", 1.5, "", "14 CFR 23.303, factor of safety",
     Mark::from_memory, Verdict::fail},
    {"tension at the hottest, share of breaking strength, at most", 0.6, "",
     "AC 43.13-1B: the load that swaged ends are proved to", Mark::verified_secondary,
     Verdict::fail},
}};
constexpr const LimitRow& taut = limits[0];
constexpr const LimitRow& safety_factor = limits[1];
constexpr const LimitRow& proof_share = limits[2];

Judgement tension_judgement(const PreparedRoute& route) {
  Judgement judgement = judgement_at(cable_tension_rule(), route, route.length_in() / 2);
  judgement.location = route.route->tension->where;
  judgement.unit = Unit::pound_force;
  return judgement;
}

std::string force(double lbf) {
  return fmt::format("{:.1f} lbf", std::abs(lbf) < 0.05 ? 0.0 : lbf);
}

std::string whole_up(double lbf) {
  return fmt::format("{:.0f} lbf", std::ceil(lbf - rounding_lbf));
}

std::string at_temperature(double degf) {
  return fmt::format(" at {:g} degF", degf);
}

Judgement unknown(Judgement judgement, const LimitRow& row, const std::string& message,
                  const std::string& mend) {
  judgement.message = message;
  judgement.source = cite(row);
  judgement.mend = mend;
  return judgement;
}

std::string stronger_cable(const RuleContext& context, const Line& line, double breaking_lbf) {
  return "use a cable that breaks at " + whole_up(breaking_lbf) + " or more" +
         such_as(context.prepared.project->catalogue, line, [&](const Line& each) {
           return each.breaking_strength_lbf &&
                  each.breaking_strength_lbf->value >= breaking_lbf - rounding_lbf;
         });
}

Judgement judge_cold(const PreparedRoute& route, const TensionRange& range) {
  const double rigged = route.route->tension->rigged_lbf;
  Judgement judgement = tension_judgement(route);
  judgement.value = range.lowest_lbf;
  judgement.limit = taut.value;
  judgement.source = cite(taut);
  if (range.lowest_lbf >= taut.value - rounding_lbf) {
    judgement.verdict = Verdict::pass;
    judgement.message = "still " + force(range.lowest_lbf) + " taut" +
                        at_temperature(range.lowest_at_degf) + " in a rigid airframe, from " +
                        force(rigged) + " as rigged";
    return judgement;
  }
  judgement.verdict = taut.broken;
  judgement.message = "slack" + at_temperature(range.lowest_at_degf) + ": " + force(rigged) +
                      " as rigged falls by " + force(rigged - range.lowest_lbf) +
                      " in a rigid airframe (an upper bound: real structure gives)";
  judgement.mend = "rig it to " + whole_up(rigged - range.lowest_lbf) + " or more";
  if (route.line->material == "steel")
    judgement.mend += ", or use stainless cable, whose tension changes less";
  return judgement;
}

Judgement judge_hot(const RuleContext& context, const PreparedRoute& route,
                    const TensionRange& range) {
  const Line& line = *route.line;
  const double limit = proof_share.value * line.breaking_strength_lbf->value;
  Judgement judgement = tension_judgement(route);
  judgement.sense = LimitSense::at_most;
  judgement.value = range.highest_lbf;
  judgement.limit = limit;
  judgement.source = cite(proof_share) + "; strength: " + cite(line.breaking_strength_lbf->source);
  const std::string tension =
      force(range.highest_lbf) + at_temperature(range.highest_at_degf) + " in a rigid airframe";
  if (range.highest_lbf <= limit + rounding_lbf) {
    judgement.verdict = Verdict::pass;
    judgement.message = tension + ", under the " + force(limit) + " its ends are proved to";
    return judgement;
  }
  judgement.verdict = proof_share.broken;
  judgement.message = tension + ", over the " + force(limit) + " its ends are proved to";
  judgement.mend = stronger_cable(context, line, range.highest_lbf / proof_share.value);
  const double rigged = route.route->tension->rigged_lbf - (range.highest_lbf - limit);
  if (rigged >= 1)
    judgement.mend =
        fmt::format("rig it to {:.0f} lbf or less, or ", std::floor(rigged)) + judgement.mend;
  return judgement;
}

Judgement judge_strength(const RuleContext& context, const PreparedRoute& route) {
  const Line& line = *route.line;
  Judgement judgement = tension_judgement(route);
  judgement.sense = LimitSense::at_most;
  if (!line.breaking_strength_lbf)
    return unknown(judgement, safety_factor, "no breaking strength is known for " + line.name,
                   "add the line to the project's lines with its breaking strength and source");
  const double strength = line.breaking_strength_lbf->value;
  judgement.limit = strength / safety_factor.value;
  if (!route.route->tension->limit_load_lbf)
    return unknown(judgement, safety_factor,
                   "the limit load of " + route.route->name +
                       " is not stated, so its margin of strength is not known",
                   "state tension.limit_load: the pilot limit force of 14 CFR 23.397(b) through "
                   "the linkage");
  const double load = *route.route->tension->limit_load_lbf;
  judgement.value = load;
  judgement.source =
      cite(safety_factor) + "; strength: " + cite(line.breaking_strength_lbf->source);
  judgement.message = fmt::format("{} breaks at {:.0f} lbf, {:.2f} times the limit load", line.name,
                                  strength, strength / load);
  if (load <= *judgement.limit + rounding_lbf) {
    judgement.verdict = Verdict::pass;
    return judgement;
  }
  judgement.verdict = safety_factor.broken;
  judgement.message += fmt::format(": under {:g} times", safety_factor.value);
  judgement.mend = stronger_cable(context, line, load * safety_factor.value);
  return judgement;
}

void judge_cable(const RuleContext& context, const PreparedRoute& route,
                 std::vector<Judgement>& judgements) {
  const Line& line = *route.line;
  if (!line.axial_stiffness_lbf || !line.expansion_per_degf) {
    const std::string what = line.axial_stiffness_lbf ? "thermal expansion" : "stretch";
    judgements.push_back(
        unknown(tension_judgement(route), taut,
                "the " + what + " of " + line.name +
                    " is not known, so neither is its tension at the coldest",
                "add the line to the project's lines with its stretch, expansion and source"));
  } else {
    const double slope =
        tension_slope_lbf_per_degf(airframe_expansion_per_degf, line.expansion_per_degf->value,
                                   line.axial_stiffness_lbf->value);
    const TensionRange range = tension_range(route.route->tension->rigged_lbf, slope,
                                             context.prepared.project->temperature);
    judgements.push_back(judge_cold(route, range));
    if (line.breaking_strength_lbf) judgements.push_back(judge_hot(context, route, range));
  }
  judgements.push_back(judge_strength(context, route));
}

std::vector<Judgement> judge_cable_tension(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    if (route.line->kind == LineKind::cable && route.route->tension)
      judge_cable(context, route, judgements);
  return judgements;
}

}  // namespace

const Rule& cable_tension_rule() {
  static const Rule rule{
      .name = "cable-tension",
      .purpose = "cables stay taut when cold, and are strong enough for heat and limit load",
      .explanation =
          "An aluminium airframe shrinks more than a steel cable, so a cable slackens in the cold "
          "and tightens in the heat, by (α_airframe − α_cable)·AE for each degree if the airframe "
          "were rigid. Real structure gives, so that is an upper bound on the change. The cable "
          "must not go slack at the coldest, nor pass at the hottest the load its swaged ends are "
          "proved to; and it must break at no less than the factor of safety times the stated "
          "limit load. A cable in no closed loop, kept taut by springs alone, does not change its "
          "tension with temperature: waive a finding on it with that reason. Ends are taken to be "
          "as strong as the cable, as swaged terminals are; a hand-tucked splice has about three "
          "quarters. Cables without a stated tension are named by `chafe`.",
      .mend = "Rig to another tension, use stainless cable, or a stronger one.",
      .limits = limits,
      .catalogue_limits =
          "breaking_strength, stretch and expansion of each cable: `linewright catalogue` shows "
          "each figure with its mark",
      .judge = judge_cable_tension};
  return rule;
}

}  // namespace linewright
