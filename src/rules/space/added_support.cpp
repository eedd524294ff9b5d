#include "rules/space/added_support.hpp"

#include <cmath>

#include "lines/prepare.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr double from_the_ends_in = 1.0;
/// A line that lies free over more than this wants more than one support [common practice, no
/// source].
constexpr double longest_mended_in = 150;
/// How finely the outermost places are looked for.
constexpr double place_step_in = 0.001;

/// Halves the way from a place that holds to one that does not; the last place that held.
template <typename Holds>
double outermost(double holding_in, double failing_in, const Holds& holds) {
  if (holds(failing_in)) return failing_in;
  while (std::abs(failing_in - holding_in) > place_step_in) {
    const double middle = (holding_in + failing_in) / 2;
    (holds(middle) ? holding_in : failing_in) = middle;
  }
  return holding_in;
}

}  // namespace

std::optional<SupportPlaces> places_that_keep_off(const SpanReach& reach,
                                                  const Obstacles& obstacles, int part,
                                                  double tolerance_in, const Counts& counts) {
  const Stretch& span = reach.stretch;
  const ReachEnvelope& envelope = span.envelope;
  const double play = span.route->line->kind == LineKind::cable ? guide_play_in : clamp_play_in;
  const auto off = [&](double start, double end, const ReachEnvelope& shorter) {
    return keeps_off(make_stretch(*span.route, start, end, shorter), Reach::bound, obstacles, part,
                     tolerance_in - limit_rounding, counts);
  };
  // The shorter a part of the span, the narrower its reach: each side holds up to one place.
  const auto before = [&](double at) {
    return off(span.start_in, at,
               shortened(envelope, envelope.start_in, at, play, reach.sag_power));
  };
  const auto after = [&](double at) {
    return off(at, span.end_in, shortened(envelope, at, envelope.end_in, play, reach.sag_power));
  };
  if (span.end_in - span.start_in > longest_mended_in) return std::nullopt;
  const double low = span.start_in + from_the_ends_in;
  const double high = span.end_in - from_the_ends_in;
  if (low > high || !before(low) || !after(high)) return std::nullopt;
  const SupportPlaces places{outermost(high, low, after), outermost(low, high, before)};
  if (places.first_in > places.last_in) return std::nullopt;
  return places;
}

}  // namespace linewright
