#include <gtest/gtest.h>

#include <numbers>
#include <set>
#include <string>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

struct PlasticTube {
  std::string size;
  double outside;
  double inside;
  Mark size_mark;
  double bend;
};

// SAE J844: bend radii, and the bore of 3/16, recalled; bores of 1/4 (type A, 4.35 mm) and 3/8
// (type B, walls of 1.57 mm) as a public parts table restates them.
TEST(PlasticTubes, NylonBendsByJ844) {
  for (const PlasticTube& row :
       {PlasticTube{"3/16", 3.0 / 16, 0.117, Mark::from_memory, 0.75},
        PlasticTube{"1/4", 1.0 / 4, 0.171, Mark::verified_secondary, 1.00},
        PlasticTube{"3/8", 3.0 / 8, 0.251, Mark::verified_secondary, 1.50}}) {
    SCOPED_TRACE(row.size);
    const Line& tube = line_called("tube-nylon-" + row.size);
    EXPECT_EQ(tube.kind, LineKind::plastic_tube);
    EXPECT_EQ(tube.material, "nylon");
    EXPECT_DOUBLE_EQ(tube.outside_diameter_in, row.outside);
    EXPECT_DOUBLE_EQ(tube.inside_diameter_in, row.inside);
    EXPECT_EQ(tube.size_source.mark, row.size_mark);
    const char* type = row.size == "3/8" ? "SAE J844 type B" : "SAE J844 type A";
    EXPECT_NE(tube.size_source.text.find(type), std::string::npos) << tube.size_source.text;
    expect_sourced(tube.minimum_bend_radius_in, row.bend, "SAE J844", Mark::from_memory);
  }
  EXPECT_NEAR(line_called("tube-nylon-1/4").inside_diameter_in, 4.35 / 25.4, 0.0005);
  EXPECT_NEAR(line_called("tube-nylon-3/8").inside_diameter_in, 0.375 - 2 * 1.57 / 25.4, 0.0005);
}

// A tube of type B has a braid in its wall; handbook figures of plain nylon are not its own.
TEST(PlasticTubes, ReinforcedNylonsWeightStiffnessAndExpansionAreNotKnown) {
  const Line& tube = line_called("tube-nylon-3/8");
  EXPECT_FALSE(tube.weight_lb_per_in.has_value());
  EXPECT_FALSE(tube.youngs_modulus_psi.has_value());
  EXPECT_FALSE(tube.expansion_per_degf.has_value());
  expect_sourced(tube.slack_fraction, 0.006, "surplus length", Mark::common_practice);
  EXPECT_EQ(tube.cut_allowance_in, 1.0);
}

TEST(PlasticTubes, PolyethyleneBendsAtFiveDiameters) {
  for (const PlasticTube& row :
       {PlasticTube{"3/16", 3.0 / 16, 0.125, Mark::common_practice, 0.9375},
        PlasticTube{"1/4", 1.0 / 4, 0.170, Mark::common_practice, 1.25},
        PlasticTube{"3/8", 3.0 / 8, 0.250, Mark::common_practice, 1.875}}) {
    SCOPED_TRACE(row.size);
    const Line& tube = line_called("tube-polyethylene-" + row.size);
    EXPECT_EQ(tube.kind, LineKind::plastic_tube);
    EXPECT_EQ(tube.material, "polyethylene");
    EXPECT_DOUBLE_EQ(tube.outside_diameter_in, row.outside);
    EXPECT_DOUBLE_EQ(tube.inside_diameter_in, row.inside);
    EXPECT_EQ(tube.size_source.mark, row.size_mark);
    expect_sourced(tube.minimum_bend_radius_in, row.bend, "five times", Mark::common_practice);
    EXPECT_DOUBLE_EQ(tube.minimum_bend_radius_in->value, 5 * tube.outside_diameter_in);
  }
}

// No document lists a spacing for plastic: the aluminium figure is practice here, not a standard.
TEST(PlasticTubes, BorrowTheSpacingOfAluminiumAndSaySo) {
  for (const std::string material : {"nylon", "polyethylene"})
    for (const auto& [size, spacing] : {std::pair{"3/16", 12.0}, {"1/4", 13.5}, {"3/8", 16.5}}) {
      const Line& tube = line_called("tube-" + material + "-" + size);
      expect_sourced(tube.support_spacing_in, spacing, "borrowed from the aluminium tube",
                     Mark::common_practice);
      EXPECT_EQ(tube.support_spacing_in->value,
                line_called(std::string("tube-aluminium-") + size).support_spacing_in->value);
    }
}

TEST(PlasticTubes, HaveTheirMaterialsStiffnessExpansionSlackAndWeight) {
  std::set<std::string> materials;
  for (const Line& line : built_in_catalogue().lines) {
    if (line.kind != LineKind::plastic_tube || line.name == "tube-nylon-3/8") continue;
    materials.insert(line.material);
    SCOPED_TRACE(line.name);
    const bool nylon = line.material == "nylon";
    expect_sourced(line.youngs_modulus_psi, nylon ? 60e3 : 30e3, "modulus", Mark::from_memory);
    expect_sourced(line.expansion_per_degf, nylon ? 5.5e-5 : 1.0e-4, "expansion",
                   Mark::from_memory);
    expect_sourced(line.slack_fraction, 0.006, "surplus length", Mark::common_practice);
    const double section = std::numbers::pi / 4 *
                           (line.outside_diameter_in * line.outside_diameter_in -
                            line.inside_diameter_in * line.inside_diameter_in);
    expect_sourced(line.weight_lb_per_in, section * (nylon ? 0.0375 : 0.0334), "density",
                   Mark::calculated);
    EXPECT_EQ(line.cut_allowance_in, 1.0);
  }
  EXPECT_EQ(materials, (std::set<std::string>{"nylon", "polyethylene"}));
}

}  // namespace
}  // namespace linewright
