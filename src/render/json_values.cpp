#include "render/json_values.hpp"

#include <cmath>
#include <stdexcept>

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
          {"volume_in3", json_number(cut.volume_in3)},
          {"mass_lb", json_number(cut.mass_lb)},
          {"bends", std::move(bends)},
          {"straight_after_in", json_number(cut.straight_after_in)},
          {"minimum_bend_radius_in", json_number(cut.minimum_bend_radius_in)}};
}

}  // namespace

Json json_number(double value) {
  if (!std::isfinite(value)) throw std::logic_error("a result is not a finite number");
  return value == 0 ? 0.0 : value;
}

Json json_number(const std::optional<double>& value) {
  return value ? json_number(*value) : Json(nullptr);
}

Json json_place(Vec3 at) {
  return {{"fs", json_number(at.x)}, {"bl", json_number(at.y)}, {"wl", json_number(at.z)}};
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

std::string json_text(const Json& json) {
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

}  // namespace linewright
