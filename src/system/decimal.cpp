#include "system/decimal.hpp"

#include <cerrno>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <string>

namespace linewright {

namespace {

std::size_t after_digits(std::string_view text, std::size_t at) {
  while (at < text.size() && is_digit(text[at])) ++at;
  return at;
}

bool begins_with_word(std::string_view text, std::string_view word) {
  if (text.size() < word.size()) return false;
  for (std::size_t i = 0; i < word.size(); ++i)
    if ((text[i] | 0x20) != word[i]) return false;
  return true;
}

/// "inf", "infinity" and "nan": numbers that are none, which callers refuse by name.
std::size_t end_of_word(std::string_view text, double& value) {
  const std::size_t first = text.starts_with('-') ? 1 : 0;
  const std::string_view word = text.substr(first);
  for (const std::string_view known : {"infinity", "inf", "nan"}) {
    if (!begins_with_word(word, known)) continue;
    value = std::copysign(known == "nan" ? NAN : HUGE_VAL, first == 1 ? -1.0 : 1.0);
    return first + known.size();
  }
  return 0;
}

}  // namespace

std::size_t decimal_length(std::string_view text) {
  const std::size_t first = text.starts_with('-') ? 1 : 0;
  std::size_t at = after_digits(text, first);
  std::size_t digits = at - first;
  if (at < text.size() && text[at] == '.') {
    const std::size_t end = after_digits(text, at + 1);
    digits += end - at - 1;
    if (digits > 0) at = end;
  }
  if (digits == 0) return 0;
  if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
    std::size_t power = at + 1;
    if (power < text.size() && (text[power] == '+' || text[power] == '-')) ++power;
    const std::size_t end = after_digits(text, power);
    if (end > power) at = end;
  }
  return at;
}

// The program sets no locale, so that strtod knows none but "C".
ReadDecimal read_decimal_by_hand(std::string_view text, double& value) {
  const std::size_t length = decimal_length(text);
  if (length == 0) {
    const std::size_t word = end_of_word(text, value);
    return {text.data() + word, word == 0 ? std::errc::invalid_argument : std::errc{}};
  }
  const std::string digits(text.substr(0, length));
  errno = 0;
  const double read = std::strtod(digits.c_str(), nullptr);
  const bool beyond = errno == ERANGE && (read == 0 || std::isinf(read));
  if (!beyond) value = read;
  return {text.data() + length, beyond ? std::errc::result_out_of_range : std::errc{}};
}

ReadDecimal read_decimal(std::string_view text, double& value) {
#ifdef __cpp_lib_to_chars
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return {end, error};
#else
  return read_decimal_by_hand(text, value);
#endif
}

}  // namespace linewright
