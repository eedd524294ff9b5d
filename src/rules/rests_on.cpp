#include "rules/rests_on.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "rules/judge.hpp"
#include "rules/registry.hpp"

namespace linewright {

namespace {

enum class Lines { all, cables, air };

/// One rule whose answer another one takes for granted.
struct RestsOn {
  std::string_view rule;
  std::string_view on;
  Lines lines = Lines::all;
  bool faults = false;  ///< its faults shake the answer, too, not its unknowns alone
};

/// Without a bend's radius the place of the line is not known, without a cable's tension neither
/// its sag nor its pull, and without sound joints not what a port feeds or drains.
constexpr std::array table{
    RestsOn{"bend-fit", "bend-radius"},
    RestsOn{"support-spacing", "bend-radius"},
    RestsOn{"straight-run", "bend-radius"},
    RestsOn{"slack", "bend-radius"},
    RestsOn{"frame-crossing", "bend-radius"},
    RestsOn{"clearance", "bend-radius"},
    RestsOn{"chafe", "bend-radius"},
    RestsOn{"separation", "bend-radius"},
    RestsOn{"as-built", "bend-radius"},
    RestsOn{"separation", "chafe", Lines::cables},
    RestsOn{"drainage", "bend-radius", Lines::air},
    RestsOn{"drainage", "network", Lines::air, true},
    RestsOn{"lag", "network", Lines::air, true},
    RestsOn{"fairlead-angle", "bend-radius", Lines::cables},
    RestsOn{"sleeve-cover", "bend-radius", Lines::cables},
};

constexpr bool names_rules_once() {
  for (std::size_t i = 0; i < table.size(); ++i)
    for (std::size_t j = 0; j < table.size(); ++j)
      if (i != j && table[i].rule == table[j].rule && table[i].on == table[j].on) return false;
  return true;
}
static_assert(names_rules_once());

bool is_among(const Judgement& judgement, Lines lines, const PreparedProject& prepared) {
  const PreparedRoute* route = prepared.find_route(judgement.route);
  if (!route || lines == Lines::all) return true;
  return lines == Lines::air ? is_air(route->route->system) : route->line->kind == LineKind::cable;
}

bool shakes(const Judgement& judgement, const RestsOn& each) {
  return judgement.rule == each.on && (judgement.verdict == Verdict::unknown ||
                                       (each.faults && judgement.verdict == Verdict::fail));
}

std::vector<Judgement> lacking(const std::string& name, const PreparedProject& prepared,
                               const Phrasing& phrasing,
                               const std::optional<std::string>& only_route) {
  const Rule* rule = find_rule(name);
  if (!rule || !rule->lacking) return {};
  const LineMotion motion = motion_of(prepared);
  std::vector<Judgement> found = rule->lacking({*rule, prepared, motion, phrasing});
  if (only_route)
    std::erase_if(found, [&](const Judgement& each) { return each.route != *only_route; });
  return found;
}

}  // namespace

std::vector<Judgement> not_known_to(const std::string& rule, const PreparedProject& prepared,
                                    Phrasing phrasing,
                                    const std::optional<std::string>& only_route) {
  std::vector<Judgement> found;
  for (const RestsOn& each : table) {
    if (each.rule != rule) continue;
    for (Judgement& judgement : judge(prepared, phrasing, std::string(each.on), only_route))
      if (shakes(judgement, each) && is_among(judgement, each.lines, prepared))
        found.push_back(std::move(judgement));
  }
  for (Judgement& judgement : lacking(rule, prepared, phrasing, only_route))
    found.push_back(std::move(judgement));
  return found;
}

}  // namespace linewright
