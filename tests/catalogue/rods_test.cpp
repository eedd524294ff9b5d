#include <gtest/gtest.h>

#include <numbers>
#include <string>
#include <utility>
#include <vector>

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

// The name of a rod states its size [sizes and walls are common practice, no source]: it is a tube
// of that diameter and wall, which weighs what its section does.
TEST(Rod, OfEachSizeAndWallIsWhatItsNameSays) {
  const std::vector<std::pair<std::string, double>> sizes{
      {"3/8", 3.0 / 8}, {"1/2", 1.0 / 2}, {"5/8", 5.0 / 8},   {"3/4", 3.0 / 4},
      {"7/8", 7.0 / 8}, {"1", 1.0},       {"1-1/4", 5.0 / 4}, {"1-1/2", 3.0 / 2}};
  std::size_t rods = 0;
  const auto expect = [&](const std::string& name, double outside_in, double wall_in,
                          double density_lb_per_in3) {
    SCOPED_TRACE(name);
    ++rods;
    const Line& rod = line_called(name);
    const double bore_in = outside_in - 2 * wall_in;
    EXPECT_DOUBLE_EQ(rod.outside_diameter_in, outside_in);
    EXPECT_NEAR(rod.inside_diameter_in, bore_in, 1e-12);
    ASSERT_TRUE(rod.weight_lb_per_in.has_value());
    EXPECT_NEAR(
        rod.weight_lb_per_in->value,
        density_lb_per_in3 * std::numbers::pi / 4 * (outside_in * outside_in - bore_in * bore_in),
        1e-9);
  };
  for (const auto& [size, outside_in] : sizes) {
    expect("rod-aluminium-" + size, outside_in, 0.035, 0.101);
    for (const auto& [wall, wall_in] :
         {std::pair{"-0.035", 0.035}, {"-0.049", 0.049}, {"-0.058", 0.058}, {"-0.065", 0.065}})
      if (size != "3/8" || wall_in < 0.06)
        expect("rod-aluminium-" + size + wall, outside_in, wall_in, 0.101);
    if (outside_in > 1) continue;
    expect("rod-steel-" + size, outside_in, 0.035, 0.283);
    for (const auto& [wall, wall_in] :
         {std::pair{"-0.028", 0.028}, {"-0.035", 0.035}, {"-0.049", 0.049}, {"-0.058", 0.058}})
      expect("rod-steel-" + size + wall, outside_in, wall_in, 0.283);
  }
  for (const Line& line : built_in_catalogue().lines) rods -= line.kind == LineKind::rod;
  EXPECT_EQ(rods, 0u);
}

// Engineering tables of linear expansion, millionths for each degree Fahrenheit: 2024 12.7 and 6061
// 13.1, of which the larger; plain carbon steel 6.2 to 6.8, of which the middle.
TEST(Rod, ExpandsWithItsMaterial) {
  for (const Line& line : built_in_catalogue().lines) {
    if (line.kind != LineKind::rod) continue;
    const double expected = line.material == "steel" ? (6.2e-6 + 6.8e-6) / 2 : 13.1e-6;
    expect_sourced(line.expansion_per_degf, expected, "engineering tables of linear expansion",
                   Mark::verified);
  }
}

// A rod is held by its two ends alone and is not bent.
TEST(Rod, HasNeitherBendRadiusNorSpacingOfSupports) {
  EXPECT_FALSE(line_called("rod-aluminium-1").minimum_bend_radius_in.has_value());
  EXPECT_FALSE(line_called("rod-aluminium-1").support_spacing_in.has_value());
}

}  // namespace
}  // namespace linewright
