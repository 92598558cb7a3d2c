#pragma once

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <boost/geometry/geometries/register/point.hpp>
#include <boost/geometry/geometries/ring.hpp>
#include <boost/geometry/geometries/segment.hpp>

#include "slabtide/core/geometry.h"

BOOST_GEOMETRY_REGISTER_POINT_2D(slabtide::Point, double, boost::geometry::cs::cartesian, x_m, y_m)

// What Boost.Geometry needs of our points. Its headers are heavy: only sources that compute
// with polygons include this.

namespace slabtide::polygons {

namespace bg = boost::geometry;

inline constexpr bool clockwise = false;
inline constexpr bool closed = false;

using Ring = bg::model::ring<Point, clockwise, closed>;
using Polygon = bg::model::polygon<Point, clockwise, closed>;
using Line = bg::model::linestring<Point>;
using Segment = bg::model::segment<Point>;

inline Ring ring_of(const Outline& outline) { return {outline.begin(), outline.end()}; }

inline Polygon polygon_of(const Outline& outline) {
  Polygon polygon;
  polygon.outer() = ring_of(outline);
  bg::correct(polygon);
  return polygon;
}

}  // namespace slabtide::polygons
