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

#include "input/keys/route_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

/// Reads `ends`, `lever_ratio`, `pilot_force` and `airframe_stiffness` of a route.
void read_control_cable(MapReader<route_map>& fields, Route& route, ReadContext& context);

/// Reads `adjustment` and `ends` of an attachment. They belong to a turnbuckle.
void read_turnbuckle(MapReader<attachment_map>& fields, Attachment& attachment,
                     ReadContext& context);

}  // namespace linewright
