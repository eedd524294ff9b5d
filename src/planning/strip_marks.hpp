#pragma once
// What stands along a line, for a picture of it unrolled.

#include <string>
#include <vector>

#include "lines/prepared.hpp"

namespace linewright {

enum class StripMarkKind { support, crossing, bend, sleeve, attachment };

struct StripMark {
  StripMarkKind kind = StripMarkKind::support;
  double start_in = 0;  ///< along the route
  double end_in = 0;
  std::string words;    ///< "clamp on S3L", "hole F4-b", "turnbuckle"
  double turn_deg = 0;  ///< bends only
  double middle_in() const { return (start_in + end_in) / 2; }
};

/// Supports, crossings, bends, sleeves and attachments, in order along the route.
std::vector<StripMark> strip_marks(const PreparedRoute& route);

}  // namespace linewright
