// One rule asked for alone does not pass what rests on figures that are not known.

#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "commands/command_run.hpp"
#include "rules/registry.hpp"

namespace linewright {
namespace {

using test::contains;
using test::run;
using test::TempFolder;

/// One line of each kind, of which only the sizes are known, and a closure, which is not judged.
const std::string bare_lines = R"(linewright: 1
name: bare
units: in
build_tolerance: 0.06
temperature: {min: 30 degF, rigged: 70 degF, max: 110 degF}
load_factor: {positive: 3.8, negative: -1.5}
lines:
  - {name: odd-tube, kind: plastic-tube, outside: 0.25, inside: 0.17, source: measured}
  - {name: odd-metal, kind: rigid-tube, outside: 0.25, inside: 0.18, source: measured}
  - {name: odd-hose, kind: hose, outside: 0.5, inside: 0.25, source: measured}
  - {name: odd-cable, kind: cable, outside: 0.125, source: measured}
  - {name: odd-wire, kind: wire, outside: 0.25, source: measured}
  - {name: odd-casing, kind: conduit, outside: 0.25, source: measured}
structure:
  channels:
    - {name: rail, path: [[-5, 6, -1], [65, 6, -1]], section: [[0, 0], [1, 0]], thickness: 0.03}
  frames:
    - name: F1
      station: 20
      thickness: 0.03
      outline: [[-10, -10], [10, -10], [10, 10], [-10, 10]]
      holes:
        - {name: h1, centre: [0, 0], diameter: 2}
        - {name: h2, centre: [3, 0], diameter: 2}
        - {name: h3, centre: [-3, 0], diameter: 2}
        - {name: h4, centre: [6, 0], diameter: 2}
        - {name: h5, centre: [-6, 0], diameter: 2}
closures:
  - {name: skin, reach: 10}
nodes:
  - {name: port, kind: static-port, at: [0, 0, 0]}
  - {name: altimeter, kind: instrument, at: [60, 0, 1]}
  - {name: probe, kind: pitot-probe, at: [0, 3, 0]}
  - {name: airspeed, kind: instrument, at: [60, 3, 1]}
  - {name: other-port, kind: static-port, at: [0, -3, 0]}
  - {name: other-altimeter, kind: instrument, at: [60, -3, 1]}
  - {name: pedal, kind: pedal, at: [0, 6, 0]}
  - {name: horn, kind: horn, at: [60, 6, 0]}
  - {name: post, kind: end, at: [0, -6, 0], fixed: true}
  - {name: light, kind: end, at: [60, -6, 0], fixed: true}
  - {name: arm-forward, kind: horn, at: [0, 9, 5]}
  - {name: arm-aft, kind: horn, at: [30, 9, 5]}
  - {name: knob, kind: bulkhead, at: [0, 12, 0]}
  - {name: flap, kind: bulkhead, at: [60, 12, 0]}
bundles: [{name: tied, routes: [wires, plastic], from: 0, to: 90, ties: 4}]
routes:
  - {name: rod, system: rod, line: rod-aluminium-1/2, from: arm-forward, to: arm-aft}
  - {name: heater, system: push-pull, line: odd-casing, from: knob, to: flap}
  - {name: wires, system: wire, line: odd-wire, from: post, to: light, points: [{at: [30, -6, 0.5]}]}
  - {name: plastic, system: static, line: odd-tube, from: port, to: altimeter, points: [{at: [30, 0, 0]}]}
  - {name: metal, system: pitot, line: odd-metal, from: probe, to: airspeed, points: [{at: [30, 3, 0]}]}
  - {name: hose, system: "static: other", line: odd-hose, from: other-port, to: other-altimeter, points: [{at: [30, -3, 0]}]}
  - name: cable
    system: cable
    control: rudder
    line: odd-cable
    from: pedal
    to: horn
    points:
      - {at: [30, 6, 0.1], hold: pulley, axis: [0, 1, 0], diameter: 2}
      - {at: [36, 6, 0.08], hold: fairlead, passes: free, bore: 0.3}
      - {at: [44, 6, 0.0533], hold: clamp, to: rail}
    sleeves: [{from: 10, to: 15}]
    attached: [{kind: turnbuckle, at: 18, length: 3, diameter: 0.4}]
)";

test::CommandRun alone(const std::string& text, const std::string& rule) {
  const TempFolder folder;
  test::write(folder.path() / "project.yaml", text);
  return run({"check", folder.path().string(), "--rule", rule});
}

TEST(RuleAlone, AnswersUnknownWhereWhatItRestsOnIsNotKnown) {
  // These count or measure what is drawn and rest on nothing else.
  const std::vector<std::string> of_the_drawing_alone{"network", "cable-size", "hole-edge"};
  for (const Rule* rule : all_rules()) {
    const std::string name(rule->name);
    if (std::find(of_the_drawing_alone.begin(), of_the_drawing_alone.end(), name) !=
        of_the_drawing_alone.end())
      continue;
    const test::CommandRun result = alone(bare_lines, name);
    EXPECT_EQ(result.code, 1) << name << "\n" << result.out << result.err;
    EXPECT_TRUE(contains(result.out, " unknown: ")) << name << "\n" << result.out << result.err;
  }
}

/// What it says, without the ends of its lines.
std::string said_alone(const std::string& text, const std::string& rule) {
  std::istringstream stream(alone(text, rule).out);
  std::string words;
  for (std::string word; stream >> word;) words += word + " ";
  return words;
}

TEST(RuleAlone, SaysForWhatItIsSilent) {
  EXPECT_TRUE(contains(said_alone(bare_lines, "lag"), "the project states no `climb` rate"));
  EXPECT_TRUE(contains(said_alone(bare_lines, "resonance"), "the project states no `excitation`"));
  EXPECT_TRUE(contains(said_alone(bare_lines, "control-feel"),
                       "for want of its rigged tension, its limit load, its travel, its lever "
                       "ratio, the stretch of odd-cable"));
  EXPECT_TRUE(contains(said_alone(bare_lines, "separation"),
                       "unknown: chafe: cable: how far the line can move is not known"));
}

/// A static line that has a port, an instrument and a drain, and with them an open tee.
std::string joined(const std::string& kind) {
  return R"(linewright: 1
name: joined
units: in
build_tolerance: 0.06
temperature: {min: 30 degF, rigged: 70 degF, max: 110 degF}
load_factor: {positive: 3.8, negative: -1.5}
climb: 1000 ft/min
nodes:
  - {name: port, kind: static-port, at: [0, 0, 0]}
  - {name: middle, kind: )" +
         kind + R"(, at: [10, 0, 2]}
  - {name: altimeter, kind: instrument, at: [20, 0, 4], volume: 20 in3}
routes:
  - {name: aft, system: static, line: tube-nylon-1/4, from: port, to: middle}
  - {name: forward, system: static, line: tube-nylon-1/4, from: middle, to: altimeter}
)";
}

TEST(RuleAlone, ShowsFaultsOfTheNetworkThatItTakesAsSound) {
  for (const std::string rule : {"drainage", "lag"}) {
    const test::CommandRun open = alone(joined("tee"), rule);
    EXPECT_EQ(open.code, 1) << open.out;
    EXPECT_TRUE(contains(open.out, "fail: network: aft: tee middle joins 2 lines")) << open.out;
    EXPECT_EQ(alone(joined("union"), rule).code, 0) << alone(joined("union"), rule).out;
  }
}

TEST(RuleAlone, ShowsNothingOfRulesThatItDoesNotRestOn) {
  EXPECT_FALSE(contains(said_alone(bare_lines, "cable-tension"), "unknown: chafe"));
  EXPECT_FALSE(contains(said_alone(bare_lines, "drainage"), "unknown: cable-tension"));
}

}  // namespace
}  // namespace linewright
