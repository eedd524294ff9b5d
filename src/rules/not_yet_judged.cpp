#include "rules/not_yet_judged.hpp"

#include <string>

namespace linewright {

namespace {

constexpr std::string_view not_yet =
    "This version reads and checks what the project states for it, but does not judge it: the "
    "answer "
    "is unknown, never a pass.";
constexpr std::string_view by_hand = "Judge it by hand against the limits shown.";

Judgement unjudged(const Rule& rule, const PreparedRoute& route, double distance_in,
                   const SourceLocation& where, const std::string& what) {
  Judgement judgement = judgement_at(rule, route, distance_in);
  judgement.location = where;
  judgement.unit = Unit::none;
  judgement.message = what + " is stated, but this version does not judge it";
  judgement.source = "this version of the program";
  judgement.mend = "judge it by hand: linewright explain " + std::string(rule.name);
  return judgement;
}

std::vector<Judgement> judge_pulleys(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (route.route->points[i].hold == HoldKind::pulley)
        judgements.push_back(unjudged(pulley_rule(), route, route.point_distance_in[i],
                                      route.route->points[i].where, "a pulley"));
  return judgements;
}

std::vector<Judgement> judge_attachments(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    for (const Attachment& attachment : route.route->attached)
      judgements.push_back(unjudged(attachment_travel_rule(), route, attachment.at_in,
                                    attachment.where, "the travel of a " + attachment.kind));
  return judgements;
}

std::vector<Judgement> judge_sleeves(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    for (const Sleeve& sleeve : route.route->sleeves)
      judgements.push_back(
          unjudged(sleeve_cover_rule(), route, sleeve.from_in, sleeve.where, "a sleeve"));
  return judgements;
}

std::vector<Judgement> judge_access(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const Closure& closure : context.prepared.project->closures) {
    Judgement judgement;
    judgement.rule = access_rule().name;
    judgement.with = closure.name;
    judgement.message =
        "closure " + closure.name + " is stated, but this version does not judge it";
    judgement.source = "this version of the program";
    judgement.mend = "list by hand what the closure makes unreachable";
    judgement.location = closure.where;
    judgements.push_back(judgement);
  }
  return judgements;
}

constexpr LimitRow misalignment{"primary cable off the pulley's plane, at most",
                                1,
                                "deg",
                                "MIL-F-18372 para 3.1.1.17.8 (a)",
                                Mark::verified,
                                Verdict::fail};
constexpr LimitRow splice_distance{"splice to a fairlead or pulley, least",
                                   2,
                                   "in",
                                   "AC 43.13-1B para 7-147 a",
                                   Mark::verified,
                                   Verdict::fail};
constexpr LimitRow sleeve_stand_out{"sleeve past both faces, least",
                                    1,
                                    "sleeve diameter",
                                    "practice",
                                    Mark::common_practice,
                                    Verdict::warn};

}  // namespace

const Rule& pulley_rule() {
  static const Rule rule{
      .name = "pulley",
      .purpose = "pulleys lie in the cable's plane and suit its size (unknown yet)",
      .explanation = not_yet,
      .mend = by_hand,
      .limits = {&misalignment, 1},
      .catalogue_limits = "",
      .judge = judge_pulleys};
  return rule;
}

const Rule& attachment_travel_rule() {
  static const Rule rule{
      .name = "attachment-travel",
      .purpose = "turnbuckles and terminals stay clear through full travel (unknown yet)",
      .explanation = not_yet,
      .mend = by_hand,
      .limits = {&splice_distance, 1},
      .catalogue_limits = "",
      .judge = judge_attachments};
  return rule;
}

const Rule& sleeve_cover_rule() {
  static const Rule rule{.name = "sleeve-cover",
                         .purpose = "a sleeve covers what it guards at full travel (unknown yet)",
                         .explanation = not_yet,
                         .mend = by_hand,
                         .limits = {&sleeve_stand_out, 1},
                         .catalogue_limits = "",
                         .judge = judge_sleeves};
  return rule;
}

const Rule& access_rule() {
  static const Rule rule{.name = "access",
                         .purpose = "what a closure makes unreachable (unknown yet)",
                         .explanation = not_yet,
                         .mend = by_hand,
                         .limits = {},
                         .catalogue_limits = "",
                         .judge = judge_access};
  return rule;
}

}  // namespace linewright
