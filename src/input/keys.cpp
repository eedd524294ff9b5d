#include "input/keys.hpp"

#include "input/keys/project_keys.hpp"

namespace linewright {

std::span<const MapSpec* const> all_maps() {
  static constexpr std::array maps{
      &project_map,    &temperature_map, &load_factor_map, &excitation_map, &attitude_map,
      &structure_map,  &frame_map,       &plane_map,       &hole_map,       &wall_hole_map,
      &channel_map,    &panel_map,       &solid_map,       &box_map,        &cylinder_map,
      &mover_map,      &mesh_map,        &turn_map,        &closure_map,    &opening_map,
      &task_map,       &loose_end_map,   &node_map,        &arm_map,        &sector_map,
      &route_map,      &bundle_map,      &point_map,       &sleeve_map,     &attachment_map,
      &adjustment_map, &tension_map,     &travel_map,      &run_out_map,    &cable_ends_map,
      &cable_end_map,  &line_map,        &waiver_map,      &port_map,       &fitting_map,
      &built_map};
  return maps;
}

}  // namespace linewright
