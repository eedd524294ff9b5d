#pragma once
// Sizes of sheet and of the holes in it for what is snapped or pressed in.

namespace linewright {

/// Thicker than any sheet, web or board of a light aeroplane that a line is led through.
inline constexpr double largest_sheet_thickness_in = 1.5;

/// A panel hole is larger than the bore of the part snapped or pressed into it: grommets by about
/// 1/4 in [from memory: MS35489], snap bushings by 1/8 in [verified, secondary: aircraft-parts
/// catalogue page on snap bushings].
inline constexpr double grommet_hole_over_bore_in = 0.25;
inline constexpr double bushing_hole_over_bore_in = 0.125;

/// The thread of a bulkhead union is wider than its tube, by this at the least: 7/16 in for a tube
/// of 1/4 in [verified, secondary: a table of AN sizes].
inline constexpr double usual_thread_over_tube_in = 0.1875;

/// A cushion clamp takes a No. 10 screw; a close fit for it is a No. 9 drill [from memory: MS21919,
/// drill tables].
inline constexpr double clamp_screw_hole_in = 0.196;

}  // namespace linewright
