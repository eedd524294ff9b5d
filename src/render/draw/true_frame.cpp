#include "render/draw/true_frame.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "render/edge_word.hpp"

namespace linewright {

namespace {

constexpr double cross_pt = 7;

struct PlaneBox {
  Vec2 least;
  Vec2 most;
};

PlaneBox box_of(const std::vector<Vec2>& corners) {
  PlaneBox box{corners.front(), corners.front()};
  for (const Vec2 at : corners) {
    box.least = {std::min(box.least.u, at.u), std::min(box.least.v, at.v)};
    box.most = {std::max(box.most.u, at.u), std::max(box.most.v, at.v)};
  }
  return box;
}

/// Whether the segment has a place in the box (clipped against each side in turn).
bool meets(const PlaneBox& box, Vec2 from, Vec2 to) {
  double enters = 0;
  double leaves = 1;
  const auto clip = [&](double start, double along, double least, double most) {
    if (along == 0) return start >= least && start <= most;
    const double first = (least - start) / along;
    const double second = (most - start) / along;
    enters = std::max(enters, std::min(first, second));
    leaves = std::min(leaves, std::max(first, second));
    return enters <= leaves;
  };
  return clip(from.u, to.u - from.u, box.least.u, box.most.u) &&
         clip(from.v, to.v - from.v, box.least.v, box.most.v);
}

bool meets(const PlaneBox& box, const std::vector<Vec2>& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i)
    if (meets(box, corners[i], corners[(i + 1) % corners.size()])) return true;
  return false;
}

std::vector<Vec2> square_about(const Circle& circle) {
  const double half = circle.diameter_in / 2;
  const Vec2 c = circle.centre;
  return {{c.u - half, c.v - half},
          {c.u + half, c.v - half},
          {c.u + half, c.v + half},
          {c.u - half, c.v + half}};
}

/// What the pages are cut from: a grid over the frame's extents.
class FrameTiles {
 public:
  FrameTiles(const Drawing& drawing, const Frame& frame, const Paper& paper)
      : drawing_(drawing),
        frame_(frame),
        paper_(paper),
        room_(drawing_room(paper)),
        extents_(box_of(frame.outline)) {
    step_ = {(room_.right - room_.left) / points_per_inch - page_overlap_in,
             (room_.bottom - room_.top) / points_per_inch - page_overlap_in};
    columns_ = count(extents_.most.u - extents_.least.u, step_.u);
    rows_ = count(extents_.most.v - extents_.least.v, step_.v);
  }

  std::string drawn() const {
    std::vector<std::pair<int, int>> tiles;
    for (int row = 0; row < rows_; ++row)
      for (int column = 0; column < columns_; ++column)
        if (shows_anything(row, column)) tiles.emplace_back(row, column);
    std::vector<Sheet> pages;
    for (std::size_t i = 0; i < tiles.size(); ++i)
      pages.push_back(page(tiles[i].first, tiles[i].second, i + 1, tiles.size()));
    return stacked_pages(pages, paper_, drawing_.report.project_name + ": " + frame_.name);
  }

 private:
  static int count(double length_in, double step_in) {
    return std::max(1, static_cast<int>(std::ceil((length_in - page_overlap_in) / step_in)));
  }

  /// Row 0 is the uppermost.
  PlaneBox shown(int row, int column) const {
    const Vec2 corner{extents_.least.u + column * step_.u, extents_.most.v - row * step_.v};
    return {{corner.u, corner.v - step_.v - page_overlap_in},
            {corner.u + step_.u + page_overlap_in, corner.v}};
  }

  bool shows_anything(int row, int column) const {
    const PlaneBox box = shown(row, column);
    return meets(box, frame_.outline) ||
           std::any_of(frame_.holes.begin(), frame_.holes.end(), [&](const Hole& hole) {
             if (const Circle* circle = std::get_if<Circle>(&hole.shape))
               return meets(box, square_about(*circle));
             return meets(box, std::get<std::vector<Vec2>>(hole.shape));
           });
  }

  Sheet page(int row, int column, std::size_t number, std::size_t of) const {
    const PlaneBox box = shown(row, column);
    PaperScale scale;
    scale.left_in = box.least.u;
    scale.top_in = box.most.v;
    scale.origin_x = room_.left;
    scale.origin_y = room_.top;
    Sheet sheet(paper_.wide_in * points_per_inch);
    sheet.add(fmt::format(
        "<clipPath id=\"room{0}\"><path d=\"M{1:.3f} {2:.3f}H{3:.3f}V{4:.3f}H{1:.3f}Z\"/>"
        "</clipPath>\n<g clip-path=\"url(#room{0})\" class=\"tile\" "
        "data-left=\"{5:.4f}\" data-top=\"{6:.4f}\">\n",
        number, room_.left, room_.top, room_.right, room_.bottom, box.least.u, box.most.v));
    outline(sheet, scale);
    for (const Hole& hole : frame_.holes) draw(sheet, scale, hole);
    sheet.add("</g>\n");
    joints(sheet, row, column);
    for (const Hole& hole : frame_.holes) name(sheet, scale, hole);
    draw_page_foot(
        sheet, paper_,
        fmt::format("{} at {}{}", frame_.name, drawing_.phrasing.stand(frame_.plane), axes()),
        fmt::format("page {} of {}: row {} of {}, column {} of {}", number, of, row + 1, rows_,
                    column + 1, columns_),
        drawing_.phrasing);
    return sheet;
  }

  /// Which way the sheet lies, where that has a name.
  std::string_view axes() const {
    const Vec3 normal = frame_.plane.normal;
    if (std::abs(normal.x) == 1) return ", BL right, WL up";
    if (std::abs(normal.y) == 1) return ", FS right, WL up";
    if (std::abs(normal.z) == 1) return ", FS right, BL up";
    return "";
  }

  static std::string polygon(const PaperScale& scale, const std::vector<Vec2>& corners) {
    std::string d;
    for (const Vec2 at : corners)
      d += fmt::format("{}{:.3f} {:.3f}", d.empty() ? 'M' : 'L', scale.x(at.u), scale.y(at.v));
    return d + "Z";
  }

  void outline(Sheet& sheet, const PaperScale& scale) const {
    sheet.path("cut outline", polygon(scale, frame_.outline), frame_.name);
  }

  void draw(Sheet& sheet, const PaperScale& scale, const Hole& hole) const {
    const Circle* circle = std::get_if<Circle>(&hole.shape);
    if (circle == nullptr)
      return sheet.path("cut hole", polygon(scale, std::get<std::vector<Vec2>>(hole.shape)),
                        hole.name);
    const double x = scale.x(circle->centre.u);
    const double y = scale.y(circle->centre.v);
    sheet.add(fmt::format("<circle class=\"cut hole\" cx=\"{:.3f}\" cy=\"{:.3f}\" r=\"{:.3f}\"/>\n",
                          x, y, scale.points(circle->diameter_in / 2)));
    sheet.path("tick", fmt::format("M{0:.3f} {1:.3f}h{2}M{3:.3f} {4:.3f}v{2}", x - cross_pt, y,
                                   2 * cross_pt, x, y - cross_pt));
  }

  void name(Sheet& sheet, const PaperScale& scale, const Hole& hole) const {
    Vec2 at;
    std::string words = hole.name;
    if (const Circle* circle = std::get_if<Circle>(&hole.shape)) {
      at = circle->centre;
      words += ", " + drawing_.phrasing.length(circle->diameter_in);
    } else {
      at = std::get<std::vector<Vec2>>(hole.shape).front();
    }
    words += fmt::format(", {}", edge_word(hole.edge));
    const double x = scale.x(at.u);
    const double y = scale.y(at.v);
    if (room_.overlaps({x - 1, y - 1, x + 1, y + 1})) sheet.label(x, y, room_, "", words);
  }

  /// Whether two pages meet at this line of the grid.
  static bool between(int line, int pages) { return line > 0 && line < pages; }

  /// Where the next page's edge lies, half an overlap in: dashed, with crosses of one name on both.
  void joints(Sheet& sheet, int row, int column) const {
    const double half = page_overlap_in * points_per_inch / 2;
    const auto cross = [&](double x, double y, int corner_row, int corner_column) {
      sheet.path("bar joint", fmt::format("M{0:.3f} {1:.3f}h{2}M{3:.3f} {4:.3f}v{2}", x - cross_pt,
                                          y, 2 * cross_pt, x, y - cross_pt));
      sheet.text(x + 3, y - 3, "head", "start", fmt::format("{}/{}", corner_row, corner_column));
    };
    const double left = room_.left + half;
    const double right = room_.right - half;
    const double top = room_.top + half;
    const double bottom = room_.bottom - half;
    if (column > 0)
      sheet.path("bound", fmt::format("M{:.3f} {:.3f}V{:.3f}", left, room_.top, room_.bottom));
    if (column + 1 < columns_)
      sheet.path("bound", fmt::format("M{:.3f} {:.3f}V{:.3f}", right, room_.top, room_.bottom));
    if (row > 0)
      sheet.path("bound", fmt::format("M{:.3f} {:.3f}H{:.3f}", room_.left, top, room_.right));
    if (row + 1 < rows_)
      sheet.path("bound", fmt::format("M{:.3f} {:.3f}H{:.3f}", room_.left, bottom, room_.right));
    for (const auto& [x, corner_column] : {std::pair(left, column), std::pair(right, column + 1)})
      for (const auto& [y, corner_row] : {std::pair(top, row), std::pair(bottom, row + 1)})
        if (between(corner_column, columns_) || between(corner_row, rows_))
          cross(x, y, corner_row, corner_column);
  }

  const Drawing& drawing_;
  const Frame& frame_;
  Paper paper_;
  PaperBox room_;
  PlaneBox extents_;
  Vec2 step_;
  int columns_ = 1;
  int rows_ = 1;
};

}  // namespace

std::string true_frame(const Drawing& drawing, const Frame& frame, const Paper& paper) {
  return FrameTiles(drawing, frame, paper).drawn();
}

}  // namespace linewright
