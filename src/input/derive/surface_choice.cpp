#include "input/derive/surface_choice.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "input/derive/derived_nodes.hpp"
#include "input/derive/part_surface.hpp"
#include "input/derive/quiet_values.hpp"
#include "input/derive/stretched_surface.hpp"
#include "input/keys/place_keys.hpp"
#include "input/keys/structure_keys.hpp"

namespace linewright {

namespace {

/// Cushion and band of a clamp under the line [common practice, no source].
constexpr double clamp_cushion_in = 0.09;

/// Faces that look within 45 deg of a side are on it.
constexpr double cosine_of_side = 0.7071;

/// Faces at one height, seen from their side, are one answer.
constexpr double same_height_in = 1e-6;

/// Of the faces that look to `side`, those farthest out.
std::vector<Face> outermost(const std::vector<Face>& faces, Vec3 side) {
  std::vector<Face> found;
  for (const Face& face : faces) {
    if (dot(face.outward, side) < cosine_of_side) continue;
    const double lead = found.empty() ? 0 : dot(face.at - found.front().at, side);
    if (!found.empty() && lead < -same_height_in) continue;
    if (lead > same_height_in) found.clear();
    found.push_back(face);
  }
  return found;
}

/// The outermost faces that all of `beside` lie before.
std::vector<Face> faces_seen(const std::vector<Face>& faces, const std::vector<Vec3>& beside) {
  std::vector<Face> seen;
  for (const std::string_view word : {"up", "down", "left", "right", "forward", "aft"}) {
    for (const Face& face : outermost(faces, *side_direction(word))) {
      if (side_of(face.outward) != word) continue;
      const bool all_before = std::all_of(beside.begin(), beside.end(), [&](Vec3 place) {
        return dot(place - face.at, face.outward) > 0;
      });
      if (all_before) seen.push_back(face);
    }
  }
  return seen;
}

std::string words_of_sides(const std::vector<Face>& faces) {
  std::string words;
  for (const Face& face : faces)
    words += fmt::format("{}{}", words.empty() ? "" : ", ", side_of(face.outward));
  return words;
}

std::optional<Face> choose(const PartSurface& surface, const YamlNode& map,
                           const std::vector<Vec3>& beside, std::string_view part,
                           Derivation& derivation) {
  const YamlNode* side = map.find("side");
  std::vector<Face> found;
  if (side != nullptr) {
    const auto direction = side_direction(side->text);
    if (!direction) {
      derivation.error(side->where, fmt::format("a side must be up, down, left, right, forward or "
                                                "aft, found {}",
                                                quoted_text(side->text)));
      return std::nullopt;
    }
    found = outermost(surface.faces, *direction);
  } else {
    found = beside.empty() ? surface.faces : faces_seen(surface.faces, beside);
  }
  if (found.size() == 1) return found.front();
  if (side != nullptr)
    derivation.error(
        side->where,
        fmt::format("{} of '{}' look{} {} there", found.empty() ? "no face" : "more than one face",
                    part, found.size() > 1 ? "" : "s", side->text),
        found.empty() ? "" : "give the place by 'at'");
  else
    derivation.error(
        map.where,
        found.empty()
            ? fmt::format("no side of '{}' serves both what comes before and after", part)
            : fmt::format("more than one side of '{}' serves: {}", part, words_of_sides(found)),
        "say 'side: up', 'down', 'left', 'right', 'forward' or 'aft'");
  return std::nullopt;
}

/// True where the map states a length that could not be read.
bool any_unread(const YamlNode& map, const OnPart& where, std::optional<double> off_in) {
  const auto unread = [&](const KeySpec& key, std::optional<double> read_in) {
    return map.find(key.name) != nullptr && !read_in;
  };
  return unread(fs_key, where.at_in[0]) || unread(bl_key, where.at_in[1]) ||
         unread(wl_key, where.at_in[2]) || unread(along_key, where.along_in) ||
         unread(off_key, off_in);
}

}  // namespace

std::optional<Vec3> place_on_part(const YamlNode& map, BareLength bare,
                                  const std::vector<Vec3>& beside, std::optional<double> off_in,
                                  Derivation& derivation, std::string& note) {
  const YamlNode* on = map.find("on");
  if (on == nullptr) {
    derivation.error(map.where, "what is given by one or two coordinates needs 'on'",
                     "or its place 'at', in three lengths");
    return std::nullopt;
  }
  ProjectItem* part = derivation.find(Named::part, on->text);
  // Of a name that is nowhere the readers say so, who see it under `to`; a node has none.
  if (part == nullptr) {
    if (map.find("kind") != nullptr) derivation.report_no_part(*on);
    return std::nullopt;
  }
  if (!derivation.work_out(*part)) return std::nullopt;
  const OnPart where{
      {derivation.length_in(map, fs_key, bare), derivation.length_in(map, bl_key, bare),
       derivation.length_in(map, wl_key, bare)},
      derivation.length_in(map, along_key, bare)};
  const std::optional<double> stated_in = derivation.length_in(map, off_key, bare);
  if (any_unread(map, where, stated_in)) return std::nullopt;
  const bool is_stretched = part->map == &panel_map && part->node->find("over") != nullptr;
  const auto surface =
      is_stretched ? stretched_surface(*part, where, derivation) : surface_at(*part, where);
  if (!surface) {
    if (!surface.error().empty()) derivation.error(map.where, surface.error());
    return std::nullopt;
  }
  if (!stated_in && !off_in) {
    derivation.error(map.where, "'off' is needed: how far the line's middle is off the surface",
                     "only of a clamp is it known");
    return std::nullopt;
  }
  const auto face = choose(*surface, map, beside, part->name, derivation);
  if (!face) return std::nullopt;
  const double held_in = stated_in.value_or(off_in.value_or(0));
  note = fmt::format("{:.3f} in off {}, on its side that looks {}", held_in, part->name,
                     side_of(face->outward));
  return before_face(*surface, *face, where, held_in);
}

std::optional<double> clamp_height_in(const ProjectItem& route, const YamlNode& point,
                                      Derivation& derivation) {
  if (quiet_text(point, "hold") != "clamp") return std::nullopt;
  const auto outside_in = derivation.outside_diameter_in(quiet_text(*route.node, "line"));
  return outside_in ? std::optional(*outside_in / 2 + clamp_cushion_in) : std::nullopt;
}

}  // namespace linewright
