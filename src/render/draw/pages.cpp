#include "render/draw/pages.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "model/units.hpp"

namespace linewright {

namespace {

constexpr std::array<Paper, 2> papers{
    {{"letter", 8.5, 11}, {"a4", 210 / mm_per_in, 297 / mm_per_in}}};

}  // namespace

std::optional<Paper> paper_called(std::string_view word) {
  const auto found = std::find_if(papers.begin(), papers.end(),
                                  [&](const Paper& paper) { return paper.name == word; });
  return found != papers.end() ? std::optional(*found) : std::nullopt;
}

std::vector<std::string> paper_words() {
  std::vector<std::string> words;
  for (const Paper& paper : papers) words.emplace_back(paper.name);
  return words;
}

PaperBox drawing_room(const Paper& paper) {
  const double margin = page_margin_in * points_per_inch;
  return {margin, margin, paper.wide_in * points_per_inch - margin,
          (paper.high_in - page_foot_in) * points_per_inch - margin};
}

void draw_page_foot(Sheet& sheet, const Paper& paper, std::string_view what, std::string_view page,
                    const Phrasing& phrasing) {
  const bool metric = phrasing.unit == LengthUnit::millimetre;
  const double unit_pt = metric ? points_per_inch / mm_per_in : points_per_inch;
  const int units = metric ? 100 : 4;
  const int step = metric ? 10 : 1;
  const double x = page_margin_in * points_per_inch;
  const double y = (paper.high_in - page_margin_in) * points_per_inch;
  sheet.add(fmt::format("<path class=\"bar ruler\" d=\"M{:.3f} {:.3f}v-9v4h{:.4f}v-4v9\"/>\n", x, y,
                        units * unit_pt));
  for (int i = step; i < units; i += step)
    sheet.path("bar", fmt::format("M{:.3f} {:.3f}v-4", x + i * unit_pt, y - 1));
  sheet.text(x, y - 12, "small", "start",
             fmt::format("{} {} on a rule, or the printer has scaled the sheet: do not use it",
                         units, phrasing.unit_name()));
  // Beside the ruler, which must stay whole.
  sheet.text(paper.wide_in * points_per_inch - x, y - 12, "", "end", what, 56);
  sheet.text(paper.wide_in * points_per_inch - x, y, "", "end", page, 48);
}

std::string stacked_pages(const std::vector<Sheet>& pages, const Paper& paper,
                          std::string_view name) {
  Sheet all(paper.wide_in * points_per_inch);
  const double high = paper.high_in * points_per_inch;
  all.add(fmt::format("<style>@page{{size:{:.4f}in {:.4f}in;margin:0}}</style>\n", paper.wide_in,
                      paper.high_in));
  for (std::size_t i = 0; i < pages.size(); ++i) {
    all.add(fmt::format("<g class=\"page\" transform=\"translate(0 {:.4f})\">\n",
                        high * static_cast<double>(i)));
    all.add(pages[i].body());
    all.add("</g>\n");
  }
  return all.finished(high * static_cast<double>(std::max<std::size_t>(1, pages.size())), name);
}

}  // namespace linewright
