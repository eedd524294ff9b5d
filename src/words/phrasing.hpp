#pragma once
// Numbers as the builder reads them, in the unit asked for.

#include <functional>
#include <string>
#include <utility>

#include "model/drawn_plane.hpp"
#include "model/source.hpp"
#include "model/units.hpp"
#include "model/vector.hpp"

namespace linewright {

/// `inch_fraction`: inches, with places and lengths as they stand on a tape, to the nearest 1/32.
/// Gaps, margins and limits are decimals there too.
enum class LengthUnit { inch, millimetre, inch_fraction };

/// Inches to the nearest 1/32 as a tape has them: "10 3/8", "-3/16", "0".
std::string on_tape(double inches);

/// Turns quantities into words. Same output whatever the locale.
struct Phrasing {
  LengthUnit unit = LengthUnit::inch;

  /// "0.125 in", "2.50 in", "14.2 in", "3.2 mm"; with more decimals than usual where asked for.
  std::string length(double inches, int more_decimals = 0) const;
  std::string length_number(double inches, int more_decimals = 0) const;  ///< "0.125"
  std::string unit_name() const;                                          ///< "in" or "mm"
  double units_per_in() const { return unit == LengthUnit::millimetre ? mm_per_in : 1; }
  /// The nearest length that is said in full and is not under, or not over, `inches`. A mend says
  /// these, so that doing what it says is enough.
  double rounded_up(double inches) const;
  double rounded_down(double inches) const;
  /// How long something is, or how far along a line it is: as `length`, or "10 3/8 in".
  std::string tape(double inches) const;
  std::string tape_number(double inches) const;  ///< "10 3/8"
  /// As `rounded_up` and `rounded_down`, for what `tape` says.
  double tape_up(double inches) const;
  double tape_down(double inches) const;
  /// A step from place to place whose every multiple `tape` says in full.
  double tape_step_in() const;
  /// The same with decimals for everything.
  Phrasing decimals() const;
  /// The length in words, rounded up.
  std::string length_up(double inches) const { return length(rounded_up(inches)); }
  std::string angle(double degrees, int more_decimals = 0) const;  ///< "2.9 deg"
  std::string place(Vec3 at) const;                                ///< "FS 205.0 BL -8.2 WL 15.1"
  /// Where a plane stands: "FS 190.0", "BL -12.0" or "WL 8.0"; a slanted one by its origin.
  std::string stand(const DrawnPlane& plane) const;
  /// "FS 100.0 to 104.0, BL -3.9 to 3.9, WL 16.1 to 23.9"
  std::string extents(Vec3 least, Vec3 most) const;

 private:
  std::string coordinate(double inches) const;
};

/// A value in words, with so many decimals more than usual.
using ValueWords = std::function<std::string(double value, int more_decimals)>;

/// Two values in words, with as few decimals as tell them apart, but no fewer than usual. Values
/// that are alike to a millionth stay alike.
std::pair<std::string, std::string> told_apart(double first, double second,
                                               const ValueWords& words);

/// "AC 43.13-1B Table 9-2 (from memory, not checked against it)".
std::string cite(const Source& source);
/// The words for a mark, as the catalogue prints them.
std::string mark_words(Mark mark);

}  // namespace linewright
