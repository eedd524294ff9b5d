// What is cut, what is bought and what is scheduled of the demo add up with each other.

#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using nlohmann::json;
using test::run;

const std::string mended = LINEWRIGHT_SOURCE_DIR "/routes/mended.yaml";

/// A list of a command's JSON.
std::vector<json> told(const std::string& command, const std::string& list) {
  return json::parse(run({command, mended, "--format", "json"}).out).at(list);
}

TEST(Lists, LineToBuyIsTheCutLengthsOfTheCutList) {
  std::map<std::string, double> cut_in;
  for (const json& route : told("cutlist", "routes"))
    if (!route.at("line").get<std::string>().starts_with("cable"))
      cut_in[route.at("line")] += route.at("cut_length_in").get<double>();
  // Where the lengths sold are stated, whole ones are bought.
  int compared = 0;
  for (const json& row : told("parts", "parts")) {
    const auto line = cut_in.find(row.at("size").get<std::string>());
    if (line == cut_in.end() || row.at("unit") != "in") continue;
    EXPECT_NEAR(row.at("quantity").get<double>(), line->second, 1e-6) << line->first;
    ++compared;
  }
  EXPECT_EQ(compared, 4) << "nylon tube, wire, pushrod and casing";
}

TEST(Lists, ClampsToBuyAreThoseOfTheSchedule) {
  std::map<std::string, int> scheduled;
  for (const json& support : told("schedule", "supports"))
    if (support.at("hold") == "clamp" && support.at("clamp").is_string())
      ++scheduled[support.at("clamp")];
  std::map<std::string, int> bought;
  for (const json& row : told("parts", "parts"))
    if (row.at("item") == "clamp") bought[row.at("size")] = row.at("quantity").get<int>();
  EXPECT_FALSE(bought.empty());
  EXPECT_EQ(bought, scheduled);
}

TEST(Lists, EveryHoleWithAGrommetOrBushingIsBoughtItsOwn) {
  int scheduled = 0;
  for (const json& hole : told("schedule", "holes"))
    scheduled += hole.at("edge") == "grommet" || hole.at("edge") == "bushing" ? 1 : 0;
  int bought = 0;
  for (const json& row : told("parts", "parts"))
    if (row.at("item") == "grommet" || row.at("item") == "bushing")
      bought += row.at("quantity").get<int>();
  EXPECT_GT(scheduled, 0);
  EXPECT_EQ(bought, scheduled);
}

}  // namespace
}  // namespace linewright
