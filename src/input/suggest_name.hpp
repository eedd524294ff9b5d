#pragma once
// "Did you mean": the known name nearest to a misspelt one.

#include <string>
#include <string_view>
#include <vector>

namespace linewright {

/// The known name at a small edit distance (transpositions count one), empty where there is none or
/// what is written is known. First of equals in the given order. A size ("1/4") with other digits
/// is never meant, and by a word of one or two letters only what starts with it.
std::string meant_name(std::string_view written, const std::vector<std::string>& known);

/// "did you mean 'clearance'?", empty where no name is meant.
std::string suggest_name(std::string_view written, const std::vector<std::string>& known);

/// `suggest_name` for a word that must be one of a few: where none is near, the only one that is
/// part of it is meant, "rod" of "pushrod".
std::string suggest_choice(std::string_view written, const std::vector<std::string>& choices);

/// The known names at the smallest edit distances, nearest first, equals in the given order; none
/// for a text that is too long to be compared.
std::vector<std::string> nearest_names(std::string_view written,
                                       const std::vector<std::string>& known, std::size_t most);

}  // namespace linewright
