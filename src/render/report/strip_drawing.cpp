#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "render/amount.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"

namespace linewright {

namespace {

constexpr double left_px = 52;
constexpr double right_px = 708;
constexpr double top_px = 12;
constexpr double base_px = 132;

/// Rules whose value is a gap to something else, and whose limit is a gap or a reach.
bool judges_gap(const Judgement& judgement) {
  static constexpr std::array<std::string_view, 3> rules{"clearance", "chafe", "separation"};
  return judgement.unit == Unit::inch && judgement.value && judgement.distance_in &&
         std::find(rules.begin(), rules.end(), judgement.rule) != rules.end();
}

struct Scale {
  double length_in = 1;
  double most_in = 1;  ///< gap at the top; what is larger is drawn there

  double x(double distance_in) const {
    return left_px + (right_px - left_px) * distance_in / length_in;
  }
  double y(double gap_in) const {
    return base_px - (base_px - top_px) * std::clamp(gap_in, -0.15 * most_in, most_in) / most_in;
  }
};

/// A step of 1, 2 or 5 of the unit that gives about so many ticks.
double tick_step_of(double range, int about) {
  const double rough = range / about;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (rough <= factor * power) return factor * power;
  return 10 * power;
}

double most_shown(const SceneRoute& route, const std::vector<const Judgement*>& gaps) {
  double most = 0.5;
  for (const SceneStep& step : route.steps) most = std::max(most, 1.2 * step.likely_in.value_or(0));
  for (const Judgement* gap : gaps) most = std::max(most, 1.4 * gap->limit.value_or(0));
  return most;
}

using Width = std::optional<double> SceneStep::*;

/// Areas under the steps of one outline; parted where it is not known.
std::string reach_area(const SceneRoute& route, Width width, const Scale& scale,
                       std::string_view name) {
  std::string path;
  const SceneStep* last = nullptr;
  for (const SceneStep& step : route.steps) {
    if (step.*width && !last)
      path += fmt::format("M{:.1f} {:.1f}", scale.x(step.distance_in), base_px);
    if (step.*width)
      path += fmt::format("L{:.1f} {:.1f}", scale.x(step.distance_in), scale.y(*(step.*width)));
    else if (last)
      path += fmt::format("L{:.1f} {:.1f}Z", scale.x(last->distance_in), base_px);
    last = step.*width ? &step : nullptr;
  }
  if (last) path += fmt::format("L{:.1f} {:.1f}Z", scale.x(last->distance_in), base_px);
  return path.empty() ? path : fmt::format("<path class=\"{}\" d=\"{}\"/>\n", name, path);
}

std::string axes(const Scale& scale, const Phrasing& phrasing) {
  const double unit = phrasing.units_per_in();
  std::string svg = fmt::format("<path class=\"axis\" d=\"M{0} {1}V{2}H{3}\"/>\n", left_px, top_px,
                                base_px, right_px);
  const double along = tick_step_of(scale.length_in * unit, 10);
  for (double at = 0; at <= scale.length_in * unit * (1 + 1e-9); at += along)
    svg += fmt::format(
        "<path class=\"tick\" d=\"M{0:.1f} {1}v4\"/><text x=\"{0:.1f}\" y=\"{2}\" "
        "text-anchor=\"middle\">{3:g}</text>",
        scale.x(at / unit), base_px + 12, base_px + 28, at);
  const double up = tick_step_of(scale.most_in * unit, 4);
  for (double at = 0; at <= scale.most_in * unit * (1 + 1e-9); at += up)
    svg += fmt::format(
        "<path class=\"grid\" d=\"M{0} {1:.1f}H{2}\"/><text x=\"{3}\" y=\"{4:.1f}\" "
        "text-anchor=\"end\">{5:.3g}</text>",
        left_px, scale.y(at / unit), right_px, left_px - 6, scale.y(at / unit) + 4, at);
  return svg + "\n";
}

std::string supports(const SceneRoute& route, const Scale& scale, const Phrasing& phrasing) {
  std::string svg;
  for (const SceneSupport& support : route.supports)
    svg += fmt::format(
        "<g class=\"support\"><title>{} at {}</title><path d=\"M{:.1f} {}l-5 10h10Z\"/></g>\n",
        escaped(support.name), escaped(phrasing.length(support.distance_in)),
        scale.x(support.distance_in), base_px);
  return svg;
}

/// The limit as a bar, the gap as the verdict's mark, and how far they are apart as a line.
std::string gap(const Judgement& judgement, const Scale& scale, const Phrasing& phrasing) {
  const double x = scale.x(*judgement.distance_in);
  const double y = scale.y(*judgement.value);
  std::string svg =
      fmt::format("<g class=\"gap\"><title>{}: {}; {}</title>", escaped(judgement.rule),
                  escaped(judgement.message), escaped(by_how_much(judgement, phrasing)));
  if (judgement.limit) {
    const double limit = scale.y(*judgement.limit);
    svg += fmt::format("<path d=\"M{0:.1f} {1:.1f}V{2:.1f}M{3:.1f} {1:.1f}H{4:.1f}\"/>", x, limit,
                       y, x - 6, x + 6);
  }
  return svg + verdict_mark(judgement.verdict, x, y, judgement.verdict == Verdict::pass ? 9 : 14) +
         "</g>\n";
}

/// Findings of other rules, on the line itself.
std::string other_finding(const Judgement& judgement, const Scale& scale) {
  return fmt::format("<g><title>{}: {}</title>", escaped(judgement.rule),
                     escaped(judgement.message)) +
         verdict_mark(judgement.verdict, scale.x(*judgement.distance_in), base_px, 13) + "</g>\n";
}

}  // namespace

std::string strip_drawing(const SceneRoute& route, const ReportPage& page) {
  std::vector<const Judgement*> gaps;
  std::vector<const Judgement*> others;
  for (const Judgement& each : page.report.judgements) {
    if (each.route != route.name) continue;
    if (judges_gap(each))
      gaps.push_back(&each);
    else if (each.verdict != Verdict::pass && each.distance_in)
      others.push_back(&each);
  }
  // What is graver lies on top.
  for (std::vector<const Judgement*>* marks : {&gaps, &others})
    std::stable_sort(marks->begin(), marks->end(), [](const Judgement* a, const Judgement* b) {
      return a->verdict < b->verdict;
    });
  const Scale scale{std::max(1e-3, route.steps.back().distance_in), most_shown(route, gaps)};
  std::string svg = fmt::format(
      "<svg class=\"chart strip\" viewBox=\"0 0 720 190\" role=\"img\" aria-label=\"Strip of {}: "
      "{} long, {} supports, {} gaps judged\">\n",
      escaped(route.name), escaped(page.phrasing.length(scale.length_in)), route.supports.size(),
      gaps.size());
  svg += reach_area(route, &SceneStep::bound_in, scale, "bound") +
         reach_area(route, &SceneStep::likely_in, scale, "likely") + axes(scale, page.phrasing) +
         supports(route, scale, page.phrasing);
  for (const Judgement* each : others) svg += other_finding(*each, scale);
  for (const Judgement* each : gaps) svg += gap(*each, scale, page.phrasing);
  return svg + fmt::format(
                   "<text x=\"{0}\" y=\"182\" text-anchor=\"end\">{1} along the line; gaps and "
                   "reach in {1} upwards</text></svg>\n",
                   right_px, page.phrasing.unit_name());
}

}  // namespace linewright
