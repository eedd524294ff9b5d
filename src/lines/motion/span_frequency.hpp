#pragma once
// How the free lengths of line between supports swing by themselves.

#include <string>
#include <vector>

#include "lines/free_run.hpp"
#include "physics/deflection.hpp"

namespace linewright {

/// Something that is not known, and what to do about it.
struct Missing {
  std::string what;  ///< empty for nothing
  std::string mend;
};

/// One run with what it takes to say how it swings.
struct Swing {
  const FreeRun* run = nullptr;
  const RunLeg* leg = nullptr;  ///< the longest
  const PreparedRoute* route = nullptr;
  Missing missing;  ///< of what the frequency follows from
  double frequency_hz = 0;
  double length_power = 1;  ///< the frequency falls with this power of the length
  bool is_cable() const { return route->line->kind == LineKind::cable; }
  bool held() const { return run->first.held() && run->last.held(); }
};

/// A length of tube as a beam; its weight and Young's modulus must be known.
EvenBeam beam_of(const Line& tube, double length_in);

/// Every run of cable and tube. A cable is a taut string at its rigged tension; a tube is a
/// straight beam of its own weight, clamped where something holds it. A run over a hanging fitting
/// swings as the line of its longest leg. `runs` must outlive the result.
std::vector<Swing> span_swings(const PreparedProject& prepared, const std::vector<FreeRun>& runs);

}  // namespace linewright
