#pragma once
// Drawings at full size, on pages of paper that are laid together.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "render/draw/sheet.hpp"

namespace linewright {

/// A size of paper, upright.
struct Paper {
  std::string_view name;  ///< as it is written in words
  double wide_in = 0;
  double high_in = 0;
};

/// "letter" (ANSI/ASME Y14.1, size A) or "a4" (ISO 216); nothing for another word.
std::optional<Paper> paper_called(std::string_view word);
/// The words that `paper_called` knows.
std::vector<std::string> paper_words();

/// The same lying on its side.
inline Paper on_its_side(const Paper& paper) {
  return {paper.name, paper.high_in, paper.wide_in};
}

/// Within it printers print; at its foot are a ruler and the page's name.
inline constexpr double page_margin_in = 0.4;
inline constexpr double page_foot_in = 0.55;
/// What two pages that lie beside each other both show.
inline constexpr double page_overlap_in = 0.5;

/// Room to draw in, in points on the page.
PaperBox drawing_room(const Paper& paper);

/// Adds to a page its foot: a ruler to check the printer by, what is drawn, and which page it is.
void draw_page_foot(Sheet& sheet, const Paper& paper, std::string_view what, std::string_view page,
                    const Phrasing& phrasing);

/// All pages as one SVG, one below the other, each as large as the paper. Printed at full size and
/// without margins each is a page.
std::string stacked_pages(const std::vector<Sheet>& pages, const Paper& paper,
                          std::string_view name);

}  // namespace linewright
