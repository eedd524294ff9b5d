#pragma once
// Numbers as the builder reads them, in the unit asked for.

#include <string>

#include "model/source.hpp"
#include "model/vector.hpp"

namespace linewright {

enum class LengthUnit { inch, millimetre };

/// Turns quantities into words. Same output whatever the locale.
struct Phrasing {
  LengthUnit unit = LengthUnit::inch;

  std::string length(double inches) const;         ///< "0.56 in", "14.2 mm"
  std::string length_number(double inches) const;  ///< "0.56"
  std::string unit_name() const;                   ///< "in" or "mm"
  /// The nearest length that is said in full and is not under, or not over, `inches`. A mend says
  /// these, so that doing what it says is enough.
  double rounded_up(double inches) const;
  double rounded_down(double inches) const;
  /// The length in words, rounded up.
  std::string length_up(double inches) const { return length(rounded_up(inches)); }
  std::string angle(double degrees) const;  ///< "2.9 deg"
  std::string place(Vec3 at) const;         ///< "FS 205.0 BL -8.2 WL 15.1"
};

/// "AC 43.13-1B Table 9-2 (from memory, not checked against it)".
std::string cite(const Source& source);
/// The words for a mark, as the catalogue prints them.
std::string mark_words(Mark mark);

}  // namespace linewright
