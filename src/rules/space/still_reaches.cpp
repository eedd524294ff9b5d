#include "rules/space/still_reaches.hpp"

#include <algorithm>

namespace linewright {

namespace {

bool swings(const SpanReach& reach) {
  const ReachEnvelope& envelope = reach.stretch.envelope;
  return envelope.swing_first_in > 0 || envelope.swing_last_in > 0;
}

}  // namespace

StillReaches::StillReaches(const std::vector<std::vector<SpanReach>>& reaches) : reaches_(reaches) {
  for (std::size_t i = 0; i < reaches.size(); ++i) {
    if (std::none_of(reaches[i].begin(), reaches[i].end(), swings)) continue;
    std::vector<SpanReach> spans = reaches[i];
    for (SpanReach& span : spans)
      span.stretch.envelope.swing_first_in = span.stretch.envelope.swing_last_in = 0;
    stilled_.emplace(i, std::move(spans));
  }
}

const std::vector<SpanReach>& StillReaches::operator[](std::size_t route) const {
  const auto found = stilled_.find(route);
  return found == stilled_.end() ? reaches_[route] : found->second;
}

}  // namespace linewright
