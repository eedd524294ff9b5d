#include "render/check_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <unordered_map>
#include <vector>

#include "render/finding_folds.hpp"
#include "render/finding_text.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

std::string finding(const Judgement& judgement, const RouteReport* route, const TextStyle& style) {
  std::string text = finding_head(judgement, judgement.message, style);
  for (const FindingLine& line : finding_lines(judgement, route, style.phrasing))
    text += labelled(line);
  return text;
}

std::string short_tally(const Tally& tally) {
  if (tally.total() == 0) return "nothing judged";
  std::string words;
  const auto add = [&words](int count, std::string_view one, std::string_view many) {
    if (count == 0) return;
    if (!words.empty()) words += ", ";
    words += counted(count, one, many);
  };
  add(tally.fail, "failed", "failed");
  add(tally.unknown, "unknown", "unknown");
  add(tally.warn, "warning", "warnings");
  add(tally.waived, "waived", "waived");
  add(tally.pass, "passed", "passed");
  return words;
}

/// Judgements by the route that they are about; those about no route listed under nullptr. Each
/// worst first.
using JudgementsByRoute = std::unordered_map<const RouteReport*, std::vector<const Judgement*>>;

JudgementsByRoute judgements_by_route(const Report& report) {
  const RoutesByName routes(report);
  JudgementsByRoute by_route;
  for (const Judgement& judgement : report.judgements)
    by_route[routes.find(judgement.route)].push_back(&judgement);
  for (auto& [route, judgements] : by_route)
    std::stable_sort(judgements.begin(), judgements.end(),
                     [](const Judgement* a, const Judgement* b) {
                       return gravity_rank(a->verdict) < gravity_rank(b->verdict);
                     });
  return by_route;
}

/// One route's findings under its header; nothing where there is nothing to show.
std::string section(JudgementsByRoute& judgements, const RouteReport* route,
                    const TextStyle& style) {
  std::string findings;
  for (const Judgement* judgement : judgements[route])
    if (style.verbose || judgement->verdict != Verdict::pass)
      findings += finding(*judgement, route, style) + "\n";
  if (findings.empty()) return {};
  const std::string header =
      route ? fmt::format("{}: {}, {}, {} from {} to {}", route->cut.name, route->cut.system,
                          route->cut.line, style.phrasing.tape(route->cut.length_in), route->from,
                          route->to)
            : "the project as a whole";
  return wrapped("", header) + "\n" + findings;
}

std::string tally_lines(const Report& report) {
  std::size_t widest = 0;
  for (const RouteReport& route : report.routes)
    widest = std::max(widest, columns_of(one_line(route.cut.name)));
  constexpr std::size_t widest_column = 36;
  JudgementsByRoute judgements = judgements_by_route(report);
  std::string text;
  for (const RouteReport& route : report.routes) {
    Tally tally;
    for (const Judgement* judgement : judgements[&route]) tally.add(judgement->verdict);
    const std::string name = left(one_line(route.cut.name), std::min(widest, widest_column));
    text += fmt::format("{}  {}\n", name, short_tally(tally));
  }
  return text;
}

/// What the project does not say, and what was found and passed over on the way.
std::string surroundings(const Report& report, const TextStyle& style) {
  return assumption_lines(report) + note_lines(report) + built_lines(report, style.phrasing) +
         (style.verbose ? passed_over_lines(report, style.phrasing) : std::string());
}

std::string closing_words(const Report& report, const TextStyle& style) {
  std::string text;
  const Tally tally = tally_of(report.judgements);
  if (!style.quiet && tally.total() > tally.pass)
    text += wrapped("", "For a rule's limits, sources and mends: linewright explain RULE");
  return text + wrapped("",
                        "This compares a drawing with stated limits. It does not make an aeroplane "
                        "airworthy: inspect the lines as built, and follow your local authority.");
}

std::string text_by_route(const Report& report, const TextStyle& style) {
  JudgementsByRoute judgements = judgements_by_route(report);
  std::string text;
  for (const RouteReport& route : report.routes) text += section(judgements, &route, style);
  text += section(judgements, nullptr, style);
  return text + tally_lines(report) + summary_lines(report) + surroundings(report, style) + "\n" +
         closing_words(report, style);
}

/// The tally comes last: it is what a terminal still shows when all has scrolled by.
std::string text_by_gravity(const Report& report, const TextStyle& style) {
  const RoutesByName routes(report);
  const std::vector<FindingFold> folds = folded_findings(report, style.verbose);
  std::map<FoldKind, std::size_t> alike;
  for (const FindingFold& fold : folds) ++alike[kind_of(fold)];
  std::map<FoldKind, std::size_t> shown;
  std::string text;
  for (const FindingFold& fold : folds) {
    const FoldKind kind = kind_of(fold);
    const bool all = style.verbose || alike[kind] <= places_listed + 1;
    const std::size_t number = ++shown[kind];
    if (all || number <= places_listed) text += fold_text(fold, routes, style) + "\n";
    if (!all && number == places_listed)
      text += more_text(fold, alike[kind] - places_listed, style) + "\n";
  }
  std::string around = surroundings(report, style);
  if (!around.empty()) text += around.substr(text.empty() ? 0 : 1) + "\n";
  if (text.starts_with('\n')) text.erase(0, 1);
  return text + closing_words(report, style) + "\n" + tally_lines(report) + summary_lines(report);
}

}  // namespace

std::string check_text(const Report& report, const TextStyle& style) {
  return set_lines(report) +
         (style.by_route ? text_by_route(report, style) : text_by_gravity(report, style));
}

}  // namespace linewright
