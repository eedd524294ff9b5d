#include "render/leak_test_text.hpp"

#include <fmt/format.h>

#include <cmath>

#include "model/units.hpp"
#include "physics/airspeed.hpp"
#include "physics/atmosphere.hpp"
#include "planning/loss_words.hpp"
#include "render/amount.hpp"
#include "render/layout.hpp"
#include "render/leak_words.hpp"

namespace linewright {

namespace {

std::string comma_list(const std::vector<std::string>& names) {
  return fmt::format("{}", fmt::join(names, ", "));
}

constexpr std::size_t label_columns = 14;

std::string row(std::string_view label, std::string_view text) {
  return wrapped(left(label, label_columns), text);
}

std::string list(std::string_view title, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string text = fmt::format("\n{}\n", title);
  for (const std::string& item : items) text += wrapped("- ", item);
  return text;
}

std::string reading(double value, const LeakTestPlan& plan) {
  return fmt::format("{} {}", fixed_number(value, plan.gauge.is_static() ? 0 : 1),
                     plan.gauge.unit());
}

std::string fine_inhg(double pascals) {
  return fixed_number(inhg_from_pascals(pascals), 3) + " inHg";
}

std::string hole_words(const std::optional<double>& hole_in, const Phrasing& phrasing) {
  if (!hole_in) return {};
  const std::string size = phrasing.unit == LengthUnit::millimetre
                               ? fixed_number(*hole_in * mm_per_in, 2) + " mm"
                               : fixed_number(*hole_in, 4) + " in";
  return fmt::format(
      "; as one sharp-edged hole about {} across (rough: a real leak is a crack, or several)",
      size);
}

std::string title(const LeakTestReport& report) {
  return wrapped(
      "", fmt::format("Leak test of system '{}': {}", report.plan.system, report.project_name));
}

std::string test_words(const LeakTestPlan& plan) {
  if (plan.gauge.is_static())
    return fmt::format("{:.0f} ft indicated, {:.0f} ft above the field: {}, a suction of {}",
                       plan.target, plan.target - plan.at_rest, fine_inhg(plan.target_pa),
                       fine_inhg(plan.differential_pa));
  return fmt::format("{:.0f} kt: {}, {} above ambient, a water column of {:.2f} in at 20 degC",
                     plan.target, fine_inhg(plan.target_pa), fine_inhg(plan.differential_pa),
                     inh2o_20c_from_pascals(plan.differential_pa));
}

std::string stroke_words(const LeakTestPlan& plan, const Phrasing& phrasing) {
  // Syringes are marked in mL wherever they are sold.
  std::string words =
      phrasing.unit == LengthUnit::millimetre
          ? millilitres(plan.stroke_in3)
          : fmt::format("{} ({})", volume(plan.stroke_in3, phrasing), millilitres(plan.stroke_in3));
  words += " in one slow stroke at constant temperature";
  if (plan.strokes && plan.setup.syringe_in3)
    words += fmt::format("; {} {} of a {} syringe", *plan.strokes,
                         *plan.strokes == 1 ? "stroke" : "strokes",
                         fmt::format("{:.4g} mL", *plan.setup.syringe_in3 * cm3_per_in3));
  return words;
}

std::string temperature_words(const LeakTestPlan& plan) {
  const std::string_view unit = plan.gauge.unit();
  const double effect = plan.effect_per_degf;
  return fmt::format(
      "warming of 1 degF moves the needle {:+.1f} {}, of 1 degC {:+.1f} {}. A sudden stroke {} "
      "the air by up to {:.1f} degF, worth {:.0f} {} of false loss: wait {:.0f} s at least "
      "[common practice, no source], and until the needle falls steadily, top up, then start",
      effect, unit, effect / kelvins_per_degf, unit, plan.quick_stroke_degf < 0 ? "cools" : "heats",
      std::abs(plan.quick_stroke_degf), std::ceil(plan.quick_stroke_loss), unit, plan.wait_s);
}

std::string part_volume_words(const PartTest& part, const Phrasing& phrasing) {
  return fmt::format("; {} in the test set ({}), {} in all; the whole system has {}",
                     volume(part.gauge_in3, phrasing), part.gauge_stated ? "stated" : "taken",
                     volume(part.tested_in3, phrasing), volume(part.whole_in3, phrasing));
}

std::string limit_rows(const LeakTestPlan& plan, const Phrasing& phrasing) {
  if (!plan.part)
    return row("Limit", fmt::format("at most {} lost in {:.0f} s",
                                    loss_words(plan.limit.loss, plan.gauge), plan.limit.period_s)) +
           row("", cite(plan.limit.source));
  const PartTest& part = *plan.part;
  const LeakLimit rule = leak_limit(plan.gauge.kind);
  return row("Share",
             fmt::format("at most {} lost in {:.0f} s: {} of ambient air in a minute, {:.0f} % of "
                         "what the whole system may leak, as this part is of its volume",
                         loss_words_down(part.share_loss, plan.gauge), rule.period_s,
                         volume(part.share_leak_in3_per_min, phrasing), 100 * part.share)) +
         row("Whole", fmt::format("over {} the whole system must fail: {} in a minute, all that it "
                                  "may leak, seen on this volume",
                                  loss_words(part.whole_loss, plan.gauge),
                                  volume(part.whole_leak_in3_per_min, phrasing))) +
         row("Rule",
             fmt::format("{} lost in {:.0f} s by the whole system itself: {}",
                         loss_words(rule.loss, plan.gauge), rule.period_s, cite(rule.source)));
}

std::string figures(const LeakTestPlan& plan, const Phrasing& phrasing) {
  std::string text = "\n";
  text += row("Volume", volume(plan.volume_in3, phrasing) + ", bores and nodes" +
                            (plan.part ? part_volume_words(*plan.part, phrasing) : ""));
  text += row("Field", fmt::format("{:.0f} ft, altimeter setting {:.2f} inHg, {:.1f} degF: {} "
                                   "around",
                                   plan.setup.elevation_ft, plan.setup.altimeter_setting_inhg,
                                   plan.setup.temperature_degf, fine_inhg(plan.gauge.ambient_pa)));
  text += row("Test", test_words(plan));
  text += row("Stroke", stroke_words(plan, phrasing));
  text += limit_rows(plan, phrasing);
  text +=
      row("At the limit",
          fmt::format("the pressure {} by {}; leak {} of ambient air in a minute{}",
                      plan.gauge.is_static() ? "rises" : "falls", fine_inhg(plan.limit_change_pa),
                      volume(plan.limit_leak_in3_per_min, phrasing),
                      hole_words(plan.limit_hole_in, phrasing)));
  text += row("Temperature", temperature_words(plan));
  return text;
}

std::string set_up(const LeakTestPlan& plan) {
  const TestConnection& connection = plan.connection;
  std::string text = "\nSet up\n";
  text += row("  Connect", fmt::format("at {}: {}", connection.at, connection.why));
  std::vector<std::string> sealed = connection.cap;
  if (!plan.gauge.is_static()) sealed.push_back("the drain hole of the probe");
  if (!sealed.empty()) text += row("  Seal", comma_list(sealed));
  if (plan.part && !plan.part->caps.empty())
    text += row("  Cap", fmt::format("the ends of {}", fmt::join(plan.part->caps, ", ")));
  if (!connection.close.empty()) text += row("  Keep shut", comma_list(connection.close));
  if (!connection.instruments.empty())
    text += row("  On the line", comma_list(connection.instruments));
  return text;
}

std::string expected_readings(const LeakTestPlan& plan) {
  std::string text = "\nA leak exactly at the limit reads\n";
  for (const TimedReading& each : plan.readings_at_limit)
    text += fmt::format("  {} s  {}\n", right(fixed_number(each.time_s, 0), 4),
                        right(reading(each.reading, plan), 10));
  return text;
}

std::string outcome_words(const std::vector<std::string>& sections, double volume_in3, int step,
                          const Phrasing& phrasing) {
  const std::string where =
      fmt::format("{} ({})", fmt::join(sections, ", "), volume(volume_in3, phrasing));
  return step > 0 ? fmt::format("{}: step {}", where, step) : "found: " + where;
}

std::string search(const LeakTestPlan& plan, const Phrasing& phrasing) {
  if (plan.sections.empty()) return {};
  std::string text =
      "\nIf it loses more: the search by joints, likeliest and least trouble first\n";
  text +=
      wrapped("  ",
              "Let the pressure off before a joint is opened. Seal the opening on the test set's "
              "side, pump to the target, wait, and read for a minute. The test set needs a gauge "
              "of its own: an instrument may be on the far side. If it loses, leave the far side "
              "off; if it holds, make the joint again. Where both sides hold, the joint itself "
              "was the leak. The loss stated is that of a leak at the limit, all in one place. "
              "Which joints are likelier is common practice, no source: what was last undone comes "
              "before them all.");
  const bool stated = plan.part && plan.part->gauge_stated;
  text += wrapped("  ", fmt::format("With the test set and its hose, {}{}.",
                                    volume(plan.search_set_in3, phrasing),
                                    stated ? " as stated" : " taken: --gauge-volume states yours"));
  int number = 0;
  for (const SplitStep& step : plan.sections) {
    text += wrapped(left(fmt::format("  {}.", ++number), 6),
                    fmt::format("Undo {} at {}; seal {}. Tested: {}.", step.route, step.node,
                                sealed_words(step), volume(step.tested_in3, phrasing)));
    text += wrapped(
        "        ",
        fmt::format("Loses ({} in {:.0f} s, to {}): {}", loss_words(step.loss, plan.gauge),
                    plan.limit.period_s, reading(step.reading, plan),
                    outcome_words(step.if_loses, step.loses_in3, step.step_if_loses, phrasing)));
    text +=
        wrapped("        ", fmt::format("Holds: {}", outcome_words(step.if_holds, step.holds_in3,
                                                                   step.step_if_holds, phrasing)));
  }
  return text;
}

std::string loss_lines(const LeakTestReport& report, const Phrasing& phrasing) {
  const LeakTestPlan& plan = report.plan;
  const LeakVerdict& verdict = report.judged->verdict;
  std::string text =
      row("Loss",
          fmt::format(
              "{} {}, from {} s to {} s", loss_words(verdict.loss, plan.gauge),
              verdict.loss_is_projected ? "projected to a full minute" : "in the worst full minute",
              fixed_number(verdict.as_read.start_s, 0), fixed_number(verdict.as_read.end_s, 0)));
  if (verdict.loss_corrected)
    text += row("", fmt::format("{} with the temperature taken out",
                                loss_words(*verdict.loss_corrected, plan.gauge)));
  text += row("", fmt::format("between {} and {} with all doubts",
                              loss_words_down(verdict.interval.low, plan.gauge),
                              loss_words(verdict.interval.high, plan.gauge)));
  if (plan.part)
    text += limit_rows(plan, phrasing);
  else
    text += row("Limit", fmt::format("{} in {:.0f} s: {}", loss_words(plan.limit.loss, plan.gauge),
                                     plan.limit.period_s, cite(plan.limit.source)));
  if (verdict.time_constant_s)
    text +=
        row("Leak", fmt::format("time constant {} s{}", fixed_number(*verdict.time_constant_s, 0),
                                verdict.leak_in3_per_min
                                    ? fmt::format("; {} of ambient air in a minute{}",
                                                  volume(*verdict.leak_in3_per_min, phrasing),
                                                  hole_words(verdict.hole_in, phrasing))
                                    : ""));
  return text;
}

std::string_view thermometer_words(ThermometerSight sight) {
  switch (sight) {
    case ThermometerSight::moves:
      return "with temperature";
    case ThermometerSight::still:
      return "with a thermometer that stood still";
    case ThermometerSight::none:
      break;
  }
  return "without temperature";
}

std::string log_line(const LeakTestReport& report) {
  const JudgedLog& judged = *report.judged;
  return row("Log",
             fmt::format("{}: {} readings over {:.0f} s, {}; scatter {:.1f} {}",
                         one_line(judged.file), judged.log.rows.size(), judged.verdict.logged_s,
                         thermometer_words(judged.verdict.thermometer),
                         judged.verdict.reading_noise, report.plan.gauge.unit()));
}

std::string readings_table(const LeakTestReport& report) {
  const LeakLog& log = report.judged->log;
  std::string text =
      fmt::format("\nReadings\n  {}{}{}\n", right("time_s", 10),
                  right(report.plan.gauge.is_static() ? "altitude_ft" : "airspeed_kt", 14),
                  log.has_temperature ? right("temperature_degF", 18) : "");
  for (const LogRow& each : log.rows)
    text += fmt::format("  {:>10}{:>14}{}\n", each.time_s, each.reading,
                        log.has_temperature ? fmt::format("{:>18}", each.temperature_degf) : "");
  return text;
}

std::string lines_to_fill() {
  std::string text = "\nTo be filled in by hand\n";
  for (const char* line : {"Aeroplane", "Test set, serial number", "Instruments, serial numbers",
                           "Flight configuration restored", "Done by", "Licence", "Signature"})
    text += fmt::format("  {} {}\n", left(line, 32), std::string(44, '_'));
  return text;
}

}  // namespace

std::string leak_plan_text(const LeakTestReport& report, const TextStyle& style) {
  const LeakTestPlan& plan = report.plan;
  std::string text = title(report);
  text += list("Cautions", plan.cautions);
  text += figures(plan, style.phrasing);
  text += set_up(plan);
  text += expected_readings(plan);
  text += search(plan, style.phrasing);
  text += list("Notes", plan.notes);
  text += list("Assumed, because the project does not say", report.assumptions);
  return text;
}

std::string leak_verdict_text(const LeakTestReport& report, const TextStyle& style) {
  const LeakVerdict& verdict = report.judged->verdict;
  std::string text = title(report);
  text += left("Verdict", label_columns) + verdict_text(verdict_of(verdict.answer), style) + "\n";
  text += loss_lines(report, style.phrasing);
  text += log_line(report);
  text += list("Why", verdict.reasons);
  text += list("What to do next", verdict.next);
  if (style.quiet) return text;
  text +=
      list("Before you rely on it", {"The verdict is about the readings in the log. Whether the "
                                     "right openings were sealed, the test set was tight and the "
                                     "gauge was right, the log cannot tell.",
                                     "A test that is required is done and signed for by whoever "
                                     "the local authority licenses for it."});
  return text;
}

std::string leak_record_text(const LeakTestReport& report, const std::string& date) {
  const LeakTestPlan& plan = report.plan;
  const LeakVerdict& verdict = report.judged->verdict;
  std::string text = "LEAK TEST RECORD\n\n";
  text += row("Date", date);
  text += row("Project", report.project_name);
  text += row("System", plan.system);
  text += row("Verdict", verdict_word(verdict_of(verdict.answer)));
  text += loss_lines(report, {});
  text += log_line(report);
  text += list("Why", verdict.reasons);
  text += list("What to do next", verdict.next);
  text += figures(plan, {});
  text += set_up(plan);
  text += readings_table(report);
  text += list("Notes", plan.notes);
  text += lines_to_fill();
  text += "\n";
  text +=
      wrapped("",
              "This record is the builder's own. It is no certificate: a test that is required is "
              "done and signed for by whoever the local authority licenses for it.");
  return text;
}

}  // namespace linewright
