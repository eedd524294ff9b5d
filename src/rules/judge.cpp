#include "rules/judge.hpp"

#include <algorithm>
#include <map>

#include "rules/registry.hpp"
#include "rules/waivers.hpp"

namespace linewright {

namespace {

bool concerns(const Judgement& judgement, const std::string& route) {
  return judgement.route == route || judgement.with == route;
}

/// Routes in file order; what concerns no route comes first.
void sort_by_route(std::vector<Judgement>& judgements, const PreparedProject& prepared) {
  std::map<std::string, std::size_t> order;
  for (const PreparedRoute& route : prepared.routes)
    order.emplace(route.route->name, order.size() + 1);
  const auto place = [&order](const Judgement& judgement) {
    const auto found = order.find(judgement.route);
    return found == order.end() ? std::size_t{0} : found->second;
  };
  std::stable_sort(judgements.begin(), judgements.end(),
                   [&](const Judgement& a, const Judgement& b) { return place(a) < place(b); });
}

}  // namespace

std::vector<Judgement> judge(const PreparedProject& prepared, Phrasing phrasing,
                             const std::optional<std::string>& only_rule,
                             const std::optional<std::string>& only_route) {
  const RuleContext context{prepared, phrasing};
  std::vector<Judgement> judgements;
  for (const Rule* rule : all_rules()) {
    if (only_rule && rule->name != *only_rule) continue;
    std::vector<Judgement> found = rule->judge(context);
    std::stable_sort(found.begin(), found.end(), [](const Judgement& a, const Judgement& b) {
      return a.distance_in.value_or(0) < b.distance_in.value_or(0);
    });
    judgements.insert(judgements.end(), found.begin(), found.end());
  }
  apply_waivers(prepared, only_rule, judgements);
  if (only_route)
    std::erase_if(judgements,
                  [&](const Judgement& judgement) { return !concerns(judgement, *only_route); });
  sort_by_route(judgements, prepared);
  return judgements;
}

}  // namespace linewright
