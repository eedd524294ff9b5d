#include "rules/space/load_factor.hpp"

#include <fmt/format.h>

namespace linewright {

std::optional<Judgement> judge_load_factor(const RuleContext& context) {
  const Project& project = *context.prepared.project;
  if (!project.load_factor.where || context.prepared.routes.empty()) return std::nullopt;
  const double least = least_load_factor(project.weight_lbf);
  Judgement judgement = context.about("load_factor", *project.load_factor.where);
  if (holds(judgement, project.load_factor.positive, {Limit(least, load_factor_row)}))
    return std::nullopt;
  judgement.message = fmt::format(
      "lines were taken to sag under {:.4g} g, and the least that is asked of {} is "
      "{:.2f} g",
      project.load_factor.positive,
      project.weight_lbf ? "an aeroplane of that weight" : "a light aeroplane", least);
  judgement.mend = "state the limit load factor that the aeroplane is flown to";
  if (!project.weight_lbf && project.load_factor.positive > 2.1 + limit_rounding)
    judgement.mend += ", or its `weight`, if it is a heavy one";
  return judgement;
}

}  // namespace linewright
