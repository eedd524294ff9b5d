#pragma once
// Keys of a project file's `structure`.

#include "input/key_spec.hpp"
#include "input/keys/place_keys.hpp"
#include "model/sheet.hpp"
#include "model/structure.hpp"
#include "model/units.hpp"

namespace linewright {

inline constexpr NumberSpec diameter_number{"a diameter"};
inline constexpr NumberSpec bore_number{"a bore"};
inline constexpr NumberSpec edge_radius_number{"an edge radius", Dimension::length, Sign::positive,
                                               1};
inline constexpr KeySpec edge_radius_key =
    number_key("edge_radius", Need::never, edge_radius_number, "of the round that it turns on",
               "a rolled or flanged edge");
inline constexpr NumberSpec station_number{"a station", Dimension::length, Sign::any};
inline constexpr NumberSpec buttock_line_number{"a buttock line", Dimension::length, Sign::any};
inline constexpr NumberSpec waterline_number{"a waterline", Dimension::length, Sign::any};
inline constexpr NumberSpec thickness_number{"a thickness", Dimension::length, Sign::positive,
                                             largest_sheet_thickness_in};

inline constexpr std::array hole_edges{Choice<EdgeGuard>{"bare", EdgeGuard::bare},
                                       Choice<EdgeGuard>{"rolled", EdgeGuard::rolled},
                                       Choice<EdgeGuard>{"flanged", EdgeGuard::flanged},
                                       Choice<EdgeGuard>{"edge-trim", EdgeGuard::edge_trim},
                                       Choice<EdgeGuard>{"grommet", EdgeGuard::grommet},
                                       Choice<EdgeGuard>{"bushing", EdgeGuard::bushing}};
inline constexpr auto hole_edge_words = words_of(hole_edges);

inline constexpr std::array channel_edges{Choice<EdgeGuard>{"bare", EdgeGuard::bare},
                                          Choice<EdgeGuard>{"rolled", EdgeGuard::rolled},
                                          Choice<EdgeGuard>{"flanged", EdgeGuard::flanged},
                                          Choice<EdgeGuard>{"edge-trim", EdgeGuard::edge_trim}};
inline constexpr auto channel_edge_words = words_of(channel_edges);

inline constexpr KeySpec half_key =
    plain_key("half", KeyKind::flag, Need::never,
              "true where its `outline` is what lies right of BL 0, and the left is its image");

inline constexpr std::array hole_keys{
    own_name_key(Named::hole, "for a point of a route to say that it goes `through`"),
    plain_key(
        "centre", KeyKind::plane_point, Need::sometimes,
        "middle of a round hole, drawn as the frame is; or {on: ROUTE}; a hole has this or an "
        "`outline`"),
    number_key("diameter", Need::sometimes, diameter_number,
               "of a round hole, as cut; needed with `centre`"),
    plain_key("outline", KeyKind::plane_points, Need::sometimes,
              "corners of a hole that is not round, drawn as the frame is, the last joined to the "
              "first"),
    half_key,
    word_key("edge", Need::never, "an edge", hole_edge_words, "what guards its edge; absent: bare"),
    edge_radius_key,
    number_key("bore", Need::never, bore_number, "inner diameter of what guards its edge",
               "a grommet or a bushing"),
};
inline constexpr auto all_hole_keys = joined(hole_keys, mirror_keys);
inline constexpr MapSpec hole_map{"a hole", all_hole_keys};

inline constexpr std::array wall_hole_keys{
    own_name_key(Named::hole, "for a point of a route to say that it goes `through`"),
    plain_key("at", KeyKind::place, Need::always,
              "a place on its axis, on the wall it goes through"),
    number_key("diameter", Need::always, diameter_number, "as cut"),
    word_key("edge", Need::never, "an edge", hole_edge_words, "what guards its edge; absent: bare"),
    edge_radius_key,
    number_key("bore", Need::never, bore_number, "inner diameter of what guards its edge",
               "a grommet or a bushing"),
};
inline constexpr auto all_wall_hole_keys = joined(wall_hole_keys, mirror_keys);
inline constexpr MapSpec wall_hole_map{"a hole in a wall", all_wall_hole_keys};

inline constexpr std::array plane_keys{
    plain_key("point", KeyKind::place, Need::always,
              "a place in the middle of the web: [0, 0] of the outline"),
    plain_key("normal", KeyKind::direction, Need::always, "square to the web, of any length"),
    plain_key(
        "up", KeyKind::direction, Need::always,
        "where the second number goes; the first goes right of it, the normal pointing at you"),
};
inline constexpr MapSpec plane_map{"a plane", plane_keys};

inline constexpr std::array frame_keys{
    own_name_key(Named::part, "for a support to say what it is fixed `to`"),
    number_key("station", Need::sometimes, station_number,
               "FS of the middle of its web, drawn in BL and WL; a frame has this or one of the "
               "next"),
    number_key("buttock_line", Need::sometimes, buttock_line_number,
               "BL of the middle of its web, a rib, drawn in FS and WL"),
    number_key("waterline", Need::sometimes, waterline_number,
               "WL of the middle of its web, a floor, drawn in FS and BL"),
    map_key("plane", KeyKind::map, Need::sometimes, plane_map,
            "where its web stands slanted, drawn from the plane's `point`"),
    number_key("thickness", Need::sometimes, thickness_number,
               "of its web; needed where it is not `like` another frame"),
    plain_key("outline", KeyKind::plane_points, Need::sometimes,
              "corners of its web, the last joined to the first; needed where it is not `like` "
              "another"),
    half_key,
    name_key("like", KeyKind::name, Need::never, Named::part,
             "a frame whose outline, thickness and holes it has, where it states none of its own"),
    plain_key("moved", KeyKind::plane_point, Need::never,
              "with `like`: how far what it takes over lies off there, two lengths in its plane"),
    map_key("holes", KeyKind::maps, Need::never, hole_map,
            "the holes in its web; names of those that another is `like` begin with the frame's"),
    text_key("holes_from", Need::never, "the name of a file",
             "in place of `holes`: a table with columns bl, wl and a hole's other keys"),
};
inline constexpr auto all_frame_keys = joined(frame_keys, mirror_keys);
inline constexpr MapSpec frame_map{"a frame", all_frame_keys};

inline constexpr std::array channel_keys{
    own_name_key(Named::part, "for a support to say what it is fixed `to`"),
    plain_key("path", KeyKind::places, Need::always, "places that its section is swept through"),
    plain_key("section", KeyKind::plane_points, Need::always,
              "corners of its section, about the path, in the plane that the path mainly crosses"),
    number_key("thickness", Need::always, thickness_number, "of its sheet"),
    word_key("edge", Need::never, "an edge", channel_edge_words,
             "what guards its two long free edges; absent: bare"),
    edge_radius_key,
    map_key("holes", KeyKind::maps, Need::never, wall_hole_map, "round holes in its walls"),
};
inline constexpr auto all_channel_keys = joined(channel_keys, mirror_keys);
inline constexpr MapSpec channel_map{"a channel", all_channel_keys};

inline constexpr std::array panel_keys{
    own_name_key(Named::part, "for a support to say what it is fixed `to`"),
    plain_key("corners", KeyKind::places, Need::always,
              "its corners, in order round it; with `over` two corners of those outlines, from 1"),
    name_key("over", KeyKind::names, Need::never, Named::part,
             "the frames that it is stretched over, in order: it is flat or warped between each "
             "two"),
    number_key("thickness", Need::never, thickness_number, "of its sheet; absent: 0.025 in"),
    name_key("closure", KeyKind::name, Need::never, Named::closure, "the closure it belongs to"),
    map_key("holes", KeyKind::maps, Need::never, wall_hole_map, "round holes in it"),
};
inline constexpr auto all_panel_keys = joined(panel_keys, mirror_keys);
inline constexpr MapSpec panel_map{"a panel", all_panel_keys};

inline constexpr std::array box_keys{
    plain_key("min", KeyKind::place, Need::always, "its corner with the lesser numbers"),
    plain_key("max", KeyKind::place, Need::always, "its corner with the greater numbers"),
};
inline constexpr MapSpec box_map{"a box", box_keys};

inline constexpr std::array cylinder_keys{
    plain_key("from", KeyKind::place, Need::always, "where its axis begins"),
    plain_key("to", KeyKind::place, Need::always, "where its axis ends"),
    number_key("diameter", Need::always, diameter_number, "across it"),
};
inline constexpr MapSpec cylinder_map{"a cylinder", cylinder_keys};

inline constexpr std::array solid_keys{
    own_name_key(Named::part, "for a support to say what it is fixed `to`"),
    map_key("box", KeyKind::map, Need::sometimes, box_map, "its shape; or a `cylinder`"),
    map_key("cylinder", KeyKind::map, Need::sometimes, cylinder_map, "its shape; or a `box`"),
    map_key("holes", KeyKind::maps, Need::never, wall_hole_map, "round holes in a box's walls"),
};
inline constexpr auto all_solid_keys = joined(solid_keys, mirror_keys);
inline constexpr MapSpec solid_map{"a solid", all_solid_keys};

inline constexpr std::array mover_keys{
    own_name_key(Named::part, "for messages to say what moves"),
    plain_key("pivot", KeyKind::place, Need::always, "a place on the axis it turns about"),
    plain_key("axis", KeyKind::direction, Need::always, "direction of that axis, of any length"),
    plain_key("points", KeyKind::pins, Need::always,
              "the chain of places that makes its shape; where a line is pinned to it, the node"),
    number_key("radius", Need::always, NumberSpec{"a radius"}, "of the chain, all round it"),
    pair_key("sweep", Need::always, "two angles [from, to]",
             NumberSpec{"a sweep", Dimension::angle, Sign::any, 360},
             "how far it turns from where it is drawn, by the right-hand rule"),
};
inline constexpr auto all_mover_keys = joined(mover_keys, mirror_keys);
inline constexpr MapSpec mover_map{"a mover", all_mover_keys};

inline constexpr std::array turn_axes{Choice<Vec3>{"FS", {1, 0, 0}}, Choice<Vec3>{"BL", {0, 1, 0}},
                                      Choice<Vec3>{"WL", {0, 0, 1}}};
inline constexpr auto turn_axis_words = words_of(turn_axes);

inline constexpr std::array turn_keys{
    word_key("about", Need::always, "the axis of a turn", turn_axis_words,
             "the axis through the origin that it turns about"),
    number_key("angle", Need::always, NumberSpec{"an angle", Dimension::angle, Sign::any, 360},
               "how far, by the right-hand rule"),
};
inline constexpr MapSpec turn_map{"a turn", turn_keys};

/// A mesh's unit in inches.
inline constexpr std::array mesh_units{
    Choice<double>{"in", 1.0}, Choice<double>{"mm", 1 / mm_per_in},
    Choice<double>{"m", 1000 / mm_per_in}, Choice<double>{"ft", 12}};
inline constexpr auto mesh_unit_words = words_of(mesh_units);

inline constexpr std::array mesh_keys{
    own_name_key(Named::part, "for a support to say what it is fixed `to`"),
    text_key("file", Need::always, "a file name",
             "its .stl, .obj or .glb, from the folder of the file that names it"),
    word_key("units", Need::never, "the units of a mesh", mesh_unit_words,
             "that its file is in; absent: metres of .glb, inches of others"),
    number_key("scale", Need::never, NumberSpec{"a scale", Dimension::plain, Sign::positive, 1e6},
               "what it is multiplied by, first of all; absent: 1"),
    map_key("rotate", KeyKind::maps, Need::never, turn_map, "how it is then turned, in this order"),
    plain_key("translate", KeyKind::place, Need::never, "where its origin then goes"),
    number_key("crease_angle", Need::never,
               NumberSpec{"a crease angle", Dimension::angle, Sign::positive, 180},
               "an edge that turns its surface by more is sharp; absent: 30 deg"),
    number_key("thickness", Need::never,
               NumberSpec{"a thickness", Dimension::length, Sign::not_negative,
                          largest_sheet_thickness_in},
               "of the sheet whose middle its faces are; absent or 0: they are its surface"),
};
inline constexpr MapSpec mesh_map{"a mesh", mesh_keys};

inline constexpr std::array structure_keys{
    map_key("frames", KeyKind::maps, Need::never, frame_map, "webs: frames, ribs and floors"),
    map_key("channels", KeyKind::maps, Need::never, channel_map,
            "thin sections swept along a path"),
    map_key("panels", KeyKind::maps, Need::never, panel_map, "skins and decks"),
    map_key("solids", KeyKind::maps, Need::never, solid_map, "volumes to keep out of"),
    map_key("movers", KeyKind::maps, Need::never, mover_map, "parts that turn about an axis"),
    map_key("meshes", KeyKind::maps, Need::never, mesh_map, "structure read from mesh files"),
};
inline constexpr MapSpec structure_map{"the structure", structure_keys};

}  // namespace linewright
