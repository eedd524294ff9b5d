#include <algorithm>

#include "model/angle.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow bends_wanted{.name = "bends-between-fittings",
                                .subject = "bends in a rigid tube between two fittings",
                                .value = 1,
                                .unit = Unit::none,
                                .source = "MIL-H-8891A para 3.11.4.5",
                                .mark = Mark::verified};
constexpr LimitRow counts_as_bend{.name = "turn-that-counts",
                                  .subject = "turn that counts as a bend",
                                  .value = 5,
                                  .unit = Unit::degree,
                                  .source = "less is a drawing's misfit",
                                  .mark = Mark::common_practice,
                                  .broken = Verdict::warn};

constexpr auto straight_run_limits = limit_table({bends_wanted, counts_as_bend});

double bends_that_count(const PreparedRoute& route) {
  const auto& bends = route.centreline.bends();
  return static_cast<double>(std::count_if(bends.begin(), bends.end(), [](const Bend& bend) {
    return bend.angle_rad * degrees_per_radian >= counts_as_bend.value - limit_rounding;
  }));
}

std::vector<Judgement> judge_straight_run(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes) {
    if (route.line->kind != LineKind::rigid_tube) continue;
    if (route.from->kind == NodeKind::end || route.to->kind == NodeKind::end) continue;
    Judgement judgement = context.at(route, route.length_in() / 2);
    judgement.location = route.route->where;
    const std::string ends = route.from->name + " and " + route.to->name;
    if (holds(judgement, bends_that_count(route), {bends_wanted})) {
      judgement.message = "the tube bends between " + ends + ", so it can give";
    } else {
      judgement.message = "rigid tube runs straight between " + ends +
                          ": it cannot take up heat, vibration or a misfit";
      judgement.mend = "draw at least one bend between the two fittings";
    }
    judgements.push_back(judgement);
  }
  return judgements;
}

}  // namespace

const Rule& straight_run_rule() {
  static const Rule rule{
      .name = "straight-run",
      .purpose = "a rigid tube between two fittings has at least one bend",
      .explanation =
          R"(A metal tube that runs dead straight between two fittings cannot give: it is
strained by heat and vibration and cannot be put in or taken out without force. Any bend will
do, if it turns enough to give. Plastic tube, hose, cable and wire are not judged.)",
      .mend = "Draw a bend or an offset into the run.",
      .limits = straight_run_limits,
      .catalogue_limits = "",
      .judge = judge_straight_run};
  return rule;
}

}  // namespace linewright
