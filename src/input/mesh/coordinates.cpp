#include "input/mesh/coordinates.hpp"

#include <fmt/format.h>

#include "input/mesh/mesh_fault.hpp"
#include "input/utf8.hpp"
#include "system/decimal.hpp"

namespace linewright {
namespace {

constexpr std::size_t longest_shown_word = 40;

}  // namespace

void check_coordinate(double coordinate, std::size_t offset, double largest) {
  if (!std::isfinite(coordinate))
    throw MeshFault(offset, fmt::format("a coordinate must be a finite number, found {}",
                                        std::isnan(coordinate) ? "nan" : "infinity"));
  if (std::abs(coordinate) > largest)
    throw MeshFault(offset, fmt::format("a coordinate of {:.6g} is {:.0f} in or more from the "
                                        "datum in these units: are the units right?",
                                        coordinate, farthest_coordinate_in));
}

// Other programs write "+1.0", which read_decimal does not read, and numbers too small for a
// double, which it reports as out of range: those are zero here.
double read_coordinate(std::string_view word, std::size_t offset, double largest) {
  std::string_view digits = word;
  if (digits.size() > 1 && digits[0] == '+' && digits[1] != '-') digits.remove_prefix(1);
  double value = 0;
  const auto [end, error] = read_decimal(digits, value);
  if (error == std::errc::invalid_argument || end != digits.data() + digits.size())
    throw MeshFault(offset, fmt::format("expected a coordinate, found '{}'",
                                        printable(word, longest_shown_word)));
  if (error == std::errc::result_out_of_range) {
    if (digits.find("e-") == digits.npos && digits.find("E-") == digits.npos)
      throw MeshFault(offset, "a coordinate must be a finite number, found one beyond all range");
    value = 0;
  }
  check_coordinate(value, offset, largest);
  return value;
}

}  // namespace linewright
