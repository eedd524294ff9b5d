#pragma once
// Keys of a line: an entry of the built-in catalogue, or of a project file's `lines`.

#include <limits>

#include "input/key_spec.hpp"
#include "model/line.hpp"

namespace linewright {

inline constexpr std::array line_kinds{Choice<LineKind>{"rigid-tube", LineKind::rigid_tube},
                                       Choice<LineKind>{"plastic-tube", LineKind::plastic_tube},
                                       Choice<LineKind>{"hose", LineKind::hose},
                                       Choice<LineKind>{"cable", LineKind::cable},
                                       Choice<LineKind>{"wire", LineKind::wire},
                                       Choice<LineKind>{"rod", LineKind::rod},
                                       Choice<LineKind>{"conduit", LineKind::conduit}};
inline constexpr auto line_kind_words = words_of(line_kinds);

/// What a built-in source may be marked as. The builder's own mark is not for tables.
inline constexpr std::array source_marks{
    Choice<Mark>{"verified", Mark::verified},
    Choice<Mark>{"verified-secondary", Mark::verified_secondary},
    Choice<Mark>{"from-memory", Mark::from_memory},
    Choice<Mark>{"common-practice", Mark::common_practice},
    Choice<Mark>{"calculated", Mark::calculated}};

/// Which kinds of line have a key, in the words of its row.
inline constexpr std::string_view bored_lines = "tubes, hoses and rods";
inline constexpr std::string_view cable_lines = "cables";
inline constexpr std::string_view conduit_lines = "conduits";

inline constexpr double any_size = std::numeric_limits<double>::infinity();

constexpr NumberSpec over_zero(Dimension dimension) {
  return {.dimension = dimension, .largest = any_size, .range = "must be greater than zero"};
}

inline constexpr NumberSpec length_or_none{
    .sign = Sign::not_negative, .largest = any_size, .range = "must not be negative"};

// The upper ends catch per cents and millionths.
inline constexpr NumberSpec slack_number{.dimension = Dimension::plain,
                                         .sign = Sign::not_negative,
                                         .largest = 0.2,
                                         .range = "must be a fraction of the length from 0 to {}"};
inline constexpr NumberSpec expansion_number{
    .dimension = Dimension::plain,
    .largest = 1e-3,
    .range = "must be per degree Fahrenheit, above 0 and at most {}"};

// Ten full turns: no casing is led so.
inline constexpr NumberSpec bend_total_number{
    .dimension = Dimension::angle, .largest = 3600, .range = "must be above 0 and at most {} deg"};

inline constexpr KeySpec source_key =
    text_key("source", Need::always, {}, "where its figures are from, shown with every judgement");

inline constexpr std::array line_keys{
    text_key("name", Need::always, {}, "for routes and sleeves; none that the catalogue has"),
    word_key("kind", Need::always, {}, line_kind_words, "what kind of line it is"),
    text_key("material", Need::never, {}, "in a word"),
    text_key("construction", Need::never, {}, "7x7, 7x19, 1x19", cable_lines),
    number_key("outside", Need::always, over_zero(Dimension::length), "nominal outside diameter"),
    number_key("inside", Need::sometimes, over_zero(Dimension::length),
               "its bore, smaller than `outside`; needed of tubes and hoses, absent of a solid rod",
               bored_lines),
    number_key("plus_tolerance", Need::never, length_or_none,
               "how much larger than `outside` it may be; absent: none is taken"),
    number_key("minimum_bend_radius", Need::never, over_zero(Dimension::length),
               "least radius it may be bent to, to its centreline"),
    number_key("minimum_inside_bend_radius", Need::never, over_zero(Dimension::length),
               "in its stead: the least to the inside of the bend; half of the largest outside "
               "diameter is added"),
    number_key("flexing_bend_radius", Need::never, over_zero(Dimension::length),
               "least radius, to the centreline, where it flexes at a bend"),
    number_key("usual_bend_radius", Need::never, over_zero(Dimension::length),
               "to the centreline, where a point states no `bend`; absent: the minimum"),
    number_key("bend_total", Need::never, bend_total_number,
               "the most that all of its bends may turn together", conduit_lines),
    number_key("support_spacing", Need::never, over_zero(Dimension::length),
               "largest distance between supports"),
    number_key("weight", Need::never, over_zero(Dimension::mass_per_length), "of its length"),
    number_key("youngs_modulus", Need::never, over_zero(Dimension::pressure), "of its material",
               bored_lines),
    number_key("expansion", Need::never, expansion_number,
               "by heat: its share of the length, per degree Fahrenheit"),
    number_key("slack", Need::never, slack_number,
               "surplus length it is fitted with, as a fraction of its length"),
    number_key("breaking_strength", Need::never, over_zero(Dimension::force),
               "the load it breaks at", cable_lines),
    number_key("axial_stiffness", Need::never, over_zero(Dimension::force), "AE", cable_lines),
    number_key("cut_allowance", Need::never, length_or_none,
               "trimmed off both ends together; absent: 1 in of tubes, 6 in of wires, else none"),
    numbers_key(
        "stock_lengths", Need::never, over_zero(Dimension::length),
        "a list of the lengths that it is sold in, to say how many to buy; absent: not known"),
    source_key,
};
inline constexpr MapSpec line_map{"a line", line_keys, Voice::by_key};

inline constexpr KeySpec mark_key = text_key("mark", Need::always, {}, "how far a source was read");

inline constexpr auto built_in_line_keys = joined(line_keys, std::array{mark_key});
inline constexpr MapSpec built_in_line_map{"a line", built_in_line_keys, Voice::by_key};

/// A value of a built-in entry that states a source of its own.
inline constexpr std::array sourced_value_keys{
    number_key("value", Need::always, {}, "the value, as it would stand without a source"),
    source_key,
    mark_key,
};
inline constexpr MapSpec sourced_value_map{"a value", sourced_value_keys, Voice::by_key};

}  // namespace linewright
