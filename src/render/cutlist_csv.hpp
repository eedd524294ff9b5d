#pragma once

#include <string>
#include <string_view>

#include "render/report.hpp"

namespace linewright {

/// One row for each bend, the route's own columns repeated; a route without bends has one row with
/// the bend's columns empty. Columns, with `_in`, `_in3` and `_lb` (or `_mm`, `_cm3` and `_g` where
/// millimetres are asked for):
/// route, system, line, from, to, length, cut_length, volume, mass, minimum_bend_radius,
/// straight_after, bend, fs, bl, wl, radius, angle_deg, rotation_deg, straight_before, distance,
/// mark_start, mark_end; a rotation turns as BendStep says.
/// What is not known is an empty field. Lines end in a line feed.
std::string cutlist_csv(const Report& report, LengthUnit unit);

/// A field as RFC 4180 quotes it: in double quotes, inner ones doubled, where it holds a comma, a
/// quote or a line break. A text that a spreadsheet would work out, for it begins with = + - @ or a
/// tab and is no number, gets an apostrophe before it.
std::string csv_field(std::string_view text);

}  // namespace linewright
