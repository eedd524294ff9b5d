#include "render/draw/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "input/utf8.hpp"
#include "render/finding_folds.hpp"
#include "render/layout.hpp"
#include "render/report/html_text.hpp"

namespace linewright {

namespace {

/// Drawn in ink that tells its kinds apart for colour-blind eyes; dashes and shapes say the same.
constexpr std::string_view style =
    "<style>text{font:8px sans-serif;fill:#1d2730;paint-order:stroke;stroke:#fff;stroke-width:2px}"
    ".title{font-size:14px;font-weight:bold}.head{font-weight:bold}.small{font-size:7px}"
    ".tick,.axis{stroke:#5a6670;stroke-width:.6;fill:none}"
    ".datum{stroke:#5a6670;stroke-width:.6;stroke-dasharray:9 2 2 2;fill:none}"
    ".grid{stroke:#dde3e8;stroke-width:.5;fill:none}.leader{stroke:#8b959d;stroke-width:.4;fill:"
    "none}"
    ".bar,.curve{stroke:#1d2730;stroke-width:1.2;fill:none}"
    ".limit-line{stroke:#a8201a;stroke-width:1.1;stroke-dasharray:6 3;fill:none}"
    ".fit-line{stroke:#0a6a9c;stroke-width:1;stroke-dasharray:1.5 1.5;fill:none}"
    ".dot{stroke:#1d2730;stroke-width:.9;fill:#fff}.odd{fill:#1d2730}"
    ".part{stroke:#96a1aa;stroke-width:.5;fill:none}.cut{stroke:#49545d;stroke-width:1;fill:none}"
    ".web{stroke:#49545d;stroke-width:.9;fill:#eef1f4;fill-rule:evenodd}"
    ".mover{stroke:#7d8790;stroke-width:1;stroke-dasharray:3 2;fill:none}"
    ".route{fill:none;stroke-linejoin:round}.held{fill:#1d2730}.solid{stroke:none;fill:#1d2730}"
    ".static{stroke:#0a6a9c}.pitot{stroke:#c2530a;stroke-dasharray:8 2}"
    ".alpha{stroke:#96548c;stroke-dasharray:5 2}.vent{stroke:#4b8f8c;stroke-dasharray:2 2}"
    ".cable{stroke:#2f3338;stroke-dasharray:10 2 1.5 2}"
    ".wire{stroke:#a67c00;stroke-dasharray:4 1.5 1 1.5}.rod{stroke:#1b7f57;stroke-dasharray:14 2}"
    ".push-pull{stroke:#1b7f57;stroke-dasharray:7 1.5 1.5 1.5}"
    ".likely{fill:#9cc4dc;fill-opacity:.6;stroke:none}"
    ".bound{fill:none;stroke:#51748a;stroke-width:.6;stroke-dasharray:3 2}"
    ".gap path{stroke:#1d2730;stroke-width:.9;fill:none}"
    ".fail{fill:#a8201a}.unknown{fill:#5b3a9b}.warn{fill:#b87400}.waived{fill:#5a6670}"
    ".pass{fill:#1f7a5c}</style>\n";

constexpr double text_pt = 8;
constexpr double mark_pt = 9;

}  // namespace

int usual_ratio(double inches, double points) {
  for (double power = 1;; power *= 10)
    for (const double step : {1.0, 2.0, 2.5, 5.0}) {
      const double ratio = step * power;
      if (ratio != std::floor(ratio)) continue;
      if (inches * points_per_inch / ratio <= points || ratio >= 1e8)
        return static_cast<int>(ratio);
    }
}

PaperScale fitted(Vec2 least, Vec2 most, const PaperBox& room) {
  const double wide = room.right - room.left;
  const double high = room.bottom - room.top;
  const Vec2 size = most - least;
  PaperScale scale;
  scale.one_to = std::max(usual_ratio(size.u, wide), usual_ratio(size.v, high));
  scale.left_in = least.u;
  scale.top_in = most.v;
  scale.origin_x = room.left + (wide - scale.points(size.u)) / 2;
  scale.origin_y = room.top + (high - scale.points(size.v)) / 2;
  return scale;
}

double tick_step(double least) {
  const double power = std::pow(10.0, std::floor(std::log10(least)));
  for (const double factor : {1.0, 2.0, 5.0})
    if (least <= factor * power) return factor * power;
  return 10 * power;
}

double words_width(std::string_view words, double size_pt) {
  return 0.58 * size_pt * static_cast<double>(character_count(escaped(words)));
}

void Sheet::path(std::string_view css_class, std::string_view d, std::string_view title) {
  if (title.empty()) {
    body_ += fmt::format("<path class=\"{}\" d=\"{}\"/>\n", css_class, d);
    return;
  }
  body_ += fmt::format("<path class=\"{}\" d=\"{}\"><title>{}</title></path>\n", css_class, d,
                       escaped(title));
}

void Sheet::text(double x, double y, std::string_view css_class, std::string_view anchor,
                 std::string_view words, std::size_t most_characters) {
  body_ +=
      fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" class=\"{}\" text-anchor=\"{}\">{}</text>\n", x,
                  y, css_class, anchor, escaped(printable(one_line(words), most_characters)));
}

void Sheet::mark(Verdict verdict, double x, double y, std::string_view title) {
  body_ +=
      "<g><title>" + escaped(title) + "</title>" + verdict_mark(verdict, x, y, mark_pt) + "</g>\n";
}

bool Sheet::label(double x, double y, const PaperBox& room, std::string_view css_class,
                  std::string_view words) {
  constexpr std::array<double, 7> reaches{9, 16, 26, 38, 52, 70, 95};
  constexpr int directions = 16;
  const double wide = words_width(printable(one_line(words), 40), text_pt);
  for (const double reach : reaches)
    for (int i = 0; i < directions; ++i) {
      const double angle = 2 * std::numbers::pi * (i + 0.5) / directions;
      const double to_x = x + reach * std::cos(angle);
      const double to_y = y - reach * std::sin(angle);
      const double left = std::cos(angle) < 0 ? to_x - wide : to_x;
      const PaperBox box{left - 1, to_y - text_pt / 2 - 1, left + wide + 1, to_y + text_pt / 2 + 1};
      if (box.left < room.left || box.right > room.right || box.top < room.top ||
          box.bottom > room.bottom)
        continue;
      if (std::any_of(taken_.begin(), taken_.end(),
                      [&](const PaperBox& each) { return each.overlaps(box); }))
        continue;
      keep_off(box);
      path("leader", fmt::format("M{:.1f} {:.1f}L{:.1f} {:.1f}", x, y, to_x, to_y));
      text(left, to_y + 3, css_class, "start", words, 40);
      return true;
    }
  return false;
}

std::string Sheet::finished(double height_pt, std::string_view name) const {
  return fmt::format(
             "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0:.3f}in\" height=\"{1:.3f}in\" "
             "viewBox=\"0 0 {2:.1f} {3:.1f}\" role=\"img\">\n<title>{4}</title>\n",
             width_pt_ / points_per_inch, height_pt / points_per_inch, width_pt_, height_pt,
             escaped(name)) +
         std::string(style) + verdict_shapes() +
         fmt::format("<path d=\"M0 0H{:.1f}V{:.1f}H0Z\" fill=\"#fff\"/>\n", width_pt_, height_pt) +
         body_ + "</svg>\n";
}

void draw_scale_bars(Sheet& sheet, double x, double y, int one_to, const Phrasing& phrasing) {
  const double units_per_inch = phrasing.units_per_in();
  const double length = tick_step(units_per_inch * one_to);
  const double points = length / units_per_inch * points_per_inch / one_to;
  const auto bar = [&](double left, double wide, std::string_view id) {
    sheet.add(fmt::format("<path id=\"{}\" class=\"bar\" d=\"M{:.1f} {:.1f}v-6v3h{:.4f}v-3v6\"/>\n",
                          id, left, y, wide));
  };
  bar(x, points, "scale-bar");
  sheet.text(x, y + 10, "", "start",
             fmt::format("{:g} {} of the aeroplane, 1:{}", length, phrasing.unit_name(), one_to));
  const double second = x + std::max(points, 130.0) + 40;
  bar(second, points_per_inch, "paper-inch");
  sheet.text(second, y + 10, "", "start", "1 in of paper: check a print by it");
}

void draw_title_block(Sheet& sheet, double y, const Drawing& drawing, std::string_view view,
                      int one_to) {
  const double right = sheet.width_pt() - 36;
  sheet.path("bar", fmt::format("M36 {:.1f}H{:.1f}", y, right));
  sheet.text(36, y + 18, "title", "start", drawing.report.project_name, 60);
  sheet.text(36, y + 31, "", "start", view, 150);
  const Tally tally = tally_of(drawing.report.judgements);
  sheet.text(right, y + 14, "head", "end",
             drawing.report.nothing_judged
                 ? "nothing was judged"
                 : fmt::format("{} fail, {} unknown, {} warn, {} waived, {} pass", tally.fail,
                               tally.unknown, tally.warn, tally.waived, tally.pass));
  sheet.text(
      right, y + 24, "", "end",
      fmt::format("scale 1:{}, lengths in {}", one_to,
                  drawing.phrasing.unit == LengthUnit::millimetre ? "millimetres" : "inches"));
  sheet.text(right, y + 34, "small", "end",
             "Work to the figures, not to what is measured off the sheet.");
}

std::string_view line_class(SystemKind kind) {
  switch (kind) {
    case SystemKind::static_air:
      return "static";
    case SystemKind::pitot:
      return "pitot";
    case SystemKind::alpha:
      return "alpha";
    case SystemKind::vent:
      return "vent";
    case SystemKind::cable:
      return "cable";
    case SystemKind::wire:
      return "wire";
    case SystemKind::rod:
      return "rod";
    case SystemKind::push_pull:
      break;
  }
  return "push-pull";
}

std::vector<SystemKind> kinds_of(const Scene& scene) {
  std::vector<SystemKind> kinds;
  for (const SceneRoute& route : scene.routes)
    if (std::find(kinds.begin(), kinds.end(), route.kind) == kinds.end())
      kinds.push_back(route.kind);
  return kinds;
}

void draw_legend(Sheet& sheet, double x, double y, const std::vector<SystemKind>& kinds) {
  for (const Verdict verdict :
       {Verdict::fail, Verdict::unknown, Verdict::warn, Verdict::waived, Verdict::pass}) {
    sheet.mark(verdict, x + 5, y - 3, verdict_word(verdict));
    sheet.text(x + 13, y, "", "start", verdict_word(verdict));
    x += 30 + words_width(verdict_word(verdict), text_pt);
  }
  for (const SystemKind kind : kinds) {
    sheet.path(fmt::format("route {}", line_class(kind)),
               fmt::format("M{:.1f} {:.1f}h26", x, y - 3));
    sheet.text(x + 30, y, "", "start", line_class(kind));
    x += 44 + words_width(line_class(kind), text_pt);
  }
}

std::vector<const Judgement*> marked_findings(const Report& report, std::string_view only_route) {
  std::vector<const Judgement*> findings;
  for (const Judgement& each : report.judgements)
    if (each.verdict != Verdict::pass && (only_route.empty() || each.route == only_route))
      findings.push_back(&each);
  std::stable_sort(findings.begin(), findings.end(), [](const Judgement* a, const Judgement* b) {
    return gravity_rank(a->verdict) < gravity_rank(b->verdict);
  });
  return findings;
}

double list_findings(Sheet& sheet, double x, double y, const Drawing& drawing,
                     const std::vector<const Judgement*>& findings, bool along) {
  sheet.text(x, y, "head", "start", findings.empty() ? "No findings" : "Findings");
  return list_more_findings(sheet, x, y, drawing, findings, along, 1);
}

double list_more_findings(Sheet& sheet, double x, double y, const Drawing& drawing,
                          std::span<const Judgement* const> findings, bool along, int number) {
  for (const Judgement* each : findings) {
    y += 14;
    std::string place = "no one place";
    if (along && each->distance_in)
      place = "at " + drawing.phrasing.tape(*each->distance_in);
    else if (!along && each->at)
      place = drawing.phrasing.place(*each->at);
    sheet.mark(each->verdict, x + 22, y - 3, each->message);
    sheet.text(x + 14, y, "head", "end", fmt::format("{}", number++));
    sheet.text(x + 30, y, "", "start",
               fmt::format("{}: {}: {}", verdict_word(each->verdict), each->rule,
                           along ? each->message : each->route),
               along ? 150 : 58);
    if (along) {
      sheet.text(sheet.width_pt() - 36, y, "", "end", place);
      continue;
    }
    sheet.text(x + 30, y += 9, "small", "start", place);
  }
  return y;
}

}  // namespace linewright
