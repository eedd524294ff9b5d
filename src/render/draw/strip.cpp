#include "render/draw/strip.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "render/amount.hpp"
#include "render/draw/strip_words.hpp"

namespace linewright {

namespace {

constexpr double width_pt = 17 * points_per_inch;
constexpr double left_pt = 66;
constexpr double right_pt = 1170;
constexpr double lane_pt = 11;
constexpr double chart_pt = 190;

/// Rules whose value is a gap to something else, and whose limit is a gap or a reach.
bool judges_gap(const Judgement& judgement) {
  return judgement.unit == Unit::inch && judgement.value && judgement.distance_in &&
         (judgement.rule == "clearance" || judgement.rule == "chafe" ||
          judgement.rule == "separation");
}

class Strip {
 public:
  Strip(const Drawing& drawing, const SceneRoute& route, const std::vector<StripMark>& marks)
      : drawing_(drawing), route_(route), marks_(marks), sheet_(width_pt) {
    length_in_ = std::max(1e-3, route.steps.back().distance_in);
    scale_.one_to = usual_ratio(length_in_, right_pt - left_pt);
    scale_.origin_x = left_pt;
    for (const Judgement& each : drawing.report.judgements)
      if (each.route == route.name && judges_gap(each)) gaps_.push_back(&each);
    findings_ = marked_findings(drawing.report, route.name);
    for (const SceneStep& step : route.steps)
      most_in_ = std::max(most_in_, 1.2 * step.likely_in.value_or(0));
    for (const Judgement* gap : gaps_) most_in_ = std::max(most_in_, 1.4 * gap->limit.value_or(0));
  }

  std::string drawn() {
    axis_y_ = 60 + lane_pt * static_cast<double>(lay_out_words());
    base_y_ = axis_y_ + 60 + chart_pt;
    // Leaders lie under all words.
    for (std::size_t i = 0; i < marks_.size(); ++i) leader(marks_[i], word_y_[i]);
    for (std::size_t i = 0; i < marks_.size(); ++i) mark(marks_[i], word_y_[i]);
    line();
    chart();
    findings();
    return sheet_.finished(foot(), drawing_.report.project_name + ": " + route_.name);
  }

 private:
  double x(double distance_in) const { return scale_.x(distance_in); }
  /// Of a gap; what is larger than the chart is drawn at its top.
  double y(double gap_in) const {
    return base_y_ - chart_pt * std::clamp(gap_in / most_in_, -0.1, 1.0);
  }

  /// Fills in where each mark's words stand, as lanes above the line; returns how many there are.
  std::size_t lay_out_words() {
    Lanes lanes;
    for (const StripMark& each : marks_) {
      const double left = std::min(x(each.middle_in()), right_pt - word_width(each));
      word_x_.push_back(left);
      word_y_.push_back(lane_pt * static_cast<double>(lanes.take(left, left + word_width(each))));
    }
    return lanes.count();
  }
  double word_width(const StripMark& each) const {
    return std::min(words_width(words_of_mark(each, drawing_.phrasing), 8), 0.58 * 8 * 46) + 8;
  }

  void leader(const StripMark& each, double above) {
    sheet_.path("leader", fmt::format("M{:.2f} {:.1f}V{:.1f}", x(each.middle_in()),
                                      axis_y_ - 20 - above, axis_y_));
  }

  void mark(const StripMark& each, double above) {
    const std::size_t index = static_cast<std::size_t>(&each - marks_.data());
    const double at = x(each.middle_in());
    const double words_y = axis_y_ - 22 - above;
    sheet_.text(word_x_[index], words_y, "", "start", words_of_mark(each, drawing_.phrasing), 46);
    const std::string title = words_of_mark(each, drawing_.phrasing);
    const double start = x(each.start_in);
    const double wide = std::max(0.5, x(each.end_in) - start);
    switch (each.kind) {
      case StripMarkKind::support:
        return sheet_.path("held support", fmt::format("M{:.2f} {:.1f}l-5 10h10Z", at, axis_y_),
                           title);
      case StripMarkKind::crossing:
        return sheet_.path("bar crossing", fmt::format("M{:.2f} {:.1f}v20", at, axis_y_ - 10),
                           title);
      case StripMarkKind::bend:
        return sheet_.path(
            "bar bend",
            fmt::format("M{0:.2f} {1:.1f}q{2:.2f} -10 {3:.2f} 0", start, axis_y_, wide / 2, wide),
            title);
      case StripMarkKind::sleeve:
      case StripMarkKind::attachment:
        return sheet_.path(
            each.kind == StripMarkKind::sleeve ? "part sleeve" : "cut attachment",
            fmt::format("M{:.2f} {:.1f}h{:.2f}v8h{:.2f}Z", start, axis_y_ - 4, wide, -wide), title);
    }
  }

  void line() {
    sheet_.add("<g stroke-width=\"2\">");
    sheet_.path(fmt::format("route {}", line_class(route_.kind)),
                fmt::format("M{:.2f} {:.1f}H{:.2f}", x(0), axis_y_, x(length_in_)), route_.name);
    sheet_.add("</g>\n");
    if (const RouteReport* report = drawing_.report.find_route(route_.name)) {
      sheet_.text(x(0), axis_y_ + 22, "head", "start", "from " + report->from, 50);
      sheet_.text(x(length_in_), axis_y_ + 22, "head", "end", "to " + report->to, 50);
    }
    const double unit = drawing_.phrasing.units_per_in();
    const double step = tick_step(34 / scale_.points(1) * unit);
    for (int i = 0; i * step / unit <= length_in_ * (1 + 1e-9); ++i) {
      sheet_.path("grid", fmt::format("M{:.2f} {:.1f}V{:.1f}", x(i * step / unit),
                                      base_y_ - chart_pt, base_y_ + 4));
      sheet_.text(x(i * step / unit), base_y_ + 13, "", "middle", fmt::format("{:g}", i * step));
    }
  }

  /// The area under the steps; parted where it is not known.
  std::string area(std::optional<double> SceneStep::*width) const {
    std::string d;
    const SceneStep* last = nullptr;
    const auto close = [&] {
      if (last) d += fmt::format("L{:.2f} {:.2f}Z", x(last->distance_in), base_y_);
    };
    for (const SceneStep& step : route_.steps) {
      if (!(step.*width)) {
        close();
        last = nullptr;
        continue;
      }
      if (!last) d += fmt::format("M{:.2f} {:.2f}", x(step.distance_in), base_y_);
      d += fmt::format("L{:.2f} {:.2f}", x(step.distance_in), y(*(step.*width)));
      last = &step;
    }
    close();
    return d;
  }

  void chart() {
    const Phrasing& say = drawing_.phrasing;
    const double unit = say.units_per_in();
    const double step = tick_step(most_in_ * unit / 6);
    for (int i = 0; i * step / unit <= most_in_ * (1 + 1e-9); ++i) {
      sheet_.path("grid",
                  fmt::format("M{:.2f} {:.1f}H{:.2f}", x(0), y(i * step / unit), x(length_in_)));
      sheet_.text(left_pt - 6, y(i * step / unit) + 3, "", "end", fmt::format("{:g}", i * step));
    }
    if (const std::string d = area(&SceneStep::bound_in); !d.empty()) sheet_.path("bound", d);
    if (const std::string d = area(&SceneStep::likely_in); !d.empty()) sheet_.path("likely", d);
    sheet_.path("axis", fmt::format("M{:.2f} {:.1f}V{:.1f}H{:.2f}", x(0), base_y_ - chart_pt,
                                    base_y_, x(length_in_)));
    sheet_.text(left_pt, base_y_ - chart_pt - 8, "head", "start",
                "Gaps, each joined to the bar that is its limit; reach: filled likely, dashed "
                "bound (" +
                    say.unit_name() + ")",
                120);
    sheet_.text(left_pt, base_y_ + 25, "head", "start",
                "Distance along the line (" + say.unit_name() + ")");
    for (const Judgement* each : gaps_) gap(*each);
  }

  void gap(const Judgement& each) {
    const double at = x(*each.distance_in);
    sheet_.add("<g class=\"gap\">");
    if (each.limit)
      sheet_.path("limit", fmt::format("M{0:.2f} {1:.1f}V{2:.1f}M{3:.2f} {1:.1f}h10", at,
                                       y(*each.limit), y(*each.value), at - 5));
    sheet_.mark(each.verdict, at, y(*each.value),
                each.rule + ": " + each.message + "; " + by_how_much(each, drawing_.phrasing));
    sheet_.add("</g>\n");
  }

  void findings() {
    int number = 0;
    for (const Judgement* each : findings_) {
      ++number;
      if (!each->distance_in) continue;
      const double at = x(*each->distance_in);
      sheet_.mark(each->verdict, at, axis_y_, each->rule + ": " + each->message);
      sheet_.label(at, axis_y_ + 14,
                   {left_pt - 20, axis_y_ + 24, width_pt, base_y_ - chart_pt - 18}, "head",
                   fmt::format("{}", number));
    }
    end_y_ = list_findings(sheet_, left_pt, base_y_ + 46, drawing_, findings_, true);
  }

  double foot() {
    const double y = end_y_ + 30;
    draw_scale_bars(sheet_, left_pt, y, scale_.one_to, drawing_.phrasing);
    draw_legend(sheet_, 470, y, {route_.kind});
    draw_title_block(
        sheet_, y + 22, drawing_,
        route_.name + " unrolled along its length of " + drawing_.phrasing.tape(length_in_),
        scale_.one_to);
    return y + 72;
  }

  const Drawing& drawing_;
  const SceneRoute& route_;
  const std::vector<StripMark>& marks_;
  Sheet sheet_;
  PaperScale scale_;
  double length_in_ = 0;
  double most_in_ = 0.5;
  double axis_y_ = 0;
  double base_y_ = 0;
  double end_y_ = 0;
  std::vector<double> word_x_;
  std::vector<double> word_y_;
  std::vector<const Judgement*> gaps_;
  std::vector<const Judgement*> findings_;
};

}  // namespace

std::string strip_view(const Drawing& drawing, const SceneRoute& route,
                       const std::vector<StripMark>& marks) {
  return Strip(drawing, route, marks).drawn();
}

}  // namespace linewright
