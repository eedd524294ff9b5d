#pragma once
// Rows of CSV under named columns.

#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "words/phrasing.hpp"

namespace linewright {

/// Fields by the name of their column, without its unit.
using CsvFields = std::map<std::string, std::string, std::less<>>;

struct CsvColumn {
  std::string_view name;
  bool is_length = false;  ///< in the unit asked for, which its head names
};

class CsvTable {
 public:
  /// `columns` must outlive the table.
  CsvTable(std::span<const CsvColumn> columns, LengthUnit unit);

  /// Four decimals of an inch, three of a millimetre; empty where there is none.
  std::string length(const std::optional<double>& inches) const;
  /// Columns without a field stay empty.
  void add(const CsvFields& fields);
  const std::string& text() const { return text_; }

 private:
  std::span<const CsvColumn> columns_;
  LengthUnit unit_;
  std::string text_;
};

}  // namespace linewright
