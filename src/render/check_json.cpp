#include "render/check_json.hpp"

#include "render/json_values.hpp"

namespace linewright {

namespace {

Json json_passed_over(const PassedOver& each) {
  return {{"route", each.route},
          {"with", each.with},
          {"at", json_place(each.at)},
          {"distance_in", json_number(each.distance_in)},
          {"gap_in", json_number(each.gap_in)},
          {"reason", each.reason}};
}

Json json_built(const BuiltRoute& each) {
  return {{"name", each.name},
          {"as_built_in", json_number(each.as_built_in)},
          {"as_drawn_in", json_number(each.as_drawn_in)},
          {"measured", each.measured}};
}

Json json_check(const Report& report) {
  Json checks = Json::array();
  for (const Judgement& judgement : report.judgements) checks.push_back(json_judgement(judgement));
  Json passed_over = Json::array();
  for (const PassedOver& each : report.passed_over) passed_over.push_back(json_passed_over(each));
  Json built = Json::array();
  for (const BuiltRoute& each : report.built) built.push_back(json_built(each));
  return {{"linewright", json_header()},
          {"project", {{"name", report.project_name}}},
          {"set", json_set(report)},
          {"summary", json_summary(report)},
          {"routes", json_routes(report)},
          {"systems", json_systems(report)},
          {"checks", std::move(checks)},
          {"assumptions", report.assumptions},
          {"notes", report.notes},
          {"built", std::move(built)},
          {"passed_over", std::move(passed_over)}};
}

}  // namespace

std::string check_json(const Report& report) {
  return json_text(json_check(report));
}

std::string check_json_line(const std::string& project_file, int exit, const Report& report) {
  return json_line({{"project_file", project_file}, {"exit", exit}, {"check", json_check(report)}});
}

std::string refused_json_line(const std::string& project_file, int exit,
                              const std::string& errors) {
  return json_line({{"project_file", project_file}, {"exit", exit}, {"errors", errors}});
}

}  // namespace linewright
