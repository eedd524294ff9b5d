#pragma once
// The YAML tables of this folder, as the build embeds them.

#include <string_view>
#include <vector>

namespace linewright {

struct EmbeddedTable {
  std::string_view name;
  std::string_view text;
};

const std::vector<EmbeddedTable>& embedded_tables();

}  // namespace linewright
