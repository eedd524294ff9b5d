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

// Bend radii of nylon: SAE J844 (recalled). Bore of 1/4: 0.170 in, the usual instrument line.
TEST(PlasticTubes, NylonBendsByJ844) {
  for (const PlasticTube& row : {PlasticTube{"3/16", 3.0 / 16, 0.117, Mark::from_memory, 0.75},
                                 PlasticTube{"1/4", 1.0 / 4, 0.170, Mark::common_practice, 1.00},
                                 PlasticTube{"3/8", 3.0 / 8, 0.251, Mark::from_memory, 1.50}}) {
    SCOPED_TRACE(row.size);
    const Line& tube = line_called("tube-nylon-" + row.size);
    EXPECT_EQ(tube.kind, LineKind::plastic_tube);
    EXPECT_EQ(tube.material, "nylon");
    EXPECT_DOUBLE_EQ(tube.outside_diameter_in, row.outside);
    EXPECT_DOUBLE_EQ(tube.inside_diameter_in, row.inside);
    EXPECT_EQ(tube.size_source.mark, row.size_mark);
    expect_sourced(tube.minimum_bend_radius_in, row.bend, "SAE J844", Mark::from_memory);
  }
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
    if (line.kind != LineKind::plastic_tube) continue;
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
