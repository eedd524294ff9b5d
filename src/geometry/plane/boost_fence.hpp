#pragma once
// Keeps Boost.Geometry to what it gets right. In three dimensions its `intersection` and
// `is_simple` of lines and its `closest_points` of segments compile and answer wrongly (an
// uninitialised height, a path that passes over itself called not simple). Here they are deleted
// for everything three-dimensional but boxes, whose intersection is right and which the R-tree
// needs, and our own space types are barred from ever being registered as Boost geometries. Every
// file that includes Boost.Geometry includes this one.

#include <boost/geometry/core/coordinate_dimension.hpp>
#include <boost/geometry/core/tag.hpp>
#include <boost/geometry/core/tags.hpp>
#include <type_traits>

#include "geometry/distance.hpp"
#include "model/vector.hpp"

namespace linewright {

// Asking for the tag here also makes a later registration in the same file ill-formed.
template <typename Type>
inline constexpr bool unknown_to_boost =
    std::is_void_v<typename boost::geometry::traits::tag<Type>::type>;
static_assert(unknown_to_boost<Vec3> && unknown_to_boost<Segment3> && unknown_to_boost<Triangle3>);

/// A Boost geometry in space, other than a box.
template <typename Geometry>
concept FencedGeometry =
    boost::geometry::dimension<Geometry>::value == 3 &&
    !std::is_same_v<typename boost::geometry::tag<Geometry>::type, boost::geometry::box_tag>;

}  // namespace linewright

namespace boost::geometry {

// Same parameters as Boost's own, but constrained, so overload resolution prefers these.
template <typename Geometry1, typename Geometry2, typename GeometryOut>
requires linewright::FencedGeometry<Geometry1> || linewright::FencedGeometry<Geometry2>
bool intersection(Geometry1 const&, Geometry2 const&, GeometryOut&) = delete;

template <typename Geometry1, typename Geometry2, typename GeometryOut, typename Strategy>
requires linewright::FencedGeometry<Geometry1> || linewright::FencedGeometry<Geometry2>
bool intersection(Geometry1 const&, Geometry2 const&, GeometryOut&, Strategy const&) = delete;

template <typename Geometry>
requires linewright::FencedGeometry<Geometry>
bool is_simple(Geometry const&) = delete;

template <typename Geometry, typename Strategy>
requires linewright::FencedGeometry<Geometry>
bool is_simple(Geometry const&, Strategy const&) = delete;

template <typename Geometry1, typename Geometry2, typename Segment>
requires linewright::FencedGeometry<Geometry1> || linewright::FencedGeometry<Geometry2>
void closest_points(Geometry1 const&, Geometry2 const&, Segment&) = delete;

template <typename Geometry1, typename Geometry2, typename Segment, typename Strategy>
requires linewright::FencedGeometry<Geometry1> || linewright::FencedGeometry<Geometry2>
void closest_points(Geometry1 const&, Geometry2 const&, Segment&, Strategy const&) = delete;

}  // namespace boost::geometry
