#include <algorithm>
#include <limits>

#include "geometry/plane/polygon.hpp"
#include "lines/hole_margin.hpp"
#include "lines/wall_web.hpp"
#include "model/place_order.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow sheet_left{
    .name = "sheet-left",
    .subject = "sheet between two holes, or between a hole and the edge of its sheet",
    .value = 0,
    .source = "geometry: two holes that meet are one, and one that meets the edge is a notch",
    .mark = Mark::calculated};

/// A hole wider than this is a cut-out: it need not keep its own width from what is beside it.
constexpr double small_hole_in = 0.5;

constexpr LimitRow beside_small_hole{
    .name = "beside-small-hole",
    .subject = "sheet beside a hole up to 1/2 in across, the smaller of two",
    .value = 1,
    .source = "what 2 diameters from middle to middle leave, which fasteners keep at the least",
    .mark = Mark::common_practice,
    .broken = Verdict::warn,
    .times = "diameter of the hole"};
constexpr LimitRow beside_wide_hole{.name = "beside-wide-hole",
                                    .subject = "sheet beside a wider hole, the smaller of two",
                                    .value = small_hole_in,
                                    .source = "a land that a hole of 1/2 in would need",
                                    .mark = Mark::common_practice,
                                    .broken = Verdict::warn};

constexpr auto hole_edge_limits = limit_table({sheet_left, beside_small_hole, beside_wide_hole});

Limit practice(double smaller_in) {
  if (smaller_in <= small_hole_in) return beside_small_hole * smaller_in;
  return beside_wide_hole;
}

/// What is left, against geometry and practice. Edges that only meet have no number below zero.
bool judge_web(Judgement& judgement, double web_in, bool overlaps, double smaller_in) {
  judgement.unit = Unit::inch;
  if (overlaps && web_in > -limit_rounding) return holds_true(judgement, false, sheet_left);
  return holds(judgement, web_in, {sheet_left, practice(smaller_in)});
}

struct Words {
  std::string both;   ///< "holes F4-a and F4-b of F4"
  std::string first;  ///< "hole F4-a"
  std::string other;  ///< "F4-b"; empty for the edge
  std::string part;
};

void tell(const RuleContext& context, Judgement& judgement, const Words& words, double web_in,
          double smaller_in, bool overlaps) {
  const Phrasing& phrasing = context.phrasing;
  const bool held = judge_web(judgement, web_in, overlaps, smaller_in);
  if (overlaps && words.other.empty()) {
    judgement.message = words.first + " reaches outside " + words.part;
    judgement.mend = "move it to where there is sheet all round it, or draw the edge as it is";
    return;
  }
  if (overlaps) {
    judgement.message = words.both + " overlap: there is no sheet between them";
    judgement.mend = "move one of the two, or draw them as one hole with an `outline`";
    return;
  }
  judgement.message = phrasing.length(web_in) + " of sheet is left between " + words.both;
  if (held) return;
  const double lacking = practice(smaller_in).lacking(web_in);
  judgement.mend = "move " + words.first + " " + phrasing.length_up(lacking) +
                   " or more away, or make it smaller, or put a doubler round it and waive this";
}

Words edge_frame_words(const Frame& frame, const HoleMargin& margin) {
  const std::string first = "hole " + margin.hole->name;
  if (!margin.other) return {first + " and the edge of " + frame.name, first, {}, frame.name};
  return {"holes " + margin.hole->name + " and " + margin.other->name + " of " + frame.name, first,
          margin.other->name, frame.name};
}

/// An outline with more round it than any hole is asked for counts as wide, unmeasured.
double across_in(const Hole& hole, double web_in) {
  if (std::holds_alternative<Circle>(hole.shape) || web_in <= small_hole_in)
    return widest_circle_in(hole);
  return std::numeric_limits<double>::infinity();
}

/// Of two holes the one that lies before the other is named first.
HoleMargin in_order(const Frame& frame, HoleMargin margin) {
  const auto place = [&](const Hole& hole) { return frame.plane.in_space(middle_of(hole)); };
  if (margin.other && lies_before(place(*margin.other), place(*margin.hole)))
    std::swap(margin.hole, margin.other);
  return margin;
}

Judgement in_frame(const RuleContext& context, const Frame& frame, const HoleMargin& drawn) {
  const HoleMargin margin = in_order(frame, drawn);
  Judgement judgement = context.about(margin.hole->name, margin.hole->where);
  const Vec2 middle = middle_of(*margin.hole);
  judgement.at = frame.plane.in_space(middle);
  double smaller = across_in(*margin.hole, margin.web_in);
  if (margin.other) smaller = std::min(smaller, across_in(*margin.other, margin.web_in));
  tell(context, judgement, edge_frame_words(frame, margin), margin.web_in, smaller,
       margin.overlaps);
  return judgement;
}

std::string name_of(const Wall& wall) {
  return wall.implied ? "of its guide" : wall.hole().name;
}

/// The edge of a wall is no outline: only whether a hole reaches past it is known.
Judgement at_wall_edge(const RuleContext& context, const Wall& wall) {
  Judgement judgement =
      context.about(wall.implied ? wall.frame.name : wall.hole().name, wall.hole().where);
  judgement.at = wall.middle();
  if (holds_true(judgement, !wall.leaves_wall, sheet_left)) {
    judgement.message = "hole " + name_of(wall) + " has sheet of " + wall.frame.name + " round it";
    return judgement;
  }
  judgement.message = "hole " + name_of(wall) + " reaches outside its wall of " + wall.frame.name;
  judgement.mend = "move it to where there is sheet all round it";
  return judgement;
}

void judge_walls(const RuleContext& context, std::vector<Judgement>& judgements) {
  const Walls& walls = context.prepared.walls;
  for (auto wall = walls.begin(); wall != walls.end(); ++wall) {
    judgements.push_back(at_wall_edge(context, *wall));
    for (auto other = std::next(wall); other != walls.end(); ++other) {
      const auto web = sheet_between_in(*wall, *other);
      if (!web) continue;
      const bool turned = lies_before(other->middle(), wall->middle());
      const Wall& first = turned ? *other : *wall;
      const Wall& second = turned ? *wall : *other;
      Judgement judgement =
          context.about(first.implied ? first.frame.name : first.hole().name, first.hole().where);
      judgement.at = first.middle();
      const std::string part = first.frame.name;
      tell(context, judgement,
           {"holes " + name_of(first) + " and " + name_of(second) + " of " + part,
            "hole " + name_of(first), name_of(second), part},
           *web, std::min(cut_diameter_in(first), cut_diameter_in(second)), *web <= limit_rounding);
      judgements.push_back(std::move(judgement));
    }
  }
}

std::vector<Judgement> judge_hole_edge(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const Frame& frame : context.prepared.project->structure.frames)
    for (const HoleMargin& margin : hole_margins(frame, small_hole_in))
      judgements.push_back(in_frame(context, frame, margin));
  judge_walls(context, judgements);
  return judgements;
}

}  // namespace

const Rule& hole_edge_rule() {
  static const Rule rule{
      .name = "hole-edge",
      .purpose = "holes leave sheet between each other and to the edge of their frame",
      .explanation =
          R"(What is left of the sheet between the edges of two holes of a frame, and between a hole and
the frame's outline, whether a line goes through them or not. Where nothing is left a crack has
its start, and no grommet, bushing or fairlead fits: what stands in the air of another hole
guards nothing and holds nothing, which `frame-crossing` says of the line. The practice for
fasteners is 2 diameters from the middle of a hole to an edge. A hole for a line bears no load:
as much as its own diameter is asked for, and never more than 1/2 in. Holes in walls of
channels, panels and boxes are held against each other; of the wall's own edge only whether they
reach past it is known. A hole that is not described counts as the one that is taken to be cut for
its guide. Flanges, bends, rivets and screw holes are not described and not judged.)",
      .mend = "Move the hole, make it smaller, or draw overlapping holes as one outline.",
      .limits = hole_edge_limits,
      .catalogue_limits = "",
      .judge = judge_hole_edge};
  return rule;
}

}  // namespace linewright
