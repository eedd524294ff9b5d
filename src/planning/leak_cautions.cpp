#include "planning/leak_cautions.hpp"

#include <fmt/format.h>

#include <cmath>

namespace linewright {

namespace {

void add_static_cautions(const LeakTestPlan& plan, std::vector<std::string>& cautions) {
  cautions.push_back(
      "Never suck or blow by mouth on a line with an instrument on it: lungs give far more "
      "pressure than this test takes, all at once, and moisture with it.");
  cautions.push_back(
      "Suction only on the static system, never pressure: pressure drives the airspeed indicator "
      "below zero and the vertical speed indicator against its stop.");
  std::string airspeed =
      "Pitot pressure must never be below static pressure. Tie the pitot and static systems "
      "together at the test set, or watch the airspeed indicator";
  if (plan.open_pitot_kt)
    airspeed += fmt::format(": with the pitot side open, this test drives it to {:.0f} kt",
                            std::ceil(*plan.open_pitot_kt));
  cautions.push_back(airspeed + ".");
  cautions.push_back(
      "Pump slowly and release slowly, through a pinched hose or a needle valve: keep the "
      "vertical speed indicator on its scale. A hose pulled off bends pointers.");
}

void add_pitot_cautions(std::vector<std::string>& cautions) {
  cautions.push_back(
      "Never blow or suck by mouth on a line with an instrument on it: lungs give far more "
      "pressure than this test takes, all at once, and moisture with it.");
  cautions.push_back(
      "Pressure only on the pitot system, never suction: pitot pressure must never be below "
      "static pressure.");
  cautions.push_back(
      "Pump slowly, do not overshoot, and release slowly: a burst capsule is a new instrument. A "
      "hose pulled off bends pointers.");
}

void add_volume_note(const LeakTestPlan& plan, std::vector<std::string>& notes) {
  if (plan.nodes_without_volume.empty())
    notes.push_back(
        "The test set's own hose and gauge come on top of the system's volume: a longer stroke, "
        "and a leak that shows more slowly. Keep the hose short.");
  else
    notes.push_back(
        fmt::format("Volume not stated and counted as nothing: {}. An instrument case holds 10 to "
                    "30 in3 [common practice, no source], so stroke and leak flow may be wrong by "
                    "a factor of two or more. The readings and the limit do not rest on the "
                    "volume.",
                    fmt::join(plan.nodes_without_volume, ", ")));
}

void add_part_notes(const LeakTestPlan& plan, std::vector<std::string>& notes) {
  const PartTest& part = *plan.part;
  if (!part.gauge_stated)
    notes.push_back(fmt::format(
        "The volume of the test set with its hose is not stated: {:.0f} in3 was taken [common "
        "practice, no source]. The losses allowed rest on it: measure it and give "
        "--gauge-volume. A log is judged for anything from {:.0f} to {:.0f} in3 until then.",
        part.gauge_in3, least_gauge_volume_in3, most_gauge_volume_in3));
  if (!plan.nodes_without_volume.empty())
    notes.push_back(fmt::format(
        "Volume not stated and counted as nothing: {}. The part's share then comes out too small, "
        "never too large.",
        fmt::join(plan.nodes_without_volume, ", ")));
  if (!part.whole_without_volume.empty())
    notes.push_back(fmt::format(
        "The whole system's volume is larger than is said here, for {} count as nothing in it: "
        "what this part may lose before the whole must fail is not known.",
        fmt::join(part.whole_without_volume, ", ")));
  notes.push_back(
      "The shares of all parts make up what the rule allows to the whole, so that parts that each "
      "keep within theirs pass together; the joints that close the caps now still have to be "
      "tested once they are made.");
}

}  // namespace

std::vector<std::string> leak_cautions(const LeakTestPlan& plan) {
  std::vector<std::string> cautions;
  if (plan.gauge.is_static())
    add_static_cautions(plan, cautions);
  else
    add_pitot_cautions(cautions);
  cautions.push_back(
      "Know every instrument on the line, autopilots, encoders and air-data units too, and stay "
      "within the limits of each: their makers' figures come before the target here.");
  cautions.push_back(
      "First show that the test set does not leak: cap its hose, pump it to the target and watch "
      "it for a minute.");
  cautions.push_back(fmt::format(
      "Let the aeroplane, the test set and the air in them come to one temperature, out of sun "
      "and draught; an hour is not too long. A degree Fahrenheit moves the needle {:.0f} {}.",
      std::abs(plan.effect_per_degf), plan.gauge.unit()));
  cautions.push_back(
      "Afterwards restore the flight configuration: tape off the ports and the pitot drains, "
      "drain plugs in, every joint that was opened made again and tested.");
  cautions.push_back(
      "This plan signs nothing. Where the test is required it is done and signed for by whoever "
      "the local authority licenses for it.");
  return cautions;
}

std::vector<std::string> leak_notes(const LeakTestPlan& plan) {
  std::vector<std::string> notes;
  const bool still = plan.gauge.is_static();
  if (still)
    notes.push_back(
        fmt::format("Altitudes are indicated, with the altimeter set to {:.2f} inHg; at rest it "
                    "should read the field's {:.0f} ft. Should it not, judge by the difference.",
                    plan.setup.altimeter_setting_inhg, plan.at_rest));
  else
    notes.push_back(
        "Airspeeds are calibrated, with the static side open to the air around. An airspeed "
        "indicator's own error comes on top.");
  if (still)
    notes.push_back(fmt::format(
        "The rule names a suction of about 1 inHg or a gain of 1,000 ft. They are not the same: "
        "here 1 inHg reads {:.0f} ft above the field, and 1,000 ft takes {:.3f} inHg. This plan "
        "is for {}.",
        plan.one_inhg_reads_ft, plan.thousand_ft_inhg,
        plan.setup.drop_inhg ? fmt::format("a suction of {:.3f} inHg", *plan.setup.drop_inhg)
                             : "the gain of 1,000 ft"));
  notes.push_back(
      "For a log to judge, let it settle, then write down time, reading and the temperature of a "
      "thermometer taped to a line under a rag, every ten seconds for three minutes; without a "
      "thermometer, for ten.");
  notes.push_back(
      still
          ? "The limit is that of the older text of 14 CFR 23.1325, since replaced by one without "
            "figures. It does not bind an amateur-built aeroplane: take it as a yardstick."
          : "No rule limits the leak of a pitot system; the figures are an advisory circular's. It "
            "gives the 10 kt as about 0.15 inHg, a rounded figure: read the airspeed indicator.");
  if (plan.part)
    add_part_notes(plan, notes);
  else
    add_volume_note(plan, notes);
  if (!plan.joined_systems.empty())
    notes.push_back(fmt::format(
        "Another system meets this one ({}): it has to be shut off there, or it is part of what "
        "is tested and not of the volume here.",
        fmt::join(plan.joined_systems, ", ")));
  if (!plan.connection.mend.empty())
    notes.push_back(fmt::format("The project leaves these open, and the test would fail: {}.",
                                fmt::join(plan.connection.mend, ", ")));
  if (plan.setup.syringe_in3 && !plan.strokes)
    notes.push_back("The syringe is too small for this volume.");
  return notes;
}

}  // namespace linewright
