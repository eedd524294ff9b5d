#include "render/draw/front.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/angle.hpp"
#include "render/amount.hpp"
#include "render/draw/ordinates.hpp"
#include "render/draw/projection.hpp"

namespace linewright {

namespace {

constexpr double width_pt = 17 * points_per_inch;
constexpr PaperBox room{66, 40, 700, 660};
constexpr double table_x = 752;
/// A line nearer than this to lying in the plane is drawn cut no longer than so.
constexpr double least_cosine = 0.1;

struct Extents {
  Vec2 least{0, 0};
  Vec2 most{0, 0};
  bool any = false;

  void add(Vec2 at) {
    least = any ? Vec2{std::min(least.u, at.u), std::min(least.v, at.v)} : at;
    most = any ? Vec2{std::max(most.u, at.u), std::max(most.v, at.v)} : at;
    any = true;
  }
};

Vec2 seen(const CutLine& line) {
  return {line.step.at.y, line.step.at.z};
}

/// "A" to "Z", "A1" to "Z1" and so on: findings have numbers.
std::string letter(std::size_t index) {
  const std::string mark(1, static_cast<char>('A' + index % 26));
  return index < 26 ? mark : mark + fmt::format("{}", index / 26);
}

Extents extents_of(const StationCut& cut) {
  Extents all;
  for (const Vec2 corner : cut.outline) all.add(corner);
  for (const CutHole& hole : cut.holes)
    for (const Vec2 corner : hole.edge) all.add(corner);
  // A frame shows what is about it; without one all that is cut does.
  if (!all.any)
    for (const CutPart& part : cut.parts)
      for (const auto& [from, to] : part.traces) {
        all.add(from);
        all.add(to);
      }
  for (const CutLine& line : cut.lines) {
    const double about = line.step.radius_in + line.step.bound_in.value_or(0);
    all.add(seen(line) - Vec2{about, about});
    all.add(seen(line) + Vec2{about, about});
  }
  return all;
}

/// Every line and hole.
std::vector<Vec2> dimensioned(const StationCut& cut) {
  std::vector<Vec2> places;
  for (const CutLine& line : cut.lines) places.push_back(seen(line));
  for (const CutHole& hole : cut.holes) places.push_back(hole.centre);
  return places;
}

std::string polygon(const PaperScale& scale, const std::vector<Vec2>& corners) {
  std::string d;
  for (const Vec2 at : corners)
    d += fmt::format("{}{:.2f} {:.2f}", d.empty() ? 'M' : 'L', scale.x(at.u), scale.y(at.v));
  return d.empty() ? d : d + "Z";
}

void draw_web(Sheet& sheet, const PaperScale& scale, const StationCut& cut) {
  std::string d = polygon(scale, cut.outline);
  for (const CutHole& hole : cut.holes) d += polygon(scale, hole.edge);
  if (!d.empty()) sheet.path("web", d, cut.frame);
}

void draw_parts(Sheet& sheet, const PaperScale& scale, const StationCut& cut) {
  for (const CutPart& part : cut.parts) {
    std::string d;
    for (const auto& [from, to] : part.traces)
      d += fmt::format("M{:.2f} {:.2f}L{:.2f} {:.2f}", scale.x(from.u), scale.y(from.v),
                       scale.x(to.u), scale.y(to.v));
    sheet.path(part.kind == PartKind::panel || part.kind == PartKind::mesh ? "part" : "cut", d,
               part.name);
  }
}

/// What a round thing along the line leaves in the plane: longer the more the line slants.
void draw_ellipse(Sheet& sheet, const PaperScale& scale, const CutLine& line, double radius_in,
                  std::string_view css_class) {
  const double across = scale.points(radius_in);
  const double cosine = std::max(least_cosine, std::abs(line.direction.x));
  const double turn = std::atan2(-line.direction.z, line.direction.y) * degrees_per_radian;
  sheet.add(fmt::format(
      "<ellipse class=\"{}\" rx=\"{:.3f}\" ry=\"{:.3f}\" transform=\"translate({:.2f} {:.2f}) "
      "rotate({:.1f})\"/>\n",
      css_class, across / cosine, across, scale.x(seen(line).u), scale.y(seen(line).v),
      turn + 0.0));
}

void draw_line(Sheet& sheet, const PaperScale& scale, const CutLine& line) {
  if (line.step.bound_in)
    draw_ellipse(sheet, scale, line, line.step.radius_in + *line.step.bound_in, "bound");
  if (line.step.likely_in)
    draw_ellipse(sheet, scale, line, line.step.radius_in + *line.step.likely_in, "likely");
  draw_ellipse(sheet, scale, line, line.step.radius_in, "solid");
}

/// The hole that a line goes through, for its row.
double table_of_lines(Sheet& sheet, double y, const Drawing& drawing, const StationCut& cut) {
  const Phrasing& say = drawing.phrasing;
  const auto row = [&](std::string_view css, std::string_view number, std::string_view name,
                       std::string_view bl, std::string_view wl, std::string_view diameter,
                       std::string_view reach) {
    sheet.text(table_x + 12, y, css, "end", number);
    sheet.text(table_x + 18, y, css, "start", name, 34);
    sheet.text(table_x + 216, y, css, "end", bl);
    sheet.text(table_x + 262, y, css, "end", wl);
    sheet.text(table_x + 316, y, css, "end", diameter);
    sheet.text(table_x + 436, y, css, "end", reach);
  };
  row("head", "", cut.lines.empty() ? "No line goes through" : "Line", "BL", "WL", "over all",
      "moves: likely, at most");
  std::size_t index = 0;
  for (const CutLine& line : cut.lines) {
    y += 12;
    const std::string reach = line.step.likely_in && line.step.bound_in
                                  ? say.length_number(*line.step.likely_in) + ", " +
                                        say.length_number(*line.step.bound_in)
                                  : "not known";
    row("", letter(index++), line.route, bench_number(line.step.at.y, say),
        bench_number(line.step.at.z, say), say.length_number(2 * line.step.radius_in), reach);
  }
  y += 24;
  if (cut.holes.empty()) return y;
  row("head", "", "Hole (middle)", "BL", "WL", "diameter", "");
  for (const CutHole& hole : cut.holes) {
    y += 12;
    row("", "", hole.name, bench_number(hole.centre.u, say), bench_number(hole.centre.v, say),
        hole.diameter_in ? say.length_number(*hole.diameter_in) : "outline", "");
  }
  return y + 24;
}

/// Lines first: they are what the sheet is for.
void name_all(Sheet& sheet, const PaperScale& scale, const StationCut& cut) {
  for (const CutLine& line : cut.lines) {
    const double x = scale.x(seen(line).u);
    const double y = scale.y(seen(line).v);
    const double about = std::max(3.0, scale.points(line.step.radius_in));
    sheet.keep_off({x - about, y - about, x + about, y + about});
  }
  std::size_t index = 0;
  for (const CutLine& line : cut.lines)
    sheet.label(scale.x(seen(line).u), scale.y(seen(line).v), room, "head", letter(index++));
  for (const CutHole& hole : cut.holes)
    sheet.label(scale.x(hole.centre.u), scale.y(hole.centre.v), room, "", hole.name);
  for (const CutPart& part : cut.parts) {
    const Vec2 at = part.traces.front().first;
    const double x = scale.x(at.u);
    const double y = scale.y(at.v);
    if (x > room.left && x < room.right && y > room.top && y < room.bottom)
      sheet.label(x, y, room, "small", part.name);
  }
}

/// Those of what the sheet shows: at the frame, or with it.
std::vector<const Judgement*> findings_here(const Drawing& drawing, const StationCut& cut) {
  constexpr double about_in = 1;
  std::vector<const Judgement*> here;
  for (const Judgement* each : marked_findings(drawing.report, {}))
    if (each->at && std::abs(each->at->x - cut.station_in) <= about_in) here.push_back(each);
  return here;
}

void number_findings(Sheet& sheet, const PaperScale& scale,
                     const std::vector<const Judgement*>& findings) {
  int number = 0;
  for (const Judgement* each : findings) {
    const double x = scale.x(each->at->y);
    const double y = scale.y(each->at->z);
    ++number;
    if (room.overlaps({x, y, x, y})) sheet.label(x, y, room, "head", fmt::format("{}", number));
  }
}

}  // namespace

std::string front_view(const Drawing& drawing, const StationCut& cut) {
  const Extents extents = extents_of(cut);
  const PaperScale scale = fitted(extents.least, extents.most, room);
  Sheet sheet(width_pt);
  // What is cut through far outside of the frame stays off the figures beside it.
  sheet.add(
      fmt::format("<clipPath id=\"room\"><path d=\"M{0} {1}H{2}V{3}H{0}Z\"/></clipPath>\n"
                  "<g clip-path=\"url(#room)\">\n",
                  room.left, room.top, room.right, room.bottom));
  draw_web(sheet, scale, cut);
  draw_parts(sheet, scale, cut);
  // Marks lie under the lines: they must not hide one.
  const std::vector<const Judgement*> findings = findings_here(drawing, cut);
  for (const Judgement* each : findings)
    sheet.mark(each->verdict, scale.x(each->at->y), scale.y(each->at->z),
               each->rule + ": " + each->message);
  for (const CutLine& line : cut.lines) draw_line(sheet, scale, line);
  sheet.add("</g>\n");
  draw_ordinates(sheet, scale, room, dimensioned(cut), drawing.phrasing);
  draw_ticks(sheet, scale, room, "BL", "WL", drawing.phrasing);
  name_all(sheet, scale, cut);
  number_findings(sheet, scale, findings);
  double end = table_of_lines(sheet, 44, drawing, cut);
  end = list_findings(sheet, table_x, end, drawing, findings, false);
  const double foot = std::max(room.bottom + 34, end + 20);
  draw_scale_bars(sheet, 40, foot + 6, scale.one_to, drawing.phrasing);
  draw_legend(sheet, 450, foot + 6, {});
  const std::string view = (cut.frame.empty() ? "Cut" : "Frame " + cut.frame) + " at " +
                           drawing.phrasing.stand(at_station(cut.station_in)) +
                           ", looking forward, figures from BL 0 and WL 0; findings within " +
                           drawing.phrasing.length(1) +
                           " of it; filled: likely reach, dashed: bound";
  draw_title_block(sheet, foot + 26, drawing, view, scale.one_to);
  return sheet.finished(foot + 76, drawing.report.project_name);
}

}  // namespace linewright
