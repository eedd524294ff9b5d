#pragma once
// What a route of system cable says of its ends, its turnbuckles and the lever that pulls it.
//
//   routes:
//     - ends:
//         from: {kind: swaged, takes_up: 2.0, grip: 1.0}
//         to: {kind: thimble, allowance: 4.5}
//       lever_ratio: 1.4
//       pilot_force: 130 lbf
//       airframe_stiffness: 1200 lbf/in
//       attached:
//         - {kind: turnbuckle, at: 58, length: 4.75, diameter: 0.44,
//            adjustment: {shortest: 4.0, longest: 5.5},
//            ends: {from: {kind: swaged, takes_up: 0, grip: 1.0}, to: …}}
//
//   key                 meaning
//   ends                what takes hold of either node, or of either side of a turnbuckle
//   kind: swaged        the cable is pressed into a fork, eye, ball or stud
//   kind: thimble       the cable goes round an eye and back through a sleeve or splice
//   takes_up            swaged: from the middle of the pin, or from the end of the
//                       turnbuckle's `length`, to where the cable comes out of the terminal
//   grip                swaged: how far the cable goes into the terminal
//   allowance           thimble: cable beyond the middle of the pin, round to its cut end
//   adjustment          a turnbuckle's length, measured as `length` is: screwed in, and as far
//                       out as leaves no more than three threads in sight at either end
//   lever_ratio         pull on the cable for each pound at the stick, wheel or pedal
//   pilot_force         there; absent: by `control`, see physics/pilot_force.hpp
//   airframe_stiffness  force that brings the cable's two ends an inch nearer to each other

#include <optional>

#include "input/field_reader.hpp"

namespace linewright {

/// Reads `ends`, `lever_ratio`, `pilot_force` and `airframe_stiffness` of a route.
void read_control_cable(FieldReader& fields, Route& route, ReadContext& context);

/// Reads `adjustment` and `ends` of an attachment. They belong to a turnbuckle.
void read_turnbuckle(FieldReader& fields, Attachment& attachment, ReadContext& context);

/// Refuses a force that is a slip for its smallness, and that nothing can be divided by. `words`:
/// "a tension".
void refuse_tiny_force(FieldReader& fields, std::string_view key, std::string_view words,
                       std::optional<double> force_lbf, ReadContext& context);

/// Reads `airframe_stiffness` of a route or of the project.
std::optional<double> read_airframe_stiffness(FieldReader& fields, ReadContext& context);

}  // namespace linewright
