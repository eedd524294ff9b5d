#pragma once
// Text of the builder's made safe to stand in a page.

#include <string>
#include <string_view>

#include "model/judgement.hpp"

namespace linewright {

/// The text on one line, with everything that could be taken for markup written as entities. Marks
/// that turn the reading direction are written out, "[U+202E]", so that they turn nothing; bytes
/// that are not UTF-8 become U+FFFD. Good between tags and within double quotes.
std::string escaped(std::string_view text);
/// The same of a text laid out in lines, whose line feeds and spaces stay.
std::string escaped_lines(std::string_view text);

/// "<td class="number">0.500 in</td>"; the text is escaped. No class where it is empty.
std::string element(std::string_view tag, std::string_view css_class, std::string_view text);

/// The verdict's mark and word: a shape of its own for each, so that colour carries nothing alone.
std::string verdict_badge(Verdict verdict);
/// The mark alone, inside a drawing, with its middle at a place.
std::string verdict_mark(Verdict verdict, double x, double y, double size);
/// The marks' shapes, once in a page before the first is used.
std::string verdict_shapes();

}  // namespace linewright
