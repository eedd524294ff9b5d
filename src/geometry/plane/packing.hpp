#pragma once
// Circles side by side in a circle.

#include <vector>

namespace linewright {

/// Beyond this many circles places are no longer tried in every order.
inline constexpr int most_packed_in_full = 6;

/// A diameter of a circle in which circles of these diameters (above zero) lie side by side without
/// overlap: the least for one, two and three, and for more the least that was found by setting each
/// where it touches two others. See `packing_bound` for what
/// no circle can undercut. To 0.0005 of the largest.
double packed_diameter(std::vector<double> diameters);

/// No smaller circle can hold them, however they lie: the two largest side by side, and the area.
double packing_bound(const std::vector<double>& diameters);

}  // namespace linewright
