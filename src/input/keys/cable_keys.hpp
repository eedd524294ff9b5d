#pragma once
// Keys of what a route of system cable says of its ends, its turnbuckles and its forces.

#include "input/key_spec.hpp"
#include "model/control_cable.hpp"

namespace linewright {

/// No swaged terminal's grip in a light aeroplane is longer [common practice, no source].
inline constexpr double largest_grip_in = 6;

/// Below these a figure is a slip, and what is divided by it loses all meaning.
inline constexpr double smallest_lever_ratio = 0.01;
inline constexpr double smallest_stiffness_lbf_per_in = 1;
inline constexpr double smallest_force_lbf = 0.01;

inline constexpr NumberSpec tension_number{"a tension", Dimension::force, Sign::positive, 1e6,
                                           smallest_force_lbf};
inline constexpr NumberSpec travel_number{"a travel", Dimension::length, Sign::not_negative};
inline constexpr NumberSpec turnbuckle_length_number{"the length of a turnbuckle"};
inline constexpr NumberSpec lever_ratio_number{"a lever ratio", Dimension::plain, Sign::positive,
                                               100, smallest_lever_ratio};
inline constexpr NumberSpec pilot_force_number{"a pilot force", Dimension::force, Sign::positive,
                                               10'000, smallest_force_lbf};
inline constexpr NumberSpec airframe_stiffness_number{"an airframe stiffness", Dimension::stiffness,
                                                      Sign::positive, 1e8,
                                                      smallest_stiffness_lbf_per_in};

inline constexpr std::array cable_end_kinds{Choice<CableEndKind>{"swaged", CableEndKind::swaged},
                                            Choice<CableEndKind>{"thimble", CableEndKind::thimble}};
inline constexpr auto cable_end_words = words_of(cable_end_kinds);

inline constexpr std::array end_joints{Choice<EndJoint>{"fixed", EndJoint::fixed},
                                       Choice<EndJoint>{"pin", EndJoint::pin},
                                       Choice<EndJoint>{"ball", EndJoint::ball}};
inline constexpr auto end_joint_words = words_of(end_joints);

inline constexpr std::array control_grips{Choice<ControlGrip>{"stick", ControlGrip::stick},
                                          Choice<ControlGrip>{"wheel", ControlGrip::wheel}};
inline constexpr auto control_grip_words = words_of(control_grips);

inline constexpr std::array cable_end_keys{
    word_key("kind", Need::always, "the kind of an end", cable_end_words,
             "swaged: pressed into a fork, eye, ball or stud; thimble: round an eye and back"),
    number_key("takes_up", Need::sometimes,
               NumberSpec{"what a terminal takes up", Dimension::length, Sign::not_negative},
               "from the pin's middle, or the turnbuckle's end, to where the cable comes out",
               "a swaged end"),
    number_key("grip", Need::sometimes,
               NumberSpec{"a grip", Dimension::length, Sign::positive, largest_grip_in},
               "how far the cable goes into the terminal", "a swaged end"),
    number_key("allowance", Need::sometimes, NumberSpec{"an allowance"},
               "cable beyond the pin's middle, round and back to its cut end", "a thimble"),
    word_key("joint", Need::never, "the joint of an end", end_joint_words,
             "what it turns on: fixed, a pin that lies along the part's axis, or a ball or link "
             "that turns any way"),
};
inline constexpr MapSpec cable_end_map{"an end", cable_end_keys};

inline constexpr std::array cable_ends_keys{
    map_key("from", KeyKind::map, Need::sometimes, cable_end_map,
            "what takes hold of the side towards the route's `from`; this, `to` or both"),
    map_key("to", KeyKind::map, Need::sometimes, cable_end_map,
            "what takes hold of the side towards the route's `to`; this, `from` or both"),
};
inline constexpr MapSpec cable_ends_map{"a cable's ends", cable_ends_keys};

inline constexpr std::array adjustment_keys{
    number_key("shortest", Need::always, turnbuckle_length_number,
               "screwed in, measured as its `length` is"),
    number_key("longest", Need::always, turnbuckle_length_number,
               "as far out as leaves three threads in sight at either end"),
};
inline constexpr MapSpec adjustment_map{"an adjustment", adjustment_keys};

inline constexpr std::array attachment_keys{
    text_key("kind", Need::always, "the kind of an attachment",
             "turnbuckle, terminal, splice, stop: any words"),
    number_key("at", Need::always,
               NumberSpec{"a distance along the line", Dimension::length, Sign::not_negative},
               "its middle, along the route from its `from`, with the controls neutral"),
    number_key("length", Need::always, NumberSpec{"a length"}, "along the cable"),
    number_key("diameter", Need::always, NumberSpec{"a diameter"}, "its largest"),
    map_key("adjustment", KeyKind::map, Need::never, adjustment_map, "how far its length goes",
            "a turnbuckle"),
    map_key("ends", KeyKind::map, Need::never, cable_ends_map, "what takes hold of either side",
            "a turnbuckle"),
};
inline constexpr MapSpec attachment_map{"an attachment", attachment_keys};

inline constexpr std::array tension_keys{
    number_key("rigged", Need::always, tension_number,
               "as rigged, at the rigging temperature of the project"),
    number_key("limit_load", Need::never, tension_number,
               "at the limit load; absent: the pilot's force times the lever ratio"),
};
inline constexpr MapSpec tension_map{"a tension", tension_keys};

inline constexpr std::array travel_keys{
    number_key("forward", Need::always, travel_number,
               "how far the cable moves forward from neutral"),
    number_key("aft", Need::always, travel_number, "how far the cable moves aft from neutral"),
};
inline constexpr MapSpec travel_map{"a travel", travel_keys};

}  // namespace linewright
