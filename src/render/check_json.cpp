#include "render/check_json.hpp"

#include "render/amount.hpp"
#include "render/json_values.hpp"

namespace linewright {

namespace {

Json text_or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

Json judgement_json(const Judgement& judgement) {
  const SourceLocation& location = judgement.location;
  return {
      {"rule", judgement.rule},
      {"verdict", verdict_word(judgement.verdict)},
      {"route", judgement.route},
      {"with", judgement.with ? Json(*judgement.with) : Json(nullptr)},
      {"at", judgement.at ? json_place(*judgement.at) : Json(nullptr)},
      {"distance_in", json_number(judgement.distance_in)},
      {"value", json_number(judgement.value)},
      {"limit", json_number(judgement.limit)},
      {"unit", unit_word(judgement.unit)},
      {"margin", json_number(judgement.margin())},
      {"sense", judgement.sense == LimitSense::at_least ? "at_least" : "at_most"},
      {"message", judgement.message},
      {"source", judgement.source},
      {"mend", judgement.mend},
      {"location", {{"file", location.file}, {"line", location.line}, {"column", location.column}}},
      {"waived_reason", text_or_null(judgement.waived_reason)},
      {"was",
       judgement.waived_verdict ? Json(verdict_word(*judgement.waived_verdict)) : Json(nullptr)},
  };
}

}  // namespace

std::string check_json(const Report& report) {
  const Tally tally = tally_of(report.judgements);
  Json checks = Json::array();
  for (const Judgement& judgement : report.judgements) checks.push_back(judgement_json(judgement));
  const Json json = {{"linewright", json_header()},
                     {"project", {{"name", report.project_name}}},
                     {"summary",
                      {{"pass", tally.pass},
                       {"warn", tally.warn},
                       {"fail", tally.fail},
                       {"unknown", tally.unknown},
                       {"waived", tally.waived}}},
                     {"routes", json_routes(report)},
                     {"systems", json_systems(report)},
                     {"checks", std::move(checks)},
                     {"assumptions", report.assumptions}};
  return json_text(json);
}

}  // namespace linewright
