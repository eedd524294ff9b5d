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
  std::string angle(double degrees) const;         ///< "2.9 deg"
  std::string place(Vec3 at) const;                ///< "FS 205.0 BL -8.2 WL 15.1"
};

/// "AC 43.13-1B Table 9-2 (from memory, not checked against it)".
std::string cite(const Source& source);
/// The words for a mark, as the catalogue prints them.
std::string mark_words(Mark mark);

}  // namespace linewright
