#include "input/line_entry.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "input/yaml_document.hpp"

namespace linewright {
namespace {

struct Reading {
  std::optional<Line> line;
  std::vector<Diagnostic> errors;
};

/// One entry as a project would write it, from its YAML text.
Reading read_project_entry(const std::string& text, BareLength bare = BareLength::inch) {
  Reading reading;
  const YamlDocument document = read_yaml(text, "lines.yaml");
  EXPECT_TRUE(document.errors.empty()) << text;
  if (auto line = read_line_entry(document.root, bare, false))
    reading.line = *std::move(line);
  else
    reading.errors = line.error();
  return reading;
}

/// An entry that is right, without its last brace, to which a case adds what it is about.
const std::string tube_start =
    "{name: tube-special-1/4, kind: plastic-tube, outside: 0.25, inside: 0.17";
const std::string tube = tube_start + ", source: maker's data sheet";
const std::string cable =
    "{name: cable-special, kind: cable, outside: 0.125, source: maker's data sheet";

TEST(LineEntry, ReadsEveryKeyOfATube) {
  const Reading reading = read_project_entry(
      "{name: tube-special-1/4, kind: plastic-tube, material: nylon, outside: 0.25, inside: 0.17, "
      "minimum_bend_radius: 0.9, support_spacing: 12, weight: 0.0012 lb/in, "
      "youngs_modulus: 60000 psi, expansion: 5e-5, slack: 0.006, "
      "source: \"maker's data sheet, 2026\"}");
  ASSERT_TRUE(reading.line.has_value());
  const Line& line = *reading.line;
  EXPECT_EQ(line.name, "tube-special-1/4");
  EXPECT_EQ(line.kind, LineKind::plastic_tube);
  EXPECT_EQ(line.material, "nylon");
  EXPECT_DOUBLE_EQ(line.outside_diameter_in, 0.25);
  EXPECT_DOUBLE_EQ(line.inside_diameter_in, 0.17);
  const Source builder{"maker's data sheet, 2026", Mark::builder};
  EXPECT_EQ(line.size_source, builder);
  EXPECT_EQ(line.minimum_bend_radius_in, (SourcedValue{0.9, builder}));
  EXPECT_EQ(line.usual_bend_radius_in, 0.9);
  EXPECT_EQ(line.support_spacing_in, (SourcedValue{12, builder}));
  EXPECT_EQ(line.weight_lb_per_in, (SourcedValue{0.0012, builder}));
  EXPECT_EQ(line.youngs_modulus_psi, (SourcedValue{60000, builder}));
  EXPECT_EQ(line.expansion_per_degf, (SourcedValue{5e-5, builder}));
  EXPECT_EQ(line.slack_fraction, (SourcedValue{0.006, builder}));
  EXPECT_EQ(line.where, (SourceLocation{"lines.yaml", 1, 1}));
}

TEST(LineEntry, ReadsEveryKeyOfACable) {
  const Reading reading = read_project_entry(
      cable +
      ", construction: 7x19, plus_tolerance: 0.014, breaking_strength: 2000 lbf, "
      "axial_stiffness: 111607, material: steel, cut_allowance: 2}");
  ASSERT_TRUE(reading.line.has_value());
  const Line& line = *reading.line;
  EXPECT_EQ(line.construction, "7x19");
  EXPECT_DOUBLE_EQ(line.largest_diameter_in(), 0.139);
  EXPECT_EQ(line.breaking_strength_lbf->value, 2000);
  EXPECT_EQ(line.axial_stiffness_lbf->value, 111607);
  EXPECT_EQ(line.breaking_strength_lbf->source.mark, Mark::builder);
  EXPECT_EQ(line.cut_allowance_in, 2);
}

TEST(LineEntry, ReadsTheLengthsThatItIsSoldIn) {
  const Reading reading = read_project_entry(tube + ", stock_lengths: [72, 12 ft]}");
  ASSERT_TRUE(reading.line.has_value());
  ASSERT_EQ(reading.line->stock_lengths_in.size(), 2u);
  EXPECT_EQ(reading.line->stock_lengths_in[0].value, 72);
  EXPECT_EQ(reading.line->stock_lengths_in[1].value, 144);
  EXPECT_EQ(reading.line->stock_lengths_in[1].source.mark, Mark::builder);
  EXPECT_FALSE(read_project_entry(tube + ", stock_lengths: [0]}").line.has_value());
  EXPECT_TRUE(read_project_entry(tube + "}").line->stock_lengths_in.empty());
}

TEST(LineEntry, LeavesUnknownWhatItDoesNotSay) {
  const Reading reading = read_project_entry(tube + "}");
  ASSERT_TRUE(reading.line.has_value());
  const Line& line = *reading.line;
  EXPECT_FALSE(line.minimum_bend_radius_in.has_value());
  EXPECT_FALSE(line.usual_bend_radius_in.has_value());
  EXPECT_FALSE(line.support_spacing_in.has_value());
  EXPECT_FALSE(line.weight_lb_per_in.has_value());
  EXPECT_FALSE(line.youngs_modulus_psi.has_value());
  EXPECT_FALSE(line.expansion_per_degf.has_value());
  EXPECT_FALSE(line.slack_fraction.has_value());
  EXPECT_FALSE(line.plus_tolerance_in.has_value());
}

TEST(LineEntry, TrimsWhatPracticeTrimsWhereNoAllowanceIsStated) {
  const std::string common = ", outside: 0.25, source: data sheet";
  const std::string bore = ", inside: 0.17}";
  const std::vector<std::pair<std::string, double>> cases{
      {"{name: a, kind: rigid-tube" + common + bore, 1.0},
      {"{name: a, kind: plastic-tube" + common + bore, 1.0},
      {"{name: a, kind: hose" + common + bore, 0.0},
      {"{name: a, kind: cable" + common + "}", 0.0},
      {"{name: a, kind: wire" + common + "}", 6.0},
  };
  for (const auto& [text, allowance] : cases) {
    const Reading reading = read_project_entry(text);
    ASSERT_TRUE(reading.line.has_value()) << text;
    EXPECT_EQ(reading.line->cut_allowance_in, allowance) << text;
  }
}

TEST(LineEntry, TakesBareLengthsInTheFilesUnit) {
  const Reading reading = read_project_entry(
      "{name: a, kind: plastic-tube, outside: 6, inside: 4, minimum_bend_radius: 1 in, "
      "source: data sheet}",
      BareLength::millimetre);
  ASSERT_TRUE(reading.line.has_value());
  EXPECT_DOUBLE_EQ(reading.line->outside_diameter_in, 6 / 25.4);
  EXPECT_DOUBLE_EQ(reading.line->inside_diameter_in, 4 / 25.4);
  EXPECT_DOUBLE_EQ(reading.line->minimum_bend_radius_in->value, 1.0);
}

TEST(LineEntry, MayMeasureItsLeastBendToTheInside) {
  const Reading reading = read_project_entry(
      "{name: a, kind: hose, outside: 0.5, inside: 0.25, plus_tolerance: 0.02, "
      "minimum_inside_bend_radius: 3, source: data sheet}");
  ASSERT_TRUE(reading.line.has_value());
  // Half of 0.52 in, the largest that the hose may be.
  const SourcedValue& least = reading.line->minimum_bend_radius_in.value();
  EXPECT_DOUBLE_EQ(least.value, 3.26);
  EXPECT_EQ(least.source.text,
            "data sheet, measured to the inside of the bend, half of the outside diameter added");
  EXPECT_EQ(least.source.mark, Mark::builder);
  EXPECT_EQ(reading.line->usual_bend_radius_in, least.value);
  EXPECT_EQ(reading.line->size_source.text, "data sheet");
}

TEST(LineEntry, MeasuresItsUsualBendToTheCentrelineAlthoughTheLeastIsToTheInside) {
  const std::string inside = tube + ", minimum_inside_bend_radius: 1, usual_bend_radius: ";
  EXPECT_TRUE(read_project_entry(inside + "1.125}").line.has_value());
  const Reading tight = read_project_entry(inside + "1.1}");
  ASSERT_EQ(tight.errors.size(), 1u);
  EXPECT_EQ(tight.errors[0].message,
            "usual_bend_radius: must not be under the minimum, found 1.1 in against 1.125 in to "
            "the centreline");
}

TEST(LineEntry, MayStateALargerUsualBendThanTheMinimum) {
  const Reading reading =
      read_project_entry(tube + ", minimum_bend_radius: 1, usual_bend_radius: 1.5}");
  ASSERT_TRUE(reading.line.has_value());
  EXPECT_EQ(reading.line->usual_bend_radius_in, 1.5);
}

/// An entry that is refused with exactly one error that names the fault.
struct Fault {
  std::string name;
  std::string text;
  std::string says;
};

class FaultyLineEntry : public testing::TestWithParam<Fault> {};

TEST_P(FaultyLineEntry, IsRefusedAtItsPlace) {
  const Reading reading = read_project_entry(GetParam().text);
  EXPECT_FALSE(reading.line.has_value());
  ASSERT_EQ(reading.errors.size(), 1u);
  EXPECT_NE(reading.errors[0].message.find(GetParam().says), std::string::npos)
      << reading.errors[0].message;
  EXPECT_EQ(reading.errors[0].where.file, "lines.yaml");
  EXPECT_EQ(reading.errors[0].where.line, 1);
  EXPECT_GE(reading.errors[0].where.column, 1);
}

INSTANTIATE_TEST_SUITE_P(
    Entries, FaultyLineEntry,
    testing::Values(
        Fault{"a_list", "[1, 2]", "found a list"},
        Fault{"no_source", tube_start + "}", "'source' is missing"},
        Fault{"an_empty_source", tube_start + ", source: \"\"}", "source: expected words"},
        Fault{"a_blank_source", tube_start + ", source: \"  \"}", "source: expected words"},
        Fault{"no_name", "{kind: cable, outside: 0.1, source: x}", "'name' is missing"},
        Fault{"no_kind", "{name: a, outside: 0.1, source: x}", "'kind' is missing"},
        Fault{"a_wrong_kind", "{name: a, kind: pipe, outside: 0.1, source: x}", "found 'pipe'"},
        Fault{"no_outside", "{name: a, kind: cable, source: x}", "'outside' is missing"},
        Fault{"no_inside", "{name: a, kind: hose, outside: 0.5, source: x}", "'inside' is missing"},
        Fault{"an_unknown_key", tube + ", suport_spacing: 12}", "no key 'suport_spacing'"},
        Fault{"a_mark", tube + ", mark: verified}", "no key 'mark'"},
        Fault{"a_negative_length", tube + ", support_spacing: -12}",
              "support_spacing: must be greater than zero"},
        Fault{"a_zero_length", tube + ", minimum_bend_radius: 0}",
              "minimum_bend_radius: must be greater than zero"},
        Fault{"a_zero_radius_to_the_inside", tube + ", minimum_inside_bend_radius: 0}",
              "minimum_inside_bend_radius: must be greater than zero"},
        Fault{"two_least_radii", tube + ", minimum_bend_radius: 1, minimum_inside_bend_radius: 1}",
              "'minimum_bend_radius' is stated too: leave one of them out"},
        Fault{"a_negative_weight", tube + ", weight: -0.001 lb/in}", "weight: must be greater"},
        Fault{"a_negative_tolerance", tube + ", plus_tolerance: -0.01}",
              "plus_tolerance: must not be negative"},
        Fault{"a_negative_allowance", tube + ", cut_allowance: -1}",
              "cut_allowance: must not be negative"},
        Fault{"slack_in_per_cent", tube + ", slack: 0.6}", "slack: must be a fraction"},
        Fault{"expansion_in_millionths", tube + ", expansion: 50}",
              "expansion: must be per degree Fahrenheit"},
        Fault{"a_bore_as_wide_as_the_tube",
              "{name: a, kind: hose, outside: 0.25, inside: 0.25, source: x}",
              "inside: must be smaller than outside"},
        Fault{"a_bore_wider_than_the_tube",
              "{name: a, kind: hose, outside: 0.17, inside: 0.25, source: x}",
              "inside: must be smaller than outside"},
        Fault{"a_usual_bend_under_the_minimum",
              tube + ", minimum_bend_radius: 1, usual_bend_radius: 0.9}",
              "usual_bend_radius: must not be under the minimum"},
        Fault{"a_force_for_a_length", tube + ", support_spacing: 12 lbf}", "support_spacing: "},
        Fault{"words_for_a_number", tube + ", support_spacing: often}", "support_spacing: "},
        Fault{"a_number_in_quotes", tube + ", support_spacing: \"12\"}", "without quotes"},
        Fault{"nothing_for_a_number", tube + ", support_spacing: }", "found nothing"},
        Fault{"a_list_for_a_number", tube + ", support_spacing: [12]}", "found a list"},
        Fault{"a_value_with_its_own_source",
              tube + ", support_spacing: {value: 12, source: x, mark: verified}}", "found a map"},
        Fault{"a_not_finite_number", tube + ", expansion: .nan}", "expansion: "},
        Fault{"a_bore_in_a_cable", cable + ", inside: 0.1}", "'inside' is a key for tubes"},
        Fault{"a_modulus_of_a_cable", cable + ", youngs_modulus: 1e7 psi}",
              "'youngs_modulus' is a key for tubes"},
        Fault{"a_strength_of_a_tube", tube + ", breaking_strength: 100}",
              "'breaking_strength' is a key for cables"},
        Fault{"a_construction_of_a_tube", tube + ", construction: 7x7}",
              "'construction' is a key for cables"}),
    [](const testing::TestParamInfo<Fault>& fault) { return fault.param.name; });

TEST(FaultyLineEntries, SuggestTheKeyOrKindThatWasMeant) {
  const Reading key = read_project_entry(tube + ", suport_spacing: 12}");
  ASSERT_EQ(key.errors.size(), 1u);
  EXPECT_TRUE(key.errors[0].suggestion.starts_with(
      "did you mean 'support_spacing'? keys of a line: name, kind, "));
  const Reading kind = read_project_entry("{name: a, kind: rigid-tubes, outside: 0.1, source: x}");
  ASSERT_EQ(kind.errors.size(), 1u);
  EXPECT_EQ(kind.errors[0].suggestion, "did you mean 'rigid-tube'?");
}

TEST(FaultyLineEntries, AreReportedAllAtOnce) {
  const Reading reading =
      read_project_entry("{name: a, kind: hose, outside: -1, inside: 0.1, colour: red}");
  EXPECT_FALSE(reading.line.has_value());
  EXPECT_EQ(reading.errors.size(), 3u);
}

}  // namespace
}  // namespace linewright
