#pragma once
// Keys of a project file's `closures` and `tasks`.

#include "input/key_spec.hpp"

namespace linewright {

inline constexpr NumberSpec reach_number{"a reach"};

inline constexpr std::array opening_keys{
    text_key("name", Need::always, "a name", "for messages"),
    plain_key("centre", KeyKind::place, Need::sometimes, "its middle; or `outline`"),
    number_key("diameter", Need::sometimes, NumberSpec{"a diameter"},
               "across a round one; or `size`"),
    plain_key("normal", KeyKind::direction, Need::sometimes,
              "direction it faces, of any length; needed with `size`"),
    pair_key("size", Need::sometimes, "two lengths [width, height]", NumberSpec{"a size"},
             "of a rectangle: width along BL (FS where it faces sideways), height along WL (FS "
             "where it faces up)"),
    plain_key("outline", KeyKind::places, Need::sometimes,
              "its corners, in place of `centre` with `diameter` or `size`"),
    number_key("reach", Need::sometimes, reach_number,
               "how far an arm gets in from it; absent: the closure's"),
    plain_key("crawl", KeyKind::flag, Need::never,
              "true where a person goes in by it and reaches from inside"),
};
inline constexpr MapSpec opening_map{"an opening", opening_keys};

inline constexpr std::array closure_keys{
    own_name_key(Named::closure, "for panels and other closures"),
    name_key("covers", KeyKind::names, Need::never, Named::part,
             "panels, skins and other parts that go on with it"),
    name_key("after", KeyKind::names, Need::never, Named::step,
             "closures and tasks that come before it"),
    map_key("openings", KeyKind::maps, Need::never, opening_map, "what is left to reach through"),
    number_key("reach", Need::sometimes, reach_number,
               "how far an arm gets in; needed where an opening states none"),
};
inline constexpr MapSpec closure_map{"a closure", closure_keys};

/// How many hands a task takes.
enum class Hands { one, two };

inline constexpr std::array hand_counts{Choice<Hands>{"1 hand", Hands::one},
                                        Choice<Hands>{"2 hands", Hands::two}};
inline constexpr auto hand_count_words = words_of(hand_counts);

inline constexpr std::array task_keys{
    own_name_key(Named::task, "for closures, loose ends and other tasks"),
    plain_key("at", KeyKind::place, Need::always, "where it is done"),
    name_key("on", KeyKind::name, Need::sometimes, Named::part,
             "the part that it is done on; needed with `needs: 2 hands`"),
    name_key("after", KeyKind::names, Need::never, Named::step,
             "closures and tasks that come before it"),
    word_key("needs", Need::never, "how many hands a task needs", hand_count_words,
             "2 hands: it is held on both sides of `on` at once; absent: 1 hand"),
    number_key("again", Need::never,
               NumberSpec{.words = "a number of times",
                          .dimension = Dimension::plain,
                          .sign = Sign::not_negative,
                          .largest = 1000,
                          .whole = true},
               "how often it comes apart once more; absent: never"),
};
inline constexpr MapSpec task_map{"a task", task_keys};

}  // namespace linewright
