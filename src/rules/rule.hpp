#pragma once
// A rule is one value: its name, its manual, its limits with sources, and a function from the
// prepared project to judgements. Every listing of rules is a rendering of these values.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "lines/motion/line_motion.hpp"
#include "lines/prepared.hpp"
#include "model/judgement.hpp"
#include "rules/limit.hpp"
#include "words/phrasing.hpp"

namespace linewright {

struct RuleContext;

struct Rule {
  std::string_view name;
  std::string_view purpose;      ///< one line
  std::string_view explanation;  ///< what is judged, how, and what is not
  std::string_view mend;         ///< how it is usually mended
  std::span<const LimitRow> limits;
  std::string_view catalogue_limits;  ///< says which limits come from the catalogue; empty for none
  std::vector<Judgement> (*judge)(const RuleContext&);
  /// Unknowns for what a project leaves out without which the rule says nothing: asked for where
  /// the rule is judged alone. Absent where the rule asks for all that it needs.
  std::vector<Judgement> (*lacking)(const RuleContext&) = nullptr;
  /// True where it may leave out what concerns no route that is asked about, and what it says of a
  /// route rests on that, on what is joined to it and on gaps between two: see `judge_again`.
  bool leaves_out_unasked = false;
};

/// What a rule is given. `passed_over` are waivers for one place, in order of their routes' names:
/// rules that keep only the worst of two things leave it out, so that none is hidden behind it.
struct RuleContext {
  const Rule& rule;
  const PreparedProject& prepared;
  const LineMotion& motion;  ///< of `prepared`
  Phrasing phrasing;
  std::vector<const Waiver*> passed_over = {};
  /// Of each route of `prepared` whether it is asked about, 1 or 0; empty for all.
  std::vector<char> asked_routes = {};
  /// True where all that is wanted is what concerns the one route that is asked about: any rule may
  /// leave out the rest, and of two things that one says what the other would.
  bool alone = false;

  bool asks_for(const PreparedRoute& route) const {
    return asked_routes.empty() || asked_routes[index_of(route)] != 0;
  }
  /// False for what every rule may leave out.
  bool wants(const PreparedRoute& route) const { return !alone || asks_for(route); }
  std::size_t index_of(const PreparedRoute& route) const {
    return static_cast<std::size_t>(&route - prepared.routes.data());
  }
  /// How far the fitting swings, likely, with the lines that it hangs on; 0 where structure holds
  /// it.
  double swing_in(const NodeFitting& fitting) const {
    return motion.fitting_swings_in[static_cast<std::size_t>(&fitting - prepared.fittings.data())];
  }

  /// A judgement of the rule on `route` at a distance along it, verdict still unknown.
  Judgement at(const PreparedRoute& route, double distance_in) const;
  /// The same of what is on no route: a thing by its name, at its place in the file.
  Judgement about(const std::string& thing, const SourceLocation& where) const;
  bool is_passed_over(const PreparedRoute& route, double distance_in) const;
};

}  // namespace linewright
