#include "render/export/scene_gltf.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <optional>
#include <string_view>
#include <vector>

#include "model/same_bits.hpp"
#include "model/units.hpp"
#include "model/worth.hpp"
#include "render/finding_folds.hpp"
#include "render/json_values.hpp"
#include "render/version.hpp"

namespace linewright {

namespace {

using Corner = std::array<float, 3>;

constexpr int tube_sides = 12;
constexpr double support_size_in = 0.2;

// Codes of the format's specification.
constexpr int float_components = 5126;
constexpr int vertex_buffer = 34962;
constexpr std::uint32_t glb_magic = 0x46546c67;
constexpr std::uint32_t glb_version = 2;
constexpr std::uint32_t json_chunk = 0x4e4f534a;
constexpr std::uint32_t binary_chunk = 0x004e4942;

/// FS aft, BL right, WL up become Z to the nose, X left, Y up.
Corner metres(Vec3 at) {
  // Zero is added for minus zero to be plain zero.
  const auto metres_of = [](double inches) {
    return static_cast<float>(to_parts(inches, parts_of_place) * m_per_in + 0.0);
  };
  return {metres_of(-at.y), metres_of(at.z), metres_of(-at.x)};
}

/// A material for structure, one for each verdict, and one for what no rule judged. Brightness and
/// hue both tell them apart.
struct Paint {
  std::string_view name;
  std::array<double, 3> colour;  ///< linear red, green, blue
  double opacity = 1;
};

constexpr std::array<Paint, 7> paints{{{"structure", {0.5, 0.52, 0.55}, 0.45},
                                       {"pass", {0.02, 0.32, 0.45}},
                                       {"warn", {0.85, 0.55, 0.05}},
                                       {"fail", {0.55, 0.02, 0.12}},
                                       {"unknown", {0.38, 0.2, 0.55}},
                                       {"waived", {0.35, 0.45, 0.2}},
                                       {"not judged", {0.3, 0.3, 0.3}}}};
constexpr std::size_t structure_paint = 0;
constexpr std::size_t not_judged_paint = 6;

std::size_t paint_of(std::string_view name) {
  const auto found = std::find_if(paints.begin(), paints.end(),
                                  [&](const Paint& paint) { return paint.name == name; });
  return static_cast<std::size_t>(found - paints.begin());
}

/// The gravest that was judged of the line; nothing where nothing was.
std::optional<Verdict> worst_verdict(const Report& report, std::string_view route) {
  std::optional<Verdict> worst;
  for (const Judgement& judgement : report.judgements)
    if (judgement.route == route &&
        (!worst || gravity_rank(judgement.verdict) < gravity_rank(*worst)))
      worst = judgement.verdict;
  return worst;
}

void add_little_endian(std::string& bytes, std::uint32_t number) {
  for (int shift = 0; shift < 32; shift += 8) bytes += static_cast<char>(number >> shift & 0xffu);
}

/// The file's lists, filled from front to back.
class GltfFile {
 public:
  /// Three corners a triangle; its number among the meshes.
  std::size_t add_mesh(std::string_view name, const std::vector<Corner>& corners,
                       std::size_t paint) {
    Corner least = corners.front();
    Corner most = corners.front();
    const std::size_t start = bytes_.size();
    for (const Corner& corner : corners)
      for (std::size_t axis = 0; axis < 3; ++axis) {
        least[axis] = std::min(least[axis], corner[axis]);
        most[axis] = std::max(most[axis], corner[axis]);
        add_little_endian(bytes_, same_bits<std::uint32_t>(corner[axis]));
      }
    views_.push_back({{"buffer", 0},
                      {"byteOffset", start},
                      {"byteLength", bytes_.size() - start},
                      {"target", vertex_buffer}});
    accessors_.push_back({{"bufferView", views_.size() - 1},
                          {"componentType", float_components},
                          {"count", corners.size()},
                          {"type", "VEC3"},
                          {"min", least},
                          {"max", most}});
    Json primitive = {{"attributes", {{"POSITION", accessors_.size() - 1}}},
                      {"material", material(paints.at(paint))}};
    meshes_.push_back({{"name", name}, {"primitives", Json::array({std::move(primitive)})}});
    return meshes_.size() - 1;
  }

  std::size_t add_node(Json node) {
    nodes_.push_back(std::move(node));
    return nodes_.size() - 1;
  }

  std::string whole(std::string_view name, const std::vector<std::size_t>& roots) const {
    Json file = {
        {"asset", {{"version", "2.0"}, {"generator", "linewright " + std::string(version())}}},
        {"scene", 0},
        {"scenes", Json::array({{{"name", name}}})}};
    if (!nodes_.empty()) {
      file["scenes"][0]["nodes"] = roots;
      file["nodes"] = nodes_;
    }
    if (!meshes_.empty()) {
      file["meshes"] = meshes_;
      file["materials"] = materials_;
      file["accessors"] = accessors_;
      file["bufferViews"] = views_;
      file["buffers"] = Json::array({{{"byteLength", bytes_.size()}}});
    }
    std::string json = file.dump();
    json.append((4 - json.size() % 4) % 4, ' ');
    constexpr std::size_t header_bytes = 12;
    constexpr std::size_t chunk_header_bytes = 8;
    std::size_t total = header_bytes + chunk_header_bytes + json.size();
    if (!bytes_.empty()) total += chunk_header_bytes + bytes_.size();
    std::string glb;
    add_little_endian(glb, glb_magic);
    add_little_endian(glb, glb_version);
    add_little_endian(glb, static_cast<std::uint32_t>(total));
    add_little_endian(glb, static_cast<std::uint32_t>(json.size()));
    add_little_endian(glb, json_chunk);
    glb += json;
    if (bytes_.empty()) return glb;
    add_little_endian(glb, static_cast<std::uint32_t>(bytes_.size()));
    add_little_endian(glb, binary_chunk);
    return glb + bytes_;
  }

 private:
  /// The paint's number among the materials, where only those are that something has.
  std::size_t material(const Paint& paint) {
    for (std::size_t i = 0; i < materials_.size(); ++i)
      if (materials_[i]["name"] == paint.name) return i;
    Json material = {
        {"name", paint.name},
        {"doubleSided", true},
        {"pbrMetallicRoughness",
         {{"baseColorFactor", {paint.colour[0], paint.colour[1], paint.colour[2], paint.opacity}},
          {"metallicFactor", 0},
          {"roughnessFactor", 0.8}}}};
    if (paint.opacity < 1) material["alphaMode"] = "BLEND";
    materials_.push_back(std::move(material));
    return materials_.size() - 1;
  }

  Json materials_ = Json::array();
  Json meshes_ = Json::array();
  Json nodes_ = Json::array();
  Json accessors_ = Json::array();
  Json views_ = Json::array();
  std::string bytes_;
};

void add_triangle(std::vector<Corner>& corners, Vec3 a, Vec3 b, Vec3 c) {
  for (const Vec3 corner : {a, b, c}) corners.push_back(metres(corner));
}

using Ring = std::array<Vec3, tube_sides>;

/// A tube about the steps: each ring square to the way on, turned no more than the way turns.
std::vector<Corner> tube_about(const std::vector<SceneStep>& steps) {
  std::vector<Ring> rings;
  Vec3 side{};
  for (std::size_t i = 0; i < steps.size(); ++i) {
    const Vec3 before = steps[i > 0 ? i - 1 : 0].at;
    const Vec3 after = steps[std::min(i + 1, steps.size() - 1)].at;
    if (distance(before, after) == 0) continue;
    const Vec3 along = unit(after - before);
    if (norm(side) == 0) side = std::abs(along.x) < 0.7 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
    Vec3 square = side - along * dot(side, along);
    // A line that turns right back on itself leaves the last side along it.
    if (norm(square) < 1e-6)
      square = cross(along, std::abs(along.x) < 0.7 ? Vec3{1, 0, 0} : Vec3{0, 1, 0});
    side = unit(square);
    const Vec3 other = cross(along, side);
    Ring& ring = rings.emplace_back();
    for (int k = 0; k < tube_sides; ++k) {
      const double turn = 2 * std::numbers::pi * k / tube_sides;
      ring[static_cast<std::size_t>(k)] =
          steps[i].at + (side * std::cos(turn) + other * std::sin(turn)) * steps[i].radius_in;
    }
  }
  std::vector<Corner> corners;
  for (std::size_t i = 0; i + 1 < rings.size(); ++i)
    for (std::size_t k = 0; k < tube_sides; ++k) {
      const std::size_t next = (k + 1) % tube_sides;
      add_triangle(corners, rings[i][k], rings[i + 1][next], rings[i + 1][k]);
      add_triangle(corners, rings[i][k], rings[i][next], rings[i + 1][next]);
    }
  return corners;
}

/// Eight faces about the middle, so that a support is seen from all sides.
std::vector<Corner> support_mark() {
  std::vector<Corner> corners;
  for (const double x : {-1.0, 1.0})
    for (const double y : {-1.0, 1.0})
      for (const double z : {-1.0, 1.0}) {
        const Vec3 a = Vec3{x, 0, 0} * support_size_in;
        const Vec3 b = Vec3{0, y, 0} * support_size_in;
        const Vec3 c = Vec3{0, 0, z} * support_size_in;
        x* y* z > 0 ? add_triangle(corners, a, b, c) : add_triangle(corners, a, c, b);
      }
  return corners;
}

Json findings_of(const Report& report, std::string_view route) {
  Json findings = Json::array();
  for (const Judgement& judgement : report.judgements)
    if (judgement.route == route && judgement.verdict != Verdict::pass)
      findings.push_back({{"rule", judgement.rule},
                          {"verdict", verdict_word(judgement.verdict)},
                          {"message", judgement.message}});
  return findings;
}

}  // namespace

std::string scene_glb(const Scene& scene, const Report& report) {
  GltfFile file;
  std::vector<std::size_t> roots;
  for (const ScenePart& part : scene.parts) {
    if (part.faces.empty()) continue;
    std::vector<Corner> corners;
    for (const Triangle3& face : part.faces) add_triangle(corners, face.a, face.b, face.c);
    const std::size_t mesh = file.add_mesh(part.name, corners, structure_paint);
    roots.push_back(file.add_node({{"name", part.name}, {"mesh", mesh}}));
  }
  std::array<std::optional<std::size_t>, paints.size()> support_meshes;
  for (const SceneRoute& route : scene.routes) {
    const std::optional<Verdict> worst = worst_verdict(report, route.name);
    const std::size_t paint = worst ? paint_of(verdict_word(*worst)) : not_judged_paint;
    Json node = {{"name", route.name},
                 {"extras",
                  {{"system", route.system},
                   {"verdict", paints[paint].name},
                   {"findings", findings_of(report, route.name)}}}};
    const std::vector<Corner> corners = tube_about(route.steps);
    if (!corners.empty()) node["mesh"] = file.add_mesh(route.name, corners, paint);
    std::optional<std::size_t>& mark = support_meshes[paint];
    for (const SceneSupport& support : route.supports) {
      if (!mark) mark = file.add_mesh("support", support_mark(), paint);
      node["children"].push_back(file.add_node(
          {{"name", support.name}, {"mesh", *mark}, {"translation", metres(support.at)}}));
    }
    roots.push_back(file.add_node(std::move(node)));
  }
  return file.whole(report.project_name, roots);
}

}  // namespace linewright
