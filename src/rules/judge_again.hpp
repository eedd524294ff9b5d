#pragma once
// The next answer where little has changed since the last one.

#include <optional>
#include <vector>

#include "rules/rule.hpp"

namespace linewright {

/// What `judge` says of all, in a part of the time. `said` is what it said of the project `before`;
/// of that, judgements of what no change can touch are kept, and waivers are applied anew. Nothing
/// where more than routes changed, or where what is found now shows that a change reaches farther
/// than it was looked for. What a rule looks at only the rule knows, so this rests on what lines
/// can have to do with each other (`concerned_routes`): whoever shows it has `judge` confirm it.
std::optional<std::vector<Judgement>> judge_again(const PreparedProject& prepared,
                                                  const Phrasing& phrasing, const Project& before,
                                                  const std::vector<Judgement>& said);

}  // namespace linewright
