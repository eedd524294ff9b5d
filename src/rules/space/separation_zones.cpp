#include "rules/space/separation_zones.hpp"

#include "lines/motion/sleeve_hold.hpp"
#include "rules/space/under_vent.hpp"

namespace linewright {

using namespace separation_rows;

namespace {

bool is(const PreparedRoute& route, LineKind kind) {
  return route.line->kind == kind;
}
bool is_tube(const PreparedRoute& route) {
  return !works_control(route.line->kind) && !is(route, LineKind::wire) &&
         !is(route, LineKind::conduit);
}

CountsPair everywhere() {
  return [](double, double) { return true; };
}

std::vector<SeparationZone> tube_and_cable(const PreparedRoute& first,
                                           const PreparedRoute& second) {
  const bool tube_first = is_tube(first);
  const PreparedRoute& tube = tube_first ? first : second;
  const auto supported = [&tube, tube_first](double a, double b) {
    return tube.to_nearest_support_in(tube_first ? a : b) <= at_support_in;
  };
  return {{&tube_to_cable_at_support, supported},
          {&tube_to_cable, [supported](double a, double b) { return !supported(a, b); }}};
}

std::vector<SeparationZone> wire_and_cable(const RuleContext& context, const PreparedRoute& first,
                                           const PreparedRoute& second) {
  const bool cable_first = is(first, LineKind::cable);
  const PreparedRoute& cable = cable_first ? first : second;
  const auto sleeved = [&sleeves = context.motion.sleeves[context.index_of(cable)], cable_first](
                           double a, double b) { return sleeves.guard(cable_first ? a : b); };
  return {{&wire_to_sleeved_cable, sleeved},
          {&wire_to_cable, [sleeved](double a, double b) { return !sleeved(a, b); }}};
}

/// What comes out of a casing lies at the very ends of its route.
std::vector<SeparationZone> beside_casing(const PreparedRoute& first, const PreparedRoute& second,
                                          bool any_wire, bool any_cable) {
  const auto at_end = [](const PreparedRoute& route, double along) {
    return is(route, LineKind::conduit) && (along <= 0 || along >= route.length_in());
  };
  const auto runs_out = [&first, &second, at_end](double a, double b) {
    return at_end(first, a) || at_end(second, b);
  };
  return {{any_cable ? &cable_to_cable : &line_to_casing,
           [runs_out](double a, double b) { return !runs_out(a, b); }},
          {any_wire ? &wire_to_run_out : &line_to_run_out, runs_out}};
}

}  // namespace

std::vector<SeparationZone> separation_zones(const RuleContext& context, const PreparedRoute& first,
                                             const PreparedRoute& second) {
  const bool any_cable = is(first, LineKind::cable) || is(second, LineKind::cable);
  const bool any_wire = is(first, LineKind::wire) || is(second, LineKind::wire);
  if (is(first, LineKind::rod) || is(second, LineKind::rod))
    return {{any_wire ? &wire_to_rod : &line_to_rod, everywhere()}};
  if (is(first, LineKind::conduit) || is(second, LineKind::conduit))
    return beside_casing(first, second, any_wire, any_cable);
  if (any_cable && any_wire) return wire_and_cable(context, first, second);
  if (any_cable && (is_tube(first) || is_tube(second))) return tube_and_cable(first, second);
  if (any_cable) return {{&cable_to_cable, everywhere()}};
  if (any_wire && !is_tube(first) && !is_tube(second)) return {};
  if (any_wire) {
    if (is_vent(first) || is_vent(second)) return {{&vent_wanted, everywhere(), &vent_least}};
    return {{&wire_to_tube, everywhere()}};
  }
  const bool metal = is(first, LineKind::rigid_tube) || is(second, LineKind::rigid_tube);
  return {{metal ? &metal_tube : &soft_tube, everywhere()}};
}

}  // namespace linewright
