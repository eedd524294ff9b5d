#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

/// AC 43.13-1B Table 7-3, page 7-28: breaking strength of carbon steel (A) and corrosion-resistant
/// (B) cable to MIL-W-83420 and the plus tolerance on diameter. Weights, pounds for 100 feet, are
/// recalled.
struct PublishedCable {
  std::string construction;
  std::string size;
  double diameter;
  double steel_strength;
  double stainless_strength;
  double plus_tolerance;
  double pounds_per_100_feet;
};

const std::vector<PublishedCable> published{
    {"7x7", "1/16", 1.0 / 16, 480, 480, 0.010, 0.75},
    {"7x7", "3/32", 3.0 / 32, 920, 920, 0.012, 1.60},
    {"7x19", "1/16", 1.0 / 16, 480, 480, 0.010, 0.75},
    {"7x19", "3/32", 3.0 / 32, 1000, 920, 0.012, 1.74},
    {"7x19", "1/8", 1.0 / 8, 2000, 1760, 0.014, 2.90},
    {"7x19", "5/32", 5.0 / 32, 2800, 2400, 0.016, 4.50},
    {"7x19", "3/16", 3.0 / 16, 4200, 3700, 0.018, 6.50},
    {"7x19", "7/32", 7.0 / 32, 5600, 5000, 0.018, 8.60},
    {"7x19", "1/4", 1.0 / 4, 7000, 6400, 0.018, 11.0},
};

const Line& cable(const PublishedCable& row, const std::string& material) {
  return line_called("cable-" + row.construction + "-" + row.size + "-" + material);
}

TEST(Cables, HaveTheStrengthsAndTolerancesOfTable73) {
  for (const PublishedCable& row : published)
    for (const std::string material : {"steel", "stainless"}) {
      const Line& line = cable(row, material);
      SCOPED_TRACE(line.name);
      EXPECT_EQ(line.kind, LineKind::cable);
      EXPECT_EQ(line.material, material);
      EXPECT_EQ(line.construction, row.construction);
      EXPECT_DOUBLE_EQ(line.outside_diameter_in, row.diameter);
      EXPECT_EQ(line.inside_diameter_in, 0);
      EXPECT_DOUBLE_EQ(line.plus_tolerance_in.value(), row.plus_tolerance);
      EXPECT_EQ(line.size_source, (Source{"AC 43.13-1B Table 7-3", Mark::verified}));
      expect_sourced(line.breaking_strength_lbf,
                     material == "steel" ? row.steel_strength : row.stainless_strength,
                     "AC 43.13-1B Table 7-3", Mark::verified);
    }
}

// The largest real diameter is nominal and tolerance: 0.139 in for 1/8 in.
TEST(Cables, MayBeLargerThanNominalByTheirTolerance) {
  EXPECT_NEAR(line_called("cable-7x19-1/8-steel").largest_diameter_in(), 0.139, 1e-12);
}

TEST(Cables, WeighWhatIsRecalledOfTheWeightTable) {
  for (const PublishedCable& row : published)
    for (const std::string material : {"steel", "stainless"})
      expect_sourced(cable(row, material).weight_lb_per_in, row.pounds_per_100_feet / 1200,
                     "MIL-W-83420", Mark::from_memory);
  EXPECT_NEAR(line_called("cable-7x19-1/8-steel").weight_lb_per_in->value, 0.0024167, 1e-7);
}

/// AE by 100 D2/G as printed beside the wire-rope maker's table; tolerance is its last figure.
struct Stiffness {
  std::string name;
  double pounds;
  double last_figure;
};

TEST(Cables, HaveTheAxialStiffnessOfTheStretchTable) {
  for (const Stiffness& row :
       {Stiffness{"cable-7x7-1/16-steel", 36510, 10}, Stiffness{"cable-7x7-3/32-steel", 82140, 10},
        Stiffness{"cable-7x19-3/32-steel", 62780, 10}, Stiffness{"cable-7x19-1/8-steel", 111607, 1},
        Stiffness{"cable-7x19-5/32-steel", 174400, 100},
        Stiffness{"cable-7x19-3/16-steel", 251100, 100},
        Stiffness{"cable-7x7-3/32-stainless", 73240, 10},
        Stiffness{"cable-7x19-1/8-stainless", 96451, 1}}) {
    SCOPED_TRACE(row.name);
    const auto& stiffness = line_called(row.name).axial_stiffness_lbf;
    ASSERT_TRUE(stiffness.has_value());
    EXPECT_NEAR(stiffness->value, row.pounds, row.last_figure / 2);
    EXPECT_EQ(stiffness->source.mark, Mark::calculated);
    EXPECT_NE(stiffness->source.text.find("wire-rope maker"), std::string::npos);
  }
}

// Stretch constants G of the wire-rope maker's table, per construction and material.
TEST(Cables, AllTakeTheirStiffnessFromTheConstantOfTheirConstruction) {
  for (const PublishedCable& row : published)
    for (const std::string material : {"steel", "stainless"}) {
      const double constant = row.construction == "7x7"
                                  ? (material == "steel" ? 0.0000107 : 0.0000120)
                                  : (material == "steel" ? 0.0000140 : 0.0000162);
      expect_sourced(cable(row, material).axial_stiffness_lbf,
                     100 * row.diameter * row.diameter / constant, "100 D2 / G", Mark::calculated);
    }
}

// A cable-assembly maker's calculator: 7x19 stainless 1/8, 20 in under 500 lb grows by 0.10368 in.
TEST(Cables, StretchAsTheMakersCalculatorSays) {
  const double stiffness = line_called("cable-7x19-1/8-stainless").axial_stiffness_lbf->value;
  EXPECT_NEAR(500 * 20 / stiffness, 0.10368, 5e-6);
}

TEST(Cables, ExpandWithTheirMaterialAndHaveNoSlack) {
  for (const PublishedCable& row : published) {
    expect_sourced(cable(row, "steel").expansion_per_degf, 6.5e-6, "engineering tables",
                   Mark::verified);
    expect_sourced(cable(row, "stainless").expansion_per_degf, 9.6e-6, "engineering tables",
                   Mark::verified);
    for (const std::string material : {"steel", "stainless"}) {
      const Line& line = cable(row, material);
      expect_sourced(line.slack_fraction, 0, "taut", Mark::common_practice);
      EXPECT_EQ(line.cut_allowance_in, 0);
    }
  }
}

TEST(Cables, HaveNeitherBendRadiusNorSupportSpacing) {
  std::size_t cables = 0;
  for (const Line& line : built_in_catalogue().lines) {
    if (line.kind != LineKind::cable) continue;
    ++cables;
    EXPECT_FALSE(line.minimum_bend_radius_in.has_value()) << line.name;
    EXPECT_FALSE(line.usual_bend_radius_in.has_value()) << line.name;
    EXPECT_FALSE(line.support_spacing_in.has_value()) << line.name;
    EXPECT_FALSE(line.youngs_modulus_psi.has_value()) << line.name;
  }
  EXPECT_EQ(cables, 2 * published.size());
}

TEST(Cables, GrowStrongerStifferAndHeavierWithDiameter) {
  for (std::size_t i = 1; i < published.size(); ++i) {
    if (published[i].construction != published[i - 1].construction) continue;
    for (const std::string material : {"steel", "stainless"}) {
      const Line& thinner = cable(published[i - 1], material);
      const Line& thicker = cable(published[i], material);
      EXPECT_GT(thicker.breaking_strength_lbf->value, thinner.breaking_strength_lbf->value);
      EXPECT_GT(thicker.axial_stiffness_lbf->value, thinner.axial_stiffness_lbf->value);
      EXPECT_GT(thicker.weight_lb_per_in->value, thinner.weight_lb_per_in->value);
    }
  }
}

}  // namespace
}  // namespace linewright
