#pragma once
// The whole aeroplane from the side and from above.

#include <string>

#include "render/draw/sheet.hpp"

namespace linewright {

/// Stations to the right, waterlines up.
std::string side_view(const Drawing& drawing);
/// Stations to the right, buttock lines up: the right-hand side above, as seen from overhead.
std::string plan_view(const Drawing& drawing);

/// Datum lines and ticks of both coordinates round a scaled drawing, in the unit asked for.
void draw_ticks(Sheet& sheet, const PaperScale& scale, const PaperBox& room, std::string_view along,
                std::string_view up, const Phrasing& phrasing);

}  // namespace linewright
