#pragma once
// Keys of a fitting: an entry of the built-in catalogue, or of a project file's `fittings`.

#include "input/key_spec.hpp"
#include "input/keys/line_keys.hpp"
#include "model/fitting.hpp"

namespace linewright {

inline constexpr std::array fitting_kinds{
    Choice<FittingKind>{"union", FittingKind::straight_union},
    Choice<FittingKind>{"bulkhead", FittingKind::bulkhead_union},
    Choice<FittingKind>{"elbow-90", FittingKind::elbow_90},
    Choice<FittingKind>{"elbow-45", FittingKind::elbow_45},
    Choice<FittingKind>{"tee", FittingKind::tee}};
inline constexpr auto fitting_kind_words = words_of(fitting_kinds);

inline constexpr std::string_view bulkhead_fittings = "a bulkhead";

inline constexpr std::array fitting_keys{
    text_key("name", Need::always, {}, "for nodes; none that the catalogue has"),
    word_key("kind", Need::always, {}, fitting_kind_words, "what kind of fitting it is"),
    text_key("standard", Need::never, {}, "the standard that it is made to, for the list of parts"),
    number_key("tube", Need::always, over_zero(Dimension::length),
               "outside diameter of the tubes that it joins"),
    numbers_key("take_up", Need::always, over_zero(Dimension::length),
                "from where its axes meet, of a bulkhead from the web, to each port's face: a, b, "
                "c; or one for all"),
    number_key("body_diameter", Need::always, over_zero(Dimension::length),
               "over all, coupling nuts included"),
    number_key("nut", Need::never, length_or_none,
               "how far a coupling nut reaches past the face; absent: not at all"),
    number_key("insertion", Need::never, length_or_none,
               "how far the tube goes in past the face; absent: it ends there"),
    number_key("bore", Need::never, over_zero(Dimension::length),
               "its least bore, for the volume of a system; absent: not counted"),
    number_key("thread", Need::never, over_zero(Dimension::length),
               "outside diameter of the thread that goes through a sheet; absent: not known",
               bulkhead_fittings),
    source_key,
};
inline constexpr MapSpec fitting_map{"a fitting", fitting_keys, Voice::by_key};

inline constexpr auto built_in_fitting_keys = joined(fitting_keys, std::array{mark_key});
inline constexpr MapSpec built_in_fitting_map{"a fitting", built_in_fitting_keys, Voice::by_key};

}  // namespace linewright
