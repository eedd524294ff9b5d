#pragma once
// Keys of a project file itself.

#include "input/key_spec.hpp"
#include "input/keys/built_keys.hpp"
#include "input/keys/closure_keys.hpp"
#include "input/keys/fitting_keys.hpp"
#include "input/keys/line_keys.hpp"
#include "input/keys/network_keys.hpp"
#include "input/keys/route_keys.hpp"
#include "input/keys/structure_keys.hpp"

namespace linewright {

inline constexpr NumberSpec temperature_number{"a temperature", Dimension::temperature, Sign::any,
                                               400};
inline constexpr NumberSpec load_factor_number{"a load factor", Dimension::plain, Sign::any, 100};
inline constexpr NumberSpec propeller_speed_number{"a propeller speed", Dimension::rotational_speed,
                                                   Sign::positive, 100'000};

inline constexpr std::array temperature_keys{
    number_key("min", Need::always, temperature_number, "the coldest that its lines see"),
    number_key("rigged", Need::always, temperature_number, "at which cables are rigged"),
    number_key("max", Need::always, temperature_number, "the hottest that its lines see"),
};
inline constexpr MapSpec temperature_map{"a temperature range", temperature_keys};

inline constexpr std::array load_factor_keys{
    number_key("positive", Need::always, load_factor_number, "the greatest, above zero"),
    number_key("negative", Need::always, load_factor_number, "the least, zero or below"),
};
inline constexpr MapSpec load_factor_map{"a load factor", load_factor_keys};

inline constexpr std::array excitation_keys{
    pair_key("propeller_rpm", Need::always, "two speeds [idle, redline]", propeller_speed_number,
             "of the propeller"),
    pair_key("cruise_rpm", Need::never, "two speeds [slowest, fastest]", propeller_speed_number,
             "speeds that are held for long, to judge resonance at"),
    number_key("blades", Need::always,
               NumberSpec{.words = "a number of blades",
                          .dimension = Dimension::plain,
                          .largest = 64,
                          .whole = true},
               "of the propeller"),
};
inline constexpr MapSpec excitation_map{"an excitation", excitation_keys};

inline constexpr std::array attitude_keys{
    own_name_key(Named::attitude, "for messages to say where water stands"),
    number_key("pitch", Need::sometimes, NumberSpec{"a pitch", Dimension::angle, Sign::any, 90},
               "nose up; this, `roll` or both"),
    number_key("roll", Need::sometimes, NumberSpec{"a roll", Dimension::angle, Sign::any, 180},
               "right wing down; this, `pitch` or both"),
};
inline constexpr MapSpec attitude_map{"an attitude", attitude_keys};

/// What a file's bare lengths are in.
inline constexpr std::array bare_lengths{Choice<BareLength>{"in", BareLength::inch},
                                         Choice<BareLength>{"mm", BareLength::millimetre}};
inline constexpr auto bare_length_words = words_of(bare_lengths);

/// What every file has to say of itself.
inline constexpr std::array file_keys{
    number_key("linewright", Need::always,
               NumberSpec{"the format", Dimension::plain, Sign::any, 1e9},
               "the format of the file: 1"),
    word_key("units", Need::never, "the units of a file", bare_length_words,
             "what bare lengths are in; absent: inches"),
    plain_key("include", KeyKind::texts, Need::never,
              "more files of the project, from the folder of the file that names them"),
};

/// What only the project file itself may say.
/// What is built or measured no better than this was not meant in inches.
inline constexpr double most_tolerance_in = 2;

inline constexpr std::array settings_keys{
    text_key("name", Need::always, "a name", "of the project"),
    number_key(
        "build_tolerance", Need::never,
        NumberSpec{"a build tolerance", Dimension::length, Sign::not_negative, most_tolerance_in},
        "how far the built line may lie from the drawn one; absent: 0.06 in"),
    number_key("measuring_tolerance", Need::never,
               NumberSpec{"a measuring tolerance", Dimension::length, Sign::not_negative,
                          most_tolerance_in},
               "how far what `built` has may be from the truth; absent: 1/32 in"),
    map_key("temperature", KeyKind::map, Need::never, temperature_map,
            "that its lines see; absent: -20 to 120 degF, rigged at 70 degF"),
    map_key("load_factor", KeyKind::map, Need::never, load_factor_map,
            "in g; absent: +3.8 and -1.5"),
    number_key("climb", Need::never,
               NumberSpec{"a climb rate", Dimension::speed_vertical, Sign::positive, 100'000},
               "the rate that instruments have to follow"),
    plain_key("dual_controls", KeyKind::flag, Need::never,
              "true where two pilots can pull on one control at once"),
    number_key("weight", Need::never,
               NumberSpec{"a weight", Dimension::force, Sign::positive, 12'500},
               "of the aeroplane at its heaviest; absent: up to 5,000 lbf"),
    map_key("excitation", KeyKind::map, Need::never, excitation_map, "what shakes its lines"),
    number_key("airframe_stiffness", Need::never, airframe_stiffness_number,
               "force that brings the two ends of a cable an inch nearer; absent: rigid"),
};

inline constexpr std::array section_keys{
    map_key("attitudes", KeyKind::maps, Need::never, attitude_map,
            "in which water has to run out of the lines; absent: level flight only"),
    map_key("structure", KeyKind::map, Need::never, structure_map, "what stands around the lines"),
    map_key("closures", KeyKind::maps, Need::never, closure_map,
            "what ends access when it is fitted"),
    map_key("tasks", KeyKind::maps, Need::never, task_map, "work at one place, to put in order"),
    map_key("nodes", KeyKind::maps, Need::never, node_map, "where lines join or end"),
    map_key("routes", KeyKind::maps, Need::never, route_map, "the lines, each between two nodes"),
    map_key("bundles", KeyKind::maps, Need::never, bundle_map,
            "lines tied to each other along a stretch"),
    map_key("lines", KeyKind::maps, Need::never, line_map, "lines that the catalogue lacks"),
    map_key("fittings", KeyKind::maps, Need::never, fitting_map,
            "fittings that the catalogue lacks"),
    map_key("waivers", KeyKind::maps, Need::never, waiver_map, "findings that are accepted"),
    map_key("built", KeyKind::maps, Need::never, built_map, "what was measured on the aeroplane"),
};

inline constexpr auto project_keys = joined(file_keys, settings_keys, section_keys);
inline constexpr MapSpec project_map{"a project file", project_keys};

}  // namespace linewright
