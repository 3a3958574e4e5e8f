// SPDX-License-Identifier: MIT
/// Hidden area as the union of outlines. Source: Boost.Geometry 1.74, a general-purpose library.
#include "sight/hidden.hpp"
#include "sight/seated_room.hpp"
#include "support/check.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/multi_polygon.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>
#include <cmath>
#include <numbers>

using namespace rakeline;

namespace {

namespace bg = boost::geometry;
using Point = bg::model::d2::point_xy<double>;
using Polygon = bg::model::polygon<Point>;
using Polygons = bg::model::multi_polygon<Polygon>;

constexpr int kCorners = 720;

/// The outline on the plane z = 0 of an upright spheroid: the rim along which the lines from the
/// eye touch it, each point carried on to the plane. In the room squeezed until the head is a
/// sphere about c, the rim is the circle about c - (r^2 / |c|^2) c in the plane across c.
Polygon outline(const glm::dvec3& eye, const sight::Head& head) {
    const double squeeze = head.half_height_m / head.radius_m;
    glm::dvec3 c = head.centre - eye;
    c.y /= squeeze;
    const double r = head.radius_m;
    const double d = glm::length(c);
    const glm::dvec3 axis = c / d;
    const glm::dvec3 one = glm::normalize(glm::cross(axis, glm::dvec3(0.0, 1.0, 0.0)));
    const glm::dvec3 two = glm::cross(axis, one);
    const glm::dvec3 middle = c * (1.0 - r * r / (d * d));
    const double rim = r * std::sqrt(1.0 - r * r / (d * d));
    Polygon out;
    for (int k = 0; k <= kCorners; ++k) {
        const double angle = 2.0 * std::numbers::pi * (k % kCorners) / kCorners;
        glm::dvec3 p = middle + rim * (std::cos(angle) * one + std::sin(angle) * two);
        p.y *= squeeze;
        const double t = -eye.z / p.z;
        bg::append(out.outer(), Point(eye.x + t * p.x, eye.y + t * p.y));
    }
    bg::correct(out);
    return out;
}

double union_fraction(const tests::SeatedRoom& room, std::size_t seat) {
    const glm::dvec3& eye = room.eyes[seat];
    Polygons all;
    for (const sight::Head& head : room.heads) {
        if (head.centre.z > eye.z - 0.4) continue;  // beside and behind
        Polygons more;
        bg::union_(all, outline(eye, head), more);
        all = more;
    }
    const geometry::Rectangle& uv = room.opening.uv;
    const double up = room.surface.centre.y;
    const bg::model::box<Point> window(Point(uv.left, uv.bottom + up),
                                       Point(uv.right, uv.top + up));
    Polygons within;
    bg::intersection(all, window, within);
    return bg::area(within) / room.opening.area_m2;
}

}  // namespace

TEST_SUITE("outside/boost_union_hidden") {
    TEST_CASE("golden: the union of the heads' outlines has the area that the columns count") {
        for (const double rake : {0.0, 0.09, 0.2}) {
            tests::RoomShape shape;
            shape.rows = 8;
            shape.seats = 14;
            shape.rake_rad = rake;
            const auto room = tests::seated_room(shape, 7);
            const auto ours = sight::hidden_picture(room.input(), {4096, 0});
            for (const std::size_t seat : {std::size_t{20}, std::size_t{63}, std::size_t{105}}) {
                INFO("rake ", rake, " seat ", seat);
                // 720 corners leave 1.3e-5 of each outline; 4096 columns about 1e-5.
                tests::check_close(ours[seat].hidden_fraction, union_fraction(room, seat),
                                   tests::absolute(2e-5, "corners of the outlines, and columns"));
            }
        }
    }
}
