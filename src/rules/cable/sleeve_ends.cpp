#include "rules/cable/sleeve_ends.hpp"

#include <algorithm>
#include <optional>

#include "lines/arm_swing.hpp"

namespace linewright {

namespace {

/// A terminal, once swaged, is wider than so many of its cable's diameters: 0.138 in on 1/16 in,
/// 0.250 in on 5/32 in [from memory: MS20667 and its kin].
constexpr double terminal_over_cable = 1.5;

/// One end of a line, as seen from a sleeve: distances count inward along the line.
struct SleeveEnd {
  const RuleContext& context;
  const PreparedRoute& route;
  const Sleeve& sleeve;
  const SleeveHold& hold;
  RouteEnd which;

  bool at_from() const { return which == RouteEnd::from; }
  const Node& node() const { return at_from() ? *route.from : *route.to; }
  const std::optional<CableEnd>& stated() const {
    return at_from() ? route.route->ends.from : route.route->ends.to;
  }
  double to_sleeve_in() const {
    return at_from() ? sleeve.from_in : route.length_in() - sleeve.to_in;
  }
  /// How far the end comes toward the sleeve; a sleeve that goes with the cable it comes no nearer.
  double comes_in() const {
    if (!hold.to_structure || !route.moves) return 0;
    return at_from() ? route.moves->toward_to_in : route.moves->toward_from_in;
  }
  bool travel_missing() const { return hold.to_structure && !route.moves; }
  /// What is drawn there is held against the sleeve by its own size.
  bool is_drawn(double reaches_in) const {
    return std::any_of(
        route.route->attached.begin(), route.route->attached.end(), [&](const Attachment& each) {
          const double middle = at_from() ? each.at_in : route.length_in() - each.at_in;
          return middle + each.longest_in() / 2 >= reaches_in - limit_rounding &&
                 middle - each.longest_in() / 2 <= reaches_in + limit_rounding;
        });
  }

  Judgement judgement() const {
    Judgement judgement = context.at(
        route, std::clamp(at_from() ? sleeve.from_in : sleeve.to_in, 0.0, route.length_in()));
    judgement.location = sleeve.where;
    judgement.with = node().name;
    return judgement;
  }
  std::string mend(double over_in) const {
    const Phrasing& phrasing = context.phrasing;
    return std::string(at_from() ? "start the sleeve " : "end the sleeve ") +
           phrasing.length_up(over_in) + " or more farther from " + node().name;
  }
};

Judgement not_known_at_end(const SleeveEnd& end, std::string message, std::string mend) {
  Judgement judgement = end.judgement();
  leave_unknown(judgement, sleeve_to_end);
  judgement.message = std::move(message);
  judgement.mend = std::move(mend);
  return judgement;
}

std::optional<Judgement> at_terminal(const SleeveEnd& end) {
  const Phrasing& phrasing = end.context.phrasing;
  const double stiff = end.stated()->takes_up_in;
  if (stiff <= 0 || end.is_drawn(stiff)) return std::nullopt;
  const double gap = end.to_sleeve_in() - stiff - end.comes_in();
  const std::string what = "the end at " + end.node().name + ", which takes up " +
                           phrasing.length(stiff) + " of the cable,";
  if (gap >= -limit_rounding) {
    if (!end.travel_missing()) return std::nullopt;
    return not_known_at_end(end,
                            "whether " + what +
                                " runs into the sleeve is not known: the travel of " +
                                end.route.route->name + " is missing",
                            "state it in the project");
  }
  const double bore = end.sleeve.bore_in.value_or(0);
  if (bore > terminal_over_cable * end.route.line->outside_diameter_in)
    return not_known_at_end(
        end,
        "whether " + what + " goes into the sleeve is not known: how thick it is is not stated",
        "state what is on the cable at " + end.node().name +
            " under attached: its kind, at, length and diameter");
  Judgement judgement = end.judgement();
  holds(judgement, gap, {sleeve_to_end});
  judgement.message = end.to_sleeve_in() < stiff - limit_rounding
                          ? "the sleeve lies over " + what.substr(0, what.size() - 1)
                          : what + " runs into the sleeve at full travel";
  judgement.mend = end.mend(-gap);
  return judgement;
}

std::optional<Judgement> at_thimble(const SleeveEnd& end) {
  const double doubled = end.stated()->inside_in;
  if (end.is_drawn(doubled) || end.to_sleeve_in() - end.comes_in() >= doubled - limit_rounding)
    return std::nullopt;
  return not_known_at_end(
      end,
      "whether what holds the thimble at " + end.node().name +
          " runs into the sleeve is not known: how far it reaches is not stated",
      "state it under attached: its kind, at, length and diameter");
}

/// A nut that stands out past the face that the tube begins at.
std::optional<Judgement> at_nut(const SleeveEnd& end) {
  const Port* port = end.at_from() ? end.route.from_port : end.route.to_port;
  const std::optional<FittingBody>& body = end.node().body;
  if (!port || !body || !end.sleeve.bore_in) return std::nullopt;
  const double gap = end.to_sleeve_in() - body->beyond_face_in;
  if (gap >= -limit_rounding || *end.sleeve.bore_in >= 2 * body->radius_in - limit_rounding)
    return std::nullopt;
  const Phrasing& phrasing = end.context.phrasing;
  Judgement judgement = end.judgement();
  holds(judgement, gap, {sleeve_to_end});
  judgement.message = "the sleeve lies over the nut at " + end.node().name + ": that is " +
                      phrasing.length(2 * body->radius_in) + " across, a bore of " +
                      phrasing.length(*end.sleeve.bore_in);
  judgement.mend = end.mend(-gap);
  return judgement;
}

/// The pin of an end that states nothing takes up no length; what a sector takes up winds onto it.
std::optional<Judgement> at_pin(const SleeveEnd& end) {
  const double gap = end.to_sleeve_in() - end.comes_in();
  if (gap >= -limit_rounding || end.node().sector || end.is_drawn(0)) return std::nullopt;
  Judgement judgement = end.judgement();
  holds(judgement, gap, {sleeve_to_end});
  judgement.message = "the end at " + end.node().name + " runs into the sleeve at full travel";
  judgement.mend = end.mend(-gap);
  return judgement;
}

std::optional<Judgement> at_end(const SleeveEnd& end) {
  if (end.route.line->kind != LineKind::cable) return at_nut(end);
  if (!end.stated()) return at_pin(end);
  return end.stated()->kind == CableEndKind::swaged ? at_terminal(end) : at_thimble(end);
}

}  // namespace

std::vector<Judgement> judge_sleeve_at_ends(const RuleContext& context, const PreparedRoute& route,
                                            const Sleeve& sleeve, const SleeveHold& hold) {
  std::vector<Judgement> judgements;
  for (const RouteEnd which : {RouteEnd::from, RouteEnd::to})
    if (auto judgement = at_end({context, route, sleeve, hold, which}))
      judgements.push_back(*std::move(judgement));
  return judgements;
}

}  // namespace linewright
