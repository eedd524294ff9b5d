#pragma once
// Verdicts on simulated and written logs, and what they say.

#include <stdexcept>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "planning/air_rig.hpp"
#include "planning/leak_judge.hpp"
#include "planning/simulated_leak.hpp"

namespace linewright {

inline const LeakTestPlan& static_plan() {
  static const AirRig rig(two_ports());
  static const LeakTestPlan plan = plan_of(rig.system(), standard_day());
  return plan;
}

inline const LeakTestPlan& pitot_plan() {
  static const AirRig rig(pitot_side());
  static const LeakTestPlan plan = plan_of(rig.system("pitot"), standard_day());
  return plan;
}

inline LeakVerdict judged(const LeakLog& log, const LeakTestPlan& plan = static_plan()) {
  const auto verdict = judge_leak(plan, log);
  if (const std::string* error = std::get_if<std::string>(&verdict))
    throw std::runtime_error(*error);
  return std::get<LeakVerdict>(verdict);
}

inline LeakVerdict judged(const SimulatedLeak& leak, const LeakTestPlan& plan = static_plan()) {
  return judged(simulated(plan, leak), plan);
}

inline bool says(const LeakVerdict& verdict, const std::string& part) {
  for (const std::string& reason : verdict.reasons)
    if (reason.find(part) != std::string::npos) return true;
  return false;
}

/// Readings at given times without a thermometer, written to a hundredth of a foot.
inline LeakLog log_of(const std::vector<std::pair<double, double>>& rows,
                      bool with_temperature = false) {
  LeakLog log;
  log.has_temperature = with_temperature;
  log.reading_step = 0.01;
  log.temperature_step_degf = 0.01;
  for (const auto& [time_s, reading] : rows)
    log.rows.push_back({time_s, reading, with_temperature ? 59.0 : 0.0, 0});
  return log;
}

/// A temperature that does not move: what the needle loses is the leak alone.
inline double at_rest(double) {
  return 59;
}

/// The verdict on a log of a leak at rest.
inline LeakVerdict judged_at_rest(double loss_per_minute,
                                  const LeakTestPlan& plan = static_plan()) {
  return judged(SimulatedLeak{.loss_per_minute = loss_per_minute, .temperature_degf = at_rest},
                plan);
}

inline bool tells_to(const LeakVerdict& verdict, const std::string& part) {
  for (const std::string& next : verdict.next)
    if (next.find(part) != std::string::npos) return true;
  return false;
}

inline constexpr LeakAnswer leak_pass = LeakAnswer::pass;
inline constexpr LeakAnswer leak_fail = LeakAnswer::fail;
inline constexpr LeakAnswer leak_unknown = LeakAnswer::unknown;

}  // namespace linewright
