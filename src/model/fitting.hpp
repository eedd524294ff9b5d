#pragma once
// Fittings of real size: where a tube begins at one, and the room that one takes.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/source.hpp"
#include "model/vector.hpp"

namespace linewright {

enum class FittingKind { straight_union, bulkhead_union, elbow_90, elbow_45, tee };

/// How many tubes a fitting joins. Its ports are `a`, `b` and, of a tee, `c`.
constexpr std::size_t ports_of(FittingKind kind) {
  return kind == FittingKind::tee ? 3 : 2;
}

/// Between the ways that port `a` and the branch point: port `b` of an elbow, `c` of a tee. Nothing
/// for what runs straight.
constexpr std::optional<double> branch_angle_deg(FittingKind kind) {
  switch (kind) {
    case FittingKind::elbow_90:
    case FittingKind::tee:
      return 90;
    case FittingKind::elbow_45:
      return 135;
    case FittingKind::straight_union:
    case FittingKind::bulkhead_union:
      break;
  }
  return std::nullopt;
}

/// A fitting of the catalogue, or of a project's `fittings`. Inches. An absent optional means "not
/// known".
struct Fitting {
  std::string name;  ///< "elbow-1/4"
  FittingKind kind = FittingKind::straight_union;
  std::string standard;         ///< "AN821"; empty for none
  double tube_diameter_in = 0;  ///< outside diameter of the tubes that it joins
  Source source;
  /// From where its ports' axes meet to each port's face, `a` first. Of a bulkhead union from the
  /// face of the web on the side of `a`.
  std::vector<SourcedValue> take_up_in;
  SourcedValue body_diameter_in;             ///< over all, coupling nuts included
  std::optional<SourcedValue> nut_in;        ///< how far a coupling nut reaches past the face
  std::optional<SourcedValue> insertion_in;  ///< how far the tube goes in past the face
  std::optional<SourcedValue> bore_in;       ///< least bore
  std::optional<SourcedValue> thread_in;     ///< bulkhead unions: across the thread in the sheet
  std::optional<SourceLocation> where;       ///< set when the project defines the fitting

  friend bool operator==(const Fitting&, const Fitting&) = default;
};

/// Where a tube begins at a node.
struct Port {
  std::string name;
  Vec3 at;                  ///< the middle of its face
  Vec3 direction;           ///< the way the tube leaves, of unit length
  double insertion_in = 0;  ///< how far the tube goes in past the face
  SourceLocation where;

  friend bool operator==(const Port&, const Port&) = default;
};

/// The room that a node's fitting takes: everything within `radius_in` of a straight line from the
/// node to each port's face and `beyond_face_in` farther, out to where its coupling nut ends.
struct FittingBody {
  double radius_in = 0;
  double beyond_face_in = 0;

  friend bool operator==(const FittingBody&, const FittingBody&) = default;
};

}  // namespace linewright
