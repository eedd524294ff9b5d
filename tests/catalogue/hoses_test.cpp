#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

/// AC 43.13-1B Table 9-3, page 9-22: hose to MIL-H-8794, inches. Its radii are to the inside of the
/// bend: para 9-30 d and Fig. 9-10. To the centreline they are half of the outside diameter more,
/// worked by hand.
struct PublishedHose {
  std::string inside_text;
  double inside;
  double outside;
  double inside_bend;
  double centreline_bend;
};

const std::vector<PublishedHose> published{
    {"1/8", 1.0 / 8, 0.45, 3.00, 3.225},     {"3/16", 3.0 / 16, 0.52, 3.00, 3.26},
    {"1/4", 1.0 / 4, 0.58, 3.38, 3.67},      {"5/16", 5.0 / 16, 0.67, 4.00, 4.335},
    {"13/32", 13.0 / 32, 0.77, 4.63, 5.015}, {"1/2", 1.0 / 2, 0.92, 5.50, 5.96},
    {"5/8", 5.0 / 8, 1.08, 6.50, 7.04},      {"7/8", 7.0 / 8, 1.23, 7.38, 7.995},
};

TEST(Hoses, HaveTheDiametersAndBendRadiiOfTable93) {
  for (const PublishedHose& row : published) {
    SCOPED_TRACE(row.inside_text);
    const Line& hose = line_called("hose-rubber-" + row.inside_text);
    EXPECT_EQ(hose.kind, LineKind::hose);
    EXPECT_EQ(hose.material, "rubber");
    EXPECT_DOUBLE_EQ(hose.inside_diameter_in, row.inside);
    EXPECT_DOUBLE_EQ(hose.outside_diameter_in, row.outside);
    EXPECT_EQ(hose.size_source, (Source{"AC 43.13-1B Table 9-3", Mark::verified}));
    expect_sourced(hose.minimum_bend_radius_in, row.centreline_bend,
                   "AC 43.13-1B Table 9-3 and Fig. 9-10", Mark::verified_secondary);
    EXPECT_NEAR(hose.minimum_bend_radius_in->value - hose.outside_diameter_in / 2, row.inside_bend,
                1e-12);
    EXPECT_EQ(hose.usual_bend_radius_in, hose.minimum_bend_radius_in->value);
  }
}

TEST(Hoses, SayWhereTheirBendRadiusIsMeasuredAndThatFlexingAsksMore) {
  for (const PublishedHose& row : published) {
    const Line& hose = line_called("hose-rubber-" + row.inside_text);
    EXPECT_EQ(hose.minimum_bend_radius_in->source.text,
              "AC 43.13-1B Table 9-3 and Fig. 9-10, where the hose does not flex, measured to the "
              "inside of the bend, half of the outside diameter added");
  }
}

// AC 43.13-1B CHG 1 para 9-30 d(3): at least every 24 in. Fig. 9-9: length change +2 % to -4 %.
TEST(Hoses, AreHeldEveryTwoFeetAndLeaveRoomForTheirChangeOfLength) {
  for (const PublishedHose& row : published) {
    SCOPED_TRACE(row.inside_text);
    const Line& hose = line_called("hose-rubber-" + row.inside_text);
    expect_sourced(hose.support_spacing_in, 24, "AC 43.13-1B para 9-30 d(3)", Mark::verified);
    expect_sourced(hose.slack_fraction, 0.02, "AC 43.13-1B Fig. 9-9", Mark::verified);
    EXPECT_EQ(hose.cut_allowance_in, 0);
  }
}

TEST(Hoses, LeaveUnknownWhatNoSourceGives) {
  for (const PublishedHose& row : published) {
    const Line& hose = line_called("hose-rubber-" + row.inside_text);
    EXPECT_FALSE(hose.weight_lb_per_in.has_value());
    EXPECT_FALSE(hose.youngs_modulus_psi.has_value());
    EXPECT_FALSE(hose.expansion_per_degf.has_value());
  }
}

TEST(Hoses, GrowInOutsideDiameterAndBendRadiusWithTheBore) {
  for (std::size_t i = 1; i < published.size(); ++i) {
    const Line& smaller = line_called("hose-rubber-" + published[i - 1].inside_text);
    const Line& larger = line_called("hose-rubber-" + published[i].inside_text);
    EXPECT_GT(larger.outside_diameter_in, smaller.outside_diameter_in);
    EXPECT_GE(larger.minimum_bend_radius_in->value, smaller.minimum_bend_radius_in->value);
  }
}

}  // namespace
}  // namespace linewright
