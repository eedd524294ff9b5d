// STL has no published standard: what is checked here is common practice.

#include <limits>

#include "input/mesh/binary_stl.hpp"
#include "input/mesh/coordinates.hpp"
#include "input/mesh_reading.hpp"

namespace linewright {
namespace {

const Corners three_four_five{0, 0, 0, 3, 0, 0, 0, 4, 0};
const Corners upright{0, 0, 0, 0, 3, 0, 0, 0, 4};

const std::string ascii_facet =
    "facet normal 0 0 1\n outer loop\n  vertex 0 0 0\n  vertex 3 0 0\n  vertex 0 4 0\n"
    " endloop\nendfacet\n";

TEST(BinaryStl, GivesTheCornersAsWritten) {
  const MeshTriangles mesh =
      mesh_of(read_bytes("skin.stl", binary_stl({three_four_five, upright})));
  EXPECT_EQ(mesh.corners, (std::vector<Corners>{three_four_five, upright}));
  EXPECT_TRUE(mesh.parts.empty());
}

TEST(BinaryStl, IsToldByItsSizeEvenWhereItBeginsLikeText) {
  std::string bytes = binary_stl({upright}, ' ');
  bytes.replace(0, 9, "solid one");
  EXPECT_EQ(mesh_of(read_bytes("skin.STL", bytes)).corners, std::vector<Corners>{upright});
}

TEST(BinaryStl, KeepsTrianglesWithoutAnArea) {
  const Corners line{1, 1, 1, 2, 2, 2, 1, 1, 1};
  EXPECT_EQ(mesh_of(read_bytes("a.stl", binary_stl({line}))).corners, std::vector<Corners>{line});
}

/// More than one thread's share, so that the seam between the shares is crossed.
TEST(BinaryStl, ReadsManyTrianglesInOrder) {
  std::vector<Corners> many(200'003);
  for (std::size_t i = 0; i < many.size(); ++i)
    for (std::size_t k = 0; k < 9; ++k) many[i][k] = static_cast<float>(9 * i + k) / 4;
  const std::string bytes = binary_stl(many);
  EXPECT_TRUE(mesh_of(read_bytes("many.stl", bytes)).corners == many);
}

TEST(BinaryStl, NamesTheByteOfACoordinateThatIsNone) {
  std::vector<Corners> many(150'000, upright);
  many[140'000][4] = std::numeric_limits<float>::quiet_NaN();
  // 84 + 50 x 140000 + 12 + 4 x 4
  EXPECT_EQ(fault_of(read_bytes("a.stl", binary_stl(many))),
            "a.stl: byte 7000112: a coordinate must be a finite number, found nan");
  many[20][0] = -std::numeric_limits<float>::infinity();
  EXPECT_EQ(fault_of(read_bytes("a.stl", binary_stl(many))),
            "a.stl: byte 1096: a coordinate must be a finite number, found infinity");
}

TEST(BinaryStl, RefusesCoordinatesThatNoAeroplaneHas) {
  Corners far = upright;
  far[8] = 1e6f;
  EXPECT_EQ(fault_of(read_bytes("a.stl", binary_stl({far}))), "read");
  far[8] = 1.1e6f;
  EXPECT_EQ(fault_of(read_bytes("a.stl", binary_stl({far}))),
            "a.stl: byte 128: a coordinate of 1.1e+06 is 1000000 in or more from the datum in "
            "these units: are the units right?");
}

TEST(BinaryStl, SaysWhereTheCountDoesNotMatchTheSize) {
  const std::string bytes = binary_stl({upright, upright});
  EXPECT_EQ(fault_of(read_bytes("a.stl", bytes.substr(0, 183))),
            "a.stl: byte 80: 2 triangles are counted, which take 184 bytes, but the file has 183: "
            "it is cut short, or no STL file");
  EXPECT_EQ(fault_of(read_bytes("a.stl", bytes + "x")),
            "a.stl: byte 80: 2 triangles are counted, which take 184 bytes, but the file has 185: "
            "it is too long, or no STL file");
  std::string most = bytes;
  most.replace(80, 4, "\xFF\xFF\xFF\xFF");
  EXPECT_EQ(fault_of(read_bytes("a.stl", most)),
            "a.stl: byte 80: 4294967295 triangles are counted, which take 214748364834 bytes, but "
            "the file has 184: it is cut short, or no STL file");
}

TEST(BinaryStl, OfNoTrianglesIsRefused) {
  EXPECT_EQ(fault_of(read_bytes("a.stl", binary_stl({}))),
            "a.stl: byte 80: the mesh has no triangles");
}

TEST(AsciiStl, GivesEachNamedSolidAsAPart) {
  const MeshTriangles mesh = mesh_of(read_bytes(
      "a.stl", "solid left skin\n" + ascii_facet + ascii_facet + "endsolid left skin\nsolid\n" +
                   ascii_facet + "endsolid\nsolid none\nendsolid none\nSOLID rib\r\n" +
                   ascii_facet + "endsolid"));
  EXPECT_EQ(mesh.corners, std::vector<Corners>(4, three_four_five));
  EXPECT_EQ(mesh.parts, (std::vector<MeshPart>{{"left skin", 0, 2}, {"rib", 3, 1}}));
}

TEST(AsciiStl, ReadsNumbersAsOtherProgramsWriteThem) {
  const MeshTriangles mesh =
      mesh_of(read_bytes("a.stl",
                         "solid\nfacet normal nan nan nan\nouter loop\nvertex +1.5e+00 -2E-1 .5\n"
                         "vertex 1e-400 0 0\tvertex 4. 5 6 endloop endfacet endsolid"));
  EXPECT_EQ(mesh.corners, (std::vector<Corners>{{1.5f, -0.2f, 0.5f, 0, 0, 0, 4, 5, 6}}));
}

TEST(AsciiStl, NamesLineAndColumnOfAFault) {
  const auto fault = [](const std::string& text) { return fault_of(read_bytes("a.stl", text)); };
  EXPECT_EQ(fault("solid ä\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex é zero 0\n"),
            "a.stl:5:8: expected a coordinate, found 'é'");
  EXPECT_EQ(fault("solid\nfacet normal 0 0 1\nouter loop\nvertex 0 nan 0\n"),
            "a.stl:4:10: a coordinate must be a finite number, found nan");
  EXPECT_EQ(fault("solid\nfacet normal 0 0 1\nouter loop\nvertex 0 0 1e999\n"),
            "a.stl:4:12: a coordinate must be a finite number, found one beyond all range");
  EXPECT_EQ(fault("solid\nfacet normal 0 0 1\nouter loop\nvertex 0 0 +-1\n"),
            "a.stl:4:12: expected a coordinate, found '+-1'");
  EXPECT_EQ(fault("solid\n" + ascii_facet + "face normal"),
            "a.stl:9:1: expected 'facet' or 'endsolid', found 'face'");
  EXPECT_EQ(fault("solid\n" + ascii_facet + "\n\n"),
            "a.stl:11:1: expected 'facet' or 'endsolid', but the file ends here: is it cut short?");
  EXPECT_EQ(fault("solid\nendsolid\n"), "a.stl: the mesh has no triangles");
}

TEST(AsciiStl, ShowsTheLineOfAFault) {
  const MeshReading reading = read_bytes("a.stl", "solid a\r\n facet abnormal 0 0 1\r\n");
  ASSERT_FALSE(reading);
  EXPECT_EQ(reading.error().source_line, " facet abnormal 0 0 1");
}

TEST(MeshFile, IsRefusedWhereItIsNoMeshAtAll) {
  EXPECT_EQ(fault_of(read_bytes("a.stl", std::string(29, '\x01'))),
            "a.stl: this is no STL file: it does not begin with 'solid', and 29 bytes are too few "
            "for a binary one");
  EXPECT_EQ(fault_of(read_bytes("a.stl", "")), "a.stl: the file is empty");
  EXPECT_EQ(fault_of(read_bytes("a.step", "ISO-10303-21;")),
            "a.step: a mesh must be a .stl, .obj or .glb file");
  EXPECT_EQ(fault_of(read_bytes("a.gltf", "{}")),
            "a.gltf: a .gltf file keeps its figures in other files, which are not read: export as "
            ".glb");
}

TEST(MeshFile, IsRefusedWhereItIsMissingOrAFolder) {
  const ProjectFolder folder;
  std::filesystem::create_directory(folder.path() / "b.stl");
  EXPECT_EQ(fault_of(read_mesh_file(folder.path() / "a.stl", "a.stl", 1e6)),
            "a.stl: there is no such file");
  EXPECT_EQ(fault_of(read_mesh_file(folder.path() / "b.stl", "b.stl", 1e6)),
            "b.stl: expected a file, found a folder");
}

TEST(MeshFile, SaysWhatAnotherFormatLooksLike) {
  const std::string none = "a.stl: this is no STL file: it looks like ";
  EXPECT_EQ(fault_of(read_bytes("a.stl", "# made by hand\n\nv 0 0 0\nv 1 0 0\nf 1 2 2\n")),
            none + "an OBJ file: name it .obj");
  EXPECT_EQ(fault_of(read_bytes("a.stl", "ISO-10303-21;\nHEADER;\n")),
            none + "a STEP file: export the part as STL");
  EXPECT_EQ(fault_of(read_bytes("a.stl", std::string("glTF\2\0\0\0", 8))),
            none + "a binary glTF file: name it .glb");
  EXPECT_EQ(fault_of(read_bytes("a.stl", "Dear builder,\n")),
            none + "text, but a text STL begins with the word 'solid'");
}

TEST(MeshFile, AsksWhetherATextIsCutShort) {
  EXPECT_TRUE(fault_of(read_bytes("a.stl", "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0"))
                  .ends_with("but the file ends here: is it cut short?"));
}

}  // namespace
}  // namespace linewright
