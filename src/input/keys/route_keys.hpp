#pragma once
// Keys of a project file's `routes` and `bundles`.

#include "input/key_spec.hpp"
#include "input/keys/cable_keys.hpp"
#include "input/keys/network_keys.hpp"
#include "input/keys/place_keys.hpp"
#include "model/network.hpp"

namespace linewright {

/// No pulley's groove in a light aeroplane is larger [common practice, no source].
inline constexpr double largest_groove_in = 24;

inline constexpr std::array system_kinds{Choice<SystemKind>{"static", SystemKind::static_air},
                                         Choice<SystemKind>{"pitot", SystemKind::pitot},
                                         Choice<SystemKind>{"alpha", SystemKind::alpha},
                                         Choice<SystemKind>{"vent", SystemKind::vent},
                                         Choice<SystemKind>{"cable", SystemKind::cable},
                                         Choice<SystemKind>{"wire", SystemKind::wire},
                                         Choice<SystemKind>{"rod", SystemKind::rod},
                                         Choice<SystemKind>{"push-pull", SystemKind::push_pull}};
inline constexpr auto system_kind_words = words_of(system_kinds);

inline constexpr std::array hold_kinds{
    Choice<HoldKind>{"clamp", HoldKind::clamp}, Choice<HoldKind>{"grommet", HoldKind::grommet},
    Choice<HoldKind>{"bushing", HoldKind::bushing},
    Choice<HoldKind>{"fairlead", HoldKind::fairlead}, Choice<HoldKind>{"pulley", HoldKind::pulley}};
inline constexpr auto hold_words = words_of(hold_kinds);

inline constexpr std::array pulley_givens{Choice<PointGiven>{"corner", PointGiven::corner},
                                          Choice<PointGiven>{"centre", PointGiven::centre}};
inline constexpr auto pulley_given_words = words_of(pulley_givens);

/// How a line goes through a fairlead.
enum class Passing { guided, free };

inline constexpr std::array passings{Choice<Passing>{"guided", Passing::guided},
                                     Choice<Passing>{"free", Passing::free}};
inline constexpr auto passing_words = words_of(passings);

inline constexpr std::array point_keys{
    plain_key(
        "at", KeyKind::place, Need::sometimes,
        "the corner of the path, where its legs, drawn on, meet; or `on`, `through`, `spaced`"),
    number_key("bend", Need::never, NumberSpec{"a bend radius"},
               "bend radius to the centreline; absent: the line's usual one"),
    word_key("hold", Need::never, "a hold", hold_words, "the support that stands there"),
    name_key("to", KeyKind::name, Need::never, Named::part,
             "the part that the support is fixed to; with `hold`"),
    name_key("through", KeyKind::name, Need::never, Named::hole, "the frame's hole it stands in"),
    number_key(
        "diameter", Need::sometimes,
        NumberSpec{"a groove diameter", Dimension::length, Sign::positive, largest_groove_in},
        "of its groove, where the cable lies; needed of a pulley", "a pulley"),
    plain_key("axis", KeyKind::direction, Need::sometimes,
              "direction of its spindle, of any length; needed with `given: centre`", "a pulley"),
    word_key("given", Need::never, "how a pulley is given", pulley_given_words,
             "what `at` is: the path's corner, or the spindle's centre; absent: corner",
             "a pulley"),
    number_key("guards", Need::sometimes,
               NumberSpec{.words = "a number of guards",
                          .dimension = Dimension::plain,
                          .sign = Sign::not_negative,
                          .largest = 64,
                          .whole = true},
               "pins that keep a slack cable in its groove, 0 for none; needed with `guard_gap`",
               "a pulley"),
    number_key("guard_gap", Need::never, NumberSpec{"a gap", Dimension::length, Sign::positive},
               "between its flange's rim and a guard", "a pulley"),
    number_key(
        "outside", Need::never,
        NumberSpec{"a pulley's diameter", Dimension::length, Sign::positive, largest_groove_in},
        "over its flanges; absent: the cable's diameter beyond the groove all round", "a pulley"),
    number_key("width", Need::never,
               NumberSpec{"a pulley's width", Dimension::length, Sign::positive, largest_groove_in},
               "over its flanges, along the spindle; absent: two of the cable's diameters",
               "a pulley"),
    number_key("bore", Need::sometimes, NumberSpec{"a bore"},
               "its inner diameter; needed with `passes: free`",
               "a fairlead, a grommet or a bushing"),
    word_key("passes", Need::never, "how the cable passes a fairlead", passing_words,
             "free: the cable goes through without touching; absent: guided", "a fairlead"),
    number_key("spaced", Need::never, NumberSpec{"a spacing"},
               "in place of `at`: supports between the points before and after, no farther apart"),
};
inline constexpr auto all_point_keys = joined(point_keys, on_part_keys);
inline constexpr MapSpec point_map{"a point", all_point_keys};

inline constexpr NumberSpec along_number{"a distance along the line", Dimension::length,
                                         Sign::not_negative};

inline constexpr std::array sleeve_keys{
    number_key("from", Need::always, along_number, "where it begins, along the route"),
    number_key("to", Need::always, along_number, "where it ends, along the route"),
    name_key("line", KeyKind::name, Need::never, Named::line,
             "the tube or hose it is cut from, in place of the three keys below"),
    number_key("bore", Need::never, NumberSpec{"a bore"}, "its inner diameter"),
    number_key("outside", Need::never, NumberSpec{"an outside diameter"}, "its outside diameter"),
    number_key("minimum_bend_radius", Need::never, NumberSpec{"a bend radius"},
               "least radius it stands, to its centreline"),
};
inline constexpr MapSpec sleeve_map{"a sleeve", sleeve_keys};

inline constexpr std::string_view tube_route = "a route of a tube or a hose";
inline constexpr std::string_view cable_route = "a route of system cable";
inline constexpr std::string_view wire_route = "a route of system wire";
inline constexpr std::string_view control_route = "a route of system cable, rod or push-pull";
inline constexpr std::string_view rod_route = "a route of system rod";
inline constexpr std::string_view push_pull_route = "a route of system push-pull";
inline constexpr std::string_view bendable_route = "a route that is no rod";

inline constexpr std::string_view clamped_route = "a route of tube, hose or wire";
inline constexpr NumberSpec run_out_number{"a run-out", Dimension::length, Sign::not_negative};

inline constexpr NumberSpec swivel_number{"a swivel's angle", Dimension::angle, Sign::positive, 90};

inline constexpr std::array run_out_keys{
    number_key("from", Need::always, run_out_number, "at its `from`, to the middle of the pin"),
    number_key("to", Need::always, run_out_number, "at its `to`, to the middle of the pin"),
    map_key("from_arm", KeyKind::map, Need::never, arm_map,
            "what its pin at `from` goes round on; absent: it runs straight out"),
    map_key("to_arm", KeyKind::map, Need::never, arm_map,
            "what its pin at `to` goes round on; absent: it runs straight out"),
    number_key("swivel", Need::never, swivel_number,
               "the most that its ends may turn off the line of the casing, by their maker"),
};
inline constexpr MapSpec run_out_map{"a run-out", run_out_keys};

inline constexpr NumberSpec rod_end_angle_number{"a rod end's angle", Dimension::angle,
                                                 Sign::positive, 90};

inline constexpr std::array route_keys{
    own_name_key(Named::route, "for waivers, options and results"),
    system_key("system", Need::always, "the kind of a system", system_kind_words,
               "what it carries; \"static: alternate\" for a second system of a kind"),
    name_key("line", KeyKind::name, Need::always, Named::line,
             "what it is made of: a name of the catalogue or of `lines`"),
    name_key("from", KeyKind::name, Need::always, Named::node, "the node it begins at"),
    name_key("to", KeyKind::name, Need::always, Named::node, "the node it ends at"),
    text_key("from_port", Need::sometimes, "a port",
             "the port of `from` that it begins at; needed where that does not follow", tube_route),
    text_key("to_port", Need::sometimes, "a port",
             "the port of `to` that it ends at; needed where that does not follow", tube_route),
    number_key("length", Need::never, NumberSpec{"a length"}, "of a hose: its free length as cut"),
    map_key("points", KeyKind::maps, Need::never, point_map,
            "corners and supports between its nodes, in order", bendable_route),
    text_key("points_from", Need::never, "the name of a file",
             "in place of `points`: a table with columns fs, bl, wl and a point's other keys",
             bendable_route),
    plain_key("straight", KeyKind::flag, Need::never,
              "true: points without `at` lie on the straight lines between the others",
              bendable_route),
    map_key("sleeves", KeyKind::maps, Need::never, sleeve_map, "guard tubes over parts of it",
            bendable_route),
    map_key("attached", KeyKind::maps, Need::never, attachment_map,
            "turnbuckles, terminals, splices and stops on it", bendable_route),
    name_key("supports_on", KeyKind::names, Need::never, Named::part,
             "the only parts that `suggest` may clamp it to; absent: all channels and frames",
             clamped_route),
    text_key("control", Need::never, "a control",
             "what it works: rudder, elevator, aileron, trim, any word", control_route),
    plain_key("primary", KeyKind::flag, Need::never,
              "whether its control is a primary one; absent: unless the control is trim",
              control_route),
    map_key("tension", KeyKind::map, Need::never, tension_map, "its tension", cable_route),
    map_key("travel", KeyKind::map, Need::never, travel_map, "how far it moves along itself",
            control_route),
    number_key("rod_end_angle", Need::never, rod_end_angle_number,
               "the most that its end bearings can tilt to either side", rod_route),
    map_key("run_out", KeyKind::map, Need::never, run_out_map,
            "how far the wire stands out of the casing at its ends, at neutral", push_pull_route),
    map_key("ends", KeyKind::map, Need::never, cable_ends_map, "what takes hold of its two nodes",
            cable_route),
    number_key("lever_ratio", Need::sometimes, lever_ratio_number,
               "pull on the cable for each pound at stick, wheel or pedal; needed with "
               "`pilot_force`",
               cable_route),
    number_key("pilot_force", Need::never, pilot_force_number,
               "limit force at stick, wheel or pedal; absent: the most of 14 CFR 23.397(b)",
               cable_route),
    word_key("worked_by", Need::never, "what a control is worked by", control_grip_words,
             "what the pilot holds, on an elevator or ailerons; absent: stick", cable_route),
    plain_key("tied", KeyKind::flag, Need::never,
              "whether ties hold the bundle together between its supports", wire_route),
    number_key("airframe_stiffness", Need::never, airframe_stiffness_number,
               "force that brings its two ends an inch nearer; absent: the project's", cable_route),
};
inline constexpr auto all_route_keys = joined(route_keys, mirror_keys);
inline constexpr MapSpec route_map{"a route", all_route_keys};

inline constexpr std::array bundle_keys{
    own_name_key(Named::bundle, "for results"),
    name_key("routes", KeyKind::names, Need::always, Named::route,
             "the lines tied to each other, two or more"),
    number_key("from", Need::always, along_number, "where it begins, along the first of them"),
    number_key("to", Need::always, along_number, "where it ends, along the first of them"),
    number_key("ties", Need::always, NumberSpec{"a distance between ties"}, "from tie to tie"),
};
inline constexpr MapSpec bundle_map{"a bundle", bundle_keys};

}  // namespace linewright
