#pragma once
// Keys of a project file's `built`: what was measured on the aeroplane.

#include "input/key_spec.hpp"
#include "input/keys/place_keys.hpp"

namespace linewright {

inline constexpr std::array built_keys{
    name_key("route", KeyKind::name, Need::always, Named::route, "the line that was measured"),
    text_key("support", Need::sometimes, "a support's number or name",
             "what holds it there, as `walk-round` numbers and names it, or the node at an end; "
             "or `distance`"),
    number_key("distance", Need::sometimes,
               NumberSpec{"a distance", Dimension::length, Sign::not_negative},
               "along the line as drawn, from its `from`; in place of `support`"),
    plain_key("at", KeyKind::place, Need::sometimes,
              "where it was measured to be; or `fs`, or `gap`"),
    number_key("fs", Need::sometimes, coordinate_number,
               "the FS it was measured at: it sits where the drawn line has that station"),
    number_key("gap", Need::sometimes, NumberSpec{"a gap", Dimension::length, Sign::not_negative},
               "free distance there between the line's surface and another"),
    text_key("to", Need::never, "the name of a part, a hole or a route",
             "with `gap`: the part, hole or route it was measured to; absent: what is drawn "
             "nearest"),
    text_key("on", Need::always, "a date", "the day it was measured: 2026-11-20"),
    text_key("by", Need::always, "initials", "who measured it"),
};
inline constexpr MapSpec built_map{"a measure", built_keys};

}  // namespace linewright
