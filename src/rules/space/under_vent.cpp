#include "rules/space/under_vent.hpp"

#include "lines/near/nearest_lines.hpp"

namespace linewright {

bool is_vent(const PreparedRoute& route) {
  return route.route->system == SystemKind::vent;
}

std::optional<Judgement> judge_under_vent(const RuleContext& context, const Stretch& wire,
                                          const Stretch& vent, double near_in) {
  const PreparedRoute& bundle = *wire.route;
  const PreparedRoute& line = *vent.route;
  if (bundle.line->kind != LineKind::wire || !is_vent(line)) return std::nullopt;
  const double tolerance = 2 * context.prepared.project->build_tolerance_in;
  const auto counts = [&](double a, double b) {
    return !context.is_passed_over(bundle, a) && !context.is_passed_over(line, b);
  };
  const auto approach = nearest_lines(wire, vent, Reach::none, near_in + tolerance, counts);
  if (!approach) return std::nullopt;
  Judgement judgement = context.at(bundle, approach->distance_in);
  judgement.with = line.route->name;
  judgement.with_is_route = true;
  const double height = approach->on_line.z - approach->on_other.z;
  if (holds(judgement, height, {over_vent})) return std::nullopt;
  judgement.message = "the bundle passes " + context.phrasing.length(-height) + " under " +
                      line.route->name + ", which carries what burns";
  judgement.mend =
      "lead the bundle over the line, or farther from it than " + context.phrasing.length(near_in);
  return judgement;
}

}  // namespace linewright
