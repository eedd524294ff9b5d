#include "planning/parts.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "rules/project_text.hpp"

namespace linewright {
namespace {

PartsList bought(const ProjectSections& sections, const PartsOptions& options = {}) {
  return parts_list(ProjectText(sections).prepared(), options);
}

/// The row of an item and a part of its size; a failed test where there is none.
PartRow row(const PartsList& list, const std::string& item, const std::string& size = {}) {
  for (const PartRow& each : list.rows)
    if (each.item == item && each.size.find(size) != std::string::npos) return each;
  ADD_FAILURE() << "no " << item << " " << size;
  return {};
}

bool has(const PartsList& list, const std::string& item) {
  return std::any_of(list.rows.begin(), list.rows.end(),
                     [&](const PartRow& each) { return each.item == item; });
}

/// Two tubes of 30 in that meet in a tee at FS 130, with two clamps and a grommet.
ProjectSections tubes() {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 120, thickness: 0.032, outline: [[-9, 0], [9, 0], [9, 20], "
      "[-9, 20]], holes: [{name: H, centre: [0, 10], diameter: 0.5, edge: grommet, bore: "
      "0.3125}]}]\n"
      "  panels: [{name: deck, thickness: 0.025, corners: [[90, -9, 20], [125, -9, 20], [125, 9, "
      "20], [90, 9, 20]]CLOSURE}]\n";
  sections.nodes = held_node("a", "100, 0, 10") + held_node("b", "160, 0, 10") +
                   "  - {name: tee, kind: tee, at: [130, 0, 10]}\n";
  sections.routes =
      "  - {name: one, system: static, line: tube-nylon-1/4, from: a, to: tee, points: [{at: [110, "
      "0, 10], hold: clamp}, {at: [120, 0, 10], hold: grommet, through: H}]}\n"
      "  - {name: two, system: static, line: tube-nylon-1/4, from: tee, to: b, points: [{at: [140, "
      "0, 10], hold: clamp}]}\n";
  return sections;
}

ProjectSections without_closure() {
  ProjectSections sections = tubes();
  sections.structure.replace(sections.structure.find("CLOSURE"), 7, "");
  return sections;
}

ProjectSections with_closure() {
  ProjectSections sections = tubes();
  sections.structure.replace(sections.structure.find("CLOSURE"), 7, ", closure: top");
  sections.rest = "closures: [{name: top, after: []}]\n";
  return sections;
}

TEST(Parts, LineOfOneKindIsOneRowOfItsCutLengths) {
  // Two tubes of 30 in and an inch to trim off each.
  const PartRow tube = row(bought(without_closure()), "tube");
  EXPECT_EQ(tube.size, "tube-nylon-1/4");
  EXPECT_NEAR(tube.quantity, 62, 1e-9);
  EXPECT_EQ(tube.unit, "in");
  EXPECT_EQ(tube.used_for, (std::vector<std::string>{"one", "two"}));
  EXPECT_FALSE(tube.needed_before);
}

/// The two tubes of a line of 1/4 in that is sold in lengths of 36 in and 72 in.
ProjectSections sold(const std::string& stock_lengths) {
  ProjectSections sections = without_closure();
  for (std::size_t at = 0; (at = sections.routes.find("tube-nylon-1/4", at)) != std::string::npos;)
    sections.routes.replace(at, 14, "own-tube");
  sections.rest +=
      "lines: [{name: own-tube, kind: plastic-tube, outside: 0.25, inside: 0.17, "
      "minimum_bend_radius: 1, stock_lengths: " +
      stock_lengths + ", source: data sheet}]\n";
  return sections;
}

// What holds a casing's ends comes with it: a bulkhead there is no union of tubes.
TEST(Parts, ACasingIsBoughtByItsLengthWithoutAFittingAtItsEnds) {
  ProjectSections sections;
  sections.nodes = held_node("panel", "100, 0, 10") + held_node("carburettor", "140, 0, 10");
  sections.routes =
      "  - {name: throttle, system: push-pull, line: conduit-1/4, from: panel, to: carburettor}\n";
  const PartsList list = bought(sections);
  const PartRow casing = row(list, "conduit");
  EXPECT_EQ(casing.size, "conduit-1/4");
  EXPECT_EQ(casing.quantity, 40);
  EXPECT_EQ(list.rows.size(), 1u);
}

TEST(Parts, LineOfKnownLengthsIsCountedByTheFewest) {
  // 31 in and 31 in: one length of 72 in, and 10 in left over.
  const PartsList list = bought(sold("[36, 72]"));
  EXPECT_EQ(row(list, "tube").quantity, 1);
  EXPECT_EQ(row(list, "tube").unit, "length");
  ASSERT_EQ(list.notes.size(), 1u);
  EXPECT_EQ(list.notes[0],
            "own-tube: 72.0 in: one 31.0 in, two 31.0 in; 10.0 in left over, the fewest lengths");
  EXPECT_EQ(row(bought(sold("[36]")), "tube").quantity, 2);
}

TEST(Parts, NoPieceIsSplicedFromLengthsThatAreTooShort) {
  const PartsList list = bought(sold("[30]"));
  EXPECT_EQ(row(list, "tube").quantity, 0);
  ASSERT_EQ(list.notes.size(), 2u);
  EXPECT_EQ(list.notes[0],
            "own-tube: one needs 31.0 in in one piece, and no length sold is so long: it is not "
            "counted");
}

TEST(Parts, ClampsAreCountedByDashEachWithAScrewAndASelfLockingNut) {
  const PartsList list = bought(without_closure());
  const PartRow clamp = row(list, "clamp");
  EXPECT_EQ(clamp.size, "clamp-4");
  EXPECT_EQ(clamp.standard, "MS21919");
  EXPECT_EQ(clamp.quantity, 2);
  EXPECT_EQ(row(list, "screw").quantity, 2);
  EXPECT_EQ(row(list, "self-locking nut").quantity, 2);
}

TEST(Parts, AGrommetIsOneWhateverNamesItsHole) {
  const PartRow grommet = row(bought(without_closure()), "grommet");
  EXPECT_EQ(grommet.quantity, 1);
  EXPECT_EQ(grommet.size, "0.312 in bore, 0.500 in hole, 0.032 in web");
  EXPECT_EQ(grommet.standard, "MS35489");
}

TEST(Parts, FittingsAreNamedByWhatTheyJoin) {
  EXPECT_EQ(row(bought(without_closure()), "tee").size, "2 x tube-nylon-1/4");
  EXPECT_EQ(row(bought(without_closure()), "bulkhead union").quantity, 2);
}

TEST(Parts, SparesAreAShareRoundedUpToWholeThings) {
  const PartsList list = bought(without_closure(), {.spares_share = 0.1});
  EXPECT_EQ(row(list, "clamp").spares, 1);
  EXPECT_NEAR(row(list, "tube").spares, 6.2, 1e-9);
  EXPECT_EQ(row(bought(without_closure()), "clamp").spares, 0);
}

TEST(Parts, AreNeededBeforeTheFirstClosureOverAnyOfThem) {
  const PartsList list = bought(with_closure());
  EXPECT_EQ(row(list, "grommet").needed_before, "top");
  EXPECT_EQ(row(list, "clamp").needed_before, "top");
  EXPECT_EQ(row(list, "tee").needed_before, std::nullopt);
}

TEST(Parts, ByClosureEachHasARowOfItsOwn) {
  const PartsList list = bought(with_closure(), {.by_closure = true});
  std::vector<PartRow> clamps;
  for (const PartRow& each : list.rows)
    if (each.item == "clamp") clamps.push_back(each);
  ASSERT_EQ(clamps.size(), 2u);
  EXPECT_EQ(clamps[0].needed_before, "top");
  EXPECT_EQ(clamps[0].used_for, std::vector<std::string>{"one"});
  EXPECT_EQ(clamps[1].needed_before, std::nullopt);
}

ProjectSections cable(const std::string& kind, const std::string& joint) {
  ProjectSections sections;
  sections.nodes =
      "  - {name: pedal, kind: pedal, at: [100, 0, 10]}\n  - {name: horn, kind: horn, at: [160, 0, "
      "10]}\n";
  const bool thimble = kind == "thimble";
  const auto of_end = [&](const std::string& takes_up) {
    return "{kind: " + kind +
           (thimble ? ", allowance: 4" : ", takes_up: " + takes_up + ", grip: 1");
  };
  const std::string end = of_end("2") + joint + "}";
  const std::string inner = of_end("0") + "}";
  sections.routes =
      "  - name: rudder\n    system: cable\n    line: cable-7x19-1/8-steel\n    from: pedal\n    "
      "to: horn\n    tension: {rigged: 50 lbf}\n    ends: {from: " +
      end + ", to: " + end +
      "}\n    points:\n      - {at: [130, 0, 10], hold: pulley, diameter: 2.5, axis: [0, 0, 1]}\n"
      "    attached:\n      - {kind: swaged terminal, at: 1, length: 2, diameter: 0.22}\n"
      "      - {kind: turnbuckle, at: 20, length: 4.5, diameter: 0.44, adjustment: {shortest: "
      "3.75, longest: 5.25}, ends: {from: " +
      inner + ", to: " + inner + "}}\n";
  return sections;
}

TEST(Parts, ACableHasATerminalAtEachEndOfEachPieceAndNoneTwice) {
  const PartsList list = bought(cable("swaged", ", joint: pin"));
  EXPECT_EQ(row(list, "swaged terminal").quantity, 4);
  EXPECT_EQ(row(list, "turnbuckle").quantity, 1);
  EXPECT_FALSE(has(list, "thimble"));
}

TEST(Parts, AThimbleNeedsItsSleeve) {
  const PartsList list = bought(cable("thimble", ""));
  EXPECT_EQ(row(list, "thimble").quantity, 4);
  EXPECT_EQ(row(list, "sleeve or splice of a thimble").quantity, 4);
}

// 14 CFR 23.607(b): no self-locking nut on a bolt that turns in operation without another lock.
TEST(Parts, AJointThatTurnsHasACastleNutAndAPulleyASelfLockingOne) {
  const PartsList list = bought(cable("swaged", ", joint: pin"));
  EXPECT_EQ(row(list, "castle nut").quantity, 2);
  EXPECT_EQ(row(list, "cotter pin").quantity, 2);
  EXPECT_EQ(row(list, "pulley").quantity, 1);
  EXPECT_EQ(row(list, "self-locking nut").quantity, 1);
}

TEST(Parts, EndsThatAreNotStatedAreSaidToBeLeftOut) {
  ProjectSections sections = cable("swaged", "");
  const std::size_t from = sections.routes.find("    ends: {from");
  sections.routes.erase(from, sections.routes.find("    points") - from);
  const PartsList list = bought(sections);
  EXPECT_TRUE(std::any_of(list.notes.begin(), list.notes.end(), [](const std::string& note) {
    return note.starts_with("rudder: what the cable ends in at pedal, horn is not stated");
  }));
}

TEST(Parts, AJointThatComesApartThreeTimesMoreCostsFourNuts) {
  EXPECT_EQ(self_locking_nuts(0), 1);
  EXPECT_EQ(self_locking_nuts(3), 4);
}

}  // namespace
}  // namespace linewright
