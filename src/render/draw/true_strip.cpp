#include "render/draw/true_strip.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "model/units.hpp"
#include "render/draw/strip_words.hpp"

namespace linewright {

namespace {

constexpr double row_in = 1.4;
/// From the top of a row to the line.
constexpr double line_in = 0.85;
constexpr double lane_pt = 10;
constexpr std::size_t most_words = 44;
constexpr double words_pt = 8;

class TrueStrip {
 public:
  TrueStrip(const Drawing& drawing, const SceneRoute& route, const std::vector<StripMark>& marks,
            const Paper& paper)
      : drawing_(drawing),
        route_(route),
        marks_(marks),
        paper_(on_its_side(paper)),
        room_(drawing_room(paper_)) {
    length_in_ = std::max(1e-3, route.steps.back().distance_in);
    shown_in_ = std::floor((room_.right - room_.left) / points_per_inch * 2) / 2;
    step_in_ = shown_in_ - page_overlap_in;
    rows_ = std::max(1, static_cast<int>(std::ceil((length_in_ - page_overlap_in) / step_in_)));
    rows_a_page_ =
        std::max(1, static_cast<int>((room_.bottom - room_.top) / points_per_inch / row_in));
  }

  std::string drawn() const {
    const int pages = (rows_ + rows_a_page_ - 1) / rows_a_page_;
    std::vector<Sheet> sheets;
    for (int page = 0; page < pages; ++page) {
      Sheet& sheet = sheets.emplace_back(paper_.wide_in * points_per_inch);
      for (int row = page * rows_a_page_; row < std::min(rows_, (page + 1) * rows_a_page_); ++row)
        draw_row(sheet, row, room_.top + (row % rows_a_page_) * row_in * points_per_inch);
      draw_page_foot(sheet, paper_,
                     fmt::format("{}, {} long, from {}", route_.name,
                                 drawing_.phrasing.tape(length_in_), first_node()),
                     fmt::format("page {} of {}", page + 1, pages), drawing_.phrasing);
    }
    return stacked_pages(sheets, paper_, drawing_.report.project_name + ": " + route_.name);
  }

 private:
  std::string first_node() const {
    const RouteReport* report = drawing_.report.find_route(route_.name);
    return report ? report->from : std::string("its first node");
  }

  void draw_row(Sheet& sheet, int row, double top) const {
    const double from_in = row * step_in_;
    const double to_in = std::min(length_in_, from_in + shown_in_);
    const double y = top + line_in * points_per_inch;
    const auto x = [&](double along_in) {
      return room_.left + (along_in - from_in) * points_per_inch;
    };
    const double bottom = top + row_in * points_per_inch;
    sheet.add(fmt::format(
        "<clipPath id=\"row{0}\"><path d=\"M{1:.3f} {2:.3f}H{3:.3f}V{4:.3f}H{1:.3f}Z\"/>"
        "</clipPath>\n<g class=\"row\" clip-path=\"url(#row{0})\" data-from=\"{5:.4f}\" "
        "data-left=\"{1:.3f}\">\n",
        row, room_.left, top, room_.right, bottom, from_in));
    sheet.path("grid", fmt::format("M{:.3f} {:.3f}H{:.3f}M{:.3f} {:.3f}H{:.3f}", room_.left,
                                   top + 2, room_.right, room_.left, bottom - 2, room_.right));
    sheet.path("bar", fmt::format("M{:.3f} {:.3f}H{:.3f}", x(from_in), y, x(to_in)));
    rule(sheet, x, y, from_in, to_in);
    joints(sheet, row, x, top, bottom);
    Lanes lanes;
    for (const StripMark& mark : marks_)
      if (mark.end_in >= from_in && mark.start_in <= to_in)
        draw(sheet, mark, x, y, from_in, to_in, lanes);
    sheet.add("</g>\n");
  }

  /// Ticks under the line, numbered from its first node.
  template <typename Place>
  void rule(Sheet& sheet, const Place& x, double y, double from_in, double to_in) const {
    const bool metric = drawing_.phrasing.unit == LengthUnit::millimetre;
    const double unit_in = metric ? 10 / mm_per_in : 1;
    const int first = static_cast<int>(std::ceil(from_in / unit_in - 1e-9));
    for (int i = first; i * unit_in <= to_in + 1e-9; ++i) {
      sheet.path("tick", fmt::format("M{:.3f} {:.3f}v9", x(i * unit_in), y));
      sheet.text(x(i * unit_in) + 2, y + 17, "small", "start",
                 fmt::format("{}", metric ? i * 10 : i));
    }
  }

  template <typename Place>
  void joints(Sheet& sheet, int row, const Place& x, double top, double bottom) const {
    const auto joint = [&](int next_row) {
      const double at = x(next_row * step_in_ + page_overlap_in / 2);
      sheet.path("bound joint", fmt::format("M{:.3f} {:.3f}V{:.3f}", at, top, bottom));
      sheet.text(at + 2, bottom - 6, "small", "start", fmt::format("join {}", next_row));
    };
    if (row > 0) joint(row);
    if (row + 1 < rows_) joint(row + 1);
  }

  template <typename Place>
  void draw(Sheet& sheet, const StripMark& mark, const Place& x, double y, double from_in,
            double to_in, Lanes& lanes) const {
    const double start = x(mark.start_in);
    const double end = x(mark.end_in);
    const double middle = x(mark.middle_in());
    switch (mark.kind) {
      case StripMarkKind::support:
        sheet.path("held support", fmt::format("M{:.3f} {:.3f}l-4 -9h8Z", middle, y));
        break;
      case StripMarkKind::crossing:
        sheet.path("bar crossing", fmt::format("M{:.3f} {:.3f}v18", middle, y - 9));
        break;
      case StripMarkKind::bend:
        sheet.path("bar bend",
                   fmt::format("M{:.3f} {:.3f}v-12M{:.3f} {:.3f}v-12M{:.3f} {:.3f}H{:.3f}", start,
                               y, end, y, start, y - 9, end));
        break;
      case StripMarkKind::sleeve:
      case StripMarkKind::attachment:
        sheet.path("part", fmt::format("M{0:.3f} {1:.3f}H{2:.3f}V{3:.3f}H{0:.3f}Z", start, y - 4,
                                       end, y + 4));
        break;
    }
    // A long mark is named where it begins in the row.
    const double at_in = std::clamp(mark.middle_in(), from_in, to_in);
    const std::string words = words_of_mark(mark, drawing_.phrasing);
    const double wide = std::min(words_width(words, words_pt), 0.58 * words_pt * most_words) + 8;
    const double left = std::clamp(x(at_in), room_.left, std::max(room_.left, room_.right - wide));
    const double words_y = y - 16 - lane_pt * static_cast<double>(lanes.take(left, left + wide));
    sheet.path("leader", fmt::format("M{:.3f} {:.3f}V{:.3f}", x(at_in), y, words_y + 2));
    sheet.text(left + 2, words_y, "small", "start", words, most_words);
  }

  const Drawing& drawing_;
  const SceneRoute& route_;
  const std::vector<StripMark>& marks_;
  Paper paper_;
  PaperBox room_;
  double length_in_ = 0;
  double shown_in_ = 0;
  double step_in_ = 0;
  int rows_ = 1;
  int rows_a_page_ = 1;
};

}  // namespace

std::string true_strip(const Drawing& drawing, const SceneRoute& route,
                       const std::vector<StripMark>& marks, const Paper& paper) {
  return TrueStrip(drawing, route, marks, paper).drawn();
}

}  // namespace linewright
