#include "rules/cable/cable_strength.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "model/letters.hpp"
#include "rules/cable/cable_tension_limits.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

/// The row of the least force that counts on a route's control.
const LimitRow& least_row(const Route& route) {
  const PilotForce* force = pilot_forces_on(route);
  for (std::size_t i = 0; i < wheel_forces.size(); ++i)
    if (force == &wheel_forces[i]) return least_wheel_forces[i];
  return least_forces[static_cast<std::size_t>(force - pilot_forces.data())];
}

/// What a cable may bear at the limit: the row's factor is of its strength over the load, and the
/// load is what is judged.
Limit most_load(double strength_lbf) {
  Limit most(strength_lbf / safety_factor.value, safety_factor);
  most.unit = Unit::pound_force;
  most.sense = LimitSense::at_most;
  return most;
}

/// What the cable has to bear at the limit, and in words what that is.
struct LimitTension {
  double tension_lbf = 0;
  std::string words;
  bool from_pilot = false;
};

/// "the 200.0 lbf that 200.0 lbf at the rudder pedal pull on it".
std::string pull_words(const Route& route) {
  const PilotForce* row = pilot_forces_on(route);
  return fmt::format("the {} that {}{} at {} pull on it by a lever ratio of {:g}",
                     tension_words(*pilot_pull_lbf(route)),
                     route.lever->two_pilots ? "two pilots together, " : "",
                     fmt::format("{}{}", route.lever->two_pilots ? "1.5 times " : "",
                                 tension_words(*pilot_force_lbf(route))),
                     row ? row->grip : "the control", route.lever->ratio);
}

/// The stated limit load, or the tension that the pilot's pull leaves the cable with, if larger.
std::optional<LimitTension> limit_tension(const Route& route, const CableState& state) {
  std::optional<LimitTension> found;
  if (route.tension->limit_load_lbf)
    found = LimitTension{*route.tension->limit_load_lbf, "the limit load", false};
  const std::optional<double> pull = pilot_pull_lbf(route);
  if (!pull) return found;
  const double tension = *state.pilot_pulled_lbf;
  if (found && found->tension_lbf >= tension - limit_rounding) return found;
  std::string words = pull_words(route);
  if (tension > *pull + limit_rounding)
    words = tension_words(tension) + ": " + tension_words(tension - state.hottest_lbf) + " of " +
            words + ", above its own " + tension_words(state.hottest_lbf);
  return LimitTension{tension, words, true};
}

/// A stated limit load against what the pilot can pull.
Judgement judge_stated_load(const RuleContext& context, const PreparedRoute& route) {
  const Route& stated = *route.route;
  const double pull = *pilot_pull_lbf(stated);
  Judgement judgement = tension_judgement(context, route);
  const double stated_lbf = *stated.tension->limit_load_lbf;
  const std::string load = "the limit load of " + tension_words(stated_lbf);
  if (holds(judgement, stated_lbf, {covers_pilot * pull})) {
    judgement.message = load + " covers " + pull_words(stated);
    return judgement;
  }
  judgement.message = load + " is less than " + pull_words(stated);
  judgement.mend = "state tension.limit_load as " + tension_rounded_up(pull) +
                   " or more, or leave it out: it then follows from the lever ratio";
  return judgement;
}

/// A stated pilot force against the least that counts however light the control is.
Judgement judge_pilot_force(const RuleContext& context, const PreparedRoute& route,
                            const PilotForce& row) {
  const LimitRow& least = least_row(*route.route);
  Judgement judgement = tension_judgement(context, route);
  judgement.location = route.route->lever->where;
  const double force_lbf = *route.route->lever->pilot_force_lbf;
  judgement.message =
      "the pilot force of " + tension_words(force_lbf) + " at " + std::string(row.grip);
  if (holds(judgement, force_lbf, {least})) {
    judgement.message += " is no less than the least that counts, " + tension_words(least.value);
    return judgement;
  }
  judgement.message +=
      " is under the least that counts however light the control is, " + tension_words(least.value);
  judgement.mend = "state pilot_force as " + tension_words(least.value) +
                   " or more, or leave it out for " +
                   tension_words(*most_pilot_force_lbf(*route.route));
  return judgement;
}

/// Of all controls that a pilot's force is known for the least.
std::size_t lightest_control() {
  std::size_t lightest = 0;
  for (std::size_t i = 1; i < pilot_forces.size(); ++i)
    if (pilot_forces[i].least_lbf < pilot_forces[lightest].least_lbf) lightest = i;
  return lightest;
}

/// True for a name that may well mean a primary control, and for none: those that a pilot's force
/// is known for are named otherwise.
bool may_be_primary(std::string_view control) {
  constexpr std::array<std::string_view, 5> words{"rudder", "elevat", "aileron", "elevon",
                                                  "stabilator"};
  return control.empty() || std::any_of(words.begin(), words.end(), [&](std::string_view word) {
           return holds_word(control, word);
         });
}

/// The same of a control whose name tells no force: no pilot's pull on a primary one is less than
/// on the lightest.
void ask_for_control(const RuleContext& context, const PreparedRoute& route,
                     std::vector<Judgement>& judgements) {
  const Route& stated = *route.route;
  const LimitRow& least = least_forces[lightest_control()];
  const double load = *stated.tension->limit_load_lbf;
  Judgement judgement = tension_judgement(context, route);
  if (holds(judgement, load, {least})) return;
  judgement = not_judged(
      tension_judgement(context, route), least,
      "the limit load of " + tension_words(load) +
          " is under the least pilot force that counts on any primary control, " +
          tension_words(least.value) + ": " +
          (stated.control.empty() ? "which control it works is not stated"
                                  : "no pilot force is known for the control " + stated.control),
      "state control as rudder, elevator or aileron; lever_ratio and pilot_force; or "
      "`primary: false` where it is none of these");
  judgement.value = load;
  judgement.limit = least.value;
  judgements.push_back(judgement);
}

/// A stated limit load under the least that a pilot counts for on the control, no lever ratio
/// stated: only a lever that takes force off the cable would make it right.
void ask_for_lever(const RuleContext& context, const PreparedRoute& route,
                   std::vector<Judgement>& judgements) {
  const Route& stated = *route.route;
  const PilotForce* row = pilot_forces_on(stated);
  if (!stated.is_primary_control() || !stated.tension->limit_load_lbf) return;
  if (!row) {
    if (may_be_primary(stated.control)) ask_for_control(context, route, judgements);
    return;
  }
  Judgement judgement = tension_judgement(context, route);
  const double load = *stated.tension->limit_load_lbf;
  if (holds(judgement, load, {least_row(stated)})) return;
  judgement = not_judged(
      tension_judgement(context, route), least_row(stated),
      "the limit load of " + tension_words(load) + " is under the least pilot force on " +
          std::string(row->grip) + ", " + tension_words(row->least_lbf) +
          ": whether it covers the pilot's pull is not known without a lever ratio",
      "state lever_ratio, the pull on the cable for each pound at " + std::string(row->grip));
  judgement.value = load;
  judgement.limit = row->least_lbf;
  judgements.push_back(judgement);
}

}  // namespace

Judgement judge_cable_strength(const RuleContext& context, const PreparedRoute& route,
                               const CableState& state) {
  const Line& line = *route.line;
  Judgement judgement = tension_judgement(context, route);
  if (!line.breaking_strength_lbf)
    return not_judged(judgement, most_load(0), "no breaking strength is known for " + line.name,
                      "add the line to the project's lines with its breaking strength and source");
  const double strength = line.breaking_strength_lbf->value;
  const Limit most = most_load(strength);
  const std::optional<LimitTension> limit = limit_tension(*route.route, state);
  if (!limit) {
    judgement =
        not_judged(judgement, most,
                   "the limit load of " + route.route->name +
                       " is not stated, so its margin of strength is not known",
                   "state tension.limit_load, or lever_ratio for the pilot limit force of 14 CFR "
                   "23.397(b) through the linkage");
    judgement.limit = most.value;
    return judgement;
  }
  const bool strong_enough = holds(judgement, limit->tension_lbf, {most});
  judgement.source += "; strength: " + cite(line.breaking_strength_lbf->source);
  if (limit->from_pilot) judgement.source += "; load: " + cite(covers_pilot);
  judgement.message = fmt::format("{} breaks at {:.0f} lbf, {:.2f} times {}", line.name, strength,
                                  strength / limit->tension_lbf, limit->words);
  if (strong_enough) return judgement;
  judgement.message += fmt::format(": under {:g} times", safety_factor.value);
  judgement.mend = stronger_cable(context, line, limit->tension_lbf * safety_factor.value);
  return judgement;
}

void judge_pilot(const RuleContext& context, const PreparedRoute& route,
                 std::vector<Judgement>& judgements) {
  const Route& stated = *route.route;
  if (!stated.lever) {
    ask_for_lever(context, route, judgements);
    return;
  }
  if (!pilot_force_lbf(stated)) {
    Judgement judgement = tension_judgement(context, route);
    judgement.location = stated.lever->where;
    judgements.push_back(not_judged(
        judgement, covers_pilot,
        "the lever ratio of " + stated.name + " is stated, but no pilot force is known for " +
            (stated.control.empty() ? "a control without a name" : "the control " + stated.control),
        "state pilot_force, or control as rudder, elevator or aileron"));
    return;
  }
  const PilotForce* row = pilot_forces_on(stated);
  if (row && stated.lever->pilot_force_lbf)
    judgements.push_back(judge_pilot_force(context, route, *row));
  if (stated.tension->limit_load_lbf) judgements.push_back(judge_stated_load(context, route));
}

}  // namespace linewright
