#pragma once
// Pieces cut from lengths as they are sold, without a splice.

#include <cstddef>
#include <vector>

namespace linewright {

struct StockLength {
  double length_in = 0;  ///< as sold
  double used_in = 0;
  std::vector<std::size_t> pieces;  ///< indices of the pieces cut from it
};

struct StockCut {
  std::vector<StockLength> lengths;
  std::vector<std::size_t> too_long;  ///< pieces that no length sold is long enough for
  /// True where no cut needs fewer lengths. Else the search was given up, and a better one may
  /// exist.
  bool is_fewest = true;

  double left_over_in() const;
};

/// How many places the search looks at before it is given up.
inline constexpr int most_stock_places = 200'000;

/// The fewest lengths that give all pieces, and of such cuts one that buys little: each length is
/// the shortest sold that is enough. Branch and bound from a first-fit-decreasing cut; the saw
/// takes nothing. Precondition: `sold_in` is not empty and all numbers are above zero.
StockCut cut_stock(const std::vector<double>& pieces_in, const std::vector<double>& sold_in,
                   int most_places = most_stock_places);

}  // namespace linewright
