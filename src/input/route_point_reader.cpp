#include "input/route_point_reader.hpp"

#include <fmt/format.h>

#include <cmath>

#include "input/field_reader.hpp"

namespace linewright {

namespace {

constexpr std::array holds{
    Choice<HoldKind>{"clamp", HoldKind::clamp}, Choice<HoldKind>{"grommet", HoldKind::grommet},
    Choice<HoldKind>{"bushing", HoldKind::bushing},
    Choice<HoldKind>{"fairlead", HoldKind::fairlead}, Choice<HoldKind>{"pulley", HoldKind::pulley}};

constexpr std::array givens{Choice<PointGiven>{"corner", PointGiven::corner},
                            Choice<PointGiven>{"centre", PointGiven::centre}};

/// How a line goes through a fairlead.
enum class Passing { guided, free };

constexpr std::array passings{Choice<Passing>{"guided", Passing::guided},
                              Choice<Passing>{"free", Passing::free}};

constexpr NumberSpec diameter{"a groove diameter", Dimension::length, Sign::positive,
                              largest_groove_in};
constexpr NumberSpec bore{"a bore"};
constexpr NumberSpec guard_count{"a number of guards", Dimension::plain, Sign::not_negative, 64,
                                 ""};
constexpr NumberSpec pulley_outside{"a pulley's diameter", Dimension::length, Sign::positive,
                                    largest_groove_in};
constexpr NumberSpec pulley_width{"a pulley's width"};
constexpr NumberSpec guard_gap{"a gap", Dimension::length, Sign::not_negative};

void check_pulley_keys(const RoutePoint& point, FieldReader& fields, ReadContext& context) {
  if (!fields.has("diameter"))
    context.error(point.where, "a pulley needs 'diameter': that of its groove");
  if (point.outside_in && point.diameter_in && *point.outside_in <= *point.diameter_in)
    context.error(fields.where_of("outside"),
                  "'outside' is the diameter over the flanges: it must be larger than 'diameter', "
                  "that of the groove");
  if (fields.has("guard_gap") && point.guards.value_or(0) == 0)
    context.error(fields.where_of("guard_gap"),
                  "'guard_gap' needs 'guards': how many pins stand at the pulley");
  if (point.given != PointGiven::centre) return;
  if (!fields.has("axis"))
    context.error(point.where,
                  "a pulley given by its centre needs 'axis': the cable turns about it by the "
                  "right-hand rule");
  if (fields.has("bend"))
    context.error(fields.where_of("bend"),
                  "the diameter of a pulley given by its centre says how the cable bends: leave "
                  "out 'bend'");
}

/// What only one kind of support can have. A key that would be passed over is an error.
void check_support_keys(const RoutePoint& point, FieldReader& fields, ReadContext& context) {
  const bool pulley = point.hold == HoldKind::pulley;
  const bool bored = point.hold == HoldKind::fairlead || point.hold == HoldKind::grommet ||
                     point.hold == HoldKind::bushing;
  if (pulley) check_pulley_keys(point, fields, context);
  for (const char* key : {"diameter", "axis", "given", "guards", "guard_gap", "outside", "width"})
    if (!pulley && fields.has(key))
      context.error(fields.where_of(key), fmt::format("'{}' belongs to a pulley", key));
  if (!bored && fields.has("bore"))
    context.error(fields.where_of("bore"), "'bore' belongs to a fairlead, a grommet or a bushing");
  if (point.hold != HoldKind::fairlead && fields.has("passes"))
    context.error(fields.where_of("passes"), "'passes' belongs to a fairlead");
  if (!fields.has("hold") && fields.has("to"))
    context.error(fields.where_of("to"),
                  "'to' says what a support is fixed to: 'hold' must say which support");
}

void check_free_fairlead(const RoutePoint& point, const Route& route, FieldReader& fields,
                         ReadContext& context) {
  if (!route.system_name.empty() && route.system != SystemKind::cable)
    context.error(fields.where_of("passes"), "'passes: free' belongs to a route of system cable");
  if (!fields.has("bore"))
    context.error(point.where, "a fairlead that the cable passes free needs 'bore'");
  if (fields.has("bend"))
    context.error(fields.where_of("bend"),
                  "a fairlead that the cable passes free does not bend it: leave out 'bend'");
}

std::optional<int> read_guards(FieldReader& fields, ReadContext& context) {
  const std::optional<double> count = fields.optional_number("guards", guard_count);
  if (!count || !std::isfinite(*count)) return std::nullopt;
  if (*count != std::floor(*count))
    context.error(fields.where_of("guards"), "a number of guards must be a whole number");
  return static_cast<int>(*count);
}

}  // namespace

void read_route_point(const YamlNode& node, Route& route, ReadContext& context) {
  FieldReader fields(node, "a point", context,
                     {"at", "bend", "hold", "to", "through", "diameter", "axis", "given", "bore",
                      "guards", "guard_gap", "outside", "width", "passes"});
  RoutePoint point;
  point.where = node.where;
  point.at = fields.place("at");
  point.bend_in = fields.optional_number("bend", {"a bend radius"});
  point.hold = fields.optional_choice("hold", "a hold", holds);
  point.to = fields.optional_use_name("to", Named::part);
  point.through = fields.optional_use_name("through", Named::hole);
  point.diameter_in = fields.optional_number("diameter", diameter);
  if (fields.has("axis")) point.axis = fields.direction("axis");
  point.given =
      fields.optional_choice("given", "how a pulley is given", givens).value_or(PointGiven::corner);
  point.bore_in = fields.optional_number("bore", bore);
  point.guards = read_guards(fields, context);
  point.outside_in = fields.optional_number("outside", pulley_outside);
  point.width_in = fields.optional_number("width", pulley_width);
  point.guard_gap_in = fields.optional_number("guard_gap", guard_gap);
  const Passing passing =
      fields.optional_choice("passes", "how the cable passes a fairlead", passings)
          .value_or(Passing::guided);
  if (point.hold || !fields.has("hold")) check_support_keys(point, fields, context);
  if (passing == Passing::guided || point.hold != HoldKind::fairlead) {
    route.points.push_back(std::move(point));
    return;
  }
  check_free_fairlead(point, route, fields, context);
  route.free_fairleads.push_back({std::move(point), static_cast<int>(route.points.size())});
}

}  // namespace linewright
