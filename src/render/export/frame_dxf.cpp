#include "render/export/frame_dxf.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <set>
#include <string_view>
#include <vector>

#include "model/units.hpp"
#include "render/edge_word.hpp"

namespace linewright {

namespace {

constexpr double name_height_in = 0.2;
/// $INSUNITS of the format's reference.
constexpr int inches = 1;
constexpr int millimetres = 4;

/// Lines of a code and its value.
class DxfText {
 public:
  explicit DxfText(double units_per_in) : units_per_in_(units_per_in) {}

  void put(int code, std::string_view value) { text_ += fmt::format("{:>3}\n{}\n", code, value); }
  void put(int code, int value) { put(code, std::to_string(value)); }
  void put_length(int code, double length_in) {
    put(code, fmt::format("{:.6f}", length_in * units_per_in_));
  }
  void put_point(Vec2 at) {
    put_length(10, at.u);
    put_length(20, at.v);
    put_length(30, 0);
  }
  std::string take() { return std::move(text_); }

 private:
  double units_per_in_;
  std::string text_;
};

std::string holes_layer(EdgeGuard edge) {
  std::string name = fmt::format("HOLES-{}", edge_word(edge));
  std::transform(name.begin(), name.end(), name.begin(),
                 [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return name;
}

/// Beyond ASCII as the format escapes it.
std::string plain_ascii(std::string_view utf8) {
  std::string plain;
  for (std::size_t i = 0; i < utf8.size();) {
    const auto lead = static_cast<unsigned char>(utf8[i]);
    const std::size_t length = lead < 0x80 ? 1 : lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
    if (length == 1) {
      plain += lead < 0x20 ? ' ' : static_cast<char>(lead);
    } else {
      unsigned code = lead & (0x7fu >> length);
      for (std::size_t k = 1; k < length && i + k < utf8.size(); ++k)
        code = code << 6 | (static_cast<unsigned char>(utf8[i + k]) & 0x3fu);
      plain += code <= 0xffff ? fmt::format("\\U+{:04X}", code) : "?";
    }
    i += length;
  }
  return plain;
}

void put_header(DxfText& dxf, bool metric) {
  dxf.put(0, "SECTION");
  dxf.put(2, "HEADER");
  dxf.put(9, "$ACADVER");
  dxf.put(1, "AC1009");
  dxf.put(9, "$INSUNITS");
  dxf.put(70, metric ? millimetres : inches);
  dxf.put(0, "ENDSEC");
}

void put_layers(DxfText& dxf, const std::set<std::string>& layers) {
  constexpr int foreground = 7;
  dxf.put(0, "SECTION");
  dxf.put(2, "TABLES");
  dxf.put(0, "TABLE");
  dxf.put(2, "LAYER");
  dxf.put(70, static_cast<int>(layers.size()));
  for (const std::string& layer : layers) {
    dxf.put(0, "LAYER");
    dxf.put(2, layer);
    dxf.put(70, 0);
    dxf.put(62, foreground);
    dxf.put(6, "CONTINUOUS");
  }
  dxf.put(0, "ENDTAB");
  dxf.put(0, "ENDSEC");
}

void put_polygon(DxfText& dxf, std::string_view layer, const std::vector<Vec2>& corners) {
  constexpr int closed = 1;
  dxf.put(0, "POLYLINE");
  dxf.put(8, layer);
  dxf.put(66, 1);
  dxf.put_point({});
  dxf.put(70, closed);
  for (const Vec2 corner : corners) {
    dxf.put(0, "VERTEX");
    dxf.put(8, layer);
    dxf.put_point(corner);
  }
  dxf.put(0, "SEQEND");
  dxf.put(8, layer);
}

void put_text(DxfText& dxf, Vec2 at, std::string_view words) {
  dxf.put(0, "TEXT");
  dxf.put(8, "NAMES");
  dxf.put_point(at);
  dxf.put_length(40, name_height_in);
  dxf.put(1, plain_ascii(words));
}

void put_hole(DxfText& dxf, const Hole& hole) {
  const std::string layer = holes_layer(hole.edge);
  if (const auto* corners = std::get_if<std::vector<Vec2>>(&hole.shape)) {
    put_polygon(dxf, layer, *corners);
    put_text(dxf, corners->front(), hole.name);
    return;
  }
  const Circle& circle = std::get<Circle>(hole.shape);
  dxf.put(0, "CIRCLE");
  dxf.put(8, layer);
  dxf.put_point(circle.centre);
  dxf.put_length(40, circle.diameter_in / 2);
  dxf.put(0, "POINT");
  dxf.put(8, "CENTRES");
  dxf.put_point(circle.centre);
  put_text(dxf, {circle.centre.u + circle.diameter_in / 2, circle.centre.v}, hole.name);
}

/// Below the frame, clear of what is cut.
Vec2 place_of_name(const std::vector<Vec2>& outline) {
  Vec2 least = outline.front();
  for (const Vec2 corner : outline)
    least = {std::min(least.u, corner.u), std::min(least.v, corner.v)};
  return {least.u, least.v - 2 * name_height_in};
}

}  // namespace

std::string frame_dxf(const Frame& frame, const Phrasing& phrasing) {
  const bool metric = phrasing.unit == LengthUnit::millimetre;
  DxfText dxf(metric ? mm_per_in : 1);
  put_header(dxf, metric);
  std::set<std::string> layers{"OUTLINE", "CENTRES", "NAMES"};
  for (const Hole& hole : frame.holes) layers.insert(holes_layer(hole.edge));
  put_layers(dxf, layers);
  dxf.put(0, "SECTION");
  dxf.put(2, "ENTITIES");
  put_polygon(dxf, "OUTLINE", frame.outline);
  for (const Hole& hole : frame.holes) put_hole(dxf, hole);
  put_text(dxf, place_of_name(frame.outline),
           fmt::format("{} at {}, {} thick, {}", frame.name, phrasing.stand(frame.plane),
                       phrasing.length(frame.thickness_in), metric ? "millimetres" : "inches"));
  dxf.put(0, "ENDSEC");
  dxf.put(0, "EOF");
  return dxf.take();
}

}  // namespace linewright
