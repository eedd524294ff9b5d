#include "render/draw/projection.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <span>
#include <utility>

namespace linewright {

namespace {

constexpr double width_pt = 17 * points_per_inch;
/// What there is at the most; a sheet is no higher than it must be.
constexpr PaperBox most_room{66, 40, 880, 620};
constexpr double margin_pt = 36;
constexpr double list_x = 910;
constexpr double list_y = 44;
/// Under the picture.
constexpr std::size_t list_columns = 4;
constexpr double column_pt = 290;
/// Thinner lines would not be seen.
constexpr double thinnest_pt = 0.9;

struct Projection {
  std::string_view view;
  std::string_view up;  ///< word of the second coordinate
  double Vec3::*upward;

  Vec2 seen(Vec3 at) const { return {at.x, at.*upward}; }
};

constexpr Projection from_side{"From the left-hand side: FS and WL", "WL", &Vec3::z};
constexpr Projection plan{"From above: FS and BL", "BL", &Vec3::y};

struct Extents {
  Vec2 least{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Vec2 most{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};

  void add(Vec2 at) {
    least = {std::min(least.u, at.u), std::min(least.v, at.v)};
    most = {std::max(most.u, at.u), std::max(most.v, at.v)};
  }
};

Extents extents_of(const Scene& scene, const Projection& projection) {
  Extents all;
  for (const ScenePart& part : scene.parts) {
    for (const Segment3& edge : part.edges)
      for (const Vec3 at : {edge.a, edge.b}) all.add(projection.seen(at));
    for (const Triangle3& face : part.faces)
      for (const Vec3 at : {face.a, face.b, face.c}) all.add(projection.seen(at));
  }
  for (const SceneMover& mover : scene.movers)
    for (const Vec3 at : mover.points) all.add(projection.seen(at));
  for (const SceneRoute& route : scene.routes)
    for (const SceneStep& step : route.steps) all.add(projection.seen(step.at));
  if (all.least.u > all.most.u) all.add({0, 0});
  return all;
}

class Picture {
 public:
  Picture(Sheet& sheet, const PaperScale& scale, const Projection& projection)
      : sheet_(sheet), scale_(scale), projection_(projection) {}

  double x(Vec3 at) const { return scale_.x(projection_.seen(at).u); }
  double y(Vec3 at) const { return scale_.y(projection_.seen(at).v); }
  std::string to(char letter, Vec3 at) const {
    return fmt::format("{}{:.2f} {:.2f}", letter, x(at), y(at));
  }

  void part(const ScenePart& part) {
    std::string d;
    for (const Segment3& edge : part.edges) d += to('M', edge.a) + to('L', edge.b);
    if (part.edges.empty())
      for (const Triangle3& face : part.faces)
        d += to('M', face.a) + to('L', face.b) + to('L', face.c) + "Z";
    if (!d.empty()) sheet_.path("part", d, part.name);
  }

  void mover(const SceneMover& mover) {
    std::string d;
    for (const Vec3 at : mover.points) d += to(d.empty() ? 'M' : 'L', at);
    if (!d.empty()) sheet_.path("mover", d, mover.name);
  }

  void route(const SceneRoute& route) {
    std::string d;
    double radius_in = 0;
    for (const SceneStep& step : route.steps) {
      d += to(d.empty() ? 'M' : 'L', step.at);
      radius_in = std::max(radius_in, step.radius_in);
    }
    sheet_.add(fmt::format("<g stroke-width=\"{:.2f}\">",
                           std::max(thinnest_pt, scale_.points(2 * radius_in))));
    sheet_.path(fmt::format("route {}", line_class(route.kind)), d, route.name);
    sheet_.add("</g>\n");
    for (const SceneSupport& support : route.supports)
      sheet_.path("held", to('M', support.at) + "m-2 -2h4v4h-4Z",
                  support.name + " of " + route.name);
  }

 private:
  Sheet& sheet_;
  const PaperScale& scale_;
  const Projection& projection_;
};

/// Names of lines that found no room.
std::vector<std::string> name_routes(Sheet& sheet, const Picture& picture, const PaperBox& room,
                                     const Scene& scene) {
  std::vector<std::string> left_out;
  for (const SceneRoute& route : scene.routes) {
    bool named = false;
    for (const std::size_t part : {5u, 3u, 7u, 2u, 8u, 1u, 9u}) {
      if (route.steps.empty() || named) break;
      const Vec3 at = route.steps[(route.steps.size() - 1) * part / 10].at;
      named = sheet.label(picture.x(at), picture.y(at), room, "", route.name);
    }
    if (!named) left_out.push_back(route.name);
  }
  return left_out;
}

void mark_findings(Sheet& sheet, const Picture& picture, const PaperBox& room,
                   const std::vector<const Judgement*>& findings) {
  for (const Judgement* each : findings)
    if (each->at) {
      const double x = picture.x(*each->at);
      const double y = picture.y(*each->at);
      sheet.keep_off({x - 4, y - 4, x + 4, y + 4});
      sheet.mark(each->verdict, x, y, each->rule + ": " + each->message);
    }
  int number = 0;
  for (const Judgement* each : findings) {
    ++number;
    if (each->at)
      sheet.label(picture.x(*each->at), picture.y(*each->at), room, "head",
                  fmt::format("{}", number));
  }
}

/// Beside the picture as far down as that goes, and the rest in columns under it, so that a long
/// list leaves no empty sheet beside itself. `beside_pt`: what else stands in the list. Returns
/// where the list beside the picture ends, and where all of it does.
std::pair<double, double> list_round_picture(Sheet& sheet, const PaperBox& room,
                                             const Drawing& drawing,
                                             const std::vector<const Judgement*>& findings,
                                             double beside_pt) {
  const double fitting = (room.bottom - list_y - beside_pt) / finding_height_pt;
  const std::size_t beside =
      std::min(findings.size(), static_cast<std::size_t>(std::max(1.0, fitting)));
  const std::span<const Judgement* const> all(findings);
  const std::vector<const Judgement*> first(findings.begin(),
                                            findings.begin() + static_cast<std::ptrdiff_t>(beside));
  const double beside_end = list_findings(sheet, list_x, list_y, drawing, first, false);
  double end = beside_end;
  const std::size_t each = (findings.size() - beside + list_columns - 1) / list_columns;
  for (std::size_t column = 0; column < list_columns; ++column) {
    const std::size_t start = std::min(findings.size(), beside + column * each);
    const std::size_t count = std::min(each, findings.size() - start);
    end =
        std::max(end, list_more_findings(sheet, margin_pt + static_cast<double>(column) * column_pt,
                                         room.bottom + 26, drawing, all.subspan(start, count),
                                         false, static_cast<int>(start) + 1));
  }
  return {beside_end, end};
}

std::string view_of(const Drawing& drawing, const Projection& projection) {
  const Extents extents = extents_of(drawing.scene, projection);
  PaperScale scale = fitted(
      extents.least, extents.most,
      {most_room.left, most_room.top + margin_pt, most_room.right, most_room.bottom - margin_pt});
  scale.origin_y = most_room.top + margin_pt;
  PaperBox room = most_room;
  room.bottom = scale.y(extents.least.v) + margin_pt;
  Sheet sheet(width_pt);
  Picture picture(sheet, scale, projection);
  draw_ticks(sheet, scale, room, "FS", projection.up, drawing.phrasing);
  for (const ScenePart& part : drawing.scene.parts) picture.part(part);
  for (const SceneMover& mover : drawing.scene.movers) picture.mover(mover);
  for (const SceneRoute& route : drawing.scene.routes) picture.route(route);
  const std::vector<const Judgement*> findings = marked_findings(drawing.report, {});
  mark_findings(sheet, picture, room, findings);
  const std::vector<std::string> left_out = name_routes(sheet, picture, room, drawing.scene);
  const double names_pt = left_out.empty() ? 0 : 18 + 10 * static_cast<double>(left_out.size());
  auto [beside, end] = list_round_picture(sheet, room, drawing, findings, names_pt);
  if (!left_out.empty()) sheet.text(list_x, beside += 18, "head", "start", "Lines without a name");
  for (const std::string& name : left_out) sheet.text(list_x, beside += 10, "", "start", name, 60);
  const double foot = std::max({room.bottom + 34, beside + 20, end + 20});
  draw_scale_bars(sheet, 40, foot + 6, scale.one_to, drawing.phrasing);
  draw_legend(sheet, 450, foot + 6, kinds_of(drawing.scene));
  draw_title_block(sheet, foot + 26, drawing, projection.view, scale.one_to);
  return sheet.finished(foot + 76, drawing.report.project_name);
}

}  // namespace

void draw_ticks(Sheet& sheet, const PaperScale& scale, const PaperBox& frame,
                std::string_view along, std::string_view up, const Phrasing& phrasing) {
  constexpr double nearest_ticks_pt = 34;
  const double unit = phrasing.units_per_in();
  const double step = tick_step(nearest_ticks_pt / scale.points(1) * unit);
  const auto place = [&](double point, double origin, double start) {
    return start + (point - origin) / scale.points(1);
  };
  const auto first = [&](double inches) { return std::ceil(inches * unit / step); };
  const double right_in = place(frame.right, scale.origin_x, scale.left_in);
  for (double i = first(place(frame.left, scale.origin_x, scale.left_in));
       i * step / unit <= right_in; ++i) {
    const double x = scale.x(i * step / unit);
    sheet.path(i == 0 ? "datum" : "grid",
               fmt::format("M{0:.2f} {1}V{2}", x, frame.top, frame.bottom));
    sheet.text(x, frame.bottom + 11, "", "middle", fmt::format("{:g}", i * step + 0.0));
  }
  const double low_in = scale.top_in - (frame.bottom - scale.origin_y) / scale.points(1);
  const double high_in = scale.top_in - (frame.top - scale.origin_y) / scale.points(1);
  for (double i = first(low_in); i * step / unit <= high_in; ++i) {
    const double y = scale.y(i * step / unit);
    sheet.path(i == 0 ? "datum" : "grid",
               fmt::format("M{0} {1:.2f}H{2}", frame.left, y, frame.right));
    sheet.text(frame.left - 5, y + 3, "", "end", fmt::format("{:g}", i * step + 0.0));
  }
  sheet.text(frame.right, frame.bottom + 21, "head", "end", along);
  sheet.text(frame.left - 5, frame.top - 8, "head", "end", up);
}

std::string side_view(const Drawing& drawing) {
  return view_of(drawing, from_side);
}

std::string plan_view(const Drawing& drawing) {
  return view_of(drawing, plan);
}

}  // namespace linewright
