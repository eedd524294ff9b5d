#include "rules/phrasing.hpp"

#include <fmt/format.h>

#include <cmath>

namespace linewright {

namespace {

/// Fixed decimals without a negative zero.
std::string fixed(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  if (std::round(value * scale) == 0) value = 0;
  return fmt::format("{:.{}f}", value, decimals);
}

/// What is over a printed figure by no more than this is rounding, inches.
constexpr double rounding_in = 1e-6;

int decimals_of_inches(double inches) {
  return std::abs(inches) < 10 ? 2 : 1;
}

}  // namespace

std::string Phrasing::length_number(double inches) const {
  if (unit == LengthUnit::millimetre) return fixed(inches * 25.4, 1);
  return fixed(inches, decimals_of_inches(inches));
}

std::string Phrasing::length(double inches) const {
  return length_number(inches) + " " + unit_name();
}

std::string Phrasing::unit_name() const {
  return unit == LengthUnit::millimetre ? "mm" : "in";
}

double Phrasing::rounded_up(double inches) const {
  const double steps =
      unit == LengthUnit::millimetre ? 254 : std::pow(10.0, decimals_of_inches(inches));
  return std::ceil((inches - rounding_in) * steps) / steps;
}

double Phrasing::rounded_down(double inches) const {
  return -rounded_up(-inches);
}

std::string Phrasing::angle(double degrees) const {
  return fixed(degrees, 1) + " deg";
}

std::string Phrasing::place(Vec3 at) const {
  const double scale = unit == LengthUnit::millimetre ? 25.4 : 1;
  return "FS " + fixed(at.x * scale, 1) + " BL " + fixed(at.y * scale, 1) + " WL " +
         fixed(at.z * scale, 1);
}

std::string mark_words(Mark mark) {
  switch (mark) {
    case Mark::verified:
      return "verified";
    case Mark::verified_secondary:
      return "verified in a restatement of the source";
    case Mark::from_memory:
      return "from memory, not checked against it";
    case Mark::common_practice:
      return "common practice, no source";
    case Mark::calculated:
      return "calculated";
    case Mark::builder:
      return "the project's own figure";
  }
  return {};
}

std::string cite(const Source& source) {
  return source.text + " (" + mark_words(source.mark) + ")";
}

}  // namespace linewright
