#include "rules/cable/end_travel.hpp"

#include <algorithm>
#include <optional>
#include <utility>

#include "lines/arm_swing.hpp"
#include "rules/cable/end_beyond.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

namespace {

/// One end of a cable, as seen from its pin: distances count inward along the cable.
class CableTail {
 public:
  CableTail(const RuleContext& context, const PreparedRoute& route, RouteEnd which)
      : context_(context), route_(route), at_from_(which == RouteEnd::from), which_(which) {}

  const RuleContext& context() const { return context_; }
  const PreparedRoute& route() const { return route_; }
  const Node& node() const { return at_from_ ? *route_.from : *route_.to; }
  const std::optional<CableEnd>& stated() const {
    return at_from_ ? route_.route->ends.from : route_.route->ends.to;
  }
  double stiff_in() const { return stated() ? stated()->takes_up_in : 0; }
  /// How far what doubles the cable can reach: the cable that goes round a thimble and back.
  double doubled_in() const {
    return stated() && stated()->kind == CableEndKind::thimble ? stated()->inside_in : 0;
  }
  double travel_in() const {
    if (!route_.moves) return 0;
    return at_from_ ? route_.moves->toward_to_in : route_.moves->toward_from_in;
  }
  /// From the pin to the nearer side of what is passed.
  double to_passage_in(const Passage& passage) const {
    return at_from_ ? passage.start_in : route_.length_in() - passage.end_in;
  }
  double gap_in(const Passage& passage) const {
    return to_passage_in(passage) - stiff_in() - travel_in();
  }
  /// What is drawn of it meets everything before the end as stated does.
  bool is_attached() const {
    const auto& attached = route_.route->attached;
    return std::any_of(attached.begin(), attached.end(), [&](const Attachment& each) {
      const double middle = at_from_ ? each.at_in : route_.length_in() - each.at_in;
      const double half = each.longest_in() / 2;
      return middle + half >= stiff_in() - limit_rounding &&
             middle - half <= std::max(stiff_in(), doubled_in()) + limit_rounding;
    });
  }
  /// An arm that cannot take the pin so far is `bend-fit`'s.
  bool arm_falls_short() const {
    const auto swing = arm_swing(route_, which_);
    return swing && !swing->reaches;
  }

  Judgement judgement() const {
    Judgement judgement = context_.at(route_, at_from_ ? 0 : route_.length_in());
    judgement.location =
        stated() ? stated()->where : (at_from_ ? route_.route->from_where : route_.route->to_where);
    return judgement;
  }
  Judgement judgement(const Passage& passage) const {
    Judgement judgement = this->judgement();
    if (!passage.name.empty()) judgement.with = passage.name;
    return judgement;
  }
  std::string words() const {
    std::string text = "the end at " + node().name;
    if (stiff_in() > 0)
      text += ", which takes up " + context_.phrasing.length(stiff_in()) + " of the cable,";
    return text;
  }

 private:
  const RuleContext& context_;
  const PreparedRoute& route_;
  bool at_from_;
  RouteEnd which_;
};

/// A hole that nothing fills lets through what is thin enough.
bool is_bare_hole(const Passage& passage) {
  return !passage.point && passage.crossing && passage.crossing->hole;
}

Judgement unknown_size(const CableTail& end, const Passage& passage, const std::string& message) {
  Judgement judgement = end.judgement(passage);
  leave_unknown(judgement, jam_limit);
  judgement.message = message;
  judgement.mend = "state what is on the cable at " + end.node().name +
                   " under attached: its kind, at, length and diameter";
  return judgement;
}

Judgement judge_gap(const CableTail& end, const Passage& passage) {
  const Phrasing& phrasing = end.context().phrasing;
  const double gap = end.gap_in(passage);
  Judgement judgement = end.judgement(passage);
  const bool clear = end.route().stays() ? holds(judgement, gap, {jam_limit})
                                         : holds(judgement, gap, {jam_limit, attachment_to_guide});
  if (gap < -limit_rounding)
    judgement.message =
        end.words() +
        (end.stiff_in() > 0 ? " runs into the "
                            : " would have to go " + phrasing.length(-gap) + " past the ") +
        passage.words + " at full travel";
  else
    judgement.message = end.words() + " keeps " + phrasing.length(gap) + " from the " +
                        passage.words + " at full travel";
  if (clear) return judgement;
  const double wanted = end.to_passage_in(passage) - gap +
                        (end.route().stays() ? jam_limit.value : attachment_to_guide.value);
  judgement.mend = "leave " + phrasing.length_up(wanted) + " of cable or more between " +
                   end.node().name + " and the " + passage.words;
  judgement.mend += end.stiff_in() > 0 ? ", or fit an end that takes up less"
                                       : ", or state the travel that it has";
  return judgement;
}

/// Nothing where the passage lets the end by, or is judged elsewhere.
std::optional<Judgement> judge_passage(const CableTail& end, const Passage& passage) {
  const bool meets = end.gap_in(passage) < -limit_rounding;
  if (is_bare_hole(passage)) {
    if (!meets) return std::nullopt;
    return unknown_size(end, passage,
                        "whether " + end.words() + " goes through the " + passage.words +
                            " at full travel is not known: how thick it is is not stated");
  }
  if (!meets && end.gap_in(passage) < end.doubled_in() - limit_rounding)
    return unknown_size(end, passage,
                        "whether what holds the thimble at " + end.node().name + " runs into the " +
                            passage.words +
                            " at full travel is not known: how far it reaches is not stated");
  return judge_gap(end, passage);
}

Judgement unknown_travel(const CableTail& end) {
  Judgement judgement = end.judgement();
  leave_unknown(judgement, jam_limit);
  judgement.message = "how far the end at " + end.node().name +
                      " moves is not known: the travel of " + end.route().route->name +
                      " is missing";
  judgement.mend = "state it in the project";
  return judgement;
}

void judge_end(const CableTail& end, const std::vector<Passage>& passages,
               std::vector<Judgement>& judgements) {
  if (end.node().sector || end.is_attached()) return;
  if (end.stiff_in() <= 0 && end.doubled_in() <= 0 && end.arm_falls_short()) return;
  std::optional<Judgement> nearest;
  bool all_pass = true;
  for (const Passage& passage : passages) {
    auto judgement = judge_passage(end, passage);
    if (!judgement) continue;
    if (judgement->verdict != Verdict::pass) {
      all_pass = false;
      judgements.push_back(*std::move(judgement));
    } else if (!nearest || *judgement->value < *nearest->value) {
      nearest = std::move(judgement);
    }
  }
  if (!all_pass || !end.stated()) return;
  if (!end.route().moves && !passages.empty())
    judgements.push_back(unknown_travel(end));
  else if (nearest)
    judgements.push_back(*nearest);
}

}  // namespace

std::vector<Judgement> judge_end_travel(const RuleContext& context, const PreparedRoute& route,
                                        const std::vector<Passage>& passages) {
  std::vector<Judgement> judgements;
  if (route.line->kind != LineKind::cable) return judgements;
  for (const RouteEnd which : {RouteEnd::from, RouteEnd::to})
    judge_end({context, route, which}, passages, judgements);
  for (Judgement& judgement : judge_ends_beyond(context, route))
    judgements.push_back(std::move(judgement));
  return judgements;
}

}  // namespace linewright
