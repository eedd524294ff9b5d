#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <span>

#include "model/angle.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr std::string_view navy_slack =
    "US Navy 14105 p. 5-11: 5 to 8 % of the total length for changes of length";

constexpr LimitRow least{.name = "least-slack",
                         .subject = "slack of a hose between two supports",
                         .value = 0.05,
                         .source = navy_slack,
                         .mark = Mark::verified,
                         .times = "length of the hose there"};
constexpr LimitRow most{.name = "most-slack",
                        .subject = "slack of a hose between two supports",
                        .value = 0.08,
                        .sense = LimitSense::at_most,
                        .source = navy_slack,
                        .mark = Mark::verified,
                        .times = "length of the hose there"};
constexpr LimitRow to_engine{
    .name = "slack-to-engine",
    .subject = "slack of a hose to what is mounted on the engine, where no bend gives",
    .value = 1.5,
    .source = "US Navy 14018 p. 5-26: 1-1/2 in of slack, or a suitable bend, from the last support",
    .mark = Mark::verified};

constexpr LimitRow gives{
    .name = "gives-to-engine",
    .subject = "give of a line that is no hose, from its last support to what is on the engine",
    .value = to_engine.value,
    .source = "the engine moves on its mounts: what is stiff or taut pulls, chafes and breaks",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr auto slack_limits = limit_table({least, most, to_engine, gives});

/// A hose that turns by more than this between two supports goes round a corner; by less, it is a
/// bow, which could be pulled straight [common practice, no source].
constexpr double most_bow_deg = 60;

/// Part of a hose from one thing that holds it to the next, and the shortest way between the two.
struct HosePart {
  double start_in = 0;
  double end_in = 0;
  double length_in = 0;
  double way_in = 0;
  const Node* engine = nullptr;  ///< what it leads to on the engine, with no bend that gives
};

/// A place of the drawn hose, and what rounding it spares.
struct HoseTurn {
  Vec3 at;
  double spared_in = 0;
};

double turn_deg(Vec3 from, Vec3 corner, Vec3 to) {
  return angle_between_rad(corner - from, to - corner) * degrees_per_radian;
}

/// Straight, or round the corner that lies farthest off the straight, if it is one, and so on to
/// both sides of it.
double shortest_way_in(std::span<const HoseTurn> turns) {
  const Vec3 from = turns.front().at;
  const Vec3 to = turns.back().at;
  std::size_t farthest = 0;
  double off = 0;
  for (std::size_t i = 1; i + 1 < turns.size(); ++i) {
    const double here = nearest(turns[i].at, Segment3{from, to}).distance_in;
    if (here <= off) continue;
    off = here;
    farthest = i;
  }
  if (farthest == 0 || turn_deg(from, turns[farthest].at, to) <= most_bow_deg)
    return distance(from, to);
  return shortest_way_in(turns.first(farthest + 1)) + shortest_way_in(turns.subspan(farthest)) -
         turns[farthest].spared_in;
}

/// Two legs less their tangents, and the arc in their place.
double spared_in(const Bend& bend) {
  return 2 * bend.tangent_in - (bend.end_in - bend.start_in);
}

HosePart part_of(const PreparedRoute& route, double start_in, double end_in) {
  std::vector<HoseTurn> turns{{route.centreline.at(start_in)}};
  for (const Bend& bend : route.centreline.bends())
    if (bend.middle_in() > start_in && bend.middle_in() < end_in)
      turns.push_back(
          {route.centreline.corners()[static_cast<std::size_t>(bend.corner)].at, spared_in(bend)});
  turns.push_back({route.centreline.at(end_in)});
  return {start_in, end_in, end_in - start_in, shortest_way_in(turns)};
}

bool bends_between(const PreparedRoute& route, double start_in, double end_in) {
  const auto& bends = route.centreline.bends();
  return std::any_of(bends.begin(), bends.end(), [&](const Bend& bend) {
    return bend.middle_in() > start_in && bend.middle_in() < end_in &&
           bend.angle_rad * degrees_per_radian > most_bow_deg;
  });
}

/// A corner gives as the engine shakes; a straight hose or a bow needs slack. A hose with both ends
/// on the engine goes with it.
const Node* engine_end(const PreparedRoute& route, const HosePart& part) {
  const bool from = route.from->on_engine.value_or(false);
  const bool to = route.to->on_engine.value_or(false);
  if (from == to || bends_between(route, part.start_in, part.end_in)) return nullptr;
  if (from) return part.start_in <= 0 ? route.from : nullptr;
  return part.end_in >= route.length_in() ? route.to : nullptr;
}

/// With the cut length stated the drawn path is the way; without it the drawn path is the hose, and
/// each part between two supports has its own slack.
std::vector<HosePart> parts_of(const PreparedRoute& route) {
  std::vector<HosePart> parts;
  if (route.route->length_in) {
    parts.push_back({0, route.length_in(), *route.route->length_in, route.length_in()});
    parts.back().engine = engine_end(route, parts.back());
    return parts;
  }
  double start = 0;
  const auto add_to = [&](double end) {
    if (end - start > limit_rounding) parts.push_back(part_of(route, start, end));
    start = end;
  };
  for (const Support& support : route.supports) add_to(support.distance_in);
  add_to(route.length_in());
  for (HosePart& part : parts) part.engine = engine_end(route, part);
  return parts;
}

/// The length that leaves so much slack over a way.
Limit hose_length(const LimitRow& row, double way_in) {
  return {way_in / (1 - row.value), row};
}

std::string percent(const LimitRow& row) {
  return fmt::format("{:g} %", row.value * 100);
}

/// Of a short hose, an inch and a half is more than the usual most.
Judgement judge_to_engine(const RuleContext& context, const HosePart& part, Judgement judgement) {
  const Phrasing& phrasing = context.phrasing;
  const Limit shortest = hose_length(least, part.way_in);
  const Limit with_engine{part.way_in + to_engine.value, to_engine};
  if (holds(judgement, part.length_in, {with_engine, shortest})) return judgement;
  judgement.message += ", " + phrasing.length(std::max(0.0, part.length_in - part.way_in)) +
                       ", to " + part.engine->name + ", which shakes with the engine";
  judgement.mend = "make the hose " +
                   phrasing.length_up(std::max(with_engine.value, shortest.value)) +
                   " or more long there, or lead it round a bend";
  return judgement;
}

Judgement judge_part(const RuleContext& context, const PreparedRoute& route, const HosePart& part) {
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = context.at(route, (part.start_in + part.end_in) / 2);
  judgement.location = route.route->where;
  const Limit shortest = hose_length(least, part.way_in);
  const Limit longest = hose_length(most, part.way_in);
  const double slack = std::max(0.0, 1 - part.way_in / part.length_in);
  const std::string from = route.route->length_in
                               ? std::string(" between its ends")
                               : " from " + phrasing.tape_number(part.start_in) + " to " +
                                     phrasing.tape(part.end_in) + " from " + route.from->name;
  judgement.message = "the hose is " + phrasing.length(part.length_in) + " long over " +
                      phrasing.length(part.way_in) + from +
                      fmt::format(": {:.1f} % slack", slack * 100);
  if (part.engine) return judge_to_engine(context, part, judgement);
  if (holds(judgement, part.length_in, {shortest, longest})) return judgement;
  const std::string no_longer = phrasing.length(phrasing.rounded_down(longest.value));
  if (judgement.sense == LimitSense::at_least) {
    judgement.message += ", under " + percent(least);
    judgement.mend =
        "make the hose " + phrasing.length_up(shortest.value) + " to " + no_longer + " long there";
  } else {
    judgement.message += ", over " + percent(most);
    judgement.mend =
        "shorten the hose to " + no_longer + " or less there, or hold it where it turns";
  }
  return judgement;
}

std::vector<Judgement> judge_hose(const RuleContext& context, const PreparedRoute& route) {
  std::vector<Judgement> judgements;
  for (const HosePart& part : parts_of(route))
    judgements.push_back(judge_part(context, route, part));
  return judgements;
}

std::string stiff_words(LineKind kind) {
  switch (kind) {
    case LineKind::rigid_tube:
      return "a metal tube";
    case LineKind::rod:
      return "a rod";
    case LineKind::cable:
      return "a cable";
    default:
      return {};
  }
}

/// What is to move with the engine at one end alone. A casing gives by itself; metal tube, rod and
/// cable give nothing, however they are led; what is soft gives by a bend or by its slack.
std::optional<Judgement> judge_give(const RuleContext& context, const PreparedRoute& route) {
  const bool from = route.from->on_engine.value_or(false);
  if (from == route.to->on_engine.value_or(false) || route.line->kind == LineKind::conduit)
    return std::nullopt;
  const Node& engine = from ? *route.from : *route.to;
  const std::string shakes = engine.name + ", which shakes with the engine";
  Judgement judgement = context.at(route, from ? 0 : route.length_in());
  judgement.location = from ? route.route->from_where : route.route->to_where;
  judgement.with = engine.name;
  const std::string stiff = stiff_words(route.line->kind);
  if (!stiff.empty()) {
    holds(judgement, 0, {gives});
    judgement.message = stiff + " leads to " + shakes + ": it does not give";
    judgement.mend = route.line->kind == LineKind::rigid_tube
                         ? "end it at structure, and lead a hose from there"
                         : "work it by a casing that bends, or waive this with what takes up the "
                           "engine's movement";
    return judgement;
  }
  const std::vector<HosePart> parts = parts_of(route);
  if (parts.empty()) return std::nullopt;
  const HosePart& part = from ? parts.front() : parts.back();
  if (!part.engine) return std::nullopt;
  const double slack_in = std::max(0.0, part.length_in - part.way_in);
  if (holds(judgement, slack_in, {gives})) return std::nullopt;
  judgement.message = "runs with " + context.phrasing.length(slack_in) + " of slack to " + shakes;
  judgement.mend = "lead it round a bend after its last support, or leave it " +
                   context.phrasing.length_up(gives.value) + " of slack there";
  return judgement;
}

std::vector<Judgement> judge_slack(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    if (route.line->kind == LineKind::hose) {
      for (Judgement& judgement : judge_hose(context, route))
        judgements.push_back(std::move(judgement));
    } else if (auto stiff = judge_give(context, route)) {
      judgements.push_back(*std::move(stiff));
    }
  return judgements;
}

}  // namespace

const Rule& slack_rule() {
  static const Rule rule{
      .name = "slack",
      .purpose = "a hose has 5 to 8 % of its length to spare between its supports",
      .explanation =
          R"(A hose shortens under pressure and must not pull on its fittings. Slack is the share
of its length that is over the shortest way. Where the route states its `length`, the drawn path
is the way. Else the drawn path is the hose, and each part of it between two supports is judged
by itself: a clamp keeps slack where it is. Its shortest way is the straight between the two, or
leads round the corners that it was drawn round: what turns by more than 60 deg
goes round a corner, what turns by less is a bow, which holds the slack. A part that leads to a
node that is `on_engine`, and goes round no such corner, needs an inch and a half of slack, and is
not held to the most: the engine moves on its mounts. A metal tube, a rod or a cable that leads to
such a node is asked about, and so are a plastic tube and a bundle that go to it without a bend or as
much slack; the casing of a push-pull control gives by itself.)",
      .mend = "Draw the hose with a shallow bow, or state its cut `length`.",
      .limits = slack_limits,
      .catalogue_limits = "",
      .judge = judge_slack};
  return rule;
}

}  // namespace linewright
