#include "rules/cable/free_fairlead.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <variant>

#include "geometry/plane/polygon.hpp"
#include "lines/edge_guard.hpp"
#include "lines/motion/reach.hpp"
#include "lines/named_hole.hpp"
#include "rules/rule.hpp"
#include "rules/words/neighbour_words.hpp"

namespace linewright {

namespace {

/// What is left of the bore as drawn. A slanting cable takes up more of it.
double room_in(const PreparedRoute& route, const FreePassage& passage) {
  return *passage.fairlead().bore_in / 2 - passage.offset_in -
         route.radius_in(passage.distance_in) / passage.slant_cosine;
}

const SpanReach* reach_at(const std::vector<SpanReach>& reaches, double distance_in) {
  const auto found = std::find_if(reaches.begin(), reaches.end(), [&](const SpanReach& each) {
    return distance_in <= each.stretch.end_in;
  });
  return found != reaches.end() ? &*found : nullptr;
}

/// The hole that the fairlead is fitted in.
NamedHole fitted_in(const RuleContext& context, const RoutePoint& fairlead) {
  return find_hole(*context.prepared.project, context.prepared.walls, fairlead.through);
}

/// "frame F4"; a wall is called by its part's name alone.
std::string sheet_words(const RuleContext& context, const Frame& sheet) {
  const Walls& walls = context.prepared.walls;
  const bool is_wall = std::any_of(walls.begin(), walls.end(),
                                   [&](const Wall& wall) { return &wall.frame == &sheet; });
  return is_wall ? sheet.name : frame_words(sheet, context.phrasing);
}

/// The widest bore that the fairlead's hole has room for about its middle; without a hole any.
double room_for_bore_in(const NamedHole& fitted, const RoutePoint& fairlead) {
  if (!fitted.hole) return std::numeric_limits<double>::infinity();
  if (const auto* circle = std::get_if<Circle>(&fitted.hole->shape)) return circle->diameter_in;
  const Vec2 middle = fitted.frame->plane.seen(fairlead.at);
  return covers(*fitted.hole, middle) ? 2 * edge_distance(*fitted.hole, middle) : 0;
}

std::string mend_words(const RuleContext& context, const FreePassage& passage, double lacking_in) {
  const Phrasing& phrasing = context.phrasing;
  const RoutePoint& fairlead = passage.fairlead();
  const NamedHole fitted = fitted_in(context, fairlead);
  const double wanted = phrasing.rounded_up(*fairlead.bore_in + 2 * lacking_in);
  std::string words;
  if (wanted < room_for_bore_in(fitted, fairlead))
    words += "use a bore of " + phrasing.length(wanted) + ", ";
  if (passage.offset_in >= lacking_in)
    words += std::string("move the fairlead ") + (fitted.hole ? "and its hole " : "") +
             phrasing.length_up(lacking_in) + " toward the middle of the cable, ";
  if (!words.empty()) words += "or ";
  return words +
         "let it guide the cable: leave out `passes: free` and draw its point on the cable's path";
}

/// A fairlead whose point cannot be where the cable goes through, whatever its bore.
struct Misdrawn {
  std::string words;
  std::optional<double> away_in;  ///< from where it should be, where the cable gets there
};

/// Not in the frame of its hole, or passed by the cable outside the ring; nothing for any other.
std::optional<Misdrawn> misdrawn(const RuleContext& context, const PreparedRoute& route,
                                 const FreePassage& passage) {
  const RoutePoint& fairlead = passage.fairlead();
  const NamedHole fitted = fitted_in(context, fairlead);
  const bool outside = passage.offset_in - route.radius_in(passage.distance_in) >
                       *fairlead.bore_in / 2 + limit_rounding;
  const bool off_frame =
      fitted.frame && std::abs(fitted.frame->plane.above(fairlead.at)) > point_at_hole_in;
  if (!outside && !off_frame) return std::nullopt;
  const std::string point = "its point is ";
  if (!fitted.frame)
    return Misdrawn{point + context.phrasing.length(passage.offset_in) + " from the cable",
                    passage.offset_in};
  std::optional<double> away;
  for (const Crossing& crossing : route.crossings)
    if (crossing.frame == fitted.frame)
      away = std::min(away.value_or(distance(crossing.at, fairlead.at)),
                      distance(crossing.at, fairlead.at));
  if (!away)
    return Misdrawn{
        "the cable does not pass " + sheet_words(context, *fitted.frame) + ", whose hole it is in",
        std::nullopt};
  return Misdrawn{point + context.phrasing.length(*away) + " from where the cable passes " +
                      sheet_words(context, *fitted.frame),
                  away};
}

Judgement judge_passage(const RuleContext& context, const PreparedRoute& route,
                        const FreePassage& passage, const std::vector<SpanReach>& reaches) {
  const RoutePoint& fairlead = passage.fairlead();
  const std::string name =
      "the fairlead" + (fairlead.through.empty() ? "" : " in hole " + fairlead.through);
  const double drawn = room_in(route, passage);
  const double gap = drawn - context.prepared.project->build_tolerance_in;
  Judgement judgement = context.at(route, passage.distance_in);
  judgement.location = fairlead.where;
  if (!fairlead.through.empty()) judgement.with = fairlead.through;
  const SpanReach* reach = reach_at(reaches, passage.distance_in);
  const double likely =
      reach ? reach->stretch.envelope.width_in(Reach::likely, passage.distance_in) : 0;
  const Limit as_it_moves(free_as_it_moves.value + likely, free_as_it_moves);
  if (const auto fault = misdrawn(context, route, passage)) {
    // Another part of the cable may run through the point: it is misdrawn all the same.
    if (fault->away_in && *fault->away_in > limit_rounding)
      holds(judgement, -*fault->away_in, {free_as_drawn});
    else
      holds_true(judgement, false, free_as_drawn);
    judgement.message = "the cable does not go through " + name + ": " + fault->words;
    judgement.mend =
        "set its point in the middle of its bore, where the cable goes through, or "
        "lead the cable there";
    return judgement;
  }
  if (!holds(judgement, drawn, {free_as_drawn})) {
    judgement.message = "the cable runs into " + name + ", which it is to pass free: it lies " +
                        context.phrasing.length(passage.offset_in) + " off the middle of the bore";
    judgement.mend = mend_words(context, passage, as_it_moves.lacking(gap));
    return judgement;
  }
  if (!reach || !reach->missing.empty()) {
    leave_unknown(judgement, as_it_moves);
    judgement.value = gap;
    judgement.limit.reset();
    judgement.message = "whether the cable passes " + name +
                        " free is not known: " + (reach ? reach->missing : "what holds it") +
                        " is missing";
    judgement.mend = "state it in the project";
    return judgement;
  }
  const std::string numbers =
      ": room " + context.phrasing.length(gap) + ", reach " + context.phrasing.length(likely);
  if (holds(judgement, gap, {as_it_moves})) {
    judgement.message = "passes " + name + " free" + numbers;
    return judgement;
  }
  judgement.message = "can touch " + name + ", which it is to pass free" + numbers;
  judgement.mend = mend_words(context, passage, as_it_moves.lacking(gap));
  return judgement;
}

}  // namespace

std::vector<Judgement> judge_free_fairleads(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.free_passages.empty()) continue;
    const std::vector<SpanReach>& reaches = context.motion.reaches[context.index_of(route)];
    for (const FreePassage& passage : route.free_passages)
      judgements.push_back(judge_passage(context, route, passage, reaches));
  }
  return judgements;
}

}  // namespace linewright
