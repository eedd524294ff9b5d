#include <gtest/gtest.h>

#include <numbers>
#include <set>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

/// One row of the two published tube tables: AC 43.13-1B Table 9-2 (minimum bend radius to
/// centreline) and FAA-H-8083-30 chapter 7, Table 7-5 (distance between supports), both recalled.
/// Steel spacing from 1/4 in up is MIL-H-8891A Table II. Inches; a negative radius stands for "not
/// listed".
struct PublishedTube {
  std::string size;
  double outside;
  double aluminium_bend;
  double steel_bend;
  double aluminium_spacing;
  double steel_spacing;
  Mark steel_spacing_mark;
};

const std::vector<PublishedTube> published{
    {"1/8", 1.0 / 8, 3.0 / 8, -1, 9 + 1.0 / 2, 11 + 1.0 / 2, Mark::from_memory},
    {"3/16", 3.0 / 16, 7.0 / 16, 21.0 / 32, 12, 14, Mark::from_memory},
    {"1/4", 1.0 / 4, 9.0 / 16, 7.0 / 8, 13 + 1.0 / 2, 16, Mark::verified},
    {"5/16", 5.0 / 16, 3.0 / 4, 1 + 1.0 / 8, 15, 18, Mark::verified},
    {"3/8", 3.0 / 8, 15.0 / 16, 1 + 5.0 / 16, 16 + 1.0 / 2, 20, Mark::verified},
    {"1/2", 1.0 / 2, 1 + 1.0 / 4, 1 + 3.0 / 4, 19, 23, Mark::verified},
    {"5/8", 5.0 / 8, 1 + 1.0 / 2, 2 + 3.0 / 16, 22, 25 + 1.0 / 2, Mark::verified},
    {"3/4", 3.0 / 4, 1 + 3.0 / 4, 2 + 5.0 / 8, 24, 27 + 1.0 / 2, Mark::verified},
    {"1", 1.0, 3, 3 + 1.0 / 2, 26 + 1.0 / 2, 30, Mark::verified},
};

class RigidTube : public testing::TestWithParam<PublishedTube> {};

TEST_P(RigidTube, HasItsOutsideDiameterAndTheUsualWall) {
  const PublishedTube& row = GetParam();
  for (const std::string material : {"aluminium", "steel"}) {
    const Line& tube = line_called("tube-" + material + "-" + row.size);
    EXPECT_EQ(tube.kind, LineKind::rigid_tube);
    EXPECT_EQ(tube.material, material);
    EXPECT_DOUBLE_EQ(tube.outside_diameter_in, row.outside);
    EXPECT_NEAR(tube.inside_diameter_in, row.outside - 2 * 0.035, 1e-12);
  }
}

TEST_P(RigidTube, HasTheMinimumBendRadiusOfTable92) {
  const PublishedTube& row = GetParam();
  expect_sourced(line_called("tube-aluminium-" + row.size).minimum_bend_radius_in,
                 row.aluminium_bend, "AC 43.13-1B Table 9-2", Mark::from_memory);
  const Line& steel = line_called("tube-steel-" + row.size);
  if (row.steel_bend < 0)
    EXPECT_FALSE(steel.minimum_bend_radius_in.has_value());
  else
    expect_sourced(steel.minimum_bend_radius_in, row.steel_bend, "AC 43.13-1B Table 9-2",
                   Mark::from_memory);
}

TEST_P(RigidTube, HasThePublishedSupportSpacing) {
  const PublishedTube& row = GetParam();
  expect_sourced(line_called("tube-aluminium-" + row.size).support_spacing_in,
                 row.aluminium_spacing, "FAA-H-8083-30 chapter 7, Table 7-5", Mark::from_memory);
  const bool verified = row.steel_spacing_mark == Mark::verified;
  expect_sourced(line_called("tube-steel-" + row.size).support_spacing_in, row.steel_spacing,
                 verified ? "MIL-H-8891A Table II" : "FAA-H-8083-30 chapter 7, Table 7-5",
                 row.steel_spacing_mark);
}

TEST_P(RigidTube, BendsAtTheMinimumUnlessAPointSaysOtherwise) {
  const PublishedTube& row = GetParam();
  EXPECT_NEAR(line_called("tube-aluminium-" + row.size).usual_bend_radius_in.value(),
              row.aluminium_bend, 1e-12);
  EXPECT_EQ(line_called("tube-steel-" + row.size).usual_bend_radius_in.has_value(),
            row.steel_bend > 0);
}

TEST_P(RigidTube, ComesInEveryWallThatLeavesABore) {
  const PublishedTube& row = GetParam();
  const std::vector<std::pair<std::string, double>> walls{
      {"0.028", 0.028}, {"0.035", 0.035}, {"0.049", 0.049}, {"0.065", 0.065}};
  for (const std::string material : {"aluminium", "steel"})
    for (const auto& [text, wall] : walls) {
      const std::string name = "tube-" + material + "-" + row.size + "-" + text;
      const double bore = row.outside - 2 * wall;
      if (bore <= 0) {
        EXPECT_EQ(built_in_catalogue().find_line(name), nullptr) << name;
        continue;
      }
      EXPECT_NEAR(line_called(name).inside_diameter_in, bore, 1e-12) << name;
      EXPECT_DOUBLE_EQ(line_called(name).outside_diameter_in, row.outside) << name;
    }
}

std::string name_of(const testing::TestParamInfo<PublishedTube>& row) {
  std::string name = "size_" + row.param.size;
  for (char& letter : name)
    if (letter == '/') letter = '_';
  return name;
}

INSTANTIATE_TEST_SUITE_P(PublishedTables, RigidTube, testing::ValuesIn(published), name_of);

// Nominal bore of 1/4 x 0.035: 0.180 in; of 3/16 x 0.028: 0.1315 in (US Navy 14018 Table 6-6).
TEST(RigidTubes, HaveTheBoresOfTheNavyTable) {
  EXPECT_NEAR(line_called("tube-aluminium-1/4").inside_diameter_in, 0.180, 1e-12);
  EXPECT_NEAR(line_called("tube-aluminium-3/16-0.028").inside_diameter_in, 0.1315, 1e-12);
  EXPECT_NEAR(line_called("tube-aluminium-5/16-0.049").inside_diameter_in, 0.2145, 1e-12);
  EXPECT_NEAR(line_called("tube-aluminium-3/8-0.049").inside_diameter_in, 0.277, 1e-12);
  EXPECT_NEAR(line_called("tube-aluminium-1/8-0.020").inside_diameter_in, 0.085, 1e-12);
}

TEST(RigidTubes, TheTwoSmallestAlsoComeInAThinnerWall) {
  for (const std::string material : {"aluminium", "steel"}) {
    EXPECT_NEAR(line_called("tube-" + material + "-1/8-0.020").inside_diameter_in, 0.085, 1e-12);
    EXPECT_NEAR(line_called("tube-" + material + "-3/16-0.020").inside_diameter_in, 0.1475, 1e-12);
    EXPECT_EQ(built_in_catalogue().find_line("tube-" + material + "-1/4-0.020"), nullptr);
  }
}

TEST(RigidTubes, TheNameWithoutAWallIsTheSameTubeAsTheUsualWall) {
  const Line& usual = line_called("tube-aluminium-1/4");
  const Line& named = line_called("tube-aluminium-1/4-0.035");
  EXPECT_EQ(usual.inside_diameter_in, named.inside_diameter_in);
  EXPECT_EQ(usual.minimum_bend_radius_in, named.minimum_bend_radius_in);
  EXPECT_EQ(usual.weight_lb_per_in, named.weight_lb_per_in);
}

// 1/4 x 0.035 of 5052 empty weighs 0.002293 lb/in (worked by hand: 0.023640 in2 at 0.097 lb/in3).
TEST(RigidTubes, WeighTheirSectionTimesTheirDensity) {
  const Line& aluminium = line_called("tube-aluminium-1/4");
  expect_sourced(aluminium.weight_lb_per_in,
                 0.097 * std::numbers::pi / 4 * (0.25 * 0.25 - 0.18 * 0.18), "density",
                 Mark::calculated);
  EXPECT_NEAR(aluminium.weight_lb_per_in->value, 0.002293, 5e-7);
  expect_sourced(line_called("tube-steel-1/4").weight_lb_per_in,
                 0.29 * std::numbers::pi / 4 * (0.25 * 0.25 - 0.18 * 0.18), "density",
                 Mark::calculated);
}

TEST(RigidTubes, HaveTheirMaterialsStiffnessExpansionAndSlack) {
  std::set<std::string> materials;
  for (const Line& line : built_in_catalogue().lines) {
    if (line.kind != LineKind::rigid_tube) continue;
    materials.insert(line.material);
    SCOPED_TRACE(line.name);
    const bool steel = line.material == "steel";
    expect_sourced(line.youngs_modulus_psi, steel ? 28e6 : 10.2e6, "modulus", Mark::from_memory);
    expect_sourced(line.expansion_per_degf, steel ? 9.6e-6 : 12.8e-6, "engineering tables",
                   Mark::verified);
    expect_sourced(line.slack_fraction, 0.0005, "metal tube", Mark::common_practice);
    EXPECT_EQ(line.cut_allowance_in, 1.0);
    // 6 and 12 ft [common practice, no source]; of steel no length is known.
    EXPECT_EQ(line.stock_lengths_in.size(), steel ? 0u : 2u);
    if (!steel) {
      EXPECT_EQ(line.stock_lengths_in.at(0).value, 72);
      EXPECT_EQ(line.stock_lengths_in.at(1).value, 144);
    }
    for (const SourcedValue& each : line.stock_lengths_in)
      EXPECT_EQ(each.source.mark, Mark::common_practice);
    EXPECT_EQ(line.size_source.mark, Mark::common_practice);
  }
  EXPECT_EQ(materials, (std::set<std::string>{"aluminium", "steel"}));
}

// A stiffer and heavier tube may bend and hang no more freely than a lighter, smaller one.
TEST(RigidTubes, BendRadiusAndSpacingGrowWithDiameterAndSteelAsksMoreRadius) {
  for (std::size_t i = 0; i < published.size(); ++i) {
    const Line& aluminium = line_called("tube-aluminium-" + published[i].size);
    const Line& steel = line_called("tube-steel-" + published[i].size);
    EXPECT_GT(steel.support_spacing_in->value, aluminium.support_spacing_in->value);
    if (steel.minimum_bend_radius_in) {
      EXPECT_GT(steel.minimum_bend_radius_in->value, aluminium.minimum_bend_radius_in->value);
    }
    if (i == 0) continue;
    const Line& smaller = line_called("tube-aluminium-" + published[i - 1].size);
    EXPECT_GT(aluminium.minimum_bend_radius_in->value, smaller.minimum_bend_radius_in->value);
    EXPECT_GT(aluminium.support_spacing_in->value, smaller.support_spacing_in->value);
  }
}

}  // namespace
}  // namespace linewright
