#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "lines/air_network.hpp"
#include "physics/atmosphere.hpp"
#include "physics/lag_network.hpp"
#include "physics/tube_flow.hpp"
#include "rules/rule.hpp"

namespace linewright {

namespace {

constexpr LimitRow trailing{
    .name = "altitude-trailed",
    .subject = "altitude that an instrument trails by at the stated climb rate, at 10,000 ft",
    .value = 10,
    .unit = Unit::foot,
    .sense = LimitSense::at_most,
    .source = "a working figure: half of an altimeter's smallest division",
    .mark = Mark::common_practice,
    .broken = Verdict::warn};

constexpr auto lag_limits = limit_table({trailing});

/// The thinner air is where lag is longer: judged high up, and told at sea level for comparison.
constexpr double judged_altitude_ft = 10'000;
/// Below this an altimeter shows nothing of the lag.
constexpr double unseen_ft = 2;

struct Air {
  double pressure_pa = 0;
  double viscosity_pa_s = 0;
  double density_kg_per_m3 = 0;
  double gradient_pa_per_ft = 0;
};

/// Standard air; the two heights used lie well inside the model.
Air standard_air(double altitude_ft) {
  const double temperature_k = standard_temperature_k(altitude_ft).value();
  const double pressure_pa = standard_pressure_pa(altitude_ft).value();
  return {pressure_pa, air_viscosity_pa_s(temperature_k).value(),
          air_density_kg_per_m3(pressure_pa, temperature_k).value(),
          standard_pressure_gradient_pa_per_ft(altitude_ft).value()};
}

/// An opening by which a system of this kind takes its pressure.
bool takes_pressure(const Node& node, SystemKind kind) {
  return node.kind ==
         (kind == SystemKind::static_air ? NodeKind::static_port : NodeKind::pitot_probe);
}

LagNetwork lag_network(const AirNetwork& network) {
  LagNetwork lag;
  for (std::size_t i = 0; i < network.nodes.size(); ++i) {
    lag.volume_in3.push_back(network.nodes[i]->volume_in3.value_or(0));
    if (takes_pressure(*network.nodes[i], network.kind))
      lag.openings.push_back(static_cast<int>(i));
  }
  for (const AirLink& link : network.links)
    lag.tubes.push_back(
        {link.from, link.to, link.route->length_in(), link.route->line->inside_diameter_in});
  return lag;
}

/// Lag of each node at one height, and the largest Reynolds number at the climb rate.
struct LagAtHeight {
  std::vector<double> lag_s;
  double reynolds = 0;
};

std::optional<LagAtHeight> lag_at_height(const LagNetwork& network, double altitude_ft,
                                         double climb_ft_per_min) {
  const Air air = standard_air(altitude_ft);
  const auto lag_s = network_lag_s(network, air.viscosity_pa_s, air.pressure_pa);
  if (!lag_s) return std::nullopt;
  const auto flows = tube_flows_in3_per_s(network, *lag_s, air.viscosity_pa_s, air.pressure_pa,
                                          air.gradient_pa_per_ft * climb_ft_per_min / 60);
  if (!flows) return std::nullopt;
  LagAtHeight found{*lag_s, 0};
  for (std::size_t i = 0; i < flows->size(); ++i) {
    const auto reynolds = tube_reynolds_number((*flows)[i], network.tubes[i].bore_in,
                                               air.density_kg_per_m3, air.viscosity_pa_s);
    if (!reynolds) return std::nullopt;
    found.reynolds = std::max(found.reynolds, *reynolds);
  }
  return found;
}

/// A case or capsule without air in it is none.
std::string instruments_without_volume(const AirNetwork& network) {
  std::string names;
  for (const Node* node : network.nodes)
    if (node->kind == NodeKind::instrument && node->volume_in3.value_or(0) <= 0)
      names += (names.empty() ? "" : ", ") + node->name;
  return names;
}

/// A judgement about an instrument, placed on the first of its routes; verdict still unknown.
Judgement at_instrument(const RuleContext& context, const AirNetwork& network, int node) {
  const auto link =
      std::find_if(network.links.begin(), network.links.end(),
                   [&](const AirLink& each) { return each.from == node || each.to == node; });
  const PreparedRoute& route = *link->route;
  const bool start = link->from == node;
  Judgement judgement = context.at(route, start ? 0 : route.length_in());
  judgement.with = network.nodes[static_cast<std::size_t>(node)]->name;
  judgement.location = start ? route.route->from_where : route.route->to_where;
  leave_unknown(judgement, trailing);
  judgement.limit = trailing.value;
  return judgement;
}

void say_unknown(Judgement& judgement, std::string message, std::string mend) {
  judgement.message = std::move(message);
  judgement.mend = std::move(mend);
}

/// Seconds and feet of so small a thing need figures, not decimals.
std::string figure(double value) {
  return fmt::format("{:.2g}", value);
}

void say_lag(Judgement& judgement, double sea_level_s, double high_s, double climb_ft_per_min) {
  const double trails_ft = altitude_lag_ft(high_s, climb_ft_per_min);
  const bool held = holds(judgement, trails_ft, {trailing});
  judgement.message = fmt::format(
      "{} trails the air outside by {} s at sea level and {} s at 10,000 ft: {} ft at {:.0f} "
      "ft/min",
      *judgement.with, figure(sea_level_s), figure(high_s),
      trails_ft < 100 ? figure(trails_ft) : fmt::format("{:.0f}", trails_ft), climb_ft_per_min);
  if (trails_ft < unseen_ft) judgement.message += ", too little to see";
  if (!held)
    judgement.mend = "use a wider bore, above all where it is narrowest, or a shorter line";
}

void judge_network_lag(const RuleContext& context, const AirNetwork& network,
                       double climb_ft_per_min, std::vector<Judgement>& judgements) {
  const LagNetwork lag = lag_network(network);
  const std::string missing = instruments_without_volume(network);
  const auto low = lag_at_height(lag, 0, climb_ft_per_min);
  const auto high = lag_at_height(lag, judged_altitude_ft, climb_ft_per_min);
  for (std::size_t i = 0; i < network.nodes.size(); ++i) {
    if (network.nodes[i]->kind != NodeKind::instrument) continue;
    Judgement judgement = at_instrument(context, network, static_cast<int>(i));
    if (!missing.empty())
      say_unknown(judgement, "lag depends on the volume of " + missing + ", which is not stated",
                  "give the node its volume, from the instrument's maker or by measuring");
    else if (lag.openings.empty())
      say_unknown(judgement, "no port or probe feeds " + network.nodes[i]->name,
                  "join the system to its port or probe");
    else if (!low || !high)
      say_unknown(judgement, "lag cannot be worked out: a bore or length is out of range",
                  "correct the line's inside diameter");
    else if (std::max(low->reynolds, high->reynolds) >= laminar_reynolds_limit)
      say_unknown(judgement,
                  fmt::format("the flow is not laminar at {:.0f} ft/min (Reynolds number {:.0f}), "
                              "so that its lag is not known",
                              climb_ft_per_min, std::max(low->reynolds, high->reynolds)),
                  "use a wider bore, or correct the volumes or the climb rate");
    else
      say_lag(judgement, low->lag_s[i], high->lag_s[i], climb_ft_per_min);
    judgements.push_back(judgement);
  }
}

std::vector<Judgement> judge_lag(const RuleContext& context) {
  std::vector<Judgement> judgements;
  const std::optional<double> climb_ft_per_min = context.prepared.project->climb_ft_per_min;
  if (!climb_ft_per_min) return judgements;
  for (const AirNetwork& network : air_networks(context.prepared))
    judge_network_lag(context, network, *climb_ft_per_min, judgements);
  return judgements;
}

std::vector<Judgement> lag_lacking(const RuleContext& context) {
  std::vector<Judgement> judgements;
  if (context.prepared.project->climb_ft_per_min) return judgements;
  for (const AirNetwork& network : air_networks(context.prepared))
    for (std::size_t i = 0; i < network.nodes.size(); ++i) {
      if (network.nodes[i]->kind != NodeKind::instrument) continue;
      Judgement judgement = at_instrument(context, network, static_cast<int>(i));
      say_unknown(judgement,
                  "how far " + network.nodes[i]->name +
                      " trails is not known: the project states no `climb` rate",
                  "state climb: 1000 ft/min, with its own figure");
      judgements.push_back(judgement);
    }
  return judgements;
}

}  // namespace

const Rule& lag_rule() {
  static const Rule rule{
      .name = "lag",
      .purpose = "no instrument trails the pressure outside by more than it can show",
      .explanation =
          R"(Where the project states its `climb` rate, the tubes of each static, pitot and
alpha system are taken as laminar resistances and all that must breathe through them as
volumes: instruments, other nodes (none where not stated) and the tubes themselves. Every port
or probe of the system is at the pressure outside. Each instrument then trails by a lag
constant, worked out in standard air at sea level and at 10,000 ft, and in a steady climb by
that time times the rate. Pressure changes are taken as slow and at constant temperature; the
instrument's own lag, and any pinch the drawing does not show, come on top. The answer is no
better than the volumes stated: an instrument's is seldom known within a factor of two. Without
`climb` nothing is judged; asked for alone, the rule then answers unknown.)",
      .mend = "Use a wider bore or a shorter line: lag falls with the fourth power of the bore.",
      .limits = lag_limits,
      .catalogue_limits = "",
      .judge = judge_lag,
      .lacking = lag_lacking};
  return rule;
}

}  // namespace linewright
