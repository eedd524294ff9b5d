#include "rules/judge_again.hpp"

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

#include "lines/joined_routes.hpp"
#include "lines/own_arm.hpp"
#include "lines/route_change.hpp"
#include "rules/judge.hpp"
#include "rules/registry.hpp"
#include "rules/sort_by_key.hpp"
#include "rules/waivers.hpp"

namespace linewright {

namespace {

/// Of each route 1 where something is true of it.
using Marks = std::vector<char>;

/// Routes by what judgements call them.
class RouteNames {
 public:
  explicit RouteNames(const PreparedProject& prepared) {
    for (std::size_t i = 0; i < prepared.routes.size(); ++i)
      index_.emplace(prepared.routes[i].route->name, i);
  }

  /// The route that it is on; nothing for what is on none.
  std::optional<std::size_t> of(const Judgement& judgement) const { return found(judgement.route); }
  /// The other route that it speaks of, where it does.
  std::optional<std::size_t> with(const Judgement& judgement) const {
    return judgement.with_is_route && judgement.with ? found(*judgement.with) : std::nullopt;
  }

 private:
  std::optional<std::size_t> found(const std::string& name) const {
    const auto known = index_.find(name);
    return known == index_.end() ? std::nullopt : std::optional(known->second);
  }

  std::map<std::string_view, std::size_t> index_;
};

bool is_marked(const std::optional<std::size_t>& route, const Marks& marks) {
  return route && marks[*route] != 0;
}

/// Marks the routes of which something is said together with one of `joined`; true where there was
/// one to mark.
bool mark_those_spoken_of(const std::vector<Judgement>& judgements, const RouteNames& names,
                          const Marks& joined, Marks& marks) {
  const auto before = std::count(marks.begin(), marks.end(), 1);
  for (const Judgement& each : judgements) {
    const auto route = names.of(each);
    const auto with = names.with(each);
    if (is_marked(route, joined) && with) marks[*with] = 1;
    if (is_marked(with, joined) && route) marks[*route] = 1;
  }
  return std::count(marks.begin(), marks.end(), 1) > before;
}

/// Cables of which any line that comes near an end has something said.
void mark_unknown_swings(const PreparedProject& prepared, Marks& marks) {
  for (std::size_t i = 0; i < prepared.routes.size(); ++i) {
    const PreparedRoute& route = prepared.routes[i];
    if (swing_is_unknown(route, *route.from) || swing_is_unknown(route, *route.to)) marks[i] = 1;
  }
}

/// Where each rule stands among all, and whether it leaves out what is not asked for.
using PlaceOfRule = std::map<std::string_view, std::pair<std::size_t, bool>>;

PlaceOfRule places_of_rules() {
  PlaceOfRule places;
  for (const Rule* rule : all_rules())
    places.emplace(rule->name, std::pair(places.size(), rule->leaves_out_unasked));
  return places;
}

}  // namespace

std::optional<std::vector<Judgement>> judge_again(const PreparedProject& prepared,
                                                  const Phrasing& phrasing, const Project& before,
                                                  const std::vector<Judgement>& said) {
  const auto change = change_of_routes(before, *prepared.project);
  if (!change) return std::nullopt;
  const Marks joined = joined_routes(before, *prepared.project, change->routes);
  if (!changes_own_gaps_alone(before, *prepared.project, change->routes, joined))
    return std::nullopt;

  const RouteNames names(prepared);
  Marks asked = joined;
  mark_unknown_swings(prepared, asked);
  mark_those_spoken_of(said, names, joined, asked);
  std::vector<Judgement> fresh = judge_asked(prepared, phrasing, asked);
  if (mark_those_spoken_of(fresh, names, joined, asked))
    fresh = judge_asked(prepared, phrasing, asked);

  // What a rule says of one route is wholly fresh, or wholly kept, so that it stays in order.
  const PlaceOfRule rules = places_of_rules();
  const auto is_kept = [&](const Judgement& each) {
    const auto route = names.of(each);
    return rules.at(each.rule).second && route && asked[*route] == 0;
  };
  std::vector<Judgement> judgements;
  for (Judgement& each : fresh)
    if (!is_kept(each)) judgements.push_back(std::move(each));
  for (const Judgement& each : said) {
    if (each.rule == waivers_name || !is_kept(each)) continue;
    const auto where = change->now_at(each.location);
    if (!where) return std::nullopt;
    judgements.push_back(without_waiver(each));
    judgements.back().location = *where;
  }
  sort_by_key(judgements, [&](const Judgement& each) { return rules.at(each.rule).first; });
  return waived_in_order(prepared, std::move(judgements));
}

}  // namespace linewright
