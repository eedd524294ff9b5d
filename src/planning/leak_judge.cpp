#include "planning/leak_judge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "physics/atmosphere.hpp"
#include "physics/trapped_gas.hpp"
#include "physics/tube_flow.hpp"
#include "planning/loss_words.hpp"

namespace linewright {

namespace {

double limit_of(const LeakEvidence& evidence) {
  return evidence.plan->limit.loss;
}

std::string words(const LeakEvidence& evidence, double loss) {
  return loss_words(loss, evidence.plan->gauge);
}

void add_log_doubts(const LeakEvidence& evidence, std::vector<std::string>& doubts) {
  const LeakTestPlan& plan = *evidence.plan;
  const std::string_view unit = plan.gauge.unit();
  const LeakLog& log = evidence.log.log;
  if (!evidence.full_minute)
    doubts.push_back(fmt::format("the log covers {:.0f} s, and the limit is for a full {:.0f} s",
                                 std::floor(log.duration_s()), plan.limit.period_s));
  if (evidence.start_differential_pa < least_start_share * plan.differential_pa)
    doubts.push_back(fmt::format(
        "the log starts at {:.0f} {}, too far below the {:.0f} {} of the test: a smaller pressure "
        "drives a smaller leak. Leave the rows before the pumping stopped out",
        log.rows.front().reading, unit, plan.target, unit));
  if (longest_gap_in_s(log) > longest_gap_s)
    doubts.push_back(
        fmt::format("{:.0f} s pass without a reading: what happened in between is not known",
                    longest_gap_in_s(log)));
  if (plan.gauge.is_static() && log.rows.back().reading < plan.at_rest - 50)
    doubts.push_back(
        fmt::format("the readings end below the field's {:.0f} ft, where no leak takes them: field "
                    "elevation or altimeter setting is not that of the test",
                    plan.at_rest));
  if (doubt_to_pass(evidence) > limit_of(evidence) / 2)
    doubts.push_back(fmt::format(
        "the readings scatter too much: by {:.1f} {} each (standard deviation), which leaves the "
        "loss uncertain by {:.0f} {}",
        doubt_to_pass(evidence) / evidence.factor, unit, doubt_to_pass(evidence), unit));
}

void add_temperature_doubts(const LeakEvidence& evidence, std::vector<std::string>& doubts) {
  const LeakTestPlan& plan = *evidence.plan;
  const std::string_view unit = plan.gauge.unit();
  if (largest_rise(evidence) > rise_allowed(evidence))
    doubts.push_back(fmt::format(
        "the readings rise by {:.1f} {}, which no leak does: {}, or pumping, hides a loss",
        largest_rise(evidence), unit, plan.gauge.is_static() ? "cooling" : "warming"));
  if (!evidence.logged) return;
  const double change_degf =
      std::max(std::abs(evidence.as_read.warming_degf), std::abs(evidence.corrected.warming_degf));
  if (change_degf > most_correction_degf)
    doubts.push_back(fmt::format(
        "the temperature moved {:.1f} degF in the minute: too much for one thermometer to correct",
        change_degf));
  if (temperature_contradicted(evidence))
    doubts.push_back("the readings do not follow the temperature that was logged");
}

/// What a reader should know about temperature, whatever the answer.
void add_temperature_remarks(const LeakEvidence& evidence, std::vector<std::string>& reasons) {
  const LeakTestPlan& plan = *evidence.plan;
  const bool still = plan.gauge.is_static();
  if (!evidence.logged) {
    reasons.push_back(fmt::format(
        "No temperature is logged. One degree Fahrenheit moves the needle {:.1f} {}: {} looks "
        "like a leak, {} hides one. Up to {:.0f} degF of drift is allowed for before a pass, "
        "{:.1f} degF before a fail.",
        evidence.per_degf, plan.gauge.unit(), still ? "warming" : "cooling",
        still ? "cooling" : "warming", unseen_drift_to_pass_degf, unseen_drift_to_fail_degf));
    return;
  }
  const bool raw_over = evidence.as_read.loss > limit_of(evidence);
  const PeriodLoss& loss = raw_over ? evidence.as_read : evidence.corrected;
  const double moved = loss.loss - loss.corrected;
  if (std::abs(moved) < 0.05) return;
  reasons.push_back(fmt::format(
      "{} by {:.2f} degF in the minute {} {:.1f} {} of the loss: as read it is {}, with the "
      "temperature taken out {}.",
      loss.warming_degf > 0 ? "Warming" : "Cooling", std::abs(loss.warming_degf),
      moved > 0 ? "makes up" : "hides", std::abs(moved), plan.gauge.unit(),
      words(evidence, loss.loss), words(evidence, loss.corrected)));
}

struct Bounds {
  double low = 0;
  double high = 0;
  bool fails = false;
};

Bounds bounds_of(const LeakEvidence& evidence) {
  Bounds bounds;
  bounds.high = highest_loss(evidence);
  const double as_read = lowest_loss(evidence, LossKind::as_read);
  bounds.low = evidence.logged ? lowest_loss(evidence, LossKind::corrected) : as_read;
  // Where the thermometer is not to be trusted, both the readings and their correction must fail.
  if (temperature_contradicted(evidence)) bounds.low = std::min(bounds.low, as_read);
  bounds.fails = bounds.low > limit_of(evidence);
  return bounds;
}

std::string interval_words(const LeakEvidence& evidence, const Bounds& bounds) {
  return fmt::format("between {} and {}", loss_words_down(bounds.low, evidence.plan->gauge),
                     words(evidence, bounds.high));
}

void answer(const LeakEvidence& evidence, LeakVerdict& verdict) {
  const Bounds bounds = bounds_of(evidence);
  verdict.interval = {bounds.low, bounds.high};
  std::vector<std::string> doubts;
  add_log_doubts(evidence, doubts);
  add_temperature_doubts(evidence, doubts);
  const std::string limit = words(evidence, limit_of(evidence));
  if (bounds.fails) {
    verdict.answer = LeakAnswer::fail;
    verdict.reasons.push_back(fmt::format(
        "At least {} were lost in {:.0f} s, all doubts in the system's favour; {} are allowed.",
        loss_words_down(bounds.low, evidence.plan->gauge),
        verdict.corrected.end_s - verdict.corrected.start_s, limit));
  } else if (doubts.empty() && bounds.high <= limit_of(evidence)) {
    verdict.answer = LeakAnswer::pass;
    verdict.reasons.push_back(
        fmt::format("At most {} were lost in the worst minute, all doubts against the system; {} "
                    "are allowed.",
                    words(evidence, bounds.high), limit));
  } else {
    verdict.answer = LeakAnswer::unknown;
    if (evidence.full_minute && bounds.high > limit_of(evidence))
      doubts.push_back(fmt::format("the loss in a minute lies {}, on both sides of the limit of {}",
                                   interval_words(evidence, bounds), limit));
    for (const std::string& doubt : doubts)
      verdict.reasons.push_back("Not decided: " + doubt + ".");
  }
  add_temperature_remarks(evidence, verdict.reasons);
}

void add_time_constant(const LeakEvidence& evidence, LeakVerdict& verdict) {
  if (!evidence.fit) {
    const PeriodLoss& loss = evidence.corrected;
    verdict.time_constant_s = leak_time_constant_s(loss.start_differential_pa,
                                                   loss.start_differential_pa - loss.corrected_pa,
                                                   loss.end_s - loss.start_s);
    return;
  }
  if (evidence.fit->rate_per_s > 2 * evidence.fit->rate_error_per_s && evidence.fit->rate_per_s > 0)
    verdict.time_constant_s = 1 / evidence.fit->rate_per_s;
}

/// Where no full minute is logged, what the curve through it would lose in one.
void project_loss(const LeakEvidence& evidence, LeakVerdict& verdict) {
  if (evidence.full_minute) return;
  verdict.loss_is_projected = true;
  if (!verdict.time_constant_s) return;
  const auto left_pa = differential_after_pa(
      evidence.start_differential_pa, evidence.plan->limit.period_s, *verdict.time_constant_s);
  const LeakGauge& gauge = evidence.plan->gauge;
  const auto later = gauge.reading(gauge.pressure_at_differential_pa(left_pa.value_or(0)));
  if (!later) return;
  const double projected = evidence.log.log.rows.front().reading - *later;
  verdict.loss = std::max(verdict.loss, projected);
  if (verdict.loss_corrected)
    *verdict.loss_corrected = std::max(*verdict.loss_corrected, projected);
}

void add_leak(const LeakEvidence& evidence, LeakVerdict& verdict) {
  const PeriodLoss& loss = evidence.corrected;
  const LeakTestPlan& plan = *evidence.plan;
  const auto leak = leak_flow_in3_per_min(plan.volume_in3, loss.corrected_pa,
                                          loss.end_s - loss.start_s, plan.gauge.ambient_pa);
  const auto density =
      air_density_kg_per_m3(plan.gauge.ambient_pa, kelvins_from_degf(plan.setup.temperature_degf));
  if (!leak || !density || *leak <= 0) return;
  verdict.leak_in3_per_min = leak;
  verdict.hole_in = equivalent_orifice_in(
      *leak / 60, loss.start_differential_pa - loss.corrected_pa / 2, *density);
}

}  // namespace

std::variant<LeakVerdict, std::string> judge_leak(const LeakTestPlan& plan, const LeakLog& log) {
  const std::optional<LeakEvidence> evidence = gather_evidence(plan, log);
  if (!evidence) return "the readings, at this altimeter setting, lie off the standard troposphere";
  LeakVerdict verdict;
  verdict.logged_s = log.duration_s();
  verdict.as_read = evidence->as_read;
  verdict.corrected = evidence->corrected;
  verdict.loss = evidence->as_read.loss;
  if (log.has_temperature) verdict.loss_corrected = evidence->corrected.corrected;
  verdict.reading_noise = std::max(evidence->noise.overall, evidence->fitted_noise);
  add_time_constant(*evidence, verdict);
  project_loss(*evidence, verdict);
  add_leak(*evidence, verdict);
  answer(*evidence, verdict);
  return verdict;
}

}  // namespace linewright
