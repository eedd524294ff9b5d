#pragma once
// The verdict on a logged test of a part of a system.
//
// A part that keeps within its share of the leak that the rule allows to the whole passes: parts
// that all do so pass together. One that by itself loses more than the whole may fails. Between the
// two it hangs on the rest. Where the test set's volume is only taken, each answer has to hold for
// whichever volume makes it harder to give.

#include <string>
#include <variant>

#include "planning/leak_judge.hpp"

namespace linewright {

/// The verdict on a log of the part's test under `setup`, or what makes log or test useless.
std::variant<LeakVerdict, std::string> judge_part(const AirPart& part, const LeakTestSetup& setup,
                                                  const LeakLog& log);

}  // namespace linewright
