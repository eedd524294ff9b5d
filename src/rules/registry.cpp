#include "rules/registry.hpp"

namespace linewright {

// One line a rule, in the order they are listed and run: the function that its own file defines.
#define LINEWRIGHT_EACH_RULE(rule)                                                               \
  rule(bend_radius_rule) rule(bend_fit_rule) rule(support_spacing_rule) rule(support_mount_rule) \
      rule(straight_run_rule) rule(slack_rule) rule(wiring_rule) rule(frame_crossing_rule)       \
          rule(hole_edge_rule) rule(clearance_rule) rule(chafe_rule) rule(separation_rule)       \
              rule(bundle_rule) rule(network_rule) rule(drainage_rule) rule(lag_rule)            \
                  rule(resonance_rule) rule(cable_size_rule) rule(fairlead_angle_rule)           \
                      rule(pulley_rule) rule(cable_end_rule) rule(cable_tension_rule)            \
                          rule(control_feel_rule) rule(rod_travel_rule) rule(casing_bends_rule)  \
                              rule(casing_ends_rule) rule(attachment_travel_rule)                \
                                  rule(sleeve_cover_rule) rule(access_rule) rule(as_built_rule)

#define LINEWRIGHT_DECLARE(function) const Rule& function();
LINEWRIGHT_EACH_RULE(LINEWRIGHT_DECLARE)
#undef LINEWRIGHT_DECLARE

const std::vector<const Rule*>& all_rules() {
#define LINEWRIGHT_ADDRESS(function) &function(),
  static const std::vector<const Rule*> rules{LINEWRIGHT_EACH_RULE(LINEWRIGHT_ADDRESS)};
#undef LINEWRIGHT_ADDRESS
  return rules;
}

const Rule* find_rule(std::string_view name) {
  for (const Rule* rule : all_rules())
    if (rule->name == name) return rule;
  return nullptr;
}

}  // namespace linewright
