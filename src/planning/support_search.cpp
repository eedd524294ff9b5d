#include "planning/support_search.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace linewright {

namespace {

/// A place this near to a support, along the line, is at it.
constexpr double at_place_in = 1e-6;

/// What a way costs: supports first, of as many those that are not drawn, then how unlike its spans
/// are.
struct Cost {
  int supports = 0;
  int added = 0;
  double squares_in2 = 0;

  friend bool operator<(const Cost& a, const Cost& b) {
    return std::tie(a.supports, a.added, a.squares_in2) <
           std::tie(b.supports, b.added, b.squares_in2);
  }
};

/// The cheapest way to a span's end over that span.
struct Reached {
  bool is = false;
  Cost cost;
  int before = -1;  ///< the place that the span before it starts at
};

}  // namespace

SupportSearch::SupportSearch(const std::vector<SupportPlace>& places, JudgePlaces judge)
    : places_(places),
      judge_(std::move(judge)),
      wrong_to_(places.size(), static_cast<int>(places.size())) {}

std::optional<std::vector<int>> SupportSearch::fewest() {
  while (!gave_up()) {
    const auto chosen = next_try();
    if (!chosen) return std::nullopt;
    const std::vector<SupportFault> faults = judged(*chosen, Places::as_written);
    if (faults.empty()) return chosen;
    learn(*chosen, faults);
  }
  return std::nullopt;
}

std::vector<SupportFault> SupportSearch::judged(const std::vector<int>& chosen, Places places) {
  ++judged_;
  return judge_(chosen, places);
}

std::vector<int> SupportSearch::with_ends(const std::vector<int>& chosen) const {
  std::set<int> all(chosen.begin(), chosen.end());
  for (std::size_t i = 0; i < places_.size(); ++i)
    if (places_[i].stays || i == 0 || i + 1 == places_.size()) all.insert(static_cast<int>(i));
  return {all.begin(), all.end()};
}

/// At a support the longer of the two spans that meet there is what lets the line go so far.
SupportSearch::Span SupportSearch::span_of(const std::vector<int>& all,
                                           const SupportFault& fault) const {
  const auto along = [&](std::size_t i) {
    return places_[static_cast<std::size_t>(all[i])].distance_in;
  };
  if (fault.beyond_end) {
    const bool at_start = fault.distance_in < places_.back().distance_in / 2;
    return at_start ? Span{all[0], all[1]} : Span{all[all.size() - 2], all.back()};
  }
  Span found{all[0], all[1]};
  double longest = -1;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    if (fault.distance_in < along(i) - at_place_in ||
        fault.distance_in > along(i + 1) + at_place_in)
      continue;
    const double length = along(i + 1) - along(i);
    if (length <= longest) continue;
    longest = length;
    found = {all[i], all[i + 1]};
  }
  return found;
}

std::vector<int> SupportSearch::all_but(const std::vector<Span>& open) const {
  std::vector<int> chosen;
  for (int i = 1; i + 1 < static_cast<int>(places_.size()); ++i) {
    const bool inside = std::any_of(open.begin(), open.end(), [i](const Span& span) {
      return i > span.first && i < span.second;
    });
    if (!inside && !places_[static_cast<std::size_t>(i)].stays) chosen.push_back(i);
  }
  return chosen;
}

bool SupportSearch::is_wrong(Span span) const {
  return wrong_to_[static_cast<std::size_t>(span.first)] <= span.second ||
         wrong_alone_.contains(span);
}

bool SupportSearch::is_wrong_window(int first, int middle, int last) const {
  if (places_[static_cast<std::size_t>(middle)].stays) return false;
  return std::any_of(wrong_windows_.begin(), wrong_windows_.end(), [&](const Span& window) {
    return first <= window.first && window.second <= last;
  });
}

std::optional<std::vector<int>> SupportSearch::next_try() {
  const int count = static_cast<int>(places_.size());
  const auto cell = [count](int first, int last) {
    return static_cast<std::size_t>(first) * static_cast<std::size_t>(count) +
           static_cast<std::size_t>(last);
  };
  std::vector<Reached> reached(static_cast<std::size_t>(count) * static_cast<std::size_t>(count));
  std::vector<int> best_before(static_cast<std::size_t>(count), -1);
  int farthest = 0;
  int stays_before = 0;  // no span goes past what stays
  for (int last = 1; last < count; ++last) {
    const SupportPlace& place = places_[static_cast<std::size_t>(last)];
    for (int first = stays_before; first < last; ++first) {
      if (is_wrong({first, last})) continue;
      Reached here;
      const auto extend = [&](int before) {
        const Reached& so_far = reached[cell(before, first)];
        if (!so_far.is || (here.is && !(so_far.cost < here.cost))) return;
        here = {true, so_far.cost, before};
      };
      if (first == 0)
        here.is = true;
      else if (wrong_windows_.empty() || places_[static_cast<std::size_t>(first)].stays) {
        if (const int before = best_before[static_cast<std::size_t>(first)]; before >= 0)
          extend(before);
      } else {
        for (int before = 0; before < first; ++before)
          if (!is_wrong_window(before, first, last)) extend(before);
      }
      if (!here.is) continue;
      const double length =
          place.distance_in - places_[static_cast<std::size_t>(first)].distance_in;
      here.cost.squares_in2 += length * length;
      const bool is_support = !place.stays && last + 1 < count;
      here.cost.supports += is_support ? 1 : 0;
      here.cost.added += is_support && !place.drawn ? 1 : 0;
      reached[cell(first, last)] = here;
      int& best = best_before[static_cast<std::size_t>(last)];
      if (best < 0 || here.cost < reached[cell(best, last)].cost) best = first;
      farthest = last;
    }
    if (place.stays) stays_before = last;
  }
  int first = best_before.back();
  if (first < 0) {
    find_what_stops(farthest);
    return std::nullopt;
  }
  std::vector<int> chosen;
  for (int last = count - 1; first > 0;) {
    const int before = reached[cell(first, last)].before;
    if (!places_[static_cast<std::size_t>(first)].stays) chosen.push_back(first);
    last = first;
    first = before;
  }
  std::reverse(chosen.begin(), chosen.end());
  return chosen;
}

void SupportSearch::find_what_stops(int farthest) {
  const auto found = wrong_from_.lower_bound(farthest);
  if (found != wrong_from_.end())
    stopped_by_ = found->second.second;
  else if (last_alone_)
    stopped_by_ = last_alone_;
  else if (!wrong_from_.empty())
    stopped_by_ = wrong_from_.rbegin()->second.second;
}

}  // namespace linewright
