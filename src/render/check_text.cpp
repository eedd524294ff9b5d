#include "render/check_text.hpp"

#include <fmt/format.h>

#include <algorithm>

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

/// The judgements about one route, or with nullptr those about no route listed, worst first.
std::vector<const Judgement*> judgements_of(const Report& report, const RouteReport* route) {
  std::vector<const Judgement*> chosen;
  for (const Judgement& judgement : report.judgements)
    if (route ? judgement.route == route->cut.name : !report.find_route(judgement.route))
      chosen.push_back(&judgement);
  std::stable_sort(chosen.begin(), chosen.end(), [](const Judgement* a, const Judgement* b) {
    return gravity_rank(a->verdict) < gravity_rank(b->verdict);
  });
  return chosen;
}

/// One route's findings under its header; nothing where there is nothing to show.
std::string section(const Report& report, const RouteReport* route, const TextStyle& style) {
  std::string findings;
  for (const Judgement* judgement : judgements_of(report, route))
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
  std::string text;
  for (const RouteReport& route : report.routes) {
    Tally tally;
    for (const Judgement* judgement : judgements_of(report, &route)) tally.add(judgement->verdict);
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
  std::string text;
  for (const RouteReport& route : report.routes) text += section(report, &route, style);
  text += section(report, nullptr, style);
  return text + tally_lines(report) + summary_lines(report) + surroundings(report, style) + "\n" +
         closing_words(report, style);
}

/// The tally comes last: it is what a terminal still shows when all has scrolled by.
std::string text_by_gravity(const Report& report, const TextStyle& style) {
  std::string text;
  for (const FindingFold& fold : folded_findings(report, style.verbose))
    text += fold_text(fold, report, style) + "\n";
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
