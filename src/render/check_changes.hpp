#pragma once
// What changed from one check of a project to the next.

#include <string>
#include <string_view>
#include <vector>

#include "render/report.hpp"

namespace linewright {

/// A judgement before and after; points into the two reports.
struct Change {
  const Judgement* was = nullptr;  ///< nullptr: there was none
  const Judgement* now = nullptr;  ///< nullptr: it is gone
};

enum class ChangeKind {
  appeared,     ///< a finding that was not there, or had passed
  altered,      ///< another verdict, or other words or numbers
  passes_now,   ///< was a finding
  disappeared,  ///< nothing is judged there any more
};

ChangeKind kind_of(const Change& change);

/// The changes that a reader of `check_text` would see, in the order of the new report, then what
/// is gone. A judgement is known again by its rule, route and other thing, and among several of
/// these by its order along the route. Lines of a file that only moved are no change.
std::vector<Change> changes_between(const Report& before, const Report& now,
                                    const TextStyle& style);

/// "1 new, 2 changed, 1 passes now"; "nothing changed" for none.
std::string change_counts(const std::vector<Change>& changes);

/// Each change after an empty line, with what is new about the finding; the gravest first unless
/// the style asks for the order of the routes.
std::string change_list(std::vector<Change> changes, const Report& before, const Report& now,
                        const TextStyle& style);

/// The changes under the time of day, each finding with what is new about it, then the new tally;
/// and what was assumed, where that changed.
std::string changes_text(const Report& before, const Report& now, std::string_view time_of_day,
                         const TextStyle& style);

}  // namespace linewright
