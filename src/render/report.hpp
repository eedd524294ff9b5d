#pragma once
// What is told about a project, whatever the format. Every renderer of checks and cut lists takes
// this one value, so that no format knows more than another.

#include <string>
#include <string_view>
#include <vector>

#include "model/judgement.hpp"
#include "model/passed_over.hpp"
#include "model/set_value.hpp"
#include "planning/cutlist.hpp"
#include "words/phrasing.hpp"

namespace linewright {

struct RouteReport {
  RouteCut cut;
  std::string from;  ///< node that distances along the route count from
  std::string to;
};

/// How much of a route is as it was measured on the aeroplane, and how much as drawn.
struct BuiltRoute {
  std::string name;
  double as_built_in = 0;
  double as_drawn_in = 0;
  int measured = 0;  ///< places and gaps
};

struct Report {
  std::string project_name;
  std::vector<RouteReport> routes;  ///< in file order
  std::vector<SystemCut> systems;
  std::vector<Judgement> judgements;
  std::vector<std::string> assumptions;
  std::vector<SetValue> set_values;  ///< for this run, in place of what the files say
  std::vector<std::string> notes;    ///< what was found in the files and changes no verdict
  bool nothing_judged = false;       ///< of the whole project: its silence is no pass
  std::vector<BuiltRoute> built;     ///< routes of which anything was measured, in file order
  /// Near fittings, in route order; only where it is to be shown.
  std::vector<PassedOver> passed_over;

  const RouteReport* find_route(std::string_view name) const {
    for (const RouteReport& route : routes)
      if (route.cut.name == name) return &route;
    return nullptr;
  }
};

/// How many judgements came out which way.
struct Tally {
  int pass = 0;
  int warn = 0;
  int fail = 0;
  int unknown = 0;
  int waived = 0;

  void add(Verdict verdict);
  int total() const { return pass + warn + fail + unknown + waived; }
};

Tally tally_of(const std::vector<Judgement>& judgements);

/// "pass", "warn", "fail", "unknown", "waived".
std::string_view verdict_word(Verdict verdict);

/// How text for people is laid out.
struct TextStyle {
  Phrasing phrasing;
  bool colour = false;    ///< colour verdict words
  bool verbose = false;   ///< show passes one by one
  bool quiet = false;     ///< leave out pointers to other commands
  bool by_route = false;  ///< findings route by route instead of gravest first
};

/// The verdict's word, coloured where the style asks for it.
std::string verdict_text(Verdict verdict, const TextStyle& style);

}  // namespace linewright
