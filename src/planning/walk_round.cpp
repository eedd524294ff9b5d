#include "planning/walk_round.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace linewright {

namespace {

/// Rules whose limits can be looked at or measured on the aeroplane, and what is looked at.
constexpr std::array<std::pair<std::string_view, WalkKind>, 16> seen_by_rule{{
    {"support-spacing", WalkKind::support},
    {"support-mount", WalkKind::support},
    {"slack", WalkKind::support},
    {"wiring", WalkKind::support},
    {"bend-radius", WalkKind::bend},
    {"clearance", WalkKind::gap},
    {"chafe", WalkKind::gap},
    {"separation", WalkKind::gap},
    {"frame-crossing", WalkKind::crossing},
    {"fairlead-angle", WalkKind::guard},
    {"pulley", WalkKind::guard},
    {"sleeve-cover", WalkKind::guard},
    {"attachment-travel", WalkKind::terminal},
    {"cable-end", WalkKind::terminal},
    {"casing-bends", WalkKind::bend},
    {"casing-ends", WalkKind::terminal},
}};

std::optional<WalkKind> kind_of_rule(std::string_view rule) {
  for (const auto& [name, kind] : seen_by_rule)
    if (name == rule) return kind;
  return std::nullopt;
}

WalkItem item_at(WalkKind kind, std::string what, const PreparedRoute& route, double distance_in) {
  WalkItem item;
  item.kind = kind;
  item.what = std::move(what);
  item.distance_in = distance_in;
  item.at = route.centreline.at(distance_in);
  return item;
}

/// What holds the line, goes round it or is fixed to it: there to be seen even where no rule has a
/// limit.
void add_things(WalkSheet& sheet) {
  const PreparedRoute& route = *sheet.route;
  for (const Support& support : route.supports)
    sheet.items.push_back(item_at(WalkKind::support, support.name, route, support.distance_in));
  for (const Crossing& crossing : route.crossings)
    sheet.items.push_back(item_at(
        WalkKind::crossing,
        crossing.hole != nullptr ? "hole " + crossing.name() : "no hole in " + crossing.frame->name,
        route, crossing.distance_in));
  for (const Sleeve& sleeve : route.route->sleeves) {
    sheet.items.push_back(item_at(WalkKind::guard, "sleeve starts", route, sleeve.from_in));
    sheet.items.push_back(item_at(WalkKind::guard, "sleeve ends", route, sleeve.to_in));
  }
  for (const Attachment& attachment : route.route->attached)
    sheet.items.push_back(item_at(WalkKind::terminal, attachment.kind, route, attachment.at_in));
}

void add_limits(WalkSheet& sheet, const std::vector<Judgement>& judgements) {
  for (const Judgement& judgement : judgements) {
    const auto kind = kind_of_rule(judgement.rule);
    if (!kind || judgement.route != sheet.route->route->name || !judgement.distance_in) continue;
    WalkItem item = item_at(*kind, judgement.message, *sheet.route, *judgement.distance_in);
    if (judgement.at) item.at = *judgement.at;
    item.rule = judgement.rule;
    item.drawn = judgement.value;
    item.limit = judgement.limit;
    item.unit = judgement.unit;
    item.sense = judgement.sense;
    item.verdict = judgement.verdict;
    item.source = judgement.source;
    sheet.items.push_back(std::move(item));
  }
}

}  // namespace

std::string_view walk_word(WalkKind kind) {
  switch (kind) {
    case WalkKind::support:
      return "support";
    case WalkKind::bend:
      return "bend";
    case WalkKind::gap:
      return "gap";
    case WalkKind::crossing:
      return "crossing";
    case WalkKind::guard:
      return "guard";
    case WalkKind::terminal:
      return "terminal";
  }
  return "support";
}

std::vector<WalkSheet> walk_round_sheets(const PreparedProject& prepared,
                                         const std::vector<Judgement>& judgements) {
  std::vector<WalkSheet> sheets;
  for (const PreparedRoute& route : prepared.routes) {
    WalkSheet& sheet = sheets.emplace_back();
    sheet.route = &route;
    add_things(sheet);
    add_limits(sheet, judgements);
    std::stable_sort(
        sheet.items.begin(), sheet.items.end(),
        [](const WalkItem& a, const WalkItem& b) { return a.distance_in < b.distance_in; });
  }
  return sheets;
}

}  // namespace linewright
