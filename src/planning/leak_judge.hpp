#pragma once
// The verdict on a logged leak test.
//
// Judged is the worst full minute after the air has settled. What could make the figure wrong is
// added to it before it may pass and taken off before it may fail: noise and rounding of the
// readings, the step of the thermometer, its trailing, the part of the system that may not have
// followed it, and, where no temperature is logged or the thermometer stood still, a drift that
// nobody saw. A pass takes two minutes of settled readings, ten where no thermometer moved, a
// needle that moved, and never more than the limit lost by the needle itself. What is neither a
// pass nor a fail beyond those doubts is unknown, with what to do next.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "model/leak_log.hpp"
#include "planning/leak_evidence.hpp"
#include "planning/leak_test_plan.hpp"

namespace linewright {

enum class LeakAnswer { pass, fail, unknown };

/// A loss with its doubts, in the gauge's unit, 95 % [bounds of rounding and drift added in full].
struct LossInterval {
  double low = 0;
  double high = 0;
};

struct LeakVerdict {
  LeakAnswer answer = LeakAnswer::unknown;
  double loss = 0;                       ///< as read, in the worst minute
  bool loss_is_projected = false;        ///< the log is shorter: what the fitted curve loses in it
  std::optional<double> loss_corrected;  ///< temperature removed; absent where none is logged
  LossInterval interval;                 ///< of the corrected loss, else of the loss
  PeriodLoss as_read;                    ///< the worst minute as read …
  PeriodLoss corrected;                  ///< … and the worst with temperature removed
  double logged_s = 0;
  std::optional<double> settled_from_s;  ///< where the first readings had not settled
  ThermometerSight thermometer = ThermometerSight::none;
  double reading_noise = 0;                ///< standard deviation of one reading
  std::optional<double> time_constant_s;   ///< absent where no leak can be told from noise
  std::optional<double> leak_in3_per_min;  ///< ambient air, in the judged minute; absent for none
  std::optional<double> hole_in;           ///< one sharp-edged hole that leaks as much; rough
  std::vector<std::string> reasons;        ///< the first says why the answer is what it is
  std::vector<std::string> next;           ///< what to do, most urgent first; empty for a pass
  std::vector<OddReading> stands_out;      ///< readings to look at again
};

/// The verdict, or what makes the log useless (readings off the gauge).
std::variant<LeakVerdict, std::string> judge_leak(const LeakTestPlan& plan, const LeakLog& log);

}  // namespace linewright
