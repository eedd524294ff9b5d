#pragma once
// The JSON Schemas of what the commands print as JSON, as the build embeds them.

#include <string_view>
#include <vector>

namespace linewright {

struct EmbeddedSchema {
  std::string_view name;  ///< "close-up.json", after the command
  std::string_view text;
};

const std::vector<EmbeddedSchema>& embedded_schemas();

}  // namespace linewright
