#include <gtest/gtest.h>

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
  expect_sourced(line_called("conduit-3/8").weight_lb_per_in,
                 0.14 * std::numbers::pi / 4 * 0.375 * 0.375, "half of steel",
                 Mark::common_practice);
}

TEST(Conduit, OtherLinesHaveNoTotalOfBends) {
  EXPECT_FALSE(line_called("cable-7x19-1/8-steel").bend_total_deg.has_value());
  EXPECT_FALSE(line_called("tube-nylon-1/4").bend_total_deg.has_value());
}

}  // namespace
}  // namespace linewright
