#include "render/walk_round_csv.hpp"

#include <optional>

#include "render/amount.hpp"
#include "render/cutlist_csv.hpp"
#include "render/report.hpp"

namespace linewright {

namespace {

std::string row(const std::vector<std::string>& fields) {
  std::string line;
  for (const std::string& field : fields) {
    if (&field != &fields.front()) line += ',';
    line += csv_field(field);
  }
  return line + "\n";
}

std::string quantity(const std::optional<double>& value, Unit of, LengthUnit unit) {
  if (!value) return {};
  // A limit is no place to be found with a tape: it keeps its decimals.
  return of == Unit::inch ? sheet_length(*value, Phrasing{unit}.decimals().unit)
                          : fixed_number(*value, 3);
}

/// What was measured: a number, or the three of a place.
std::string measured_words(const WalkItem& item, LengthUnit unit) {
  if (!item.found) return quantity(item.measured, item.unit, unit);
  return sheet_length(item.found->x, unit) + " " + sheet_length(item.found->y, unit) + " " +
         sheet_length(item.found->z, unit);
}

std::string item_row(const WalkSheet& sheet, const WalkItem& item, LengthUnit unit) {
  const bool metric_length = item.unit == Unit::inch && unit == LengthUnit::millimetre;
  return row({sheet.route->route->name, sheet_length(item.distance_in, unit),
              sheet_length(item.at.x, unit), sheet_length(item.at.y, unit),
              sheet_length(item.at.z, unit), std::string(walk_word(item.kind)), item.rule,
              item.what, quantity(item.drawn, item.unit, unit),
              quantity(item.limit, item.unit, unit),
              item.limit ? std::string(sense_word(item.sense)) : "",
              metric_length ? "mm" : std::string(unit_word(item.unit)),
              item.verdict ? std::string(verdict_word(*item.verdict)) : "",
              measured_words(item, unit), item.on, item.by});
}

}  // namespace

std::string walk_round_csv(const std::vector<WalkSheet>& sheets, LengthUnit unit) {
  const std::string length = unit == LengthUnit::millimetre ? "_mm" : "_in";
  std::string text =
      row({"route", "distance" + length, "fs" + length, "bl" + length, "wl" + length, "kind",
           "rule", "what", "drawn", "limit", "sense", "unit", "verdict", "measured", "on", "by"});
  for (const WalkSheet& sheet : sheets)
    for (const WalkItem& item : sheet.items) text += item_row(sheet, item, unit);
  return text;
}

}  // namespace linewright
