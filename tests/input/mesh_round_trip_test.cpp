// Files written by an independent library, read back and compared with what it was given.

#include <assimp/mesh.h>
#include <assimp/scene.h>

#include <assimp/Exporter.hpp>
#include <random>

#include "input/mesh_reading.hpp"

namespace linewright {
namespace {

/// Random triangles that share vertices. Coordinates are sixteenths, so that five digits of text
/// hold them exactly.
struct RandomMesh {
  std::vector<std::array<float, 3>> vertices;
  std::vector<std::array<unsigned, 3>> faces;

  std::vector<Corners> corners() const {
    std::vector<Corners> all;
    for (const auto& face : faces) {
      Corners corners{};
      for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t axis = 0; axis < 3; ++axis)
          corners[3 * i + axis] = vertices[face[i]][axis];
      all.push_back(corners);
    }
    return all;
  }
};

RandomMesh random_mesh(unsigned seed, std::size_t vertex_count, std::size_t face_count) {
  std::mt19937 random(seed);
  std::uniform_int_distribution<int> sixteenths(-160, 160);
  std::uniform_int_distribution<std::size_t> step(1, vertex_count / 3);
  RandomMesh mesh;
  for (std::size_t i = 0; i < vertex_count; ++i)
    mesh.vertices.push_back({static_cast<float>(sixteenths(random)) / 16,
                             static_cast<float>(sixteenths(random)) / 16,
                             static_cast<float>(sixteenths(random)) / 16});
  std::size_t at = 0;
  for (std::size_t i = 0; i < face_count; ++i) {
    std::array<unsigned, 3> face{};
    for (unsigned& vertex : face) {
      at = (at + step(random)) % vertex_count;
      vertex = static_cast<unsigned>(at);
    }
    mesh.faces.push_back(face);
  }
  return mesh;
}

/// The library's form of it; the scene frees what it is given.
std::unique_ptr<aiScene> scene_of(const RandomMesh& mesh) {
  auto* shape = new aiMesh;
  shape->mName = "shape";
  shape->mPrimitiveTypes = aiPrimitiveType_TRIANGLE;
  shape->mNumVertices = static_cast<unsigned>(mesh.vertices.size());
  shape->mVertices = new aiVector3D[mesh.vertices.size()];
  shape->mNormals = new aiVector3D[mesh.vertices.size()];
  for (std::size_t i = 0; i < mesh.vertices.size(); ++i) {
    shape->mVertices[i] = {mesh.vertices[i][0], mesh.vertices[i][1], mesh.vertices[i][2]};
    shape->mNormals[i] = {0, 0, 1};
  }
  shape->mNumFaces = static_cast<unsigned>(mesh.faces.size());
  shape->mFaces = new aiFace[mesh.faces.size()];
  for (std::size_t i = 0; i < mesh.faces.size(); ++i) {
    shape->mFaces[i].mNumIndices = 3;
    shape->mFaces[i].mIndices =
        new unsigned[3]{mesh.faces[i][0], mesh.faces[i][1], mesh.faces[i][2]};
  }
  auto scene = std::make_unique<aiScene>();
  scene->mNumMaterials = 1;
  scene->mMaterials = new aiMaterial* [1] { new aiMaterial };
  scene->mNumMeshes = 1;
  scene->mMeshes = new aiMesh* [1] { shape };
  scene->mRootNode = new aiNode("root");
  scene->mRootNode->mNumMeshes = 1;
  scene->mRootNode->mMeshes = new unsigned[1]{0};
  return scene;
}

/// What is read of the scene, written in a format of the library's.
MeshTriangles written_and_read(const aiScene& scene, const char* format, const std::string& name) {
  const ProjectFolder folder;
  const std::filesystem::path path = folder.path() / name;
  Assimp::Exporter exporter;
  EXPECT_EQ(exporter.Export(&scene, format, path.string()), aiReturn_SUCCESS)
      << exporter.GetErrorString();
  return mesh_of(read_mesh_file(path, name, 1e6));
}

class MeshRoundTrip : public testing::TestWithParam<unsigned> {
 protected:
  const RandomMesh mesh = random_mesh(GetParam(), 30 * GetParam(), 50 * GetParam());
  const std::unique_ptr<aiScene> scene = scene_of(mesh);
};

TEST_P(MeshRoundTrip, KeepsBinaryStl) {
  EXPECT_EQ(written_and_read(*scene, "stlb", "a.stl").corners, mesh.corners());
}

TEST_P(MeshRoundTrip, KeepsAsciiStl) {
  EXPECT_EQ(written_and_read(*scene, "stl", "a.stl").corners, mesh.corners());
}

TEST_P(MeshRoundTrip, KeepsObj) {
  EXPECT_EQ(written_and_read(*scene, "obj", "a.obj").corners, mesh.corners());
}

TEST_P(MeshRoundTrip, KeepsGlb) {
  EXPECT_EQ(written_and_read(*scene, "glb2", "a.glb").corners, mesh.corners());
}

TEST_P(MeshRoundTrip, KeepsGlbUnderAMovedNode) {
  // A quarter turn about x takes y to z and z to -y.
  scene->mRootNode->mTransformation = aiMatrix4x4(1, 0, 0, 5, 0, 0, -1, 6, 0, 1, 0, 7, 0, 0, 0, 1);
  std::vector<Corners> moved = mesh.corners();
  for (Corners& corners : moved)
    for (std::size_t i = 0; i < 9; i += 3)
      std::tie(corners[i], corners[i + 1], corners[i + 2]) =
          std::tuple(corners[i] + 5, 6 - corners[i + 2], corners[i + 1] + 7);
  const std::vector<Corners> read = written_and_read(*scene, "glb2", "a.glb").corners;
  ASSERT_EQ(read.size(), moved.size());
  for (std::size_t i = 0; i < read.size(); ++i)
    for (std::size_t k = 0; k < 9; ++k)
      ASSERT_NEAR(read[i][k], moved[i][k], 1e-5);  // the turn may be rounded on its way
}

INSTANTIATE_TEST_SUITE_P(OfRandomShapes, MeshRoundTrip, testing::Values(1u, 2u, 10u, 100u, 3000u));

}  // namespace
}  // namespace linewright
