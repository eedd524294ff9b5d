#include "render/check_json.hpp"

#include "render/json_values.hpp"

namespace linewright {

std::string check_json(const Report& report) {
  Json checks = Json::array();
  for (const Judgement& judgement : report.judgements) checks.push_back(json_judgement(judgement));
  const Json json = {
      {"linewright", json_header()},       {"project", {{"name", report.project_name}}},
      {"summary", json_summary(report)},   {"routes", json_routes(report)},
      {"systems", json_systems(report)},   {"checks", std::move(checks)},
      {"assumptions", report.assumptions}, {"notes", report.notes}};
  return json_text(json);
}

}  // namespace linewright
