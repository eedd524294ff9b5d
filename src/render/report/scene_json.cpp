#include "model/worth.hpp"
#include "render/amount.hpp"
#include "render/json_values.hpp"
#include "render/report/html_text.hpp"
#include "render/report/sections.hpp"

namespace linewright {

namespace {

/// To a thousandth: no eye sees less, and the page stays small.
double rounded(double value) {
  const double thousandths = to_parts(to_parts(value, parts_of_place), 1000);
  return thousandths == 0 ? 0 : thousandths;
}

void add(Json& numbers, Vec3 at) {
  numbers.push_back(rounded(at.x));
  numbers.push_back(rounded(at.y));
  numbers.push_back(rounded(at.z));
}

Json place(Vec3 at) {
  Json numbers = Json::array();
  add(numbers, at);
  return numbers;
}

Json optional_number(const std::optional<double>& value) {
  return value ? Json(rounded(*value)) : Json(nullptr);
}

std::string_view part_kind_word(PartKind kind) {
  switch (kind) {
    case PartKind::frame:
      return "frames";
    case PartKind::channel:
      return "channels";
    case PartKind::panel:
      return "panels";
    case PartKind::solid:
      return "solids";
    case PartKind::mover:
      return "moving parts";
    case PartKind::mesh:
      return "meshes";
    case PartKind::fitting:
      return "fittings";
    case PartKind::pulley:
      return "pulleys";
  }
  return "parts";
}

Json json_part(const ScenePart& part) {
  Json faces = Json::array();
  for (const Triangle3& face : part.faces)
    for (const Vec3 corner : {face.a, face.b, face.c}) add(faces, corner);
  Json edges = Json::array();
  for (const Segment3& edge : part.edges)
    for (const Vec3 end : {edge.a, edge.b}) add(edges, end);
  return {{"name", part.name},
          {"kind", part_kind_word(part.kind)},
          {"faces", std::move(faces)},
          {"edges", std::move(edges)}};
}

Json json_mover(const SceneMover& mover) {
  Json points = Json::array();
  for (const Vec3 point : mover.points) add(points, point);
  return {{"name", mover.name},
          {"pivot", place(mover.pivot)},
          {"axis", place(unit(mover.axis))},
          {"points", std::move(points)},
          {"radius", rounded(mover.radius_in)},
          {"sweep", {rounded(mover.sweep_from_deg), rounded(mover.sweep_to_deg)}}};
}

Json json_route(const SceneRoute& route) {
  Json along = Json::array(), at = Json::array(), radius = Json::array(), likely = Json::array(),
       bound = Json::array();
  for (const SceneStep& step : route.steps) {
    along.push_back(rounded(step.distance_in));
    add(at, step.at);
    radius.push_back(rounded(step.radius_in));
    likely.push_back(optional_number(step.likely_in));
    bound.push_back(optional_number(step.bound_in));
  }
  Json supports = Json::array();
  for (const SceneSupport& support : route.supports)
    supports.push_back({{"name", support.name}, {"at", place(support.at)}});
  Json attached = Json::array();
  for (const Attachment& each : route.attached)
    attached.push_back({{"kind", each.kind},
                        {"at", rounded(each.at_in)},
                        {"length", rounded(each.length_in)},
                        {"radius", rounded(each.diameter_in / 2)}});
  Json moves = nullptr;
  if (route.moves)
    moves = {rounded(route.moves->toward_from_in), rounded(route.moves->toward_to_in)};
  return {{"name", route.name},
          {"system", route.system},
          {"along", std::move(along)},
          {"at", std::move(at)},
          {"radius", std::move(radius)},
          {"likely", std::move(likely)},
          {"bound", std::move(bound)},
          {"supports", std::move(supports)},
          {"attached", std::move(attached)},
          {"moves", std::move(moves)}};
}

Json json_finding(const Judgement& judgement, std::size_t index) {
  return {
      {"id", judgement_id(index)},    {"verdict", verdict_word(judgement.verdict)},
      {"rule", judgement.rule},       {"route", judgement.route},
      {"message", judgement.message}, {"at", judgement.at ? place(*judgement.at) : Json(nullptr)}};
}

Json json_pool(const ScenePool& pool) {
  return {{"attitude", pool.attitude},
          {"route", pool.route},
          {"from", rounded(pool.from_in)},
          {"to", rounded(pool.to_in)}};
}

Json json_tensions(const RiggedCable& cable) {
  Json rows = Json::array();
  for (const ChartRow& row : cable.chart)
    rows.push_back({rounded(row.temperature_degf), optional_number(row.tension_lbf)});
  return {{"name", cable.name}, {"rows", std::move(rows)}};
}

/// JSON that can stand within a script element: no markup begins without a "<".
std::string without_markup(const std::string& json) {
  std::string safe;
  safe.reserve(json.size());
  for (const char character : json) {
    if (character == '<')
      safe += "\\u003c";
    else
      safe += character;
  }
  return safe;
}

}  // namespace

std::string scene_json(const ReportPage& page) {
  Json parts = Json::array(), movers = Json::array(), routes = Json::array(),
       findings = Json::array(), tensions = Json::array(), pools = Json::array();
  for (const ScenePart& part : page.scene.parts) parts.push_back(json_part(part));
  for (const SceneMover& mover : page.scene.movers) movers.push_back(json_mover(mover));
  for (const SceneRoute& route : page.scene.routes) routes.push_back(json_route(route));
  for (const std::size_t index : findings_in_order(page.report))
    findings.push_back(json_finding(page.report.judgements[index], index));
  for (const RiggedCable& cable : page.rig.cables) tensions.push_back(json_tensions(cable));
  for (const ScenePool& pool : page.scene.pools) pools.push_back(json_pool(pool));
  return without_markup(json_line({{"unit", page.phrasing.unit_name()},
                                   {"unit_per_in", page.phrasing.units_per_in()},
                                   {"parts", std::move(parts)},
                                   {"movers", std::move(movers)},
                                   {"routes", std::move(routes)},
                                   {"findings", std::move(findings)},
                                   {"attitudes", page.scene.attitudes},
                                   {"pools", std::move(pools)},
                                   {"tensions", std::move(tensions)},
                                   {"rigged_degf", rounded(page.rig.temperature.rigged_degf)}}));
}

}  // namespace linewright
