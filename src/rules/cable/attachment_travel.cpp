#include <algorithm>
#include <cmath>

#include "lines/edge_gap.hpp"
#include "lines/motion/attached_shift.hpp"
#include "lines/passages.hpp"
#include "lines/prepare.hpp"
#include "model/letters.hpp"
#include "rules/cable/attachment_sleeves.hpp"
#include "rules/cable/end_travel.hpp"
#include "rules/cable/turnbuckle_length.hpp"
#include "rules/rule.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

namespace {

constexpr LimitRow splice{.name = "splice-to-guide",
                          .subject = "splice to a fairlead or pulley at full travel",
                          .value = 2,
                          .source = "AC 43.13-1B para 7-147 a",
                          .mark = Mark::verified};
constexpr LimitRow hole_edge{.name = "attachment-to-hole-edge",
                             .subject = "attachment that travels through a hole, to its edge",
                             .value = 0.5,
                             .source = "where either can move",
                             .mark = Mark::common_practice,
                             .broken = Verdict::warn};
constexpr LimitRow within_line{.name = "within-line",
                               .subject = "attachment short of the ends of its line",
                               .value = 0,
                               .source = "geometry",
                               .mark = Mark::calculated};

constexpr auto attachment_travel_limits = limit_table(
    {jam_limit, splice, attachment_to_guide, hole_edge, within_line, drawn_length_limit});

/// So many places for an attachment are looked at for a mend.
constexpr std::size_t most_places_tried = 24;

/// A passage, and the gap from the centreline to the edge of its hole where it is one.
struct Place {
  Passage passage;
  double edge_in = 0;
};

struct Subject {
  const RuleContext& context;
  const PreparedRoute& route;
  const std::vector<Place>& places;
  const Attachment& attachment;
};

/// Distance along the line between the places the attachment sweeps, screwed all the way out, and
/// the passage; below zero where they meet, by how much one must give way.
double gap_in(const Attachment& attachment, double at_in, const AttachedShift& shift,
              const Passage& passage) {
  const double half = attachment.longest_in() / 2;
  return std::max(passage.start_in - (at_in + half + shift.toward_to_in),
                  (at_in - half - shift.toward_from_in) - passage.end_in);
}

/// Free distance between the attachment's surface and the edge of a hole that no support stands in,
/// or what guards it; below zero where it does not go through.
double room_in(const Subject& subject, const Place& place) {
  const Hole* hole = place.passage.crossing ? place.passage.crossing->hole : nullptr;
  const double radius = subject.attachment.diameter_in / 2;
  if (!hole) return -radius;
  const double edge = place.edge_in - radius - subject.context.prepared.project->build_tolerance_in;
  const std::optional<double> bore = hole->bore_in ? hole->bore_in : usual_bore_in(*hole);
  return bore ? std::min(edge, *bore / 2 - radius) : edge;
}

bool is_open_hole(const Passage& passage) {
  return passage.crossing && !passage.point;
}

/// However the builder spells the kind.
bool is_splice(const Attachment& attachment) {
  return holds_word(attachment.kind, "splice");
}

/// The sector at an end, which the cable winds onto, is neither passed nor gone through.
bool is_sector(const Passage& passage) {
  return !passage.point && !passage.crossing;
}

const LimitRow& along_row(const Subject& subject, const Passage& passage) {
  if (subject.route.line->kind != LineKind::cable || is_sector(passage)) return jam_limit;
  const bool spliced = is_splice(subject.attachment);
  return spliced && passage.leads ? splice : attachment_to_guide;
}

Judgement attachment_judgement(const Subject& subject) {
  const double at = std::clamp(subject.attachment.at_in, 0.0, subject.route.length_in());
  Judgement judgement = subject.context.at(subject.route, at);
  judgement.location = subject.attachment.where;
  return judgement;
}

/// What one passage asks of the attachment at a place along the line.
struct Finding {
  const Place* place = nullptr;
  Judgement judgement;   ///< without its words
  bool at_edge = false;  ///< held against the edge of its hole
  bool broken = false;

  double value_in() const { return *judgement.value; }
  double margin_in() const { return *judgement.margin(); }
};

Finding find(const Subject& subject, const Place& place, double at_in, const AttachedShift& shift) {
  const double gap = gap_in(subject.attachment, at_in, shift, place.passage);
  const double room = is_open_hole(place.passage) ? room_in(subject, place) : -1;
  const bool at_edge =
      room >= hole_edge.value - limit_rounding || (room >= 0 && gap < -limit_rounding);
  Finding finding{&place, attachment_judgement(subject), at_edge};
  finding.broken =
      at_edge ? !holds(finding.judgement, room, {hole_edge})
              : !holds(finding.judgement, gap, {jam_limit, along_row(subject, place.passage)});
  return finding;
}

bool clear_at(const Subject& subject, double at_in) {
  const double half = subject.attachment.longest_in() / 2;
  if (at_in < half || at_in > subject.route.length_in() - half) return false;
  if (!keeps_out_of_sleeves(subject.context, subject.route, subject.attachment, at_in))
    return false;
  const AttachedShift shift = attached_shift(subject.route, at_in);
  return std::none_of(subject.places.begin(), subject.places.end(), [&](const Place& place) {
    return find(subject, place, at_in, shift).broken;
  });
}

/// The nearest place along the line where the attachment keeps all limits.
std::string mend_words(const Subject& subject) {
  const Attachment& attachment = subject.attachment;
  const Phrasing& phrasing = subject.context.phrasing;
  const double half = attachment.longest_in() / 2;
  // The stretch is largest for a place at an end of the line, so that it is never understated.
  const AttachedShift shift = attached_shift(subject.route, subject.route.length_in());
  std::vector<double> candidates;
  for (const Place& place : subject.places) {
    const double limit = along_row(subject, place.passage).value;
    candidates.push_back(
        phrasing.tape_down(place.passage.start_in - limit - half - shift.toward_to_in));
    candidates.push_back(
        phrasing.tape_up(place.passage.end_in + limit + half + shift.toward_from_in));
  }
  for (const Sleeve& sleeve : subject.route.route->sleeves) {
    candidates.push_back(phrasing.tape_down(sleeve.from_in - half - shift.toward_to_in));
    candidates.push_back(phrasing.tape_up(sleeve.to_in + half + shift.toward_from_in));
  }
  std::sort(candidates.begin(), candidates.end(), [&](double a, double b) {
    return std::abs(a - attachment.at_in) < std::abs(b - attachment.at_in);
  });
  if (candidates.size() > most_places_tried) candidates.resize(most_places_tried);
  for (const double at : candidates)
    if (clear_at(subject, at))
      return "move the " + attachment.kind + " so that its middle is " + phrasing.tape(at) +
             " from " + subject.route.from->name;
  return "no place near on this line is clear: use a shorter " + attachment.kind +
         ", or move the guides apart";
}

std::string finding_words(const Subject& subject, const Finding& finding) {
  const Phrasing& phrasing = subject.context.phrasing;
  std::string kind = "the " + subject.attachment.kind;
  if (subject.attachment.adjustment)
    kind += ", " + phrasing.length(subject.attachment.longest_in()) + " at its longest,";
  const std::string& other = finding.place->passage.words;
  const std::string when =
      subject.route.line->kind == LineKind::cable ? " at full travel" : std::string();
  if (finding.at_edge)
    return kind + (finding.broken ? " passes " : " is free to pass ") +
           phrasing.length(finding.value_in()) + " from the edge of " + other + when;
  if (finding.value_in() < 0) return kind + " runs into the " + other + when;
  return kind + " keeps " + phrasing.length(finding.value_in()) + " from the " + other + when;
}

Judgement judge_finding(const Subject& subject, const Finding& finding) {
  Judgement judgement = finding.judgement;
  if (!finding.place->passage.name.empty()) judgement.with = finding.place->passage.name;
  judgement.message = finding_words(subject, finding);
  if (finding.broken) judgement.mend = mend_words(subject);
  return judgement;
}

/// Nothing where it lies within its line.
std::optional<Judgement> beyond_line(const Subject& subject) {
  const Attachment& attachment = subject.attachment;
  const double half = attachment.length_in / 2;
  const double over =
      std::max(half - attachment.at_in, attachment.at_in + half - subject.route.length_in());
  Judgement judgement = attachment_judgement(subject);
  if (holds(judgement, -over, {within_line})) return std::nullopt;
  const Phrasing& phrasing = subject.context.phrasing;
  judgement.message = "the " + attachment.kind + " reaches " + phrasing.length(over) +
                      " beyond the end of its line";
  judgement.mend = "set its middle between " + phrasing.tape(phrasing.tape_up(half)) + " and " +
                   phrasing.tape(phrasing.tape_down(subject.route.length_in() - half)) + " from " +
                   subject.route.from->name;
  return judgement;
}

Judgement not_known(const Subject& subject, const std::string& missing) {
  Judgement judgement = attachment_judgement(subject);
  leave_unknown(judgement, jam_limit);
  judgement.message =
      "how far the " + subject.attachment.kind + " moves is not known: " + missing + " is missing";
  judgement.mend = "state it in the project";
  return judgement;
}

/// All broken limits; else whether enough is known to pass, and the nearest thing.
void judge_attachment(const Subject& subject, std::vector<Judgement>& judgements) {
  const Attachment& attachment = subject.attachment;
  if (const auto beyond = beyond_line(subject)) {
    judgements.push_back(*beyond);
    return;
  }
  const AttachedShift shift = attached_shift(subject.route, attachment.at_in);
  AttachedShift widest = shift;
  widest.toward_from_in += shift.bound_in;
  widest.toward_to_in += shift.bound_in;
  std::optional<Finding> nearest;
  bool any_broken = false;
  bool any_failed = false;
  bool might_break = !shift.bounded;
  for (const Place& place : subject.places) {
    const Finding finding = find(subject, place, attachment.at_in, shift);
    might_break = might_break || find(subject, place, attachment.at_in, widest).broken;
    if (finding.broken) {
      judgements.push_back(judge_finding(subject, finding));
      any_failed = any_failed || judgements.back().verdict == Verdict::fail;
    }
    any_broken = any_broken || finding.broken;
    if (!nearest || finding.margin_in() < nearest->margin_in()) nearest = finding;
  }
  // What is only warned of as far as it is known may yet fail.
  const bool might_fail = !shift.missing.empty() && might_break && !any_failed;
  if (might_fail) judgements.push_back(not_known(subject, shift.missing));
  if (any_broken || might_fail) return;
  if (nearest) {
    judgements.push_back(judge_finding(subject, *nearest));
  } else {
    Judgement judgement = attachment_judgement(subject);
    holds_true(judgement, true, jam_limit);
    judgement.message = "the " + attachment.kind + " meets nothing on its line";
    judgements.push_back(judgement);
  }
}

std::vector<Place> places_on(const PreparedRoute& route, const std::vector<Passage>& passed) {
  std::vector<Place> places;
  for (const Passage& passage : passed) {
    const bool holed = is_open_hole(passage) && passage.crossing->hole;
    places.push_back({passage, holed ? edge_gap(route, *passage.crossing).distance_in : 0});
  }
  for (const Node* node : {route.from, route.to}) {
    if (!node->sector || route.line->kind != LineKind::cable) continue;
    Passage onto;
    onto.start_in = onto.end_in = node == route.from ? 0 : route.length_in();
    onto.name = node->name;
    onto.words = "sector of " + node->name;
    places.push_back({onto, 0});
  }
  return places;
}

std::vector<Judgement> judge_attachments(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    const std::vector<Passage> passed = passages(route);
    for (Judgement& judgement : judge_end_travel(context, route, passed))
      judgements.push_back(std::move(judgement));
    if (route.route->attached.empty()) continue;
    const std::vector<Place> places = places_on(route, passed);
    for (const Attachment& attachment : route.route->attached) {
      judge_attachment({context, route, places, attachment}, judgements);
      if (const auto drawn = judge_drawn_length(context, route, attachment))
        judgements.push_back(*drawn);
    }
  }
  return judgements;
}

}  // namespace

const Rule& attachment_travel_rule() {
  static const Rule rule{
      .name = "attachment-travel",
      .purpose = "turnbuckles, terminals, splices and ends stay clear through full travel",
      .explanation =
          R"(Each attachment is moved along its cable by the full travel both ways, and by the
stretch of the cable under its limit load from the end farther off. `forward` moves it toward
smaller FS; where the route turns back or runs square to FS, the larger travel counts both
ways. What is then left between it and every fairlead, grommet, bushing, pulley (where the
cable meets it), clamp and frame on the line, and the sector that the cable winds onto, is judged: it must not run into any, and should
keep the distance that the handbook sets for splices. A hole that nothing fills is no obstacle
where the attachment goes through it with room to spare on all sides. A turnbuckle that states
its `adjustment` is judged at its longest, about its middle; one drawn far from the middle of
its adjustment, for which its cables are cut, is warned of. Sleeves that it runs into are
judged by `sleeve-cover`. Attachments on tubes and wires do not move: they must only be clear
of their supports. What they come near sideways in their travel is judged by `clearance`,
`separation` and `chafe`, at the attachment's diameter.

What a cable's end takes up, stated in its `ends`, is stiff and goes with the cable: it is held
against the same, without stretch, unless it is drawn under `attached`, too. So is the pin of an
end that states nothing. How thick an end is is not stated: one that comes into a hole that nothing
fills is unknown, and so is a thimble that what is passed comes nearer to than its `allowance`. An
end on a `sector` is judged by `cable-end`.)",
      .mend = "Move the attachment along the line, or move the guide.",
      .limits = attachment_travel_limits,
      .catalogue_limits = "stretch of each cable: `linewright catalogue` shows it with its mark",
      .judge = judge_attachments};
  return rule;
}

}  // namespace linewright
