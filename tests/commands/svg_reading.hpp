#pragma once
// Measures what stands on a sheet.

#include <cmath>
#include <regex>
#include <string>
#include <vector>

namespace linewright::test {

/// What is wrong with how the tags of `svg` are closed; empty for nothing. Text between them may
/// hold no bare markup.
inline std::string unbalanced(const std::string& svg) {
  std::vector<std::string> open;
  std::size_t at = 0;
  while ((at = svg.find('<', at)) != std::string::npos) {
    const std::size_t end = svg.find('>', at);
    if (end == std::string::npos) return "a tag without an end";
    const std::string tag = svg.substr(at + 1, end - at - 1);
    if (tag.find('<') != std::string::npos) return "a tag within a tag: " + tag;
    const std::string name = tag.substr(0, tag.find_first_of(" \n/", 1));
    if (tag.starts_with('/')) {
      if (open.empty() || open.back() != tag.substr(1)) return "closes what is not open: " + tag;
      open.pop_back();
    } else if (!tag.ends_with('/')) {
      open.push_back(name);
    }
    at = end;
  }
  return open.empty() ? "" : "left open: " + open.back();
}

/// The number after `before` in the first place where that stands.
inline double number_after(const std::string& text, const std::string& before) {
  const std::size_t at = text.find(before);
  return at == std::string::npos ? std::nan("") : std::stod(text.substr(at + before.size()));
}

/// Words on a sheet and the box that they take there, by widths of letters of a usual sans serif:
/// no wider than any that a browser would take.
struct WordBox {
  std::string words;
  double left = 0;
  double top = 0;
  double right = 0;
  double bottom = 0;

  bool overlaps(const WordBox& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
};

/// How wide a letter is, in sizes of its type: common practice of sans serifs, no source.
inline double width_of_letter(char letter) {
  if (std::string("il|.,:;'! ").find(letter) != std::string::npos) return 0.26;
  if (std::string("mwMW").find(letter) != std::string::npos) return 0.8;
  return 0.5;
}

inline std::vector<WordBox> word_boxes(const std::string& svg) {
  static const std::regex text(
      "<g class=\"page\" transform=\"translate\\(0 ([0-9.]+)\\)\">|"
      "<text x=\"(-?[0-9.]+)\" y=\"(-?[0-9.]+)\" class=\"([a-z -]*)\" "
      "text-anchor=\"([a-z]+)\">([^<]*)</text>");
  std::vector<WordBox> boxes;
  double page_top = 0;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), text); it != std::sregex_iterator();
       ++it) {
    const std::smatch& match = *it;
    if (match[1].matched) {
      page_top = std::stod(match[1]);
      continue;
    }
    const std::string words = std::regex_replace(match[6].str(), std::regex("&[a-z#0-9]+;"), "n");
    const double size = match[4] == "title" ? 14 : match[4] == "small" ? 7 : 8;
    double wide = 0;
    for (const char letter : words)
      if ((static_cast<unsigned char>(letter) & 0xc0u) != 0x80u)
        wide += size * width_of_letter(letter);
    const double x = std::stod(match[2]);
    const double y = page_top + std::stod(match[3]);
    const double left = match[5] == "end" ? x - wide : match[5] == "middle" ? x - wide / 2 : x;
    boxes.push_back({words, left, y - 0.7 * size, left + wide, y + 0.15 * size});
  }
  return boxes;
}

/// All words of a class and an anchor.
inline std::vector<std::string> words_of_class(const std::string& svg, const std::string& css_class,
                                               const std::string& anchor) {
  const std::regex text("class=\"" + css_class + "\" text-anchor=\"" + anchor +
                        "\">([^<]*)</text>");
  std::vector<std::string> words;
  for (auto it = std::sregex_iterator(svg.begin(), svg.end(), text); it != std::sregex_iterator();
       ++it)
    words.push_back((*it)[1]);
  return words;
}

/// Each pair of words that lie on each other, for a message.
inline std::string overlapping_words(const std::string& svg) {
  const std::vector<WordBox> boxes = word_boxes(svg);
  std::string found;
  for (std::size_t i = 0; i < boxes.size(); ++i)
    for (std::size_t k = i + 1; k < boxes.size(); ++k)
      if (boxes[i].overlaps(boxes[k]))
        found += "'" + boxes[i].words + "' and '" + boxes[k].words + "'\n";
  return found;
}

}  // namespace linewright::test
