#pragma once
// Keys by which a place follows from what is there.

#include "input/key_spec.hpp"

namespace linewright {

inline constexpr NumberSpec coordinate_number{"a coordinate", Dimension::length, Sign::any};

inline constexpr std::array<std::string_view, 6> side_words{"up",    "down",    "left",
                                                            "right", "forward", "aft"};

/// In place of `at`: a place on the surface of a channel, a panel or a frame.
inline constexpr std::array on_part_keys{
    name_key("on", KeyKind::name, Need::sometimes, Named::part,
             "in place of `at`: the channel, panel or frame on whose surface it is"),
    number_key("fs", Need::sometimes, coordinate_number,
               "its FS, where `on` or `straight` has the rest"),
    number_key("bl", Need::sometimes, coordinate_number,
               "its BL, where `on` or `straight` has the rest"),
    number_key("wl", Need::sometimes, coordinate_number,
               "its WL, where `on` or `straight` has the rest"),
    number_key("along", Need::sometimes,
               NumberSpec{"a distance along a channel", Dimension::length, Sign::not_negative},
               "with `on`: from the first point of the channel's path"),
    word_key("side", Need::sometimes, "a side", side_words,
             "with `on`: the side of it; needed where two sides serve"),
    number_key("off", Need::sometimes,
               NumberSpec{"a distance off a surface", Dimension::length, Sign::not_negative},
               "with `on`: of the line's middle off the surface; absent: as a clamp holds it"),
};

inline constexpr std::array mirror_keys{
    text_key("mirror", Need::never, "a name", "the name of its twin on the other side of BL 0"),
};

inline constexpr const KeySpec& fs_key = on_part_keys[1];
inline constexpr const KeySpec& bl_key = on_part_keys[2];
inline constexpr const KeySpec& wl_key = on_part_keys[3];
inline constexpr const KeySpec& along_key = on_part_keys[4];
inline constexpr const KeySpec& off_key = on_part_keys[6];

}  // namespace linewright
