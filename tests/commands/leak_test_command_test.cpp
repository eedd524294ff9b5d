#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"
#include "render/layout.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;

using Words = std::vector<std::string>;

Words with(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

/// The starter project and a day on which to test it.
class Hangar {
 public:
  Words words(const std::string& action, const Words& more = {}) const {
    return with({"leak-test", action, project.root(), "--system", "static", "--field-elevation",
                 "0", "--altimeter-setting", "29.9213", "--temperature", "59"},
                more);
  }
  CommandRun plan(const Words& more = {}) const { return run(words("plan", more)); }
  CommandRun judge(const std::string& log, const Words& more = {}) const {
    test::write(log_file(), log);
    return run(words("judge", with({"--readings", log_file()}, more)));
  }
  std::string log_file() const { return folder / "log.csv"; }

  test::StarterCopy project;
  test::TempFolder folder;
};

const std::string tight_log =
    "time_s,altitude_ft,temperature_degF\n0,1000,59.0\n15,995,59.0\n30,991,59.1\n45,986,59.1\n"
    "60,982,59.2\n75,978,59.2\n90,973,59.3\n105,969,59.3\n120,964,59.4\n135,960,59.4\n"
    "150,956,59.5\n";
const std::string leaking_log =
    "time_s,altitude_ft,temperature_degF\n0,1000,59.0\n15,940,59.0\n30,884,59.0\n45,831,59.0\n"
    "60,782,59.0\n75,736,59.0\n";
const std::string undecided_log = "time_s,altitude_ft\n0,1000\n30,960\n60,922\n90,886\n120,851\n";

void expect_eighty_columns(const std::string& text) {
  for (const std::string& line : test::lines_of(text))
    EXPECT_LE(columns_of(line), text_columns) << line;
}

void expect_refused(const CommandRun& result, const std::string& part) {
  EXPECT_EQ(result.code, 2) << result.out;
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, part)) << result.err;
}

TEST(LeakTestPlanCommand, HasTheKeysOfItsJson) {
  const Hangar hangar;
  const json plan = json::parse(hangar.plan({"--format", "json"}).out);
  EXPECT_EQ(plan["system"], "static");
  EXPECT_GT(plan["volume_in3"].get<double>(), 6);
  EXPECT_EQ(plan["field"]["elevation_ft"], 0);
  EXPECT_NEAR(plan["field"]["pressure_inhg"].get<double>(), 29.9213, 1e-9);
  EXPECT_EQ(plan["field"]["temperature_degF"], 59);
  EXPECT_EQ(plan["test"]["altitude_ft"], 1000);
  EXPECT_NEAR(plan["test"]["pressure_inhg"].get<double>(), 28.856, 0.001);
  EXPECT_NEAR(plan["test"]["pressure_drop_inhg"].get<double>(), 1.0656, 0.0001);
  EXPECT_NEAR(plan["test"]["stroke_in3"].get<double>() / plan["volume_in3"].get<double>(), 0.0369,
              0.0001);
  EXPECT_EQ(plan["limit"]["loss_ft"], 100);
  EXPECT_EQ(plan["limit"]["period_s"], 60);
  EXPECT_TRUE(contains(plan["limit"]["source"], "14 CFR 23.1325(b)(2)(i)"));
  // 3608.43 - 3252.34 Pa, and that share of the volume at 101,325 Pa [calculated from the standard
  // atmosphere].
  EXPECT_NEAR(plan["at_limit"]["pressure_rise_inhg"].get<double>(), 356.09 / 3386.389, 1e-5);
  EXPECT_NEAR(plan["at_limit"]["leak_in3_per_min"].get<double>(),
              plan["volume_in3"].get<double>() * 356.09 / 101'325, 1e-5);
  EXPECT_NEAR(plan["temperature_effect_ft_per_degF"].get<double>(), -53, 1);
  EXPECT_EQ(plan["sections"].size(), 10u);  // six nodes and five routes in a tree
  EXPECT_FALSE(plan["cautions"].empty());
}

TEST(LeakTestPlanCommand, GivesTheLikeForPitotInKnots) {
  const Hangar hangar;
  std::string text = test::read(hangar.project.file("static.yaml"));
  for (std::size_t at = 0; (at = text.find("system: static", at)) != std::string::npos;)
    text.replace(at, 14, "system: pitot");
  test::write(hangar.project.file("static.yaml"), text);
  Words words = hangar.words("plan", {"--format", "json"});
  words[4] = "pitot";
  const json plan = json::parse(run(words).out);
  EXPECT_EQ(plan["test"]["airspeed_kt"], 150);
  EXPECT_NEAR(plan["test"]["water_column_20c_in"].get<double>(), 14.86, 0.01);
  EXPECT_EQ(plan["limit"]["loss_kt"], 10);
  EXPECT_TRUE(contains(plan["limit"]["source"], "AC 43.13-1B para 12-59"));
  // One kelvin at 150 kt: 7.13 kt [calculated from the gas law]; the curve bends by some 2 %.
  EXPECT_NEAR(plan["temperature_effect_kt_per_degF"].get<double>(), 7.13 / 1.8, 0.08);
  words.insert(words.end(), {"--airspeed", "70 kt"});
  EXPECT_EQ(json::parse(run(words).out)["test"]["airspeed_kt"], 70);
  words.back() = "29";
  expect_refused(run(words), "--airspeed must lie between 30 and 400 kt");
  words[words.size() - 2] = "--drop";
  words.back() = "1";
  expect_refused(run(words), "--drop is for static systems");
}

TEST(LeakTestPlanCommand, FitsTheTerminalWithItsCautionsFirst) {
  const Hangar hangar;
  const CommandRun result = hangar.plan({"--syringe", "60 mL"});
  EXPECT_EQ(result.code, 0);
  EXPECT_EQ(result.err, "");
  expect_eighty_columns(result.out);
  EXPECT_LT(result.out.find("Cautions"), result.out.find("Volume"));
  for (const char* part : {"by mouth", "149", "Connect", "port-left", "A leak exactly at the limit",
                           "1 stroke", "the search", "1. Undo"})
    EXPECT_TRUE(contains(one_line(result.out), part)) << part;
}

// 60 mL is 3.661 in3.
TEST(LeakTestPlanCommand, ASyringeIsInMillilitresWhateverTheUnits) {
  const Hangar hangar;
  for (const char* unit : {"in", "fraction", "mm"}) {
    const std::string plan = hangar.plan({"--syringe", "60 mL", "--units", unit}).out;
    EXPECT_TRUE(contains(one_line(plan), "1 stroke of a 60 mL syringe")) << plan;
    EXPECT_TRUE(contains(one_line(plan), " mL) in one slow stroke") ||
                contains(one_line(plan), " mL in one slow stroke"))
        << plan;
  }
  EXPECT_TRUE(
      contains(one_line(hangar.plan({"--syringe", "3.661 in3"}).out), "of a 59.99 mL syringe"));
}

TEST(LeakTestPlanCommand, TakesUnitsAndNegativeNumbers) {
  const Hangar hangar;
  const auto field = [&](const Words& more) {
    return json::parse(run(with({"leak-test", "plan", hangar.project.root(), "--system", "static",
                                 "--format", "json"},
                                more))
                           .out)["field"];
  };
  const json metric = field({"--field-elevation", "304.8 m", "--altimeter-setting", "1013.25 hPa",
                             "--temperature", "15 degC"});
  EXPECT_NEAR(metric["elevation_ft"].get<double>(), 1000, 1e-6);
  EXPECT_NEAR(metric["altimeter_setting_inhg"].get<double>(), 29.9213, 1e-4);
  EXPECT_NEAR(metric["temperature_degF"].get<double>(), 59, 1e-9);
  const json low = field(
      {"--field-elevation", "-200", "--altimeter-setting", "30", "--temperature", "-10 degF"});
  EXPECT_EQ(low["elevation_ft"], -200);
  EXPECT_EQ(low["temperature_degF"], -10);
}

TEST(LeakTestPlanCommand, TakesASuction) {
  const Hangar hangar;
  const json plan = json::parse(hangar.plan({"--drop", "1 inHg", "--format", "json"}).out);
  EXPECT_NEAR(plan["test"]["altitude_ft"].get<double>(), 937.6, 0.1);
  EXPECT_NEAR(plan["test"]["pressure_drop_inhg"].get<double>(), 1, 1e-6);
}

TEST(LeakTestCommand, RefusesValuesThatMakeNoSense) {
  const Hangar hangar;
  Words words = hangar.words("plan");
  words[8] = "1013";
  expect_refused(run(words), "--altimeter-setting must lie between 26 and 33 inHg, not 1013");
  words[8] = "29,92";
  expect_refused(run(words), "--altimeter-setting: expected a pressure");
  words[8] = "nan";
  expect_refused(run(words), "finite");
  words[8] = "29.92";
  words[6] = "1000 lbf";
  expect_refused(run(words), "--field-elevation: expected a length");
  expect_refused(hangar.plan({"--syringe", "60"}), "--syringe needs its unit: '60 mL'");
  expect_refused(hangar.plan({"--syringe", "0 mL"}), "--syringe must lie");
  expect_refused(hangar.plan({"--drop", "0.1"}), "--drop must lie between 0.25 and 5 inHg");
  expect_refused(hangar.plan({"--airspeed", "150"}), "--airspeed is for pitot systems");
}

TEST(LeakTestCommand, NeedsToKnowTheDayAndTheSystem) {
  const Hangar hangar;
  for (const std::string missing :
       {"--system", "--field-elevation", "--altimeter-setting", "--temperature"}) {
    Words words = hangar.words("plan");
    const auto at = std::find(words.begin(), words.end(), missing);
    words.erase(at, at + 2);
    expect_refused(run(words), missing);
  }
}

TEST(LeakTestCommand, SuggestsWhatMayHaveBeenMeant) {
  const Hangar hangar;
  Words words = hangar.words("plan");
  words[4] = "statc";
  expect_refused(run(words), "no system is called 'statc'; did you mean 'static'?");
  words[4] = "pitot";
  expect_refused(run(words), "no system is called 'pitot' (there are: 'static')");
  expect_refused(run(hangar.words("paln")), "did you mean 'plan'?");
  expect_refused(hangar.plan({"--reading", "x"}), "did you mean '--readings'?");
}

TEST(LeakTestCommand, AsksWhichOfTwoSystemsOfAKind) {
  const Hangar hangar;
  std::string text = test::read(hangar.project.file("static.yaml"));
  text.replace(text.rfind("system: static"), 14, "system: \"static: drain\"");
  for (std::size_t at = 0; (at = text.find("system: static\n", at)) != std::string::npos;)
    text.replace(at, 15, "system: \"static: main\"\n");
  test::write(hangar.project.file("static.yaml"), text);
  expect_refused(hangar.plan(), "there are 2 systems 'static': 'static: main', 'static: drain'");
  Words words = hangar.words("plan", {"--format", "json"});
  words[4] = "main";
  const json plan = json::parse(run(words).out);
  EXPECT_EQ(plan["system"], "static: main");
  EXPECT_TRUE(contains(plan["notes"].dump(), "static: drain at tee-drain"));
}

TEST(LeakTestCommand, RefusesASystemInPieces) {
  const Hangar hangar;
  hangar.project.edit("static.yaml", "from: tee-ports\n    to: tee-drain",
                      "from: spare-one\n    to: spare-two");
  hangar.project.edit("static.yaml", "nodes:\n",
                      "nodes:\n  - {name: spare-one, kind: end, at: [190, 0, 20.5]}\n"
                      "  - {name: spare-two, kind: end, at: [142, 0, 15]}\n");
  expect_refused(hangar.plan(), "system 'static' is in 3 pieces");
}

TEST(LeakTestCommand, KeepsPlanAndJudgeApart) {
  const Hangar hangar;
  expect_refused(run(hangar.words("judge")), "leak-test judge needs --readings FILE");
  expect_refused(hangar.plan({"--readings", "log.csv"}), "belong to leak-test judge");
  expect_refused(hangar.judge(tight_log, {"--date", "2026-05-01"}), "--date belongs to --record");
}

TEST(LeakTestJudgeCommand, PassesATightSystemWithExitZero) {
  const Hangar hangar;
  const CommandRun result = hangar.judge(tight_log);
  EXPECT_EQ(result.code, 0) << result.out;
  EXPECT_TRUE(contains(result.out, "Verdict       pass")) << result.out;
  expect_eighty_columns(result.out);
}

TEST(LeakTestJudgeCommand, FailsALeakAndAnUndecidedLogWithExitOne) {
  const Hangar hangar;
  const CommandRun leaking = hangar.judge(leaking_log);
  EXPECT_EQ(leaking.code, 1);
  EXPECT_TRUE(contains(leaking.out, "Verdict       fail")) << leaking.out;
  const CommandRun undecided = hangar.judge(undecided_log);
  EXPECT_EQ(undecided.code, 1);
  EXPECT_TRUE(contains(undecided.out, "Verdict       unknown")) << undecided.out;
  EXPECT_TRUE(contains(undecided.out, "No temperature is logged"));
}

TEST(LeakTestJudgeCommand, AddsItsKeysToThePlan) {
  const Hangar hangar;
  const json judged = json::parse(hangar.judge(leaking_log, {"--format", "json"}).out);
  EXPECT_EQ(judged["verdict"], "fail");
  EXPECT_NEAR(judged["loss_ft"].get<double>(), 218, 1e-6);
  EXPECT_NEAR(judged["loss_corrected_ft"].get<double>(), 218, 1e-6);
  EXPECT_LT(judged["loss_interval_ft"][0], 218);
  EXPECT_GT(judged["loss_interval_ft"][1], 218);
  EXPECT_NEAR(judged["time_constant_s"].get<double>(), 245, 10);
  EXPECT_FALSE(judged["reasons"].empty());
  EXPECT_EQ(judged["test"]["altitude_ft"], 1000);
  const json undecided = json::parse(hangar.judge(undecided_log, {"--format", "json"}).out);
  EXPECT_EQ(undecided["verdict"], "unknown");
  EXPECT_TRUE(undecided["loss_corrected_ft"].is_null());
}

TEST(LeakTestJudgeCommand, SaysWhatToDoNextAndWhichReadingStandsOut) {
  const Hangar hangar;
  const json passed = json::parse(hangar.judge(tight_log, {"--format", "json"}).out);
  EXPECT_TRUE(passed["next"].empty());
  EXPECT_TRUE(passed["stands_out"].empty());
  EXPECT_EQ(passed["log"]["thermometer"], "moves");
  std::string slip = tight_log;
  slip.replace(slip.find("973"), 3, "793");
  const json unknown = json::parse(hangar.judge(slip, {"--format", "json"}).out);
  EXPECT_EQ(unknown["verdict"], "unknown");
  EXPECT_FALSE(unknown["next"].empty());
  ASSERT_EQ(unknown["stands_out"].size(), 1u);
  const json& odd = unknown["stands_out"][0];
  EXPECT_EQ(odd["file"], hangar.log_file());
  EXPECT_EQ(odd["line"], 8);
  EXPECT_EQ(odd["time_s"], 90);
  EXPECT_EQ(odd["altitude_ft"], 793);
  EXPECT_NEAR(odd["by_ft"].get<double>(), -180.5, 1e-6);
  const std::string text = hangar.judge(slip).out;
  EXPECT_TRUE(contains(text, "What to do next")) << text;
  EXPECT_TRUE(contains(text, "line 8")) << text;
  EXPECT_TRUE(contains(hangar.judge(leaking_log).out, "Find the leak")) << text;
}

TEST(LeakTestJudgeCommand, PointsAtTheReadingThatIsWrong) {
  const Hangar hangar;
  const CommandRun result = hangar.judge("time_s,altitude_ft\n0,1000\n10,99x\n");
  expect_refused(result, "log.csv:3:4: error: altitude_ft:");
  EXPECT_TRUE(contains(result.err, "  10,99x\n     ^")) << result.err;
  EXPECT_TRUE(contains(result.err, "1 error in the readings; nothing was judged"));
  expect_refused(run(hangar.words("judge", {"--readings", hangar.folder / "none.csv"})),
                 "none.csv: error: there is no such file");
  expect_refused(run(hangar.words("judge", {"--readings", ""})), "empty name");
  expect_refused(run(hangar.words("judge", {"--readings", hangar.project.root()})), "a folder");
}

TEST(LeakTestRecord, IsWrittenOnceWithItsDateAndEveryReading) {
  const Hangar hangar;
  const std::string record = hangar.folder / "record.txt";
  const CommandRun first = hangar.judge(tight_log, {"--record", record, "--date", "2026-05-01"});
  EXPECT_EQ(first.code, 0) << first.err;
  EXPECT_TRUE(contains(first.err, "wrote " + record));
  const std::string text = test::read(record);
  expect_eighty_columns(text);
  for (const char* part : {"LEAK TEST RECORD", "Date          2026-05-01", "Verdict       pass",
                           "Signature", "temperature_degF", "982", "no certificate"})
    EXPECT_TRUE(contains(text, part)) << part;
  expect_refused(hangar.judge(tight_log, {"--record", record, "--date", "2026-05-02"}),
                 "already there");
  EXPECT_EQ(test::read(record), text);
}

TEST(LeakTestRecord, IsKeptOfAFailToo) {
  const Hangar hangar;
  const std::string record = hangar.folder / "record.txt";
  EXPECT_EQ(hangar.judge(leaking_log, {"--record", record}).code, 1);
  EXPECT_TRUE(contains(test::read(record), "Verdict       fail"));
}

TEST(LeakTestRecord, RefusesDaysThatAreNotInTheCalendar) {
  const Hangar hangar;
  const std::string record = hangar.folder / "record.txt";
  for (const char* date :
       {"2026-02-29", "2026-13-01", "2026-5-1", "01.05.2026", "2026-05-00", "tomorrow", ""}) {
    expect_refused(hangar.judge(tight_log, {"--record", record, "--date", date}),
                   "--date must be a day as YYYY-MM-DD");
    EXPECT_FALSE(test::fs::exists(record));
  }
  expect_refused(hangar.judge(tight_log, {"--record", hangar.folder / "none/x"}), "cannot write");
}

TEST(LeakTestRecord, IsWrittenTogetherWithTheResultOrNotAtAll) {
  const Hangar hangar;
  const std::string record = hangar.folder / "record.txt";
  const std::string result = hangar.folder / "result.txt";
  expect_refused(
      hangar.judge(tight_log, {"--record", record, "--output", hangar.folder / "none/x"}),
      "cannot write");
  EXPECT_FALSE(test::fs::exists(record));
  expect_refused(
      hangar.judge(tight_log, {"--output", result, "--record", hangar.folder / "none/x"}),
      "cannot write");
  EXPECT_FALSE(test::fs::exists(result));
  expect_refused(hangar.judge(tight_log, {"--record", record, "--output", record, "--force"}),
                 "cannot be both");
  EXPECT_FALSE(test::fs::exists(record));
  EXPECT_EQ(hangar.judge(tight_log, {"--record", record, "--output", result}).code, 0);
  EXPECT_TRUE(test::fs::exists(record) && test::fs::exists(result));
}

TEST(LeakTestRecord, IsNotWrittenWhereNothingWasJudged) {
  const Hangar hangar;
  const std::string record = hangar.folder / "record.txt";
  expect_refused(hangar.judge("time_s,altitude_ft\n0,1000\n", {"--record", record}), "no log");
  EXPECT_FALSE(test::fs::exists(record));
}

TEST(LeakTestCommand, HasHelpThatFitsTheTerminal) {
  const CommandRun help = run({"leak-test", "--help"});
  EXPECT_EQ(help.code, 0);
  EXPECT_TRUE(contains(help.out, "Example: linewright leak-test plan"));
  expect_eighty_columns(help.out);
}

TEST(LeakTestCommand, SaysTheSameFromRunToRun) {
  const Hangar hangar;
  EXPECT_EQ(hangar.plan().out, hangar.plan().out);
  EXPECT_EQ(hangar.judge(undecided_log).out, hangar.judge(undecided_log).out);
}

class DemoLog : public testing::TestWithParam<std::pair<std::string, std::string>> {};

TEST_P(DemoLog, HasItsVerdict) {
  const auto& [name, verdict] = GetParam();
  const std::string routes = LINEWRIGHT_SOURCE_DIR "/routes/";
  const CommandRun result =
      run({"leak-test", "judge", routes + "mended.yaml", "--system", "static", "--field-elevation",
           "1200", "--altimeter-setting", "29.92", "--temperature", "64", "--readings",
           routes + "leak-test-" + name + ".csv", "--format", "json"});
  EXPECT_EQ(result.code, verdict == "pass" ? 0 : 1) << result.err;
  EXPECT_EQ(json::parse(result.out)["verdict"], verdict);
}

INSTANTIATE_TEST_SUITE_P(LeakTest, DemoLog,
                         testing::Values(std::pair("tight", "pass"), std::pair("leaking", "fail"),
                                         std::pair("unsettled", "unknown")));

TEST(LeakTestPlanCommand, OffersOnlySystemsThatCanBeTested) {
  const auto refused = [](const std::string& system) {
    return run({"leak-test", "plan", LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml", "--system",
                system, "--field-elevation", "800", "--altimeter-setting", "29.95", "--temperature",
                "64"});
  };
  expect_refused(refused("statik"), "did you mean 'static'? (there are: 'static', 'pitot')");
  EXPECT_FALSE(contains(refused("ruder").err, "rudder"));
}

/// The demo's tail: two ports, their tee, and the line forward to a cap at the drain's tee.
CommandRun demo_part(const std::string& action, const Words& more) {
  return run(with({"leak-test", action, LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml", "--system",
                   "static", "--field-elevation", "1200", "--altimeter-setting", "29.92",
                   "--temperature", "64", "--format", "json"},
                  more));
}

TEST(LeakTestPart, IsPlannedWithItsCapsAndTheTestSetsVolume) {
  const CommandRun result =
      demo_part("plan", {"--at", "port-left", "--cap", "tee-drain", "--gauge-volume", "9 in3"});
  ASSERT_EQ(result.code, 0) << result.err;
  const json plan = json::parse(result.out);
  const json& part = plan["part"];
  EXPECT_EQ(part["at"], "port-left");
  EXPECT_EQ(part["caps"], (json{"static-drop at tee-drain"}));
  EXPECT_EQ(part["gauge_volume_in3"], 9);
  EXPECT_EQ(part["gauge_volume_stated"], true);
  EXPECT_NEAR(part["tested_in3"].get<double>(), plan["volume_in3"].get<double>() + 9, 1e-9);
  EXPECT_NEAR(part["system_volume_in3"].get<double>(), 43.888, 0.001);
  EXPECT_LT(part["share_loss_ft"].get<double>(), 100);
  EXPECT_GT(part["whole_loss_ft"].get<double>(), 100);
  EXPECT_EQ(plan["limit"]["loss_ft"], part["share_loss_ft"]);
  EXPECT_EQ(plan["connection"]["cap"], (json{"port-right"}));
}

TEST(LeakTestPart, AWholeSystemWithoutTheOptionsIsTestedAsBefore) {
  const json plan = json::parse(demo_part("plan", {}).out);
  EXPECT_TRUE(plan["part"].is_null());
  EXPECT_EQ(plan["limit"]["loss_ft"], 100);
}

TEST(LeakTestPart, IsJudgedWithTheSameOptions) {
  const std::string log = LINEWRIGHT_SOURCE_DIR "/routes/leak-test-leaking.csv";
  const CommandRun result = demo_part("judge", {"--at", "port-left", "--cap", "tee-drain",
                                                "--gauge-volume", "1 in3", "--readings", log});
  EXPECT_EQ(result.code, 1) << result.err;
  // 189 ft with the temperature taken out: over the share, and under what the whole may leak here.
  EXPECT_EQ(json::parse(result.out)["verdict"], "unknown");
}

TEST(LeakTestPart, RefusesWhatIsNoPart) {
  expect_refused(demo_part("plan", {"--at", "port-lift"}), "has no node 'port-lift'");
  expect_refused(demo_part("plan", {"--at", "port-left", "--cap", "port-left"}),
                 "the test set is connected there");
  expect_refused(demo_part("plan", {"--gauge-volume", "9"}),
                 "--gauge-volume needs its unit: '9 mL' or '9 in3'");
}

}  // namespace
}  // namespace linewright
