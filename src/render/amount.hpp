#pragma once
// Judged quantities in words.

#include <string>
#include <string_view>

#include "model/judgement.hpp"
#include "words/phrasing.hpp"

namespace linewright {

/// The unit's word in JSON: "in", "in3", "deg", "lbf", "ft", "s", "hz", or "".
std::string_view unit_word(Unit unit);

std::string_view sense_words(LimitSense sense);  ///< "at least", "at most"
std::string_view sense_word(LimitSense sense);   ///< in JSON: "at_least", "at_most"

/// "0.562 in", "2.9 deg", "14 lbf"; lengths and volumes in the unit asked for. With more decimals
/// than usual where asked for.
std::string amount(double value, Unit unit, const Phrasing& phrasing, int more_decimals = 0);

/// Fixed decimals, never "-0.00".
std::string fixed_number(double value, int decimals);

/// To a hundredth or a 32nd of an inch or a tenth of a millimetre, however long: for marks on a
/// bench.
std::string bench_length(double inches, const Phrasing& phrasing);
std::string bench_number(double inches, const Phrasing& phrasing);  ///< the same without its unit
/// A length in a field of CSV, without its unit. A part of an inch alone is "0 3/8": a spreadsheet
/// takes "3/8" for a date.
std::string sheet_length(double inches, LengthUnit unit);
std::string volume(double cubic_inches, const Phrasing& phrasing,
                   int more_decimals = 0);                  ///< "0.980 in3", "16.10 cm3"
std::string millilitres(double cubic_inches);               ///< "16.1 mL", as on a syringe
std::string mass(double pounds, const Phrasing& phrasing);  ///< "0.05 lb", "23 g"

/// "verified", "verified-secondary", "from-memory", "common-practice", "calculated", "builder": how
/// far a value can be trusted, as one word.
std::string_view mark_word(Mark mark);

/// "value 0.180 in, limit at least 0.410 in: short by 0.230 in"; empty where nothing was measured.
/// Value and limit look alike only where they are.
std::string by_how_much(const Judgement& judgement, const Phrasing& phrasing);

}  // namespace linewright
