#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <vector>

#include "catalogue/catalogue.hpp"
#include "catalogue_expectations.hpp"

namespace linewright {
namespace {

const Fitting& fitting_called(const std::string& name) {
  const Fitting* fitting = built_in_catalogue().find_fitting(name);
  if (!fitting) throw std::runtime_error("the catalogue has no fitting '" + name + "'");
  return *fitting;
}

TEST(Fitting, IsThereInFiveKindsAndSixSizes) {
  for (const std::string kind : {"union", "bulkhead", "elbow", "elbow-45", "tee"})
    for (const std::string size : {"1/8", "3/16", "1/4", "5/16", "3/8", "1/2"}) {
      SCOPED_TRACE(kind + "-" + size);
      const Fitting& fitting = fitting_called(kind + "-" + size);
      EXPECT_EQ(fitting.take_up_in.size(), ports_of(fitting.kind));
      EXPECT_TRUE(fitting.nut_in && fitting.bore_in);
      // A body is larger than the tube, and a bore smaller.
      EXPECT_GT(fitting.body_diameter_in.value, fitting.tube_diameter_in);
      EXPECT_LT(fitting.bore_in->value, fitting.tube_diameter_in);
    }
  EXPECT_EQ(built_in_catalogue().fittings.size(), 30u);
}

TEST(Fitting, SaysWhatItsNameDoes) {
  EXPECT_EQ(fitting_called("elbow-1/4").kind, FittingKind::elbow_90);
  EXPECT_EQ(fitting_called("elbow-45-1/4").kind, FittingKind::elbow_45);
  EXPECT_EQ(fitting_called("tee-3/8").kind, FittingKind::tee);
  EXPECT_EQ(fitting_called("union-3/8").kind, FittingKind::straight_union);
  EXPECT_EQ(fitting_called("bulkhead-3/8").kind, FittingKind::bulkhead_union);
  EXPECT_DOUBLE_EQ(fitting_called("tee-5/16").tube_diameter_in, 0.3125);
  EXPECT_EQ(fitting_called("elbow-1/4").standard, "AN821");
}

// AN818 revision 20, figure 1: C of the nut, across its flats, -2 .375, -3 .437, -4 .562, -5 .625,
// -6 .687, -8 .875. Across the corners of a hexagon it is 2/sqrt(3) as wide. Kept to 0.001 in,
// never below.
TEST(Fitting, IsAsWideAsTheCornersOfItsNuts) {
  const struct {
    const char* size;
    double across_flats_in;
  } rows[] = {{"1/8", 0.375},  {"3/16", 0.437}, {"1/4", 0.562},
              {"5/16", 0.625}, {"3/8", 0.687},  {"1/2", 0.875}};
  for (const auto& row : rows)
    for (const std::string kind : {"union-", "elbow-", "elbow-45-", "tee-"}) {
      const SourcedValue& body = fitting_called(kind + row.size).body_diameter_in;
      EXPECT_NEAR(body.value, row.across_flats_in * 1.1547, 0.001) << kind << row.size;
      EXPECT_GE(body.value, row.across_flats_in * 1.1547 - 0.0001) << kind << row.size;
      EXPECT_EQ(body.source.mark, Mark::calculated);
    }
}

// AN924, figure 1: A of the bulkhead nut, -2 .563, -3 .625, -4 .688, -5 .750, -6 .813, -8 1.000.
TEST(Fitting, OfABulkheadIsAsWideAsTheCornersOfItsLocknut) {
  const struct {
    const char* size;
    double across_flats_in;
  } rows[] = {{"1/8", 0.563},  {"3/16", 0.625}, {"1/4", 0.688},
              {"5/16", 0.750}, {"3/8", 0.813},  {"1/2", 1.000}};
  for (const auto& row : rows) {
    const double body = fitting_called(std::string("bulkhead-") + row.size).body_diameter_in.value;
    EXPECT_NEAR(body, row.across_flats_in * 1.1547, 0.001) << row.size;
    EXPECT_GE(body, row.across_flats_in * 1.1547 - 0.0001) << row.size;
  }
}

// From memory: take-ups of AN815, AN832, AN821, the 45 degree elbow and AN824, bores of MS33656.
// What a nut stands out is common practice, no source.
TEST(Fitting, HasTheLengthsAndBoresThatAreRecalledOfItsStandard) {
  const struct {
    const char* size;
    double tube_in, union_in, bulkhead_in, behind_web_in, elbow_in, elbow_45_in, nut_in, bore_in;
  } rows[] = {{"1/8", 0.125, 0.58, 0.73, 1.13, 0.78, 0.66, 0.20, 0.062},
              {"3/16", 0.1875, 0.60, 0.76, 1.16, 0.83, 0.69, 0.22, 0.125},
              {"1/4", 0.250, 0.67, 0.83, 1.28, 0.89, 0.77, 0.25, 0.172},
              {"5/16", 0.3125, 0.67, 0.83, 1.28, 0.95, 0.82, 0.28, 0.234},
              {"3/8", 0.375, 0.70, 0.86, 1.36, 1.06, 0.89, 0.30, 0.297},
              {"1/2", 0.500, 0.82, 0.99, 1.55, 1.25, 1.05, 0.36, 0.391}};
  for (const auto& row : rows) {
    const auto expect = [&](const std::string& kind, const std::vector<double>& take_up_in) {
      const Fitting& fitting = fitting_called(kind + row.size);
      SCOPED_TRACE(fitting.name);
      EXPECT_DOUBLE_EQ(fitting.tube_diameter_in, row.tube_in);
      EXPECT_DOUBLE_EQ(fitting.nut_in->value, row.nut_in);
      EXPECT_DOUBLE_EQ(fitting.bore_in->value, row.bore_in);
      ASSERT_EQ(fitting.take_up_in.size(), take_up_in.size());
      for (std::size_t i = 0; i < take_up_in.size(); ++i)
        EXPECT_DOUBLE_EQ(fitting.take_up_in[i].value, take_up_in[i]) << "port " << i;
    };
    expect("union-", {row.union_in, row.union_in});
    expect("bulkhead-", {row.bulkhead_in, row.behind_web_in});
    expect("elbow-", {row.elbow_in, row.elbow_in});
    expect("elbow-45-", {row.elbow_45_in, row.elbow_45_in});
    expect("tee-", {row.elbow_in, row.elbow_in, row.elbow_in});
  }
}

// What was not read in a copy of its standard says so.
TEST(Fitting, TakesUpWhatIsFromMemory) {
  for (const Fitting& fitting : built_in_catalogue().fittings)
    for (const SourcedValue& each : fitting.take_up_in)
      EXPECT_EQ(each.source.mark, Mark::from_memory) << fitting.name;
}

TEST(Fitting, OfABulkheadIsLongerBehindTheWeb) {
  for (const Fitting& fitting : built_in_catalogue().fittings) {
    if (fitting.kind != FittingKind::bulkhead_union) continue;
    EXPECT_GT(fitting.take_up_in[1].value, fitting.take_up_in[0].value) << fitting.name;
  }
}

}  // namespace
}  // namespace linewright
