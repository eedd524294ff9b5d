#include "input/built_reader.hpp"

#include <chrono>
#include <string_view>

#include "input/keys/built_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

namespace {

using BuiltReader = MapReader<built_map>;

/// The digits as a number; -1 where anything else stands among them.
int number_of(std::string_view digits) {
  int number = 0;
  for (const char digit : digits) {
    if (digit < '0' || digit > '9') return -1;
    number = 10 * number + (digit - '0');
  }
  return number;
}

/// True for a day of the calendar, written year, month, day.
bool is_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
  const int year = number_of(text.substr(0, 4));
  const int month = number_of(text.substr(5, 2));
  const int day = number_of(text.substr(8, 2));
  if (year < 0 || month < 0 || day < 0) return false;
  return std::chrono::year_month_day(std::chrono::year(year),
                                     std::chrono::month(static_cast<unsigned>(month)),
                                     std::chrono::day(static_cast<unsigned>(day)))
      .ok();
}

void check_keys(const BuiltReader& fields, const YamlNode& node, ReadContext& context) {
  if (node.kind != YamlNode::Kind::map) return;
  if (fields.has("support") == fields.has("distance"))
    context.error(node.where,
                  "a measure needs either 'support' or 'distance': what of the line "
                  "was measured");
  const int measured = fields.has("at") + fields.has("fs") + fields.has("gap");
  if (measured != 1)
    context.error(node.where, "a measure needs one of 'at', 'fs' and 'gap': what was measured");
  if (fields.has("fs") && fields.has("distance"))
    context.error(fields.where_of("fs"),
                  "'fs' says where a support sits along the line: it needs 'support'",
                  "state the whole place: at: [FS, BL, WL]");
  if (fields.has("to") && !fields.has("gap"))
    context.error(fields.where_of("to"), "'to' says what a gap was measured to: it needs 'gap'");
}

}  // namespace

void read_measurement(const YamlNode& node, ReadContext& context) {
  BuiltReader fields(node, context);
  Measurement measured;
  measured.where = node.where;
  measured.route = fields.name("route", context.draft);
  measured.support = fields.optional_text("support");
  measured.distance_in = fields.optional_number("distance");
  measured.at = fields.optional_place("at");
  measured.fs_in = fields.optional_number("fs");
  measured.gap_in = fields.optional_number("gap");
  measured.to = fields.optional_text("to");
  check_keys(fields, node, context);
  measured.on = fields.text("on");
  if (!measured.on.empty() && !is_date(measured.on))
    context.error(
        fields.where_of("on"),
        "expected a day of the calendar, such as 2026-11-20, found " + quoted_text(measured.on));
  measured.by = fields.text("by");
  context.draft.project.built.push_back(std::move(measured));
}

}  // namespace linewright
