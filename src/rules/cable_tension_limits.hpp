#pragma once
// The limits of `cable-tension`, and what its judgements share.

#include <array>
#include <string>
#include <string_view>

#include "physics/pilot_force.hpp"
#include "rules/rule.hpp"

namespace linewright {

inline constexpr std::string_view pilot_source =
    "14 CFR 23.397(b): limit pilot forces, to 5,000 lb";

constexpr LimitRow most_force(std::string_view subject, const PilotForce& row) {
  return {subject, row.most_lbf, "lbf", pilot_source, Mark::verified, Verdict::fail};
}

constexpr LimitRow least_force(std::string_view subject, const PilotForce& row) {
  return {subject, row.least_lbf, "lbf", pilot_source, Mark::verified, Verdict::fail};
}

inline constexpr std::array<LimitRow, 10> cable_tension_limits{{
    {"tension at the coldest, at least", 0, "lbf",
     "14 CFR 23.689(a)(2): no hazardous change of tension with temperature", Mark::verified,
     Verdict::fail},
    {"breaking strength over limit load, at least", 1.5, "", "14 CFR 23.303, factor of safety",
     Mark::from_memory, Verdict::fail},
    {"tension at the hottest, share of breaking strength, at most", 0.6, "",
     "AC 43.13-1B: the load that swaged ends are proved to", Mark::verified_secondary,
     Verdict::fail},
    {"stated limit load, share of pilot force times lever ratio, at least", 1, "", pilot_source,
     Mark::verified, Verdict::fail},
    most_force("limit force on a rudder pedal, unless pilot_force says", pilot_forces[0]),
    least_force("pilot_force on a rudder pedal, at least", pilot_forces[0]),
    most_force("limit force on an elevator stick, unless pilot_force says", pilot_forces[1]),
    least_force("pilot_force on an elevator stick or wheel, at least", pilot_forces[1]),
    most_force("limit force on an aileron stick, unless pilot_force says", pilot_forces[2]),
    least_force("pilot_force on an aileron stick, at least", pilot_forces[2]),
}};
/// Its rows by name.
inline constexpr const LimitRow& taut = cable_tension_limits[0];
inline constexpr const LimitRow& safety_factor = cable_tension_limits[1];
inline constexpr const LimitRow& proof_share = cable_tension_limits[2];
inline constexpr const LimitRow& covers_pilot = cable_tension_limits[3];
/// Where the pilot's forces begin, two rows a control in the order of `pilot_forces`.
inline constexpr std::size_t first_force_row = 4;

inline constexpr double tension_rounding_lbf = 1e-6;

/// At the middle of the cable, in pounds-force, verdict still unknown. The route's tension must be
/// stated.
Judgement tension_judgement(const PreparedRoute& route);

/// `judgement` as it stands where `row` cannot be judged.
Judgement not_judged(Judgement judgement, const LimitRow& row, const std::string& message,
                     const std::string& mend);

std::string tension_words(double lbf);       ///< "28.2 lbf"
std::string tension_rounded_up(double lbf);  ///< "29 lbf"

/// The mend of a cable too weak: one that breaks at `breaking_lbf` or more.
std::string stronger_cable(const RuleContext& context, const Line& line, double breaking_lbf);

}  // namespace linewright
