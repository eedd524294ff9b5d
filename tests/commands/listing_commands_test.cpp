#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <numeric>

#include "commands/command_run.hpp"
#include "commands/trade_words.hpp"
#include "input/keys.hpp"
#include "render/keys_text.hpp"
#include "render/layout.hpp"
#include "rules/registry.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::CommandRun;
using test::contains;
using test::run;

void expect_eighty_columns(const std::string& text) {
  for (const std::string& line : test::lines_of(text))
    EXPECT_LE(columns_of(line), text_columns) << line;
}

TEST(RulesCommand, ListsEveryRuleOnce) {
  const CommandRun result = run({"rules"});
  EXPECT_EQ(result.code, 0);
  expect_eighty_columns(result.out);
  const json listed = json::parse(run({"rules", "--format", "json"}).out);
  ASSERT_EQ(listed["rules"].size(), all_rules().size());
  for (const Rule* rule : all_rules())
    EXPECT_TRUE(contains(result.out, std::string(rule->name) + " ")) << rule->name;
}

TEST(ExplainCommand, EveryRuleHasAWholeManual) {
  for (const Rule* rule : all_rules()) {
    const CommandRun result = run({"explain", std::string(rule->name)});
    EXPECT_EQ(result.code, 0) << rule->name;
    expect_eighty_columns(result.out);
    for (const char* part : {"What it judges\n", "Limits\n", "How to mend it\n"})
      EXPECT_TRUE(contains(result.out, part)) << rule->name << ": " << part;
    const json manual =
        json::parse(run({"explain", std::string(rule->name), "--format", "json"}).out)["rule"];
    EXPECT_EQ(manual["limits"].size(), rule->limits.size());
    for (const char* key : {"name", "purpose", "explanation", "catalogue_limits", "mend"})
      EXPECT_TRUE(manual[key].is_string()) << key;
    for (const json& limit : manual["limits"])
      for (const char* key : {"subject", "value", "unit", "source", "mark", "broken"})
        EXPECT_TRUE(limit.contains(key)) << key;
  }
}

TEST(ExplainCommand, AMisspeltRuleGetsASuggestion) {
  const CommandRun result = run({"explain", "bend-radiux"});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, "did you mean 'bend-radius'?"));
}

TEST(ExplainCommand, EveryKeyIsToldInEveryMapThatHasIt) {
  for (const MapSpec* map : all_maps())
    for (const KeySpec& key : map->keys) {
      const CommandRun result = run({"explain", std::string(key.name)});
      EXPECT_EQ(result.code, 0) << key.name;
      expect_eighty_columns(result.out);
      const std::string told = one_line(result.out);
      EXPECT_TRUE(contains(told, one_line("In " + std::string(map->name)))) << key.name;
      EXPECT_TRUE(contains(told, one_line(key.says))) << key.name;
    }
}

TEST(ExplainCommand, ThePageOfAllKeysIsTheManuals) {
  std::ifstream page(LINEWRIGHT_SOURCE_DIR "/examples/manual/keys.md", std::ios::binary);
  const std::string manual{std::istreambuf_iterator<char>(page), {}};
  EXPECT_EQ(run({"explain", "keys"}).out, manual) << "bash tests/demo/refresh writes it anew";
  for (const MapSpec* map : all_maps()) {
    EXPECT_TRUE(contains(manual, "\n## " + std::string(map->name) + "\n"));
    for (const KeySpec& key : map->keys)
      EXPECT_TRUE(contains(manual, "`" + std::string(key.name) + "`")) << key.name;
  }
  EXPECT_EQ(
      json::parse(run({"explain", "keys", "--format", "json"}).out)["keys"].size(),
      std::accumulate(all_maps().begin(), all_maps().end(), std::size_t{0},
                      [](std::size_t sum, const MapSpec* map) { return sum + map->keys.size(); }));
}

TEST(ExplainCommand, AKeyHasItsValueItsNeedAndWhatAloneHasIt) {
  const std::string told = one_line(run({"explain", "guard_gap"}).out);
  EXPECT_EQ(told,
            "guard_gap: a key of project files In a point (`points` of a route) says: between its "
            "flange's rim and a guard value: a length (in, ft, mm, cm or m), greater than zero, "
            "not beyond 10000 in needed: no only of: a pulley");
  EXPECT_TRUE(contains(one_line(run({"explain", "hold"}).out),
                       "value: one of clamp, grommet, bushing, fairlead, pulley"));
}

TEST(ExplainCommand, AWordThatIsRuleAndKeySaysBoth) {
  std::string both;
  for (const std::string& key : key_names())
    if (find_rule(key) != nullptr) both = key;
  ASSERT_EQ(both, "slack");
  const std::string told = run({"explain", both}).out;
  EXPECT_TRUE(contains(told, "How to mend it\n"));
  EXPECT_TRUE(contains(told, "slack: a key of project files\n"));
  const json manual = json::parse(run({"explain", both, "--format", "json"}).out);
  EXPECT_EQ(manual["rule"]["name"], "slack");
  EXPECT_EQ(manual["keys"][0]["map"], "a line");
}

TEST(ExplainCommand, AValueIsToldWithTheKeysThatTakeIt) {
  const std::string grommet = one_line(run({"explain", "grommet"}).out);
  EXPECT_TRUE(contains(grommet, "grommet: a value of the key 'hold' hold: a key of project files"));
  EXPECT_TRUE(contains(grommet, "grommet: a value of the key 'edge'"));
  EXPECT_TRUE(contains(run({"explain", "tee"}).out, "tee: a value of the key 'kind'"));
  EXPECT_TRUE(contains(run({"explain", "conduit"}).out, "conduit: a value of the key 'kind'"));
  EXPECT_EQ(run({"explain", "Static Port"}).out, run({"explain", "static-port"}).out);
  const json told = json::parse(run({"explain", "fairlead", "--format", "json"}).out);
  EXPECT_EQ(told["keys"][0]["name"], "hold") << told;
}

TEST(ExplainCommand, AnEntryOfTheCatalogueIsWhatTheCatalogueSaysOfIt) {
  EXPECT_EQ(run({"explain", "tube-nylon-1/4"}).out, run({"catalogue", "tube-nylon-1/4"}).out);
  EXPECT_TRUE(contains(run({"explain", "tube-nylon"}).out, "tube-nylon-1/4"));
  const auto key_of = [](const std::string& entry) {
    return json::parse(run({"explain", entry, "--format", "json"}).out)["keys"][0]["name"];
  };
  EXPECT_EQ(key_of("tube-nylon-1/4"), "line");
  EXPECT_EQ(key_of("elbow-1/4"), "fitting");
  EXPECT_EQ(key_of("clamp-4"), "hold");
}

TEST(ExplainCommand, AWordOfTheTradeIsWhatFilesCallIt) {
  EXPECT_TRUE(
      contains(one_line(run({"explain", "cushion clamp"}).out), "hold: a key of project files"));
  EXPECT_TRUE(contains(run({"explain", "stringer"}).out, "channels: a key of project files"));
  for (const TradeWord& each : trade_words()) {
    const CommandRun result = run({"explain", std::string(each.word)});
    EXPECT_EQ(result.code, 0) << each.word << result.err;
    EXPECT_TRUE(one_line(result.out)
                    .starts_with(one_line(std::string(each.word) + ": " + std::string(each.says))))
        << result.out;
    expect_eighty_columns(result.out);
  }
  // A capital makes no other word of it, and a value of a key gives way to it.
  EXPECT_TRUE(run({"explain", "FS"}).out.starts_with("FS: fuselage station: "));
  EXPECT_TRUE(contains(one_line(run({"explain", "FS"}).out), "positive aft, in inches"));
  EXPECT_TRUE(contains(run({"explain", "WL"}).out, "waterline: a key of project files"));
  EXPECT_TRUE(contains(run({"explain", "nylon"}).out, "tube-nylon-1/4"));
  EXPECT_TRUE(contains(run({"explain", "cushon clamp"}).err, "did you mean 'cushion clamp'?"));
}

TEST(ExplainCommand, EveryVerdictIsAWordOfTheTrade) {
  for (const std::string verdict : {"pass", "warn", "fail", "unknown", "waived"})
    EXPECT_TRUE(run({"explain", verdict}).out.starts_with(verdict + ": a verdict: ")) << verdict;
}

TEST(ExplainCommand, AnUnknownWordGetsTheNearestAndWhatListsThemAll) {
  EXPECT_TRUE(contains(run({"explain", "gaurd_gap"}).err, "did you mean 'guard_gap'?"));
  const std::string far = run({"explain", "quizzical"}).err;
  EXPECT_TRUE(contains(far, "no rule or key is called 'quizzical'; nearest: ")) << far;
  EXPECT_TRUE(contains(far, "linewright rules lists the rules")) << far;
}

TEST(CatalogueCommand, TheTableFitsTheTerminalAndExplainsItsMarks) {
  const CommandRun result = run({"catalogue"});
  EXPECT_EQ(result.code, 0);
  expect_eighty_columns(result.out);
  EXPECT_TRUE(contains(result.out, "tube-aluminium-1/4 "));
  EXPECT_TRUE(contains(result.out, "clamp-4 "));
  EXPECT_TRUE(contains(result.out, "  m  from memory"));
}

TEST(CatalogueCommand, OneEntryShowsItsSources) {
  const CommandRun result = run({"catalogue", "tube-aluminium-1/4"});
  EXPECT_EQ(result.code, 0);
  expect_eighty_columns(result.out);
  // AC 43.13-1B Table 9-2: 9/16 in for 1/4 in aluminium.
  EXPECT_TRUE(contains(result.out, "0.5625 in")) << result.out;
  EXPECT_TRUE(contains(result.out, "AC 43.13-1B Table 9-2")) << result.out;
  EXPECT_FALSE(contains(result.out, "tube-steel"));
}

TEST(CatalogueCommand, JsonNamesTheSourceAndMarkOfEveryValue) {
  const json listed =
      json::parse(run({"catalogue", "cable-7x19-1/8-steel", "--format", "json"}).out);
  ASSERT_EQ(listed["lines"].size(), 1u);
  EXPECT_TRUE(listed["clamps"].empty());
  const json& line = listed["lines"][0];
  EXPECT_EQ(line["kind"], "cable");
  // AC 43.13-1B Table 7-3: 2,000 lb for 1/8 in 7x19 carbon steel.
  EXPECT_EQ(line["breaking_strength_lbf"]["value"], 2000);
  EXPECT_EQ(line["breaking_strength_lbf"]["mark"], "verified");
  EXPECT_TRUE(contains(line["breaking_strength_lbf"]["source"], "Table 7-3"));
  EXPECT_TRUE(line["youngs_modulus_psi"].is_null());
}

TEST(CatalogueCommand, AMisspeltEntryGetsASuggestion) {
  const CommandRun result = run({"catalogue", "tube-aluminum-1/4"});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, "did you mean 'tube-aluminium-1/4'?")) << result.err;
}

TEST(CatalogueCommand, AProjectAddsItsOwnLines) {
  const test::StarterCopy project;
  project.edit("static.yaml", "nodes:\n",
               "lines:\n"
               "  - {name: tube-soft, kind: plastic-tube, material: nylon, outside: 0.25, "
               "inside: 0.17, minimum_bend_radius: 1, source: the maker's data sheet}\nnodes:\n");
  EXPECT_EQ(run({"catalogue", "tube-soft"}).code, 2);
  const CommandRun result = run({"catalogue", "tube-soft", "--project", project.root()});
  EXPECT_EQ(result.code, 0) << result.err;
  EXPECT_TRUE(contains(result.out, "defined in static.yaml:")) << result.out;
  EXPECT_TRUE(contains(result.out, "the maker's data sheet (the project's own figure)"));
  EXPECT_TRUE(contains(run({"catalogue", "--project", project.root()}).out, "tube-soft"));
}

TEST(CutlistCommand, GivesEveryRouteInEachFormat) {
  const test::StarterCopy project;
  const CommandRun text = run({"cutlist", project.root()});
  EXPECT_EQ(text.code, 0) << text.err;
  expect_eighty_columns(text.out);
  const json cuts = json::parse(run({"cutlist", project.root(), "--format", "json"}).out);
  ASSERT_EQ(cuts["routes"].size(), 5u);
  for (const json& route : cuts["routes"]) {
    for (const char* key : {"name", "system", "line", "length_in", "cut_length_in", "volume_in3",
                            "mass_lb", "bends", "straight_after_in", "minimum_bend_radius_in"})
      EXPECT_TRUE(route.contains(key)) << key;
    for (const json& bend : route["bends"])
      for (const char* key : {"at", "radius_in", "angle_deg", "rotation_deg", "straight_before_in",
                              "distance_in", "mark_start_in", "mark_end_in"})
        EXPECT_TRUE(bend.contains(key)) << key;
  }
  ASSERT_EQ(cuts["systems"].size(), 1u);
  for (const char* key : {"name", "length_in", "volume_in3"})
    EXPECT_TRUE(cuts["systems"][0].contains(key)) << key;
  // A header, a bend in each of three routes, and two routes without.
  const CommandRun csv = run({"cutlist", project.root(), "--format", "csv"});
  EXPECT_EQ(test::lines_of(csv.out).size(), 6u) << csv.out;
}

TEST(CutlistCommand, AStraightRouteIsAsLongAsItsEndsAreApart) {
  const test::StarterCopy project;
  const json cuts = json::parse(run({"cutlist", project.root(), "--format", "json"}).out);
  const json& drain = cuts["routes"][4];
  EXPECT_EQ(drain["name"], "static-drain");
  EXPECT_NEAR(drain["length_in"].get<double>(), 14.25 - 8, 1e-9);
}

TEST(CutlistCommand, BadInputGivesNoResult) {
  const test::StarterCopy project;
  project.edit("static.yaml", "to: drain\n", "to: drian\n");
  const CommandRun result = run({"cutlist", project.root(), "--format", "csv"});
  EXPECT_EQ(result.code, 2);
  EXPECT_EQ(result.out, "");
  EXPECT_TRUE(contains(result.err, "did you mean 'drain'?")) << result.err;
}

}  // namespace
}  // namespace linewright
