#include "input/route_point_reader.hpp"

#include <fmt/format.h>

#include <cmath>

#include "input/keys/route_keys.hpp"
#include "input/map_reader.hpp"

namespace linewright {

namespace {

using PointReader = MapReader<point_map>;

/// A bend written beside the groove's diameter may differ from its half by what rounding leaves.
constexpr double bend_rounding_in = 0.005;

/// The cable bends as the groove does: another `bend` would draw a pulley that is not there.
void check_groove_bend(const RoutePoint& point, PointReader& fields, ReadContext& context) {
  if (!point.bend_in || !point.diameter_in) return;
  const double groove_in = *point.diameter_in / 2;
  if (!(std::abs(*point.bend_in - groove_in) > bend_rounding_in)) return;
  context.error(fields.where_of("bend"),
                fmt::format("the cable bends as the pulley's groove does, {:.4g} in, half of its "
                            "'diameter': found {:.4g} in",
                            groove_in, *point.bend_in),
                "leave out 'bend'");
}

void check_pulley_keys(const RoutePoint& point, PointReader& fields, ReadContext& context) {
  if (fields.lacks("diameter"))
    context.error(point.where, "a pulley needs 'diameter': that of its groove");
  if (point.outside_in && point.diameter_in && *point.outside_in <= *point.diameter_in)
    context.error(fields.where_of("outside"),
                  "'outside' is the diameter over the flanges: it must be larger than 'diameter', "
                  "that of the groove");
  if (fields.has("guard_gap") && point.guards.value_or(0) == 0)
    context.error(fields.where_of("guard_gap"),
                  "'guard_gap' needs 'guards': how many pins stand at the pulley");
  if (point.given != PointGiven::centre) {
    check_groove_bend(point, fields, context);
    return;
  }
  if (fields.lacks("axis"))
    context.error(point.where,
                  "a pulley given by its centre needs 'axis': the cable turns about it by the "
                  "right-hand rule");
  if (fields.has("bend"))
    context.error(fields.where_of("bend"),
                  "the diameter of a pulley given by its centre says how the cable bends: leave "
                  "out 'bend'");
}

/// What only one kind of support can have. A key that would be passed over is an error.
void check_support_keys(const RoutePoint& point, PointReader& fields, ReadContext& context) {
  const bool pulley = point.hold == HoldKind::pulley;
  if (pulley) check_pulley_keys(point, fields, context);
  if (!pulley) fields.refuse_keys_of("a pulley");
  if (!point.is_bored_guide()) fields.refuse_keys_of("a fairlead, a grommet or a bushing");
  if (point.hold != HoldKind::fairlead) fields.refuse_keys_of("a fairlead");
  if (!fields.has("hold") && fields.has("to"))
    context.error(fields.where_of("to"),
                  "'to' says what a support is fixed to: 'hold' must say which support");
}

void check_free_fairlead(const RoutePoint& point, const Route& route, PointReader& fields,
                         ReadContext& context) {
  if (!route.system_name.empty() && route.system != SystemKind::cable)
    context.error(fields.where_of("passes"), "'passes: free' belongs to a route of system cable");
  if (fields.lacks("bore"))
    context.error(point.where, "a fairlead that the cable passes free needs 'bore'");
  if (fields.has("bend"))
    context.error(fields.where_of("bend"),
                  "a fairlead that the cable passes free does not bend it: leave out 'bend'");
}

std::optional<int> read_guards(PointReader& fields) {
  const std::optional<double> count = fields.optional_number("guards");
  if (!count || !std::isfinite(*count)) return std::nullopt;
  return static_cast<int>(*count);
}

}  // namespace

void read_route_point(const YamlNode& node, Route& route, ReadContext& context) {
  PointReader fields(node, context);
  RoutePoint point;
  point.where = node.where;
  point.at = fields.place("at");
  point.bend_in = fields.optional_number("bend");
  point.hold = fields.optional_word<hold_kinds>("hold");
  point.to = fields.optional_name("to", context.draft);
  point.through = fields.optional_name("through", context.draft);
  point.diameter_in = fields.optional_number("diameter");
  point.axis = fields.optional_direction("axis");
  point.given = fields.optional_word<pulley_givens>("given").value_or(PointGiven::corner);
  point.bore_in = fields.optional_number("bore");
  point.guards = read_guards(fields);
  point.guard_gap_in = fields.optional_number("guard_gap");
  point.outside_in = fields.optional_number("outside");
  point.width_in = fields.optional_number("width");
  const Passing passing = fields.optional_word<passings>("passes").value_or(Passing::guided);
  if (point.hold || !fields.has("hold")) check_support_keys(point, fields, context);
  if (passing == Passing::guided || point.hold != HoldKind::fairlead) {
    route.points.push_back(std::move(point));
    return;
  }
  check_free_fairlead(point, route, fields, context);
  route.free_fairleads.push_back({std::move(point), static_cast<int>(route.points.size())});
}

}  // namespace linewright
