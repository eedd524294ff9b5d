#include "lines/motion/sleeve_hold.hpp"

#include <algorithm>

#include "lines/near/stretch.hpp"
#include "lines/sleeved_bend.hpp"
#include "model/rounding.hpp"

namespace linewright {

namespace {

bool grips(const Sleeve& sleeve, const Passage& passage) {
  if (!passage.point) return false;
  const std::optional<HoldKind> hold = passage.point->hold;
  if (hold == HoldKind::clamp) return true;
  if (hold == HoldKind::fairlead || hold == HoldKind::pulley) return false;
  const Hole* hole = passage.crossing ? passage.crossing->hole : nullptr;
  std::optional<double> bore = passage.point->bore_in;
  if (!bore && hole) bore = hole->bore_in;
  return bore && sleeve.outside_in && *bore <= *sleeve.outside_in + limit_rounding;
}

/// Gap to the nearest attachment that the sleeve cannot slip over, at its start or its end.
std::optional<double> gap_to_stop(const PreparedRoute& route, const Sleeve& sleeve, bool at_start) {
  std::optional<double> found;
  for (const Attachment& each : route.route->attached) {
    if (!sleeve.bore_in || each.diameter_in <= *sleeve.bore_in) continue;
    const double gap = at_start ? sleeve.from_in - (each.at_in + each.length_in / 2)
                                : each.at_in - each.length_in / 2 - sleeve.to_in;
    if (gap < -limit_rounding || gap > farthest_stop_in + limit_rounding) continue;
    if (!found || gap < *found) found = std::max(0.0, gap);
  }
  return found;
}

}  // namespace

SleeveHold sleeve_hold(const PreparedRoute& route, const Sleeve& sleeve,
                       const std::vector<Passage>& on_the_way) {
  if (route.line->kind != LineKind::cable) return {true, Movement{}, "its line does not move"};
  SleeveHold fast{true, Movement{}, {}, true};
  for (const Passage& passage : on_the_way)
    if (passage.middle_in() >= sleeve.from_in && passage.middle_in() <= sleeve.to_in &&
        grips(sleeve, passage))
      fast.places.push_back({passage.middle_in(), passage.words});
  if (!fast.places.empty()) {
    fast.words = "the " + fast.places.front().second + " holds it";
    return fast;
  }
  SleeveHold hold{false, route.moves, {}, false};
  const auto before = gap_to_stop(route, sleeve, true);
  const auto after = gap_to_stop(route, sleeve, false);
  if (!before || !after) return hold;
  hold.is_held = true;
  hold.words = "a stop at each end holds it on the cable";
  if (hold.moves) {
    hold.moves->toward_from_in += *before;
    hold.moves->toward_to_in += *after;
  }
  return hold;
}

SleeveGuards::SleeveGuards(const PreparedRoute& route) : route_(&route) {
  if (route.route->sleeves.empty()) return;
  on_the_way_ = passages(route);
  for (const Sleeve& sleeve : route.route->sleeves) {
    holds_.push_back(sleeve_hold(route, sleeve, on_the_way_));
    const SleeveHold& hold = holds_.back();
    if (!hold.moves) continue;
    const bool stays = hold.moves->toward_from_in == 0 && hold.moves->toward_to_in == 0;
    const double told_apart_in = stays ? 0 : longest_chord_in / 2;
    parts_.push_back({sleeve.from_in + hold.moves->toward_to_in + told_apart_in,
                      sleeve.to_in - hold.moves->toward_from_in - told_apart_in});
  }
}

std::optional<SleevedTurn> SleeveGuards::turn_in(const Bend& bend) const {
  std::optional<SleevedTurn> best;
  const auto grade = [](const SleevedTurn& turn) { return turn.is_held() + turn.is_led(); };
  for (std::size_t i = 0; i < holds_.size(); ++i) {
    const Sleeve& sleeve = route_->route->sleeves[i];
    if (!lies_over_all(sleeve, bend)) continue;
    SleevedTurn turn{&sleeve, {}, {}};
    for (const auto& [at_in, words] : holds_[i].places) {
      if (at_in <= bend.middle_in() + limit_rounding) turn.before = words;
      if (at_in >= bend.middle_in() - limit_rounding && turn.after.empty()) turn.after = words;
    }
    if (!best || grade(turn) > grade(*best)) best = turn;
  }
  return best;
}

bool SleeveGuards::guard(double distance_in) const {
  const bool covered = std::any_of(parts_.begin(), parts_.end(), [&](const Part& part) {
    return distance_in >= part.from_in && distance_in <= part.to_in;
  });
  return covered && !route_->attachment_at(distance_in);
}

}  // namespace linewright
