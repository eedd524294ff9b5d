#pragma once
// What one unit is in another: the international inch of 1959, standard gravity, and the
// conventional inch of mercury, a column of 13,595.1 kg/m3 [exact by definition; NIST SP 811 lists
// them, from memory].

namespace linewright {

inline constexpr double mm_per_in = 25.4;
inline constexpr double m_per_in = mm_per_in / 1000;
inline constexpr double cm3_per_in3 = mm_per_in * mm_per_in * mm_per_in / 1000;
inline constexpr double gravity_m_per_s2 = 9.80665;
inline constexpr double pascals_per_inhg = 13595.1 * gravity_m_per_s2 * m_per_in;

}  // namespace linewright
