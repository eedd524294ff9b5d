// What a judgement of one choice of supports tells of others.

#include <algorithm>
#include <cmath>

#include "planning/support_search.hpp"

namespace linewright {

namespace {

/// Lengths along the line that differ by less are the same.
constexpr double rounding_in = 1e-6;

}  // namespace

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
      if (first < last && along(last) - along(first) > longest + rounding_in) {
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

}  // namespace linewright
