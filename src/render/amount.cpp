#include "render/amount.hpp"

#include <fmt/format.h>

#include <cmath>

#include "model/units.hpp"
#include "rules/limit.hpp"

namespace linewright {

namespace {

constexpr double grams_per_pound = 453.59237;

/// For amounts that would print as nothing.
std::string fine_amount(double value, Unit unit, const Phrasing& phrasing) {
  if (unit == Unit::inch && phrasing.unit == LengthUnit::millimetre)
    return fmt::format("{:.2g} mm", value * mm_per_in);
  return fmt::format("{:.2g} {}", value, unit_word(unit));
}

/// The margin in words. Two amounts that print alike may still differ: that is said, not hidden.
std::string margin_words(double margin, const Judgement& judgement, const Phrasing& phrasing) {
  if (std::abs(margin) <= limit_rounding) return "exactly at the limit";
  std::string words = amount(std::abs(margin), judgement.unit, phrasing);
  if (words == amount(0, judgement.unit, phrasing))
    words = fine_amount(std::abs(margin), judgement.unit, phrasing);
  if (margin > 0) return words + " to spare";
  return (judgement.sense == LimitSense::at_least ? "short by " : "over by ") + words;
}

}  // namespace

std::string_view unit_word(Unit unit) {
  switch (unit) {
    case Unit::none:
      return "";
    case Unit::inch:
      return "in";
    case Unit::cubic_inch:
      return "in3";
    case Unit::degree:
      return "deg";
    case Unit::pound_force:
      return "lbf";
    case Unit::foot:
      return "ft";
    case Unit::second:
      return "s";
    case Unit::hertz:
      return "hz";
  }
  return "";
}

std::string_view sense_words(LimitSense sense) {
  return sense == LimitSense::at_least ? "at least" : "at most";
}

std::string_view sense_word(LimitSense sense) {
  return sense == LimitSense::at_least ? "at_least" : "at_most";
}

std::string_view mark_word(Mark mark) {
  switch (mark) {
    case Mark::verified:
      return "verified";
    case Mark::verified_secondary:
      return "verified-secondary";
    case Mark::from_memory:
      return "from-memory";
    case Mark::common_practice:
      return "common-practice";
    case Mark::calculated:
      return "calculated";
    case Mark::builder:
      return "builder";
  }
  return "from-memory";
}

std::string fixed_number(double value, int decimals) {
  if (std::round(value * std::pow(10.0, decimals)) == 0) value = 0;
  return fmt::format("{:.{}f}", value, decimals);
}

std::string bench_number(double inches, const Phrasing& phrasing) {
  switch (phrasing.unit) {
    case LengthUnit::millimetre:
      return fixed_number(inches * mm_per_in, 1);
    case LengthUnit::inch_fraction:
      return on_tape(inches);
    case LengthUnit::inch:
      break;
  }
  return fixed_number(inches, 2);
}

std::string bench_length(double inches, const Phrasing& phrasing) {
  return bench_number(inches, phrasing) + " " + phrasing.unit_name();
}

std::string sheet_length(double inches, LengthUnit unit) {
  switch (unit) {
    case LengthUnit::millimetre:
      return fixed_number(inches * mm_per_in, 3);
    case LengthUnit::inch_fraction: {
      const std::string length = on_tape(inches);
      if (length.find('/') == std::string::npos || length.find(' ') != std::string::npos)
        return length;
      return length.starts_with('-') ? "-0 " + length.substr(1) : "0 " + length;
    }
    case LengthUnit::inch:
      break;
  }
  return fixed_number(inches, 4);
}

std::string amount(double value, Unit unit, const Phrasing& phrasing, int more_decimals) {
  const auto fixed = [&](int decimals) { return fixed_number(value, decimals + more_decimals); };
  switch (unit) {
    case Unit::none:
      return value == std::floor(value) ? fixed_number(value, 0) : fixed(2);
    case Unit::inch:
      return phrasing.length(value, more_decimals);
    case Unit::cubic_inch:
      return volume(value, phrasing, more_decimals);
    case Unit::degree:
      return phrasing.angle(value, more_decimals);
    case Unit::pound_force:
      return fixed(1) + " lbf";
    case Unit::foot:
      return fixed(0) + " ft";
    case Unit::second:
      return fixed(2) + " s";
    case Unit::hertz:
      return fixed(1) + " Hz";
  }
  return fixed(2);
}

std::string volume(double cubic_inches, const Phrasing& phrasing, int more_decimals) {
  if (phrasing.unit == LengthUnit::millimetre)
    return fixed_number(cubic_inches * cm3_per_in3, 2 + more_decimals) + " cm3";
  return fixed_number(cubic_inches, 3 + more_decimals) + " in3";
}

std::string millilitres(double cubic_inches) {
  return fixed_number(cubic_inches * cm3_per_in3, 1) + " mL";
}

std::string mass(double pounds, const Phrasing& phrasing) {
  if (phrasing.unit == LengthUnit::millimetre)
    return fixed_number(pounds * grams_per_pound, 1) + " g";
  return fixed_number(pounds, 3) + " lb";
}

std::string by_how_much(const Judgement& judgement, const Phrasing& phrasing) {
  const std::string_view side = sense_words(judgement.sense);
  const auto words = [&](double value, int more_decimals = 0) {
    return amount(value, judgement.unit, phrasing, more_decimals);
  };
  if (judgement.value && judgement.limit) {
    const auto [value, limit] = told_apart(*judgement.value, *judgement.limit, words);
    return fmt::format("value {}, limit {} {}: {}", value, side, limit,
                       margin_words(*judgement.margin(), judgement, phrasing));
  }
  if (judgement.value) return "value " + words(*judgement.value);
  if (judgement.limit) return fmt::format("limit {} {}", side, words(*judgement.limit));
  return {};
}

}  // namespace linewright
