#include "lines/sleeved_bend.hpp"

#include <algorithm>

namespace linewright {

namespace {

/// Less of an arc than this in a sleeve is rounding.
constexpr double overlap_rounding_in = 1e-9;

}  // namespace

bool lies_over(const Sleeve& sleeve, const Bend& bend) {
  if (bend.end_in - bend.start_in <= overlap_rounding_in)
    return bend.start_in > sleeve.from_in && bend.start_in < sleeve.to_in;
  return std::min(bend.end_in, sleeve.to_in) - std::max(bend.start_in, sleeve.from_in) >
         overlap_rounding_in;
}

bool lies_over_all(const Sleeve& sleeve, const Bend& bend) {
  return lies_over(sleeve, bend) && sleeve.from_in <= bend.start_in + overlap_rounding_in &&
         sleeve.to_in >= bend.end_in - overlap_rounding_in;
}

}  // namespace linewright
