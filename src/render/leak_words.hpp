#pragma once
// Words that every form of a leak test shares.

#include <string>

#include "planning/leak_judge.hpp"
#include "planning/leak_sections.hpp"
#include "render/report.hpp"

namespace linewright {

/// The verdict whose word and colour an answer takes.
Verdict verdict_of(LeakAnswer answer);

/// What a step seals on the test set's side: "tee-ports, where static-main was", "the end of
/// static-main that was at tee-ports".
std::string sealed_words(const SplitStep& step);

}  // namespace linewright
