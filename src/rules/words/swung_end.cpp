#include "rules/words/swung_end.hpp"

namespace linewright {

std::string fixed_end_words(const PreparedRoute& route, int point) {
  std::string words;
  for (const RouteEnd end : {RouteEnd::from, RouteEnd::to}) {
    const Node& node = end == RouteEnd::from ? *route.from : *route.to;
    if (node.kind != NodeKind::horn && node.kind != NodeKind::pedal) continue;
    if (node.sector) continue;
    if (end_guide(route, end) != point) continue;
    const auto swing = arm_swing(route, end);
    if (swing && swing->reaches) continue;
    words += "; " + node.name + " is taken as fixed: ";
    if (swing)
      words += "its arm cannot give the travel";
    else
      words += std::string(node.arm ? "the cable's travel" : "its arm") + " is not stated";
  }
  return words;
}

std::string shortfall_words(const PreparedRoute& route, const Movement& gives,
                            const Phrasing& phrasing) {
  const Movement asked = route.moves.value_or(Movement{});
  std::string words;
  const auto add = [&](double gives_in, double asked_in, const std::string& toward) {
    if (gives_in >= asked_in) return;
    words += (words.empty() ? "" : "; ") + phrasing.length(gives_in) + " toward " + toward +
             ", asked " + phrasing.length(asked_in);
  };
  add(gives.toward_from_in, asked.toward_from_in, route.from->name);
  add(gives.toward_to_in, asked.toward_to_in, route.to->name);
  return words;
}

std::string short_arm_words(const PreparedRoute& route, RouteEnd end, const Phrasing& phrasing) {
  const auto swing = arm_swing(route, end);
  if (!swing || swing->reaches) return {};
  const Node& node = end == RouteEnd::from ? *route.from : *route.to;
  return "the arm at " + node.name + " cannot move the cable through its travel: it gives " +
         shortfall_words(route, {swing->gives_toward_from_in, swing->gives_toward_to_in}, phrasing);
}

std::string swinging_end_name(const PreparedRoute& route, int point) {
  const auto from = arm_swing(route, RouteEnd::from);
  return from && from->reaches && from->guide == point ? route.from->name : route.to->name;
}

}  // namespace linewright
