#include "input/tape.hpp"

#include <optional>
#include <system_error>

#include "system/decimal.hpp"

namespace linewright {
namespace {

constexpr std::string_view not_one_number = ": it is not one number";
constexpr std::string_view no_tape_length =
    ": write a length as 10 3/8 in, or as 5 ft 2 1/4 in with feet";
/// Far more than any length that may be written, and exact in a double.
constexpr std::size_t most_digits = 12;

bool is_blank(char letter) {
  return letter == ' ' || letter == '\t';
}

/// What is left of the text, from which one part after another is taken.
class Tape {
 public:
  explicit Tape(std::string_view text) : rest_(text) {}

  bool ended() const { return rest_.empty(); }
  bool at(char letter) const { return rest_.starts_with(letter); }
  bool at_digit() const { return !rest_.empty() && is_digit(rest_[0]); }
  bool at_blank() const { return !rest_.empty() && is_blank(rest_[0]); }

  bool take(std::string_view word) {
    if (!rest_.starts_with(word)) return false;
    rest_.remove_prefix(word.size());
    return true;
  }

  void skip_blanks() {
    while (at_blank()) rest_.remove_prefix(1);
  }

  std::string_view digits() {
    std::size_t length = 0;
    while (length < rest_.size() && is_digit(rest_[length])) ++length;
    const std::string_view taken = rest_.substr(0, length);
    rest_.remove_prefix(length);
    return taken;
  }

 private:
  std::string_view rest_;
};

/// A number, and how it was written.
struct TapeNumber {
  enum class Form { whole, decimal, fraction };
  Form form = Form::whole;
  double value = 0;
};

Expected<double, std::string> whole_number(std::string_view digits) {
  if (digits.size() > 1 && digits[0] == '0')
    return std::string(": a leading zero may mean octal; leave it out");
  if (digits.size() > most_digits) return std::string(": the number is out of range");
  double value = 0;
  read_decimal(digits, value);
  return value;
}

bool halves_an_inch(double denominator) {
  for (const double each : {2, 4, 8, 16, 32, 64})
    if (denominator == each) return true;
  return false;
}

/// The part of an inch whose upper number is `upper` and whose stroke is taken.
Expected<double, std::string> part_of_inch(std::string_view upper, Tape& tape) {
  const auto numerator = whole_number(upper);
  if (!numerator) return numerator.error();
  if (!tape.at_digit())
    return std::string(": a fraction is written as 3/8, with nothing between its numbers");
  const auto denominator = whole_number(tape.digits());
  if (!denominator) return denominator.error();
  if (tape.at('/')) return std::string(": a fraction has one stroke");
  if (tape.at('.')) return std::string(not_one_number);
  if (!halves_an_inch(*denominator))
    return std::string(": parts of an inch are 2nds, 4ths, 8ths, 16ths, 32nds or 64ths");
  if (*numerator == 0) return std::string(": leave out a fraction of nothing");
  return *numerator / *denominator;
}

/// What follows the whole number before a decimal point that is taken.
Expected<TapeNumber, std::string> with_decimals(double whole, Tape& tape) {
  const std::string_view decimals = tape.digits();
  if (decimals.size() > most_digits) return std::string(": the number is out of range");
  double tenths = 0;
  const std::string written = "0." + std::string(decimals) + "0";
  read_decimal(written, tenths);
  Tape after = tape;
  after.skip_blanks();
  if (tape.at('/') || after.at_digit() || tape.at('-'))
    return std::string(": a whole number stands before a fraction");
  return TapeNumber{TapeNumber::Form::decimal, whole + tenths};
}

/// 11/2 is as likely 1 1/2 with its blank left out as it is 5 1/2: a tape shows no such fraction.
constexpr std::string_view improper_fraction =
    ": a fraction must be less than one; write the whole number before it, as in 1 3/8";

/// "10", "10.5", "3/8", "10 3/8", "10-3/8".
Expected<TapeNumber, std::string> tape_number(Tape& tape) {
  if (!tape.at_digit() && !tape.at('.')) return std::string(no_tape_length);
  const std::string_view digits = tape.digits();
  if (digits.empty() && (tape.take("."), !tape.at_digit())) return std::string(no_tape_length);
  if (digits.empty()) return with_decimals(0, tape);
  if (tape.take("/")) {
    const auto part = part_of_inch(digits, tape);
    if (!part) return part.error();
    if (*part >= 1) return std::string(improper_fraction);
    return TapeNumber{TapeNumber::Form::fraction, *part};
  }
  const auto whole = whole_number(digits);
  if (!whole) return whole.error();
  if (tape.take(".")) return with_decimals(*whole, tape);

  Tape after = tape;
  if (!after.take("-")) after.skip_blanks();
  if (!after.at_digit()) return TapeNumber{TapeNumber::Form::whole, *whole};
  const std::string_view upper = after.digits();
  if (!after.take("/")) return std::string(not_one_number);
  const auto part = part_of_inch(upper, after);
  if (!part) return part.error();
  if (*part >= 1) return std::string(": after a whole number a fraction must be less than one");
  tape = after;
  return TapeNumber{TapeNumber::Form::fraction, *whole + *part};
}

/// Takes the mark or word of inches, and nothing may follow.
std::optional<std::string> fault_after_inches(Tape& tape) {
  tape.skip_blanks();
  if (tape.take("''")) return ": the mark of inches is \", or write in";
  if (!tape.take("\"") && !tape.take("in")) return std::string(no_tape_length);
  tape.skip_blanks();
  if (!tape.ended()) return std::string(no_tape_length);
  return std::nullopt;
}

/// The inches after feet: "2", "-2 1/4 in", "" for none.
Expected<double, std::string> inches_after_feet(const TapeNumber& feet, Tape& tape) {
  const bool tied = tape.take("-");
  tape.skip_blanks();
  if (tape.ended() && !tied) return 0.0;
  if (feet.form != TapeNumber::Form::whole)
    return std::string(": feet before inches are a whole number");
  const auto inches = tape_number(tape);
  if (!inches) return inches.error();
  tape.skip_blanks();
  if (tape.ended()) return std::string(": inches after feet need their mark \", or in");
  if (auto fault = fault_after_inches(tape)) return *std::move(fault);
  if (inches->value >= 12) return std::string(": inches after feet are less than 12");
  return inches->value;
}

/// Inches of a text without its sign.
Expected<double, std::string> read_unsigned(Tape tape, BareLength bare) {
  const auto first = tape_number(tape);
  if (!first) return first.error();
  const bool fraction = first->form == TapeNumber::Form::fraction;
  tape.skip_blanks();
  if (tape.ended()) {
    if (bare == BareLength::millimetre)
      return std::string(": a fraction is of inches; add in, for bare lengths are in mm here");
    return first->value;
  }
  Tape inches = tape;
  const bool two_marks = inches.take("''");
  if (!two_marks && (tape.take("'") || tape.take("ft"))) {
    if (fraction) return std::string(": a fraction is of inches, not of feet");
    const auto rest = inches_after_feet(*first, tape);
    if (!rest) return rest.error();
    return first->value * 12 + *rest;
  }
  for (const std::string_view metric : {"mm", "cm", "m"}) {
    Tape other = tape;
    if (other.take(metric) && other.ended())
      return std::string(": a fraction is of inches; write other units as a decimal");
  }
  if (auto fault = fault_after_inches(tape)) return *std::move(fault);
  return first->value;
}

/// True where inches stand after "ft".
bool inches_follow_feet(std::string_view text) {
  const std::size_t feet = text.find("ft");
  if (feet == std::string_view::npos) return false;
  const std::size_t next = text.find_first_not_of(" \t-", feet + 2);
  return next != std::string_view::npos && is_digit(text[next]);
}

/// True where a stroke follows a number. A unit may have a stroke of its own: "lb/100ft".
bool has_fraction(std::string_view text) {
  for (std::size_t i = text.find('/'); i != std::string_view::npos; i = text.find('/', i + 1)) {
    std::size_t before = i;
    while (before > 0 && is_blank(text[before - 1])) --before;
    if (before > 0 && is_digit(text[before - 1])) return true;
  }
  return false;
}

}  // namespace

bool is_tape(std::string_view text) {
  return text.find_first_of("'\"") != std::string_view::npos || has_fraction(text) ||
         inches_follow_feet(text);
}

Expected<double, std::string> read_tape(std::string_view text, BareLength bare) {
  Tape tape(text);
  const bool negative = tape.take("-");
  if (!negative) tape.take("+");
  const auto inches = read_unsigned(tape, bare);
  if (!inches) return inches.error();
  return negative ? -*inches : *inches;
}

}  // namespace linewright
