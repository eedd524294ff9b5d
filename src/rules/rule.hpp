#pragma once
// A rule is one value: its name, its manual, its limits with sources, and a function from the
// prepared project to judgements. Every listing of rules is a rendering of these values.

#include <span>
#include <string_view>
#include <vector>

#include "geometry/prepared.hpp"
#include "rules/judgement.hpp"
#include "rules/limit.hpp"
#include "rules/phrasing.hpp"

namespace linewright {

/// What a rule is given. `passed_over` are waivers for one place: rules that keep only the worst
/// place between two things leave that place out, so that a second one is not hidden behind it.
struct RuleContext {
  const PreparedProject& prepared;
  Phrasing phrasing;
  std::vector<const Waiver*> passed_over = {};

  bool is_passed_over(std::string_view rule, const PreparedRoute& route, double distance_in) const {
    for (const Waiver* waiver : passed_over)
      if (waiver->rule == rule && waiver->route == route.route->name &&
          distance(route.centreline.at(distance_in), *waiver->near) <= waiver->within_in)
        return true;
    return false;
  }
};

struct Rule {
  std::string_view name;
  std::string_view purpose;      ///< one line
  std::string_view explanation;  ///< what is judged, how, and what is not
  std::string_view mend;         ///< how it is usually mended
  std::span<const LimitRow> limits;
  std::string_view catalogue_limits;  ///< says which limits come from the catalogue; empty for none
  std::vector<Judgement> (*judge)(const RuleContext&);
};

/// A judgement of `rule` on `route` at a distance along it, verdict still unknown.
Judgement judgement_at(const Rule& rule, const PreparedRoute& route, double distance_in);

}  // namespace linewright
