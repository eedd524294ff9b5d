#include "rules/space/hole_passage.hpp"

#include <algorithm>

#include "geometry/plane/polygon.hpp"
#include "lines/edge_gap.hpp"
#include "lines/edge_guard.hpp"
#include "lines/motion/sleeve_hold.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

const LimitRow& edge_row(LineKind kind, EdgeGuard edge) {
  // The wires' rule knows of no edge that needs no grommet.
  if (kind == LineKind::wire) return wire_to_hole_edge;
  if (is_turned(edge)) return works_control(kind) ? cable_to_turned_edge : tube_to_turned_edge;
  return works_control(kind) ? cable_to_hole_edge : tube_to_hole_edge;
}

/// One line in one hole.
struct InHole {
  const RuleContext& context;
  const PreparedRoute& route;
  const Crossing& crossing;
  const RoutePoint* guide = guide_in(route, crossing);

  const Hole& hole() const { return *crossing.hole; }
  double diameter_in() const { return 2 * route.radius_in(crossing.distance_in); }
  double tolerance_in() const { return context.prepared.project->build_tolerance_in; }

  std::optional<double> stated_bore_in() const {
    return guide && guide->bore_in ? guide->bore_in : hole().bore_in;
  }

  /// "grommet", "bushing", "fairlead" or "edge trim".
  std::string guard_words() const {
    if (!guide) return guard_word(hole().edge);
    if (guide->hold == HoldKind::grommet) return "grommet";
    return guide->hold == HoldKind::bushing ? "bushing" : "fairlead";
  }

  /// True where a rubber grommet is what goes round the line.
  bool in_grommet() const {
    return guide ? guide->hold == HoldKind::grommet : hole().edge == EdgeGuard::grommet;
  }

  const LimitRow& wall_row() const {
    return in_grommet() && !stated_bore_in() ? grommet_wall : guard_wall;
  }

  /// Wall of what is fitted round the hole's middle; none where that is not known, or where the
  /// guard follows the edge or stands on a bracket.
  double wall_in() const {
    if (!fills_hole(guide, hole())) return 0;
    const std::optional<double> bore = stated_bore_in();
    if (!bore) return wall_row().value / 2;
    const auto* circle = std::get_if<Circle>(&hole().shape);
    return circle ? (circle->diameter_in - *bore) / 2 : 0;
  }
};

/// Nothing where the guard's bore lets the line through, or is not stated.
std::optional<Judgement> too_thick_for_bore(const InHole& in, Judgement judgement) {
  const std::optional<double> bore = in.stated_bore_in();
  if (!bore || holds(judgement, *bore - in.diameter_in(), {free_of_sheet})) return std::nullopt;
  const Phrasing& phrasing = in.context.phrasing;
  judgement.message = "the line, " + phrasing.length(in.diameter_in()) +
                      " across, does not go through the " + phrasing.length(*bore) +
                      " bore in hole " + in.hole().name;
  judgement.mend = "fit a guide with a bore over " + phrasing.length(in.diameter_in());
  return judgement;
}

/// Nothing where the hole leaves room for the guard round its bore or, where that is not stated,
/// round the line.
std::optional<Judgement> no_room_for_guard(const InHole& in, Judgement judgement) {
  const Phrasing& phrasing = in.context.phrasing;
  const double widest = widest_circle_in(in.hole());
  const std::optional<double> bore = in.stated_bore_in();
  const double inside = bore.value_or(in.diameter_in());
  const LimitRow& row = in.wall_row();
  if (holds(judgement, widest - inside, {free_of_sheet, row})) return std::nullopt;
  judgement.message = "hole " + in.hole().name + ", " + phrasing.length(widest) +
                      " wide, leaves no room for a " + in.guard_words() + " round " +
                      (bore ? "a bore of " : "a line of ") + phrasing.length(inside);
  judgement.mend = "make the hole " + phrasing.length_up(inside + row.value) + " wide or more";
  if (!bore) judgement.mend += ", or state the guard's `bore` where it is thinner";
  return judgement;
}

/// A line in the middle of its hole may press on the guard by the build tolerance alone.
std::string press_mend(const InHole& in, const Limit& unpressed, double free_in) {
  const Phrasing& phrasing = in.context.phrasing;
  const auto* circle = std::get_if<Circle>(&in.hole().shape);
  const double needed_in = in.diameter_in() + 2 * (in.tolerance_in() + unpressed.value);
  if (circle && circle->diameter_in < needed_in - limit_rounding)
    return "make the hole " + phrasing.length_up(needed_in) +
           " wide or more, or state a smaller `build_tolerance` where lines are led truer";
  return "move the line " + phrasing.length_up(unpressed.lacking(free_in)) +
         " toward the middle of the hole";
}

Judgement judge_guarded(const InHole& in, double free_in, const Judgement& blank) {
  if (const auto thick = too_thick_for_bore(in, blank)) return *thick;
  Judgement judgement = blank;
  // The line may lie against the guide; it presses on it when drawn deeper than it could be built.
  const Limit unpressed{guard_preload.value + std::max(0.0, in.wall_in() - 2 * in.tolerance_in()),
                        guard_preload};
  const bool free = holds(judgement, free_in, {free_of_sheet, unpressed});
  if (judgement.verdict != Verdict::fail)
    if (const auto tight = no_room_for_guard(in, blank)) return *tight;
  if (!free) {
    judgement.message = "presses on the guard of hole " + in.hole().name;
    judgement.mend = press_mend(in, unpressed, free_in);
    return judgement;
  }
  judgement.message = "guarded in hole " + in.hole().name;
  return judgement;
}

/// How to get the gap wanted to an open edge: within the hole where it has the room, else by a
/// larger hole.
std::string room_mend(const InHole& in, double wanted_in, double gap_in) {
  const Phrasing& phrasing = in.context.phrasing;
  const double needed = 2 * wanted_in + in.diameter_in() + 2 * in.tolerance_in();
  const auto* circle = std::get_if<Circle>(&in.hole().shape);
  if (circle && circle->diameter_in < needed - limit_rounding)
    return "make the hole " + phrasing.length_up(needed) +
           " wide and lead the line through its middle";
  return "move the line " + phrasing.length_up(wanted_in - gap_in) +
         " toward the middle of the hole";
}

Judgement judge_open(const InHole& in, double free_in, Judgement judgement) {
  const EdgeGuard edge = in.hole().edge;
  const LimitRow& row = edge_row(in.route.line->kind, edge);
  const std::string what = "the " +
                           edge_words(edge, in.hole().edge_radius_in, in.context.phrasing, true) +
                           " of hole " + in.hole().name;
  if (holds(judgement, free_in, {free_of_sheet, row})) {
    judgement.message = "clear of the edge of hole " + in.hole().name;
    return judgement;
  }
  judgement.message = (judgement.limit == free_of_sheet.value ? "touches " : "close to ") + what +
                      (in.guide ? ", whose " + in.guard_words() + " does not keep the line off it"
                                : sawn_words(in.route, edge));
  judgement.mend = (in.route.stays() ? "fit a grommet or edge trim, or "
                                     : "lead the cable through a fairlead in it, or ") +
                   room_mend(in, row.value, free_in);
  return judgement;
}

/// Trim and grommets hold where what moves in them is a sleeve.
bool is_guarded_by_sleeve(const InHole& in) {
  return guards(in.hole().edge) && SleeveGuards(in.route).guard(in.crossing.distance_in);
}

Judgement judge_in_hole(const InHole& in, double free_in, const Judgement& judgement) {
  return is_guarded(in.route, in.crossing) || is_guarded_by_sleeve(in)
             ? judge_guarded(in, free_in, judgement)
             : judge_open(in, free_in, judgement);
}

}  // namespace

Judgement judge_hole_passage(const RuleContext& context, const PreparedRoute& route,
                             const Crossing& crossing) {
  const InHole in{context, route, crossing};
  const EdgeGap edge = edge_gap(route, crossing);
  Judgement judgement = context.at(route, edge.along_in);
  if (const RoutePoint* point = route.point_through(crossing.hole->name))
    judgement.location = point->where;
  judgement.with = crossing.name();
  const double free_in = edge.distance_in - route.radius_in(edge.along_in) - in.tolerance_in();
  return judge_in_hole(in, free_in, judgement);
}

void judge_measured_passage(const RuleContext& context, const PreparedRoute& route,
                            const Crossing& crossing, double free_in, Judgement& judgement) {
  const Measured measured = *judgement.measured;
  judgement = judge_in_hole({context, route, crossing}, free_in, judgement);
  judgement.message.insert(
      0, "measured " + context.phrasing.length(measured.value) + " from its edge: ");
}

}  // namespace linewright
