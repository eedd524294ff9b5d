#pragma once
// The next answer where little has changed since the last one.

#include <optional>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// What `judge` says of all, in a part of the time. `said` is what it said of the project `before`.
/// Where no more than routes changed, and no more of them than gaps of their own, what
/// `Rule::leaves_out_unasked` rules said of the others is kept; all else is judged anew, and
/// waivers are applied anew. Nothing where more changed (`changes_own_gaps_alone`). Rules alone
/// know what they look at: whoever shows this has `judge` confirm it.
std::optional<std::vector<Judgement>> judge_again(const PreparedProject& prepared,
                                                  const Phrasing& phrasing, const Project& before,
                                                  const std::vector<Judgement>& said);

}  // namespace linewright
