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

void SupportSearch::learn(const std::vector<int>& chosen, const std::vector<SupportFault>& faults) {
  const std::vector<int> all = with_ends(chosen);
  // What a free length may be is told by one judgement; the rest then is of spans that are no
  // longer.
  for (const SupportFault& fault : faults)
    if (fault.judgement.rule == "support-spacing") learn_spacing(span_of(all, fault), fault);
  Wrong wrong;
  for (const SupportFault& fault : faults) {
    if (!fault.placed) {
      learn_unplaced(all, fault);
      continue;
    }
    const Span span = span_of(all, fault);
    if (is_wrong(span)) continue;
    if (fault.clamp_lost) {
      learn_lost_clamp(all, span, fault);
    } else if (fault.judgement.rule == "resonance") {
      wrong_alone_.insert(span);
      last_alone_ = fault;
    } else {
      wrong.emplace(span, fault);
    }
  }
  for (const auto& [span, fault] : shortest_wrong(shortest_wrong(wrong, true), false))
    mark(span, fault);
}

/// Each span is tried alone, with supports everywhere else.
void SupportSearch::learn_unplaced(const std::vector<int>& all, const SupportFault& fault) {
  bool found = false;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) {
    const Span span{all[i], all[i + 1]};
    if (is_wrong(span)) {
      found = true;
      continue;
    }
    const auto alone = judged(all_but({span}), Places::exact);
    const auto still = std::find_if(alone.begin(), alone.end(),
                                    [](const SupportFault& each) { return !each.placed; });
    if (still == alone.end()) continue;
    found = true;
    for (const auto& [shortest, why] :
         shortest_wrong(shortest_wrong({{span, *still}}, true), false))
      mark(shortest, why);
  }
  if (found) return;
  for (std::size_t i = 0; i + 1 < all.size(); ++i) wrong_alone_.emplace(all[i], all[i + 1]);
  last_alone_ = fault;
}

/// The rule says how long a free length is, and may be: all that are longer are wrong. One that
/// goes on past an end that is free has its own limit, and is only known of spans to that end.
void SupportSearch::learn_spacing(Span span, const SupportFault& fault) {
  const Judgement& judgement = fault.judgement;
  if (!judgement.value || !judgement.limit) return;
  const int end = static_cast<int>(places_.size()) - 1;
  const auto along = [this](int i) { return places_[static_cast<std::size_t>(i)].distance_in; };
  const double longest =
      along(span.second) - along(span.first) - (*judgement.value - *judgement.limit);
  const bool from_end = span.first == 0 && !places_.front().stays;
  const bool to_end = span.second == end && !places_.back().stays;
  mark(span, fault);
  if (from_end && to_end) return;
  for (int first = from_end ? 0 : 1; first <= (from_end ? 0 : end - 1); ++first)
    for (int last = to_end ? end : first + 1; last <= (to_end ? end : end - 1); ++last)
      if (first < last && along(last) - along(first) > longest + at_place_in) {
        mark({first, last}, fault);
        break;
      }
}

void SupportSearch::learn_lost_clamp(const std::vector<int>& all, Span span,
                                     const SupportFault& fault) {
  const auto at = std::find(all.begin(), all.end(), span.first);
  const auto try_window = [&](int first, int middle, int last) {
    if (places_[static_cast<std::size_t>(middle)].stays) return false;
    const std::vector<SupportFault> found =
        judged(all_but({{first, middle}, {middle, last}}), Places::exact);
    const bool lost = std::any_of(found.begin(), found.end(),
                                  [](const SupportFault& each) { return each.clamp_lost; });
    if (lost) wrong_windows_.emplace_back(first, last);
    return lost;
  };
  const bool before = at != all.begin() && try_window(*(at - 1), span.first, span.second);
  const bool after = at + 2 < all.end() && try_window(span.first, span.second, *(at + 2));
  if (!before && !after) wrong_alone_.insert(span);
  last_alone_ = fault;
}

/// Most are wrong by a few places: they are shortened by one, two, four… until what is left is
/// right, and then by halves. All spans are tried at once: none touches another's inside.
SupportSearch::Wrong SupportSearch::shortest_wrong(const Wrong& wrong, bool from_start) {
  struct Search {
    Span span;
    SupportFault fault;
    int right;     ///< the other end of a part of it that is not known to be wrong
    int step = 1;  ///< by how many places it is shortened next; 0: to half of what is left
    Span tried = {};
  };
  std::vector<Search> searches;
  for (const auto& [span, fault] : wrong)
    searches.push_back({span, fault, from_start ? span.first : span.second, 1, {}});
  for (bool any = true; any;) {
    any = false;
    std::vector<Span> open;
    for (Search& each : searches) {
      const int wrong_end = from_start ? each.span.second : each.span.first;
      each.tried = each.span;
      const int left = std::abs(wrong_end - each.right);
      if (left > 1) {
        const int shorter = each.step > 0 ? std::min(each.step, left - 1) : left / 2;
        (from_start ? each.tried.second : each.tried.first) += from_start ? -shorter : shorter;
        any = true;
      }
      open.push_back(each.tried);
    }
    if (!any) break;
    const std::vector<int> chosen = all_but(open);
    const std::vector<int> all = with_ends(chosen);
    Wrong found;
    for (const SupportFault& fault : judged(chosen, Places::exact))
      if (!fault.placed && searches.size() == 1)
        found.emplace(open.front(), fault);
      else if (fault.placed && !fault.clamp_lost && fault.judgement.rule != "resonance")
        found.emplace(span_of(all, fault), fault);
    for (Search& each : searches) {
      if (each.tried == each.span) continue;
      const auto still = found.find(each.tried);
      if (still != found.end()) {
        each.span = each.tried;
        each.fault = still->second;
        each.step *= 2;
      } else {
        each.step = 0;
        each.right = from_start ? each.tried.second : each.tried.first;
      }
    }
  }
  Wrong shortest;
  for (const Search& each : searches) shortest.emplace(each.span, each.fault);
  return shortest;
}

void SupportSearch::mark(Span span, const SupportFault& fault) {
  const auto known = wrong_from_.find(span.first);
  if (known == wrong_from_.end() || span.second < known->second.first)
    wrong_from_.insert_or_assign(span.first, std::pair(span.second, fault));
  for (int i = span.first; i >= 0; --i) {
    int& to = wrong_to_[static_cast<std::size_t>(i)];
    if (to <= span.second) break;
    to = span.second;
  }
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
