#pragma once
// A leak test before it is done: what to connect, how far to pump, what the gauge may lose, and
// what to keep from harm.
//
// Static systems are taken to 1,000 ft above the field, or to a suction stated in inches of
// mercury, pitot systems to an airspeed. A leak passes air in proportion to the pressure across it,
// so that the pressure returns exponentially; "at the limit" means the leak that loses just what is
// allowed in the period.

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "model/source.hpp"
#include "planning/air_part.hpp"
#include "planning/air_system.hpp"
#include "planning/leak_gauge.hpp"
#include "planning/leak_sections.hpp"

namespace linewright {

/// The day, the field and the test asked for.
struct LeakTestSetup {
  double elevation_ft = 0;
  double altimeter_setting_inhg = 0;
  double temperature_degf = 0;
  std::optional<double> drop_inhg;    ///< static: suction below ambient instead of 1,000 ft
  std::optional<double> airspeed_kt;  ///< pitot: instead of 150 kt
  std::optional<double> syringe_in3;  ///< size of one stroke
  /// Of a test set with its hose, where a part of a system is tested.
  std::optional<double> gauge_volume_in3 = {};
};

/// Which of the two losses that may be allowed to a part of a system is its limit.
enum class PartLimit {
  share,  ///< its share, by volume, of the leak that the rule allows to the whole
  whole,  ///< all of that leak: the part loses more only where the whole fails
};

/// A test of a part of a system, in which the test set's own volume is counted.
struct PartTest {
  std::vector<std::string> caps;    ///< ends of lines that are capped: "static-main at bulkhead"
  std::vector<std::string> sealed;  ///< ports, probes and drains asked for as caps
  double whole_in3 = 0;             ///< of the whole system
  std::vector<std::string> whole_without_volume;  ///< its nodes that count as nothing in that
  double gauge_in3 = 0;                           ///< of the test set with its hose
  bool gauge_stated = false;
  double tested_in3 = 0;  ///< the part and the test set
  double share = 0;       ///< the part's volume over the whole's
  double share_loss = 0;  ///< on the gauge, in the rule's period
  double whole_loss = 0;
  double share_leak_in3_per_min = 0;  ///< as volume of ambient air
  double whole_leak_in3_per_min = 0;
};

/// What may be lost, in the gauge's unit, and who says so.
struct LeakLimit {
  double loss = 0;
  double period_s = 60;
  Source source;
};

/// The limit of a static system in feet, of a pitot system in knots.
LeakLimit leak_limit(SystemKind kind);

/// Where the test set goes, and what has to be closed.
struct TestConnection {
  int node = 0;                    ///< index in the system's network
  std::string at;                  ///< its name
  std::string why;                 ///< "a static port, as AC 43.13-1B para 12-58 prefers"
  std::vector<std::string> cap;    ///< ports and probes to seal
  std::vector<std::string> close;  ///< drains and caps to be found shut
  std::vector<std::string> mend;   ///< fittings and line ends that the project leaves open
  std::vector<std::string> instruments;
};

struct TimedReading {
  double time_s = 0;
  double reading = 0;
};

struct LeakTestPlan {
  std::string system;
  LeakTestSetup setup;
  LeakGauge gauge;
  double volume_in3 = 0;         ///< of what is tested, without the test set
  std::optional<PartTest> part;  ///< absent where the whole is tested and the set is not counted
  std::vector<std::string> nodes_without_volume;
  std::vector<std::string> joined_systems;
  TestConnection connection;

  double at_rest = 0;  ///< the gauge before the test: field elevation, or 0 kt
  double target = 0;   ///< the gauge at the test pressure
  double target_pa = 0;
  double differential_pa = 0;  ///< target from ambient
  double stroke_in3 = 0;       ///< one closed stroke at constant temperature
  std::optional<int> strokes;  ///< of the syringe; absent where none is stated or it is too small

  LeakLimit limit;
  double limit_change_pa = 0;         ///< pressure lost in the period
  double limit_leak_in3_per_min = 0;  ///< as volume of ambient air, over the period
  double limit_time_constant_s = 0;
  std::optional<double> limit_hole_in;  ///< one sharp-edged hole that would leak as much; rough
  std::vector<TimedReading> readings_at_limit;  ///< every ten seconds

  double effect_per_degf = 0;    ///< on the gauge, of warming the sealed air; signed
  double quick_stroke_degf = 0;  ///< how far a sudden stroke changes the air's temperature
  double quick_stroke_loss = 0;  ///< what the gauge loses as that wears off
  double wait_s = 60;            ///< before the first reading [common practice, no source]

  // Static only.
  double one_inhg_reads_ft = 0;         ///< gain of a suction of 1 inHg
  double thousand_ft_inhg = 0;          ///< suction of a gain of 1,000 ft
  std::optional<double> open_pitot_kt;  ///< an airspeed indicator whose pitot side stays open

  std::vector<SplitStep> sections;
  /// Of the test set with its hose, which counts in every step of the search: what is sealed there
  /// may be far less. Taken where it is not stated.
  double search_set_in3 = 0;
  std::vector<std::string> cautions;
  std::vector<std::string> notes;

  /// All that is sealed in the test.
  double tested_in3() const { return part ? part->tested_in3 : volume_in3; }
};

/// Of a test set with its hose where none is stated, for the figures of a plan, and between which a
/// verdict then has to hold: a small altimeter's case and a yard or two of hose [common practice,
/// no source].
inline constexpr double usual_gauge_volume_in3 = 20;
inline constexpr double least_gauge_volume_in3 = 2;
inline constexpr double most_gauge_volume_in3 = 60;

/// Usual test targets [verified: 14 CFR 23.1325(b)(2)(i); AC 43.13-1B para 12-59].
inline constexpr double usual_climb_ft = 1'000;
inline constexpr double usual_airspeed_kt = 150;

/// Ranges within which a test makes sense: the loss allowed must be well within what is pumped.
inline constexpr double least_drop_inhg = 0.25;
inline constexpr double most_drop_inhg = 5;
inline constexpr double least_airspeed_kt = 30;
inline constexpr double most_airspeed_kt = 400;

/// The plan, or why there can be none: a system that is neither static nor pitot, or pressures off
/// the standard troposphere. Precondition: the setup is within the ranges above.
std::variant<LeakTestPlan, std::string> plan_leak_test(const AirSystem& system,
                                                       const LeakTestSetup& setup);

/// The same of a part of a system, with the test set's volume counted: `setup`'s, or the usual one.
/// The limit is what `limit` says, and readings, search and leak go by it.
std::variant<LeakTestPlan, std::string> plan_part_test(const AirPart& part,
                                                       const LeakTestSetup& setup,
                                                       PartLimit limit = PartLimit::share);

}  // namespace linewright
