// Places by reference, twins and tables that cannot be: one error each, with its place.

#include <algorithm>
#include <string_view>
#include <utility>

#include "input/derive/derived_project.hpp"

namespace linewright {
namespace {

constexpr std::string_view wire_route =
    "routes:\n  - {name: r, system: wire, line: wire-1/4, from: from, to: to, ";

LoadResult loaded_text(const std::string& text) {
  const ProjectFolder folder;
  folder.write("project.yaml", text);
  return load_project(folder.path(), small_catalogue());
}

std::string put(std::string text, const std::string& before, const std::string& after) {
  const std::size_t at = text.find(before);
  EXPECT_NE(at, std::string::npos) << before;
  return at == std::string::npos ? text : text.replace(at, before.size(), after);
}

/// The one error of the text, as it is shown: "project.yaml:3:4: words | suggestion".
void expect_only(const std::string& text, const std::string& words) {
  const std::vector<Diagnostic> errors = loaded_text(text).errors;
  ASSERT_EQ(errors.size(), 1u) << words << "\n" << shown(errors);
  EXPECT_NE(shown(errors).find(words), std::string::npos) << shown(errors);
  EXPECT_GT(errors[0].where.line, 0);
  EXPECT_GT(errors[0].where.column, 0);
}

std::string with_points(const std::string& points) {
  return tailcone(std::string(wire_route) + "points: [" + points + "]}\n");
}

std::string with_straight_points(const std::string& points) {
  return tailcone(std::string(wire_route) + "straight: true, points: [" + points + "]}\n");
}

TEST(RefusedPlace, NamesWhatIsNotThere) {
  expect_only(with_points("{through: squre}"), "there is no hole 'squre'");
  expect_only(with_points("{hold: clamp, on: T, fs: 120}"), "there is no part 'T'");
  expect_only(with_straight_points("{hold: clamp, to: T}"), "there is no part 'T'");
  expect_only(with_straight_points("{through: squre}"), "there is no hole 'squre'");
  const auto with_node = [](const std::string& node) {
    return put(tailcone(""), "nodes:\n", "nodes:\n  - {name: x, kind: horn, " + node + "}\n");
  };
  expect_only(with_node("on: T, fs: 120, wl: 9"), "there is no part 'T'");
  expect_only(with_node("on: [T], fs: 120, wl: 9"), "expected the name of a part, found a list");
  expect_only(with_node("at: [120, 0, 9], arm: {on: [T]}"),
              "expected the name of a part, found a list");
  expect_only(put(tailcone(""), "centre: [-8, 14]", "centre: {on: way}"),
              "there is no route 'way'");
  expect_only(put(tailcone(""), "at: [90, -8, 14]", "through: squre"), "there is no hole 'squre'");
}

TEST(RefusedPlace, SaysTwoPlaces) {
  expect_only(with_points("{at: [120, -8, 17], hold: clamp, on: S, fs: 120}"),
              "'at' says where the point is, and so does 'on'");
  expect_only(with_points("{hold: clamp, on: S, side: up, fs: 120, through: round}"),
              "'on' says where the point is, and the hole that it goes 'through' does, too");
  expect_only(with_straight_points("{fs: 120, through: round}"),
              "'fs' says where on the straight line the point is, and so does 'through'");
  expect_only(put(tailcone(""), "at: [90, -8, 14]", "through: round, on: floor, fs: 110, bl: 2"),
              "'through' says where the node is, and another key says so, too");
}

TEST(RefusedPlace, ComesFromItself) {
  expect_only(put(with_points("{through: round}"), "centre: [-8, 14]", "centre: {on: r}"),
              "takes its place from route 'r', which takes it from hole 'round'");
}

TEST(RefusedPlace, IsAHoleOffItsWeb) {
  expect_only(put(tailcone(""), "centre: [-8, 14]", "centre: [-8, 40]"),
              "hole 'round' reaches outside the outline of frame 'F1'");
}

TEST(RefusedTwin, OfWhatIsOnBothSides) {
  expect_only(put(tailcone(""), "{name: floor,", "{name: floor, mirror: floor-right,"),
              "part 'floor' has no twin: it reaches across BL 0, and is on both sides itself");
  expect_only(put(tailcone(""), "{name: F1,", "{name: F1, mirror: F1-right,"),
              "part 'F1' has no twin: it reaches across BL 0");
  expect_only(put(tailcone(""), "{name: S, path: [[100, -10, 14], [140, -10, 18]]",
                  "{name: S, mirror: T, path: [[100, -10, 14], [140, 10, 18]]"),
              "part 'S' has no twin: it reaches across BL 0");
  expect_only(put(tailcone(""), "at: [90, -8, 14]", "at: [90, 0, 14], mirror: other"),
              "node 'from' has no twin: it lies on BL 0");
  std::string middle = put(tailcone(std::string(wire_route) + "mirror: other}\n"),
                           "at: [90, -8, 14]", "at: [90, 0, 14]");
  middle = put(middle, "at: [150, -8, 20]", "at: [150, 0, 20]");
  expect_only(middle, "route 'r' has no twin: it lies on BL 0");
  expect_only(put(tailcone(""), "centre: [-8, 14], diameter: 0.75",
                  "centre: [-0.375, 14], mirror: other, diameter: 0.75"),
              "hole 'round' has no twin: it reaches across BL 0");
}

// Beside BL 0 by more than its radius a hole has a twin.
TEST(RefusedTwin, NotOfAHoleBesideTheMiddle) {
  EXPECT_EQ(shown(loaded_text(put(tailcone(""), "centre: [-8, 14], diameter: 0.75",
                                  "centre: [-0.376, 14], mirror: other, diameter: 0.75"))
                      .errors),
            "");
}

TEST(RefusedTwin, OfARouteThatCrossesOverIsNot) {
  std::string text = put(tailcone(std::string(wire_route) + "mirror: other}\n"), "at: [90, -8, 14]",
                         "at: [90, -8, 14], mirror: from-right");
  text = put(text, "at: [150, -8, 20]", "at: [150, 8, 20], mirror: to-left");
  EXPECT_EQ(shown(loaded_text(text).errors), "");
}

const std::string rib =
    "    - {name: R1, buttock_line: -6, thickness: 0.04, mirror: R1-right, outline: [[100, 3], "
    "[120, "
    "3], [120, 11], [100, 11]], holes: [{name: R1-a, centre: [110, 6], diameter: 0.5}]}\n";

// What goes through the hole, and what the rib's twin would have been asked for, is not at fault.
TEST(RefusedTwin, OfARibWhoseHoleHasNoneIsOneError) {
  const std::string text =
      put(tailcone("  - {name: c, kind: end, at: [110, -8, 6], mirror: c-right}\n"
                   "  - {name: d, kind: end, at: [110, -4, 6], mirror: d-right}\n"
                   "routes:\n"
                   "  - {name: q, system: wire, line: wire-1/4, from: c, to: d, mirror: q-right, "
                   "points: [{through: R1-a}]}\n"
                   "  - {name: s, system: wire, line: wire-1/4, from: from, to: to, points: "
                   "[{hold: clamp, at: [110, -6, 12], to: R1-right}]}\n"),
          "  channels:\n", rib + "  channels:\n");
  expect_only(
      text,
      "part 'R1' has no mirror image: hole 'R1-a' lies on one side and has no twin | "
      "give 'R1-a' 'mirror: NAME', in place of what stands there for its twin, if anything does");
  EXPECT_EQ(
      shown(loaded_text(put(text, "diameter: 0.5}]}", "diameter: 0.5, mirror: R1-b}]}")).errors),
      "");
}

/// The one error of a table of points, as it is shown, or "" where it loads.
std::string fault_of_table(const std::string& table) {
  const ProjectFolder folder;
  folder.write("project.yaml", tailcone(std::string(wire_route) + "points_from: way.csv}\n"));
  folder.write("way.csv", table);
  const std::vector<Diagnostic> errors = load_project(folder.path(), small_catalogue()).errors;
  EXPECT_LE(errors.size(), 1u) << table << "\n" << shown(errors);
  return shown(errors);
}

void expect_table_says(const std::string& table, const std::string& words) {
  EXPECT_TRUE(fault_of_table(table).starts_with("way.csv:" + words)) << table << "\n"
                                                                     << fault_of_table(table);
}

TEST(RefusedTable, SaysOnceWhatIsWrongWithItsColumns) {
  expect_table_says("", "1:1: the table is empty | its first line names its columns: fs,bl,wl");
  expect_table_says("# only this\n", "1:1: the table is empty");
  expect_table_says("fs,bl\n100,-8\n110,-8\n", "1:1: the table has no column 'wl'");
  expect_table_says("fs\n100\n", "1:1: the table has no column 'bl' and no column 'wl'");
  expect_table_says("fs,bl,wl,hld\n100,-8,14,clamp\n",
                    "1:10: unknown column 'hld' | did you mean 'hold'?");
  expect_table_says("fs,bl,bl,wl\n100,-8,-8,14\n", "1:7: column 'bl' is there twice");
  expect_table_says("fs;bl;wl\n100;-8;14\n", "1:1: the columns are kept apart by semicolons");
  expect_table_says("fs\tbl\twl\n100\t-8\t14\n", "1:1: the columns are kept apart by tabs");
  expect_table_says(std::string("f\0s\xff,", 5), "1:1: the line is not UTF-8");
  expect_table_says("fs,bl,wl\r100,-8,14\r", "1:9: a carriage return within a line");
}

TEST(RefusedTable, SaysWhichCellIsWrong) {
  expect_table_says("fs,bl,wl\n100,-8,14,9\n",
                    "2:11: the row has more cells than the table has columns, 3");
  expect_table_says("fs,bl,wl\n100,-8\n", "2:1: expected three lengths [FS, BL, WL]");
  expect_table_says("fs,bl,wl\n100,,14\n",
                    "2:5: expected a length (in, ft, mm, cm or m), found nothing");
  expect_table_says("fs,bl,wl,hold\n100,-8,14,\"clamp\n",
                    "2:11: a cell that begins with a double quote must end with one");
  expect_table_says("fs,bl,wl\n100 3/0,-8,14\n", "2:1: expected a length");
}

TEST(RefusedTable, HasNoRowsUnderItsColumns) {
  expect_table_says(
      "fs,bl,wl\n",
      "1:1: the table has no rows under the names of its columns | add a row for each "
      "thing, or leave out the key that names the table");
  expect_table_says("# a route\n\nfs,bl,wl\n# to be measured\n", "3:1: the table has no rows");
}

TEST(RefusedTable, IsNoneWithAMarkOfBytesAndLineEndsOfAnotherSystem) {
  EXPECT_EQ(fault_of_table("\xEF\xBB\xBF\"fs\",bl,wl\r\n100 1/2,-8,\"14\"\r\n"), "");
}

TEST(RefusedTable, OfHolesIsOneErrorThoughTheyAreGoneThrough) {
  const ProjectFolder folder;
  std::string text = with_points("{through: left}");
  text.replace(text.find("    - {name: F2,"), 16, "    - {holes_from: f2.csv, name: F2,");
  folder.write("project.yaml", text);
  for (const auto& [table, words] :
       {std::pair("",
                  "f2.csv:1:1: the table is empty | its first line names its columns: name,bl,wl"),
        std::pair("bl,wl,diameter\n-8,14,0.5\n8,14,0.5\n",
                  "f2.csv:1:1: the table has no column 'name'"),
        std::pair("name,wl,diameter\nleft,14,0.5\n", "f2.csv:1:1: the table has no column 'bl'"),
        std::pair("name,bl,wl,diameter\nleft,-8,40,0.5\n",
                  "f2.csv:2:1: hole 'left' reaches outside")}) {
    folder.write("f2.csv", table);
    const std::vector<Diagnostic> errors = load_project(folder.path(), small_catalogue()).errors;
    ASSERT_EQ(errors.size(), 1u) << shown(errors);
    EXPECT_TRUE(shown(errors).starts_with(words)) << shown(errors);
  }
}

TEST(BareVolume, IsOfCubicInchesOrMillimetresAndIsSaid) {
  const auto taken = [](const std::string& text) {
    const LoadResult result = loaded_text(text);
    EXPECT_TRUE(result.project) << shown(result.errors);
    return result.project ? result.project->assumptions : std::vector<std::string>();
  };
  const auto holds = [](const std::vector<std::string>& all, std::string_view words) {
    return std::ranges::find(all, words) != all.end();
  };
  const std::string bare = put(tailcone(""), "at: [90, -8, 14]", "at: [90, -8, 14], volume: 6");
  EXPECT_TRUE(holds(taken(bare), "volumes that state no unit: 1; in3 was taken"));
  EXPECT_TRUE(holds(taken(put(bare, "name: a\n", "name: a\nunits: mm\n")),
                    "volumes that state no unit: 1; mm3 was taken"));
  for (const std::string stated : {"volume: 6 in3", "volume: 98 mL", "volume: 0"})
    for (const std::string& each : taken(put(bare, "volume: 6", stated)))
      EXPECT_EQ(each.find("volume"), std::string::npos) << stated << ": " << each;
}

// 20 may be degC and 300 N, where lengths are in mm.
TEST(BareForce, IsSaidWhereLengthsAreInMillimetres) {
  const auto says = [](const std::string& text) {
    const LoadResult result = loaded_text(text);
    EXPECT_TRUE(result.project) << shown(result.errors);
    if (!result.project) return false;
    return std::ranges::find(result.project->assumptions,
                             "forces, temperatures and the like that state no unit, where lengths "
                             "are in mm: 4; lbf, degF, psi, lbf/in and ft/min were taken") !=
           result.project->assumptions.end();
  };
  const auto with = [](const std::string& units, const std::string& degrees) {
    return put(tailcone(""), "name: a\n",
               "name: a\nunits: " + units + "\nweight: 1500\ntemperature: {min: -20" + degrees +
                   ", rigged: 20" + degrees + ", max: 40" + degrees + "}\n");
  };
  EXPECT_TRUE(says(with("mm", "")));
  EXPECT_FALSE(says(with("in", "")));
  EXPECT_FALSE(says(with("mm", " degC")));
}

// A tube that goes in past where the axes meet would be in the way of the other one.
TEST(FittingOfOnesOwn, TakesNoTubeDeeperThanItIs) {
  const auto text = [](const std::string& insertion) {
    return tailcone(
        "fittings:\n  - {name: union-mine, kind: union, tube: 0.25, body_diameter: "
        "0.5, take_up: [0.3], insertion: " +
        insertion + ", source: mine}\n");
  };
  expect_only(text("5"), "insertion: must be no more than the least 'take_up', 0.3 in");
  expect_only(text("0.3001"), "insertion: must be no more than");
  EXPECT_EQ(shown(loaded_text(text("0.3")).errors), "");
}

}  // namespace
}  // namespace linewright
