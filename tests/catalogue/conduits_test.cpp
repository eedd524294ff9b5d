#include <gtest/gtest.h>

#include <iterator>
#include <numbers>
#include <string>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

const std::string all_sizes[] = {"3/16", "1/4", "5/16", "3/8", "7/16"};

TEST(Conduit, IsNamedByTheOutsideOfItsCasing) {
  const Line& casing = line_called("conduit-1/4");
  EXPECT_EQ(casing.kind, LineKind::conduit);
  EXPECT_DOUBLE_EQ(casing.outside_diameter_in, 0.25);
  EXPECT_EQ(casing.inside_diameter_in, 0);
  EXPECT_EQ(casing.cut_allowance_in, 0);
}

TEST(Conduit, OfEachSizeIsAsWideAsItsNameSays) {
  for (int sixteenths = 3; const std::string& size : all_sizes)
    EXPECT_DOUBLE_EQ(line_called("conduit-" + size).outside_diameter_in, sixteenths++ / 16.0);
}

// Common practice, no source: twenty diameters, rounded up to a half or a whole inch.
TEST(Conduit, OfEachSizeBendsAtTwentyDiametersRoundedUp) {
  const double radii_in[] = {4, 5, 6.5, 8, 9};
  for (std::size_t i = 0; i < std::size(all_sizes); ++i) {
    const Line& casing = line_called("conduit-" + all_sizes[i]);
    expect_sourced(casing.minimum_bend_radius_in, radii_in[i], "twenty diameters",
                   Mark::common_practice);
    EXPECT_LT(casing.minimum_bend_radius_in->value, 20 * casing.outside_diameter_in + 1);
  }
}

// Engineering tables of linear expansion: plain carbon steel 6.2 to 6.8 millionths, of which the
// middle. The slack is common practice, no source.
TEST(Conduit, ExpandsAsSteelAndHasAHalfPerCentOfSlack) {
  for (const std::string& size : all_sizes) {
    const Line& casing = line_called("conduit-" + size);
    expect_sourced(casing.expansion_per_degf, (6.2e-6 + 6.8e-6) / 2,
                   "engineering tables of linear expansion", Mark::verified);
    expect_sourced(casing.slack_fraction, 0.005, "surplus", Mark::common_practice);
  }
}

// Common practice, no source: nothing that a maker has not stated may fail a casing.
TEST(Conduit, BendsByCommonPracticeAlone) {
  expect_sourced(line_called("conduit-1/4").minimum_bend_radius_in, 5, "twenty diameters",
                 Mark::common_practice);
  for (const std::string& size : all_sizes) {
    const Line& casing = line_called("conduit-" + size);
    expect_sourced(casing.bend_total_deg, 270, "three right angles", Mark::common_practice);
    expect_sourced(casing.support_spacing_in, 18, "snake", Mark::common_practice);
    EXPECT_GE(casing.minimum_bend_radius_in->value, 20 * casing.outside_diameter_in);
    EXPECT_EQ(casing.usual_bend_radius_in, casing.minimum_bend_radius_in->value);
  }
}

// Half of steel's 0.283 lb/in3, for wound wire, core and cover [common practice, no source].
TEST(Conduit, WeighsHalfOfWhatAFullRoundOfSteelDoes) {
  for (const std::string& size : all_sizes) {
    const Line& casing = line_called("conduit-" + size);
    const double full_round_in2 =
        std::numbers::pi / 4 * casing.outside_diameter_in * casing.outside_diameter_in;
    expect_sourced(casing.weight_lb_per_in, 0.14 * full_round_in2, "half of steel",
                   Mark::common_practice);
    EXPECT_NEAR(casing.weight_lb_per_in->value / (0.283 * full_round_in2), 0.5, 0.006);
  }
}

TEST(Conduit, OtherLinesHaveNoTotalOfBends) {
  EXPECT_FALSE(line_called("cable-7x19-1/8-steel").bend_total_deg.has_value());
  EXPECT_FALSE(line_called("tube-nylon-1/4").bend_total_deg.has_value());
}

}  // namespace
}  // namespace linewright
