#pragma once
// Air systems put together node by node, for the leak test.

#include <memory>
#include <stdexcept>

#include "lines/prepare.hpp"
#include "planning/air_system.hpp"
#include "planning/leak_test_plan.hpp"
#include "planning/tube_project.hpp"

namespace linewright {

/// A project of quarter-inch tube with its prepared form, kept alive for the systems taken from it.
class AirRig {
 public:
  explicit AirRig(TubeProject tubes)
      : tubes_(std::make_unique<TubeProject>(std::move(tubes))),
        prepared_(prepare(tubes_->project)) {}

  std::vector<AirSystem> pieces(const std::string& name = "static") const {
    return air_systems(prepared_, name);
  }
  AirSystem system(const std::string& name = "static") const { return pieces(name).at(0); }
  const PreparedProject& prepared() const { return prepared_; }

 private:
  std::unique_ptr<TubeProject> tubes_;
  PreparedProject prepared_;
};

/// Two ports, a tee and an altimeter of 10 in3: bores of 10, 10 and 100 in of quarter-inch tube.
inline TubeProject two_ports() {
  TubeProject tubes;
  tubes.node("port-left", {0, -10, 0}, NodeKind::static_port)
      .node("port-right", {0, 10, 0}, NodeKind::static_port)
      .node("tee", {0, 0, 0}, NodeKind::tee, 0.02)
      .node("altimeter", {-100, 0, 0}, NodeKind::instrument, 10.0);
  tubes.route("left", "port-left", "tee");
  tubes.route("right", "port-right", "tee");
  tubes.route("main", "tee", "altimeter");
  return tubes;
}

/// A probe, a drain and an airspeed indicator on the pitot side.
inline TubeProject pitot_side() {
  TubeProject tubes;
  tubes.node("probe", {0, -60, 0}, NodeKind::pitot_probe)
      .node("drain", {0, 0, -5}, NodeKind::drain)
      .node("tee", {0, 0, 0}, NodeKind::tee, 0.02)
      .node("airspeed", {-40, 0, 0}, NodeKind::instrument, 0.6);
  for (const auto& [name, from, to] : {std::tuple{"wing", "probe", "tee"},
                                       {"drop", "drain", "tee"},
                                       {"cabin", "tee", "airspeed"}}) {
    Route& route = tubes.route(name, from, to);
    route.system = SystemKind::pitot;
    route.system_name = "pitot";
  }
  return tubes;
}

/// Sea level on a standard day: 29.9213 inHg, 59 degF.
inline LeakTestSetup standard_day() {
  LeakTestSetup setup;
  setup.elevation_ft = 0;
  setup.altimeter_setting_inhg = 101'325 / 3386.389;
  setup.temperature_degf = 59;
  return setup;
}

inline LeakTestPlan plan_of(const AirSystem& system, const LeakTestSetup& setup) {
  auto plan = plan_leak_test(system, setup);
  if (const std::string* error = std::get_if<std::string>(&plan)) throw std::runtime_error(*error);
  return std::get<LeakTestPlan>(plan);
}

}  // namespace linewright
