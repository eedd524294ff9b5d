#pragma once
// The limits of `cable-tension`, and what its judgements share.

#include <array>
#include <string>
#include <string_view>

#include "physics/pilot_force.hpp"
#include "rules/rule.hpp"
#include "rules/shared_limits.hpp"

namespace linewright {

inline constexpr std::string_view pilot_source =
    "14 CFR 23.397(b): limit pilot forces; the most of them to 5,000 lb, above it up to 1.18 times";

constexpr LimitRow most_force(std::string_view name, std::string_view subject,
                              const PilotForce& force) {
  return {.name = name,
          .subject = subject,
          .value = force.most_lbf,
          .unit = Unit::pound_force,
          .sense = LimitSense::at_most,
          .source = pilot_source,
          .mark = Mark::verified};
}

constexpr LimitRow least_force(std::string_view name, std::string_view subject,
                               const PilotForce& force) {
  return {.name = name,
          .subject = subject,
          .value = force.least_lbf,
          .unit = Unit::pound_force,
          .source = pilot_source,
          .mark = Mark::verified};
}

inline constexpr LimitRow taut{
    .name = "taut",
    .subject = "tension at the coldest",
    .value = 0,
    .unit = Unit::pound_force,
    .source = "14 CFR 23.689(a)(2): no hazardous change of tension with temperature",
    .mark = Mark::verified};
inline constexpr LimitRow safety_factor{.name = "safety-factor",
                                        .subject = "breaking strength over limit load",
                                        .value = 1.5,
                                        .unit = Unit::none,
                                        .source = "14 CFR 23.303, factor of safety",
                                        .mark = Mark::from_memory};
inline constexpr LimitRow covers_pilot{.name = "covers-pilot",
                                       .subject = "stated limit load",
                                       .value = 1,
                                       .unit = Unit::pound_force,
                                       .source = pilot_source,
                                       .mark = Mark::verified,
                                       .times = "pilot force times lever ratio"};
inline constexpr LimitRow paired{
    .name = "cables-of-a-control",
    .subject = "cables that work a control which a cable names",
    .value = 2,
    .unit = Unit::none,
    .source = "a cable pulls one way: another one brings the control back, and is slack meanwhile",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
inline constexpr LimitRow airframe_gives{
    .name = "airframe-gives",
    .subject = "how far the airframe gives under the rigging tension",
    .value = 0.25,
    .sense = LimitSense::at_most,
    .source =
        "structure that gives more would be seen to move while the cable is rigged; a "
        "stiffness that small hides slack",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};
/// In the order of `pilot_forces`.
inline constexpr std::array most_forces{
    most_force("rudder-most", "limit force on a rudder pedal, unless pilot_force says",
               pilot_forces[0]),
    most_force("elevator-most", "limit force on an elevator stick, unless pilot_force says",
               pilot_forces[1]),
    most_force("aileron-most", "limit force on an aileron stick, unless pilot_force says",
               pilot_forces[2]),
};
inline constexpr std::array least_forces{
    least_force("rudder-least", "pilot_force on a rudder pedal", pilot_forces[0]),
    least_force("elevator-least", "pilot_force on an elevator stick", pilot_forces[1]),
    least_force("aileron-least", "pilot_force on an aileron stick", pilot_forces[2]),
};
/// In the order of `wheel_forces`.
inline constexpr std::array most_wheel_forces{
    most_force("elevator-wheel-most", "limit force on an elevator wheel, unless pilot_force says",
               wheel_forces[0]),
    most_force("aileron-wheel-most",
               "couple on an aileron wheel, 50 D, as one force at its rim, unless pilot_force says",
               wheel_forces[1]),
};
inline constexpr std::array least_wheel_forces{
    least_force("elevator-wheel-least", "pilot_force on an elevator wheel", wheel_forces[0]),
    least_force("aileron-wheel-least", "pilot_force at the rim of an aileron wheel: 40 D",
                wheel_forces[1]),
};

inline constexpr auto cable_tension_limits = limit_table(
    {taut, safety_factor, proved_share, covers_pilot, paired, airframe_gives, most_forces[0],
     least_forces[0], most_forces[1], least_forces[1], most_wheel_forces[0], least_wheel_forces[0],
     most_forces[2], least_forces[2], most_wheel_forces[1], least_wheel_forces[1]});

/// At the middle of the cable, verdict still unknown. The route's tension must be stated.
Judgement tension_judgement(const RuleContext& context, const PreparedRoute& route);

/// `judgement` as it stands where `limit` cannot be judged.
Judgement not_judged(Judgement judgement, const Limit& limit, const std::string& message,
                     const std::string& mend);

std::string tension_words(double lbf);       ///< "28.2 lbf"
std::string tension_rounded_up(double lbf);  ///< "29 lbf"

/// The mend of a cable too weak: one that breaks at `breaking_lbf` or more.
std::string stronger_cable(const RuleContext& context, const Line& line, double breaking_lbf);

}  // namespace linewright
