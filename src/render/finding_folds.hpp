#pragma once
// Findings in order of what matters, those of one cause and one mend as one.

#include <string>
#include <vector>

#include "render/report.hpp"

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

/// The fold in words: a finding by itself as ever, several under one head with their places
/// listed. What all of them share is said once.
std::string fold_text(const FindingFold& fold, const Report& report, const TextStyle& style);

}  // namespace linewright
