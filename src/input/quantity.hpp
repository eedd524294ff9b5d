#pragma once
// Numbers with units, read whole and in one way, into inches, pounds-force, degrees Fahrenheit,
// degrees of angle and psi.

#include <string>
#include <string_view>

#include "model/expected.hpp"

namespace linewright {

enum class Dimension {
  plain,
  length,
  volume,
  force,
  temperature,
  angle,
  pressure,
  rotational_speed,
  speed_vertical,
  mass_per_length,
  stiffness
};

/// Unit that bare lengths (and volumes: its cube) are in.
enum class BareLength { inch, millimetre };

/// Reads "1.25", "1.25 in", "32 mm", and of lengths what stands on a tape (`read_tape`), into the
/// internal unit, or says why not: "expected a length, found …". Refuses other fractions, NaN,
/// infinities, values out of range, octal-looking numbers (leading zero), hexadecimal, units of
/// another kind, text after the unit. A bare number is in the dimension's usual unit: lengths by
/// `bare`, volumes in3 or mm3 by `bare`, forces lbf, temperatures degF, angles degrees, pressures
/// psi, stiffnesses lbf/in. A mass per length is refused without its unit.
Expected<double, std::string> read_quantity(std::string_view text, Dimension dimension,
                                            BareLength bare);

/// The unit of what `read_quantity` gives, "in"; empty for a plain number.
std::string_view internal_unit(Dimension dimension);

/// What such a number is, with its units: "a length (in, ft, mm, cm or m)".
std::string quantity_words(Dimension dimension);

/// The dimension's name in words: "a length".
std::string_view dimension_words(Dimension dimension);

}  // namespace linewright
