// Whatever is in a mesh's file, there is a mesh or one error: no crash, no hang, no huge
// allocation.

#include <cstdint>
#include <filesystem>
#include <fstream>
#include <random>
#include <utility>

#include "input/mesh_reading.hpp"

namespace linewright {
namespace {

const std::string small_obj =
    "# a box's corner\no corner\nv 0 0 0\nv 1 0 0\nv 1 1 0.25\nv 0 1 0\nv 0.5 0.5 1e-1\n"
    "vn 0 0 1\nf 1//1 2//1 3//1 4//1\nf -1 -2 \\\n -3\ng rib\nf 1 2 5 3 4\n";

const std::string small_text_stl =
    "solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 3 0 0\nvertex 0 4e0 0\n"
    "endloop\nendfacet\nendsolid a\n";

std::string small_glb() {
  std::string binary;
  for (const float value : {0.f, 0.f, 0.f, 3.f, 0.f, 0.f, 0.f, 4.f, 0.f})
    binary += little_endian(value);
  for (const int index : {0, 1, 2, 2, 1, 0})
    binary += little_endian(static_cast<std::uint16_t>(index));
  return glb(
      R"({"asset":{"version":"2.0"},"scene":0,"scenes":[{"nodes":[0]}],)"
      R"("nodes":[{"children":[1],"translation":[1,2,3]},{"mesh":0,"rotation":[0,0,0,1]}],)"
      R"("meshes":[{"name":"rib","primitives":[{"attributes":{"POSITION":0},"indices":1}]}],)"
      R"("accessors":[{"bufferView":0,"componentType":5126,"count":3,"type":"VEC3"},)"
      R"({"bufferView":1,"componentType":5123,"count":6,"type":"SCALAR"}],)"
      R"("bufferViews":[{"buffer":0,"byteLength":36},)"
      R"({"buffer":0,"byteOffset":36,"byteLength":12}],"buffers":[{"byteLength":48}]})",
      binary);
}

struct HostileCase {
  std::string name;
  std::string bytes;
};

std::vector<HostileCase> sound_files() {
  return {{"binary.stl", binary_stl({{0, 0, 0, 3, 0, 0, 0, 4, 0}, {0, 0, 0, 3, 0, 0, 0, 4, 1}})},
          {"text.stl", small_text_stl},
          {"small.obj", small_obj},
          {"small.glb", small_glb()}};
}

/// A mesh that keeps its promises, or an error with words.
void expect_mesh_or_error(const MeshReading& reading) {
  if (!reading) {
    EXPECT_FALSE(reading.error().message.empty());
    EXPECT_FALSE(reading.error().where.file.empty());
    return;
  }
  const MeshTriangles& mesh = *reading;
  EXPECT_FALSE(mesh.corners.empty());
  EXPECT_LT(mesh.corners.size(), 10'000u);
  for (const Corners& corners : mesh.corners)
    for (const float coordinate : corners) EXPECT_TRUE(std::abs(coordinate) <= 1e6f);
  std::size_t end = 0;
  for (const MeshPart& part : mesh.parts) {
    EXPECT_GE(part.first, end);
    EXPECT_GT(part.count, 0u);
    end = part.first + part.count;
  }
  EXPECT_LE(end, mesh.corners.size());
}

TEST(HostileBinaryMesh, CutShortAnywhereIsAnError) {
  for (const HostileCase& file : {sound_files().front(), sound_files().back()})
    for (std::size_t length = 0; length < file.bytes.size(); ++length)
      EXPECT_NE(fault_of(read_bytes(file.name, file.bytes.substr(0, length))), "read") << length;
}

/// Bytes that this process has read so far, from whatever file.
std::uint64_t bytes_read() {
  std::ifstream file("/proc/self/io");
  std::string word;
  std::uint64_t count = 0;
  file >> word >> count;
  return count;
}

TEST(HostileBinaryMesh, AHugeFileOfNoughtsIsRefusedOnItsFirstBytes) {
  const ProjectFolder folder;
  for (const auto& [name, words] :
       {std::pair{"big.glb", "big.glb: byte 0: this is no binary glTF file"},
        std::pair{"big.obj", "big.obj: byte 0: a NUL byte: this is no OBJ file"}}) {
    folder.write(name, "");
    std::filesystem::resize_file(folder.path() / name, 900'000'000);
    const std::uint64_t before = bytes_read();
    const std::string fault = fault_of(read_mesh_file(folder.path() / name, name, 1e6));
    EXPECT_LT(bytes_read() - before, 100'000u);
    EXPECT_TRUE(fault.starts_with(words)) << fault;
  }
}

// The files have no more on the disk than their heads.
TEST(HostileBinaryMesh, MoreTrianglesOrBytesThanAreReadAreRefused) {
  const ProjectFolder folder;
  const std::filesystem::path path = folder.path() / "big.stl";
  const auto fault = [&](std::uint32_t triangles, std::uint64_t bytes) {
    folder.write("big.stl", std::string(80, ' ') + little_endian(triangles));
    std::filesystem::resize_file(path, bytes);
    return fault_of(read_mesh_file(path, "big.stl", 1e6));
  };
  EXPECT_EQ(fault(20'000'001, 84 + 50 * std::uint64_t{20'000'001}),
            "big.stl: byte 80: there are 20000001 triangles; at most 20000000 are read: simplify "
            "the mesh");
  EXPECT_EQ(fault(1, (1u << 30) + 1),
            "big.stl: the file is too large: 1024.0 MiB; at most 1024 MiB are read");
}

class HostileMesh : public testing::TestWithParam<HostileCase> {
 protected:
  MeshReading read(const std::string& bytes) const {
    folder.write(GetParam().name, bytes);
    return read_mesh_file(folder.path() / GetParam().name, GetParam().name, 1e6);
  }

  const ProjectFolder folder;
};

TEST_P(HostileMesh, IsReadWhereItIsSound) {
  EXPECT_EQ(fault_of(read(GetParam().bytes)), "read");
}

TEST_P(HostileMesh, CutShortAnywhereIsAMeshOrAnError) {
  for (std::size_t length = 0; length < GetParam().bytes.size(); ++length)
    expect_mesh_or_error(read(GetParam().bytes.substr(0, length)));
}

TEST_P(HostileMesh, WithBytesChangedIsAMeshOrAnError) {
  std::mt19937 random(7);
  std::uniform_int_distribution<std::size_t> place(0, GetParam().bytes.size() - 1);
  std::uniform_int_distribution<int> byte(0, 255);
  std::uniform_int_distribution<int> how_many(1, 4);
  for (int round = 0; round < 1000; ++round) {
    std::string bytes = GetParam().bytes;
    for (int left = how_many(random); left > 0; --left)
      bytes[place(random)] = static_cast<char>(byte(random));
    expect_mesh_or_error(read(bytes));
  }
}

/// Digits and marks changed for others keep more of the file sound than any byte would.
TEST_P(HostileMesh, WithCharactersChangedIsAMeshOrAnError) {
  const std::string marks = "0123456789-+.eE/\\ \n\"{}[]:,#fvg";
  std::mt19937 random(8);
  std::uniform_int_distribution<std::size_t> place(0, GetParam().bytes.size() - 1);
  std::uniform_int_distribution<std::size_t> mark(0, marks.size() - 1);
  for (int round = 0; round < 1000; ++round) {
    std::string bytes = GetParam().bytes;
    if (round % 2 == 0)
      bytes[place(random)] = marks[mark(random)];
    else
      bytes.insert(place(random), 1, marks[mark(random)]);
    expect_mesh_or_error(read(bytes));
  }
}

INSTANTIATE_TEST_SUITE_P(OfEachFormat, HostileMesh, testing::ValuesIn(sound_files()),
                         [](const auto& param_info) {
                           std::string name = param_info.param.name;
                           std::replace(name.begin(), name.end(), '.', '_');
                           return name;
                         });

}  // namespace
}  // namespace linewright
