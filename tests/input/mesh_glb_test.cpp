// What is read and refused follows the "glTF 2.0 Specification", The Khronos Group, from memory.

#include <limits>

#include "input/mesh_reading.hpp"

namespace linewright {
namespace {

const Corners three_four_five{0, 0, 0, 3, 0, 0, 0, 4, 0};

std::string floats(const std::vector<float>& values) {
  std::string bytes;
  for (const float value : values) bytes += little_endian(value);
  return bytes;
}

template <typename Index>
std::string indices(const std::vector<int>& values) {
  std::string bytes;
  for (const int value : values) bytes += little_endian(static_cast<Index>(value));
  return bytes;
}

const std::string four_corners = floats({0, 0, 0, 3, 0, 0, 0, 4, 0, 3, 4, 0});

/// One mesh over `four_corners`, then indices of a component type.
struct Sample {
  std::string nodes = R"([{"mesh":0}])";
  std::string primitive = R"({"attributes":{"POSITION":0},"indices":1})";
  std::string positions = R"({"bufferView":0,"componentType":5126,"count":4,"type":"VEC3"})";
  std::string indices = R"({"bufferView":1,"componentType":5121,"count":3,"type":"SCALAR"})";
  std::string position_view = R"({"buffer":0,"byteLength":48})";
  std::string index_view = R"({"buffer":0,"byteOffset":48,"byteLength":3})";
  std::string mesh_name;
  std::string buffer = R"({"byteLength":52})";
  std::string more = R"("scene":0,"scenes":[{"nodes":[0]}])";
  std::string binary = four_corners + linewright::indices<std::uint8_t>({0, 1, 2, 0});

  std::string json() const {
    return R"({"asset":{"version":"2.0"},)" + more + R"(,"nodes":)" + nodes + R"(,"meshes":[{)" +
           mesh_name + R"("primitives":[)" + primitive + R"(]}],"accessors":[)" + positions + "," +
           indices + R"(],"bufferViews":[)" + position_view + "," + index_view +
           R"(],"buffers":[)" + buffer + "]}";
  }
  MeshReading read() const { return read_bytes("a.glb", glb(json(), binary)); }
};

std::string changed(std::string text, const std::string& from, const std::string& to) {
  const std::size_t at = text.find(from);
  EXPECT_NE(at, text.npos) << from;
  return text.replace(at, from.size(), to);
}

TEST(Glb, TakesIndicesOfEverySize) {
  Sample sample;
  EXPECT_EQ(mesh_of(sample.read()).corners, std::vector<Corners>{three_four_five});
  sample.indices = changed(sample.indices, "5121", "5123");
  sample.index_view = changed(sample.index_view, R"("byteLength":3)", R"("byteLength":6)");
  sample.buffer = R"({"byteLength":54})";
  sample.binary = four_corners + indices<std::uint16_t>({0, 1, 2});
  EXPECT_EQ(mesh_of(sample.read()).corners, std::vector<Corners>{three_four_five});
  sample.indices = changed(sample.indices, "5123", "5125");
  sample.index_view = changed(sample.index_view, R"("byteLength":6)", R"("byteLength":12)");
  sample.buffer = R"({"byteLength":60})";
  sample.binary = four_corners + indices<std::uint32_t>({0, 1, 2});
  EXPECT_EQ(mesh_of(sample.read()).corners, std::vector<Corners>{three_four_five});
}

TEST(Glb, TakesCornersInOrderWhereThereAreNoIndices) {
  Sample sample;
  sample.primitive = R"({"attributes":{"POSITION":0}})";
  sample.positions = changed(sample.positions, R"("count":4)", R"("count":3)");
  EXPECT_EQ(mesh_of(sample.read()).corners, std::vector<Corners>{three_four_five});
}

TEST(Glb, TakesStripsAndFans) {
  // glTF 2.0 Specification, section 3.7.2.1 [from memory]: strip {i, i + (1 + i % 2), i + (2 - i %
  // 2)}, fan {i + 1, i + 2, 0}.
  Sample sample;
  sample.primitive = R"({"attributes":{"POSITION":0},"mode":5})";
  EXPECT_EQ(mesh_of(sample.read()).corners,
            (std::vector<Corners>{three_four_five, {3, 0, 0, 3, 4, 0, 0, 4, 0}}));
  sample.primitive = R"({"attributes":{"POSITION":0},"mode":6})";
  EXPECT_EQ(mesh_of(sample.read()).corners,
            (std::vector<Corners>{{3, 0, 0, 0, 4, 0, 0, 0, 0}, {0, 4, 0, 3, 4, 0, 0, 0, 0}}));
}

TEST(Glb, StepsOverWhatStandsBetweenPositions) {
  Sample sample;
  sample.binary.clear();
  for (std::size_t i = 0; i < 4; ++i)
    sample.binary += four_corners.substr(12 * i, 12) + std::string(8, '\x7F');
  sample.binary = "four" + sample.binary + indices<std::uint8_t>({0, 1, 2});
  sample.buffer = R"({"byteLength":87})";
  sample.position_view = R"({"buffer":0,"byteLength":84,"byteStride":20})";
  sample.positions = changed(sample.positions, R"("count":4)", R"("byteOffset":4,"count":4)");
  sample.index_view = R"({"buffer":0,"byteOffset":84,"byteLength":3})";
  EXPECT_EQ(mesh_of(sample.read()).corners, std::vector<Corners>{three_four_five});
}

TEST(Glb, PutsMeshesWhereTheirNodesAre) {
  Sample sample;
  sample.mesh_name = R"("name":"rib",)";
  // Half a turn about z after scaling by 2, moved by 10; below it a quarter turn about x, which
  // takes y to z, and a matrix (by columns) that moves by 1, 2, 3.
  sample.nodes =
      R"([{"children":[1,2],"translation":[10,0,0],"rotation":[0,0,1,0],"scale":[2,2,2]},)"
      R"({"mesh":0,"name":"upright","rotation":[0.7071067811865476,0,0,0.7071067811865476]},)"
      R"({"mesh":0,"matrix":[1,0,0,0,0,1,0,0,0,0,1,0,1,2,3,1]}])";
  const MeshTriangles mesh = mesh_of(sample.read());
  ASSERT_EQ(mesh.corners.size(), 2u);
  const Corners upright{10, 0, 0, 4, 0, 0, 10, 0, 8};
  const Corners shifted{8, -4, 6, 2, -4, 6, 8, -12, 6};
  for (std::size_t k = 0; k < 9; ++k) {
    EXPECT_NEAR(mesh.corners[0][k], upright[k], 1e-6);  // floats of about ten
    EXPECT_NEAR(mesh.corners[1][k], shifted[k], 1e-6);
  }
  EXPECT_EQ(mesh.parts, (std::vector<MeshPart>{{"upright", 0, 1}, {"rib", 1, 1}}));
}

TEST(Glb, ShowsTheDefaultSceneOnly) {
  Sample sample;
  sample.nodes = R"([{"mesh":0,"name":"a"},{"mesh":0,"name":"b"}])";
  const auto parts = [&] { return mesh_of(sample.read()).parts; };
  sample.more = R"("scene":1,"scenes":[{"nodes":[0]},{"nodes":[1]}])";
  EXPECT_EQ(parts(), (std::vector<MeshPart>{{"b", 0, 1}}));
  sample.more = R"("scenes":[{"nodes":[0]},{"nodes":[1]}])";
  EXPECT_EQ(parts(), (std::vector<MeshPart>{{"a", 0, 1}}));
  sample.more = R"("extras":0)";
  EXPECT_EQ(parts(), (std::vector<MeshPart>{{"a", 0, 1}, {"b", 1, 1}}));
}

TEST(Glb, PassesOverLinesAndPoints) {
  Sample sample;
  sample.primitive = R"({"attributes":{"POSITION":9},"mode":1},)" + sample.primitive;
  EXPECT_EQ(mesh_of(sample.read()).corners.size(), 1u);
  sample.primitive = R"({"attributes":{"POSITION":0},"mode":0})";
  EXPECT_EQ(fault_of(sample.read()), "a.glb: the mesh has no triangles");
}

TEST(Glb, SaysWhatIsNotRead) {
  const auto fault = [](auto change) {
    Sample sample;
    change(sample);
    return fault_of(sample.read());
  };
  EXPECT_EQ(fault([](Sample& s) { s.buffer = R"({"byteLength":52,"uri":"a.bin"})"; }),
            "a.glb: buffers[0]: buffers outside the file's own BIN chunk are not read: export as "
            "one .glb");
  EXPECT_EQ(fault([](Sample& s) {
              s.positions = changed(s.positions, R"("type")", R"("sparse":{"count":1},"type")");
            }),
            "a.glb: accessors[0]: sparse accessors are not read");
  for (const char* name : {"KHR_draco_mesh_compression", "EXT_meshopt_compression"})
    EXPECT_EQ(fault([&](Sample& s) {
                s.more += R"(,"extensionsRequired":["KHR_materials_unlit",")" + std::string(name) +
                          R"("])";
              }),
              "a.glb: the file needs the extension " + std::string(name) +
                  ", which is not read: export without it");
  EXPECT_EQ(fault([](Sample& s) { s.positions = changed(s.positions, "5126", "5122"); }),
            "a.glb: accessors[0]: positions must be VEC3 of floats: export without quantization");
  EXPECT_EQ(
      fault([](Sample& s) { s.primitive = changed(s.primitive, "{\"a", R"({"targets":[{}],"a)"); }),
      "a.glb: meshes[0].primitives[0]: morph targets are not read");
  EXPECT_EQ(fault([](Sample& s) { s.nodes = R"([{"mesh":0,"skin":0}])"; }),
            "a.glb: nodes[0]: meshes bent by a skin are not read");
  EXPECT_EQ(fault([](Sample& s) {
              s.nodes = R"([{"mesh":0,"extensions":{"EXT_mesh_gpu_instancing":{}}}])";
            }),
            "a.glb: nodes[0]: copies by EXT_mesh_gpu_instancing are not read: export each as a "
            "node");
}

TEST(Glb, SaysWhatDoesNotFit) {
  const auto fault = [](auto change) {
    Sample sample;
    change(sample);
    return fault_of(sample.read());
  };
  const std::size_t index_place = glb(Sample().json(), Sample().binary).size() - 52 + 50;
  EXPECT_EQ(fault([](Sample& s) { s.binary[50] = 4; }),
            "a.glb: byte " + std::to_string(index_place) + ": there is no position 4: 4 are given");
  EXPECT_EQ(fault([](Sample& s) { s.positions = changed(s.positions, ":4,", ":5,"); }),
            "a.glb: accessors[0]: 5 elements end at byte 60 of a buffer view of 48");
  EXPECT_EQ(fault([](Sample& s) { s.positions = changed(s.positions, ":4,", ":4294967295,"); }),
            "a.glb: accessors[0]: 4294967295 elements end at byte 51539607540 of a buffer view of "
            "48");
  EXPECT_EQ(fault([](Sample& s) { s.positions = changed(s.positions, ":4,", ":4294967296,"); }),
            "a.glb: accessors[0]: 'count' must be a whole number from 0 to 4294967295");
  EXPECT_EQ(fault([](Sample& s) { s.positions = changed(s.positions, ":4,", ":-1,"); }),
            "a.glb: accessors[0]: 'count' must be a whole number from 0 to 4294967295");
  EXPECT_EQ(fault([](Sample& s) { s.index_view = changed(s.index_view, ":48", ":50"); }),
            "a.glb: bufferViews[1]: it ends at byte 53 of a buffer of 52");
  EXPECT_EQ(fault([](Sample& s) { s.buffer = R"({"byteLength":57})"; }),
            "a.glb: buffers[0]: it says 57 bytes, but the BIN chunk has 52");
  EXPECT_EQ(
      fault([](Sample& s) { s.position_view = R"({"buffer":0,"byteLength":48,"byteStride":8})"; }),
      "a.glb: bufferViews[0]: a byteStride of 8 is too small for elements of 12 bytes");
  EXPECT_EQ(fault([](Sample& s) { s.indices = changed(s.indices, ":3,", ":2,"); }),
            "a.glb: meshes[0].primitives[0]: 2 corners do not make triangles");
  EXPECT_EQ(fault([](Sample& s) { s.nodes = R"([{"mesh":1}])"; }), "a.glb: there is no meshes[1]");
  EXPECT_EQ(fault([](Sample& s) { s.nodes = R"([{"mesh":0,"children":[0]}])"; }),
            "a.glb: nodes[0]: a node must not be reached twice");
  EXPECT_EQ(fault([](Sample& s) { s.nodes = R"([{"mesh":0,"rotation":[0,0,0,0]}])"; }),
            "a.glb: nodes[0]: 'rotation' must not be zero");
  EXPECT_EQ(fault([](Sample& s) { s.nodes = R"([{"mesh":0,"scale":[1,1]}])"; }),
            "a.glb: nodes[0]: 'scale' must be a list of 3 numbers");
  EXPECT_EQ(fault([](Sample& s) {
              s.nodes = R"([{"mesh":0,"matrix":[1,0,0,0,0,1,0,0,0,0,1,1,0,0,0,1]}])";
            }),
            "a.glb: nodes[0]: the last row of 'matrix' must be 0 0 0 1");
}

TEST(Glb, RefusesCoordinatesThatAreNone) {
  Sample sample;
  sample.binary =
      floats({0, 0, 0, 3, 0, 0, 0, std::numeric_limits<float>::quiet_NaN(), 0, 3, 4, 0}) +
      sample.binary.substr(48);
  EXPECT_NE(fault_of(sample.read()).find("a coordinate must be a finite number, found nan"),
            std::string::npos);
  sample = Sample();
  sample.nodes = R"([{"mesh":0,"scale":[1e300,1e300,1e300],"translation":[1e300,0,0]}])";
  EXPECT_NE(fault_of(sample.read()).find("are the units right?"), std::string::npos);
}

TEST(Glb, NamesTheByteOfAFaultOfItsContainer) {
  const std::string sound = glb(Sample().json(), Sample().binary);
  const auto fault = [&](std::size_t at, const std::string& bytes) {
    std::string broken = sound;
    return fault_of(read_bytes("a.glb", broken.replace(at, bytes.size(), bytes)));
  };
  EXPECT_EQ(fault(0, "glTf"),
            "a.glb: byte 0: this is no binary glTF file: it does not begin with 'glTF'");
  EXPECT_EQ(fault(4, "\x01"), "a.glb: byte 4: glTF of version 1 is not read: export as version 2");
  EXPECT_EQ(fault_of(read_bytes("a.glb", sound.substr(0, sound.size() - 4))),
            "a.glb: byte 8: the head says " + std::to_string(sound.size()) +
                " bytes, but the file has " + std::to_string(sound.size() - 4) +
                ": is it cut short?");
  EXPECT_EQ(fault(12, "\xFF\xFF\xFF\xFF"), "a.glb: byte 12: a chunk of 4294967295 bytes, but " +
                                               std::to_string(sound.size() - 20) +
                                               " are left in the file");
  EXPECT_EQ(fault(16, "BIN"), "a.glb: byte 16: the first chunk must be JSON");
  EXPECT_EQ(fault_of(read_bytes("a.glb", "glTF")),
            "a.glb: byte 0: this is no binary glTF file: it does not begin with 'glTF'");
}

TEST(Glb, ReadsSixteenMebibytesOfDescriptionAtMost) {
  const std::string description = "{}" + std::string((16u << 20) - 2, ' ');
  EXPECT_EQ(fault_of(read_bytes("a.glb", glb(description, ""))),
            "a.glb: the mesh has no triangles");
  EXPECT_EQ(fault_of(read_bytes("a.glb", glb(description + " ", ""))),
            "a.glb: byte 12: the description of the scene is too large: at most 16 MiB are read");
}

TEST(Glb, NamesTheByteOfUnsoundJson) {
  const auto fault = [](const std::string& json) {
    return fault_of(read_bytes("a.glb", glb(json, "")));
  };
  EXPECT_EQ(fault(R"({"a":})"),
            "a.glb: byte 25: the description of the scene is no sound JSON: export the "
            "file anew");
  EXPECT_EQ(fault("[]"), "a.glb: byte 20: the description of the scene is not a JSON object");
  EXPECT_EQ(fault(R"({"a":1e999})"),
            "a.glb: byte 20: the description of the scene has a number out of range");
  EXPECT_EQ(fault(std::string(100'000, '[')),
            "a.glb: byte 84: the description of the scene is nested deeper than 64 levels");
  EXPECT_EQ(fault("{}"), "a.glb: the mesh has no triangles");
}

}  // namespace
}  // namespace linewright
