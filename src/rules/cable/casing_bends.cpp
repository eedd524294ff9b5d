#include <algorithm>

#include "model/angle.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

double turned_deg(const Bend& bend) {
  return bend.angle_rad * degrees_per_radian;
}

Judgement judge_casing(const RuleContext& context, const PreparedRoute& route) {
  const Phrasing& phrasing = context.phrasing;
  const Line& line = *route.line;
  const std::vector<Bend> bends = route.centreline.made_bends();
  double total = 0;
  for (const Bend& bend : bends) total += turned_deg(bend);
  const auto widest =
      std::max_element(bends.begin(), bends.end(),
                       [](const Bend& a, const Bend& b) { return a.angle_rad < b.angle_rad; });
  Judgement judgement = context.at(route, widest == bends.end() ? 0 : widest->middle_in());
  judgement.location = route.route->where;
  judgement.message = bends.empty() ? std::string("the casing runs straight")
                                    : "its bends turn " + phrasing.angle(total) + " together";
  if (!line.bend_total_deg) {
    judgement.value = total;
    judgement.unit = Unit::degree;
    judgement.sense = LimitSense::at_most;
    judgement.source = "the catalogue has no figure for this line";
    judgement.message += "; how much " + line.name + " may turn in all is not known";
    judgement.mend = "state the line's `bend_total`, by its maker, with the source";
    return judgement;
  }
  const Limit most{*line.bend_total_deg, Unit::degree, LimitSense::at_most};
  if (holds(judgement, total, {most})) return judgement;
  judgement.message += ", " + phrasing.angle(most.lacking(total)) + " more than " + line.name +
                       " may, and each of them multiplies the friction";
  judgement.mend = "lead it so that it turns less, the bend of " +
                   phrasing.angle(turned_deg(*widest)) + " first";
  return judgement;
}

std::vector<Judgement> judge_casing_bends(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    if (route.line->kind == LineKind::conduit) judgements.push_back(judge_casing(context, route));
  return judgements;
}

}  // namespace

const Rule& casing_bends_rule() {
  static const Rule rule{
      .name = "casing-bends",
      .purpose = "a push-pull control's casing turns no more in all than its friction allows",
      .explanation =
          R"(The angles by which the casing turns at its bends are added up, wherever they point: two bends
that undo each other count twice. The wire is pressed to the casing in every bend, and what is lost
there follows the capstan law: a force comes through a total turn of θ (in radians) divided by
exp(μθ), whatever the radii. At a coefficient of friction of 0.1, 270 degrees leave 62 per cent of
it and 540 degrees 39; at 0.2, which dirt and rust come to, 39 and 15. So the total is limited by the
line's `bend_total`, which is its maker's figure; that of the catalogue is common practice without a
source, and only warns. A line that states none gives unknown. A corner that a straight line misses
by less than the build tolerance is no bend. The radius of each bend is judged by bend-radius. Not
judged: the force at the control itself, its lost motion, and what a snaking casing adds between its
clamps.)",
      .mend = "Lead the casing in fewer, gentler turns, or bring its two ends to face each other.",
      .limits = {},
      .catalogue_limits = "bend_total of each casing: common practice; the maker's figure counts",
      .judge = judge_casing_bends};
  return rule;
}

}  // namespace linewright
