#include "render/finding_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "render/amount.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

std::string where(const Judgement& judgement, const RouteReport* route, const Phrasing& phrasing) {
  std::string words = judgement.at ? phrasing.place(*judgement.at) : std::string();
  if (judgement.distance_in && route) {
    if (!words.empty()) words += ", ";
    words += fmt::format("{} from {}", phrasing.tape(*judgement.distance_in), route->from);
  }
  return words;
}

std::string full_tally(const Tally& tally) {
  return fmt::format("{} passed, {}, {} failed, {} unknown, {} waived", tally.pass,
                     counted(tally.warn, "warning", "warnings"), tally.fail, tally.unknown,
                     tally.waived);
}

std::string waived(const Judgement& judgement) {
  if (!judgement.waived) return {};
  return fmt::format("{} (was {})", judgement.waived->reason, verdict_word(judgement.waived->was));
}

}  // namespace

std::string location_prefix(const SourceLocation& location) {
  if (location.file.empty()) return {};
  if (location.line == 0) return one_line(location.file) + ": ";
  return fmt::format("{}:{}:{}: ", one_line(location.file), location.line, location.column);
}

std::string finding_head(const Judgement& judgement, std::string_view words, const TextStyle& style,
                         bool with_location) {
  const std::string place = with_location ? location_prefix(judgement.location) : std::string();
  const std::string_view verdict = verdict_word(judgement.verdict);
  std::string head = hanging(4, fmt::format("{}{}: {}: {}", place, verdict, judgement.rule, words));
  // Wrapping makes control characters plain: the colour's own come after it.
  const std::size_t at = head.find(verdict, std::min(place.size(), head.size()));
  if (at != std::string::npos)
    head.replace(at, verdict.size(), verdict_text(judgement.verdict, style));
  return head;
}

std::vector<FindingLine> finding_lines(const Judgement& judgement, const RouteReport* route,
                                       const Phrasing& phrasing) {
  return {{"where", where(judgement, route, phrasing)},
          {measure_label, by_how_much(judgement, phrasing)},
          {"why", judgement.source},
          {"mend", judgement.mend},
          {"waived", waived(judgement)}};
}

std::string labelled(const FindingLine& line, std::size_t indent) {
  if (line.text.empty()) return {};
  constexpr std::size_t label_columns = 13;
  const std::string label = std::string(indent, ' ') + fmt::format("{}:", line.label);
  return wrapped(left(label, indent + label_columns), line.text);
}

std::string counted(int count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string summary_lines(const Report& report) {
  const Tally tally = tally_of(report.judgements);
  std::string text =
      fmt::format("{}: {}\n", counted(static_cast<int>(report.routes.size()), "route", "routes"),
                  full_tally(tally));
  if (tally.total() == 0) text += "There was nothing to judge: that is not a pass.\n";
  return text;
}

std::string set_lines(const Report& report, std::string_view heading) {
  if (report.set_values.empty()) return {};
  std::string text = std::string(heading) + "\n";
  for (const SetValue& each : report.set_values) {
    const std::string was = each.was.empty() ? "the files do not state it" : "it is " + each.was;
    const std::string place = each.where.line > 0 ? fmt::format(" at {}:{}:{}", each.where.file,
                                                                each.where.line, each.where.column)
                                                  : "";
    text += wrapped("  - ", fmt::format("{}: {} ({}{})", each.path, each.value, was, place));
  }
  return text + "\n";
}

std::string assumption_lines(const Report& report) {
  if (report.assumptions.empty()) return {};
  std::string text = "\nTaken, because the project does not say:\n";
  for (const std::string& assumption : report.assumptions) text += wrapped("  - ", assumption);
  return text;
}

std::string assumption_count(const std::vector<std::string>& assumptions, std::string_view where) {
  if (assumptions.empty()) return {};
  return wrapped(
      "", fmt::format("Taken, because the project does not say: {}; {}",
                      counted(static_cast<int>(assumptions.size()), "thing", "things"), where));
}

std::string note_lines(const Report& report) {
  if (report.notes.empty()) return {};
  std::string text = "\nFound on the way:\n";
  for (const std::string& note : report.notes) text += wrapped("  - ", note);
  return text;
}

std::string built_lines(const Report& report, const Phrasing& phrasing) {
  if (report.built.empty()) return {};
  std::string text = "\nAs built, and as drawn:\n";
  for (const BuiltRoute& each : report.built) {
    const double length = each.as_built_in + each.as_drawn_in;
    // Rounded down, so that 100 % is said of nothing less.
    const double percent = std::floor(100 * each.as_built_in / length + 1e-9);
    text += wrapped("  - ", fmt::format("{}: {} ({:.0f} %) is as built, {} ({:.0f} %) still as "
                                        "drawn; {}",
                                        each.name, phrasing.tape(each.as_built_in), percent,
                                        phrasing.tape(each.as_drawn_in), 100 - percent,
                                        counted(each.measured, "measure", "measures")));
  }
  return text;
}

std::string passed_over_lines(const Report& report, const Phrasing& phrasing) {
  if (report.passed_over.empty()) return {};
  std::string text = "\nPassed over near fittings:\n";
  for (const PassedOver& each : report.passed_over)
    text +=
        wrapped("  - ", each.route + " to " + each.with + ", gap " + phrasing.length(each.gap_in) +
                            " at " + phrasing.place(each.at) + ": " + each.reason);
  return text;
}

}  // namespace linewright
