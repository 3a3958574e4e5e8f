// SPDX-License-Identifier: MIT
/// Hidden area as the union of outlines. Source: Boost.Geometry 1.74, a general-purpose library.
#include "sight/hidden.hpp"
#include "sight/seated_room.hpp"
#include "support/check.hpp"

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/linestring.hpp>
#include <boost/geometry/geometries/multi_linestring.hpp>
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

/// Union of the outlines of all heads in front, cut to the picture.
Polygons union_of_outlines(const tests::SeatedRoom& room, std::size_t seat) {
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
    return within;
}

/// Of an upright line across the picture, the length within the polygons.
double length_within(const Polygons& polygons, double x) {
    const bg::model::linestring<Point> line{Point(x, -100.0), Point(x, 100.0)};
    bg::model::multi_linestring<bg::model::linestring<Point>> within;
    bg::intersection(line, polygons, within);
    return static_cast<double>(bg::length(within));
}

double clear_length(const std::vector<sight::ClearInterval>& column) {
    double out = 0.0;
    for (const sight::ClearInterval& i : column)
        out += i.top_m - i.bottom_m;
    return out;
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
                const double area = bg::area(union_of_outlines(room, seat));
                tests::check_close(ours[seat].hidden_fraction, area / room.opening.area_m2,
                                   tests::absolute(2e-5, "corners of the outlines, and columns"));
            }
        }
    }

    TEST_CASE("golden: the clear outline leaves what the union of the heads' outlines leaves") {
        for (const double rake : {0.0, 0.09, 0.2}) {
            tests::RoomShape shape;
            shape.rows = 8;
            shape.seats = 14;
            shape.rake_rad = rake;
            const auto room = tests::seated_room(shape, 7);
            for (const std::size_t seat : {std::size_t{20}, std::size_t{63}, std::size_t{105}}) {
                INFO("rake ", rake, " seat ", seat);
                const Polygons all = union_of_outlines(room, seat);
                const auto clear = sight::clear_outline(room.input(), static_cast<int>(seat));
                double clear_m2 = 0.0;
                for (std::size_t j = 0; j < clear.columns.size(); ++j) {
                    const double x =
                        clear.left_m + (static_cast<double>(j) + 0.5) * clear.column_width_m;
                    const double clear_m = clear_length(clear.columns[j]);
                    clear_m2 += clear_m * clear.column_width_m;
                    // A chord of 720 lies 1e-5 of the outline's radius within it; where the outline
                    // is upright, as far along a column as the root of that.
                    tests::check_close(
                        room.opening.height_m - clear_m, length_within(all, x),
                        tests::absolute(0.01, "corners where an outline is upright"));
                }
                tests::check_close(
                    1.0 - clear_m2 / room.opening.area_m2, bg::area(all) / room.opening.area_m2,
                    tests::absolute(0.001,
                                    "256 columns: half of what 128 leave at the worst seat"));
            }
        }
    }
}
