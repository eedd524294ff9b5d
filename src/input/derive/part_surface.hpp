#pragma once
// Places on the surface of a channel, a panel or a frame, by what a tape shows of them.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "input/derive/project_items.hpp"
#include "model/expected.hpp"
#include "model/vector.hpp"

namespace linewright {

/// A flat strip of a part's surface, as it is seen from one side.
struct Face {
  Vec3 at;       ///< a place on it
  Vec3 outward;  ///< of unit length
};

/// What is known of a place on a part. One of them fixes a place on a channel, two on a sheet.
struct OnPart {
  std::array<std::optional<double>, 3> at_in;  ///< FS, BL, WL
  std::optional<double> along_in;              ///< from the first point of a channel's path
};

/// A part of which a surface can be worked out: its faces where `OnPart` says.
struct PartSurface {
  std::vector<Face> faces;
  /// Direction to go along for the place to keep its stated coordinate; of a sheet: none.
  std::optional<Vec3> along;
  bool is_sheet = false;
};

/// "up", "down", "left", "right", "forward", "aft" as a direction, or nothing.
std::optional<Vec3> side_direction(std::string_view word);
/// The word for the side that a face mainly looks to.
std::string_view side_of(Vec3 outward);

inline constexpr std::array<std::string_view, 3> axis_words{"FS", "BL", "WL"};

/// Along that axis, FS first.
constexpr double component(Vec3 place, std::size_t axis) {
  return axis == 0 ? place.x : axis == 1 ? place.y : place.z;
}

/// Both faces of a flat sheet through `at`; the place itself follows from what is stated.
Expected<PartSurface, std::string> sheet_surface(const ProjectItem& part, Vec3 at, Vec3 normal,
                                                 double thickness_in, const OnPart& where);

/// The faces of a part at that place, or why there are none. Nothing is said where the part's own
/// numbers cannot be read: then the words are empty.
Expected<PartSurface, std::string> surface_at(const ProjectItem& part, const OnPart& where);

/// The place that is `off_in` before the face and keeps the stated coordinates.
Vec3 before_face(const PartSurface& surface, const Face& face, const OnPart& where, double off_in);

}  // namespace linewright
