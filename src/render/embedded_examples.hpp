#pragma once
// The files of examples/rules, as the build embeds them.

#include <string_view>
#include <vector>

namespace linewright {

struct EmbeddedExample {
  std::string_view name;  ///< "straight-run/fails.txt"
  std::string_view text;
};

const std::vector<EmbeddedExample>& embedded_examples();

}  // namespace linewright
