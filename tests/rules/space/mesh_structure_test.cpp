// Structure that comes from a mesh's file is judged as the same structure described.

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "oracles/random_path.hpp"
#include "rules/mesh_project.hpp"

namespace linewright {
namespace {

// Meshes keep places in 32 bits: at 130 in, 8e-6 in.
constexpr double single_in = 2e-5;

/// A plate across FS with a square hole, `half_hole` to each side of BL 0, WL 10.
std::string plate_with_hole(double station, double half_hole) {
  const double out = 8;
  const auto at = [&](double bl, double wl) { return Vec3{station, bl, 10 + wl}; };
  const double h = half_hole;
  return quad(at(-out, -out), at(out, -out), at(h, -h), at(-h, -h)) +
         quad(at(out, -out), at(out, out), at(h, h), at(h, -h)) +
         quad(at(out, out), at(-out, out), at(-h, h), at(h, h)) +
         quad(at(-out, out), at(-out, -out), at(-h, -h), at(-h, h));
}

std::string plate_across(double station) {
  return quad({station, -8, 2}, {station, 8, 2}, {station, 8, 18}, {station, -8, 18});
}

std::string mesh_entry(const std::string& more = "") {
  return "  meshes:\n    - {name: body, file: body.obj, units: in" + more + "}\n";
}

/// A straight 1/4 in line from (100, 0, 10) to (130, 0, 10) past the structure.
ProjectSections past(const std::string& structure, const std::string& line = "tube-nylon-1/4",
                     const std::string& points = "[]", const std::string& to = "130, 0, 10") {
  ProjectSections sections;
  sections.structure = structure;
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", to);
  const std::string system = line.starts_with("wire")    ? "wire"
                             : line.starts_with("cable") ? "cable"
                                                         : "static";
  sections.routes = "  - {name: route, system: " + system + ", line: " + line +
                    ", from: forward, to: aft,\n     points: " + points +
                    (system == "cable" ? ", tension: {rigged: 100 lbf}" : "") + "}\n";
  return sections;
}

/// A plate under the line whose surface at FS 105 to 125 comes down from `wl`.
std::vector<Vec3> plate_corners(double wl) {
  return {{105, -5, wl}, {125, -5, wl - 1}, {125, 5, wl - 1}, {105, 5, wl}};
}

std::string plate_obj(double wl) {
  const std::vector<Vec3> at = plate_corners(wl);
  return quad(at[0], at[1], at[2], at[3]);
}

std::string panel(double wl, const std::string& thickness) {
  std::string corners;
  for (const Vec3& at : plate_corners(wl))
    corners += fmt::format("{}[{}, {}, {}]", corners.empty() ? "" : ", ", at.x, at.y, at.z);
  return "  panels:\n    - {name: body, corners: [" + corners + "], thickness: " + thickness +
         "}\n";
}

/// Expects the same of both, and gives how many judgements that was of.
std::size_t expect_same(const std::vector<Judgement>& of_mesh,
                        const std::vector<Judgement>& described) {
  EXPECT_EQ(of_mesh.size(), described.size());
  if (of_mesh.size() != described.size()) return 0;
  for (std::size_t i = 0; i < described.size(); ++i) {
    EXPECT_EQ(of_mesh[i].verdict, described[i].verdict);
    EXPECT_EQ(of_mesh[i].with, described[i].with);
    EXPECT_NEAR(of_mesh[i].value.value_or(-1), described[i].value.value_or(-1), single_in);
    EXPECT_NEAR(of_mesh[i].limit.value_or(-1), described[i].limit.value_or(-1), single_in);
    EXPECT_LT(distance(of_mesh[i].at.value_or(Vec3()), described[i].at.value_or(Vec3())), 1e-3);
  }
  return described.size();
}

TEST(MeshStructure, IsClearedAsThePanelInItsPlace) {
  std::size_t cleared = 0;
  std::size_t chafed = 0;
  for (const std::string line : {"tube-nylon-1/4", "tube-aluminium-1/4", "wire-1/4"})
    for (const double wl : {9.9, 9.7, 9.1, 8.0})
      for (const std::string thickness : {"0.0", "0.04"}) {
        SCOPED_TRACE(line + " over " + std::to_string(wl) + ", " + thickness);
        const MeshProject mesh(past(mesh_entry(", thickness: " + thickness), line), plate_obj(wl));
        const MeshProject described(
            past(panel(wl, thickness == "0.0" ? "0.000001" : thickness), line), "");
        cleared += expect_same(mesh.judged("clearance"), described.judged("clearance"));
        chafed += expect_same(mesh.judged("chafe"), described.judged("chafe"));
      }
  // All but the plate 1.875 in and more away; of it and of the next no chafe is possible.
  EXPECT_EQ(cleared, 3u * 3 * 2);
  EXPECT_GE(chafed, 3u * 2 * 2);
}

TEST(MeshStructure, MeasuresFromTheFaceOfAThickSheet) {
  // 10 - 9 - 0.125 = 0.875 to the sheet's middle, half its thickness less to its face.
  const std::string level = quad({105, -5, 9}, {125, -5, 9}, {125, 5, 9}, {105, 5, 9});
  for (const auto& [entry, gap] : {std::pair{"", 0.875}, {", thickness: 0.25", 0.75}}) {
    const Judgement judgement =
        only(MeshProject(past(mesh_entry(entry)), level).judged("clearance"));
    EXPECT_NEAR(*judgement.value, gap, single_in);
    EXPECT_EQ(judgement.with, "body");
    EXPECT_EQ(judgement.verdict, Verdict::pass);
  }
}

TEST(MeshStructure, StandsWhereTheProjectPutsIt) {
  // Drawn in millimetres about its own middle, lying on its side: a quarter turn about FS lays it
  // flat, and it is moved to WL 9.
  const std::string drawn = quad({-254, 0, -127}, {254, 0, -127}, {254, 0, 127}, {-254, 0, 127});
  ProjectSections sections = past(
      "  meshes:\n    - {name: body, file: body.obj, units: mm, rotate: [{about: FS, angle: 90 "
      "deg}], translate: [115, 0, 9]}\n");
  const Judgement judgement = only(MeshProject(sections, drawn).judged("clearance"));
  EXPECT_NEAR(*judgement.value, 0.875, single_in);
}

TEST(MeshStructure, NamesTheEdgeAndThePiece) {
  const std::string wall = quad({115, -0.5, 9.7}, {115, 0.5, 9.7}, {115, 0.5, 5}, {115, -0.5, 5});
  const Judgement edge =
      only(MeshProject(past(mesh_entry()), "o rib 4\n" + wall).judged("clearance"));
  EXPECT_EQ(edge.verdict, Verdict::warn);
  EXPECT_EQ(edge.message, "too near to an edge of mesh body (rib 4)");
  const Judgement face =
      only(MeshProject(past(mesh_entry()), plate_obj(9.9) + "o far\n" + plate_across(500))
               .judged("clearance"));
  EXPECT_TRUE(face.message.find("mesh body") != std::string::npos) << face.message;
  EXPECT_TRUE(face.message.find("far") == std::string::npos) << face.message;
}

TEST(MeshStructure, ALineThatCanReachAnEdgeChafes) {
  const std::string wall = quad({115, -5, 9.7}, {115, 5, 9.7}, {115, 5, 5}, {115, -5, 5});
  const Judgement judgement = only(MeshProject(past(mesh_entry()), wall).judged("chafe"));
  EXPECT_EQ(judgement.verdict, Verdict::fail);
  EXPECT_NEAR(*judgement.value, 10 - 0.125 - 9.7, single_in);
  EXPECT_TRUE(judgement.message.starts_with("can reach an edge of mesh body: "))
      << judgement.message;
  // A guard cannot be stated for a mesh's edge, so it is not offered.
  EXPECT_EQ(judgement.mend.find("guard the edge"), std::string::npos) << judgement.mend;
}

TEST(MeshStructure, ALineThroughAPlateFails) {
  for (const std::string line : {"tube-nylon-1/4", "cable-7x19-1/8-steel"}) {
    const Judgement judgement =
        only(MeshProject(past(mesh_entry(), line), plate_across(115.25)).judged("frame-crossing"));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_EQ(judgement.with, "body");
    EXPECT_EQ(judgement.message, "goes through a surface of mesh body, where no hole is described");
    EXPECT_NEAR(judgement.at->x, 115.25, single_in);
  }
}

TEST(MeshStructure, ALineThroughAPlateIsToBeLedRoundIt) {
  for (const std::string line : {"tube-nylon-1/4", "cable-7x19-1/8-steel"}) {
    const Judgement judgement =
        only(MeshProject(past(mesh_entry(), line), plate_across(115.25)).judged("clearance"));
    EXPECT_EQ(judgement.verdict, Verdict::fail);
    EXPECT_EQ(judgement.mend, "lead the line round it");
  }
}

TEST(MeshStructure, ALineThroughASeamOfAPlateFails) {
  // The edge that the two triangles share runs right through the line, however the plate leans:
  // corners in 64ths are the same in 32 bits, and only where the line pierces it is rounded.
  oracles::Random random(31);
  const Vec3 from{100, 0, 10};
  const auto corner = [&](double bl, double wl) {
    return Vec3{115 + random.whole(-99, 99) / 64.0, bl + random.whole(-64, 64) / 64.0,
                wl + random.whole(-64, 64) / 64.0};
  };
  for (int i = 0; i < 40; ++i) {
    const Vec3 a = corner(-4, 6);
    const Vec3 c = corner(4, 14);
    const Vec3 at = between(a, c, random.between(0.3, 0.7));
    const Vec3 to = from + (at - from) * 1.9;
    const MeshProject project(
        past(mesh_entry(), "tube-nylon-1/4", "[]", fmt::format("{}, {}, {}", to.x, to.y, to.z)),
        quad(a, corner(4, 6), c, corner(-4, 14)));
    EXPECT_EQ(project.judged("frame-crossing").size(), 1U) << i;
  }
}

TEST(MeshStructure, ALineThroughAnOpenHoleOfAPlateDoesNotFail) {
  const MeshProject project(past(mesh_entry()), plate_with_hole(115, 1));
  EXPECT_TRUE(project.judged("frame-crossing").empty());
  // Its edge is cleared like any other: 1 - 0.125.
  const Judgement clearance = only(project.judged("clearance"));
  EXPECT_NEAR(*clearance.value, 0.875, single_in);
}

TEST(MeshStructure, BothFacesOfASheetAreOneCrossing) {
  const MeshProject sheet(past(mesh_entry()), plate_across(115) + plate_across(115.04));
  EXPECT_EQ(sheet.judged("frame-crossing").size(), 1U);
  const MeshProject two(past(mesh_entry()), plate_across(110) + plate_across(120));
  EXPECT_EQ(two.judged("frame-crossing").size(), 2U);
}

std::string frame_at(double station, const std::string& edge) {
  return fmt::format(
      "  frames:\n    - {{name: F4, station: {}, thickness: 0.032, outline: [[-8, 2], [8, 2], [8, "
      "18], [-8, 18]], holes: [{{name: hole, outline: [[-1, 9], [1, 9], [1, 11], [-1, 11]], edge: "
      "{}}}]}}\n",
      station, edge);
}

TEST(MeshStructure, ADescribedHoleExplainsAPlateInItsFrame) {
  // Clamped to both sides, so that the line reaches nothing but what it goes through.
  const std::string clamps = "[{at: [113, 0, 10], hold: clamp}, {at: [117, 0, 10], hold: clamp}]";
  for (const std::string edge : {"bare", "edge-trim"})
    for (const std::string& plate : {plate_with_hole(115.05, 0.95), plate_with_hole(115.05, 1)}) {
      SCOPED_TRACE(edge);
      const ProjectSections described = past(frame_at(115, edge), "tube-nylon-1/4", clamps);
      ProjectSections with_mesh = described;
      with_mesh.structure += mesh_entry();
      const MeshProject frame(described, "");
      const MeshProject both(with_mesh, plate);
      EXPECT_EQ(expect_same(both.judged("frame-crossing"), frame.judged("frame-crossing")), 1u);
      for (const std::string rule : {"clearance", "chafe"})
        for (const Judgement& judgement : with(both.judged(rule), "body"))
          EXPECT_EQ(judgement.verdict, Verdict::pass) << judgement.message;
    }
}

TEST(MeshStructure, MetalInADescribedHoleIsSaid) {
  // A 1/4 in line through the middle of a hole 2 in square, and a plate that stands before it.
  const auto found = [](const std::string& plate) {
    return with(
        MeshProject(past(frame_at(115, "bare") + mesh_entry()), plate).judged("frame-crossing"),
        "body");
  };
  const Judgement covered = only(found(plate_across(115.08)));
  EXPECT_EQ(covered.verdict, Verdict::warn);
  EXPECT_NEAR(*covered.value, -0.125, single_in);
  EXPECT_NEAR(covered.at->x, 115.08, 1e-3);
  EXPECT_EQ(covered.message, "runs into mesh body in hole hole, which frame F4 describes as open");
  // Half of the line lies on it, and no face is pierced.
  const Judgement beside =
      only(found(quad({115.08, -1, 9}, {115.08, 1, 9}, {115.08, 1, 9.95}, {115.08, -1, 9.95})));
  EXPECT_EQ(beside.verdict, Verdict::warn);
  EXPECT_NEAR(*beside.value, 0.05 - 0.125, single_in);
  EXPECT_TRUE(found(plate_with_hole(115.08, 0.95)).empty());
}

// A mesh's corners are rounded, and its round holes have flats: it may be in the line by 0.001 in
// [the rule's own figure].
TEST(MeshStructure, MetalInADescribedHoleIsLetPassByAThousandth) {
  const auto found = [](double gap_in) {
    const double top = 10 - 0.125 - gap_in;
    const MeshProject project(
        past(frame_at(115, "bare") + mesh_entry()),
        quad({115.08, -1, 9}, {115.08, 1, 9}, {115.08, 1, top}, {115.08, -1, top}));
    // That the plate stands deep in the hole is said besides.
    std::vector<Judgement> judgements = with(project.judged("frame-crossing"), "body");
    std::erase_if(judgements, [](const Judgement& each) { return *each.limit != 0; });
    return judgements;
  };
  for (const double gap : {0.0001, 0.0, -0.0009}) EXPECT_TRUE(found(gap).empty()) << gap;
  const Judgement beyond = only(found(-0.0011));
  EXPECT_EQ(beyond.verdict, Verdict::warn);
  EXPECT_NEAR(*beyond.value, -0.0011, single_in);
  EXPECT_EQ(*beyond.limit, 0);
  EXPECT_EQ(beyond.source, "geometry: of the frame's hole and the mesh, one is wrong (calculated)");
}

TEST(MeshStructure, AMountHidesOnlyWhatOfTheMeshIsNearIt) {
  // A port on a plate at FS 130; a rib of the same mesh ends 0.05 in beside the line's middle.
  const auto clearance = [](double station) {
    const std::string rib =
        quad({station, 0.05, 9}, {station, 3, 9}, {station, 3, 11}, {station, 0.05, 11});
    return only(MeshProject(past(mesh_entry()), plate_across(130) + rib).judged("clearance"));
  };
  for (const double station : {128.5, 129.2, 129.4}) {
    SCOPED_TRACE(station);
    EXPECT_EQ(clearance(station).verdict, Verdict::fail);
    EXPECT_NEAR(*clearance(station).value, 0.05 - 0.125, single_in);
  }
}

TEST(MeshStructure, ADescribedHoleDoesNotExplainAPlateElsewhere) {
  ProjectSections sections = past(frame_at(115, "bare") + mesh_entry());
  const auto failed =
      with(MeshProject(sections, plate_across(116)).judged("frame-crossing"), "body");
  EXPECT_EQ(only(failed).verdict, Verdict::fail);
}

TEST(MeshStructure, APortOnASkinDoesNotClashWithIt) {
  // The aft end is mounted on a plate across its way, and the line comes from inside.
  const MeshProject project(past(mesh_entry()), plate_across(130));
  EXPECT_TRUE(project.judged("frame-crossing").empty());
  // Beyond the inch that belongs to the fitting the plate counts again, as far off as that.
  const Judgement clear = only(project.judged("clearance"));
  EXPECT_EQ(clear.verdict, Verdict::pass);
  EXPECT_NEAR(*clear.value, 1 - 0.125, 0.01);
  // What it goes through on its way there is another thing, though of the same mesh.
  const MeshProject rib(past(mesh_entry()), plate_across(130) + plate_across(129.4));
  EXPECT_EQ(only(rib.judged("frame-crossing")).verdict, Verdict::fail);
  // A line that goes on through it does.
  const MeshProject beyond(past(mesh_entry(), "tube-nylon-1/4", "[]", "133, 0, 10"),
                           plate_across(130));
  EXPECT_EQ(only(beyond.judged("frame-crossing")).verdict, Verdict::fail);
}

TEST(MeshStructure, ASupportCanBeFixedToIt) {
  const std::string points = "[{at: [115, 0, 10], hold: clamp, to: body}]";
  for (const auto& [wl, verdict] : {std::pair{8.0, Verdict::pass},
                                    {7.0, Verdict::warn},
                                    {2.0, Verdict::fail},
                                    {-400.0, Verdict::fail}}) {
    const std::string level = quad({105, -5, wl}, {125, -5, wl}, {125, 5, wl}, {105, 5, wl});
    const Judgement judgement = only(
        MeshProject(past(mesh_entry(), "tube-nylon-1/4", points), level).judged("support-mount"));
    EXPECT_EQ(judgement.verdict, verdict);
    EXPECT_EQ(judgement.with, "body");
    EXPECT_NEAR(*judgement.value, 10 - 0.125 - wl, 1e-4);
  }
}

TEST(MeshStructure, IsNotKnownWhereItWasNotRead) {
  const MeshProject project(past(mesh_entry()), plate_across(115), false);
  const Judgement judgement = only(project.judged("clearance"));
  EXPECT_EQ(judgement.verdict, Verdict::unknown);
  EXPECT_EQ(judgement.with, "body");
  EXPECT_EQ(judgement.message, "the gap to mesh body is not measured: its file was not read");
}

/// The six faces of a box, each of two triangles.
std::string closed_box(Vec3 low, Vec3 high) {
  const auto at = [&](int x, int y, int z) {
    return Vec3{x ? high.x : low.x, y ? high.y : low.y, z ? high.z : low.z};
  };
  return quad(at(0, 0, 0), at(0, 1, 0), at(0, 1, 1), at(0, 0, 1)) +
         quad(at(1, 0, 0), at(1, 1, 0), at(1, 1, 1), at(1, 0, 1)) +
         quad(at(0, 0, 0), at(1, 0, 0), at(1, 0, 1), at(0, 0, 1)) +
         quad(at(0, 1, 0), at(1, 1, 0), at(1, 1, 1), at(0, 1, 1)) +
         quad(at(0, 0, 0), at(1, 0, 0), at(1, 1, 0), at(0, 1, 0)) +
         quad(at(0, 0, 1), at(1, 0, 1), at(1, 1, 1), at(0, 1, 1));
}

MeshProject beside_box(Vec3 low, Vec3 high) {
  ProjectSections sections;
  sections.structure = "  meshes:\n    - {name: body, file: body.obj, units: in}\n";
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", "130, 0, 10");
  sections.routes =
      "  - {name: route, system: static, line: tube-nylon-1/4, from: forward, to: aft}\n";
  return {sections, closed_box(low, high)};
}

TEST(MeshStructure, ALineInsideAClosedMeshIsFoundToBe) {
  EXPECT_TRUE(beside_box({90, -5, 5}, {140, 5, 15}).first_runs_inside());
  EXPECT_FALSE(beside_box({90, 1, 5}, {140, 5, 15}).first_runs_inside());
  EXPECT_FALSE(beside_box({90, -5, 11}, {140, 5, 15}).first_runs_inside());
  EXPECT_FALSE(beside_box({200, -5, 5}, {240, 5, 15}).first_runs_inside());
}

// Between the inner and the outer surface of a closed shell is inside; within the inner is not.
TEST(MeshStructure, ALineInTheHollowOfAShellIsNotInsideOfIt) {
  ProjectSections sections;
  sections.structure = "  meshes:\n    - {name: body, file: body.obj, units: in}\n";
  sections.nodes = held_node("forward", "100, 0, 10") + held_node("aft", "130, 0, 10");
  sections.routes =
      "  - {name: route, system: static, line: tube-nylon-1/4, from: forward, to: aft}\n";
  const std::string shell =
      closed_box({90, -5, 5}, {140, 5, 15}) + closed_box({91, -4, 6}, {139, 4, 14});
  EXPECT_FALSE(MeshProject(sections, shell).first_runs_inside());
}

}  // namespace
}  // namespace linewright
