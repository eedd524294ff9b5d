#pragma once
// Sleeves on the turns of a line.

#include "lines/prepared.hpp"

namespace linewright {

/// True where the sleeve lies over more of the bend than rounding leaves.
bool lies_over(const Sleeve& sleeve, const Bend& bend);

/// True where the whole of a bend lies in the sleeve.
bool lies_over_all(const Sleeve& sleeve, const Bend& bend);

}  // namespace linewright
