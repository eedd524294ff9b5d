#include <algorithm>
#include <cmath>
#include <iterator>

#include "lines/edge_gap.hpp"
#include "lines/edge_guard.hpp"
#include "lines/motion/sleeve_hold.hpp"
#include "lines/passages.hpp"
#include "rules/cable/attachment_sleeves.hpp"
#include "rules/cable/clamp_place.hpp"
#include "rules/cable/sleeve_bend.hpp"
#include "rules/cable/sleeve_ends.hpp"
#include "rules/cable/sleeve_travel.hpp"
#include "rules/rule.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

namespace {

constexpr LimitRow goes_on{.name = "goes-on",
                           .subject = "sleeve bore over the largest line",
                           .value = 0,
                           .source = "geometry",
                           .mark = Mark::calculated};
constexpr LimitRow least_room{.name = "least-room",
                              .subject = "sleeve bore over the largest cable (1/32)",
                              .value = 0.031,
                              .source = "room to slide on",
                              .mark = Mark::common_practice,
                              .broken = Verdict::warn};
constexpr LimitRow most_room{.name = "most-room",
                             .subject = "sleeve bore over the largest cable (1/16)",
                             .value = 0.063,
                             .sense = LimitSense::at_most,
                             .source = "no room to rattle",
                             .mark = Mark::common_practice,
                             .broken = Verdict::warn};
constexpr LimitRow stand_out{
    .name = "stand-out",
    .subject = "sleeve past both faces of what it guards, besides its own movement",
    .value = 1,
    .source = "one diameter, and the full travel where it moves with the cable",
    .mark = Mark::common_practice,
    .broken = Verdict::warn,
    .times = "sleeve diameter"};
constexpr LimitRow held{.name = "held",
                        .subject = "things that hold a sleeve from creeping",
                        .value = 1,
                        .unit = Unit::none,
                        .source = "builders report a sleeve that walked along its cable in service",
                        .mark = Mark::verified_secondary,
                        .broken = Verdict::warn};
constexpr LimitRow stop_gap{.name = "stop-gap",
                            .subject = "gap between a sleeve's end and the stop that holds it",
                            .value = farthest_stop_in,
                            .sense = LimitSense::at_most,
                            .source = "a stop close to each end",
                            .mark = Mark::common_practice,
                            .broken = Verdict::warn};
constexpr LimitRow within_line{.name = "within-line",
                               .subject = "sleeve short of the end of its line",
                               .value = 0,
                               .source = "geometry",
                               .mark = Mark::calculated};

constexpr auto sleeve_cover_limits =
    limit_table({goes_on, least_room, most_room, stand_out, held, stop_gap, within_line, sharp_turn,
                 sleeve_travel_limit, sleeve_to_end});

/// A sleeve that ends this near to a bare hole, which its line is near the edge of, was meant to
/// cover it [common practice, no source].
constexpr double meant_to_cover_in = 2.0;

struct Subject {
  const RuleContext& context;
  const PreparedRoute& route;
  const Sleeve& sleeve;
  bool on_cable() const { return route.line->kind == LineKind::cable; }
};

Judgement sleeve_judgement(const Subject& subject, double distance_in) {
  Judgement judgement =
      subject.context.at(subject.route, std::clamp(distance_in, 0.0, subject.route.length_in()));
  judgement.location = subject.sleeve.where;
  return judgement;
}

double middle_in(const Sleeve& sleeve) {
  return (sleeve.from_in + sleeve.to_in) / 2;
}

/// Nothing where bore and outside are both stated.
std::optional<Judgement> judge_stated(const Subject& subject) {
  const bool bore = subject.sleeve.bore_in.has_value();
  const bool outside = subject.sleeve.outside_in.has_value();
  if (bore && outside) return std::nullopt;
  Judgement judgement = sleeve_judgement(subject, middle_in(subject.sleeve));
  leave_unknown(judgement, bore ? stand_out : goes_on);
  const std::string what = bore      ? "outside diameter"
                           : outside ? "bore"
                                     : "bore and outside diameter";
  judgement.message = "the sleeve's " + what + " is not stated, so " +
                      (bore      ? "how far it should stand out"
                       : outside ? "its fit"
                                 : "its fit and how far it should stand out") +
                      " is not known";
  judgement.mend = "state it for the sleeve";
  return judgement;
}

std::string bore_mend(const Subject& subject, double largest_in) {
  const Phrasing& phrasing = subject.context.phrasing;
  if (!subject.on_cable())
    return "use a sleeve with a bore of " + phrasing.length_up(largest_in) + " or more";
  return "use a sleeve with a bore of " + phrasing.length_up(largest_in + least_room.value) +
         " to " + phrasing.length(phrasing.rounded_down(largest_in + most_room.value));
}

Judgement judge_fit(const Subject& subject) {
  const Phrasing& phrasing = subject.context.phrasing;
  const double largest = subject.route.line->largest_diameter_in();
  const double room = *subject.sleeve.bore_in - largest;
  const std::string size = phrasing.length(*subject.sleeve.bore_in) +
                           " bore over a line that may be " + phrasing.length(largest);
  Judgement judgement = sleeve_judgement(subject, middle_in(subject.sleeve));
  const bool fits = subject.on_cable() ? holds(judgement, room, {goes_on, least_room, most_room})
                                       : holds(judgement, room, {goes_on});
  if (fits) {
    judgement.message = "the sleeve fits: " + size;
    return judgement;
  }
  judgement.message = (judgement.limit == goes_on.value      ? "the sleeve does not go on: "
                       : judgement.limit == least_room.value ? "the sleeve is a tight fit: "
                                                             : "the sleeve is a loose fit: ") +
                      size;
  judgement.mend = bore_mend(subject, largest);
  return judgement;
}

Judgement judge_hold(const Subject& subject, const SleeveHold& hold) {
  const Phrasing& phrasing = subject.context.phrasing;
  Judgement judgement = sleeve_judgement(subject, middle_in(subject.sleeve));
  if (holds(judgement, hold.is_held ? 1 : 0, {held})) {
    judgement.message = "the sleeve cannot creep: " + hold.words;
    return judgement;
  }
  judgement.message = "nothing holds the sleeve from creeping along the cable";
  if (const auto place = clamp_place(subject.route, subject.sleeve))
    judgement.mend = "clamp it to structure between " +
                     phrasing.tape(phrasing.tape_up(place->from_in)) + " and " +
                     phrasing.tape(phrasing.tape_down(place->to_in)) + " from " +
                     subject.route.from->name + ", or ";
  judgement.mend +=
      "fix a stop to the cable within " + phrasing.length(stop_gap.value) + " of each end";
  return judgement;
}

/// True where the sleeve lies over the passage, or was meant to.
bool concerns(const Subject& subject, const Passage& passage) {
  if (!passage.leads && !passage.crossing) return false;
  if (passage.point && passage.point->hold == HoldKind::pulley) return false;
  const Sleeve& sleeve = subject.sleeve;
  const double away = std::max(sleeve.from_in - passage.end_in, passage.start_in - sleeve.to_in);
  if (away <= *sleeve.outside_in) return true;
  const bool bare =
      passage.crossing && !passage.leads &&
      !(passage.crossing->hole && guards_line(passage.crossing->hole->edge, subject.route));
  if (!bare || away > meant_to_cover_in) return false;
  return !passage.crossing->hole || edge_gap(subject.route, *passage.crossing).distance_in -
                                            subject.route.line->largest_radius_in() -
                                            subject.context.prepared.project->build_tolerance_in <
                                        cable_to_hole_edge.value;
}

/// How far the sleeve stands out past the nearer face of a passage, and how far it should.
struct StandOut {
  double value_in = 0;
  double limit_in = 0;
  double margin_in() const { return value_in - limit_in; }
};

StandOut worse_side(const Subject& subject, const Passage& passage, const Movement& moves) {
  const double clear = stand_out.value * *subject.sleeve.outside_in;
  const StandOut at_start{passage.start_in - subject.sleeve.from_in, clear + moves.toward_to_in};
  const StandOut at_end{subject.sleeve.to_in - passage.end_in, clear + moves.toward_from_in};
  return at_start.margin_in() < at_end.margin_in() ? at_start : at_end;
}

std::string cover_mend(const Subject& subject, const Passage& passage, const Movement& moves) {
  const Phrasing& phrasing = subject.context.phrasing;
  const double clear = stand_out.value * *subject.sleeve.outside_in;
  const double from = passage.start_in - clear - moves.toward_to_in;
  const double to = passage.end_in + clear + moves.toward_from_in;
  if (from < 0 || to > subject.route.length_in())
    return "guard what it covers with a grommet instead: the line is too short for such a sleeve";
  return "run the sleeve from " +
         phrasing.tape_number(std::min(subject.sleeve.from_in, phrasing.tape_down(from))) + " to " +
         phrasing.tape(std::max(subject.sleeve.to_in, phrasing.tape_up(to))) + " from " +
         subject.route.from->name;
}

Judgement judge_cover(const Subject& subject, const Passage& passage, const SleeveHold& hold) {
  const Phrasing& phrasing = subject.context.phrasing;
  const Movement moves = hold.moves.value_or(Movement{});
  const StandOut side = worse_side(subject, passage, moves);
  Judgement judgement = sleeve_judgement(subject, passage.middle_in());
  if (!passage.name.empty()) judgement.with = passage.name;
  const Limit least(side.limit_in, stand_out);
  const std::string stands =
      "the sleeve stands out " + phrasing.length(side.value_in) + " past the " + passage.words;
  if (!holds(judgement, side.value_in, {least})) {
    judgement.message = side.value_in < 0 ? "the sleeve ends " + phrasing.length(-side.value_in) +
                                                " short of the far face of the " + passage.words
                                          : stands + " only";
    judgement.mend = cover_mend(subject, passage, moves);
  } else if (!hold.moves) {
    leave_unknown(judgement, least);
    judgement.message = stands + "; whether that is enough is not known: the travel of " +
                        subject.route.route->name + " is missing";
    judgement.mend = "state the route's travel, or clamp the sleeve to structure";
  } else {
    judgement.message = stands;
  }
  return judgement;
}

std::optional<Judgement> judge_length(const Subject& subject) {
  const double over = subject.sleeve.to_in - subject.route.length_in();
  Judgement judgement = sleeve_judgement(subject, subject.route.length_in());
  if (holds(judgement, -over, {within_line})) return std::nullopt;
  const Phrasing& phrasing = subject.context.phrasing;
  judgement.message = "the sleeve reaches " + phrasing.length(over) + " beyond the end of its line";
  judgement.mend = "end it " + phrasing.tape(phrasing.tape_down(subject.route.length_in())) +
                   " from " + subject.route.from->name + " or nearer";
  return judgement;
}

void judge_sleeve(const Subject& subject, const std::vector<Passage>& on_the_way,
                  const SleeveHold& hold, std::vector<Judgement>& judgements) {
  if (const auto beyond = judge_length(subject)) {
    judgements.push_back(*beyond);
    return;
  }
  if (const auto missing = judge_stated(subject)) judgements.push_back(*missing);
  std::vector<Judgement> in_it =
      judge_attachments_in_sleeve(subject.context, subject.route, subject.sleeve, hold);
  // A bore that suits the line alone is no pass while something thicker is in it.
  if (subject.sleeve.bore_in) {
    const Judgement fit = judge_fit(subject);
    if (in_it.empty() || fit.verdict != Verdict::pass) judgements.push_back(fit);
  }
  std::move(in_it.begin(), in_it.end(), std::back_inserter(judgements));
  if (subject.on_cable()) judgements.push_back(judge_hold(subject, hold));
  for (Judgement& judgement : judge_sleeve_bends(subject.context, subject.route, subject.sleeve))
    judgements.push_back(std::move(judgement));
  for (Judgement& judgement :
       judge_sleeve_travel(subject.context, subject.route, subject.sleeve, on_the_way, hold))
    judgements.push_back(std::move(judgement));
  for (Judgement& judgement :
       judge_sleeve_at_ends(subject.context, subject.route, subject.sleeve, hold))
    judgements.push_back(std::move(judgement));
  if (!subject.sleeve.outside_in) return;
  for (const Passage& passage : on_the_way)
    if (concerns(subject, passage)) judgements.push_back(judge_cover(subject, passage, hold));
}

std::vector<Judgement> judge_sleeves(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.route->sleeves.empty()) continue;
    const SleeveGuards& sleeves = context.motion.sleeves[context.index_of(route)];
    for (std::size_t i = 0; i < route.route->sleeves.size(); ++i)
      judge_sleeve({context, route, route.route->sleeves[i]}, sleeves.on_the_way(),
                   sleeves.holds()[i], judgements);
  }
  return judgements;
}

}  // namespace

const Rule& sleeve_cover_rule() {
  static const Rule rule{
      .name = "sleeve-cover",
      .purpose =
          "a sleeve fits, is held, bends no tighter than it stands, and covers what it guards",
      .explanation =
          R"(Fit: the bore must let the largest real cable through (nominal diameter and its plus
tolerance), with a little room and no more, and every attachment that lies in it or, through
full travel, comes into it: one that is clamped to structure is held against each place of the
travel, turnbuckles at their longest, one that goes with the cable against what it is drawn
over. Hold: a sleeve walks along a moving cable unless a clamp, or a grommet that fits it
closely, lies within its length, or a stop that it cannot slip over is fixed to the cable at
each end. Cover: past both faces of every frame and guide that it lies over, or ends within a
diameter of, it should stand out by its own outside diameter, and by the cable's full travel
unless it is clamped to structure; a sleeve that nothing holds is taken to go with the cable. A
sleeve that ends within 2 in of a bare hole, whose edge its line comes near, ends short of it.
Travel: a sleeve must not lie over a pulley, nor run onto one, or into a clamp or a guide too
narrow for it, at full travel. It must not lie over a swaged terminal of its cable's ends either, or
the nut of a fitting, nor a terminal run into one that structure holds. Bends: where its line turns with no pulley or fairlead there, a
sleeve needs an arc to follow, the point's `bend`, and one no tighter than it stands: its own
`minimum_bend_radius`, or that of the `line` it is cut from. Such a sleeve, if it covers the
whole arc and structure holds it on both sides of it, guides a cable round it (`bend-fit`). A sleeve over a cable is where wear starts, so the cable in
it must be inspectable (AC 43.13-1B para 7-149 b): that is left to the builder.)",
      .mend = "Lengthen the sleeve, hold it, or use one of another bore.",
      .limits = sleeve_cover_limits,
      .catalogue_limits =
          "diameter and plus tolerance of each cable: AC 43.13-1B Table 7-3; "
          "minimum_bend_radius of the tube a sleeve is cut from",
      .judge = judge_sleeves};
  return rule;
}

}  // namespace linewright
