#include "render/check_changes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <tuple>
#include <utility>

#include "render/finding_folds.hpp"
#include "render/finding_text.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

/// What a judgement is about, whatever it says.
using Subject = std::tuple<std::string, std::string, std::string>;

Subject subject_of(const Judgement& judgement) {
  return {judgement.rule, judgement.route, judgement.with.value_or("")};
}

/// A judgement with its subject and all that is printed of it, but its place in a file.
using Said = std::tuple<Subject, Verdict, std::string>;

Said said(const Judgement& judgement, const Report& report, const Phrasing& phrasing) {
  std::string words = judgement.message;
  for (const FindingLine& line :
       finding_lines(judgement, report.find_route(judgement.route), phrasing))
    words += "\n" + line.text;
  return {subject_of(judgement), judgement.verdict, std::move(words)};
}

using Judgements = std::vector<const Judgement*>;

void sort_along_route(Judgements& judgements) {
  std::stable_sort(judgements.begin(), judgements.end(),
                   [](const Judgement* a, const Judgement* b) {
                     return a->distance_in.value_or(0) < b->distance_in.value_or(0);
                   });
}

using ByRoute = std::map<std::string_view, Judgements>;

ByRoute by_route(const Report& report) {
  ByRoute routes;
  for (const Judgement& judgement : report.judgements)
    routes[judgement.route].push_back(&judgement);
  return routes;
}

bool same_but_for_its_place_in_a_file(const Judgement* a, const Judgement* b) {
  const auto all = [](const Judgement& each) {
    return std::tie(each.rule, each.verdict, each.route, each.with, each.with_is_route, each.at,
                    each.distance_in, each.value, each.limit, each.unit, each.sense, each.message,
                    each.source, each.mend);
  };
  const bool is_plain = !a->waived && !b->waived && !a->measured && !b->measured;
  return is_plain && all(*a) == all(*b);
}

std::map<std::string_view, std::string_view> froms_of(const Report& report) {
  std::map<std::string_view, std::string_view> froms;
  for (const RouteReport& route : report.routes) froms.emplace(route.cut.name, route.from);
  return froms;
}

/// Takes away the routes of which the same is said, which are nearly all of them while one is
/// moved: what is printed of them need not be put in words to see that.
void drop_unchanged(ByRoute& was, ByRoute& now, const Report& before, const Report& after) {
  auto froms_before = froms_of(before);
  auto froms_after = froms_of(after);
  for (auto route = now.begin(); route != now.end();) {
    const auto& [name, said_now] = *route;
    const auto known = was.find(name);
    if (known != was.end() && froms_before[name] == froms_after[name] &&
        std::equal(known->second.begin(), known->second.end(), said_now.begin(), said_now.end(),
                   same_but_for_its_place_in_a_file)) {
      was.erase(known);
      route = now.erase(route);
    } else {
      ++route;
    }
  }
}

/// Those of one subject before and after that differ from each other, each in order along the
/// route.
struct Sides {
  Judgements was;
  Judgements now;
};

/// Judgements that say the same before and after are left out.
std::map<Subject, Sides> differing(const Report& before, const Report& now,
                                   const Phrasing& phrasing) {
  ByRoute were = by_route(before);
  ByRoute are = by_route(now);
  drop_unchanged(were, are, before, now);
  std::map<Said, Judgements> unmatched;
  for (const auto& [route, judgements] : were)
    for (const Judgement* judgement : judgements)
      unmatched[said(*judgement, before, phrasing)].push_back(judgement);
  std::map<Subject, Sides> sides;
  for (const auto& [route, judgements] : are)
    for (const Judgement* judgement : judgements) {
      const auto same = unmatched.find(said(*judgement, now, phrasing));
      if (same != unmatched.end() && !same->second.empty())
        same->second.pop_back();
      else
        sides[subject_of(*judgement)].now.push_back(judgement);
    }
  for (const auto& [words, judgements] : unmatched)
    for (const Judgement* judgement : judgements)
      sides[subject_of(*judgement)].was.push_back(judgement);
  for (auto& [subject, side] : sides) sort_along_route(side.was);
  return sides;
}

double apart_in(const Judgement& a, const Judgement& b) {
  return std::abs(a.distance_in.value_or(0) - b.distance_in.value_or(0));
}

/// What a figure is of. A plain number is of whatever its source says.
using Measure = std::tuple<Unit, LimitSense, std::string>;

/// Nothing of a judgement that has no figure.
std::optional<Measure> measure_of(const Judgement& judgement) {
  if (!judgement.value || !judgement.limit) return std::nullopt;
  const bool is_plain = judgement.unit == Unit::none;
  return Measure{judgement.unit, judgement.sense, is_plain ? judgement.source : std::string()};
}

/// Pairs the judgements in order along the route. Where one side has more, one is left without a
/// partner whenever its neighbour is the nearer partner.
std::vector<Change> paired_in_order(const Sides& sides) {
  std::vector<Change> changes;
  std::size_t i = 0;
  std::size_t j = 0;
  while (i < sides.was.size() && j < sides.now.size()) {
    const std::size_t left_was = sides.was.size() - i;
    const std::size_t left_now = sides.now.size() - j;
    const double here = apart_in(*sides.was[i], *sides.now[j]);
    if (left_now > left_was && apart_in(*sides.was[i], *sides.now[j + 1]) < here)
      changes.push_back({nullptr, sides.now[j++]});
    else if (left_was > left_now && apart_in(*sides.was[i + 1], *sides.now[j]) < here)
      changes.push_back({sides.was[i++], nullptr});
    else
      changes.push_back({sides.was[i++], sides.now[j++]});
  }
  while (i < sides.was.size()) changes.push_back({sides.was[i++], nullptr});
  while (j < sides.now.size()) changes.push_back({nullptr, sides.now[j++]});
  return changes;
}

/// Adds the pairs to `changes`, and gives back what has no partner, in order along the route.
Sides pair_up(const Sides& sides, std::vector<Change>& changes) {
  Sides left;
  for (const Change& change : paired_in_order(sides)) {
    if (change.was && change.now)
      changes.push_back(change);
    else if (change.was)
      left.was.push_back(change.was);
    else
      left.now.push_back(change.now);
  }
  return left;
}

void append(Judgements& all, const Judgements& more) {
  all.insert(all.end(), more.begin(), more.end());
}

/// Pairs figures of one measure with each other, and then what has no figure with what is left: a
/// pulley that was too small, and now has its guard too far away, has not one finding that changed.
std::vector<Change> paired_changes(const Sides& sides) {
  std::map<std::optional<Measure>, Sides> by_measure;
  for (const Judgement* each : sides.was) by_measure[measure_of(*each)].was.push_back(each);
  for (const Judgement* each : sides.now) by_measure[measure_of(*each)].now.push_back(each);
  std::vector<Change> changes;
  Sides figures;
  Sides others;
  for (const auto& [measure, alike] : by_measure) {
    const Sides left = pair_up(alike, changes);
    append(measure ? figures.was : others.was, left.was);
    append(measure ? figures.now : others.now, left.now);
  }
  sort_along_route(figures.was);
  sort_along_route(figures.now);
  const Sides gone = pair_up({figures.was, others.now}, changes);
  const Sides come = pair_up({others.was, figures.now}, changes);
  for (const Judgements& each : {gone.was, come.was})
    for (const Judgement* was : each) changes.push_back({was, nullptr});
  for (const Judgements& each : {gone.now, come.now})
    for (const Judgement* now : each) changes.push_back({nullptr, now});
  return changes;
}

bool is_shown(const Judgement* judgement, const TextStyle& style) {
  return judgement && (style.verbose || judgement->verdict != Verdict::pass);
}

/// Order of the new report, then of the old one: both keep their judgements in one piece.
void sort_by_report(std::vector<Change>& changes) {
  std::sort(changes.begin(), changes.end(), [](const Change& a, const Change& b) {
    if (!a.now != !b.now) return a.now != nullptr;
    return a.now ? std::less<>()(a.now, b.now) : std::less<>()(a.was, b.was);
  });
}

/// What is there now and matters most comes first, what is gone or passes last.
void sort_by_gravity(std::vector<Change>& changes) {
  const auto rank = [](const Change& change) {
    return gravity_rank(change.now ? change.now->verdict : Verdict::pass);
  };
  std::stable_sort(changes.begin(), changes.end(),
                   [&](const Change& a, const Change& b) { return rank(a) < rank(b); });
}

std::string kind_words(const Change& change) {
  switch (kind_of(change)) {
    case ChangeKind::appeared:
      return change.was ? "new, passed before" : "new";
    case ChangeKind::altered:
      break;
    case ChangeKind::passes_now:
      return "passes now, was " + std::string(verdict_word(change.was->verdict));
    case ChangeKind::disappeared:
      return "gone";
  }
  if (change.was->verdict == change.now->verdict) return "changed";
  return "changed, was " + std::string(verdict_word(change.was->verdict));
}

/// Lines of the finding as it is now; of one that was shown before only those that changed, with
/// the old measure beside the new one.
std::string changed_lines(const Change& change, const Report& before, const Report& now,
                          const TextStyle& style) {
  const auto lines = [&](const Judgement& judgement, const Report& report) {
    return finding_lines(judgement, report.find_route(judgement.route), style.phrasing);
  };
  const std::vector<FindingLine> new_lines = lines(*change.now, now);
  const std::vector<FindingLine> old_lines = is_shown(change.was, style)
                                                 ? lines(*change.was, before)
                                                 : std::vector<FindingLine>(new_lines.size());
  std::string text;
  for (std::size_t i = 0; i < new_lines.size(); ++i) {
    if (new_lines[i] == old_lines[i]) continue;
    text += labelled(new_lines[i]);
    if (new_lines[i].label == measure_label) text += labelled({"was", old_lines[i].text});
  }
  return text;
}

std::string change_text(const Change& change, const Report& before, const Report& now,
                        const TextStyle& style) {
  const Judgement& judgement = change.now ? *change.now : *change.was;
  std::string text =
      wrapped("", fmt::format("{}: {}",
                              judgement.route.empty() ? "the project as a whole" : judgement.route,
                              kind_words(change)));
  text += finding_head(judgement, judgement.message, style, change.now != nullptr);
  if (!change.now) return text;
  return text + changed_lines(change, before, now, style);
}

}  // namespace

ChangeKind kind_of(const Change& change) {
  if (!change.now) return ChangeKind::disappeared;
  if (!change.was) return ChangeKind::appeared;
  const bool passed = change.was->verdict == Verdict::pass;
  const bool passes = change.now->verdict == Verdict::pass;
  if (passed == passes) return ChangeKind::altered;
  return passes ? ChangeKind::passes_now : ChangeKind::appeared;
}

std::vector<Change> changes_between(const Report& before, const Report& now,
                                    const TextStyle& style) {
  std::vector<Change> changes;
  for (const auto& [subject, sides] : differing(before, now, style.phrasing))
    for (const Change& change : paired_changes(sides))
      if (is_shown(change.was, style) || is_shown(change.now, style)) changes.push_back(change);
  sort_by_report(changes);
  return changes;
}

std::string change_counts(const std::vector<Change>& changes) {
  std::string words;
  const auto add = [&](ChangeKind kind, std::string_view one, std::string_view many) {
    const auto count = std::count_if(changes.begin(), changes.end(),
                                     [&](const Change& change) { return kind_of(change) == kind; });
    if (count > 0)
      words += (words.empty() ? "" : ", ") + counted(static_cast<int>(count), one, many);
  };
  add(ChangeKind::appeared, "new", "new");
  add(ChangeKind::altered, "changed", "changed");
  add(ChangeKind::passes_now, "passes now", "pass now");
  add(ChangeKind::disappeared, "gone", "gone");
  return words.empty() ? "nothing changed" : words;
}

std::string change_list(std::vector<Change> changes, const Report& before, const Report& now,
                        const TextStyle& style) {
  if (!style.by_route) sort_by_gravity(changes);
  std::string text;
  for (const Change& change : changes) text += "\n" + change_text(change, before, now, style);
  return text;
}

std::string changes_text(const Report& before, const Report& now, std::string_view time_of_day,
                         const TextStyle& style) {
  const std::vector<Change> changes = changes_between(before, now, style);
  std::string text = fmt::format("\n{}: {}\n", time_of_day, change_counts(changes));
  text += change_list(changes, before, now, style);
  if (!changes.empty()) text += "\n";
  text += summary_lines(now);
  if (before.assumptions != now.assumptions)
    text += now.assumptions.empty() ? "Nothing is assumed any more.\n" : assumption_lines(now);
  return text;
}

}  // namespace linewright
