#pragma once
// What a file that is not what its name says looks like.

#include <string_view>

namespace linewright {

/// "an OBJ file: name it .obj", "text: a text STL begins with 'solid'", by the first bytes of a
/// file that is no STL; empty where they look like nothing known.
std::string_view format_words(std::string_view head);

}  // namespace linewright
