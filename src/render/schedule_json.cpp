#include "render/schedule_json.hpp"

#include "render/edge_word.hpp"
#include "render/json_values.hpp"

namespace linewright {

namespace {

Json support_json(const ScheduledSupport& support) {
  return {{"route", support.route},
          {"hold", support.hold},
          {"to", text_or_null(support.to)},
          {"at", json_place(support.at)},
          {"distance_in", json_number(support.distance_in)},
          {"from_previous_in", json_number(support.from_previous_in)},
          {"clamp", text_or_null(support.clamp)},
          {"hole_in", json_number(support.hole_in)}};
}

Json hole_json(const ScheduledHole& hole) {
  return {{"frame", hole.frame},
          {"name", hole.name},
          {"centre", json_place(hole.centre)},
          {"diameter_in", json_number(hole.diameter_in)},
          {"edge", edge_word(hole.edge)},
          {"lines", hole.lines},
          {"edge_distance_in", json_number(hole.edge_distance_in)},
          {"nearest", text_or_null(hole.nearest)}};
}

}  // namespace

std::string schedule_json(const Schedule& schedule) {
  Json supports = Json::array();
  for (const ScheduledSupport& each : schedule.supports) supports.push_back(support_json(each));
  Json holes = Json::array();
  for (const ScheduledHole& each : schedule.holes) holes.push_back(hole_json(each));
  return json_text({{"linewright", json_header()},
                    {"project", {{"name", schedule.project_name}}},
                    {"supports", std::move(supports)},
                    {"holes", std::move(holes)},
                    {"assumptions", schedule.assumptions}});
}

}  // namespace linewright
