#include "lines/motion/span_frequency.hpp"

#include <algorithm>

#include "physics/deflection.hpp"
#include "physics/vibration.hpp"

namespace linewright {

namespace {

bool can_be_judged(LineKind kind) {
  return kind == LineKind::cable || kind == LineKind::rigid_tube || kind == LineKind::plastic_tube;
}

Missing missing_of(const Swing& swing) {
  const Line& line = *swing.route->line;
  const std::string& name = swing.route->route->name;
  const std::string add_line = "add the line to the project's lines with it and its source";
  if (swing.is_cable() && !swing.route->route->tension)
    return {"the rigged tension of " + name, "state tension.rigged of " + name};
  if (!line.weight_lb_per_in) return {"the weight of " + line.name, add_line};
  if (!swing.is_cable() && !line.youngs_modulus_psi)
    return {"Young's modulus of " + line.name, add_line};
  if (swing.run->cut_short)
    return {"which of the lines that hang on one another swings",
            "fix a tee to structure (fixed: true), or add supports on " + name};
  const bool one_end = swing.run->first.held() || swing.run->last.held();
  if (!one_end || (swing.is_cable() && !swing.held()))
    return {"what holds the end of " + name, "end it at something that structure holds"};
  return {};
}

void add_frequency(Swing& swing) {
  const Line& line = *swing.route->line;
  const double weight = line.weight_lb_per_in->value;
  if (swing.is_cable()) {
    swing.frequency_hz =
        taut_string_frequency_hz({.length_in = swing.run->length_in,
                                  .weight_lb_per_in = weight,
                                  .tension_lbf = swing.route->route->tension->rigged_lbf});
    return;
  }
  swing.length_power = 2;
  swing.frequency_hz =
      beam_frequency_hz(swing.held() ? BeamEnds::clamped_clamped : BeamEnds::clamped_free,
                        beam_of(line, swing.run->length_in));
}

}  // namespace

EvenBeam beam_of(const Line& tube, double length_in) {
  return {.length_in = length_in,
          .weight_lb_per_in = tube.weight_lb_per_in->value,
          .youngs_modulus_psi = tube.youngs_modulus_psi->value,
          .second_moment_in4 =
              tube_second_moment_in4(tube.outside_diameter_in, tube.inside_diameter_in)};
}

std::vector<Swing> span_swings(const PreparedProject& prepared, const std::vector<FreeRun>& runs) {
  std::vector<Swing> swings;
  for (const FreeRun& run : runs) {
    Swing swing;
    swing.run = &run;
    swing.leg = &*std::max_element(
        run.legs.begin(), run.legs.end(),
        [](const RunLeg& a, const RunLeg& b) { return a.length_in() < b.length_in(); });
    swing.route = &prepared.routes[static_cast<std::size_t>(swing.leg->route)];
    if (!can_be_judged(swing.route->line->kind)) continue;
    swing.missing = missing_of(swing);
    if (swing.missing.what.empty()) add_frequency(swing);
    swings.push_back(swing);
  }
  return swings;
}

}  // namespace linewright
