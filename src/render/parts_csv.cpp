#include "render/parts_csv.hpp"

#include "render/amount.hpp"
#include "render/csv_table.hpp"

namespace linewright {

namespace {

constexpr CsvColumn columns[] = {{"item"}, {"size"},   {"standard"}, {"quantity"},
                                 {"unit"}, {"spares"}, {"for"},      {"needed_before"}};

std::string quantity(const PartRow& row, double value, const CsvTable& table) {
  return row.unit == "in" ? table.length(value) : fixed_number(value, 0);
}

}  // namespace

std::string parts_csv(const PartsList& list, LengthUnit unit) {
  CsvTable table(columns, unit);
  for (const PartRow& row : list.rows) {
    std::string names;
    for (const std::string& name : row.used_for) names += (names.empty() ? "" : "; ") + name;
    const bool metric = row.unit == "in" && unit == LengthUnit::millimetre;
    table.add({{"item", row.item},
               {"size", row.size},
               {"standard", row.standard},
               {"quantity", quantity(row, row.quantity, table)},
               {"unit", metric ? "mm" : row.unit},
               {"spares", quantity(row, row.spares, table)},
               {"for", names},
               {"needed_before", row.needed_before.value_or("")}});
  }
  return table.text();
}

}  // namespace linewright
