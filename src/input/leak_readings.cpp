#include "input/leak_readings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string_view>

#include "input/blanks.hpp"
#include "input/quantity.hpp"
#include "input/suggest_name.hpp"
#include "input/utf8.hpp"

namespace linewright {
namespace {

constexpr std::size_t most_reading_errors = 20;
constexpr std::size_t longest_shown = 60;
constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// What a column may hold, and how far it may move from one row to the next.
struct Column {
  std::string_view name;
  std::string_view what;
  std::string_view unit;
  double least;
  double most;
  double largest_jump;
};

constexpr Column time_column{"time_s", "a time", "s", 0, 1e6, 0};
constexpr Column altitude_column{"altitude_ft", "an altitude", "ft",
                                 -5'000,        35'000,        largest_altitude_jump_ft};
constexpr Column airspeed_column{"airspeed_kt", "an airspeed",           "kt", 0,
                                 600,           largest_airspeed_jump_kt};
constexpr Column temperature_column{"temperature_degF",           "a temperature", "degF", -80, 180,
                                    largest_temperature_jump_degf};

/// A field of a line, without the blanks around it.
struct Field {
  std::string_view text;
  int column = 1;  ///< of its first character, counted from one
};

/// The fields of a line, at most `most` and whatever comes after them as one more.
std::vector<Field> split(std::string_view line, std::size_t most) {
  std::vector<Field> fields;
  for (std::size_t start = 0; start <= line.size();) {
    const std::size_t comma = fields.size() < most ? line.find(',', start) : line.npos;
    const std::size_t end = std::min(comma, line.size());
    const std::string_view text = without_blanks(line.substr(start, end - start));
    const auto before = static_cast<std::size_t>(text.data() - line.data());
    fields.push_back({text, static_cast<int>(character_count(line.substr(0, before))) + 1});
    start = end + 1;
  }
  return fields;
}

/// One unit in the last place of a number: 0.01 for "70.25", 10 for "1e1".
double last_place(std::string_view number) {
  const std::size_t exponent_at = number.find_first_of("eE");
  const std::string_view mantissa = number.substr(0, exponent_at);
  const std::size_t point = mantissa.find('.');
  const auto decimals =
      point == std::string_view::npos ? 0 : static_cast<double>(mantissa.size() - point - 1);
  double exponent = 0;
  if (exponent_at != std::string_view::npos)
    exponent = read_quantity(number.substr(exponent_at + 1), Dimension::plain, BareLength::inch)
                   .value_or(0);
  return std::pow(10.0, exponent - decimals);
}

class LogReader {
 public:
  LogReader(std::string file, LoggedQuantity quantity)
      : file_(std::move(file)),
        known_{time_column,
               quantity == LoggedQuantity::altitude_ft ? altitude_column : airspeed_column,
               temperature_column} {}

  Expected<LeakLog, std::vector<Diagnostic>> read(std::string_view text) {
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    for (std::size_t start = 0; start < text.size() && errors_.size() < most_reading_errors;) {
      const std::size_t end = std::min(text.find('\n', start), text.size());
      ++line_number_;
      line_ = text.substr(start, end - start);
      if (line_.ends_with('\r')) line_.remove_suffix(1);
      if (!read_line()) break;
      start = end + 1;
    }
    if (errors_.empty()) check_whole();
    if (!errors_.empty()) return counted_errors();
    log_.has_temperature = columns_.size() == 3;
    log_.reading_step = reading_step_;
    log_.temperature_step_degf = temperature_step_;
    return log_;
  }

 private:
  void error(int column, std::string message, std::string suggestion = {}) {
    errors_.push_back({{file_, line_number_, column},
                       std::move(message),
                       std::move(suggestion),
                       std::string(line_)});
    repeated_.push_back(0);
  }

  /// An error that a whole column can have: the first stands for those of the same kind, which are
  /// counted.
  void row_error(std::string kind, int column, std::string message, std::string suggestion = {}) {
    const auto [first, is_new] = first_of_kind_.try_emplace(std::move(kind), errors_.size());
    if (is_new)
      error(column, std::move(message), std::move(suggestion));
    else
      ++repeated_[first->second];
  }

  std::vector<Diagnostic> counted_errors() {
    for (std::size_t i = 0; i < errors_.size(); ++i)
      if (repeated_[i] > 0)
        errors_[i].message += fmt::format("; {} more {} the same fault", repeated_[i],
                                          repeated_[i] == 1 ? "row has" : "rows have");
    return errors_;
  }

  /// False where nothing after this line can make sense.
  bool read_line() {
    if (!is_text()) return false;
    const std::string_view content = without_blanks(line_);
    if (content.empty() || content.starts_with('#')) return true;
    if (columns_.empty()) return read_header();
    if (log_.rows.size() == most_log_rows) {
      error(0,
            fmt::format("more than {} readings; one every few seconds is enough", most_log_rows));
      return false;
    }
    read_row();
    return true;
  }

  bool is_text() {
    for (std::size_t offset = 0; offset < line_.size();) {
      const std::size_t length = utf8_length(line_, offset);
      const bool control =
          length > 0 && line_[offset] != '\t' && is_control_character(line_, offset, length);
      if (length == 0 || control) {
        error(static_cast<int>(character_count(line_.substr(0, offset))) + 1,
              length == 0 ? "not text: a byte that is not UTF-8"
                          : "not text: a control character; lines must end in LF or CR LF");
        return false;
      }
      offset += length;
    }
    return true;
  }

  bool read_header() {
    const std::string expected = fmt::format("{},{} or {},{},{}", known_[0].name, known_[1].name,
                                             known_[0].name, known_[1].name, known_[2].name);
    const std::vector<Field> fields = split(line_, known_.size());
    for (std::size_t i = 0; i < fields.size(); ++i) {
      if (i >= known_.size()) {
        error(fields[i].column, fmt::format("a column too many: '{}'; expected the header {}",
                                            printable(fields[i].text, longest_shown), expected));
        return false;
      }
      if (fields[i].text == known_[i].name) continue;
      error(fields[i].column,
            fmt::format("expected the header {}, found '{}'", expected,
                        printable(fields[i].text, longest_shown)),
            suggest_name(fields[i].text, {std::string(known_[i].name)}));
      return false;
    }
    if (fields.size() < 2) {
      error(static_cast<int>(character_count(line_)) + 1,
            fmt::format("the column {} is missing: expected the header {}", known_[1].name,
                        expected));
      return false;
    }
    columns_.assign(known_.begin(), known_.begin() + static_cast<std::ptrdiff_t>(fields.size()));
    return true;
  }

  void read_row() {
    const std::vector<Field> fields = split(line_, columns_.size());
    if (fields.size() != columns_.size()) {
      const bool many = fields.size() > columns_.size();
      const int column =
          many ? fields[columns_.size()].column : static_cast<int>(character_count(line_)) + 1;
      row_error(many ? "many" : "few", column,
                fmt::format("expected {} values, found {}", columns_.size(),
                            many ? "more" : std::to_string(fields.size())),
                many ? "commas part the columns: write decimals with a point"
                     : "commas part the columns, and every row has all of them");
      return;
    }
    std::vector<double> values;
    for (std::size_t i = 0; i < fields.size(); ++i) {
      const auto value = read_value(fields[i], columns_[i]);
      if (!value) return;
      values.push_back(*value);
    }
    note_steps(fields);
    const LogRow row{values[0], values[1], values.size() > 2 ? values[2] : 0, line_number_};
    if (!log_.rows.empty()) check_follows(row, log_.rows.back(), fields);
    log_.rows.push_back(row);
  }

  static std::string kind(std::string_view fault, const Column& column) {
    return fmt::format("{} {}", fault, column.name);
  }

  std::optional<double> read_value(const Field& field, const Column& column) {
    if (field.text.empty()) {
      row_error(kind("missing", column), field.column, fmt::format("{} is missing", column.what));
      return std::nullopt;
    }
    const auto value = read_quantity(field.text, Dimension::plain, BareLength::inch);
    if (!value) {
      row_error(kind("unread", column), field.column,
                fmt::format("{}: {}", column.name, value.error()));
      return std::nullopt;
    }
    if (*value < column.least || *value > column.most) {
      row_error(kind("range", column), field.column,
                fmt::format("{} must lie between {} and {} {}, found {}", column.what, column.least,
                            column.most, column.unit, printable(field.text, longest_shown)));
      return std::nullopt;
    }
    return *value;
  }

  void check_follows(const LogRow& row, const LogRow& before, const std::vector<Field>& fields) {
    if (row.time_s == before.time_s)
      row_error("repeats", fields[0].column, fmt::format("the time {} s repeats", row.time_s));
    else if (row.time_s < before.time_s)
      row_error("goes back", fields[0].column,
                fmt::format("the time goes back from {} to {} s", before.time_s, row.time_s));
    else if (jumps(row.reading, before.reading, 1, fields) || columns_.size() < 3)
      return;
    else
      jumps(row.temperature_degf, before.temperature_degf, 2, fields);
  }

  bool jumps(double value, double before, std::size_t index, const std::vector<Field>& fields) {
    const Column& column = columns_[index];
    if (std::abs(value - before) <= column.largest_jump) return false;
    row_error(kind("jump", column), fields[index].column,
              fmt::format("{} cannot jump from {} to {} {} between two readings", column.what,
                          before, value, column.unit));
    return true;
  }

  void note_steps(const std::vector<Field>& fields) {
    reading_step_ = std::min(reading_step_, last_place(fields[1].text));
    if (fields.size() > 2)
      temperature_step_ = std::min(temperature_step_, last_place(fields[2].text));
  }

  void check_whole() {
    line_ = {};
    line_number_ = 0;
    if (columns_.empty())
      error(0, "the file holds no readings");
    else if (log_.rows.empty())
      error(0, "the file has a header and no readings");
    else if (log_.rows.size() == 1)
      error(0, "one reading is no log: a leak shows between two or more");
  }

  std::string file_;
  std::vector<Column> known_;
  std::vector<Column> columns_;
  std::string_view line_;
  int line_number_ = 0;
  double reading_step_ = 1;
  double temperature_step_ = 1;
  LeakLog log_;
  std::vector<Diagnostic> errors_;
  std::vector<std::size_t> repeated_;  ///< of each error: how many more rows have it
  std::map<std::string, std::size_t> first_of_kind_;
};

}  // namespace

Expected<LeakLog, std::vector<Diagnostic>> read_leak_log(const std::string& bytes,
                                                         const std::string& shown_name,
                                                         LoggedQuantity quantity) {
  return LogReader(shown_name, quantity).read(bytes);
}

}  // namespace linewright
