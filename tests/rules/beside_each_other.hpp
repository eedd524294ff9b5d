#pragma once
// Several aeroplanes in one project, so that what happens in one cannot concern most of the rest.

#include <string>
#include <vector>

#include "model/project.hpp"
#include "rules/same_aeroplane.hpp"

namespace linewright {

/// The project with `suffix` after every name that is its own and no control's.
inline Project renamed(Project project, const std::string& suffix) {
  const auto rename = [&suffix](std::string& name) {
    if (!name.empty()) name += suffix;
  };
  const auto rename_all = [&rename](auto& things) {
    for (auto& thing : things) rename(thing.name);
  };
  Structure& structure = project.structure;
  rename_all(structure.frames);
  rename_all(structure.channels);
  rename_all(structure.panels);
  rename_all(structure.solids);
  rename_all(structure.movers);
  rename_all(structure.meshes);
  for (Frame& frame : structure.frames) rename_all(frame.holes);
  for (Channel& channel : structure.channels) rename_all(channel.holes);
  for (Panel& panel : structure.panels) rename_all(panel.holes);
  for (Solid& solid : structure.solids) rename_all(solid.holes);
  rename_all(project.nodes);
  rename_all(project.bundles);
  for (Bundle& bundle : project.bundles)
    for (std::string& route : bundle.routes) rename(route);
  for (Waiver& waiver : project.waivers) rename(waiver.route);
  for (Measurement& measured : project.built) {
    rename(measured.route);
    rename(measured.to);
  }
  for (Route& route : project.routes) {
    for (std::string* name : {&route.name, &route.system_name, &route.from, &route.to})
      rename(*name);
    for (std::string& part : route.supports_on) rename(part);
    for (RoutePoint& point : route.points) {
      rename(point.to);
      rename(point.through);
    }
    for (FreeFairlead& free : route.free_fairleads) rename(free.fairlead.through);
  }
  return project;
}

/// The aeroplanes side by side, each so far to the right of the one before as `apart_in` says.
/// Everything is open: no closure is fitted.
inline Project beside_each_other(const std::vector<Project>& aeroplanes,
                                 const std::vector<double>& apart_in) {
  Project all = aeroplanes.front();
  const auto append = [](auto& to, const auto& from) {
    to.insert(to.end(), from.begin(), from.end());
  };
  double right_in = 0;
  for (std::size_t i = 1; i < aeroplanes.size(); ++i) {
    right_in += apart_in[i - 1];
    const Project next = PutElsewhere(moved({0, right_in, 0}))
                             .of(renamed(aeroplanes[i], " of " + std::to_string(i)));
    append(all.structure.frames, next.structure.frames);
    append(all.structure.channels, next.structure.channels);
    append(all.structure.panels, next.structure.panels);
    append(all.structure.solids, next.structure.solids);
    append(all.structure.movers, next.structure.movers);
    append(all.nodes, next.nodes);
    append(all.routes, next.routes);
    append(all.bundles, next.bundles);
    append(all.waivers, next.waivers);
    append(all.built, next.built);
  }
  all.closures.clear();
  for (Panel& panel : all.structure.panels) panel.closure.clear();
  return all;
}

}  // namespace linewright
