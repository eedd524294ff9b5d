#include "render/close_up_text.hpp"

#include <fmt/format.h>

#include "render/layout.hpp"

namespace linewright {

namespace {

std::string item_text(const CloseUpItem& item, const TextStyle& style) {
  constexpr std::size_t kind_columns = 11;
  std::string words = item.name;
  if (!item.route.empty() && item.route != item.name) words += ", " + item.route;
  words += ": " + style.phrasing.place(item.at);
  std::string text = wrapped("  [ ] " + left(item.kind, kind_columns), words);
  const std::string now =
      item.reached_now_by.empty() ? "" : "reached now by " + item.reached_now_by + "; ";
  return text + wrapped("      ", now + item.why);
}

/// "40 clamp, clamp-4, MS21919".
std::string in_hand_text(const PartRow& row) {
  std::string words = row.unit == "in" ? fmt::format("{:.1f} in", row.quantity)
                                       : fmt::format("{:.0f}", row.quantity);
  words += " " + row.item + ", " + row.size;
  if (!row.standard.empty()) words += ", " + row.standard;
  return wrapped("  [ ] " + left("in hand", 11), words);
}

std::string closure_text(const ClosureList& closure, const TextStyle& style) {
  std::string text = wrapped("", "\nBefore " + closure.name + " goes on:");
  text = "\n" + text;
  for (const CloseUpItem& item : closure.before) text += item_text(item, style);
  for (const std::string& system : closure.tests)
    text += wrapped("  [ ] " + left("leak test", 11),
                    "system " + system + ": what of it this closure covers is not mended after");
  for (const PartRow& row : closure.in_hand) text += in_hand_text(row);
  if (closure.before.empty() && closure.tests.empty() && closure.in_hand.empty())
    text += wrapped("  ", "nothing that it puts out of reach");
  return text;
}

std::string circle_text(const ClosingCircle& circle) {
  std::string text =
      "\n" + wrapped("", fmt::format("A circle: {}", fmt::join(circle.names, ", then ")) +
                             ", then " + circle.names.front() + " again.");
  for (const std::string& why : circle.why) text += wrapped("  ", why);
  return text + wrapped("  ",
                        "One of these has to give way: take a name out of an 'after', or leave an "
                        "opening by which the task can still be done.");
}

/// What must be solved before the list can be worked through.
std::string trouble_text(const CloseUp& plan) {
  std::string text;
  for (const ClosingCircle& circle : plan.circles) text += circle_text(circle);
  for (const std::string& name : plan.unknown)
    text += "\n" + wrapped("", "Closure " + name +
                                   " does not say what goes on with it, so that what it puts out "
                                   "of reach is not known: name its panels in 'covers'.");
  for (const std::string& problem : plan.problems) text += "\n" + wrapped("", problem + ".");
  return text;
}

std::string not_reached_text(const CloseUp& plan, const TextStyle& style) {
  if (plan.not_reached.empty()) return "";
  std::string text = "\n" + wrapped("", "No hand comes to these, even while nothing is on:");
  for (const CloseUpItem& item : plan.not_reached)
    text += wrapped("  ", item.name + ", " + item.route + ": " + style.phrasing.place(item.at));
  return text;
}

}  // namespace

std::string close_up_text(const CloseUp& plan, const TextStyle& style) {
  if (plan.order.empty())
    return wrapped("", plan.project_name + ": no closure is stated, so nothing is closed up");
  std::string text = wrapped(
      "", fmt::format("{}: in this order: {}", plan.project_name, fmt::join(plan.order, ", ")));
  text += trouble_text(plan);
  for (const ClosureList& closure : plan.closures) text += closure_text(closure, style);
  text += not_reached_text(plan, style);
  if (!plan.notes.empty()) text += "\n";
  for (const std::string& note : plan.notes) text += wrapped("note: ", note);
  return text;
}

}  // namespace linewright
