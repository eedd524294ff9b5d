#pragma once
// A rule is one value: its name, its manual, its limits with sources, and a function from the
// prepared project to judgements. Every listing of rules is a rendering of these values.

#include <span>
#include <string_view>
#include <vector>

#include "geometry/prepared.hpp"
#include "rules/judgement.hpp"
#include "rules/phrasing.hpp"

namespace linewright {

/// A row of a rule's limit table. Rules read their numbers from here, so that the table shown is
/// the table used.
struct LimitRow {
  std::string_view subject;  ///< "rigid tube to structure, between supports"
  double value = 0;
  std::string_view unit;  ///< "in", "deg", "% of length", "" for a plain fact
  std::string_view source;
  Mark mark = Mark::from_memory;
  Verdict broken = Verdict::fail;  ///< what breaking it gives
};

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

/// "at limits" slack for comparing measured lengths: exactly at a limit passes in spite of
/// rounding.
inline constexpr double limit_rounding_in = 1e-6;

/// What breaking a limit with this mark gives: warn where only practice stands behind it.
constexpr Verdict broken_limit(Mark mark) {
  return mark == Mark::common_practice ? Verdict::warn : Verdict::fail;
}

/// Source text of a limit row with its mark.
std::string cite(const LimitRow& row);

/// A judgement of `rule` on `route` at a distance along it, verdict still unknown.
Judgement judgement_at(const Rule& rule, const PreparedRoute& route, double distance_in);

}  // namespace linewright
