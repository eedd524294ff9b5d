#include "rules/registry.hpp"

#include "rules/attachment_travel.hpp"
#include "rules/bend_fit.hpp"
#include "rules/bend_radius.hpp"
#include "rules/cable_size.hpp"
#include "rules/cable_tension.hpp"
#include "rules/chafe.hpp"
#include "rules/clearance.hpp"
#include "rules/drainage.hpp"
#include "rules/fairlead_angle.hpp"
#include "rules/frame_crossing.hpp"
#include "rules/lag.hpp"
#include "rules/network.hpp"
#include "rules/not_yet_judged.hpp"
#include "rules/pulley.hpp"
#include "rules/resonance.hpp"
#include "rules/separation.hpp"
#include "rules/slack.hpp"
#include "rules/sleeve_cover.hpp"
#include "rules/straight_run.hpp"
#include "rules/support_mount.hpp"
#include "rules/support_spacing.hpp"

namespace linewright {

const std::vector<const Rule*>& all_rules() {
  static const std::vector<const Rule*> rules{
      &bend_radius_rule(),
      &bend_fit_rule(),
      &support_spacing_rule(),
      &support_mount_rule(),
      &straight_run_rule(),
      &slack_rule(),
      &frame_crossing_rule(),
      &clearance_rule(),
      &chafe_rule(),
      &separation_rule(),
      &network_rule(),
      &drainage_rule(),
      &lag_rule(),
      &resonance_rule(),
      &cable_size_rule(),
      &fairlead_angle_rule(),
      &pulley_rule(),
      &cable_tension_rule(),
      &attachment_travel_rule(),
      &sleeve_cover_rule(),
      &access_rule(),
  };
  return rules;
}

const Rule* find_rule(std::string_view name) {
  for (const Rule* rule : all_rules())
    if (rule->name == name) return rule;
  return nullptr;
}

}  // namespace linewright
