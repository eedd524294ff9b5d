#pragma once
// "Did you mean": the known name nearest to a misspelt one.

#include <string>
#include <string_view>
#include <vector>

namespace linewright {

/// "did you mean 'clearance'?" where a known name is at a small edit distance (transpositions count
/// one), empty otherwise. First of equals in the given order. A size
/// ("1/4") with other digits is never offered, and for a word of one or two letters only what
/// starts with it.
std::string suggest_name(std::string_view written, const std::vector<std::string>& known);

}  // namespace linewright
