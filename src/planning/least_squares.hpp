#pragma once
// Columns of equal length, as least squares needs them.

#include <vector>

namespace linewright {

using Column = std::vector<double>;

inline double product(const Column& a, const Column& b) {
  double sum = 0;
  for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
  return sum;
}

/// What is left of `column` once multiples of `taken`, each orthogonal to the others, are out.
inline Column without(Column column, const std::vector<Column>& taken) {
  for (const Column& other : taken) {
    const double square = product(other, other);
    if (!(square > 0)) continue;
    const double share = product(column, other) / square;
    for (std::size_t i = 0; i < column.size(); ++i) column[i] -= share * other[i];
  }
  return column;
}

}  // namespace linewright
