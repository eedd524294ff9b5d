#include "rules/judge_again.hpp"

#include <algorithm>
#include <map>
#include <string_view>
#include <utility>

#include "lines/concerned_routes.hpp"
#include "lines/route_change.hpp"
#include "rules/judge.hpp"
#include "rules/registry.hpp"
#include "rules/sort_by_key.hpp"
#include "rules/waivers.hpp"

namespace linewright {

namespace {

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

bool is_one_of(const std::optional<std::size_t>& route, const std::vector<char>& routes) {
  return route && routes[*route] != 0;
}

/// Adds lines that something is said of together with one that is joined to the change; true where
/// there was one to add.
bool add_those_spoken_of(const std::vector<Judgement>& judgements, const RouteNames& names,
                         ConcernedRoutes& concerned) {
  std::vector<char>& all = concerned.with_neighbours;
  const auto before = std::count(all.begin(), all.end(), 1);
  for (const Judgement& each : judgements) {
    const auto route = names.of(each);
    const auto with = names.with(each);
    if (is_one_of(route, concerned.joined) && with) all[*with] = 1;
    if (is_one_of(with, concerned.joined) && route) all[*route] = 1;
  }
  return std::count(all.begin(), all.end(), 1) > before;
}

/// By name, and where each stands among all.
std::map<std::string_view, std::size_t> order_of_rules() {
  std::map<std::string_view, std::size_t> order;
  for (const Rule* rule : all_rules()) order.emplace(rule->name, order.size());
  return order;
}

}  // namespace

std::optional<std::vector<Judgement>> judge_again(const PreparedProject& prepared,
                                                  const Phrasing& phrasing, const Project& before,
                                                  const std::vector<Judgement>& said) {
  const auto change = change_of_routes(before, *prepared.project);
  if (!change) return std::nullopt;
  const RouteNames names(prepared);
  ConcernedRoutes concerned = concerned_routes(before, prepared, change->routes);
  add_those_spoken_of(said, names, concerned);
  std::vector<Judgement> fresh = judge_asked(prepared, phrasing, concerned.with_neighbours);
  if (add_those_spoken_of(fresh, names, concerned))
    fresh = judge_asked(prepared, phrasing, concerned.with_neighbours);

  const auto order = order_of_rules();
  const auto rests_on_all_routes = [&order](const Judgement& each) {
    return all_rules()[order.at(each.rule)]->rests_on_all_routes;
  };
  std::vector<Judgement> judgements;
  for (Judgement& each : fresh) {
    const auto route = names.of(each);
    if (!route || is_one_of(route, concerned.with_neighbours) || rests_on_all_routes(each))
      judgements.push_back(std::move(each));
    else if (is_one_of(names.with(each), concerned.joined))
      return std::nullopt;
  }
  for (const Judgement& each : said) {
    const auto route = names.of(each);
    if (!route || is_one_of(route, concerned.with_neighbours) || each.rule == "waivers" ||
        rests_on_all_routes(each))
      continue;
    const auto where = change->now_at(each.location);
    if (!where) return std::nullopt;
    judgements.push_back(without_waiver(each));
    judgements.back().location = *where;
  }
  sort_by_key(judgements, [&](const Judgement& each) { return order.at(each.rule); });
  return waived_in_order(prepared, std::move(judgements));
}

}  // namespace linewright
