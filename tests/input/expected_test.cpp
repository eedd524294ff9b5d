#include "model/expected.hpp"

#include <gtest/gtest.h>

#include <memory>
#include <string>
#include <vector>

namespace linewright {
namespace {

using Length = Expected<double, std::string>;

Length half(double length_in) {
  if (length_in < 0) return "a length is not negative";
  return length_in / 2;
}

TEST(Expected, IsTrueAndHoldsTheValueWhereThereIsOne) {
  const Length found = half(3);
  ASSERT_TRUE(found);
  EXPECT_EQ(*found, 1.5);
}

TEST(Expected, IsFalseAndHoldsTheErrorWhereThereIsNoValue) {
  const Length found = half(-3);
  ASSERT_FALSE(found);
  EXPECT_EQ(found.error(), "a length is not negative");
}

TEST(Expected, RefusesToGiveWhatIsNotThere) {
  EXPECT_THROW(*half(-3), std::bad_variant_access);
  EXPECT_THROW(half(3).error(), std::bad_variant_access);
}

TEST(Expected, HandsOverWhatCannotBeCopied) {
  Expected<std::unique_ptr<int>, std::string> held(std::make_unique<int>(7));
  const std::unique_ptr<int> taken = *std::move(held);
  EXPECT_EQ(*taken, 7);
}

TEST(Expected, GivesAnotherValueInsteadWhereThatIsAskedFor) {
  EXPECT_EQ(half(3).value_or(7), 1.5);
  EXPECT_EQ(half(-3).value_or(7), 7);
}

TEST(Expected, LetsTheValueBeChangedInPlace) {
  Expected<std::vector<int>, std::string> numbers(std::vector<int>{1});
  numbers->push_back(2);
  EXPECT_EQ(*numbers, (std::vector<int>{1, 2}));
}

}  // namespace
}  // namespace linewright
