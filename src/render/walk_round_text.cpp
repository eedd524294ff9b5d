#include "render/walk_round_text.hpp"

#include <fmt/format.h>

#include "render/amount.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

constexpr std::size_t kind_columns = 10;
constexpr std::string_view blank = "__________";

/// True where a number is to be written down: a count or a ratio is looked at.
bool is_measured(const WalkItem& item) {
  return item.drawn && item.unit != Unit::none;
}

std::string limit_words(const WalkItem& item, const Phrasing& phrasing) {
  std::string words =
      (item.as_built ? "as built " : "drawn ") + amount(*item.drawn, item.unit, phrasing);
  if (item.limit)
    words +=
        fmt::format(", {} {}", sense_words(item.sense), amount(*item.limit, item.unit, phrasing));
  return words;
}

/// Verdicts on the drawing that the aeroplane should be looked at for.
std::string doubt_words(const WalkItem& item) {
  if (!item.verdict || *item.verdict == Verdict::pass) return {};
  return fmt::format(" [{}: {}]", item.as_built ? "as built" : "the drawing",
                     verdict_word(*item.verdict));
}

std::string when_words(const WalkItem& item) {
  return " on " + item.on + " by " + item.by;
}

std::string item_text(const WalkItem& item, const Phrasing& phrasing) {
  const bool done = item.found || item.measured;
  const std::string lead = (done ? "  [x] " : "  [ ] ") + left(walk_word(item.kind), kind_columns);
  if (!item.rule.empty()) {
    std::string text = wrapped(lead, item.rule + ": " + item.what + doubt_words(item));
    if (!is_measured(item)) return text;
    return text + wrapped(std::string(columns_of(lead), ' '),
                          fmt::format("{}: measured {}", limit_words(item, phrasing),
                                      item.measured ? amount(*item.measured, item.unit, phrasing) +
                                                          when_words(item)
                                                    : std::string(blank)));
  }
  return wrapped(lead, item.what) +
         wrapped(std::string(columns_of(lead), ' '),
                 "found at " + (item.found ? phrasing.place(*item.found) + when_words(item)
                                           : std::string(blank)));
}

/// Items at one place stand under it.
std::string sheet_text(const WalkSheet& sheet, const Phrasing& phrasing) {
  const PreparedRoute& route = *sheet.route;
  std::string text = wrapped(
      "", fmt::format("{}: {}, {}, {} from {} to {}", route.route->name, route.route->system_name,
                      route.line->name, phrasing.length(route.length_in()), route.from->name,
                      route.to->name));
  text += fmt::format("Date {}  By {}\n", blank, blank);
  std::string place;
  for (const WalkItem& item : sheet.items) {
    std::string here = fmt::format("{} from {}, {}", phrasing.length(item.distance_in),
                                   route.from->name, phrasing.place(item.at));
    if (here != place) text += "\n" + wrapped("", here);
    place = std::move(here);
    text += item_text(item, phrasing);
  }
  if (sheet.items.empty()) text += "\nNothing of this line is described that could be looked at.\n";
  return text + "\n";
}

}  // namespace

std::string walk_round_text(const std::string& project_name, const std::vector<WalkSheet>& sheets,
                            const TextStyle& style) {
  std::string text = wrapped("", "Walk round: " + project_name);
  text +=
      wrapped("",
              "Look at every place, tick the box, and write down what was measured, not what is "
              "drawn. A gap is between surfaces. Gaps here have the build tolerance taken off: "
              "one that measures less than is drawn is not yet one that fails, and is to be "
              "judged again.");
  text += "\n";
  for (const WalkSheet& sheet : sheets) text += sheet_text(sheet, style.phrasing);
  text += wrapped("",
                  "A sheet filled in is the builder's own record. It is no inspection that a rule "
                  "asks for.");
  return text;
}

}  // namespace linewright
