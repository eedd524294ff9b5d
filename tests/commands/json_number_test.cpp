// Numbers in JSON are told to what they are worth, so that every machine tells the same.

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <optional>
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

TEST(JsonPlace, IsToldToAMillionth) {
  EXPECT_EQ(json_place({1.00000049, -2.0000004, 1e-9}).dump(), R"({"fs":1.0,"bl":-2.0,"wl":0.0})");
  EXPECT_EQ(json_place({0.0000016, 0, -7e-7}).dump(), R"({"fs":2e-06,"bl":0.0,"wl":-1e-06})");
}

TEST(JsonDistance, IsToldToAMillionthWhereThereIsOne) {
  EXPECT_EQ(json_distance(12.34567849).dump(), "12.345678");
  EXPECT_EQ(json_distance(std::optional<double>(12.34567851)).dump(), "12.345679");
  EXPECT_EQ(json_distance(std::optional<double>()).dump(), "null");
}

TEST(JsonJudgement, TellsALengthToATenthOfAMillionth) {
  Judgement judgement;
  judgement.value = 2.20828812249;
  judgement.limit = 2.1;
  judgement.unit = Unit::inch;
  const Json told = json_judgement(judgement);
  EXPECT_EQ(told.at("value").dump(), "2.2082881");
  EXPECT_EQ(told.at("limit").dump(), "2.1");
  EXPECT_EQ(told.at("margin").dump(), "0.1082881");
  judgement.unit = Unit::none;
  EXPECT_EQ(json_judgement(judgement).at("value").dump(), "2.208288122");
}

TEST(JsonNumber, IsFinite) {
  EXPECT_THROW(json_number(std::numeric_limits<double>::infinity()), std::logic_error);
  EXPECT_THROW(json_number(std::nan("")), std::logic_error);
}

}  // namespace
}  // namespace linewright
