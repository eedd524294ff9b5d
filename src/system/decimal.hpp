#pragma once
// Decimal numbers read alike everywhere, whatever the locale.

#include <cstddef>
#include <string_view>
#include <system_error>

namespace linewright {

constexpr bool is_digit(char letter) {
  return letter >= '0' && letter <= '9';
}

/// Length of the number that `text` begins with: a minus sign, digits with at most one point, an
/// exponent. 0 where there is none.
std::size_t decimal_length(std::string_view text);

/// How far a decimal number goes in a text, and what was wrong: as std::from_chars_result.
struct ReadDecimal {
  const char* end = nullptr;
  std::errc error{};
};

/// Reads the number that `text` begins with, as std::from_chars does in its general form, into
/// `value`, the nearest double. `value` stays as it is where there is no number, or none that a
/// double can hold.
ReadDecimal read_decimal(std::string_view text, double& value);

/// The same where the library's std::from_chars knows no decimals.
ReadDecimal read_decimal_by_hand(std::string_view text, double& value);

}  // namespace linewright
