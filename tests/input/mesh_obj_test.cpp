// Statements: "Advanced Visualizer Manual, Appendix B1: Object Files", Wavefront Technologies, from
// memory.

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

#include "input/mesh_reading.hpp"
#include "model/vector.hpp"

namespace linewright {
namespace {

MeshTriangles read_obj_text(const std::string& text) {
  return mesh_of(read_bytes("a.obj", text));
}

std::string fault(const std::string& text) {
  return fault_of(read_bytes("a.obj", text));
}

Vec3 corner(const Corners& corners, std::size_t i) {
  return {corners[3 * i], corners[3 * i + 1], corners[3 * i + 2]};
}

double total_area(const MeshTriangles& mesh) {
  double sum = 0;
  for (const Corners& c : mesh.corners)
    sum += norm(cross(corner(c, 1) - corner(c, 0), corner(c, 2) - corner(c, 0))) / 2;
  return sum;
}

/// True where a point lies in one of the triangles, all seen from above.
bool covered(const MeshTriangles& mesh, double x, double y) {
  for (const Corners& c : mesh.corners) {
    const auto side = [&](std::size_t i, std::size_t k) {
      const Vec3 a = corner(c, i), b = corner(c, k);
      return (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
    };
    const double s0 = side(0, 1), s1 = side(1, 2), s2 = side(2, 0);
    if ((s0 > 0 && s1 > 0 && s2 > 0) || (s0 < 0 && s1 < 0 && s2 < 0)) return true;
  }
  return false;
}

const std::string corners_3_4 = "v 0 0 0\nv 3 0 0\nv 0 4 0\n";
const Corners three_four_five{0, 0, 0, 3, 0, 0, 0, 4, 0};

TEST(Obj, TakesVerticesByNumberHoweverTheyAreWritten) {
  for (const char* face : {"f 1 2 3", "f 1/1 2/1 3/1", "f 1//1 2//1 3//1", "f 1/2/3 2/2/3 3/2/3",
                           "f -3 -2 -1", "f -3/-1/-1 2//-1 -1/1", "f 1 2 3 # a comment",
                           "f 1 \\\n 2 \\\r\n 3", "f 1 2\\\n 3", "\tf\t1  2\t3 "})
    EXPECT_EQ(read_obj_text(corners_3_4 + face + "\n").corners,
              std::vector<Corners>{three_four_five})
        << face;
}

TEST(Obj, CountsBackFromTheLineOfTheFace) {
  const MeshTriangles mesh = read_obj_text(corners_3_4 + "f -1 -2 -3\nv 0 0 7\nf -4 -3 -1\n");
  ASSERT_EQ(mesh.corners.size(), 2u);
  EXPECT_EQ(mesh.corners[0], (Corners{0, 4, 0, 3, 0, 0, 0, 0, 0}));
  EXPECT_EQ(mesh.corners[1], (Corners{0, 0, 0, 3, 0, 0, 0, 0, 7}));
}

TEST(Obj, PassesOverWhatIsNoSurface) {
  const MeshTriangles mesh = read_obj_text(
      "\xEF\xBB\xBF# made by a program\nmtllib a.mtl\nv 0 0 0 1.0\nv 3 0 0 0.5 0.5 0.5\nv 0 4 0\n"
      "vn 0 0 1\nvt 0 0\nvp 1 \\\n 2\nusemtl red\ns off\nl 1 2\np 1\n\nf 1 2 3\n# a \\\nf 1 2 3");
  EXPECT_EQ(mesh.corners, std::vector<Corners>(2, three_four_five));
}

TEST(Obj, GivesAPartForEachRunOfFacesUnderAName) {
  const MeshTriangles mesh = read_obj_text(
      corners_3_4 + "f 1 2 3\no tail cone\nf 1 2 3\nf 1 2 3\ng empty\ng rib web\nf 1 2 3\n");
  EXPECT_EQ(mesh.parts, (std::vector<MeshPart>{{"tail cone", 1, 2}, {"rib web", 3, 1}}));
}

TEST(Obj, CutsAConvexPolygonIntoAFan) {
  const MeshTriangles mesh = read_obj_text("v 0 0 5\nv 3 0 5\nv 3 4 5\nv 0 4 5\nf 1 2 3 4\n");
  EXPECT_EQ(mesh.corners,
            (std::vector<Corners>{{0, 0, 5, 3, 0, 5, 3, 4, 5}, {0, 0, 5, 3, 4, 5, 0, 4, 5}}));
}

TEST(Obj, TilesAHollowPolygonWithoutCoveringTheHollow) {
  // An L of three unit squares, whatever the unit.
  for (const double unit : {1e-3, 1.0, 1e3}) {
    std::string text;
    for (const auto& [x, y] :
         std::vector<std::pair<int, int>>{{2, 1}, {1, 1}, {1, 2}, {0, 2}, {0, 0}, {2, 0}})
      text += "v " + std::to_string(x * unit) + " " + std::to_string(y * unit) + " 0\n";
    const MeshTriangles mesh = read_obj_text(text + "f 1 2 3 4 5 6\n");
    EXPECT_EQ(mesh.corners.size(), 4u);
    EXPECT_NEAR(total_area(mesh), 3 * unit * unit, 1e-6 * unit * unit);  // floats
    EXPECT_FALSE(covered(mesh, 1.5 * unit, 1.5 * unit));
    EXPECT_TRUE(covered(mesh, 1.5 * unit, 0.4 * unit));
  }
}

TEST(Obj, LeavesOpenAHoleThatIsCutInByABridge) {
  // A square of 4 with a hole of 2, joined by a cut from corner to corner walked twice.
  const MeshTriangles mesh = read_obj_text(
      "v 0 0 0\nv 4 0 0\nv 4 4 0\nv 0 4 0\nv 1 1 0\nv 1 3 0\nv 3 3 0\nv 3 1 0\n"
      "f 1 2 3 4 1 5 6 7 8 5\n");
  EXPECT_NEAR(total_area(mesh), 12, 1e-9);
  EXPECT_FALSE(covered(mesh, 2.1, 1.9));
  EXPECT_TRUE(covered(mesh, 3.6, 2));
}

TEST(Obj, NamesLineAndColumnOfAFault) {
  EXPECT_EQ(fault(corners_3_4 + "f 1 2 4\n"),
            "a.obj:4:7: there is no vertex 4: 3 stand above this line");
  EXPECT_EQ(fault(corners_3_4 + "f 1 2 -4\n"),
            "a.obj:4:7: there is no vertex -4: 3 stand above this line");
  EXPECT_EQ(fault(corners_3_4 + "f 0 2 3\n"),
            "a.obj:4:3: there is no vertex 0: 3 stand above this line");
  const std::string corner_words =
      "expected a corner as vertex, vertex/texture or vertex/texture/normal, found ";
  for (const char* word :
       {"1/1/1/1", "1x", "1/x", "/1", "1.5", "99999999999999999999", "+1", "1/1/1/"})
    EXPECT_EQ(fault(corners_3_4 + "f 1 2 " + word + "\n"),
              "a.obj:4:7: " + corner_words + "'" + word + "'");
  EXPECT_EQ(fault(corners_3_4 + "f 1 2\n"), "a.obj:4:1: a face needs three corners");
  EXPECT_EQ(fault("v 1 2\n"), "a.obj:1:6: a vertex needs three coordinates");
  EXPECT_EQ(fault("v 1 2 inf\n"),
            "a.obj:1:7: a coordinate must be a finite number, found infinity");
  EXPECT_EQ(
      fault("v 1 2 -2e6\n"),
      "a.obj:1:7: a coordinate of -2e+06 is 1000000 in or more from the datum in these units: "
      "are the units right?");
  EXPECT_EQ(fault("solid a\n"), "a.obj:1:1: 'solid' is no statement of a Wavefront OBJ file");
  EXPECT_EQ(fault("surf 0 1 0 1 1\n"),
            "a.obj:1:1: 'surf' is not read: export the mesh as polygons in one file");
  EXPECT_EQ(fault(corners_3_4), "a.obj: the mesh has no triangles");
}

TEST(Obj, IsNotHeldUpByAFaceOfManyCorners) {
  std::string text, round = "f";
  for (int i = 1; i <= 10'000; ++i) {
    const double angle = 0.0006283 * i;
    text += "v " + std::to_string(std::cos(angle)) + " " + std::to_string(std::sin(angle)) + " 0\n";
    round += " " + std::to_string(i);
  }
  EXPECT_EQ(fault(text + round + " 1\n"),
            "a.obj:10001:1: a face of 10001 corners is more than is read: export the mesh as "
            "triangles");
  std::vector<int> shuffled(9'000);
  std::iota(shuffled.begin(), shuffled.end(), 1);
  std::shuffle(shuffled.begin(), shuffled.end(), std::mt19937(4));
  std::string hollow = "f";
  for (const int vertex : shuffled) hollow += " " + std::to_string(vertex);
  EXPECT_EQ(fault(text + hollow + "\n"),
            "a.obj:10001:1: too many large hollow polygons: export the mesh as triangles");
}

}  // namespace
}  // namespace linewright
