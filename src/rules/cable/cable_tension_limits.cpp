#include "rules/cable/cable_tension_limits.hpp"

#include <fmt/format.h>

#include <cmath>

#include "rules/cable/such_as.hpp"
#include "rules/rule.hpp"

namespace linewright {

Judgement tension_judgement(const RuleContext& context, const PreparedRoute& route) {
  Judgement judgement = context.at(route, route.length_in() / 2);
  judgement.location = route.route->tension->where;
  return judgement;
}

std::string tension_words(double lbf) {
  return fmt::format("{:.1f} lbf", std::abs(lbf) < 0.05 ? 0.0 : lbf);
}

std::string tension_rounded_up(double lbf) {
  return fmt::format("{:.0f} lbf", std::ceil(lbf - limit_rounding));
}

Judgement not_judged(Judgement judgement, const Limit& limit, const std::string& message,
                     const std::string& mend) {
  leave_unknown(judgement, limit);
  judgement.message = message;
  judgement.mend = mend;
  return judgement;
}

std::string stronger_cable(const RuleContext& context, const Line& line, double breaking_lbf) {
  return "use a cable that breaks at " + tension_rounded_up(breaking_lbf) + " or more" +
         such_as(context.prepared.project->catalogue, line, [&](const Line& each) {
           return each.breaking_strength_lbf &&
                  each.breaking_strength_lbf->value >= breaking_lbf - limit_rounding;
         });
}

}  // namespace linewright
