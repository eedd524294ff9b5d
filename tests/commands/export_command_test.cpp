// Models and drawings read back by libraries that know nothing of this program: assimp for glTF,
// dxflib for DXF. tests/browser/run holds the glTF against its validator.

#include <assimp/postprocess.h>
#include <assimp/scene.h>
#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>
#include <fcntl.h>
#include <gtest/gtest.h>
#include <pty.h>
#include <unistd.h>

#include <assimp/Importer.hpp>
#include <cmath>
#include <iostream>
#include <map>
#include <numbers>
#include <set>
#include <sstream>
#include <stdexcept>

#include "commands/command_run.hpp"

namespace linewright {
namespace {

using test::CommandRun;
using test::contains;
using test::run;

const std::string as_drawn = LINEWRIGHT_SOURCE_DIR "/routes/as-drawn.yaml";

/// A frame with a hole of each sort, and a straight tube of 1/4 in between two nodes.
const std::string small_project =
    "linewright: 1\n"
    "name: small\n"
    "build_tolerance: 0.06\n"
    "structure:\n"
    "  frames:\n"
    "    - {name: Bl\xC3\xA4tt, station: 100, thickness: 0.04, outline: [[-14, 0], [14, 0], [14, "
    "26], "
    "[-14, 26]], holes: [{name: round, centre: [-8, 14], diameter: 0.75, edge: grommet, bore: "
    "0.5}, "
    "{name: tall, outline: [[2, 4], [6, 4], [6, 10], [2, 10]], edge: bare}]}\n"
    "nodes:\n"
    "  - {name: fore, kind: end, at: [90, -8, 14]}\n"
    "  - {name: aft, kind: end, at: [110, -8, 14]}\n"
    "routes:\n"
    "  - {name: tube, system: static, line: tube-aluminium-1/4, from: fore, to: aft, points: "
    "[{hold: grommet, through: round}]}\n";

CommandRun exported(const std::string& project, const std::vector<std::string>& options) {
  std::vector<std::string> words{"export", project, "--to"};
  words.insert(words.end(), options.begin(), options.end());
  return run(words);
}

class SmallExport : public testing::Test {
 protected:
  SmallExport() { test::write(folder_.path() / "project.yaml", small_project); }
  std::string path() const { return folder_.path().string(); }
  test::TempFolder folder_;
};

/// Standard output is a terminal that nobody reads, as long as this lives.
class OutputAtATerminal {
 public:
  OutputAtATerminal() : before_(::dup(STDOUT_FILENO)) {
    if (::openpty(&reader_, &terminal_, nullptr, nullptr, nullptr) != 0)
      throw std::runtime_error("no terminal");
    // What is written though it should not be is an error, and nothing to wait for.
    ::fcntl(terminal_, F_SETFL, O_NONBLOCK);
    ::dup2(terminal_, STDOUT_FILENO);
  }
  OutputAtATerminal(const OutputAtATerminal&) = delete;
  OutputAtATerminal& operator=(const OutputAtATerminal&) = delete;
  ~OutputAtATerminal() {
    ::dup2(before_, STDOUT_FILENO);
    for (const int file : {before_, reader_, terminal_}) ::close(file);
  }

 private:
  int before_ = -1;
  int reader_ = -1;
  int terminal_ = -1;
};

/// With standard output itself instead of a caught one.
CommandRun run_to_standard_output(std::vector<const char*> argv) {
  std::ostringstream err;
  argv.insert(argv.begin(), "linewright");
  CommandRun result;
  result.code = run_command_line(static_cast<int>(argv.size()), argv.data(), std::cout, err);
  result.err = err.str();
  return result;
}

const aiScene* read_glb(Assimp::Importer& importer, const std::string& glb) {
  return importer.ReadFileFromMemory(glb.data(), glb.size(), aiProcess_ValidateDataStructure,
                                     "glb");
}

struct Extent {
  aiVector3D least{1e9f, 1e9f, 1e9f};
  aiVector3D most{-1e9f, -1e9f, -1e9f};
};

Extent extent_of(const aiScene& scene, const std::string& name) {
  Extent extent;
  const aiNode* node = scene.mRootNode->FindNode(name.c_str());
  if (node == nullptr || node->mNumMeshes == 0) return extent;
  const aiMesh& mesh = *scene.mMeshes[node->mMeshes[0]];
  for (unsigned i = 0; i < mesh.mNumVertices; ++i)
    for (unsigned axis = 0; axis < 3; ++axis) {
      extent.least[axis] = std::min(extent.least[axis], mesh.mVertices[i][axis]);
      extent.most[axis] = std::max(extent.most[axis], mesh.mVertices[i][axis]);
    }
  return extent;
}

std::string material_of(const aiScene& scene, const std::string& name) {
  const aiNode* node = scene.mRootNode->FindNode(name.c_str());
  if (node == nullptr || node->mNumMeshes == 0) return {};
  return scene.mMaterials[scene.mMeshes[node->mMeshes[0]]->mMaterialIndex]->GetName().C_Str();
}

// Khronos glTF 2.0, 3.4: metres, right-handed, Y up, a model's front faces +Z and its left +X.
TEST_F(SmallExport, GltfIsInMetresWithTheNoseAlongZ) {
  Assimp::Importer importer;
  const aiScene* scene = read_glb(importer, exported(path(), {"gltf"}).out);
  ASSERT_NE(scene, nullptr) << importer.GetErrorString();
  constexpr float m = 0.0254f;
  constexpr float single = 1e-6f;
  const Extent tube = extent_of(*scene, "tube");
  EXPECT_NEAR(tube.least.z, -110 * m, single);
  EXPECT_NEAR(tube.most.z, -90 * m, single);
  EXPECT_NEAR((tube.least.x + tube.most.x) / 2, 8 * m, single);
  EXPECT_NEAR((tube.least.y + tube.most.y) / 2, 14 * m, single);
  // Twelve sides: a corner on the axis across it stands on the outside of the tube.
  EXPECT_NEAR(tube.most.x - tube.least.x, 0.25f * m, single);
  const Extent frame = extent_of(*scene, "Bl\xC3\xA4tt");
  EXPECT_NEAR(frame.most.y, 26 * m, single);
  EXPECT_NEAR(frame.least.x, -14 * m, single);
}

TEST_F(SmallExport, GltfHasTheSupportsUnderTheirLine) {
  Assimp::Importer importer;
  const aiScene* scene = read_glb(importer, exported(path(), {"gltf"}).out);
  ASSERT_NE(scene, nullptr);
  const aiNode* tube = scene->mRootNode->FindNode("tube");
  ASSERT_NE(tube, nullptr);
  std::set<std::string> supports;
  for (unsigned i = 0; i < tube->mNumChildren; ++i)
    supports.insert(tube->mChildren[i]->mName.C_Str());
  EXPECT_EQ(supports, (std::set<std::string>{"grommet in round"}));
}

TEST(ExportCommand, GltfHasTheWorstVerdictOfEachLineAsItsMaterial) {
  const CommandRun result = exported(as_drawn, {"gltf"});
  EXPECT_EQ(result.code, 1) << "as drawn, the demo fails";
  Assimp::Importer importer;
  const aiScene* scene = read_glb(importer, result.out);
  ASSERT_NE(scene, nullptr) << importer.GetErrorString();
  EXPECT_EQ(material_of(*scene, "static-left"), "fail");
  EXPECT_EQ(material_of(*scene, "T166"), "structure");
}

TEST_F(SmallExport, TheSameProjectGivesTheSameBytes) {
  EXPECT_EQ(exported(path(), {"gltf"}).out, exported(path(), {"gltf"}).out);
}

/// What dxflib makes of a file.
class ReadDxf : public DL_CreationAdapter {
 public:
  explicit ReadDxf(const std::string& text) {
    std::stringstream stream(text);
    DL_Dxf reader;
    reader.in(stream, this);
  }

  void addLayer(const DL_LayerData& layer) override { layers.insert(layer.name); }
  void addCircle(const DL_CircleData& circle) override {
    circles.push_back(circle);
    entity_layers.insert(getAttributes().getLayer());
  }
  void addPolyline(const DL_PolylineData& line) override {
    polylines[getAttributes().getLayer()].emplace_back();
    closed = closed && line.flags == 1;
    entity_layers.insert(getAttributes().getLayer());
  }
  void addVertex(const DL_VertexData& vertex) override {
    polylines[getAttributes().getLayer()].back().push_back({vertex.x, vertex.y});
  }
  void addPoint(const DL_PointData& point) override { points.push_back(point); }
  void addText(const DL_TextData& text) override { texts.insert(text.text); }
  void setVariableInt(const std::string& name, int value, int) override { variables[name] = value; }

  std::set<std::string> layers;
  std::set<std::string> entity_layers;
  std::vector<DL_CircleData> circles;
  std::vector<DL_PointData> points;
  std::map<std::string, std::vector<std::vector<std::pair<double, double>>>> polylines;
  std::set<std::string> texts;
  std::map<std::string, int> variables;
  bool closed = true;
};

TEST_F(SmallExport, DxfHasTheOutlineTheHolesAndTheirCentres) {
  const ReadDxf dxf(exported(path(), {"dxf", "--frame", "Bl\xC3\xA4tt"}).out);
  const std::vector<std::pair<double, double>> outline{{-14, 0}, {14, 0}, {14, 26}, {-14, 26}};
  ASSERT_EQ(dxf.polylines.count("OUTLINE"), 1u);
  ASSERT_EQ(dxf.polylines.at("OUTLINE").size(), 1u);
  EXPECT_EQ(dxf.polylines.at("OUTLINE")[0], outline);
  const std::vector<std::pair<double, double>> tall{{2, 4}, {6, 4}, {6, 10}, {2, 10}};
  ASSERT_EQ(dxf.polylines.at("HOLES-BARE").size(), 1u);
  EXPECT_EQ(dxf.polylines.at("HOLES-BARE")[0], tall);
  EXPECT_TRUE(dxf.closed);
  ASSERT_EQ(dxf.circles.size(), 1u);
  EXPECT_EQ(dxf.circles[0].cx, -8);
  EXPECT_EQ(dxf.circles[0].cy, 14);
  EXPECT_EQ(dxf.circles[0].radius, 0.375);
  ASSERT_EQ(dxf.points.size(), 1u);
  EXPECT_EQ(dxf.points[0].x, -8);
  EXPECT_TRUE(dxf.texts.contains("round"));
  // The DXF reference, $INSUNITS: 1 is inches, 4 millimetres.
  EXPECT_EQ(dxf.variables.at("$INSUNITS"), 1);
}

TEST_F(SmallExport, DxfLayersTellWhatIsCutHow) {
  const ReadDxf dxf(exported(path(), {"dxf", "--frame", "Bl\xC3\xA4tt"}).out);
  for (const std::string& layer : dxf.entity_layers)
    EXPECT_TRUE(dxf.layers.contains(layer)) << layer;
  EXPECT_TRUE(dxf.layers.contains("HOLES-GROMMET"));
}

TEST_F(SmallExport, DxfInMillimetresSaysSo) {
  const ReadDxf dxf(exported(path(), {"dxf", "--frame", "Bl\xC3\xA4tt", "--units", "mm"}).out);
  EXPECT_EQ(dxf.variables.at("$INSUNITS"), 4);
  ASSERT_EQ(dxf.circles.size(), 1u);
  EXPECT_DOUBLE_EQ(dxf.circles[0].radius, 9.525);
}

TEST_F(SmallExport, DxfHoldsNothingBeyondAscii) {
  const std::string text = exported(path(), {"dxf", "--frame", "Bl\xC3\xA4tt"}).out;
  for (const char c : text) ASSERT_TRUE(c == '\n' || (c >= ' ' && c < 127));
  EXPECT_TRUE(contains(text, "Bl\\U+00E4tt at FS 100.0"));
}

TEST_F(SmallExport, WrongWordsAreToldInOneError) {
  const auto refused = [&](const std::vector<std::string>& options, const std::string& part) {
    std::vector<std::string> words{"export", path()};
    words.insert(words.end(), options.begin(), options.end());
    const CommandRun result = run(words);
    EXPECT_EQ(result.code, 2);
    EXPECT_EQ(result.out, "");
    EXPECT_TRUE(contains(result.err, part)) << result.err;
  };
  refused({}, "export needs --to gltf or dxf");
  refused({"--to", "gtlf"}, "--to takes gltf, dxf, not 'gtlf'; did you mean 'gltf'?");
  refused({"--to", "dxf"}, "--to dxf needs --frame");
  refused({"--to", "gltf", "--frame", "Bl\xC3\xA4tt"}, "--frame goes with --to dxf");
  refused({"--to", "dxf", "--frame", "F2"}, "no frame is called 'F2'");
}

TEST_F(SmallExport, BytesAreNotWrittenToATerminal) {
  const std::string project = path();
  const std::string file = folder_ / "small.glb";
  const OutputAtATerminal terminal;
  const CommandRun refused = run_to_standard_output({"export", project.c_str(), "--to", "gltf"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_EQ(refused.err,
            "linewright: error: the result is binary, which a terminal cannot show: write it with "
            "--output FILE\n");
  EXPECT_NE(
      run_to_standard_output({"export", project.c_str(), "--to", "gltf", "--output", file.c_str()})
          .code,
      2);
}

}  // namespace
}  // namespace linewright
