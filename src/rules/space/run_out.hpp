#pragma once
// What comes out of the ends of a push-pull control's casing, against structure.

#include <vector>

#include "lines/near/stretch.hpp"
#include "rules/rule.hpp"

namespace linewright {

/// Of `clearance`, as its other rows for lines that are no metal tube.
inline constexpr LimitRow run_out{.name = "run-out",
                                  .subject = "what comes out of a casing to structure",
                                  .value = 0.25,
                                  .source = "borrowed from the figures for metal tube",
                                  .mark = Mark::common_practice,
                                  .broken = Verdict::warn};
inline constexpr LimitRow run_out_at_end{
    .name = "run-out-at-end",
    .subject = "what comes out of a casing to structure, within 1 in of it",
    .value = 0.0625,
    .source = "borrowed from the figures for metal tube",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

/// True for a stretch of `LineMotion::hanging` that is the wire beyond the end of its casing.
inline bool is_run_out(const Stretch& stretch) {
  return stretch.swings_with && stretch.route->line->kind == LineKind::conduit;
}

/// The worst of each part that the wire comes near to, wherever it goes. What the casing's end
/// stands on does not count where the wire leads away from it or goes through it at 45 degrees or
/// steeper, nor the moving part that the wire's pin is on. `overlap` fails. Nothing for other
/// lines, or where the wire's way is not known.
std::vector<Judgement> judge_run_outs(const RuleContext& context, const PreparedRoute& route,
                                      const LimitRow& overlap);

}  // namespace linewright
