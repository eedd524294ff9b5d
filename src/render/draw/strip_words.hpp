#pragma once
// Words over a line unrolled, kept apart.

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include "planning/strip_marks.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// Words over their places, each in the lowest lane that is free there. Take them from left to
/// right.
class Lanes {
 public:
  /// The lane for words from `left` to `right`.
  std::size_t take(double left, double right) {
    std::size_t lane = 0;
    while (lane < ends_.size() && ends_[lane] > left) ++lane;
    if (lane == ends_.size()) ends_.push_back(0);
    ends_[lane] = right;
    return lane;
  }
  std::size_t count() const { return ends_.size(); }

 private:
  std::vector<double> ends_;
};

/// "12.4 in clamp on S3L"; of a bend, where its middle is and how far it turns.
inline std::string words_of_mark(const StripMark& mark, const Phrasing& phrasing) {
  if (mark.kind == StripMarkKind::bend)
    return phrasing.tape(mark.middle_in()) + " bend " + phrasing.angle(mark.turn_deg);
  return phrasing.tape(mark.middle_in()) + " " + mark.words;
}

}  // namespace linewright
