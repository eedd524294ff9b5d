#pragma once
// What builders write for a number with its unit that is not read as one, and what to write then.
// Each answer is the end of a message, ": write decimals with a point", and empty for no such slip.

#include <string>
#include <string_view>

#include "input/quantity.hpp"

namespace linewright {

/// Of a number that ends in a fraction of one character: ": write 14 1/4".
std::string why_no_fraction(std::string_view text, Dimension dimension);

/// Why a text does not start with a number.
std::string_view why_no_number(std::string_view text);

/// Why what follows a number, which is not empty, cannot be a unit.
std::string why_no_unit(std::string_view number, std::string_view rest);

/// The unit that another spelling stands for, "degF" of "F"; empty for none.
std::string_view unit_meant(std::string_view written);

}  // namespace linewright
