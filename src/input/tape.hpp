#pragma once
// Lengths as they stand on a tape: feet, inches and parts of an inch halved again and again.

#include <string>
#include <string_view>

#include "input/quantity.hpp"
#include "model/expected.hpp"

namespace linewright {

/// True for a text with a fraction, the mark of feet (') or of inches ("), or inches after feet.
/// Whatever it means, `read_tape` has the words for it.
bool is_tape(std::string_view text);

/// Inches of "10 3/8", "10-3/8 in", "3/16", "5 ft 2 1/4 in", "5' 2-1/4\"", "-10.5\"", or why not,
/// as the end of a message: ": a fraction has one stroke". A sign is for all of it. Parts are
/// halves, 4ths, 8ths, 16ths, 32nds or 64ths; after a whole number they are less than one, and
/// inches after feet are less than 12 and have their unit. A fraction without a unit is of inches
/// where bare lengths are; where they are millimetres it is refused.
Expected<double, std::string> read_tape(std::string_view text, BareLength bare);

}  // namespace linewright
