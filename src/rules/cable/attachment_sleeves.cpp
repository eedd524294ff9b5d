#include "rules/cable/attachment_sleeves.hpp"

#include <algorithm>

#include "lines/motion/attached_shift.hpp"
#include "lines/passages.hpp"
#include "rules/cable/sleeve_travel.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

/// Distance along the line between the places the attachment sweeps, as seen from the sleeve, and
/// the sleeve; below zero where they meet.
double gap_in(const Attachment& attachment, double length_in, const Sleeve& sleeve,
              const AttachedShift& shift, double more_in = 0) {
  const double half = length_in / 2 + more_in;
  return std::max(sleeve.from_in - (attachment.at_in + half + shift.toward_to_in),
                  (attachment.at_in - half - shift.toward_from_in) - sleeve.to_in);
}

std::string sleeve_words(const RuleContext& context, const PreparedRoute& route,
                         const Sleeve& sleeve) {
  return "the sleeve from " + context.phrasing.tape_number(sleeve.from_in) + " to " +
         context.phrasing.tape(sleeve.to_in) + " from " + route.from->name;
}

std::optional<Judgement> judge_pair(const RuleContext& context, const PreparedRoute& route,
                                    const Attachment& attachment, const Sleeve& sleeve,
                                    bool sleeve_stays) {
  const AttachedShift shift =
      sleeve_stays ? attached_shift(route, attachment.at_in) : AttachedShift{};
  // One that goes with the cable is pushed along by a turnbuckle that is screwed out.
  const double length = sleeve_stays ? attachment.longest_in() : attachment.length_in;
  const double gap = gap_in(attachment, length, sleeve, shift);
  const bool meets = gap < -limit_rounding;
  const bool might = !shift.missing.empty() &&
                     (!shift.bounded ||
                      gap_in(attachment, length, sleeve, shift, shift.bound_in) < -limit_rounding);
  if (!meets && !might) return std::nullopt;
  Judgement judgement = context.at(route, std::clamp(attachment.at_in, 0.0, route.length_in()));
  judgement.location = attachment.where;
  const std::string kind = "the " + attachment.kind;
  const std::string into = sleeve_words(context, route, sleeve);
  if (!meets) {
    leave_unknown(judgement, sleeve_travel_limit);
    judgement.message = "whether " + kind + " runs into " + into +
                        " is not known: " + shift.missing + " is missing";
    judgement.mend = "state it in the project";
    return judgement;
  }
  const Phrasing& phrasing = context.phrasing;
  const bool as_drawn = gap_in(attachment, attachment.length_in, sleeve, {}) < -limit_rounding;
  holds(judgement, gap, {sleeve_travel_limit});
  judgement.message = kind + (as_drawn ? " does not go into " : " runs at full travel into ") +
                      into + ": " + phrasing.length(attachment.diameter_in) +
                      " across, a bore of " + phrasing.length(*sleeve.bore_in);
  judgement.mend = "move one of them " + phrasing.length_up(-gap) +
                   " or more away from the other along the line, or shorten the sleeve";
  return judgement;
}

}  // namespace

bool keeps_out_of_sleeves(const RuleContext& context, const PreparedRoute& route,
                          const Attachment& attachment, double at_in) {
  Attachment moved = attachment;
  moved.at_in = at_in;
  const std::vector<SleeveHold>& held = context.motion.sleeves[context.index_of(route)].holds();
  for (std::size_t i = 0; i < held.size(); ++i) {
    const Sleeve& sleeve = route.route->sleeves[i];
    if (!sleeve.bore_in || attachment.diameter_in <= *sleeve.bore_in + limit_rounding) continue;
    const bool stays = held[i].to_structure;
    const AttachedShift shift = stays ? attached_shift(route, at_in) : AttachedShift{};
    const double length = stays ? moved.longest_in() : moved.length_in;
    if (gap_in(moved, length, sleeve, shift) < -limit_rounding) return false;
  }
  return true;
}

std::vector<Judgement> judge_attachments_in_sleeve(const RuleContext& context,
                                                   const PreparedRoute& route, const Sleeve& sleeve,
                                                   const SleeveHold& hold) {
  std::vector<Judgement> judgements;
  if (!sleeve.bore_in) return judgements;
  for (const Attachment& attachment : route.route->attached) {
    if (attachment.diameter_in <= *sleeve.bore_in + limit_rounding) continue;
    if (const auto found = judge_pair(context, route, attachment, sleeve, hold.to_structure))
      judgements.push_back(*found);
  }
  return judgements;
}

}  // namespace linewright
