#include "render/chart/leak_chart.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "render/chart/chart.hpp"
#include "render/leak_words.hpp"

namespace linewright {

namespace {

constexpr double width_pt = 11 * points_per_inch;
constexpr double height_pt = 7.5 * points_per_inch;
constexpr PaperBox room{70, 110, 750, 430};
constexpr int curve_steps = 60;

/// The gauge as a leak lets the pressure go, from a reading at `from_s` to `to_s`.
Chart::Points decay(const LeakGauge& gauge, double reading, double from_s, double to_s,
                    double time_constant_s) {
  Chart::Points points;
  const auto start_pa = gauge.pressure_pa(reading);
  if (!start_pa || !(time_constant_s > 0)) return points;
  for (int i = 0; i <= curve_steps; ++i) {
    const double passed_s = (to_s - from_s) * i / curve_steps;
    const double left_pa = gauge.differential_pa(*start_pa) * std::exp(-passed_s / time_constant_s);
    if (const auto shown = gauge.reading(gauge.pressure_at_differential_pa(left_pa)))
      points.emplace_back(from_s + passed_s, *shown);
  }
  return points;
}

/// Of the leak that takes the gauge from one reading to a lower one in this time; zero where the
/// lower one is beyond rest.
double time_constant_s(const LeakGauge& gauge, double from, double to, double time_s) {
  const auto from_pa = gauge.pressure_pa(from);
  const auto to_pa = gauge.pressure_pa(to);
  if (!from_pa || !to_pa) return 0;
  const double ratio = gauge.differential_pa(*from_pa) / gauge.differential_pa(*to_pa);
  return ratio > 1 ? time_s / std::log(ratio) : 0;
}

/// Between two rows on a straight line.
double reading_at(const LeakLog& log, double time_s) {
  for (std::size_t i = 1; i < log.rows.size(); ++i) {
    const LogRow& before = log.rows[i - 1];
    const LogRow& after = log.rows[i];
    if (time_s <= after.time_s)
      return before.reading + (after.reading - before.reading) * (time_s - before.time_s) /
                                  (after.time_s - before.time_s);
  }
  return log.rows.back().reading;
}

std::string_view answer_word(LeakAnswer answer) {
  return verdict_word(verdict_of(answer));
}

class LeakChart {
 public:
  explicit LeakChart(const LeakTestReport& report)
      : report_(report), plan_(report.plan), sheet_(width_pt) {}

  std::string drawn() {
    const std::string unit{plan_.gauge.unit()};
    heading(unit);
    report_.judged ? log(unit) : limit_only(unit);
    sheet_.path("bar", fmt::format("M36 {:.1f}H{:.1f}", height_pt - 44, width_pt - 36));
    sheet_.text(36, height_pt - 30, "small", "start",
                "A leak test for instrument flight is signed off by whoever the local authority "
                "licenses.",
                120);
    return sheet_.finished(height_pt, report_.project_name + ": leak test of " + plan_.system);
  }

 private:
  void heading(const std::string& unit) {
    sheet_.text(36, 34, "title", "start", report_.project_name, 60);
    sheet_.text(
        36, 50, "", "start",
        fmt::format("Leak test of {}: no more than {:g} {} lost in {:g} s, from {:.0f} {}",
                    plan_.system, plan_.limit.loss, unit, plan_.limit.period_s, plan_.target, unit),
        140);
    sheet_.text(36, 62, "small", "start", "Limit: " + cite(plan_.limit.source), 150);
  }

  void limit_only(const std::string& unit) {
    const double end_s = plan_.limit.period_s;
    const double least = plan_.target - plan_.limit.loss;
    const Chart::Points limit =
        decay(plan_.gauge, plan_.target, 0, end_s, plan_.limit_time_constant_s);
    Chart chart(sheet_, room, {0, end_s}, AxisRange::about({plan_.target, least}), "seconds",
                "gauge, " + unit);
    chart.curve("limit-line", limit);
    for (const TimedReading& each : plan_.readings_at_limit)
      chart.dot("dot", each.time_s, each.reading,
                fmt::format("{:g} s: {:.1f} {}", each.time_s, each.reading, unit));
    key({{"limit-line", "a leak that loses just what is allowed: the gauge must stay above it"}});
  }

  void log(const std::string& unit) {
    const LeakLog& log = report_.judged->log;
    const LeakVerdict& verdict = report_.judged->verdict;
    const PeriodLoss& worst = verdict.as_read;
    const double start = reading_at(log, worst.start_s);
    std::vector<double> up{start - plan_.limit.loss};
    for (const LogRow& row : log.rows) up.push_back(row.reading);
    Chart chart(sheet_, room, AxisRange::about({log.rows.front().time_s, log.rows.back().time_s}),
                AxisRange::about(up), "seconds", "gauge, " + unit);
    const double end_s = worst.start_s + plan_.limit.period_s;
    chart.area("likely", {{worst.start_s, chart_foot(up)},
                          {worst.start_s, start},
                          {worst.end_s, reading_at(log, worst.end_s)},
                          {worst.end_s, chart_foot(up)}});
    chart.curve("limit-line", decay(plan_.gauge, start, worst.start_s, end_s,
                                    time_constant_s(plan_.gauge, start, start - plan_.limit.loss,
                                                    plan_.limit.period_s)));
    const double fit_from_s = verdict.settled_from_s.value_or(log.rows.front().time_s);
    if (verdict.time_constant_s)
      chart.curve("fit-line", decay(plan_.gauge, reading_at(log, fit_from_s), fit_from_s,
                                    log.rows.back().time_s, *verdict.time_constant_s));
    for (const LogRow& row : log.rows)
      chart.dot(stands_out(row) ? "dot odd" : "dot", row.time_s, row.reading,
                fmt::format("line {}: {:g} s, {:g} {}", row.line, row.time_s, row.reading, unit));
    sheet_.mark(verdict_of(verdict.answer), width_pt - 130, 30, answer_word(verdict.answer));
    sheet_.text(width_pt - 120, 34, "title", "start", answer_word(verdict.answer));
    if (!verdict.reasons.empty()) sheet_.text(36, 74, "", "start", verdict.reasons.front(), 160);
    key({{"dot", "readings; filled: one that stands out"},
         {"likely", fmt::format("the worst minute as read: {:.1f} {} lost", verdict.loss, unit)},
         {"limit-line", "the limit, from where that minute began"},
         {"fit-line", verdict.time_constant_s
                          ? (log.has_temperature
                                 ? "what the fitted leak alone would show: the rest is temperature"
                                 : "the leak fitted to all readings")
                          : "no leak can be told from the noise"}});
  }

  double chart_foot(const std::vector<double>& up) const { return AxisRange::about(up).from; }

  bool stands_out(const LogRow& row) const {
    const auto& odd = report_.judged->verdict.stands_out;
    return std::any_of(odd.begin(), odd.end(),
                       [&](const OddReading& each) { return each.row.line == row.line; });
  }

  void key(const std::vector<std::pair<std::string, std::string>>& rows) {
    double x = room.left;
    double y = room.bottom + 38;
    for (const auto& [css_class, words] : rows) {
      const double wide = 46 + words_width(words, 8);
      if (x + wide > room.right) {
        x = room.left;
        y += 14;
      }
      if (css_class == "dot")
        sheet_.add(fmt::format("<circle class=\"dot\" cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"2.6\"/>\n",
                               x + 12, y - 3));
      else if (css_class == "likely")
        sheet_.path("likely", fmt::format("M{:.1f} {:.1f}h22v8h-22Z", x, y - 7));
      else
        sheet_.path(css_class, fmt::format("M{:.1f} {:.1f}h24", x, y - 3));
      sheet_.text(x + 30, y, "", "start", words, 120);
      x += wide;
    }
  }

  const LeakTestReport& report_;
  const LeakTestPlan& plan_;
  Sheet sheet_;
};

}  // namespace

std::string leak_chart(const LeakTestReport& report) {
  return LeakChart(report).drawn();
}

}  // namespace linewright
