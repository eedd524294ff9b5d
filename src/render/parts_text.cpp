#include "render/parts_text.hpp"

#include <fmt/format.h>

#include "model/units.hpp"
#include "render/amount.hpp"
#include "render/layout.hpp"

namespace linewright {

namespace {

constexpr std::size_t quantity_column = 11;
constexpr std::size_t spares_column = 12;

std::string quantity(const PartRow& row, double value, const Phrasing& phrasing) {
  return row.unit == "in" ? bench_length(value, phrasing) : fixed_number(value, 0);
}

std::string row_text(const PartRow& row, const Phrasing& phrasing) {
  std::string text = right(quantity(row, row.quantity, phrasing), quantity_column);
  text += right(row.spares > 0 ? "+ " + quantity(row, row.spares, phrasing) : "", spares_column);
  const std::string of = row.unit == "length" ? " (as sold)" : "";
  std::string what = row.item + of + ", " + row.size;
  if (!row.standard.empty()) what += ", " + row.standard;
  text = wrapped(text + "  ", what);
  std::string names;
  for (const std::string& name : row.used_for) names += (names.empty() ? "" : ", ") + name;
  const std::string lead(quantity_column + spares_column + 4, ' ');
  text += wrapped(lead, "for " + names);
  if (row.needed_before) text += wrapped(lead, "before " + *row.needed_before + " goes on");
  return text;
}

std::string list_text(std::string_view head, const std::vector<std::string>& sentences) {
  if (sentences.empty()) return {};
  std::string text = "\n" + std::string(head) + "\n";
  for (const std::string& sentence : sentences) text += wrapped("  - ", sentence);
  return text;
}

}  // namespace

std::string parts_text(const PartsList& list, const TextStyle& style) {
  std::string text = right("quantity", quantity_column) + right("spares", spares_column) +
                     "  item, size, standard\n";
  for (const PartRow& row : list.rows) text += row_text(row, style.phrasing);
  text += list_text("How it is cut, and what is not known:", list.notes);
  text += list_text("Taken, because the project does not say:", list.assumptions);
  text += "\n";
  text += wrapped("",
                  "Lengths are cut lengths. Standards are from memory: look them up before you "
                  "order. Instruments, structure, brackets and what joins it are not listed.");
  return text;
}

}  // namespace linewright
