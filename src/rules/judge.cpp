#include "rules/judge.hpp"

#include <algorithm>
#include <map>

#include "rules/registry.hpp"
#include "rules/side_by_side.hpp"
#include "rules/sort_by_key.hpp"
#include "rules/waivers.hpp"
#include "system/freed_memory.hpp"

namespace linewright {

namespace {

/// What concerns no single route concerns all of them.
bool concerns(const Judgement& judgement, const std::string& route) {
  return judgement.route.empty() || judgement.route == route ||
         (judgement.with_is_route && judgement.with == route);
}

/// Two spans that meet at a place both speak of it; once is enough.
bool same_finding(const Judgement& a, const Judgement& b) {
  return a.rule == b.rule && a.route == b.route && a.with == b.with && a.verdict == b.verdict &&
         a.message == b.message && a.distance_in == b.distance_in && a.location == b.location;
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
  sort_by_key(judgements, place);
}

/// Waivers of this rule that are for one place, by route.
std::vector<const Waiver*> local_waivers(const PreparedProject& prepared, const Rule& rule) {
  std::vector<const Waiver*> local;
  for (const Waiver& waiver : prepared.project->waivers)
    if (waiver.near && waiver.rule == rule.name) local.push_back(&waiver);
  std::stable_sort(local.begin(), local.end(),
                   [](const Waiver* a, const Waiver* b) { return a->route < b->route; });
  return local;
}

/// As a rule's context has it.
struct Asked {
  std::vector<char> routes;
  bool alone = false;
};

/// What one rule says, along the route. Where places are waived, the rule looks again with those
/// left out, and what it then finds is added.
std::vector<Judgement> judge_rule(const Rule& rule, const PreparedProject& prepared,
                                  const LineMotion& motion, const Phrasing& phrasing,
                                  const Asked& asked) {
  std::vector<Judgement> found =
      rule.judge({rule, prepared, motion, phrasing, {}, asked.routes, asked.alone});
  const std::vector<const Waiver*> local = local_waivers(prepared, rule);
  if (!local.empty()) {
    std::map<std::string, std::vector<std::size_t>> by_words;
    for (std::size_t i = 0; i < found.size(); ++i) by_words[found[i].message].push_back(i);
    for (Judgement& judgement :
         rule.judge({rule, prepared, motion, phrasing, local, asked.routes, asked.alone})) {
      if (judgement.verdict == Verdict::pass) continue;
      std::vector<std::size_t>& alike = by_words[judgement.message];
      const bool known = std::any_of(alike.begin(), alike.end(), [&](std::size_t i) {
        return same_finding(found[i], judgement);
      });
      if (known) continue;
      alike.push_back(found.size());
      found.push_back(std::move(judgement));
    }
  }
  sort_by_key(found, [](const Judgement& each) { return each.distance_in.value_or(0); });
  found.erase(std::unique(found.begin(), found.end(), same_finding), found.end());
  found.shrink_to_fit();
  return found;
}

/// What each of some rules says. Rules know nothing of each other; what they judge the lines'
/// motion by is let go before what they say is put together.
std::vector<std::vector<Judgement>> judge_rules(const std::vector<const Rule*>& rules,
                                                const PreparedProject& prepared,
                                                const Phrasing& phrasing, const Asked& asked = {}) {
  const LineMotion motion = motion_of(prepared);
  return each_side_by_side(rules.size(), [&](std::size_t i) {
    return judge_rule(*rules[i], prepared, motion, phrasing, asked);
  });
}

std::vector<const Rule*> rules_asked(const std::optional<std::string>& only_rule) {
  std::vector<const Rule*> asked;
  for (const Rule* rule : all_rules())
    if (!only_rule || rule->name == *only_rule) asked.push_back(rule);
  return asked;
}

}  // namespace

std::vector<Judgement> judge(const PreparedProject& prepared, Phrasing phrasing,
                             const std::optional<std::string>& only_rule,
                             const std::optional<std::string>& only_route) {
  std::vector<std::vector<Judgement>> of_rules =
      judge_rules(rules_asked(only_rule), prepared, phrasing);
  // Of thousands of lines their motion, which is let go now, and the one list are 50 MB each.
  give_back_freed_memory();
  std::vector<Judgement> judgements = in_one_list(std::move(of_rules));
  apply_waivers(prepared, only_rule, judgements);
  if (only_route)
    std::erase_if(judgements,
                  [&](const Judgement& judgement) { return !concerns(judgement, *only_route); });
  sort_by_route(judgements, prepared);
  return judgements;
}

std::vector<Judgement> judge_asked(const PreparedProject& prepared, const Phrasing& phrasing,
                                   const std::vector<char>& asked_routes) {
  return in_one_list(
      judge_rules(rules_asked(std::nullopt), prepared, phrasing, {asked_routes, false}));
}

std::vector<Judgement> waived_in_order(const PreparedProject& prepared,
                                       std::vector<Judgement> judgements) {
  apply_waivers(prepared, std::nullopt, judgements);
  sort_by_route(judgements, prepared);
  return judgements;
}

std::vector<Judgement> judge_on_route(const PreparedProject& prepared, const Phrasing& phrasing,
                                      std::span<const std::string_view> rules,
                                      const std::string& route) {
  std::vector<const Rule*> asked;
  for (const std::string_view name : rules) asked.push_back(find_rule(name));
  Asked alone{{}, true};
  for (const PreparedRoute& each : prepared.routes)
    alone.routes.push_back(each.route->name == route ? 1 : 0);
  std::vector<Judgement> judgements = in_one_list(judge_rules(asked, prepared, phrasing, alone));
  apply_waivers(prepared, std::nullopt, judgements);
  std::erase_if(judgements, [&](const Judgement& judgement) {
    return judgement.rule == waivers_name || !concerns(judgement, route);
  });
  return judgements;
}

}  // namespace linewright
