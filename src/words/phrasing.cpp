#include "words/phrasing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

#include "model/units.hpp"
#include "model/worth.hpp"

namespace linewright {

namespace {

/// Fixed decimals without a negative zero. What lies half-way but for its last digits is half-way.
std::string fixed(double value, int decimals) {
  const double scale = std::pow(10.0, decimals);
  value = to_parts(value, std::max(parts_of_place, 1000 * scale));
  if (std::round(value * scale) == 0) value = 0;
  return fmt::format("{:.{}f}", value, decimals);
}

/// What is over a printed figure by no more than this is rounding: inches, or what is compared.
constexpr double rounding_in = 1e-6;

/// Enough for sixteenths and eighths of an inch to be what they are called.
int decimals_of_inches(double inches) {
  if (std::abs(inches) < 1) return 3;
  return std::abs(inches) < 10 ? 2 : 1;
}

constexpr int most_more_decimals = 4;

/// The finest part of an inch that is said.
constexpr int parts_of_inch = 32;

}  // namespace

std::string on_tape(double inches) {
  const double parts = std::round(std::abs(inches) * parts_of_inch);
  const double whole = std::floor(parts / parts_of_inch);
  const int part = static_cast<int>(parts - whole * parts_of_inch);
  if (parts == 0) return "0";
  std::string text = inches < 0 ? "-" : "";
  if (whole > 0) text += fixed(whole, 0);
  if (part == 0) return text;
  const int common = std::gcd(part, parts_of_inch);
  return text + fmt::format("{}{}/{}", whole > 0 ? " " : "", part / common, parts_of_inch / common);
}

std::string Phrasing::length_number(double inches, int more_decimals) const {
  if (unit == LengthUnit::millimetre) return fixed(inches * mm_per_in, 1 + more_decimals);
  return fixed(inches, decimals_of_inches(inches) + more_decimals);
}

std::string Phrasing::length(double inches, int more_decimals) const {
  return length_number(inches, more_decimals) + " " + unit_name();
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

std::string Phrasing::tape_number(double inches) const {
  return unit == LengthUnit::inch_fraction ? on_tape(inches) : length_number(inches);
}

std::string Phrasing::tape(double inches) const {
  return tape_number(inches) + " " + unit_name();
}

double Phrasing::tape_up(double inches) const {
  if (unit != LengthUnit::inch_fraction) return rounded_up(inches);
  return std::ceil((inches - rounding_in) * parts_of_inch) / parts_of_inch;
}

double Phrasing::tape_down(double inches) const {
  return -tape_up(-inches);
}

double Phrasing::tape_step_in() const {
  switch (unit) {
    case LengthUnit::millimetre:
      return 1 / mm_per_in;
    case LengthUnit::inch_fraction:
      return 0.125;
    case LengthUnit::inch:
      break;
  }
  return 0.1;
}

Phrasing Phrasing::decimals() const {
  return {unit == LengthUnit::inch_fraction ? LengthUnit::inch : unit};
}

std::string Phrasing::coordinate(double inches) const {
  if (unit == LengthUnit::inch_fraction) return on_tape(inches);
  return fixed(inches * units_per_in(), 1);
}

std::string Phrasing::angle(double degrees, int more_decimals) const {
  return fixed(degrees, 1 + more_decimals) + " deg";
}

std::string Phrasing::place(Vec3 at) const {
  return "FS " + coordinate(at.x) + " BL " + coordinate(at.y) + " WL " + coordinate(at.z);
}

std::string Phrasing::stand(const DrawnPlane& plane) const {
  const double scale = units_per_in();
  const auto is_square_to = [&plane](Vec3 axis) { return std::abs(dot(plane.normal, axis)) == 1; };
  if (is_square_to({1, 0, 0})) return "FS " + fixed(plane.origin.x * scale, 1);
  if (is_square_to({0, 1, 0})) return "BL " + fixed(plane.origin.y * scale, 1);
  if (is_square_to({0, 0, 1})) return "WL " + fixed(plane.origin.z * scale, 1);
  return place(plane.origin);
}

std::string Phrasing::extents(Vec3 least, Vec3 most) const {
  const auto range = [this](const char* axis, double from, double to) {
    return axis + coordinate(from) + " to " + coordinate(to);
  };
  return range("FS ", least.x, most.x) + ", " + range("BL ", least.y, most.y) + ", " +
         range("WL ", least.z, most.z);
}

std::pair<std::string, std::string> told_apart(double first, double second,
                                               const ValueWords& words) {
  const std::pair usual{words(first, 0), words(second, 0)};
  if (std::abs(first - second) <= rounding_in || usual.first != usual.second) return usual;
  for (int more = 1; more <= most_more_decimals; ++more) {
    std::pair finer{words(first, more), words(second, more)};
    if (finer.first != finer.second) return finer;
  }
  return usual;
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
