#include "lines/motion/rod_sweep.hpp"

#include "lines/motion/span_frequency.hpp"

namespace linewright {

namespace {

/// Chords of the rod as drawn, put where it is at each place of its way.
std::vector<PathChord> swept_chords(const Stretch& drawn, const RodWay& way, double length_in) {
  std::vector<PathChord> chords;
  chords.reserve(drawn.chords().size() * way.places.size());
  for (const RodPlace& place : way.places)
    for (const PathChord& chord : drawn.chords())
      chords.push_back({between(place.from, place.to, chord.start_in / length_in),
                        between(place.from, place.to, chord.end_in / length_in), chord.start_in,
                        chord.end_in});
  return chords;
}

}  // namespace

SpanReach rod_reach(const PreparedProject& prepared, const PreparedRoute& route,
                    const RodWay& way) {
  const Line& line = *route.line;
  const double length = route.length_in();
  SpanReach reach;
  ReachEnvelope envelope;
  envelope.end_in = length;
  reach.missing = way.missing;
  if (reach.missing.empty() && !line.weight_lb_per_in) reach.missing = "the weight of " + line.name;
  if (reach.missing.empty() && !line.youngs_modulus_psi)
    reach.missing = "Young's modulus of " + line.name;
  if (!reach.missing.empty()) {
    reach.stretch = make_stretch(route, 0, length, envelope);
    return reach;
  }
  envelope.play_first_in = envelope.play_last_in = way.stray_in;
  envelope.sag_in =
      prepared.project->load_factor.largest() * pinned_beam_sag_in(beam_of(line, length));
  reach.stretch = make_stretch(route, 0, length, envelope);
  take_chords(reach.stretch, swept_chords(reach.stretch, way, length));
  return reach;
}

}  // namespace linewright
