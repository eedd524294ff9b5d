#include "input/leak_readings.hpp"

#include <gtest/gtest.h>

#include <clocale>

namespace linewright {
namespace {

const std::string header = "time_s,altitude_ft\n";

LeakLog read(const std::string& text, LoggedQuantity quantity = LoggedQuantity::altitude_ft) {
  const auto log = read_leak_log(text, "log.csv", quantity);
  if (log) return *log;
  ADD_FAILURE() << log.error().front().message;
  return {};
}

std::vector<Diagnostic> errors_in(const std::string& text,
                                  LoggedQuantity quantity = LoggedQuantity::altitude_ft) {
  const auto log = read_leak_log(text, "log.csv", quantity);
  return log ? std::vector<Diagnostic>() : log.error();
}

void expect_error(const std::string& text, int line, int column, const std::string& part,
                  LoggedQuantity quantity = LoggedQuantity::altitude_ft) {
  const std::vector<Diagnostic> errors = errors_in(text, quantity);
  ASSERT_EQ(errors.size(), 1u) << text;
  EXPECT_EQ(errors[0].where, (SourceLocation{"log.csv", line, column})) << errors[0].message;
  EXPECT_NE((errors[0].message + " " + errors[0].suggestion).find(part), std::string::npos)
      << errors[0].message << " / " << errors[0].suggestion;
}

TEST(LeakReadings, AreTwentyThousandAtMost) {
  std::string log = header;
  for (int i = 0; i < 20'000; ++i) log += std::to_string(i) + ",1800\n";
  EXPECT_TRUE(errors_in(log).empty());
  expect_error(log + "20000,1800\n", 20'002, 0, "more than 20000 readings");
}

TEST(LeakReadings, AreTimesAndAltitudes) {
  const LeakLog log = read("time_s,altitude_ft\n0,1800\n10,1795.5\n");
  ASSERT_EQ(log.rows.size(), 2u);
  EXPECT_FALSE(log.has_temperature);
  EXPECT_EQ(log.rows[1].time_s, 10);
  EXPECT_EQ(log.rows[1].reading, 1795.5);
  EXPECT_EQ(log.rows[1].line, 3);
}

TEST(LeakReadings, MayHaveTemperatures) {
  const LeakLog log = read("time_s,altitude_ft,temperature_degF\n0,1800,70.1\n10,1795,70.25\n");
  EXPECT_TRUE(log.has_temperature);
  EXPECT_EQ(log.rows[1].temperature_degf, 70.25);
  EXPECT_EQ(log.temperature_step_degf, 0.01);
  EXPECT_EQ(log.reading_step, 1);
}

TEST(LeakReadings, AreKnotsInAPitotTest) {
  const LeakLog log = read("time_s,airspeed_kt\n0,150\n60,148.5\n", LoggedQuantity::airspeed_kt);
  EXPECT_EQ(log.rows[1].reading, 148.5);
}

TEST(LeakReadings, TakeRemarksBlanksAndEitherLineEnd) {
  const std::string text =
      "\xEF\xBB\xBF# by hand\r\n\r\n time_s , altitude_ft \r\n0, 1800\r\n  # half way\n10\t,1790";
  const LeakLog log = read(text);
  ASSERT_EQ(log.rows.size(), 2u);
  EXPECT_EQ(log.rows[0].line, 4);
  EXPECT_EQ(log.rows[1].reading, 1790);
}

TEST(LeakReadings, TakeNegativeAltitudesAndExponents) {
  EXPECT_EQ(read(header + "0,-100\n1e1,-1.1e2\n").rows[1].reading, -110);
}

TEST(LeakReadings, NeedTheirHeader) {
  expect_error("0,1800\n10,1790\n", 1, 1,
               "expected the header time_s,altitude_ft or "
               "time_s,altitude_ft,temperature_degF, found '0'");
  expect_error("time_s,altitude\n0,1\n", 1, 8, "did you mean 'altitude_ft'?");
  expect_error("time_s,altitude_ft,temperature_degf\n", 1, 20, "did you mean 'temperature_degF'?");
  expect_error("time_s\n0\n", 1, 7, "the column altitude_ft is missing");
  expect_error("time_s,altitude_ft,temperature_degF,remark\n", 1, 37, "a column too many");
  expect_error("time_s;altitude_ft\n0;1\n", 1, 1, "found 'time_s;altitude_ft'");
}

TEST(LeakReadings, OfTheOtherTestAreRefused) {
  expect_error("time_s,airspeed_kt\n0,150\n", 1, 8, "expected the header time_s,altitude_ft");
  expect_error("time_s,altitude_ft\n0,150\n", 1, 8, "expected the header time_s,airspeed_kt",
               LoggedQuantity::airspeed_kt);
}

TEST(LeakReadings, WithADecimalCommaAreRefused) {
  expect_error(header + "0,1800\n10,1795,5\n", 3, 9, "write decimals with a point");
  expect_error(header + "0,1800\n10;1795\n", 3, 8, "expected 2 values, found 1");
  expect_error("time_s,altitude_ft,temperature_degF\n0,1800,70\n10,1795,5\n", 3, 9,
               "cannot jump from 70 to 5 degF");
}

TEST(LeakReadings, WithAMissingOrSurplusValueAreRefused) {
  expect_error(header + "0,1800\n10\n", 3, 3, "expected 2 values, found 1");
  expect_error(header + "0,1800\n10,\n", 3, 4, "an altitude is missing");
  expect_error(header + "0,1800\n,1790\n", 3, 1, "a time is missing");
  expect_error(header + "0,1800\n10,1790,70\n", 3, 9, "expected 2 values, found more");
}

TEST(LeakReadings, MustBeNumbers) {
  expect_error(header + "0,1800\n10,nan\n", 3, 4, "a number must be finite");
  expect_error(header + "0,1800\n10,-inf\n", 3, 4, "a number must be finite");
  expect_error(header + "0,1800\n10,1e999\n", 3, 4, "out of range");
  expect_error(header + "0,1800\n10,1790 ft\n", 3, 4, "expected a plain number");
  expect_error(header + "0,1800\n10,\"1790\"\n", 3, 4, "expected a plain number");
  expect_error(header + "0,1800\n10,0x10\n", 3, 4, "decimal");
  expect_error(header + "0,1800\n010,1790\n", 3, 1, "octal");
}

TEST(LeakReadings, MustLieOnTheScale) {
  expect_error(header + "0,36000\n10,1800\n", 2, 3, "between -5000 and 35000 ft");
  expect_error(header + "-1,1800\n10,1800\n", 2, 1, "between 0 and");
  expect_error(header + "0,1800\n1e7,1800\n", 3, 1, "between 0 and");
  expect_error("time_s,airspeed_kt\n0,150\n1,-5\n", 3, 3, "between 0 and 600 kt",
               LoggedQuantity::airspeed_kt);
}

TEST(LeakReadings, MustGoForwardInTime) {
  expect_error(header + "0,1800\n10,1790\n10,1785\n", 4, 1, "the time 10 s repeats");
  expect_error(header + "0,1800\n20,1790\n10,1785\n", 4, 1, "the time goes back from 20 to 10 s");
}

TEST(LeakReadings, CannotJump) {
  expect_error(header + "0,1800\n10,6801\n", 3, 4, "cannot jump from 1800 to 6801 ft");
  EXPECT_TRUE(errors_in(header + "0,1800\n10,6800\n").empty());
  expect_error("time_s,airspeed_kt\n0,350\n1,149\n", 3, 3, "cannot jump from 350 to 149 kt",
               LoggedQuantity::airspeed_kt);
}

TEST(LeakReadings, OfNoneOrOneRowAreRefused) {
  expect_error("", 0, 0, "holds no readings");
  expect_error("\n# nothing\n\r\n", 0, 0, "holds no readings");
  expect_error(header, 0, 0, "a header and no readings");
  expect_error(header + "0,1800\n", 0, 0, "one reading is no log");
}

TEST(LeakReadings, MustBeText) {
  expect_error(header + std::string("0,1800\n1\0,1\n", 12), 3, 2, "control character");
  expect_error(header + "0,1800\n10,\xFF\xFE\n", 3, 4, "not UTF-8");
  expect_error("time_s,altitude_ft\r0,1800\r", 1, 19, "lines must end in LF or CR LF");
}

TEST(LeakReadings, CountColumnsInCharacters) {
  expect_error(header + "0,1800\n\xC3\xA9\xC3\xA9,x\n", 3, 1, "expected a plain number");
  expect_error("time_s,\xC3\xA9\xC3\xA9,x\n", 1, 8, "expected the header");
}

TEST(LeakReadings, ShowTheLineThatIsWrong) {
  const std::vector<Diagnostic> errors = errors_in(header + "0,1800\r\n10,abc\r\n");
  ASSERT_EQ(errors.size(), 1u);
  EXPECT_EQ(errors[0].source_line, "10,abc");
}

TEST(LeakReadings, ReportEveryFault) {
  const std::vector<Diagnostic> errors = errors_in(header + "0,3\n1,b\nx,3\n2,4\n2,4\n3\n");
  ASSERT_EQ(errors.size(), 4u);
  for (const Diagnostic& error : errors)
    EXPECT_EQ(error.message.find("more row"), std::string::npos) << error.message;
}

TEST(LeakReadings, ReportAColumnThatIsWrongOnceWithACount) {
  std::string many = header;
  for (int i = 0; i < 100; ++i) many += std::to_string(i) + ",x\n";
  const std::vector<Diagnostic> errors = errors_in(many);
  ASSERT_EQ(errors.size(), 1u);
  EXPECT_EQ(errors[0].where.line, 2);
  EXPECT_TRUE(errors[0].message.ends_with("; 99 more rows have the same fault"))
      << errors[0].message;
  EXPECT_TRUE(
      errors_in(header + "0,a\n1,b\n").at(0).message.ends_with("; 1 more row has the same fault"));
}

TEST(LeakReadings, ThatAreHugeAreRefused) {
  std::string text = header;
  for (std::size_t i = 0; i <= most_log_rows; ++i) text += std::to_string(i) + ",1800\n";
  const std::vector<Diagnostic> errors = errors_in(text);
  ASSERT_EQ(errors.size(), 1u);
  EXPECT_NE(errors[0].message.find("more than 20000 readings"), std::string::npos);
  text.resize(text.find_last_of('\n', text.size() - 2) + 1);
  EXPECT_EQ(read(text).rows.size(), most_log_rows);
}

TEST(LeakReadings, OfLongLinesAreRefusedWithoutHarm) {
  const std::string text = header + std::string(1 << 20, ',') + "\n";
  EXPECT_EQ(errors_in(text).size(), 1u);
  EXPECT_EQ(errors_in(header + std::string(1 << 20, '9') + ",1\n").size(), 1u);
}

}  // namespace
}  // namespace linewright
