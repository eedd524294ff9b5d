// A mesh and a described frame that show one hole differently.

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "rules/mesh_project.hpp"

namespace linewright {
namespace {

// Meshes keep places in 32 bits: at 130 in, 8e-6 in.
constexpr double single_in = 2e-5;

/// A cable along BL 0, WL 10 through a bare 3 in hole of a frame at FS 106, and a mesh in its web.
ProjectSections in_wide_hole(const std::string& points = "[]") {
  ProjectSections sections;
  sections.structure =
      "  frames: [{name: F, station: 106, thickness: 0.032, outline: [[-20, -20], [20, -20], [20, "
      "40], [-20, 40]], holes: [{name: H, centre: [0, 10], diameter: 3, edge: bare}]}]\n"
      "  meshes: [{name: body, file: body.obj, units: in}]\n";
  sections.nodes =
      "  - {name: a, kind: horn, at: [100, 0, 10]}\n  - {name: b, kind: horn, at: [112, 0, 10]}\n";
  sections.routes =
      "  - {name: c, system: cable, line: cable-7x19-1/8-steel, from: a, to: b, tension: {rigged: "
      "40 lbf, limit_load: 150 lbf}, travel: {forward: 1, aft: 1}, points: " +
      points + "}\n";
  return sections;
}

/// A plate in the frame's plane, above `wl`.
std::string plate_above(double wl, double station = 106) {
  return quad({station, -6, wl}, {station, 6, wl}, {station, 6, 16}, {station, -6, 16});
}

void expect_none_but_passes(const std::vector<Judgement>& judgements) {
  for (const Judgement& judgement : judgements)
    EXPECT_EQ(judgement.verdict, Verdict::pass) << judgement.rule << ": " << judgement.message;
}

/// What is known of the mesh: how far the arms that are not stated swing the cable is not.
std::vector<Judgement> of_body(const MeshProject& project, const std::string& rule) {
  std::vector<Judgement> judgements = with(project.judged(rule), "body");
  std::erase_if(judgements, [](const Judgement& each) { return each.verdict == Verdict::unknown; });
  return judgements;
}

/// A 1/8 in cable is at most 0.139 in across.
constexpr double radius_in = 0.0695;

TEST(MeshHole, AnEdgeInADescribedHoleIsJudgedAsAnEdge) {
  for (const double station : {106.0, 106.08, 105.95}) {
    SCOPED_TRACE(station);
    const MeshProject project(in_wide_hole(), plate_above(10 + radius_in + 0.0003, station));
    const Judgement clearance = only(of_body(project, "clearance"));
    EXPECT_NE(clearance.verdict, Verdict::pass);
    EXPECT_LT(*clearance.value, 0.003);
    EXPECT_EQ(only(with(project.judged("chafe"), "body")).verdict, Verdict::fail);
  }
}

TEST(MeshHole, ThatTheMeshReachesIntoTheHoleIsSaid) {
  const MeshProject project(in_wide_hole(), plate_above(11));
  const Judgement judgement = only(with(project.judged("frame-crossing"), "body"));
  EXPECT_EQ(judgement.verdict, Verdict::warn);
  // The hole ends at WL 11.5.
  EXPECT_NEAR(*judgement.value, 0.5, single_in);
  EXPECT_EQ(*judgement.limit, 0.0625);
  EXPECT_EQ(judgement.message,
            "an edge of mesh body stands 0.500 in inside hole H of frame F, from its edge as "
            "described");
}

TEST(MeshHole, WhatIsWithinASixteenthOfTheEdgeIsTheSameEdge) {
  EXPECT_EQ(with(MeshProject(in_wide_hole(), plate_above(11.4374)).judged("frame-crossing"), "body")
                .size(),
            1U);
  const MeshProject same(in_wide_hole(), plate_above(11.4376));
  for (const std::string rule : {"frame-crossing", "clearance", "chafe"})
    expect_none_but_passes(with(same.judged(rule), "body"));
}

TEST(MeshHole, AFairleadInTheHoleIsWhatTheMeshShows) {
  const MeshProject project(in_wide_hole("[{at: [106, 0, 10], hold: fairlead, through: H, bore: "
                                         "0.19}]"),
                            plate_above(10.095));
  for (const std::string rule : {"frame-crossing", "clearance", "chafe"})
    expect_none_but_passes(with(project.judged(rule), "body"));
}

TEST(MeshHole, APlateWithNoHoleLeavesItOut) {
  const MeshProject project(in_wide_hole(),
                            quad({106, -6, 4}, {106, 6, 4}, {106, 6, 16}, {106, -6, 16}));
  EXPECT_EQ(only(with(project.judged("frame-crossing"), "body")).verdict, Verdict::warn);
  expect_none_but_passes(of_body(project, "clearance"));
}

/// A plate in the frame's plane with a square hole about WL 10, `half` to each side.
std::string plate_round(double half, double station = 106) {
  const double low = 10 - half;
  const double high = 10 + half;
  return quad({station, -6, 4}, {station, 6, 4}, {station, 6, low}, {station, -6, low}) +
         quad({station, -6, high}, {station, 6, high}, {station, 6, 16}, {station, -6, 16}) +
         quad({station, -6, low}, {station, -half, low}, {station, -half, high},
              {station, -6, high}) +
         quad({station, half, low}, {station, 6, low}, {station, 6, high}, {station, half, high});
}

std::vector<Judgement> said_of_hole(const std::string& obj) {
  std::vector<Judgement> said;
  for (const Judgement& each :
       with(MeshProject(in_wide_hole(), obj).judged("frame-crossing"), "body"))
    if (each.verdict != Verdict::pass) said.push_back(each);
  return said;
}

TEST(MeshHole, ThatTheMeshLeavesMoreOpenThanTheHoleIsSaid) {
  for (const double station : {106.0, 106.016}) {
    const Judgement judgement = only(said_of_hole(plate_round(2, station)));
    EXPECT_EQ(judgement.verdict, Verdict::warn);
    // From 1.5 in, the round hole's edge, to the corner of the square one, along its diagonal.
    EXPECT_NEAR(*judgement.value, 2 * std::sqrt(2.0) - 1.5, 0.003);
    EXPECT_EQ(*judgement.limit, 0.0625);
    EXPECT_EQ(judgement.message,
              "mesh body leaves 1.33 in open beyond the edge of hole H of frame F as described");
  }
}

TEST(MeshHole, AMeshThatDoesNotGoRoundTheHoleLeavesNothingOpen) {
  EXPECT_TRUE(said_of_hole(plate_above(11.6)).empty());
}

/// A plate in the frame's plane round a hole of 24 flats, nowhere nearer to WL 10 than `radius`.
std::string plate_with_round_hole(double radius) {
  std::string obj;
  const int count = 24;
  const double corner = radius / std::cos(std::acos(-1.0) / count);
  const auto at = [&](int i, double r) {
    const double angle = 2 * std::acos(-1.0) * i / count;
    return Vec3{106, r * std::cos(angle), 10 + r * std::sin(angle)};
  };
  for (int i = 0; i < count; ++i)
    obj += quad(at(i, corner), at(i, 8), at(i + 1, 8), at(i + 1, corner));
  return obj;
}

TEST(MeshHole, WhatIsOpenWithinASixteenthOfTheEdgeIsTheSameEdge) {
  // 24 flats round 1.53 in have their corners at 1.5432 in; round 1.56 in at 1.5735 in.
  EXPECT_TRUE(said_of_hole(plate_with_round_hole(1.53)).empty());
  EXPECT_EQ(only(said_of_hole(plate_with_round_hole(1.56))).verdict, Verdict::warn);
}

}  // namespace
}  // namespace linewright
