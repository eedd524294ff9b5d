#pragma once
// Distances from two datum lines, written along the edges of a drawing.

#include <vector>

#include "render/draw/sheet.hpp"

namespace linewright {

/// Places kept at least `apart` from each other and from `least` to `most` where there is room,
/// each as near as that lets it to where it was wanted. `wanted` rises.
std::vector<double> kept_apart(std::vector<double> wanted, double apart, double least, double most);

/// Dimensions without dimension lines (ASME Y14.5, rectangular coordinates): from each place a thin
/// line to the top of `room`, where its first coordinate stands, and one to the right, where its
/// second does. Places in one line share theirs.
void draw_ordinates(Sheet& sheet, const PaperScale& scale, const PaperBox& room,
                    const std::vector<Vec2>& places, const Phrasing& phrasing);

}  // namespace linewright
