#include "render/leak_test_json.hpp"

#include <string_view>

#include "physics/airspeed.hpp"
#include "physics/atmosphere.hpp"
#include "render/json_values.hpp"
#include "render/leak_words.hpp"

namespace linewright {

namespace {

/// "loss_ft" or "loss_kt".
std::string keyed(std::string_view name, const LeakTestPlan& plan) {
  return std::string(name) + "_" + std::string(plan.gauge.unit());
}

std::string reading_key(const LeakTestPlan& plan) {
  return keyed(plan.gauge.is_static() ? "altitude" : "airspeed", plan);
}

Json inhg(double pascals) {
  return json_number(inhg_from_pascals(pascals));
}

Json field_json(const LeakTestPlan& plan) {
  return {{"elevation_ft", json_number(plan.setup.elevation_ft)},
          {"pressure_inhg", inhg(plan.gauge.ambient_pa)},
          {"temperature_degF", json_number(plan.setup.temperature_degf)},
          {"altimeter_setting_inhg", json_number(plan.setup.altimeter_setting_inhg)}};
}

Json test_json(const LeakTestPlan& plan) {
  Json test;
  test[reading_key(plan)] = json_number(plan.target);
  test["pressure_inhg"] = inhg(plan.target_pa);
  test[plan.gauge.is_static() ? "pressure_drop_inhg" : "pressure_rise_inhg"] =
      inhg(plan.differential_pa);
  if (!plan.gauge.is_static())
    test["water_column_20c_in"] = json_number(inh2o_20c_from_pascals(plan.differential_pa));
  test["stroke_in3"] = json_number(plan.stroke_in3);
  test["syringe_in3"] = json_number(plan.setup.syringe_in3);
  test["strokes"] = plan.strokes ? Json(*plan.strokes) : Json(nullptr);
  if (plan.gauge.is_static()) {
    test["one_inhg_reads_ft"] = json_number(plan.one_inhg_reads_ft);
    test["thousand_ft_inhg"] = json_number(plan.thousand_ft_inhg);
    test["open_pitot_airspeed_kt"] = json_number(plan.open_pitot_kt);
  }
  return test;
}

Json limit_json(const LeakTestPlan& plan) {
  Json limit;
  limit[keyed("loss", plan)] = json_number(plan.limit.loss);
  limit["period_s"] = json_number(plan.limit.period_s);
  limit["source"] = cite(plan.limit.source);
  return limit;
}

Json at_limit_json(const LeakTestPlan& plan) {
  Json at_limit;
  at_limit[plan.gauge.is_static() ? "pressure_rise_inhg" : "pressure_fall_inhg"] =
      inhg(plan.limit_change_pa);
  at_limit["leak_in3_per_min"] = json_number(plan.limit_leak_in3_per_min);
  at_limit["time_constant_s"] = json_number(plan.limit_time_constant_s);
  at_limit["hole_diameter_in"] = json_number(plan.limit_hole_in);
  at_limit["readings"] = Json::array();
  for (const TimedReading& reading : plan.readings_at_limit) {
    Json row;
    row["time_s"] = json_number(reading.time_s);
    row[reading_key(plan)] = json_number(reading.reading);
    at_limit["readings"].push_back(row);
  }
  return at_limit;
}

Json connection_json(const TestConnection& connection) {
  return {{"at", connection.at},          {"why", connection.why},
          {"cap", connection.cap},        {"keep_shut", connection.close},
          {"left_open", connection.mend}, {"instruments", connection.instruments}};
}

Json part_json(const LeakTestPlan& plan) {
  if (!plan.part) return nullptr;
  const PartTest& part = *plan.part;
  Json json = {{"at", plan.connection.at},
               {"caps", part.caps},
               {"sealed", part.sealed},
               {"system_volume_in3", json_number(part.whole_in3)},
               {"gauge_volume_in3", json_number(part.gauge_in3)},
               {"gauge_volume_stated", part.gauge_stated},
               {"tested_in3", json_number(part.tested_in3)},
               {"share", json_number(part.share)}};
  json[keyed("share_loss", plan)] = json_number(part.share_loss);
  json["share_leak_in3_per_min"] = json_number(part.share_leak_in3_per_min);
  json[keyed("whole_loss", plan)] = json_number(part.whole_loss);
  json["whole_leak_in3_per_min"] = json_number(part.whole_leak_in3_per_min);
  return json;
}

Json next_step(int step) {
  return step > 0 ? Json(step) : Json(nullptr);
}

Json sections_json(const LeakTestPlan& plan) {
  Json sections = Json::array();
  int number = 0;
  for (const SplitStep& step : plan.sections) {
    Json section;
    section["step"] = ++number;
    section["open"] = {{"route", step.route}, {"node", step.node}};
    section["seal"] = sealed_words(step);
    section["suspect_in3"] = json_number(step.suspect_in3);
    section["tested_in3"] = json_number(step.tested_in3);
    section[keyed("loss_at_limit", plan)] = json_number(step.loss);
    section[keyed("reading_at_limit", plan)] = json_number(step.reading);
    section["if_it_loses"] = {{"sections", step.if_loses},
                              {"volume_in3", json_number(step.loses_in3)},
                              {"step", next_step(step.step_if_loses)}};
    section["if_it_holds"] = {{"sections", step.if_holds},
                              {"volume_in3", json_number(step.holds_in3)},
                              {"step", next_step(step.step_if_holds)}};
    sections.push_back(section);
  }
  return sections;
}

Json period_json(const PeriodLoss& loss, const LeakTestPlan& plan) {
  Json json;
  json["start_s"] = json_number(loss.start_s);
  json["end_s"] = json_number(loss.end_s);
  json[keyed("loss", plan)] = json_number(loss.loss);
  json[keyed("loss_corrected", plan)] = json_number(loss.corrected);
  json["warming_degF"] = json_number(loss.warming_degf);
  return json;
}

Json odd_readings_json(const JudgedLog& judged, const LeakTestPlan& plan) {
  Json all = Json::array();
  for (const OddReading& odd : judged.verdict.stands_out) {
    Json json;
    json["file"] = judged.file;
    json["line"] = odd.row.line;
    json["time_s"] = json_number(odd.row.time_s);
    json[reading_key(plan)] = json_number(odd.row.reading);
    json[keyed("expected", plan)] = json_number(odd.expected);
    json[keyed("by", plan)] = json_number(odd.by());
    json["jump"] = odd.jumps;
    all.push_back(json);
  }
  return all;
}

std::string_view thermometer_word(ThermometerSight sight) {
  switch (sight) {
    case ThermometerSight::moves:
      return "moves";
    case ThermometerSight::still:
      return "still";
    case ThermometerSight::none:
      break;
  }
  return "none";
}

void add_verdict(Json& json, const JudgedLog& judged, const LeakTestPlan& plan) {
  const LeakVerdict& verdict = judged.verdict;
  json["verdict"] = verdict_word(verdict_of(verdict.answer));
  json[keyed("loss", plan)] = json_number(verdict.loss);
  json[keyed("loss_corrected", plan)] = json_number(verdict.loss_corrected);
  json[keyed("loss_interval", plan)] = {json_number(verdict.interval.low),
                                        json_number(verdict.interval.high)};
  json["loss_is_projected"] = verdict.loss_is_projected;
  json["time_constant_s"] = json_number(verdict.time_constant_s);
  json["leak_in3_per_min"] = json_number(verdict.leak_in3_per_min);
  json["hole_diameter_in"] = json_number(verdict.hole_in);
  json["reasons"] = verdict.reasons;
  json["next"] = verdict.next;
  json["stands_out"] = odd_readings_json(judged, plan);
  Json log;
  log["file"] = judged.file;
  log["rows"] = judged.log.rows.size();
  log["duration_s"] = json_number(verdict.logged_s);
  log["settled_from_s"] = json_number(verdict.settled_from_s);
  log["thermometer"] = thermometer_word(verdict.thermometer);
  log["temperature_logged"] = judged.log.has_temperature;
  log[keyed("reading_noise", plan)] = json_number(verdict.reading_noise);
  log["worst_as_read"] = period_json(verdict.as_read, plan);
  log["worst_corrected"] = period_json(verdict.corrected, plan);
  json["log"] = log;
}

}  // namespace

std::string leak_test_json(const LeakTestReport& report) {
  const LeakTestPlan& plan = report.plan;
  Json json;
  json["linewright"] = json_header();
  json["project"] = {{"name", report.project_name}};
  json["system"] = plan.system;
  json["kind"] = plan.gauge.is_static() ? "static" : "pitot";
  if (report.judged) add_verdict(json, *report.judged, plan);
  json["volume_in3"] = json_number(plan.volume_in3);
  json["part"] = part_json(plan);
  json["nodes_without_volume"] = plan.nodes_without_volume;
  json["field"] = field_json(plan);
  json["test"] = test_json(plan);
  json["limit"] = limit_json(plan);
  json["at_limit"] = at_limit_json(plan);
  json["temperature_effect_" + std::string(plan.gauge.unit()) + "_per_degF"] =
      json_number(plan.effect_per_degf);
  json["quick_stroke_degF"] = json_number(plan.quick_stroke_degf);
  json["wait_s"] = json_number(plan.wait_s);
  json["connection"] = connection_json(plan.connection);
  json["sections"] = sections_json(plan);
  json["cautions"] = plan.cautions;
  json["notes"] = plan.notes;
  json["assumptions"] = report.assumptions;
  return json_text(json);
}

}  // namespace linewright
