#include "lines/free_passage.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace linewright {

namespace {

/// A cable this near to square to the bore is taken as no more so.
constexpr double least_slant_cosine = 0.05;

/// How far along a chord, 0 to 1, it is level with `at` over the sheet; nothing where it does not
/// get there.
std::optional<double> share_level_with(const PathChord& chord, const DrawnPlane& sheet, Vec3 at) {
  const double before = dot(chord.from - at, sheet.normal);
  const double after = dot(chord.to - at, sheet.normal);
  if (before * after > 0 || before == after) return std::nullopt;
  return before / (before - after);
}

double nearest_share(const PathChord& chord, Vec3 at) {
  const Vec3 along = chord.to - chord.from;
  return std::clamp(dot(at - chord.from, along) / dot(along, along), 0.0, 1.0);
}

}  // namespace

FreePassage free_passage(const Centreline& centreline, const FreeFairlead& free,
                         const DrawnPlane* sheet) {
  const Vec3 at = free.fairlead.at;
  const auto chords = centreline.chords(centreline.corner_distance_in(free.leg),
                                        centreline.corner_distance_in(free.leg + 1));
  FreePassage passage;
  passage.free = &free;
  const auto nearest_of = [&](const auto& share_of) {
    bool found = false;
    for (const PathChord& chord : chords) {
      const std::optional<double> share = share_of(chord);
      if (!share) continue;
      const double away = distance(at, between(chord.from, chord.to, *share));
      if (found && away >= passage.offset_in) continue;
      found = true;
      passage.offset_in = away;
      passage.distance_in = std::lerp(chord.start_in, chord.end_in, *share);
    }
    return found;
  };
  if (sheet &&
      nearest_of([&](const PathChord& chord) { return share_level_with(chord, *sheet, at); })) {
    const double square = std::abs(dot(centreline.direction(passage.distance_in), sheet->normal));
    passage.slant_cosine = std::max(square, least_slant_cosine);
    return passage;
  }
  nearest_of([&](const PathChord& chord) { return std::optional(nearest_share(chord, at)); });
  return passage;
}

}  // namespace linewright
