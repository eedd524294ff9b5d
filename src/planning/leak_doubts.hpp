#pragma once
// What keeps a log from being a pass, in words, and what to do about it at the bench.

#include <string>
#include <vector>

#include "planning/leak_evidence.hpp"

namespace linewright {

struct LeakDoubt {
  std::string why;   ///< a clause: "the log covers 50 s, …"
  std::string next;  ///< a sentence: "Log on: …"
};

/// Every doubt but that of the loss itself. A pass has none.
std::vector<LeakDoubt> leak_doubts(const LeakEvidence& evidence);

/// The doubt that the loss lies on both sides of its limit.
LeakDoubt near_limit_doubt(const LeakEvidence& evidence, double low, double high);

/// The doubt of a log that lost more than the limit, as air does that settles after a quick stroke.
LeakDoubt settling_doubt(const LeakEvidence& evidence);

/// What a reader should know, whatever the answer: temperature, settling, readings that stand out.
std::vector<std::string> leak_remarks(const LeakEvidence& evidence);

/// "line 9, 70 s: 2012 ft, 38.5 ft below what the readings around it give".
std::string odd_reading_words(const OddReading& odd, const LeakGauge& gauge);

}  // namespace linewright
