#include "rules/space/shared_bore.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/plane/packing.hpp"
#include "geometry/plane/polygon.hpp"
#include "lines/edge_guard.hpp"
#include "rules/space/hole_passage.hpp"

namespace linewright {

namespace {

/// A line where it goes through something round.
struct Threaded {
  const PreparedRoute* route = nullptr;
  double along_in = 0;
  const Hole* hole = nullptr;     ///< nullptr: a guide that stands free
  bool is_filled = false;         ///< a grommet or bushing goes round the hole's edge
  std::optional<double> bore_in;  ///< of a guide of its own
  Vec3 at;                        ///< the guide's middle
  std::string with;               ///< the hole, or the part that it is in; empty for none
  std::string words;              ///< "hole F4-a" or "the fairlead"
  double diameter_in() const { return 2 * route->radius_in(along_in); }
};

/// Guides that stand in no hole.
void add_free_guides(const PreparedRoute& route, const std::vector<const RoutePoint*>& in_holes,
                     std::vector<Threaded>& threaded) {
  const auto& points = route.route->points;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const RoutePoint& point = points[i];
    if (!point.is_bored_guide() || !point.bore_in ||
        std::find(in_holes.begin(), in_holes.end(), &point) != in_holes.end())
      continue;
    threaded.push_back({&route,
                        route.point_distance_in[i],
                        nullptr,
                        false,
                        point.bore_in,
                        point.at,
                        {},
                        "the guide at that place"});
  }
  for (const FreePassage& passage : route.free_passages)
    if (std::find(in_holes.begin(), in_holes.end(), &passage.fairlead()) == in_holes.end())
      threaded.push_back({&route,
                          passage.distance_in,
                          nullptr,
                          false,
                          passage.fairlead().bore_in,
                          passage.fairlead().at,
                          {},
                          "the fairlead at that place"});
}

std::vector<Threaded> all_threaded(const PreparedProject& prepared) {
  std::vector<Threaded> threaded;
  for (const PreparedRoute& route : prepared.routes) {
    std::vector<const RoutePoint*> in_holes;
    for (const Crossing& crossing : route.crossings) {
      if (!crossing.hole) continue;
      const RoutePoint* guide = guide_in(route, crossing);
      Threaded each{
          &route, crossing.distance_in, crossing.hole,   fills_hole(guide, *crossing.hole),
          {},     crossing.at,          crossing.name(), "hole " + crossing.hole->name};
      if (guide) {
        in_holes.push_back(guide);
        if (guide->bore_in) each.bore_in = guide->bore_in;
        if (guide->bore_in) each.at = guide->at;
      }
      threaded.push_back(each);
    }
    add_free_guides(route, in_holes, threaded);
  }
  return threaded;
}

/// Two bores that overlap are one. A grommet fills its hole: all that goes through goes through it.
bool share(const Threaded& a, const Threaded& b) {
  if (a.hole != b.hole) return false;
  if (a.hole && (a.is_filled || b.is_filled)) return true;
  if (a.bore_in && b.bore_in)
    return distance(a.at, b.at) < (*a.bore_in + *b.bore_in) / 2 - limit_rounding;
  return a.hole != nullptr && !a.bore_in && !b.bore_in;
}

/// Width that the lines have between them: a guide's bore, or the hole less the wall of its guard.
/// Of a hole that is not round it is that of the widest circle in it, which may not be all.
double width_in(const std::vector<const Threaded*>& lines) {
  std::optional<double> bore;
  for (const Threaded* line : lines)
    if (line->bore_in) bore = std::max(bore.value_or(0), *line->bore_in);
  if (bore) return *bore;
  const Hole& hole = *lines.front()->hole;
  if (hole.bore_in) return *hole.bore_in;
  const bool filled =
      std::any_of(lines.begin(), lines.end(), [](const Threaded* line) { return line->is_filled; });
  const double wall = hole.edge == EdgeGuard::grommet ? grommet_wall.value
                      : filled                        ? guard_wall.value
                                                      : 0.0;
  return widest_circle_in(hole) - wall;
}

/// True where how wide the room is is not all that counts: an opening that is not round.
bool is_long(const std::vector<const Threaded*>& lines) {
  const bool bored = std::any_of(lines.begin(), lines.end(),
                                 [](const Threaded* line) { return line->bore_in.has_value(); });
  const Hole* hole = lines.front()->hole;
  return !bored && hole && !hole->bore_in && !std::holds_alternative<Circle>(hole->shape);
}

bool are_drawn_apart(const std::vector<const Threaded*>& lines) {
  for (std::size_t i = 0; i < lines.size(); ++i)
    for (std::size_t j = 0; j < i; ++j)
      if (distance(lines[i]->at, lines[j]->at) <
          (lines[i]->diameter_in() + lines[j]->diameter_in()) / 2 - limit_rounding)
        return false;
  return true;
}

std::string others_of(const std::vector<const Threaded*>& lines, const Threaded& line) {
  std::vector<std::string> names;
  for (const Threaded* other : lines)
    if (other->route != line.route &&
        std::find(names.begin(), names.end(), other->route->route->name) == names.end())
      names.push_back(other->route->route->name);
  std::string words;
  for (std::size_t i = 0; i < names.size(); ++i)
    words += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return words.empty() ? "itself" : words;
}

void judge_bore(const RuleContext& context, const std::vector<const Threaded*>& lines,
                std::vector<Judgement>& judgements) {
  const double width = width_in(lines);
  std::vector<double> diameters;
  for (const Threaded* line : lines) diameters.push_back(line->diameter_in());
  const double needed = packed_diameter(diameters);
  const Phrasing& phrasing = context.phrasing;
  const bool not_known = is_long(lines) && needed > width + limit_rounding;
  // Each by itself is held against the edge.
  if (not_known && are_drawn_apart(lines)) return;
  for (const Threaded* line : lines) {
    Judgement judgement = context.at(*line->route, line->along_in);
    if (!line->with.empty()) judgement.with = line->with;
    if (not_known) {
      leave_unknown(judgement, side_by_side_in_bore);
      judgement.message = "whether it has room beside " + others_of(lines, *line) + " in " +
                          line->words + " is not known: they are drawn in one place";
      judgement.mend = "draw them side by side";
      judgements.push_back(judgement);
      continue;
    }
    const bool fits = holds(judgement, width - needed, {side_by_side_in_bore});
    judgement.message = (fits ? "lies beside " : "has no room beside ") + others_of(lines, *line) +
                        " in " + line->words + ": " + phrasing.length(width) +
                        " across, and side by side they take " + phrasing.length_up(needed);
    if (!fits)
      judgement.mend = "give each a hole of its own, or one with a bore of " +
                       phrasing.length_up(needed) + " or more";
    judgements.push_back(judgement);
  }
}

}  // namespace

std::vector<Judgement> judge_shared_bores(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const std::vector<Threaded> threaded = all_threaded(context.prepared);
  std::vector<bool> done(threaded.size(), false);
  for (std::size_t i = 0; i < threaded.size(); ++i) {
    if (done[i]) continue;
    std::vector<const Threaded*> lines{&threaded[i]};
    // What shares with any of them shares with all.
    for (std::size_t k = 0; k < lines.size(); ++k) {
      for (std::size_t j = i + 1; j < threaded.size(); ++j) {
        if (done[j] || !share(*lines[k], threaded[j])) continue;
        done[j] = true;
        lines.push_back(&threaded[j]);
      }
    }
    if (lines.size() > 1) judge_bore(context, lines, judgements);
  }
  return judgements;
}

}  // namespace linewright
