#include <gtest/gtest.h>

#include <numbers>
#include <string>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

TEST(Rod, IsATubeOfItsOutsideDiameterAndWall) {
  const Line& rod = line_called("rod-aluminium-3/4-0.049");
  EXPECT_EQ(rod.kind, LineKind::rod);
  EXPECT_EQ(rod.material, "aluminium");
  EXPECT_DOUBLE_EQ(rod.outside_diameter_in, 0.75);
  EXPECT_NEAR(rod.inside_diameter_in, 0.652, 1e-12);
  EXPECT_NEAR(line_called("rod-steel-5/8").inside_diameter_in, 0.625 - 2 * 0.035, 1e-12);
}

// Densities of 2024 and of 4130 [from memory: handbook figures].
TEST(Rod, WeighsWhatItsSectionDoes) {
  const double section = std::numbers::pi / 4 * (1 - 0.93 * 0.93);
  expect_sourced(line_called("rod-aluminium-1").weight_lb_per_in, 0.101 * section,
                 "density of 2024", Mark::calculated);
  expect_sourced(line_called("rod-steel-1").weight_lb_per_in, 0.283 * section, "density of steel",
                 Mark::calculated);
}

TEST(Rod, HasTheModulusOfItsMaterial) {
  expect_sourced(line_called("rod-aluminium-1").youngs_modulus_psi, 10.0e6, "6061",
                 Mark::from_memory);
  expect_sourced(line_called("rod-steel-1").youngs_modulus_psi, 29e6, "4130", Mark::from_memory);
}

// A rod is held by its two ends alone and is not bent.
TEST(Rod, HasNeitherBendRadiusNorSpacingOfSupports) {
  EXPECT_FALSE(line_called("rod-aluminium-1").minimum_bend_radius_in.has_value());
  EXPECT_FALSE(line_called("rod-aluminium-1").support_spacing_in.has_value());
}

}  // namespace
}  // namespace linewright
