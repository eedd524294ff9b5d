// Decimals are read alike with and without the library's own reader.

#include "system/decimal.hpp"

#include <gtest/gtest.h>

#include <charconv>
#include <cmath>
#include <random>
#include <string>

namespace linewright {
namespace {

void expect_alike(const std::string& text) {
  double by_library = 77;
  double by_hand = 77;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), by_library);
  const ReadDecimal read = read_decimal_by_hand(text, by_hand);
  EXPECT_EQ(read.end - text.data(), end - text.data()) << text;
  EXPECT_EQ(static_cast<int>(read.error), static_cast<int>(error)) << text;
  if (std::isnan(by_library))
    EXPECT_TRUE(std::isnan(by_hand)) << text;
  else
    EXPECT_EQ(by_hand, by_library) << text;
}

TEST(Decimal, WhatIsANumberAndWhereItEnds) {
  for (const char* text :
       {"0",     "-0",       "12",      "12.",    ".5",     "-.5",      "12.5e3", "12.5e", "12.5e+",
        "1e-3x", "1E+05 ",   "",        "-",      ".",      "e5",       "+1",     " 1",    "0x10",
        "1,5",   "1.5.2",    "--1",     "inf",    "-inf",   "infinity", "INF",    "nan",   "-NaN",
        "in",    "infinite", "1e99999", "-1e400", "1e-400", "5e-324",   "2e-324"})
    expect_alike(text);
}

// Half way between two doubles, and just beside: the nearest double is one alone.
TEST(Decimal, TheNearestDouble) {
  for (const char* text :
       {"9007199254740993", "9007199254740992.9999999999999999", "0.1", "0.30000000000000004",
        "1.7976931348623157e308", "2.2250738585072011e-308", "123456789012345678901234567890",
        "0.000000000000000000000000000001234567890123456789"})
    expect_alike(text);
}

TEST(Decimal, RandomDigits) {
  std::mt19937 random(20261128);
  for (int i = 0; i < 20000; ++i) {
    std::string text = std::to_string(random()) + "." + std::to_string(random());
    if (i % 3 == 0) text += "e" + std::to_string(static_cast<int>(random() % 80) - 40);
    expect_alike(i % 2 == 0 ? text : "-" + text);
  }
}

}  // namespace
}  // namespace linewright
