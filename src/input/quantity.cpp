#include "input/quantity.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <string>
#include <system_error>
#include <utility>
#include <vector>

#include "input/blanks.hpp"
#include "input/quantity_slips.hpp"
#include "input/suggest_name.hpp"
#include "input/tape.hpp"
#include "input/utf8.hpp"
#include "model/units.hpp"
#include "system/decimal.hpp"

namespace linewright {
namespace {

/// A unit as an exact relation: internal = (written + offset) * numerator / denominator + shift.
struct UnitRow {
  std::string_view name;
  Dimension dimension;
  double numerator;
  double denominator;
  double offset = 0;
  double shift = 0;
};

// The relations are exact by definition: inch and pound (international yard and pound agreement,
// 1959), standard gravity 9.80665 m/s2, litre = 1 dm3. One lbf is 0.45359237 * 9.80665 N.
constexpr double newtons_per_lbf = 0.45359237 * gravity_m_per_s2;
constexpr double square_metres_per_square_inch = m_per_in * m_per_in;

constexpr std::array unit_rows = {
    UnitRow{"in", Dimension::length, 1, 1},
    UnitRow{"ft", Dimension::length, 12, 1},
    UnitRow{"mm", Dimension::length, 1, mm_per_in},
    UnitRow{"cm", Dimension::length, 1, mm_per_in / 10},
    UnitRow{"m", Dimension::length, 1000, mm_per_in},
    UnitRow{"in3", Dimension::volume, 1, 1},
    UnitRow{"mL", Dimension::volume, 1, 16.387064},
    UnitRow{"cm3", Dimension::volume, 1, 16.387064},
    UnitRow{"mm3", Dimension::volume, 1, 16387.064},
    UnitRow{"L", Dimension::volume, 1000, 16.387064},
    UnitRow{"lbf", Dimension::force, 1, 1},
    UnitRow{"N", Dimension::force, 1, newtons_per_lbf},
    UnitRow{"kgf", Dimension::force, 1, 0.45359237},
    UnitRow{"degF", Dimension::temperature, 1, 1},
    UnitRow{"degC", Dimension::temperature, 9, 5, 0, 32},
    UnitRow{"K", Dimension::temperature, 9, 5, -273.15, 32},
    UnitRow{"deg", Dimension::angle, 1, 1},
    UnitRow{"rad", Dimension::angle, 180, std::numbers::pi},
    UnitRow{"psi", Dimension::pressure, 1, 1},
    UnitRow{"Pa", Dimension::pressure, square_metres_per_square_inch, newtons_per_lbf},
    UnitRow{"kPa", Dimension::pressure, 1000 * square_metres_per_square_inch, newtons_per_lbf},
    UnitRow{"hPa", Dimension::pressure, 100 * square_metres_per_square_inch, newtons_per_lbf},
    UnitRow{"inHg", Dimension::pressure, pascals_per_inhg* square_metres_per_square_inch,
            newtons_per_lbf},
    UnitRow{"ft/min", Dimension::speed_vertical, 1, 1},
    UnitRow{"m/s", Dimension::speed_vertical, 60, 0.3048},
    UnitRow{"rpm", Dimension::rotational_speed, 1, 1},
    UnitRow{"lb/in", Dimension::mass_per_length, 1, 1},
    UnitRow{"lb/ft", Dimension::mass_per_length, 1, 12},
    UnitRow{"lb/100ft", Dimension::mass_per_length, 1, 1200},
    UnitRow{"kg/m", Dimension::mass_per_length, m_per_in, 0.45359237},
    UnitRow{"lbf/in", Dimension::stiffness, 1, 1},
    UnitRow{"N/mm", Dimension::stiffness, mm_per_in, newtons_per_lbf},
};

constexpr double absolute_zero_degf = -459.67;
constexpr double temperature_rounding = 1e-9;
constexpr std::size_t longest_shown = 60;

std::string unit_list(Dimension dimension) {
  std::vector<std::string_view> names;
  for (const UnitRow& row : unit_rows)
    if (row.dimension == dimension) names.push_back(row.name);
  std::string list;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) list += i + 1 == names.size() ? " or " : ", ";
    list += names[i];
  }
  return list;
}

std::string expected(Dimension dimension) {
  return "expected " + quantity_words(dimension);
}

std::string in_quotes(std::string_view text) {
  return fmt::format("'{}'", printable(text, longest_shown));
}

/// The same with a plus sign, too.
std::size_t number_length(std::string_view text) {
  if (!text.starts_with('+')) return decimal_length(text);
  if (text.starts_with("+-")) return 0;
  const std::size_t length = decimal_length(text.substr(1));
  return length == 0 ? 0 : length + 1;
}

bool leading_zero(std::string_view number) {
  if (number[0] == '+' || number[0] == '-') number.remove_prefix(1);
  return number.size() > 1 && number[0] == '0' && is_digit(number[1]);
}

bool any_digit_but_zero(std::string_view number) {
  const std::string_view mantissa = number.substr(0, number.find_first_of("eE"));
  return mantissa.find_first_of("123456789") != std::string_view::npos;
}

/// The double nearest to a number of our grammar; nothing where a double cannot hold it: too
/// large, or so small that it would silently become zero.
std::optional<double> to_double(std::string_view number) {
  std::string_view digits = number;
  if (digits[0] == '+') digits.remove_prefix(1);  // read_decimal takes no plus sign
  double value = 0;
  const auto [end, error] = read_decimal(digits, value);
  if (error != std::errc{} || end != digits.data() + digits.size()) return std::nullopt;
  if (!std::isfinite(value) || (value == 0 && any_digit_but_zero(number))) return std::nullopt;
  return value;
}

const UnitRow* find_unit(std::string_view name) {
  for (const UnitRow& row : unit_rows)
    if (row.name == name) return &row;
  return nullptr;
}

/// Another dimension's unit, or an unknown one, which may be a slip for one of this dimension's.
std::string wrong_unit(std::string_view text, std::string_view unit, Dimension dimension) {
  if (const UnitRow* row = find_unit(unit))
    return fmt::format("{}, found {}: {}", expected(dimension), dimension_words(row->dimension),
                       in_quotes(text));
  std::vector<std::string> names;
  for (const UnitRow& row : unit_rows)
    if (row.dimension == dimension) names.emplace_back(row.name);
  std::string suggestion = suggest_name(unit, names);
  const UnitRow* meant = find_unit(unit_meant(unit));
  if (meant != nullptr && meant->dimension == dimension)
    suggestion = fmt::format("did you mean '{}'?", meant->name);
  return fmt::format("{}, found {}: there is no unit {}{}{}", expected(dimension), in_quotes(text),
                     in_quotes(unit), suggestion.empty() ? "" : "; ", suggestion);
}

/// The internal unit, which stands first of its dimension.
const UnitRow* first_unit(Dimension dimension) {
  for (const UnitRow& row : unit_rows)
    if (row.dimension == dimension) return &row;
  return nullptr;
}

/// The unit of a bare number. Bare volumes are the cube of bare lengths.
const UnitRow* usual_unit(Dimension dimension, BareLength bare) {
  const bool metric = bare == BareLength::millimetre;
  if (dimension == Dimension::length) return find_unit(metric ? "mm" : "in");
  if (dimension == Dimension::volume) return find_unit(metric ? "mm3" : "in3");
  return first_unit(dimension);
}

double to_internal(double value, const UnitRow& unit) {
  return (value + unit.offset) * unit.numerator / unit.denominator + unit.shift;
}

}  // namespace

std::string_view internal_unit(Dimension dimension) {
  const UnitRow* row = first_unit(dimension);
  return row != nullptr ? row->name : std::string_view();
}

std::string quantity_words(Dimension dimension) {
  const std::string units = unit_list(dimension);
  if (units.empty()) return std::string(dimension_words(dimension));
  return fmt::format("{} ({})", dimension_words(dimension), units);
}

std::string_view dimension_words(Dimension dimension) {
  switch (dimension) {
    case Dimension::plain:
      return "a plain number";
    case Dimension::length:
      return "a length";
    case Dimension::volume:
      return "a volume";
    case Dimension::force:
      return "a force";
    case Dimension::temperature:
      return "a temperature";
    case Dimension::angle:
      return "an angle";
    case Dimension::pressure:
      return "a pressure";
    case Dimension::rotational_speed:
      return "a speed of rotation";
    case Dimension::speed_vertical:
      return "a vertical speed";
    case Dimension::mass_per_length:
      return "a mass per length";
    case Dimension::stiffness:
      return "a stiffness";
  }
  return "a quantity";
}

Expected<double, std::string> read_quantity(std::string_view written, Dimension dimension,
                                            BareLength bare) {
  const std::string_view text = without_blanks(written);
  if (text.empty()) return expected(dimension) + ", found nothing";
  const auto found = [&](std::string_view why) {
    return fmt::format("{}, found {}{}", expected(dimension), in_quotes(text), why);
  };

  const std::string fraction = why_no_fraction(text, dimension);
  if (!fraction.empty()) return found(fraction);
  if (dimension == Dimension::length && is_tape(text)) {
    const auto inches = read_tape(text, bare);
    if (!inches) return found(inches.error());
    return *inches;
  }
  const std::size_t length = number_length(text);
  if (length == 0) return found(why_no_number(text));
  const std::string_view number = text.substr(0, length);
  const std::string_view unit = without_blanks(text.substr(length));
  if (leading_zero(number)) return found(": a leading zero may mean octal; leave it out");
  if (!unit.empty()) {
    const std::string why = why_no_unit(number, unit);
    if (!why.empty()) return found(why);
  }

  // Makers state it per inch, foot, 100 feet or metre: a bare one would be a guess.
  if (unit.empty() && dimension == Dimension::mass_per_length)
    return found(fmt::format(": add its unit, as in '{} lb/ft'", number));
  const UnitRow* row = unit.empty() ? usual_unit(dimension, bare) : find_unit(unit);
  if (!unit.empty() && (row == nullptr || row->dimension != dimension))
    return wrong_unit(text, unit, dimension);
  const std::optional<double> value = to_double(number);
  if (!value) return found(": the number is out of range");
  if (row == nullptr) return *value;
  const double internal = to_internal(*value, *row);
  const bool vanished = internal == 0 && *value != 0 && dimension != Dimension::temperature;
  if (!std::isfinite(internal) || vanished) return found(": the number is out of range");
  if (dimension == Dimension::temperature && internal < absolute_zero_degf - temperature_rounding)
    return found(": that is below absolute zero");
  return internal;
}

}  // namespace linewright
