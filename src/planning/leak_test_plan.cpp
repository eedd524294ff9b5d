#include "planning/leak_test_plan.hpp"

#include <cmath>

#include "physics/airspeed.hpp"
#include "physics/atmosphere.hpp"
#include "physics/trapped_gas.hpp"
#include "physics/tube_flow.hpp"
#include "planning/leak_cautions.hpp"
#include "planning/test_connection.hpp"

namespace linewright {

namespace {

constexpr double reading_interval_s = 10;
/// (gamma - 1) / gamma of air: how temperature follows pressure in a sudden stroke.
constexpr double adiabatic_exponent = 2.0 / 7.0;

/// Sets the gauge and the pressures; false off the standard troposphere.
bool set_target(LeakTestPlan& plan) {
  LeakGauge& gauge = plan.gauge;
  const LeakTestSetup& setup = plan.setup;
  gauge.altimeter_setting_pa = pascals_from_inhg(setup.altimeter_setting_inhg);
  const auto ambient_pa = pressure_at_indicated_pa(setup.elevation_ft, gauge.altimeter_setting_pa);
  if (!ambient_pa) return false;
  gauge.ambient_pa = *ambient_pa;
  plan.at_rest = gauge.is_static() ? setup.elevation_ft : 0;

  std::optional<double> target = gauge.is_static() ? setup.elevation_ft + usual_climb_ft
                                                   : setup.airspeed_kt.value_or(usual_airspeed_kt);
  if (gauge.is_static() && setup.drop_inhg)
    target = gauge.reading(*ambient_pa - pascals_from_inhg(*setup.drop_inhg));
  if (!target) return false;
  const auto target_pa = gauge.pressure_pa(*target);
  if (!target_pa) return false;
  plan.target = *target;
  plan.target_pa = *target_pa;
  plan.differential_pa = gauge.differential_pa(*target_pa);
  return plan.differential_pa > 0;
}

bool set_strokes(LeakTestPlan& plan) {
  const bool suck = plan.gauge.is_static();
  const double ambient_pa = plan.gauge.ambient_pa;
  const auto stroke_in3 = suck ? suction_stroke_in3(plan.tested_in3(), ambient_pa, plan.target_pa)
                               : pressure_stroke_in3(plan.tested_in3(), ambient_pa, plan.target_pa);
  if (!stroke_in3) return false;
  plan.stroke_in3 = *stroke_in3;
  if (plan.setup.syringe_in3)
    plan.strokes = suck ? suction_strokes(plan.tested_in3(), *plan.setup.syringe_in3, ambient_pa,
                                          plan.target_pa)
                        : pressure_strokes(plan.tested_in3(), *plan.setup.syringe_in3, ambient_pa,
                                           plan.target_pa);
  return true;
}

/// The gauge's loss over the rule's period, and the leak, of a time constant.
struct Loss {
  double on_gauge = 0;
  double change_pa = 0;
  double leak_in3_per_min = 0;
};

std::optional<Loss> loss_at(const LeakTestPlan& plan, double time_constant_s) {
  const LeakGauge& gauge = plan.gauge;
  const double period_s = plan.limit.period_s;
  const auto left_pa = differential_after_pa(plan.differential_pa, period_s, time_constant_s);
  if (!left_pa) return std::nullopt;
  const auto reading = gauge.reading(gauge.pressure_at_differential_pa(*left_pa));
  const double change_pa = plan.differential_pa - *left_pa;
  const auto leak = leak_flow_in3_per_min(plan.tested_in3(), change_pa, period_s, gauge.ambient_pa);
  if (!reading || !leak) return std::nullopt;
  return Loss{plan.target - *reading, change_pa, *leak};
}

/// How long a pressure lasts in a volume that has a given leak goes with the volume: the rule's
/// leak is that of the whole system by itself.
bool set_part_limit(LeakTestPlan& plan, PartLimit limit) {
  PartTest& part = *plan.part;
  const double rule_s = plan.limit_time_constant_s;
  const double share_s = rule_s * part.tested_in3 / plan.volume_in3;
  const double whole_s = rule_s * part.tested_in3 / part.whole_in3;
  const auto share = loss_at(plan, share_s);
  const auto whole = loss_at(plan, whole_s);
  if (!share || !whole) return false;
  part.share_loss = share->on_gauge;
  part.whole_loss = whole->on_gauge;
  part.share_leak_in3_per_min = share->leak_in3_per_min;
  part.whole_leak_in3_per_min = whole->leak_in3_per_min;
  const Loss& chosen = limit == PartLimit::share ? *share : *whole;
  plan.limit.loss = chosen.on_gauge;
  plan.limit.source.text += limit == PartLimit::share
                                ? " for the whole system, and this part's share of its leak"
                                : " for the whole system, and all of its leak seen on this part";
  plan.limit_change_pa = chosen.change_pa;
  plan.limit_leak_in3_per_min = chosen.leak_in3_per_min;
  plan.limit_time_constant_s = limit == PartLimit::share ? share_s : whole_s;
  return true;
}

bool set_limit(LeakTestPlan& plan, PartLimit limit) {
  const LeakGauge& gauge = plan.gauge;
  plan.limit = leak_limit(gauge.kind);
  const double period_s = plan.limit.period_s;
  const auto later_pa = gauge.pressure_pa(plan.target - plan.limit.loss);
  if (!later_pa) return false;
  const double left_pa = gauge.differential_pa(*later_pa);
  const auto time_constant_s = leak_time_constant_s(plan.differential_pa, left_pa, period_s);
  plan.limit_change_pa = plan.differential_pa - left_pa;
  const auto leak =
      leak_flow_in3_per_min(plan.volume_in3, plan.limit_change_pa, period_s, gauge.ambient_pa);
  const auto density =
      air_density_kg_per_m3(gauge.ambient_pa, kelvins_from_degf(plan.setup.temperature_degf));
  if (!time_constant_s || !leak || !density) return false;
  plan.limit_time_constant_s = *time_constant_s;
  plan.limit_leak_in3_per_min = *leak;
  if (plan.part && !set_part_limit(plan, limit)) return false;
  plan.limit_hole_in = equivalent_orifice_in(
      plan.limit_leak_in3_per_min / 60, plan.differential_pa - plan.limit_change_pa / 2, *density);
  return true;
}

/// The gauge after a time when all of a leak at the limit is in what is sealed with the test set.
std::optional<double> reading_after(const LeakTestPlan& plan, double time_s, double sealed_in3) {
  const double time_constant_s = plan.limit_time_constant_s * sealed_in3 / plan.tested_in3();
  const auto left_pa = differential_after_pa(plan.differential_pa, time_s, time_constant_s);
  return plan.gauge.reading(plan.gauge.pressure_at_differential_pa(left_pa.value_or(0)));
}

bool set_readings(LeakTestPlan& plan) {
  plan.search_set_in3 = plan.part ? plan.part->gauge_in3 : usual_gauge_volume_in3;
  for (double time_s = 0; time_s <= plan.limit.period_s; time_s += reading_interval_s) {
    const auto reading = reading_after(plan, time_s, plan.tested_in3());
    if (!reading) return false;
    plan.readings_at_limit.push_back({time_s, *reading});
  }
  for (SplitStep& step : plan.sections) {
    step.tested_in3 += plan.search_set_in3;
    const auto reading = reading_after(plan, plan.limit.period_s, step.tested_in3);
    if (!reading) return false;
    step.reading = *reading;
    step.loss = plan.target - *reading;
  }
  return true;
}

bool set_temperature(LeakTestPlan& plan) {
  const LeakGauge& gauge = plan.gauge;
  const double temperature_k = kelvins_from_degf(plan.setup.temperature_degf);
  const auto effect =
      gauge.is_static()
          ? altitude_change_ft(plan.target_pa, temperature_k, kelvins_per_degf)
          : airspeed_change_kt(gauge.ambient_pa, plan.target, temperature_k, kelvins_per_degf);
  if (!effect) return false;
  plan.effect_per_degf = *effect;
  const double after_k =
      temperature_k * std::pow(plan.target_pa / gauge.ambient_pa, adiabatic_exponent);
  plan.quick_stroke_degf = (after_k - temperature_k) / kelvins_per_degf;
  plan.quick_stroke_loss = std::abs(plan.quick_stroke_degf * plan.effect_per_degf);
  return true;
}

bool set_comparisons(LeakTestPlan& plan) {
  const LeakGauge& gauge = plan.gauge;
  if (!gauge.is_static()) return true;
  const auto one_inhg_ft = gauge.reading(gauge.ambient_pa - pascals_per_inhg);
  const auto climbed_pa = gauge.pressure_pa(plan.at_rest + usual_climb_ft);
  if (!one_inhg_ft || !climbed_pa) return false;
  plan.one_inhg_reads_ft = *one_inhg_ft - plan.at_rest;
  plan.thousand_ft_inhg = inhg_from_pascals(gauge.ambient_pa - *climbed_pa);
  plan.open_pitot_kt = calibrated_airspeed_kt(plan.differential_pa);
  return true;
}

LeakTestPlan started(const AirSystem& system, const LeakTestSetup& setup) {
  LeakTestPlan plan;
  plan.system = system.name;
  plan.setup = setup;
  plan.gauge.kind = system.kind;
  plan.volume_in3 = system.volume_in3();
  plan.nodes_without_volume = system.nodes_without_volume;
  plan.joined_systems = system.joined_systems;
  return plan;
}

std::variant<LeakTestPlan, std::string> finished(LeakTestPlan plan, PartLimit limit) {
  if (!set_target(plan) || !set_strokes(plan) || !set_limit(plan, limit) || !set_readings(plan) ||
      !set_temperature(plan) || !set_comparisons(plan))
    return "field elevation, altimeter setting and test pressure lie off the standard troposphere";
  plan.cautions = leak_cautions(plan);
  plan.notes = leak_notes(plan);
  return plan;
}

std::string not_testable(const AirSystem& system) {
  if (system.kind == SystemKind::static_air || system.kind == SystemKind::pitot) return {};
  return "a leak test is known for static and pitot systems only, and '" + system.name +
         "' is neither";
}

}  // namespace

LeakLimit leak_limit(SystemKind kind) {
  if (kind == SystemKind::pitot)
    return {10, 60, {"AC 43.13-1B para 12-59: 10 kt in 1 minute", Mark::verified}};
  return {100, 60, {"14 CFR 23.1325(b)(2)(i): 100 ft in 1 minute", Mark::verified}};
}

std::variant<LeakTestPlan, std::string> plan_leak_test(const AirSystem& system,
                                                       const LeakTestSetup& setup) {
  if (std::string wrong = not_testable(system); !wrong.empty()) return wrong;
  LeakTestPlan plan = started(system, setup);
  plan.connection = test_connection(system);
  plan.sections = split_order(system, plan.connection.node);
  return finished(std::move(plan), PartLimit::share);
}

std::variant<LeakTestPlan, std::string> plan_part_test(const AirPart& part,
                                                       const LeakTestSetup& setup,
                                                       PartLimit limit) {
  const AirSystem& system = part.system;
  if (std::string wrong = not_testable(system); !wrong.empty()) return wrong;
  LeakTestPlan plan = started(system, setup);
  if (plan.volume_in3 <= 0 || part.whole_in3 <= 0) return "the part to be tested holds no air";
  PartTest& test = plan.part.emplace();
  test.caps = part.caps;
  test.sealed = part.sealed;
  test.whole_in3 = part.whole_in3;
  test.whole_without_volume = part.whole_without_volume;
  test.gauge_stated = setup.gauge_volume_in3.has_value();
  test.gauge_in3 = setup.gauge_volume_in3.value_or(usual_gauge_volume_in3);
  test.tested_in3 = plan.volume_in3 + test.gauge_in3;
  test.share = plan.volume_in3 / part.whole_in3;
  plan.connection = part_connection(part);
  plan.sections = split_order(system, part.connected, part.is_cap);
  return finished(std::move(plan), limit);
}

}  // namespace linewright
