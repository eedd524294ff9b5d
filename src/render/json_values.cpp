#include "render/json_values.hpp"

#include <cmath>
#include <stdexcept>

#include "model/worth.hpp"
#include "render/amount.hpp"
#include "render/version.hpp"

namespace linewright {

namespace {

Json bend_json(const BendStep& bend) {
  return {{"at", json_place(bend.at)},
          {"radius_in", json_number(bend.radius_in)},
          {"angle_deg", json_number(bend.angle_deg)},
          {"rotation_deg", json_number(bend.rotation_deg)},
          {"straight_before_in", json_number(bend.straight_before_in)},
          {"distance_in", json_number(bend.distance_in)},
          {"mark_start_in", json_number(bend.mark_start_in)},
          {"mark_end_in", json_number(bend.mark_end_in)}};
}

Json route_json(const RouteReport& route) {
  const RouteCut& cut = route.cut;
  Json bends = Json::array();
  for (const BendStep& bend : cut.bends) bends.push_back(bend_json(bend));
  return {{"name", cut.name},
          {"system", cut.system},
          {"line", cut.line},
          {"from", route.from},
          {"to", route.to},
          {"rigid", cut.rigid},
          {"length_in", json_number(cut.length_in)},
          {"cut_length_in", json_number(cut.cut_length_in)},
          {"wire_length_in", json_number(cut.wire_length_in)},
          {"volume_in3", json_number(cut.volume_in3)},
          {"mass_lb", json_number(cut.mass_lb)},
          {"bends", std::move(bends)},
          {"straight_after_in", json_number(cut.straight_after_in)},
          {"minimum_bend_radius_in", json_number(cut.minimum_bend_radius_in)}};
}

Json measured_json(const Seldom<Measured>& measured) {
  if (!measured) return nullptr;
  return {{"value", json_number(measured->value)}, {"on", measured->on}, {"by", measured->by}};
}

Json judged_json(const std::optional<double>& value, Unit unit) {
  return unit == Unit::inch ? json_length(value) : json_number(value);
}

/// To a billionth, or to thirteen digits where those are coarser: the digits beyond differ from one
/// machine's mathematics to the next.
double worth_of(double value) {
  constexpr double most = 1e13;
  double parts = 1e9;
  while (parts > 1 && std::abs(value) * parts >= most) parts /= 10;
  return to_parts(value, parts);
}

}  // namespace

Json text_or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

Json json_number(double value) {
  if (!std::isfinite(value)) throw std::logic_error("a result is not a finite number");
  const double worth = worth_of(value);
  return worth == 0 ? 0.0 : worth;
}

Json json_number(const std::optional<double>& value) {
  return value ? json_number(*value) : Json(nullptr);
}

Json json_distance(double inches) {
  return json_number(to_parts(inches, parts_of_place));
}

Json json_distance(const std::optional<double>& inches) {
  return inches ? json_distance(*inches) : Json(nullptr);
}

Json json_length(const std::optional<double>& inches) {
  constexpr double parts_of_length = 1e7;
  return inches ? json_number(to_parts(*inches, parts_of_length)) : Json(nullptr);
}

Json json_place(Vec3 at) {
  return {{"fs", json_distance(at.x)}, {"bl", json_distance(at.y)}, {"wl", json_distance(at.z)}};
}

Json json_header() {
  return {{"version", version()}, {"format", json_format}};
}

Json json_routes(const Report& report) {
  Json routes = Json::array();
  for (const RouteReport& route : report.routes) routes.push_back(route_json(route));
  return routes;
}

Json json_systems(const Report& report) {
  Json systems = Json::array();
  for (const SystemCut& system : report.systems)
    systems.push_back({{"name", system.name},
                       {"length_in", json_number(system.length_in)},
                       {"volume_in3", json_number(system.volume_in3)},
                       {"nodes_without_volume", system.nodes_without_volume}});
  return systems;
}

Json json_set(const Report& report) {
  Json set = Json::array();
  for (const SetValue& each : report.set_values)
    set.push_back({{"path", each.path},
                   {"value", each.value},
                   {"was", each.was.empty() ? Json(nullptr) : Json(each.was)}});
  return set;
}

Json json_judgement(const Judgement& judgement) {
  const SourceLocation& location = judgement.location;
  return {
      {"rule", judgement.rule},
      {"verdict", verdict_word(judgement.verdict)},
      {"route", judgement.route},
      {"with", judgement.with ? Json(*judgement.with) : Json(nullptr)},
      {"at", judgement.at ? json_place(*judgement.at) : Json(nullptr)},
      {"distance_in", json_distance(judgement.distance_in)},
      {"value", judged_json(judgement.value, judgement.unit)},
      {"limit", judged_json(judgement.limit, judgement.unit)},
      {"unit", unit_word(judgement.unit)},
      {"margin", judged_json(judgement.margin(), judgement.unit)},
      {"sense", sense_word(judgement.sense)},
      {"message", judgement.message},
      {"source", judgement.source},
      {"mend", judgement.mend},
      {"location", {{"file", location.file}, {"line", location.line}, {"column", location.column}}},
      {"measured", measured_json(judgement.measured)},
      {"waived_reason", judgement.waived ? text_or_null(judgement.waived->reason) : Json(nullptr)},
      {"was", judgement.waived ? Json(verdict_word(judgement.waived->was)) : Json(nullptr)},
  };
}

Json json_summary(const Report& report) {
  const Tally tally = tally_of(report.judgements);
  return {{"pass", tally.pass},
          {"warn", tally.warn},
          {"fail", tally.fail},
          {"unknown", tally.unknown},
          {"waived", tally.waived}};
}

std::string json_line(const Json& json) {
  return json.dump(-1, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string json_text(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace linewright
