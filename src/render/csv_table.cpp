#include "render/csv_table.hpp"

#include "model/units.hpp"
#include "render/amount.hpp"
#include "render/cutlist_csv.hpp"

namespace linewright {

CsvTable::CsvTable(std::span<const CsvColumn> columns, LengthUnit unit)
    : columns_(columns), unit_(unit) {
  CsvFields names;
  for (const CsvColumn& column : columns_) {
    std::string& name = names[std::string(column.name)] = column.name;
    if (column.is_length) name += unit_ == LengthUnit::millimetre ? "_mm" : "_in";
  }
  add(names);
}

std::string CsvTable::length(const std::optional<double>& inches) const {
  if (!inches) return {};
  return unit_ == LengthUnit::millimetre ? fixed_number(*inches * mm_per_in, 3)
                                         : fixed_number(*inches, 4);
}

void CsvTable::add(const CsvFields& fields) {
  bool first = true;
  for (const CsvColumn& column : columns_) {
    if (!first) text_ += ',';
    first = false;
    const auto field = fields.find(column.name);
    if (field != fields.end()) text_ += csv_field(field->second);
  }
  text_ += '\n';
}

}  // namespace linewright
