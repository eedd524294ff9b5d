#include "render/suggest_text.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

#include "input/route_points.hpp"
#include "model/units.hpp"
#include "render/finding_text.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

/// What a sum leaves beyond this would be noise to whoever reads it. Zero has no sign.
double shown(double value) {
  return std::round(value * 1e9) / 1e9 + 0.0;
}

/// Beyond this a length is no whole part of a tape.
constexpr double on_tape_within_in = 1e-9;
constexpr double tape_parts = 32;

std::string written_length(double inches, bool in_millimetres, LengthUnit unit) {
  const bool on_parts =
      std::abs(std::round(inches * tape_parts) / tape_parts - inches) < on_tape_within_in;
  if (unit == LengthUnit::inch_fraction && on_parts)
    return on_tape(inches) + (in_millimetres ? " in" : "");
  return fmt::format("{}", shown(in_millimetres ? inches * mm_per_in : inches));
}

std::string headline(const SupportSuggestion& route) {
  if (!route.was_found)
    return route.supports.empty() ? "no choice of supports does" : "what was found does not do";
  const auto kept = std::count_if(route.supports.begin(), route.supports.end(),
                                  [](const SuggestedSupport& each) { return each.drawn; });
  std::string words = counted(static_cast<int>(route.supports.size()), "support", "supports");
  if (route.supports.empty())
    words = route.faults.empty() ? "no support is needed"
                                 : "no support that could stand on what is there helps";
  words += ", in place of " + counted(route.replaces, "clamp", "clamps") + " drawn";
  if (kept > 0) words += fmt::format("; {} of them where drawn", kept);
  return words;
}

std::string support_text(const SuggestedSupport& support, const SupportSuggestion& route,
                         const Phrasing& phrasing) {
  const std::string lead =
      "  " + phrasing.tape(support.distance_in) + " from " + one_line(route.from) + ": ";
  std::string text = wrapped(lead, support.hold + (support.on.empty() ? "" : " on " + support.on) +
                                       (support.drawn ? ", as drawn" : ""));
  text += "      " + phrasing.place(support.at) + "\n";
  if (!support.why.empty()) text += wrapped("      ", "without it: " + support.why);
  return text;
}

/// A rule asks for a support where nothing was found that could carry one.
std::string mend_words(const std::string& mend, bool gave_up) {
  const bool asks =
      mend.find("add a support") != mend.npos || mend.find("add supports") != mend.npos;
  if (gave_up || !asks) return mend;
  return "no part that is described offers a place for one more support there: describe a part or "
         "a bracket that does, or name it in the route's `supports_on`; then " +
         mend;
}

std::string fault_text(const SupportFault& fault, const SupportSuggestion& route,
                       const TextStyle& style) {
  const Judgement& judgement = fault.judgement;
  std::string text = wrapped("    " + verdict_text(judgement.verdict, style) + ": ",
                             judgement.rule + ": " + judgement.message);
  std::string where = style.phrasing.tape(fault.distance_in) + " from " + route.from;
  if (judgement.at) where += ", " + style.phrasing.place(*judgement.at);
  text += wrapped("      where: ", where);
  if (!judgement.mend.empty())
    text += wrapped("      mend: ", mend_words(judgement.mend, route.gave_up));
  return text;
}

std::string route_text(const SupportSuggestion& route, const TextStyle& style) {
  std::string text = wrapped(one_line(route.route) + ": ", headline(route));
  if (!route.mirror_of.empty())
    text += wrapped("  ", "It is the mirror image of " + route.mirror_of +
                              ", and follows what is pasted there.");
  for (const SuggestedSupport& support : route.supports)
    text += support_text(support, route, style.phrasing);
  if (route.gave_up)
    text += wrapped("    ",
                    "the search was given up: there may be supports that do. Name the parts "
                    "that may hold the line in the route's `supports_on`.");
  if (!route.faults.empty())
    text +=
        std::string("  ") + (route.was_found ? "What no support mends:" : "What stops it:") + "\n";
  for (const SupportFault& fault : route.faults) text += fault_text(fault, route, style);
  return text + "\n";
}

}  // namespace

std::string words_on_measures(const SuggestReport& report) {
  if (report.measured_routes.empty()) return {};
  return fmt::format(
      "the points of {} hold the places that were measured, and its supports are numbered anew: "
      "take its measures out of `built` when you paste them, for they would be taken to be of "
      "other supports",
      fmt::join(report.measured_routes, ", "));
}

bool SuggestReport::is_sound() const {
  const bool all = std::all_of(routes.begin(), routes.end(),
                               [](const SupportSuggestion& route) { return route.possible; });
  return all && std::none_of(new_faults.begin(), new_faults.end(), [](const Judgement& each) {
           return each.verdict == Verdict::fail || each.verdict == Verdict::unknown;
         });
}

std::string suggest_yaml(const SuggestReport& report, LengthUnit unit) {
  std::vector<Route> routes;
  for (const SupportSuggestion& route : report.routes)
    if (route.was_found && route.mirror_of.empty()) routes.push_back(route.with);
  if (routes.empty()) return {};
  return route_points_text(routes, [unit](double length_in, bool in_millimetres) {
    return written_length(length_in, in_millimetres, unit);
  });
}

std::string suggest_text(const SuggestReport& report, const TextStyle& style) {
  std::string text = "Where supports could go: " + one_line(report.project_name) + "\n\n";
  for (const SupportSuggestion& route : report.routes) text += route_text(route, style);
  if (!report.new_faults.empty()) {
    text += "What other rules say of it that they do not say as drawn:\n";
    for (const Judgement& judgement : report.new_faults) {
      text += wrapped("  " + verdict_text(judgement.verdict, style) + ": ",
                      judgement.rule + ": " + judgement.route + ": " + judgement.message);
      if (!judgement.mend.empty()) text += wrapped("    mend: ", judgement.mend);
    }
    text += "\n";
  }
  const std::string yaml = suggest_yaml(report, style.phrasing.unit);
  if (!yaml.empty()) text += "To paste, `points` in place of each route's own:\n\n" + yaml + "\n";
  const std::string measured = words_on_measures(report);
  if (!measured.empty()) text += wrapped("Before you paste: ", measured) + "\n";
  return text + assumption_count(report.assumptions, "linewright check lists them");
}

}  // namespace linewright
