#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

struct Bundle {
  std::string size;
  double diameter;
};

const std::vector<Bundle> bundles{{"1/8", 0.125},   {"3/16", 0.1875}, {"1/4", 0.25},
                                  {"5/16", 0.3125}, {"3/8", 0.375},   {"1/2", 0.5}};

// TM 1-1500-204-23-4 item 27: ten times the outside diameter "of the wire or cable". AC 43.13-1B
// para 11-96 a: 24 in.
TEST(Wires, BendAtTenDiametersAndAreHeldEveryTwoFeet) {
  for (const Bundle& bundle : bundles) {
    SCOPED_TRACE(bundle.size);
    const Line& wire = line_called("wire-" + bundle.size);
    EXPECT_EQ(wire.kind, LineKind::wire);
    EXPECT_DOUBLE_EQ(wire.outside_diameter_in, bundle.diameter);
    EXPECT_EQ(wire.inside_diameter_in, 0);
    expect_sourced(wire.minimum_bend_radius_in, 10 * bundle.diameter, "TM 1-1500-204-23-4 item 27",
                   Mark::verified);
    EXPECT_NE(wire.minimum_bend_radius_in->source.text.find("read as the bundle"),
              std::string::npos);
    expect_sourced(wire.support_spacing_in, 24, "AC 43.13-1B para 11-96 a", Mark::verified);
    EXPECT_EQ(wire.cut_allowance_in, 6.0);
  }
}

// AC 43.13-1B para 11-118 allows 1/2 in between supports; a parabola that deep in a span of 24 in
// has h = sqrt(3 L d / 8). The stated fraction is rounded to three figures.
TEST(Wires, HaveTheSlackThatHangsHalfAnInchInTwoFeet) {
  for (const Bundle& bundle : bundles) {
    const Line& wire = line_called("wire-" + bundle.size);
    expect_sourced(wire.slack_fraction, 0.00116, "AC 43.13-1B para 11-118", Mark::calculated);
    const double deflection = std::sqrt(3 * 24 * (24 * wire.slack_fraction->value) / 8);
    EXPECT_NEAR(deflection, 0.5, 0.001);
  }
}

TEST(Wires, WeighByTheirSectionAsPracticeHasIt) {
  for (const Bundle& bundle : bundles)
    expect_sourced(line_called("wire-" + bundle.size).weight_lb_per_in,
                   0.11 * 3.14159265358979 / 4 * bundle.diameter * bundle.diameter, "22 gauge",
                   Mark::common_practice);
}

TEST(Wires, ExpandAsCopper) {
  for (const Bundle& bundle : bundles) {
    const Line& wire = line_called("wire-" + bundle.size);
    EXPECT_EQ(wire.material, "copper");
    EXPECT_EQ(wire.size_source.mark, Mark::calculated);
    expect_sourced(wire.expansion_per_degf, 9.3e-6, "copper", Mark::from_memory);
  }
}

// MS21919: the dash is the nominal diameter in sixteenths of an inch, -4 being 1/4 in (recalled).
TEST(Clamps, AreSixteenthsOfAnInch) {
  ASSERT_FALSE(built_in_catalogue().clamps.empty());
  for (const ClampSize& clamp : built_in_catalogue().clamps) {
    EXPECT_EQ(clamp.name, "clamp-" + std::to_string(clamp.dash));
    EXPECT_DOUBLE_EQ(clamp.nominal_diameter_in * 16, clamp.dash);
    EXPECT_NE(clamp.source.text.find("MS21919"), std::string::npos);
    EXPECT_EQ(clamp.source.mark, Mark::from_memory);
  }
}

TEST(Clamps, ComeInEveryDashToAnInchAndAQuarterAndInEvenOnesToAnInchAndAHalf) {
  std::vector<int> dashes;
  for (const ClampSize& clamp : built_in_catalogue().clamps) dashes.push_back(clamp.dash);
  std::vector<int> expected;
  for (int dash = 2; dash <= 20; ++dash) expected.push_back(dash);
  expected.push_back(22);
  expected.push_back(24);
  EXPECT_EQ(dashes, expected);
}

TEST(Clamps, OneFitsEveryLineThatIsClamped) {
  for (const Line& line : built_in_catalogue().lines) {
    if (line.kind == LineKind::cable) continue;
    const bool fits = std::any_of(built_in_catalogue().clamps.begin(),
                                  built_in_catalogue().clamps.end(), [&](const ClampSize& clamp) {
                                    const double play =
                                        clamp.nominal_diameter_in - line.outside_diameter_in;
                                    return play >= 0 && play <= 1.0 / 16;
                                  });
    EXPECT_TRUE(fits) << line.name;
  }
}

TEST(Catalogue, HasEveryNameOnceAndASourceForEachValue) {
  std::set<std::string> names;
  for (const Line& line : built_in_catalogue().lines) {
    SCOPED_TRACE(line.name);
    EXPECT_TRUE(names.insert(line.name).second);
    EXPECT_FALSE(line.where.has_value());
    EXPECT_FALSE(line.size_source.text.empty());
    for (const auto& value :
         {line.minimum_bend_radius_in, line.support_spacing_in, line.weight_lb_per_in,
          line.youngs_modulus_psi, line.expansion_per_degf, line.slack_fraction,
          line.breaking_strength_lbf, line.axial_stiffness_lbf}) {
      if (!value) continue;
      EXPECT_FALSE(value->source.text.empty());
      EXPECT_NE(value->source.mark, Mark::builder);
    }
  }
  EXPECT_GT(names.size(), 100u);
  EXPECT_EQ(built_in_catalogue().find_line("tube-aluminium-9/16"), nullptr);
}

TEST(Catalogue, HasNoTubeOrHoseWithoutABoreInsideItsWall) {
  for (const Line& line : built_in_catalogue().lines) {
    if (line.kind == LineKind::cable || line.kind == LineKind::wire ||
        line.kind == LineKind::conduit)
      continue;
    EXPECT_GT(line.inside_diameter_in, 0) << line.name;
    EXPECT_LT(line.inside_diameter_in, line.outside_diameter_in) << line.name;
  }
}

}  // namespace
}  // namespace linewright
