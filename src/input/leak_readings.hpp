#pragma once
// Logged readings of a leak test, as comma-separated values:
//
//     # any remark
//     time_s,altitude_ft,temperature_degF
//     0,1800,70.1
//     10,1795,70.1
//
// A pitot test has airspeed_kt instead of altitude_ft. The temperature column may be left out, the
// header may not. Lines end in LF or CR LF; blank lines and lines that start with '#' are remarks;
// decimals are written with a point.

#include <string>
#include <vector>

#include "input/diagnostic.hpp"
#include "model/expected.hpp"
#include "model/leak_log.hpp"

namespace linewright {

/// What the second column holds.
enum class LoggedQuantity { altitude_ft, airspeed_kt };

inline constexpr std::size_t most_log_rows = 20'000;

/// No test moves so far from one reading to the next: such a pair is a slip of the pen.
inline constexpr double largest_altitude_jump_ft = 5'000;
inline constexpr double largest_airspeed_jump_kt = 200;
inline constexpr double largest_temperature_jump_degf = 20;

/// The log in `bytes`, or everything that is wrong with it (at most twenty errors, in order of
/// place). `shown_name` is the file's name in the diagnostics.
Expected<LeakLog, std::vector<Diagnostic>> read_leak_log(const std::string& bytes,
                                                         const std::string& shown_name,
                                                         LoggedQuantity quantity);

}  // namespace linewright
