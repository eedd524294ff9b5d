#include "commands/leak_test_line.hpp"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <ctime>

#include "commands/known_name.hpp"
#include "input/quantity.hpp"
#include "physics/atmosphere.hpp"
#include "render/layout.hpp"
#include "render/time_of_day.hpp"
#include "system/path_text.hpp"

namespace linewright {

namespace {

constexpr double pascals_per_psi = 6894.757293168;

/// An option's value, the range it must lie in and how it is read.
struct NumberOption {
  std::string_view name;
  Dimension dimension;
  std::string_view unit;  ///< that a bare number is in, and the range
  double per_unit;        ///< the reader's unit in one of these
  double least;
  double most;
};

constexpr NumberOption elevation{"--field-elevation", Dimension::length, "ft", 12, -1'500, 18'000};
constexpr NumberOption setting{
    "--altimeter-setting", Dimension::pressure, "inHg", pascals_per_inhg / pascals_per_psi, 26, 33};
constexpr NumberOption temperature{"--temperature", Dimension::temperature, "degF", 1, -60, 150};
constexpr NumberOption drop{"--drop",        Dimension::pressure,
                            "inHg",          pascals_per_inhg / pascals_per_psi,
                            least_drop_inhg, most_drop_inhg};
constexpr NumberOption airspeed{"--airspeed",      Dimension::plain, "kt", 1,
                                least_airspeed_kt, most_airspeed_kt};
constexpr NumberOption syringe{"--syringe", Dimension::volume, "in3", 1, 0.01, 1'000};
constexpr NumberOption gauge_volume{"--gauge-volume", Dimension::volume, "in3", 1, 0, 1'000};

/// Takes the first thing that is wrong with the options.
class Reader {
 public:
  double number(const NumberOption& option, const std::string& text) {
    const auto bare = read_quantity(text, Dimension::plain, BareLength::inch);
    const auto whole = bare ? bare : read_quantity(text, option.dimension, BareLength::inch);
    if (!whole) {
      fault(fmt::format("{}: {}", option.name, whole.error()));
      return 0;
    }
    const double value = bare ? *bare : *whole / option.per_unit;
    // Slack for the rounding of a unit's conversion, so that a limit in another unit is within.
    const double slack = 1e-6 * std::abs(option.most);
    if (value < option.least - slack || value > option.most + slack)
      fault(fmt::format("{} must lie between {} and {} {}, not {}", option.name, option.least,
                        option.most, option.unit, one_line(text)));
    return value;
  }

  std::optional<double> number(const NumberOption& option, const std::optional<std::string>& text) {
    if (!text) return std::nullopt;
    return number(option, *text);
  }

  /// A small volume has no usual unit: one that is bare is as often mL as in3.
  std::optional<double> volume_in3(const NumberOption& option,
                                   const std::optional<std::string>& text) {
    if (text && read_quantity(*text, Dimension::plain, BareLength::inch))
      fault(fmt::format("{0} needs its unit: '{1} mL' or '{1} in3'", option.name, one_line(*text)));
    return number(option, text);
  }

  std::optional<double> airspeed_kt(std::optional<std::string> text) {
    if (text && text->ends_with("kt")) text->erase(text->size() - 2);
    return number(airspeed, text);
  }

  void fault(const std::string& what) {
    if (wrong_.empty()) wrong_ = what;
  }

  const std::string& wrong() const { return wrong_; }

 private:
  std::string wrong_;
};

/// The whole of `digits` as a number, or -1.
int whole_number(std::string_view digits) {
  int value = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  const bool whole = error == std::errc{} && end == digits.data() + digits.size();
  return whole && value >= 0 ? value : -1;
}

/// True for YYYY-MM-DD of a day that the calendar has.
bool is_date(const std::string& text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const std::string_view view = text;
  const int year = whole_number(view.substr(0, 4));
  const int month = whole_number(view.substr(5, 2));
  const int day = whole_number(view.substr(8, 2));
  if (year < 1900 || month < 1 || day < 1) return false;
  return std::chrono::year_month_day(std::chrono::year(year),
                                     std::chrono::month(static_cast<unsigned>(month)),
                                     std::chrono::day(static_cast<unsigned>(day)))
      .ok();
}

const std::vector<std::string>& actions() {
  static const std::vector<std::string> known = {"plan", "judge"};
  return known;
}

void check_action(const LeakTestWords& words, Reader& reader) {
  const std::string wrong = unknown_name("leak test", words.action, actions());
  if (!wrong.empty()) reader.fault(wrong + " (there are: plan, judge)");
  if (words.action == "judge" && !words.readings)
    reader.fault("leak-test judge needs --readings FILE");
  if (words.action == "plan" && (words.readings || words.record || words.date))
    reader.fault("--readings, --record and --date belong to leak-test judge");
  if (words.date && !words.record) reader.fault("--date belongs to --record");
  if (words.date && !is_date(*words.date))
    reader.fault(
        fmt::format("--date must be a day as YYYY-MM-DD, not '{}'", one_line(*words.date)));
  if (words.record && words.record->empty())
    reader.fault("the file of the record has an empty name");
}

bool is_option(const std::string& word) {
  return word.size() > 1 && word[0] == '-';
}

}  // namespace

std::string missing_action(const std::vector<std::string>& arguments) {
  const auto asks_for_help = [](const std::string& word) {
    return word == "-h" || word == "--help";
  };
  if (std::any_of(arguments.begin(), arguments.end(), asks_for_help)) return {};
  if (std::find_first_of(arguments.begin(), arguments.end(), actions().begin(), actions().end()) !=
      arguments.end())
    return {};
  // With two words before the options the first is an action, misspelt: that is said later.
  const auto first_option = std::find_if(arguments.begin(), arguments.end(), is_option);
  if (first_option - arguments.begin() > 1) return {};
  const std::string project =
      first_option == arguments.begin() ? "PROJECT" : one_line(arguments.front());
  return fmt::format(
      "leak-test needs to know what to do: 'leak-test plan {0}' or 'leak-test judge {0}'", project);
}

void declare_leak_test(CLI::App& app, Words& all) {
  LeakTestWords& words = all.leak_test;
  app.add_option("ACTION", words.action, "plan, or judge readings")->required()->type_name("");
  app.add_option("PROJECT", all.project, "project file, or folder with project.yaml")
      ->required()
      ->type_name("");
  app.add_option("--system", words.system, "name of the system, or its kind")
      ->required()
      ->type_name("NAME");
  app.add_option("--field-elevation", words.field_elevation, "of the hangar, in feet")
      ->required()
      ->type_name("FT");
  app.add_option("--altimeter-setting", words.altimeter_setting, "of the hour")
      ->required()
      ->type_name("INHG");
  app.add_option("--temperature", words.temperature, "of the air in the system")
      ->required()
      ->type_name("DEGF");
  app.add_option("--drop", words.drop, "static: suction instead of 1,000 ft")->type_name("INHG");
  app.add_option("--airspeed", words.airspeed, "pitot: instead of 150 kt")->type_name("KT");
  app.add_option("--syringe", words.syringe, "its size with unit: '60 mL'")->type_name("VOLUME");
  app.add_option("--at", words.at, "node with the test set")->type_name("NODE");
  app.add_option("--cap", words.caps, "test a part: nodes where its lines are capped")
      ->type_name("NODE");
  app.add_option("--gauge-volume", words.gauge_volume, "of the test set and hose: '9 in3'")
      ->type_name("VOLUME");
  app.add_option("--readings", words.readings, "judge: logged readings (CSV)")->type_name("FILE");
  app.add_option("--record", words.record, "judge: write a test record")->type_name("FILE");
  app.add_option("--date", words.date, "of the record, else today")->type_name("YYYY-MM-DD");
}

Expected<LeakTestOptions, std::string> read_leak_test(const Words& all, const ResultForm& form,
                                                      const std::string& today) {
  const LeakTestWords& words = all.leak_test;
  Reader reader;
  check_action(words, reader);
  LeakTestOptions options;
  options.project = path_of(all.project);
  options.system = words.system;
  options.setup.elevation_ft = reader.number(elevation, words.field_elevation);
  options.setup.altimeter_setting_inhg = reader.number(setting, words.altimeter_setting);
  options.setup.temperature_degf = reader.number(temperature, words.temperature);
  options.setup.drop_inhg = reader.number(drop, words.drop);
  options.setup.airspeed_kt = reader.airspeed_kt(words.airspeed);
  options.setup.syringe_in3 = reader.volume_in3(syringe, words.syringe);
  options.setup.gauge_volume_in3 = reader.volume_in3(gauge_volume, words.gauge_volume);
  options.at = words.at;
  options.caps = words.caps;
  if (words.readings) options.readings = path_of(*words.readings);
  if (words.record) options.record = {path_of(*words.record), words.date.value_or(today)};
  options.form = form;
  if (!reader.wrong().empty()) return reader.wrong();
  return options;
}

Outcome run_leak_test(const Words& words, const ResultForm& form) {
  const auto options = read_leak_test(words, form, date_of(std::time(nullptr)));
  if (!options) return refusal(options.error());
  return leak_test(*options);
}

}  // namespace linewright
