#include "lines/near/stretch.hpp"

#include <algorithm>
#include <cmath>

#include "lines/along_line.hpp"
#include "lines/line_pairs.hpp"
#include "lines/near/chord_bounds.hpp"
#include "lines/neighbour_filter.hpp"

namespace linewright {

namespace {

void cut_to_length(const PathChord& chord, std::vector<PathChord>& cut) {
  const double length = chord.end_in - chord.start_in;
  const int parts = std::max(1, static_cast<int>(std::ceil(length / longest_chord_in)));
  for (int i = 0; i < parts; ++i) {
    const double t0 = static_cast<double>(i) / parts;
    const double t1 = static_cast<double>(i + 1) / parts;
    cut.push_back({between(chord.from, chord.to, t0), between(chord.from, chord.to, t1),
                   distance_along(chord, t0), distance_along(chord, t1)});
  }
}

/// Distances along the route at which something begins or ends to count, to be held by another
/// limit, or to be thicker: all that lie from `low_in` to `high_in`, and some beyond.
std::vector<double> zone_ends(const PreparedRoute& route, double low_in, double high_in) {
  std::vector<double> ends;
  for (const double from_end : {mount_depth_in, fitting_zone_in, fitting_reach_in(route),
                                shared_node_zone_in, soft_node_zone_in})
    ends.insert(ends.end(), {from_end, route.length_in() - from_end});
  if (const auto own = own_fitting_in(route, *route.from)) ends.push_back(*own);
  if (const auto own = own_fitting_in(route, *route.to)) ends.push_back(route.length_in() - *own);
  for (const Support& support :
       between_along(route.supports, low_in - at_support_in, high_in + at_support_in))
    ends.insert(ends.end(), {support.distance_in - at_support_in, support.distance_in,
                             support.distance_in + at_support_in});
  for (const Crossing& crossing :
       between_along(route.crossings, low_in - crossing_zone_in, high_in + crossing_zone_in))
    ends.insert(ends.end(),
                {crossing.distance_in - crossing_zone_in, crossing.distance_in + crossing_zone_in});
  for (const Sleeve& sleeve : route.route->sleeves)
    ends.insert(ends.end(), {sleeve.from_in, sleeve.to_in});
  for (const AsBuiltPart& part : route.as_built)
    ends.insert(ends.end(), {part.from_in, part.to_in});
  for (const SweptPart& part : route.swept_by_attachments)
    ends.insert(ends.end(), {part.from_in, part.to_in});
  return ends;
}

/// Ends nearer to each other are one, or rounding would leave pieces of no length.
constexpr double one_end_in = 1e-9;

/// Of the stretch's chords it has those from `first` to before `end`.
void sort_into_blocks(Stretch& stretch, std::size_t first, std::size_t end) {
  constexpr std::size_t block_size = 12;
  stretch.blocks.clear();
  stretch.blocks.reserve((end - first + block_size - 1) / block_size);
  for (std::size_t i = first; i < end; i += block_size) {
    ChordBlock block{i, std::min(i + block_size, end), bounds_of(stretch.chord(i))};
    for (std::size_t j = i; j < block.end; ++j) include(block.bounds, stretch.chord(j).to);
    if (stretch.blocks.empty()) stretch.bounds = block.bounds;
    include(stretch.bounds, block.bounds);
    stretch.blocks.push_back(block);
  }
}

}  // namespace

void take_chords(Stretch& stretch, std::vector<PathChord> chords) {
  chords.shrink_to_fit();
  const std::size_t count = chords.size();
  stretch.of_chords = std::make_shared<const std::vector<PathChord>>(std::move(chords));
  sort_into_blocks(stretch, 0, count);
}

Stretch make_stretch(const PreparedRoute& route, double start_in, double end_in,
                     const ReachEnvelope& envelope) {
  Stretch stretch{&route, start_in, end_in, envelope, nullptr, {}, {}, route.thickest_radius_in(),
                  nullptr};
  std::vector<double> breaks{start_in, end_in};
  for (const double at : zone_ends(route, start_in, end_in))
    if (at > start_in + one_end_in && at < end_in - one_end_in) breaks.push_back(at);
  std::sort(breaks.begin(), breaks.end());
  breaks.erase(std::unique(breaks.begin(), breaks.end(),
                           [](double a, double b) { return b - a < one_end_in; }),
               breaks.end());
  std::vector<PathChord> chords;
  for (std::size_t i = 0; i + 1 < breaks.size(); ++i)
    for (const PathChord& chord : route.centreline.chords(breaks[i], breaks[i + 1]))
      cut_to_length(chord, chords);
  take_chords(stretch, std::move(chords));
  return stretch;
}

Stretch stretch_of(const Stretch& whole, double start_in, double end_in,
                   const ReachEnvelope& envelope) {
  const std::vector<PathChord>& chords = *whole.of_chords;
  const auto first = std::lower_bound(
      chords.begin(), chords.end(), start_in,
      [](const PathChord& chord, double from_in) { return chord.start_in < from_in; });
  const auto end =
      std::lower_bound(first, chords.end(), end_in,
                       [](const PathChord& chord, double to_in) { return chord.end_in <= to_in; });
  if (first == end || first->start_in != start_in || std::prev(end)->end_in != end_in)
    return make_stretch(*whole.route, start_in, end_in, envelope);
  Stretch stretch{whole.route,     start_in, end_in, envelope,
                  whole.of_chords, {},       {},     whole.thickest_radius_in,
                  nullptr};
  sort_into_blocks(stretch, static_cast<std::size_t>(first - chords.begin()),
                   static_cast<std::size_t>(end - chords.begin()));
  return stretch;
}

}  // namespace linewright
