#pragma once
// What changed from one check to the next, a line of JSON each, for editors and scripts.

#include <string>
#include <string_view>

#include "render/json_values.hpp"
#include "render/report.hpp"

namespace linewright {

/// {"linewright", "time", "judged": true, "summary", "changes": [{"change": "new" | "changed" |
/// "passes" | "gone", "check" (as in a check, or null), "was" (the same)}], "assumptions"}.
/// Compared with an empty report every finding is new.
std::string changes_json(const Report& before, const Report& now, std::string_view time_of_day);

/// "changes" of the above.
Json json_changes(const Report& before, const Report& now);

/// The same keys after a save that left nothing to judge: "judged" is false.
std::string not_judged_json(std::string_view time_of_day);

}  // namespace linewright
