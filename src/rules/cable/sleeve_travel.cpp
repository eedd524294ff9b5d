#include "rules/cable/sleeve_travel.hpp"

#include <algorithm>

#include "rules/rule.hpp"

namespace linewright {

namespace {

/// Whether a sleeve can go into a passage; nothing of that is known where something is `missing`.
struct Way {
  bool is_closed = false;
  std::string missing = {};

  bool is_open() const { return !is_closed && missing.empty(); }
};

std::optional<double> bore_of(const Passage& passage) {
  if (passage.point && passage.point->bore_in) return passage.point->bore_in;
  return passage.crossing && passage.crossing->hole ? passage.crossing->hole->bore_in
                                                    : std::nullopt;
}

/// A support leads or holds the line; so does what is fitted in a hole, though no point names it.
bool narrows(const Passage& passage) {
  if (passage.point && passage.point->hold) return true;
  const Hole* hole = passage.crossing ? passage.crossing->hole : nullptr;
  return hole && (hole->edge == EdgeGuard::grommet || hole->edge == EdgeGuard::bushing);
}

Way way_into(const Passage& passage, const Sleeve& sleeve) {
  const std::optional<HoldKind> hold = passage.point ? passage.point->hold : std::nullopt;
  if (hold == HoldKind::pulley || hold == HoldKind::clamp) return {.is_closed = true};
  const std::optional<double> bore = bore_of(passage);
  if (!bore) return {.missing = narrows(passage) ? "the bore of the guide" : ""};
  if (!sleeve.outside_in) return {.missing = "the outside of the sleeve"};
  return {.is_closed = *sleeve.outside_in > *bore + limit_rounding};
}

/// Distance along the line between the sleeve, moved both ways, and the passage; below zero where
/// they meet.
double gap_in(const Sleeve& sleeve, const Passage& passage, const Movement& moves) {
  return std::max(passage.start_in - (sleeve.to_in + moves.toward_to_in),
                  (sleeve.from_in - moves.toward_from_in) - passage.end_in);
}

bool meets(const Sleeve& sleeve, const Passage& passage, const Movement& moves) {
  return gap_in(sleeve, passage, moves) < -limit_rounding;
}

Judgement travel_judgement(const RuleContext& context, const PreparedRoute& route,
                           const Sleeve& sleeve, const Passage& passage) {
  Judgement judgement = context.at(route, passage.middle_in());
  judgement.location = sleeve.where;
  if (!passage.name.empty()) judgement.with = passage.name;
  return judgement;
}

std::string jam_mend(const RuleContext& context, const PreparedRoute& route, const Sleeve& sleeve,
                     const Passage& passage, const Movement& moves) {
  const Phrasing& phrasing = context.phrasing;
  const std::string after = " from " + route.from->name;
  const double last = phrasing.tape_down(passage.start_in - moves.toward_to_in);
  const double first = phrasing.tape_up(passage.end_in + moves.toward_from_in);
  if (last > sleeve.from_in && passage.middle_in() >= (sleeve.from_in + sleeve.to_in) / 2)
    return "end the sleeve " + phrasing.tape(last) + after + " or nearer";
  if (first < sleeve.to_in) return "start the sleeve " + phrasing.tape(first) + after;
  return "leave the sleeve out there, or clamp it to structure clear of the " + passage.words;
}

Judgement jam(const RuleContext& context, const PreparedRoute& route, const Sleeve& sleeve,
              const Passage& passage, const Movement& moves) {
  Judgement judgement = travel_judgement(context, route, sleeve, passage);
  holds(judgement, gap_in(sleeve, passage, moves), {sleeve_travel_limit});
  judgement.message = meets(sleeve, passage, {})
                          ? "the sleeve lies over the " + passage.words
                          : "the sleeve runs into the " + passage.words + " at full travel";
  judgement.mend = jam_mend(context, route, sleeve, passage, moves);
  return judgement;
}

Judgement not_known(const RuleContext& context, const PreparedRoute& route, const Sleeve& sleeve,
                    const Passage& passage, const std::string& missing) {
  Judgement judgement = travel_judgement(context, route, sleeve, passage);
  leave_unknown(judgement, sleeve_travel_limit);
  judgement.message = "whether the sleeve runs into the " + passage.words +
                      " is not known: " + missing + " is missing";
  judgement.mend = "state it in the project";
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_sleeve_travel(const RuleContext& context, const PreparedRoute& route,
                                           const Sleeve& sleeve,
                                           const std::vector<Passage>& on_the_way,
                                           const SleeveHold& hold) {
  std::vector<Judgement> judgements;
  if (route.line->kind != LineKind::cable) return judgements;
  const Movement moves = hold.moves.value_or(Movement{});
  for (const Passage& passage : on_the_way) {
    const Way way = way_into(passage, sleeve);
    const bool on_pulley = passage.point && passage.point->hold == HoldKind::pulley;
    if (way.is_open() || (!on_pulley && gap_in(sleeve, passage, {}) <= 0)) continue;
    if (meets(sleeve, passage, moves))
      judgements.push_back(way.is_closed ? jam(context, route, sleeve, passage, moves)
                                         : not_known(context, route, sleeve, passage, way.missing));
    else if (!hold.moves)
      judgements.push_back(
          not_known(context, route, sleeve, passage, "the travel of " + route.route->name));
  }
  return judgements;
}

}  // namespace linewright
