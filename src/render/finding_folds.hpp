#pragma once
// Findings in order of what matters, those of one cause and one mend as one.

#include <cstddef>
#include <string>
#include <tuple>
#include <vector>

#include "render/report.hpp"
#include "render/routes_by_name.hpp"

namespace linewright {

/// Judgements of one rule and one verdict that are all of one route, or all have one mend.
struct FindingFold {
  std::vector<const Judgement*> judgements;
  bool one_route = true;
  bool one_mend = true;
};

/// Fails first; what is not known weighs more than a warning, because it can hide a fail. The
/// smaller comes first.
int gravity_rank(Verdict verdict);

/// The judgements gravest first, folded, and in the report's order otherwise. Passes stand alone,
/// and are left out unless `with_passes`.
std::vector<FindingFold> folded_findings(const Report& report, bool with_passes);

/// Of a fold no more places are listed, and of folds of one kind no more are shown, unless all is
/// to be shown.
inline constexpr std::size_t places_listed = 12;

/// What folds of one kind have in common: rule, verdict, and what mends each of their places.
using FoldKind = std::tuple<std::string, Verdict, std::vector<std::string>>;
FoldKind kind_of(const FindingFold& fold);

/// Says how many more folds there are of the kind of this one.
std::string more_text(const FindingFold& fold, std::size_t more, const TextStyle& style);

/// The fold in words: a finding by itself as ever, several under one head with their places
/// listed. What all of them share is said once.
std::string fold_text(const FindingFold& fold, const RoutesByName& routes, const TextStyle& style);

}  // namespace linewright
