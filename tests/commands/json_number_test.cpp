// Numbers in JSON are told to what they are worth, so that every machine tells the same.

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <stdexcept>

#include "render/json_values.hpp"

namespace linewright {
namespace {

TEST(JsonNumber, IsToldToABillionth) {
  EXPECT_EQ(json_number(0.1 + 0.2).dump(), "0.3");
  EXPECT_EQ(json_number(12.0000000001).dump(), "12.0");
  EXPECT_EQ(json_number(0.123456789049).dump(), "0.123456789");
  EXPECT_EQ(json_number(-1.28e-5).dump(), "-1.28e-05");
}

TEST(JsonNumber, HasThirteenDigitsAtTheMost) {
  EXPECT_EQ(json_number(10500000.000000002).dump(), "10500000.0");
  EXPECT_EQ(json_number(123456.7890123).dump(), "123456.7890123");
  EXPECT_EQ(json_number(1e300).dump(), "1e+300");
}

TEST(JsonNumber, HasNoMinusZero) {
  EXPECT_EQ(json_number(-0.0).dump(), "0.0");
  EXPECT_EQ(json_number(-1e-17).dump(), "0.0");
}

TEST(JsonNumber, IsFinite) {
  EXPECT_THROW(json_number(std::numeric_limits<double>::infinity()), std::logic_error);
  EXPECT_THROW(json_number(std::nan("")), std::logic_error);
}

}  // namespace
}  // namespace linewright
