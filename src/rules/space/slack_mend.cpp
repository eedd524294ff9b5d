#include "rules/space/slack_mend.hpp"

#include <fmt/format.h>

#include <cmath>

#include "lines/motion/taut_raise.hpp"

namespace linewright {

namespace {

/// What the search for the tension leaves open makes no pound more.
constexpr double searched_within_lbf = 1e-4;

}  // namespace

std::string slack_mend(const RuleContext& context, const PreparedRoute& route) {
  if (route.line->kind != LineKind::cable) return {};
  const std::size_t index = context.index_of(route);
  const CableState& state = context.motion.cables[index];
  const auto by_lbf = taut_raise_lbf(context.prepared, context.motion.cables, index);
  if (!by_lbf) return {};
  const std::string cables = state.slack_side ? fmt::format("{} and {}", route.route->name,
                                                            state.slack_side->pulled->route->name)
                                              : route.route->name;
  return fmt::format(
      "rig {} {:.0f} lbf tighter or more, if cable-tension lets it: nothing goes slack then, and "
      "it keeps off; or hold it closer here by a support, a fairlead or a sleeve",
      cables, std::ceil(*by_lbf - searched_within_lbf));
}

}  // namespace linewright
