#include "rules/cable/clamp_place.hpp"

#include <algorithm>
#include <vector>

#include "lines/motion/attached_shift.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

namespace {

/// No clamp is told to go where there is less of a sleeve than this, about its own width [common
/// practice, no source].
constexpr double shortest_clamp_place_in = 0.5;

}  // namespace

std::optional<SleevePart> clamp_place(const PreparedRoute& route, const Sleeve& sleeve) {
  std::vector<SleevePart> parts{{sleeve.from_in, sleeve.to_in}};
  for (const Attachment& each : route.route->attached) {
    const AttachedShift shift = attached_shift(route, each.at_in);
    const double half = each.longest_in() / 2 + attachment_to_guide.value;
    const SleevePart swept{each.at_in - half - shift.toward_from_in,
                           each.at_in + half + shift.toward_to_in};
    std::vector<SleevePart> left;
    for (const SleevePart& part : parts) {
      left.push_back({part.from_in, std::min(part.to_in, swept.from_in)});
      left.push_back({std::max(part.from_in, swept.to_in), part.to_in});
    }
    std::erase_if(
        left, [](const SleevePart& part) { return part.length_in() < shortest_clamp_place_in; });
    parts = std::move(left);
  }
  const auto longest = std::max_element(
      parts.begin(), parts.end(),
      [](const SleevePart& a, const SleevePart& b) { return a.length_in() < b.length_in(); });
  return longest != parts.end() ? std::optional(*longest) : std::nullopt;
}

}  // namespace linewright
