#include "render/cutlist_csv.hpp"

#include <algorithm>
#include <optional>
#include <system_error>

#include "model/units.hpp"
#include "render/amount.hpp"
#include "system/decimal.hpp"

namespace linewright {

namespace {

/// Turns inches and pounds into the columns' units, and writes numbers.
struct Columns {
  LengthUnit unit;

  bool metric() const { return unit == LengthUnit::millimetre; }
  std::string length(double inches) const { return sheet_length(inches, unit); }
  std::string optional_length(const std::optional<double>& inches) const {
    return inches ? length(*inches) : std::string();
  }
  std::string limit(const std::optional<double>& inches) const {
    if (!inches) return {};
    return sheet_length(*inches, Phrasing{unit}.decimals().unit);
  }
  std::string volume(double in3) const {
    return fixed_number(metric() ? in3 * cm3_per_in3 : in3, 4);
  }
  std::string mass(const std::optional<double>& pounds) const {
    if (!pounds) return {};
    return metric() ? fixed_number(*pounds * 453.59237, 2) : fixed_number(*pounds, 5);
  }
};

std::string angle(double degrees) {
  return fixed_number(degrees, 3);
}

/// A number may have a sign; anything else that begins so, a spreadsheet works out.
bool begins_formula(std::string_view text) {
  if (text.empty() || std::string_view("=+-@\t\r").find(text[0]) == std::string_view::npos)
    return false;
  const std::string_view unsigned_part = text.substr(text[0] == '-' || text[0] == '+' ? 1 : 0);
  double number = 0;
  const auto [end, error] = read_decimal(unsigned_part, number);
  return error != std::errc() || end != unsigned_part.data() + unsigned_part.size();
}

std::string row(const std::vector<std::string>& fields) {
  std::string line;
  for (const std::string& field : fields) {
    if (&field != &fields.front()) line += ',';
    line += csv_field(field);
  }
  return line + "\n";
}

std::string header(bool metric) {
  const std::string length = metric ? "_mm" : "_in";
  return row({"route",
              "system",
              "line",
              "from",
              "to",
              "length" + length,
              "cut_length" + length,
              metric ? "volume_cm3" : "volume_in3",
              metric ? "mass_g" : "mass_lb",
              "minimum_bend_radius" + length,
              "straight_after" + length,
              "bend",
              "fs" + length,
              "bl" + length,
              "wl" + length,
              "radius" + length,
              "angle_deg",
              "rotation_deg",
              "straight_before" + length,
              "distance" + length,
              "mark_start" + length,
              "mark_end" + length,
              "wire_length" + length});
}

std::vector<std::string> route_fields(const RouteReport& route, const Columns& columns) {
  const RouteCut& cut = route.cut;
  return {cut.name,
          cut.system,
          cut.line,
          route.from,
          route.to,
          columns.length(cut.length_in),
          columns.length(cut.cut_length_in),
          columns.volume(cut.volume_in3),
          columns.mass(cut.mass_lb),
          columns.limit(cut.minimum_bend_radius_in),
          columns.length(cut.straight_after_in)};
}

std::vector<std::string> bend_fields(std::size_t number, const BendStep& bend,
                                     const Columns& columns) {
  return {std::to_string(number),           columns.length(bend.at.x),
          columns.length(bend.at.y),        columns.length(bend.at.z),
          columns.length(bend.radius_in),   angle(bend.angle_deg),
          angle(bend.rotation_deg),         columns.length(bend.straight_before_in),
          columns.length(bend.distance_in), columns.length(bend.mark_start_in),
          columns.length(bend.mark_end_in)};
}

}  // namespace

std::string csv_field(std::string_view text) {
  if (begins_formula(text)) return csv_field("'" + std::string(text));
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(text);
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + "\"";
}

std::string cutlist_csv(const Report& report, LengthUnit unit) {
  constexpr std::size_t bend_columns = 11;
  const Columns columns{unit};
  std::string text = header(columns.metric());
  for (const RouteReport& route : report.routes) {
    const std::vector<std::string> fields = route_fields(route, columns);
    const std::vector<BendStep>& bends = route.cut.bends;
    for (std::size_t i = 0; i < std::max<std::size_t>(bends.size(), 1); ++i) {
      const std::vector<std::string> bend = bends.empty() ? std::vector<std::string>(bend_columns)
                                                          : bend_fields(i + 1, bends[i], columns);
      std::vector<std::string> all = fields;
      all.insert(all.end(), bend.begin(), bend.end());
      all.push_back(columns.optional_length(route.cut.wire_length_in));
      text += row(all);
    }
  }
  return text;
}

}  // namespace linewright
