#include "render/chart/cut_charts.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "render/draw/sheet.hpp"
#include "render/draw/strip_words.hpp"

namespace linewright {

namespace {

constexpr double width_pt = 17 * points_per_inch;
constexpr double left_pt = 66;
constexpr double right_pt = 1158;
constexpr double lane_pt = 11;
constexpr double words_pt = 8;
constexpr double tube_pt = 8;

/// Cables are cut as `rig` says, and casings are led in place.
bool is_drawn(const RouteCut& cut) {
  return !cut.cable && !cut.casing;
}

std::string words_of_bend(std::size_t number, const BendStep& bend, const Phrasing& phrasing) {
  std::string words = fmt::format("{}: {} at {}", number, phrasing.angle(bend.angle_deg),
                                  phrasing.tape(bend.mark_start_in));
  if (number > 1) words += fmt::format(", turned {}", phrasing.angle(bend.rotation_deg));
  return words + fmt::format(", radius {}", phrasing.tape(bend.radius_in));
}

class CutCharts {
 public:
  CutCharts(const Report& report, const TextStyle& style)
      : report_(report), phrasing_(style.phrasing), all_bends_(style.verbose), sheet_(width_pt) {
    double longest_in = 1;
    for (const RouteReport& route : report.routes)
      if (is_drawn(route.cut)) longest_in = std::max(longest_in, route.cut.cut_length_in);
    one_to_ = usual_ratio(longest_in, right_pt - left_pt);
  }

  std::string drawn() {
    sheet_.text(36, 34, "title", "start", report_.project_name, 60);
    sheet_.text(
        36, 50, "", "start",
        "Each line straight, before it is bent: marks where bends begin and end, in the "
        "order they are made; the turn is of the whole tube about its own axis since the bend "
        "before, the right hand's thumb toward the end already bent. "
        "Shaded: trimmed off at the end. Soft lines are bent as they are led, cables are in rig.",
        240);
    double y = 78;
    for (const RouteReport& route : report_.routes)
      if (is_drawn(route.cut)) y = draw(route, y);
    draw_scale_bars(sheet_, left_pt, y + 18, one_to_, phrasing_);
    return sheet_.finished(y + 48, report_.project_name + ": what to cut and bend");
  }

 private:
  double x(double along_in) const { return left_pt + along_in * points_per_inch / one_to_; }

  /// Where the next line begins.
  double draw(const RouteReport& route, double top) {
    const RouteCut& cut = route.cut;
    const std::vector<BendStep> bends =
        cut.rigid || all_bends_ ? cut.bends : std::vector<BendStep>{};
    Lanes lanes;
    std::vector<std::string> words;
    std::vector<PaperBox> places;
    for (std::size_t i = 0; i < bends.size(); ++i) {
      words.push_back(words_of_bend(i + 1, bends[i], phrasing_));
      const double wide = words_width(words.back(), words_pt) + 8;
      const double left = std::max(left_pt, std::min(x(bends[i].mark_start_in), right_pt - wide));
      const double up = lane_pt * static_cast<double>(lanes.take(left, left + wide));
      places.push_back({left, up, left + wide, up});
    }
    const double tube_y = top + 18 + lane_pt * static_cast<double>(lanes.count());
    sheet_.text(left_pt, top, "head", "start", heading(route), 150);
    // Leaders lie under all words.
    for (std::size_t i = 0; i < bends.size(); ++i)
      draw_bend(bends[i], tube_y, tube_y - 5 - places[i].top, words[i]);
    for (std::size_t i = 0; i < words.size(); ++i)
      sheet_.text(places[i].left, tube_y - 7 - places[i].top, "", "start", words[i], 90);
    sheet_.path("cut tube", fmt::format("M{0:.2f} {1:.1f}H{2:.2f}v{3}H{0:.2f}Z", x(0), tube_y,
                                        x(cut.length_in), tube_pt));
    if (cut.cut_length_in > cut.length_in)
      sheet_.path("likely", fmt::format("M{0:.2f} {1:.1f}H{2:.2f}v{3}H{0:.2f}Z", x(cut.length_in),
                                        tube_y, x(cut.cut_length_in), tube_pt));
    return tube_y + 34;
  }

  std::string heading(const RouteReport& route) const {
    const RouteCut& cut = route.cut;
    std::string words =
        fmt::format("{}: {}, from {} to {}; ", cut.name, cut.line, route.from, route.to);
    return words + fmt::format("cut {}, {} as fitted", phrasing_.tape(cut.cut_length_in),
                               phrasing_.tape(cut.length_in));
  }

  void draw_bend(const BendStep& bend, double tube_y, double words_y, const std::string& words) {
    const double start = x(bend.mark_start_in);
    const double end = std::max(start + 0.5, x(bend.mark_end_in));
    sheet_.path("held bend",
                fmt::format("M{0:.2f} {1:.1f}H{2:.2f}v{3}H{0:.2f}Z", start, tube_y, end, tube_pt),
                words);
    sheet_.path("leader", fmt::format("M{:.2f} {:.1f}V{:.1f}", start, tube_y, words_y));
  }

  const Report& report_;
  const Phrasing phrasing_;
  const bool all_bends_;
  Sheet sheet_;
  int one_to_ = 1;
};

}  // namespace

std::string cut_charts(const Report& report, const TextStyle& style) {
  return CutCharts(report, style).drawn();
}

}  // namespace linewright
