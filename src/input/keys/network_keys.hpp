#pragma once
// Keys of a project file's `nodes` and `waivers`.

#include "input/key_spec.hpp"
#include "input/keys/place_keys.hpp"
#include "model/network.hpp"

namespace linewright {

inline constexpr std::array arm_keys{
    plain_key("pivot", KeyKind::place, Need::sometimes,
              "a place on the axis it turns about; this and `axis`, or `on`"),
    plain_key("axis", KeyKind::direction, Need::sometimes, "direction of that axis, of any length"),
    name_key("on", KeyKind::name, Need::never, Named::part,
             "the mover that it is of, whose pivot and axis are its own"),
};
inline constexpr MapSpec arm_map{"an arm", arm_keys};

inline constexpr std::array sector_keys{
    number_key("radius", Need::always, NumberSpec{"a sector's radius"},
               "of its groove, to the middle of the cable"),
    number_key(
        "wrap", Need::never, NumberSpec{"a wrap", Dimension::angle, Sign::not_negative, 3600},
        "of cable on it with the controls neutral, from where it leaves to where it is held"),
};
inline constexpr MapSpec sector_map{"a sector", sector_keys};

inline constexpr std::array loose_end_keys{
    name_key("until", KeyKind::name, Need::always, Named::task, "the task that connects it"),
    number_key("coil", Need::never, NumberSpec{"a coil", Dimension::length, Sign::not_negative},
               "length beyond the drawing that hangs there in a coil; absent: none"),
};
inline constexpr MapSpec loose_end_map{"a loose end", loose_end_keys};

inline constexpr std::array port_keys{
    plain_key("at", KeyKind::place, Need::always, "the middle of its face, where the tube begins"),
    plain_key("direction", KeyKind::direction, Need::always,
              "the way the tube leaves it, of any length"),
    number_key("insertion", Need::never,
               NumberSpec{"an insertion", Dimension::length, Sign::not_negative, 12},
               "how far the tube goes in past the face; absent: it ends there"),
};
inline constexpr MapSpec port_map{"a port", port_keys};

/// What is larger is no fitting of a small line [common practice, no source].
inline constexpr double largest_body_in = 12;

inline constexpr std::string_view node_with_fitting = "a node with a fitting";
inline constexpr std::string_view node_with_ports = "a node with ports";

inline constexpr std::array node_kinds{Choice<NodeKind>{"static-port", NodeKind::static_port},
                                       Choice<NodeKind>{"pitot-probe", NodeKind::pitot_probe},
                                       Choice<NodeKind>{"instrument", NodeKind::instrument},
                                       Choice<NodeKind>{"drain", NodeKind::drain},
                                       Choice<NodeKind>{"tee", NodeKind::tee},
                                       Choice<NodeKind>{"union", NodeKind::union_fitting},
                                       Choice<NodeKind>{"bulkhead", NodeKind::bulkhead},
                                       Choice<NodeKind>{"cap", NodeKind::cap},
                                       Choice<NodeKind>{"valve", NodeKind::valve},
                                       Choice<NodeKind>{"end", NodeKind::end},
                                       Choice<NodeKind>{"horn", NodeKind::horn},
                                       Choice<NodeKind>{"pedal", NodeKind::pedal}};
inline constexpr auto node_kind_words = words_of(node_kinds);

inline constexpr std::array node_keys{
    own_name_key(Named::node, "for routes to begin and end at"),
    word_key("kind", Need::always, "the kind of a node", node_kind_words, "what stands there"),
    plain_key("at", KeyKind::place, Need::sometimes,
              "where it is; of a cable's end, its pin's middle; or `on`, or `through`"),
    number_key("volume", Need::never,
               NumberSpec{"a volume", Dimension::volume, Sign::not_negative, 1e6},
               "of air in it, for the leak test and for how its pressure trails"),
    plain_key(
        "fixed", KeyKind::flag, Need::never,
        "whether structure holds it; absent: tees, unions, caps and ends hang on their lines"),
    map_key("arm", KeyKind::map, Need::never, arm_map,
            "what its end of the cable goes round on; absent: the end is taken as fixed",
            "a horn or a pedal"),
    name_key("through", KeyKind::name, Need::never, Named::hole,
             "in place of `at`: the hole that it is in the middle of"),
    map_key("sector", KeyKind::map, Need::never, sector_map,
            "a sector, quadrant or drum that its cable lies on, in place of `arm`",
            "a horn or a pedal"),
    plain_key("on_engine", KeyKind::flag, Need::never,
              "true where it shakes with the engine, on the engine's mounts"),
    plain_key("connector", KeyKind::flag, Need::never,
              "of wires: whether it is a connector, terminal block, panel or junction box"),
    map_key("loose", KeyKind::map, Need::never, loose_end_map,
            "the line hangs loose here until a task is done"),
    name_key("fitting", KeyKind::name, Need::never, Named::fitting,
             "a fitting of the catalogue or of `fittings`: tubes begin at the faces of its ports"),
    plain_key("direction", KeyKind::direction, Need::sometimes,
              "the way that port a points; b of a straight fitting or a tee points back; needed "
              "with `fitting`",
              node_with_fitting),
    plain_key("branch", KeyKind::direction, Need::sometimes,
              "the way that port b of an elbow or c of a tee points; needed of these",
              node_with_fitting),
    map_key("ports", KeyKind::named_maps, Need::never, port_map,
            "in place of `fitting`: where tubes begin, each port under its name"),
    number_key("body_diameter", Need::never,
               NumberSpec{"a body's diameter", Dimension::length, Sign::positive, largest_body_in},
               "of its body, nuts included, about the lines from `at` to each port",
               node_with_ports),
};
inline constexpr auto all_node_keys = joined(node_keys, on_part_keys, mirror_keys);
inline constexpr MapSpec node_map{"a node", all_node_keys};

inline constexpr std::array waiver_keys{
    text_key("rule", Need::always, "the name of a rule", "whose finding is accepted"),
    name_key("route", KeyKind::name, Need::always, Named::route, "that the finding is about"),
    plain_key("near", KeyKind::place, Need::sometimes,
              "only findings near this place; needed with `within`"),
    number_key("within", Need::sometimes, NumberSpec{"a distance"},
               "only findings this close to `near`; needed with it"),
    text_key("reason", Need::always, "a reason", "why it is accepted, shown with the finding"),
};
inline constexpr MapSpec waiver_map{"a waiver", waiver_keys};

}  // namespace linewright
