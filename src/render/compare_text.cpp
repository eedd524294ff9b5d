#include "render/compare_text.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "render/amount.hpp"
#include "render/check_changes.hpp"
#include "render/finding_text.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

constexpr std::size_t name_column = 24;
constexpr std::size_t value_column = 20;

/// A quantity of one thing on both sides, in words; empty: it is on one side only.
struct Row {
  std::string name;
  std::string a;
  std::string b;
  std::string change;  ///< empty for what is no number
};

std::string row_text(const Row& row) {
  std::string text = left(row.name, name_column) + " " + left(row.a, value_column) + " " +
                     left(row.b, value_column) + " " + row.change;
  text.erase(text.find_last_not_of(' ') + 1);
  return text + "\n";
}

/// Adds the row where its two sides are not said in the same words.
template <typename Words>
void add_if_different(std::vector<Row>& rows, const std::string& name, double a, double b,
                      const Words& words) {
  const std::string a_words = words(a);
  const std::string b_words = words(b);
  if (a_words == b_words) return;
  rows.push_back({name, a_words, b_words, (b > a ? "+" : "-") + words(b > a ? b - a : a - b)});
}

struct UnitWords {
  const Phrasing& phrasing;

  auto length() const {
    return [this](double inches) { return bench_length(inches, phrasing); };
  }
  auto air() const {
    return [this](double cubic_inches) { return volume(cubic_inches, phrasing); };
  }
  auto weight() const {
    return [this](double pounds) { return mass(pounds, phrasing); };
  }
};

void add_route(std::vector<Row>& rows, const SidesOf<RouteCut>& sides, const UnitWords& words) {
  if (sides.a == nullptr || sides.b == nullptr) {
    const RouteCut& only = sides.a != nullptr ? *sides.a : *sides.b;
    const std::string length = only.line + ", " + words.length()(only.length_in);
    rows.push_back({only.name, sides.a != nullptr ? length : "-", sides.b != nullptr ? length : "-",
                    sides.a != nullptr ? "gone" : "new"});
    return;
  }
  const RouteCut& a = *sides.a;
  const RouteCut& b = *sides.b;
  std::vector<Row> own;
  if (a.line != b.line) own.push_back({"  line", a.line, b.line, ""});
  add_if_different(own, "  length", a.length_in, b.length_in, words.length());
  add_if_different(own, "  cut length", a.cut_length_in, b.cut_length_in, words.length());
  add_if_different(own, "  bore volume", a.volume_in3, b.volume_in3, words.air());
  if (a.mass_lb && b.mass_lb)
    add_if_different(own, "  mass", *a.mass_lb, *b.mass_lb, words.weight());
  else if (a.mass_lb.has_value() != b.mass_lb.has_value())
    own.push_back({"  mass", a.mass_lb ? words.weight()(*a.mass_lb) : "not known",
                   b.mass_lb ? words.weight()(*b.mass_lb) : "not known", ""});
  if (own.empty()) return;
  rows.push_back({a.name, "", "", ""});
  rows.insert(rows.end(), own.begin(), own.end());
}

void add_system(std::vector<Row>& rows, const SidesOf<SystemCut>& sides, const UnitWords& words) {
  const SystemCut none;
  const SystemCut& a = sides.a != nullptr ? *sides.a : none;
  const SystemCut& b = sides.b != nullptr ? *sides.b : none;
  std::vector<Row> own;
  add_if_different(own, "  length", a.length_in, b.length_in, words.length());
  add_if_different(own, "  volume", a.volume_in3, b.volume_in3, words.air());
  if (own.empty()) return;
  rows.push_back({"system " + (sides.b != nullptr ? b.name : a.name), "", "", ""});
  rows.insert(rows.end(), own.begin(), own.end());
}

std::string quantities(const Comparison& comparison, const TextStyle& style) {
  const UnitWords words{style.phrasing};
  std::vector<Row> rows;
  for (const SidesOf<RouteCut>& sides : routes_beside(comparison)) add_route(rows, sides, words);
  for (const SidesOf<SystemCut>& sides : systems_beside(comparison)) add_system(rows, sides, words);
  if (rows.empty()) return "\nEvery line has the same length, volume and mass in both.\n";
  std::string text = "\n" + row_text({"Lengths, volumes, masses", "A", "B", "change"});
  for (const Row& row : rows) text += row_text(row);
  return text;
}

/// Pieces are counted, and lengths said to a hundredth.
std::string quantity_number(double quantity, const PartRow& row, std::string_view sign = "") {
  const bool plus = sign == "+" && quantity > 0;
  return (plus ? "+" : "") +
         (row.unit == "each" ? fmt::format("{:g}", quantity) : fmt::format("{:.2f}", quantity));
}

std::string part_quantity(const PartRow* row) {
  if (row == nullptr) return "-";
  const std::string number = quantity_number(row->quantity, *row);
  return row->unit == "each" ? number : number + " " + row->unit;
}

std::string parts_table(const Comparison& comparison) {
  const std::vector<SidesOf<PartRow>> changed = parts_changed(comparison);
  if (changed.empty()) return {};
  std::string text = "\n" + row_text({"Parts to buy", "A", "B", "change"});
  for (const SidesOf<PartRow>& sides : changed) {
    const PartRow& row = sides.b != nullptr ? *sides.b : *sides.a;
    const double more =
        (sides.b != nullptr ? sides.b->quantity : 0) - (sides.a != nullptr ? sides.a->quantity : 0);
    text += one_line(row.item + (row.size.empty() ? "" : " " + row.size)) + "\n";
    text += row_text(
        {"", part_quantity(sides.a), part_quantity(sides.b), quantity_number(more, row, "+")});
  }
  return text;
}

std::string tally_row(std::string_view name, const Report& report) {
  const Tally tally = tally_of(report.judgements);
  return fmt::format("{}  {} passed, {}, {} failed, {} unknown, {} waived\n", name, tally.pass,
                     counted(tally.warn, "warning", "warnings"), tally.fail, tally.unknown,
                     tally.waived);
}

/// What only one of the two takes for granted.
std::string assumptions_apart(const Comparison& comparison) {
  const auto only = [](std::string_view which, const Report& report, const Report& other) {
    std::string text;
    for (const std::string& each : report.assumptions)
      if (std::find(other.assumptions.begin(), other.assumptions.end(), each) ==
          other.assumptions.end())
        text += wrapped("  - ", each);
    return text.empty()
               ? text
               : fmt::format("\nTaken in {} only, because it does not say:\n", which) + text;
  };
  return only("A", comparison.a, comparison.b) + only("B", comparison.b, comparison.a);
}

}  // namespace

std::string compare_text(const Comparison& comparison, const TextStyle& style) {
  const Report& a = comparison.a;
  const Report& b = comparison.b;
  std::string text = wrapped("A: ", a.project_name + " (" + comparison.a_path + ")") +
                     wrapped("B: ", b.project_name + " (" + comparison.b_path + ")");
  text += set_lines(b, "B as if the files said:");
  if (!text.ends_with("\n\n")) text += "\n";
  const std::vector<Change> changes = changes_between(a, b, style);
  text += "From A to B: " + change_counts(changes) + "\n";
  text += change_list(changes, a, b, style) + "\n";
  text += tally_row("A", a) + tally_row("B", b);
  text += quantities(comparison, style);
  text += parts_table(comparison);
  text += assumptions_apart(comparison);
  if (b.nothing_judged && !a.nothing_judged)
    text += "\nNothing was judged in B: its silence is no pass.\n";
  return text;
}

}  // namespace linewright
