#pragma once
// Sleeves on the turns of a cable.

#include "rules/rule.hpp"

namespace linewright {

inline constexpr LimitRow sharp_turn{.name = "sharp-turn",
                                     .subject = "turn of a sleeve at a point without a bend",
                                     .value = 0,
                                     .unit = Unit::degree,
                                     .sense = LimitSense::at_most,
                                     .source = "geometry: a tube cannot turn at a point",
                                     .mark = Mark::calculated};

/// What is said of a sleeve at every corner that it lies over and that neither pulley nor fairlead
/// makes: whether it has an arc to follow, and one that it stands. A sleeve on a tube is judged
/// only where its least radius is known: the tube's own is another rule's.
std::vector<Judgement> judge_sleeve_bends(const RuleContext& context, const PreparedRoute& route,
                                          const Sleeve& sleeve);

}  // namespace linewright
