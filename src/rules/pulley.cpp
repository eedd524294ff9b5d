#include "rules/pulley.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "model/angle.hpp"
#include "physics/cable.hpp"
#include "rules/cable_run.hpp"

namespace linewright {

namespace {

constexpr double rounding = 1e-6;

constexpr std::array<LimitRow, 5> limits{{
    {"cable of a primary control off the pulley's plane, at most", 1, "deg",
     "MIL-F-18372 para 3.1.1.17.8 (a)", Mark::verified, Verdict::fail},
    {"cable of another control off the pulley's plane, at most", 2, "deg",
     "MIL-F-18372 para 3.1.1.17.8 (b)", Mark::verified, Verdict::fail},
    {"pulley over cable diameter, load up to 1 % of breaking strength, at least", 10, "",
     "MIL-F-18372, table above para 3.1.1.17.8, its rows paired from a column scan", Mark::verified,
     Verdict::fail},
    {"pulley over cable diameter, load 10 % of breaking strength, at least", 20, "",
     "MIL-F-18372, table above para 3.1.1.17.8, its rows paired from a column scan", Mark::verified,
     Verdict::fail},
    {"pulley over cable diameter, load 20 % of breaking strength, at least", 28, "",
     "MIL-F-18372, table above para 3.1.1.17.8, its rows paired from a column scan", Mark::verified,
     Verdict::fail},
}};
constexpr const LimitRow& off_plane_primary = limits[0];
constexpr const LimitRow& off_plane_other = limits[1];

struct SizeRow {
  double load_per_cent;
  const LimitRow& ratio;
};
constexpr std::array<SizeRow, 3> sizes{{{1, limits[2]}, {10, limits[3]}, {20, limits[4]}}};
constexpr double heaviest_per_cent = sizes.back().load_per_cent;

/// Straight between the rows, level outside them.
double least_ratio(double load_per_cent) {
  if (load_per_cent <= sizes.front().load_per_cent) return sizes.front().ratio.value;
  for (std::size_t i = 1; i < sizes.size(); ++i) {
    if (load_per_cent > sizes[i].load_per_cent) continue;
    const double share = (load_per_cent - sizes[i - 1].load_per_cent) /
                         (sizes[i].load_per_cent - sizes[i - 1].load_per_cent);
    return std::lerp(sizes[i - 1].ratio.value, sizes[i].ratio.value, share);
  }
  return sizes.back().ratio.value;
}

struct Pulley {
  const PreparedRoute& route;
  const RoutePoint& point;
  double distance_in;
  Vec3 before;  ///< unit direction of the leg that leads to it
  Vec3 after;   ///< and of the leg that leaves it
};

Judgement pulley_judgement(const Pulley& pulley) {
  Judgement judgement = judgement_at(pulley_rule(), pulley.route, pulley.distance_in);
  judgement.location = pulley.point.where;
  if (!pulley.point.to.empty()) judgement.with = pulley.point.to;
  return judgement;
}

Judgement unknown(Judgement judgement, const std::string& message, const std::string& mend) {
  judgement.verdict = Verdict::unknown;
  judgement.message = message;
  judgement.source = cite(limits[2]);
  judgement.mend = mend;
  return judgement;
}

/// A spindle square to both legs, near the one that is stated. Nothing where none is near.
std::optional<Vec3> true_axis(const Pulley& pulley, Vec3 stated) {
  Vec3 square = cross(pulley.before, pulley.after);
  if (norm(square) < Centreline::straight_below_rad)
    square = stated - pulley.before * dot(stated, pulley.before);
  if (norm(square) < 1e-9) return std::nullopt;
  return unit(square) * (dot(square, stated) < 0 ? -1 : 1);
}

double off_plane_rad(Vec3 leg, Vec3 axis) {
  return std::asin(std::min(1.0, std::abs(dot(leg, axis))));
}

/// Four decimals hold a direction to a hundredth of a degree.
std::string component(double value) {
  return fmt::format("{:.4f}", std::abs(value) < 0.00005 ? 0.0 : value);
}

std::string plane_mend(const Pulley& pulley, Vec3 axis) {
  const std::optional<Vec3> wanted = true_axis(pulley, axis);
  if (!wanted) return "set the spindle square to the cable";
  const double tilt =
      std::atan2(norm(cross(axis, *wanted)), dot(axis, *wanted)) * degrees_per_radian;
  return fmt::format("tilt the spindle {:.1f} deg, to axis [{}, {}, {}]: square to both legs", tilt,
                     component(wanted->x), component(wanted->y), component(wanted->z));
}

Judgement judge_plane(const RuleContext& context, const Pulley& pulley) {
  const LimitRow& row =
      is_primary_control(*pulley.route.route) ? off_plane_primary : off_plane_other;
  Judgement judgement = pulley_judgement(pulley);
  judgement.unit = Unit::degree;
  judgement.sense = LimitSense::at_most;
  judgement.limit = row.value;
  if (!pulley.point.axis) {
    judgement = unknown(judgement, "the pulley's axis is not stated, so its plane is not known",
                        "state the direction of its spindle: axis: [0, 0, 1]");
    judgement.source = cite(row);
    return judgement;
  }
  const Vec3 axis = unit(*pulley.point.axis);
  const double off =
      std::max(off_plane_rad(pulley.before, axis), off_plane_rad(pulley.after, axis));
  judgement.value = off * degrees_per_radian;
  judgement.source = cite(row);
  if (*judgement.value <= row.value + rounding) {
    judgement.verdict = Verdict::pass;
    judgement.message =
        "the cable lies " + context.phrasing.angle(*judgement.value) + " off the pulley's plane";
    return judgement;
  }
  judgement.verdict = row.broken;
  judgement.message =
      "the cable runs " + context.phrasing.angle(*judgement.value) + " off the pulley's plane";
  if (*judgement.value < 45)
    judgement.message += ", " + context.phrasing.length(off_plane_drift_in(12, off)) + " over " +
                         context.phrasing.length(12) + " of lead";
  judgement.mend = plane_mend(pulley, axis);
  return judgement;
}

/// What the pulley is sized for, in words that start a sentence.
struct Load {
  double lbf = 0;
  std::string words;
};

Load load_of(const Tension& tension) {
  if (tension.limit_load_lbf && *tension.limit_load_lbf >= tension.rigged_lbf)
    return {*tension.limit_load_lbf, "limit load"};
  return {tension.rigged_lbf, tension.limit_load_lbf ? "rigged tension, above the limit load stated"
                                                     : "rigged tension: no limit load is stated"};
}

Judgement judge_size(const RuleContext& context, const Pulley& pulley) {
  const Line& line = *pulley.route.line;
  const Phrasing& phrasing = context.phrasing;
  Judgement judgement = pulley_judgement(pulley);
  judgement.unit = Unit::none;
  if (!pulley.point.diameter_in || line.outside_diameter_in <= 0)
    return unknown(judgement, "the pulley's groove diameter is not stated", "state its diameter");
  const double ratio = *pulley.point.diameter_in / line.outside_diameter_in;
  judgement.value = ratio;
  if (!pulley.route.route->tension)
    return unknown(judgement,
                   "the tension of " + pulley.route.route->name +
                       " is not stated, so the least size of the pulley is not known",
                   "state the route's tension: rigged, and limit_load");
  if (!line.breaking_strength_lbf)
    return unknown(judgement, "no breaking strength is known for " + line.name,
                   "add the line to the project's lines with its breaking strength and source");
  const Load load = load_of(*pulley.route.route->tension);
  const double per_cent = 100 * load.lbf / line.breaking_strength_lbf->value;
  const double least = least_ratio(per_cent);
  judgement.limit = least;
  judgement.source = cite(limits[2]) + "; strength: " + cite(line.breaking_strength_lbf->source);
  const std::string size = fmt::format(
      "the pulley is {:.1f} times the cable's diameter at {:.1f} % of its strength ({})", ratio,
      per_cent, load.words);
  if (ratio < least - rounding) {
    judgement.verdict = sizes.front().ratio.broken;
    judgement.message = size + fmt::format(", under {:.1f} times", least);
    judgement.mend = "use a pulley with a groove diameter of " +
                     phrasing.length_up(least * line.outside_diameter_in) + " or more";
    return judgement;
  }
  if (per_cent > heaviest_per_cent + rounding) {
    judgement =
        unknown(judgement, size + ": the size table ends at 20 %",
                fmt::format("use a cable that breaks at {:.0f} lbf or more",
                            std::ceil(100 * load.lbf / heaviest_per_cent)) +
                    such_as(context.prepared.project->catalogue, line, [&](const Line& each) {
                      return each.breaking_strength_lbf && each.breaking_strength_lbf->value >=
                                                               100 * load.lbf / heaviest_per_cent;
                    }));
    return judgement;
  }
  judgement.verdict = Verdict::pass;
  judgement.message = size;
  return judgement;
}

void judge_point(const RuleContext& context, const PreparedRoute& route, std::size_t index,
                 std::vector<Judgement>& judgements) {
  const auto& corners = route.centreline.corners();
  const Pulley pulley{route, route.route->points[index], route.point_distance_in[index],
                      unit(corners[index + 1].at - corners[index].at),
                      unit(corners[index + 2].at - corners[index + 1].at)};
  if (route.line->kind != LineKind::cable) {
    judgements.push_back(
        unknown(pulley_judgement(pulley),
                "a pulley is stated for " + route.line->name + ", which is not a cable",
                "hold it with a clamp"));
    return;
  }
  judgements.push_back(judge_size(context, pulley));
  judgements.push_back(judge_plane(context, pulley));
}

std::vector<Judgement> judge_pulleys(const RuleContext& context) {
  std::vector<Judgement> judgements;
  for (const PreparedRoute& route : context.prepared.routes)
    for (std::size_t i = 0; i < route.route->points.size(); ++i)
      if (route.route->points[i].hold == HoldKind::pulley)
        judge_point(context, route, i, judgements);
  return judgements;
}

}  // namespace

const Rule& pulley_rule() {
  static const Rule rule{
      .name = "pulley",
      .purpose = "pulleys lie in the cable's plane and are large enough for its load",
      .explanation =
          "A pulley's point is the corner of the path: where the straight legs, drawn on, would "
          "meet. It is not the spindle, unless the point says `given: centre`: then the cable "
          "turns about the stated axis by the right-hand rule (the sign of `axis` says on which "
          "side it passes) and the path is the taut one. Two things are judged. Plane: the angle "
          "between each leg "
          "and the groove's plane, which is square to the stated `axis`; the larger counts, with "
          "the controls neutral (the standard allows a degree more where the cable travels "
          "sideways, or on pulleys AN219 to AN221; waive it then). Size: groove "
          "diameter over the cable's nominal diameter, against the load as a share of the breaking "
          "strength, straight between the rows of the table; the load is the limit load, or the "
          "rigged tension where no limit load is stated. Under 1 % the first row holds. Past 20 % "
          "the table ends: a pulley under its last row fails, a larger one is unknown. The "
          "standard is a Navy design specification of 1955 and stricter than civil practice. What "
          "a file cannot show is left to the eye: a guard near each tangent point, more between "
          "where the cable wraps over 90 degrees, close even when the cable is slack (14 CFR "
          "23.689(b)).",
      .mend = "Tilt the spindle, use a larger pulley, or a stronger cable.",
      .limits = limits,
      .catalogue_limits = "breaking_strength of each cable: AC 43.13-1B Table 7-3",
      .judge = judge_pulleys};
  return rule;
}

}  // namespace linewright
