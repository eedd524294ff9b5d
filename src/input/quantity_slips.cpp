#include "input/quantity_slips.hpp"

#include <fmt/format.h>

#include <array>

#include "input/blanks.hpp"
#include "input/utf8.hpp"
#include "system/decimal.hpp"

namespace linewright {
namespace {

constexpr std::size_t longest_shown = 60;

/// True for words that other readers take as a number that is none.
bool names_non_finite(std::string_view text) {
  if (!text.empty() && (text[0] == '+' || text[0] == '-')) text.remove_prefix(1);
  if (!text.empty() && text[0] == '.') text.remove_prefix(1);
  std::string word;
  for (const char letter : text.substr(0, 9))
    word += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
  return word == "nan" || word == "inf" || word == "infinity";
}

/// What a builder writes for a unit, and what is read.
struct UnitSpelling {
  std::string_view written;
  std::string_view unit;
};

constexpr std::array unit_spellings = {
    UnitSpelling{"F", "degF"},     UnitSpelling{"\u00B0F", "degF"},
    UnitSpelling{"C", "degC"},     UnitSpelling{"\u00B0C", "degC"},
    UnitSpelling{"\u00B0", "deg"}, UnitSpelling{"degrees", "deg"},
    UnitSpelling{"inch", "in"},    UnitSpelling{"inches", "in"},
    UnitSpelling{"foot", "ft"},    UnitSpelling{"feet", "ft"},
    UnitSpelling{"pounds", "lbf"}, UnitSpelling{"lbs", "lbf"},
    UnitSpelling{"kg", "kgf"},     UnitSpelling{"cc", "cm3"},
};

/// A fraction that is one character.
struct OneCharacterFraction {
  std::string_view character;
  std::string_view written;
};

constexpr std::array one_character_fractions = {
    OneCharacterFraction{"\u00BC", "1/4"}, OneCharacterFraction{"\u00BD", "1/2"},
    OneCharacterFraction{"\u00BE", "3/4"}, OneCharacterFraction{"\u215B", "1/8"},
    OneCharacterFraction{"\u215C", "3/8"}, OneCharacterFraction{"\u215D", "5/8"},
    OneCharacterFraction{"\u215E", "7/8"},
};

/// "142,5" in a country whose decimals have a comma. Three digits after it may be thousands.
std::string why_no_comma(std::string_view number, std::string_view rest) {
  std::size_t digits = 1;
  while (digits < rest.size() && is_digit(rest[digits])) ++digits;
  const bool decimals = number.find('.') == std::string_view::npos && digits > 1 && digits != 4 &&
                        rest.find(',', 1) == std::string_view::npos;
  if (!decimals) return ": write decimals with a point, and no commas between digits";
  return fmt::format(": write decimals with a point: {}.{}", number,
                     printable(rest.substr(1), longest_shown));
}

}  // namespace

std::string why_no_fraction(std::string_view text, Dimension dimension) {
  for (const auto& [character, written] : one_character_fractions) {
    const std::size_t at = text.find(character);
    if (at == std::string_view::npos) continue;
    if (dimension != Dimension::length) return ": write the fraction as a decimal";
    const std::string_view whole = without_blanks(text.substr(0, at));
    const std::string_view unit = text.substr(at + character.size());
    const bool alone = whole.empty() || whole == "-" || whole == "+";
    return fmt::format(": write {}{}{}{}", printable(whole, longest_shown), alone ? "" : " ",
                       written, printable(unit, longest_shown));
  }
  return {};
}

std::string_view why_no_number(std::string_view text) {
  if (names_non_finite(text)) return ": a number must be finite";
  if (text.starts_with("\xE2\x88\x92")) return ": its minus sign is not the '-' of the keyboard";
  if (text.starts_with(',')) return ": write decimals with a point";
  return "";
}

std::string why_no_unit(std::string_view number, std::string_view rest) {
  const bool zero = number == "0" || number == "-0" || number == "+0";
  if (zero && rest.size() > 1 && std::string_view("xXoObB").find(rest[0]) != rest.npos &&
      std::string_view("0123456789abcdefABCDEF").find(rest[1]) != rest.npos)
    return ": write the number in decimal";
  if (rest.starts_with(',')) return why_no_comma(number, rest);
  if (rest.starts_with('/') || (is_digit(rest[0]) && rest.find('/') != rest.npos))
    return ": write the fraction as a decimal";
  if (is_digit(rest[0]) || rest[0] == '.' || rest[0] == '_' || rest[0] == '+' || rest[0] == '-')
    return ": it is not one number";
  return "";
}

std::string_view unit_meant(std::string_view written) {
  for (const UnitSpelling& each : unit_spellings)
    if (each.written == written) return each.unit;
  return "";
}

}  // namespace linewright
