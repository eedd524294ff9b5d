#include "planning/stock_cut.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>

namespace linewright {
namespace {

constexpr double exact = 1e-9;

TEST(StockCut, PiecesThatFillALengthExactlyShareIt) {
  const StockCut cut = cut_stock({100, 44, 72, 72}, {144});
  EXPECT_EQ(cut.lengths.size(), 2u);
  EXPECT_NEAR(cut.left_over_in(), 0, exact);
  EXPECT_TRUE(cut.is_fewest);
}

TEST(StockCut, FindsTheCutThatFirstFitByLengthMisses) {
  // First fit takes 5 + 4, 3 + 3 + 3 and 2; 5 + 3 + 2 and 4 + 3 + 3 are two lengths.
  const std::vector<double> pieces{5, 4, 3, 3, 3, 2};
  const StockCut cut = cut_stock(pieces, {10});
  EXPECT_EQ(cut.lengths.size(), 2u);
  EXPECT_NEAR(cut.left_over_in(), 0, exact);
}

TEST(StockCut, TakesTheShortestLengthSoldThatIsEnough) {
  const StockCut cut = cut_stock({60}, {144, 72});
  ASSERT_EQ(cut.lengths.size(), 1u);
  EXPECT_EQ(cut.lengths[0].length_in, 72);
  EXPECT_NEAR(cut.left_over_in(), 12, exact);
}

TEST(StockCut, APieceLongerThanAnyLengthSoldIsNotSpliced) {
  const StockCut cut = cut_stock({150, 60}, {72, 144});
  EXPECT_EQ(cut.too_long, std::vector<std::size_t>{0});
  EXPECT_EQ(cut.lengths.size(), 1u);
}

TEST(StockCut, SaysWhereTheSearchWasGivenUp) {
  const std::vector<double> pieces{5, 4, 3, 3, 3, 2};
  EXPECT_EQ(cut_stock(pieces, {10}, 1).lengths.size(), 3u);
  EXPECT_FALSE(cut_stock(pieces, {10}, 1).is_fewest);
}

/// The fewest lengths, by trying every way to part the pieces.
std::size_t fewest(const std::vector<double>& pieces, double sold_in, std::vector<double> used = {},
                   std::size_t next = 0) {
  if (next == pieces.size()) return used.size();
  std::size_t best = pieces.size();
  for (std::size_t i = 0; i <= used.size(); ++i) {
    std::vector<double> with = used;
    if (i == used.size()) with.push_back(0);
    with[i] += pieces[next];
    if (with[i] <= sold_in + exact) best = std::min(best, fewest(pieces, sold_in, with, next + 1));
    if (best == 1) break;
  }
  return best;
}

TEST(StockCut, IsNeverBeatenByTryingEverything) {
  std::mt19937 random(7);
  std::uniform_int_distribution<int> length(1, 10);
  for (int round = 0; round < 200; ++round) {
    std::vector<double> pieces(6);
    for (double& piece : pieces) piece = length(random);
    const StockCut cut = cut_stock(pieces, {10});
    EXPECT_TRUE(cut.is_fewest);
    EXPECT_EQ(cut.lengths.size(), fewest(pieces, 10));
    std::vector<std::size_t> cut_pieces;
    for (const StockLength& each : cut.lengths) {
      double used = 0;
      for (const std::size_t piece : each.pieces) used += pieces[piece];
      EXPECT_NEAR(used, each.used_in, exact);
      EXPECT_LE(used, each.length_in + exact);
      cut_pieces.insert(cut_pieces.end(), each.pieces.begin(), each.pieces.end());
    }
    std::sort(cut_pieces.begin(), cut_pieces.end());
    std::vector<std::size_t> all(pieces.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    EXPECT_EQ(cut_pieces, all);
  }
}

}  // namespace
}  // namespace linewright
