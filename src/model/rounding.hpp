#pragma once
// What counts as nothing between two measured figures.

namespace linewright {

/// A value this near to a limit is at it, in the unit judged: exactly at a limit passes in spite of
/// rounding.
inline constexpr double limit_rounding = 1e-6;

}  // namespace linewright
