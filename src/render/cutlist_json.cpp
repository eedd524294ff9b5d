#include "render/cutlist_json.hpp"

#include "render/json_values.hpp"

namespace linewright {

std::string cutlist_json(const Report& report) {
  return json_text({{"linewright", json_header()},
                    {"project", {{"name", report.project_name}}},
                    {"routes", json_routes(report)},
                    {"systems", json_systems(report)},
                    {"assumptions", report.assumptions}});
}

}  // namespace linewright
