#include "planning/leak_doubts.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "planning/leak_bounds.hpp"
#include "planning/loss_words.hpp"

namespace linewright {

namespace {

std::string reading_words(double reading, const LeakGauge& gauge) {
  return fmt::format("{:.0f} {}", reading, gauge.unit());
}

std::string settle_words(const LeakEvidence& evidence) {
  return fmt::format(
      "Let it settle: pump slowly, wait until the needle moves evenly, a minute at the least, "
      "bring it to {} again without going past it, wait again, then start the log.",
      reading_words(evidence.plan->target, evidence.plan->gauge));
}

std::string longer_words() {
  return fmt::format(
      "Log longer: a reading every ten seconds, for three minutes after the needle has settled; "
      "{:.0f} s are the least.",
      least_settled_s);
}

std::string thermometer_words(const LeakEvidence& evidence) {
  return fmt::format(
      "{}, under a rag, and log its temperature with every reading; or log for {:.0f} minutes: a "
      "drift that hides a leak does not last so long.",
      evidence.thermometer.sight == ThermometerSight::none ? "Tape a thermometer to a line"
                                                           : "Tape the thermometer to a line",
      least_without_thermometer_s / 60);
}

std::string tap_words() {
  return "Repeat the log: tap the gauge lightly before each reading, and read between its marks.";
}

/// What air that settles does to the needle.
std::string settling_words(const LeakEvidence& evidence) {
  const bool falls = evidence.settling.amplitude_pa > 0;
  std::string words =
      falls ? fmt::format(
                  "the needle falls faster than a steady leak lets it, as after a quick "
                  "stroke, when the air in the lines {} again",
                  evidence.plan->gauge.is_static() ? "warms" : "cools")
            : "the needle is held up, as after an overshoot that was let back";
  if (!evidence.sees_temperature())
    words += ", or with a change of temperature that no thermometer saw";
  return words;
}

void add_needle(const LeakEvidence& evidence, std::vector<LeakDoubt>& doubts) {
  const LeakLog& log = evidence.log.log;
  const std::string free_needle =
      "Tap the gauge, see that every tap to it is open, and read between its marks. Log on until "
      "the needle has moved: warming a line with the hand must move it.";
  if (needle_stands(log))
    doubts.push_back(
        {fmt::format(
             "all {} readings are {} {}: the needle may be stuck, or shut off from the lines",
             log.rows.size(), log.rows.front().reading, evidence.plan->gauge.unit()),
         free_needle});
  else if (!needle_moved(log, evidence.noise, negligible_share * evidence.plan->limit.loss))
    doubts.push_back(
        {"the needle did not move beyond the scatter of its readings: it may be stuck, or shut off "
         "from the lines",
         free_needle});
}

void add_settling(const LeakEvidence& evidence, std::vector<LeakDoubt>& doubts) {
  if (!evidence.settling.seen || evidence.settled_s >= least_settled_s) return;
  doubts.push_back({fmt::format("not settled: {} {}",
                                evidence.settled_s > 0
                                    ? fmt::format("before {:.0f} s", evidence.settling.settled_s)
                                    : "from the first reading to the last",
                                settling_words(evidence)),
                    settle_words(evidence)});
}

void add_length(const LeakEvidence& evidence, std::vector<LeakDoubt>& doubts) {
  const double settled_s = std::floor(evidence.settled_s);
  if (!evidence.full_minute)
    doubts.push_back({fmt::format("the log covers {:.0f} s, and the limit is for a full {:.0f} s",
                                  std::floor(evidence.duration_s()), evidence.plan->limit.period_s),
                      longer_words()});
  else if (evidence.settled_s < least_settled_s)
    doubts.push_back(
        {fmt::format("a pass takes {:.0f} s of settled readings, and {:.0f} s are logged",
                     least_settled_s, settled_s),
         longer_words()});
  if (evidence.sees_temperature() || evidence.settled_s >= least_without_thermometer_s) return;
  doubts.push_back({fmt::format("{} a pass takes {:.0f} s of settled readings",
                                evidence.thermometer.sight == ThermometerSight::none
                                    ? "without a thermometer"
                                    : "with a thermometer that stood still",
                                least_without_thermometer_s),
                    thermometer_words(evidence)});
}

void add_pressure(const LeakEvidence& evidence, std::vector<LeakDoubt>& doubts) {
  const LeakTestPlan& plan = *evidence.plan;
  const LeakLog& log = evidence.log.log;
  if (evidence.start_differential_pa < least_start_share * plan.differential_pa)
    doubts.push_back(
        {fmt::format(
             "the {} at {}, too far below the {} of the test: a smaller pressure drives a "
             "smaller leak",
             evidence.settling.seen && evidence.settled ? "settled readings start" : "log starts",
             reading_words(log.rows.front().reading, plan.gauge),
             reading_words(plan.target, plan.gauge)),
         fmt::format("Top up to {}, let it settle, and start the log there; leave the rows before "
                     "the pumping stopped out.",
                     reading_words(plan.target, plan.gauge))});
  if (plan.gauge.is_static() && log.rows.back().reading < plan.at_rest - 50)
    doubts.push_back(
        {fmt::format("the readings end below the field's {:.0f} ft, where no leak takes them",
                     plan.at_rest),
         "Give the field elevation and altimeter setting of the day of the test: these are not."});
}

/// A needle that goes the wrong way: for a while, or from the first reading to the last.
LeakDoubt rise_doubt(const LeakEvidence& evidence) {
  const LeakGauge& gauge = evidence.plan->gauge;
  const std::string_view heat = gauge.is_static() ? "cooling" : "warming";
  const LeakLog& log = evidence.log.log;
  if (log.rows.back().reading <= log.rows.front().reading)
    return {fmt::format("the readings rise by {:.1f} {}, which no leak does: {}, or pumping, hides "
                        "a loss",
                        largest_rise(evidence), gauge.unit(), heat),
            settle_words(evidence)};
  return {fmt::format(
              "the readings end higher than they began, by {:.1f} {}, which no leak does: it lets "
              "them fall. {} of the air in the lines, or a pump that is not shut off, hides a loss "
              "that cannot be told from this log",
              log.rows.back().reading - log.rows.front().reading, gauge.unit(),
              gauge.is_static() ? "Cooling" : "Warming"),
          fmt::format("See that the rows are in the order in which they were read, and are of this "
                      "gauge; that the pump is clamped off; and that no line is {}. {}",
                      gauge.is_static() ? "cooling after it was warmed by sun or a hand"
                                        : "warmed by sun, a heater or a hand",
                      settle_words(evidence))};
}

void add_readings(const LeakEvidence& evidence, std::vector<LeakDoubt>& doubts) {
  const LeakTestPlan& plan = *evidence.plan;
  const std::string_view unit = plan.gauge.unit();
  const LeakLog& log = evidence.log.log;
  if (longest_gap_in_s(log) > longest_gap_s)
    doubts.push_back(
        {fmt::format("{:.0f} s pass without a reading: what happened in between is not known",
                     longest_gap_in_s(log)),
         "Repeat the log with a reading every ten seconds."});
  if (evidence.settled && doubt_to_pass(evidence) > plan.limit.loss / 2)
    doubts.push_back(
        {fmt::format("the readings scatter too much: by {:.1f} {} each (standard deviation), which "
                     "leaves the loss uncertain by {:.0f} {}",
                     doubt_to_pass(evidence) / evidence.factor, unit, doubt_to_pass(evidence),
                     unit),
         tap_words()});
  if (largest_rise(evidence) > rise_allowed(evidence)) doubts.push_back(rise_doubt(evidence));
}

void add_temperature(const LeakEvidence& evidence, std::vector<LeakDoubt>& doubts) {
  if (!evidence.sees_temperature()) return;
  const std::string even =
      "Bring the aeroplane and the test set to one temperature, out of sun and draught, with the "
      "thermometer taped to a line under a rag, and repeat.";
  const double change_degf =
      std::max(std::abs(evidence.as_read.warming_degf), std::abs(evidence.corrected.warming_degf));
  if (change_degf > most_correction_degf)
    doubts.push_back({fmt::format("the temperature moved {:.1f} degF in the minute: too much for "
                                  "one thermometer to correct",
                                  change_degf),
                      even});
  if (temperature_contradicted(evidence))
    doubts.push_back({"the readings do not follow the temperature that was logged", even});
}

/// Which of the doubts about a loss weighs most, and what takes it away.
std::string next_near_limit(const LeakEvidence& evidence) {
  const double limit = evidence.plan->limit.loss;
  if (evidence.sees_temperature() && evidence.as_read.loss > limit)
    return "The needle itself lost more than is allowed. Let the temperature come to rest, out of "
           "sun and draught, and repeat.";
  if (evidence.most_corrected.corrected > limit * 0.8)
    return "The loss is near its limit, whatever the doubts: mend what leaks, and test again.";
  if (!evidence.sees_temperature()) return thermometer_words(evidence);
  return doubt_to_pass(evidence) > temperature_doubt_to_pass(evidence)
             ? tap_words()
             : "Let the temperature come nearer to rest, and repeat; a finer thermometer helps.";
}

void add_temperature_remarks(const LeakEvidence& evidence, std::vector<std::string>& remarks) {
  const LeakTestPlan& plan = *evidence.plan;
  const bool still = plan.gauge.is_static();
  if (!evidence.sees_temperature()) {
    remarks.push_back(fmt::format(
        "{} One degree Fahrenheit moves the needle {:.1f} {}: {} looks like a leak, {} hides one. "
        "Up to {:.1f} degF of drift in a minute is allowed for before a pass, {:.1f} degF before a "
        "fail.",
        evidence.thermometer.sight == ThermometerSight::none
            ? "No temperature is logged."
            : "The thermometer stood still, which takes no doubt away.",
        evidence.per_degf, plan.gauge.unit(), still ? "warming" : "cooling",
        still ? "cooling" : "warming", unseen_drift_to_pass_degf, unseen_drift_to_fail_degf));
    return;
  }
  const bool raw_over = evidence.as_read.loss > plan.limit.loss;
  const PeriodLoss& loss = raw_over ? evidence.as_read : evidence.corrected;
  const double moved = loss.loss - loss.corrected;
  if (std::abs(moved) < 0.05) return;
  remarks.push_back(fmt::format(
      "{} by {:.2f} degF in the minute {} {:.1f} {} of the loss: as read it is {}, with the "
      "temperature taken out {}.",
      loss.warming_degf > 0 ? "Warming" : "Cooling", std::abs(loss.warming_degf),
      moved > 0 ? "makes up" : "hides", std::abs(moved), plan.gauge.unit(),
      loss_words(loss.loss, plan.gauge), loss_words(loss.corrected, plan.gauge)));
}

}  // namespace

std::vector<LeakDoubt> leak_doubts(const LeakEvidence& evidence) {
  std::vector<LeakDoubt> doubts;
  add_needle(evidence, doubts);
  add_settling(evidence, doubts);
  add_length(evidence, doubts);
  add_pressure(evidence, doubts);
  add_readings(evidence, doubts);
  add_temperature(evidence, doubts);
  return doubts;
}

LeakDoubt near_limit_doubt(const LeakEvidence& evidence, double low, double high) {
  const LeakGauge& gauge = evidence.plan->gauge;
  return {
      fmt::format("the loss in a minute lies between {} and {}, on both sides of the limit of {}",
                  loss_words_down(low, gauge), loss_words(high, gauge),
                  loss_words(evidence.plan->limit.loss, gauge)),
      next_near_limit(evidence)};
}

LeakDoubt settling_doubt(const LeakEvidence& evidence) {
  return {fmt::format("more than {} were lost, but air that settles after a quick stroke would "
                      "move the needle like this too",
                      loss_words(evidence.plan->limit.loss, evidence.plan->gauge)),
          settle_words(evidence)};
}

std::vector<std::string> leak_remarks(const LeakEvidence& evidence) {
  std::vector<std::string> remarks;
  add_temperature_remarks(evidence, remarks);
  if (evidence.settling.seen && evidence.settled_s >= least_settled_s)
    remarks.push_back(fmt::format("Settled from {:.0f} s on: until then {}.",
                                  evidence.settling.settled_s, settling_words(evidence)));
  for (const OddReading& odd : evidence.odd)
    remarks.push_back(fmt::format("A reading stands out: {}. {}",
                                  odd_reading_words(odd, evidence.plan->gauge),
                                  odd.jumps ? "The needle jumped there: a gauge that sticks, a tap "
                                              "on it, or a joint that gave way."
                                            : "A slip of the pen looks like this."));
  return remarks;
}

std::string odd_reading_words(const OddReading& odd, const LeakGauge& gauge) {
  return fmt::format("line {}, at {} s: {} {}, {:.0f} {} {} what the readings around it give",
                     odd.row.line, odd.row.time_s, odd.row.reading, gauge.unit(),
                     std::abs(odd.by()), gauge.unit(), odd.by() < 0 ? "below" : "above");
}

}  // namespace linewright
