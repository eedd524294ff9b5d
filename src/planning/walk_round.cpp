#include "planning/walk_round.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "model/support_name.hpp"

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

/// A gap measured this near along the line is the one that a limit is held against.
constexpr double same_gap_in = 0.5;

WalkItem item_at(WalkKind kind, std::string what, const PreparedRoute& route, double distance_in) {
  WalkItem item;
  item.kind = kind;
  item.what = std::move(what);
  item.distance_in = distance_in;
  item.at = route.centreline.at(distance_in);
  item.as_built = route.is_as_built(distance_in);
  return item;
}

/// "3: " before what the line's third support is called; a node has no number.
std::string numbered(const PreparedRoute& route, int point, const std::string& name) {
  if (point < 0) return name;
  const int number = support_numbers(route.route->points)[static_cast<std::size_t>(point)];
  return number > 0 ? std::to_string(number) + ": " + name : name;
}

/// The point that leads the line through a hole; nothing for none.
std::optional<int> point_through(const PreparedRoute& route, const Crossing& crossing) {
  const std::vector<RoutePoint>& points = route.route->points;
  for (std::size_t i = 0; crossing.hole != nullptr && i < points.size(); ++i)
    if (points[i].through == crossing.hole->name) return static_cast<int>(i);
  return std::nullopt;
}

void fill_in(WalkItem& item, const Measurement& measured, Vec3 found) {
  item.found = found;
  item.on = measured.on;
  item.by = measured.by;
}

/// Adds what holds the line or leads it, with the place where it was measured to be.
class HoldItems {
 public:
  HoldItems(WalkSheet& sheet, const std::vector<Measurement>& built)
      : sheet_(sheet), built_(built) {}

  void add(WalkKind kind, const std::string& name, std::optional<int> point, double distance_in) {
    const PreparedRoute& route = *sheet_.route;
    WalkItem item = item_at(kind, point ? numbered(route, *point, name) : name, route, distance_in);
    for (const Measurement& each : built_)
      if (point && each.is_place() && each.route == route.route->name && each.of == *point)
        fill_in(item, each, item.at);
    sheet_.items.push_back(std::move(item));
  }

 private:
  WalkSheet& sheet_;
  const std::vector<Measurement>& built_;
};

/// Measured places at which nothing holds the line or leads it through a hole.
void add_mere_places(WalkSheet& sheet, const std::vector<Measurement>& built) {
  const PreparedRoute& route = *sheet.route;
  for (const Measurement& each : built) {
    if (!each.is_place() || each.route != route.route->name || each.of < 0) continue;
    const auto point = static_cast<std::size_t>(each.of);
    if (support_numbers(route.route->points)[point] > 0) continue;
    WalkItem item =
        item_at(WalkKind::place, "the line itself", route, route.point_distance_in[point]);
    fill_in(item, each, route.route->points[point].at);
    sheet.items.push_back(std::move(item));
  }
}

/// What holds the line, goes round it or is fixed to it: there to be seen even where no rule has a
/// limit.
void add_things(WalkSheet& sheet, const std::vector<Measurement>& built) {
  const PreparedRoute& route = *sheet.route;
  HoldItems holds(sheet, built);
  for (const Support& support : route.supports)
    holds.add(WalkKind::support, support.name, support.point, support.distance_in);
  for (const Support& guide : route.loose_guides)
    holds.add(WalkKind::support, guide.name + ", which does not hold the line", guide.point,
              guide.distance_in);
  for (const Crossing& crossing : route.crossings)
    holds.add(
        WalkKind::crossing,
        crossing.hole != nullptr ? "hole " + crossing.name() : "no hole in " + crossing.frame->name,
        point_through(route, crossing), crossing.distance_in);
  add_mere_places(sheet, built);
  for (const Sleeve& sleeve : route.route->sleeves) {
    sheet.items.push_back(item_at(WalkKind::guard, "sleeve starts", route, sleeve.from_in));
    sheet.items.push_back(item_at(WalkKind::guard, "sleeve ends", route, sleeve.to_in));
  }
  for (const Attachment& attachment : route.route->attached)
    sheet.items.push_back(item_at(WalkKind::terminal, attachment.kind, route, attachment.at_in));
}

/// What was measured of a gap: of the judgement itself, or of one like it at its place.
const Measured* measured_of(const Judgement& judgement, const std::vector<Judgement>& all) {
  if (judgement.measured) return &*judgement.measured;
  for (const Judgement& each : all)
    if (each.measured && each.rule == judgement.rule && each.route == judgement.route &&
        each.with == judgement.with && each.distance_in &&
        std::abs(*each.distance_in - *judgement.distance_in) <= same_gap_in)
      return &*each.measured;
  return nullptr;
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
    if (const Measured* measured = measured_of(judgement, judgements)) {
      item.measured = measured->value;
      item.on = measured->on;
      item.by = measured->by;
    }
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
    case WalkKind::place:
      return "place";
  }
  return "support";
}

std::vector<WalkSheet> walk_round_sheets(const PreparedProject& prepared,
                                         const std::vector<Judgement>& judgements) {
  std::vector<WalkSheet> sheets;
  for (const PreparedRoute& route : prepared.routes) {
    WalkSheet& sheet = sheets.emplace_back();
    sheet.route = &route;
    add_things(sheet, prepared.project->built);
    add_limits(sheet, judgements);
    std::stable_sort(
        sheet.items.begin(), sheet.items.end(),
        [](const WalkItem& a, const WalkItem& b) { return a.distance_in < b.distance_in; });
  }
  return sheets;
}

}  // namespace linewright
