// SPDX-License-Identifier: MIT
#include "picture/picture_shape.hpp"

#include "picture/random_room.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

#include <array>

using namespace rakeline;
using namespace rakeline::tests;
using picture::Coverage;
using picture::Opening;
using picture::PictureMap;
using picture::PictureShape;
using picture::ProjectedPicture;

namespace {

struct GaussPoint {
    double place;
    double weight;
};

/// Eight-point Gauss rule on -1 ... +1 (Abramowitz and Stegun, table 25.4).
constexpr std::array<GaussPoint, 8> kGauss{{{-0.960289856497536, 0.101228536290376},
                                            {-0.796666477413627, 0.222381034453374},
                                            {-0.525532409916329, 0.313706645877887},
                                            {-0.183434642495650, 0.362683783378362},
                                            {0.183434642495650, 0.362683783378362},
                                            {0.525532409916329, 0.313706645877887},
                                            {0.796666477413627, 0.222381034453374},
                                            {0.960289856497536, 0.101228536290376}}};

/// Integral of f over -1 ... +1 both ways.
template <class F>
double over_square(F f) {
    double sum = 0.0;
    for (const GaussPoint& x : kGauss) {
        for (const GaussPoint& y : kGauss)
            sum += x.weight * y.weight * f(x.place, y.place);
    }
    return sum;
}

/// A lens 20 m before an upright flat screen, aimed down, 20 by 10 mm gate.
PictureMap aimed_down(double pitch_rad) {
    picture::Pose pose = picture::aimed_pose({0.0, 8.0, 21.0}, 0.0, pitch_rad, 0.0);
    pose.focal_length_m = 0.05;
    pose.image_distance_m = picture::image_distance(0.05, 20.0 / std::cos(pitch_rad));
    return {geometry::standing_patch({0.0, 3.0, 1.0}, 0.0, 0.0), pose};
}
constexpr double kHalfHigh = 0.005;

PictureShape shape_of(const PictureMap& map) {
    const auto shape = picture::picture_shape(map, {0.02, 2.0 * kHalfHigh});
    REQUIRE(shape);
    return *shape;
}

/// The room's picture, and its opening.
struct Shown {
    ProjectedPicture picture;
    Opening opening;
};
Shown shown(const picture::PictureInput& in) {
    return {only_picture(in), picture::masked_opening(in.screen, in.formats[0])};
}

bool holds(const geometry::Rectangle& r, glm::dvec2 p) {
    return p.x >= r.left && p.x <= r.right && p.y >= r.bottom && p.y <= r.top;
}

constexpr int kGrid = 300;

/// Crop and overfill by asking a grid of gate points where their light falls.
Coverage counted_from_gate(const Shown& s) {
    Coverage out;
    const double cell = s.picture.gate_size_m.x * s.picture.gate_size_m.y / (kGrid * kGrid);
    for (int k = 0; k < kGrid * kGrid; ++k) {
        const double x = 2.0 * ((k % kGrid) + 0.5) / kGrid - 1.0;
        const double y = 2.0 * ((k / kGrid) + 0.5) / kGrid - 1.0;
        const glm::dvec2 gate = gate_point(s.picture, x, y);
        if (holds(s.opening.uv, *s.picture.map.screen_from_gate(gate))) continue;
        out.crop += 1.0 / (kGrid * kGrid);
        out.overfill += *s.picture.map.area_ratio(gate) * cell / s.opening.area_m2;
    }
    return out;
}

/// Dark part of the opening by asking a grid of its points whether the gate lights them.
double counted_dark(const Shown& s) {
    const glm::dvec2 h = 0.5 * s.picture.gate_size_m;
    int dark = 0;
    for (int k = 0; k < kGrid * kGrid; ++k) {
        const glm::dvec2 step(((k % kGrid) + 0.5) / kGrid, ((k / kGrid) + 0.5) / kGrid);
        const geometry::Rectangle& r = s.opening.uv;
        const auto gate = s.picture.map.gate_from_screen(
            {r.left + step.x * r.width(), r.bottom + step.y * r.height()});
        if (!gate || !holds({-h.x, h.x, -h.y, h.y}, *gate)) ++dark;
    }
    return static_cast<double>(dark) / (kGrid * kGrid);
}

}  // namespace

TEST_SUITE("picture/picture_shape") {
    TEST_CASE("square-on there is no keystone, no slope and no bow") {
        const PictureShape s = shape_of(aimed_down(0.0));
        const Tolerance rounding = absolute(1e-13, "rounding");
        check_close(s.keystone_vertical, 0.0, rounding);
        check_close(s.keystone_horizontal, 0.0, rounding);
        check_close(s.side_slope_rad, 0.0, rounding);
        CHECK(s.bow_top_m == 0.0);
        CHECK(s.bow_bottom_m == 0.0);
    }

    TEST_CASE("keystone is the closed form of two cosines, and grows with the angle") {
        double last = 0.0;
        for (int deg = 1; deg <= 30; ++deg) {
            const double phi = base::radians(deg);
            const PictureMap map = aimed_down(phi);
            const double alpha = std::atan(kHalfHigh / map.pose().image_distance_m);
            // w_bottom / w_top = cos(phi - alpha) / cos(phi + alpha)
            const double ratio = std::cos(phi - alpha) / std::cos(phi + alpha);
            const double keystone = shape_of(map).keystone_vertical;
            check_close(keystone, 2.0 * (ratio - 1.0) / (ratio + 1.0), relative(1e-11, "rounding"));
            CHECK(keystone > last);
            last = keystone;
        }
    }

    TEST_CASE("a projector above makes the picture wider below, its sides leaning in upward") {
        const PictureShape s = shape_of(aimed_down(base::radians(12)));
        CHECK(s.keystone_vertical > 0.0);
        const double left =
            std::atan2(s.corners[0].x - s.corners[3].x, s.corners[0].y - s.corners[3].y);
        CHECK(left > 0.0);
        check_close(s.side_slope_rad, left, relative(1e-10, "both sides lean alike"));
    }

    TEST_CASE("a projector to the left makes the picture higher on the right") {
        picture::Pose pose = picture::aimed_pose({-5, 3, 21}, std::atan(0.25), 0.0, 0.0);
        const PictureMap map(geometry::standing_patch({0, 3, 1}, 0.0, 0.0), pose);
        CHECK(shape_of(map).keystone_horizontal > 0.01);
    }

    TEST_CASE("a curved screen met from above bows the picture's edges downward") {
        // Beam from above onto a screen whose sides come forward: the sides are met sooner, so
        // higher up; the middle of each edge hangs below the line between its corners.
        PictureMap map = aimed_down(base::radians(15));
        map = {geometry::standing_patch({0, 3, 1}, 25.0, 0.0), map.pose()};
        const PictureShape s = shape_of(map);
        CHECK(s.bow_top_m < -1e-3);
        CHECK(s.bow_bottom_m < s.bow_top_m);
    }

    TEST_CASE("a bow is the edge's middle over its corners in a picture without roll") {
        PictureMap map = aimed_down(base::radians(15));
        map = {geometry::standing_patch({0, 3, 1}, 25.0, 0.0), map.pose()};
        const PictureShape s = shape_of(map);
        const double top = map.screen_from_gate({0.0, kHalfHigh})->y - s.corners[0].y;
        const double bottom = map.screen_from_gate({0.0, -kHalfHigh})->y - s.corners[3].y;
        check_close(s.bow_top_m, top, relative(1e-12, "rounding"));
        check_close(s.bow_bottom_m, bottom, relative(1e-12, "rounding"));
    }

    TEST_CASE("property: a bow is the greatest distance of a finely sampled edge") {
        Dice dice(51);
        for (int i = 0; i < 300; ++i) {
            INFO("seed 51, case ", i);
            const ProjectedPicture p = only_picture(random_room(dice));
            const glm::dvec2 a = p.shape.corners[3];
            const glm::dvec2 chord = p.shape.corners[2] - a;
            const glm::dvec2 up = glm::dvec2(-chord.y, chord.x) / glm::length(chord);
            double best = 0.0;
            for (int k = 1; k < 2000; ++k) {
                const auto uv = p.map.screen_from_gate(gate_point(p, k / 1000.0 - 1.0, -1.0));
                const double rise = glm::dot(*uv - a, up);
                if (std::abs(rise) > std::abs(best)) best = rise;
            }
            check_close(p.shape.bow_bottom_m, best,
                        {1e-12, 2e-5, "parabola through 64 samples against 2000 samples"});
        }
    }

    TEST_CASE("the outline runs counter-clockwise through the corners") {
        Dice dice(52);
        for (int i = 0; i < 100; ++i) {
            const PictureShape s = only_picture(random_room(dice)).shape;
            const auto n = static_cast<std::size_t>(picture::kSegmentsPerEdge);
            REQUIRE(s.outline.size() == 4 * n);
            CHECK(s.outline[0] == s.corners[3]);
            CHECK(s.outline[n] == s.corners[2]);
            CHECK(s.outline[2 * n] == s.corners[1]);
            CHECK(s.outline[3 * n] == s.corners[0]);
            CHECK(geometry::signed_area(s.outline) > 0.0);
            CHECK(s.corners[1].x > s.corners[0].x);
            CHECK(s.corners[0].y > s.corners[3].y);
        }
    }

    TEST_CASE("property: the area ratio over the gate sums up to the picture's area") {
        Dice dice(53);
        for (int i = 0; i < 1000; ++i) {
            INFO("seed 53, case ", i);
            const ProjectedPicture p = only_picture(random_room(dice));
            const double quarter_gate = 0.25 * p.gate_size_m.x * p.gate_size_m.y;
            const double sum = quarter_gate * over_square([&](double x, double y) {
                                   return *p.map.area_ratio(gate_point(p, x, y));
                               });
            check_close(geometry::signed_area(p.shape.outline), sum,
                        relative(p.map.surface().flat() ? 1e-9 : 2e-5,
                                 "eight-point Gauss rule; polyline rim on a cylinder"));
        }
    }

    TEST_CASE("square-on and twice too large each way: closed forms of covering") {
        const PictureMap map = aimed_down(0.0);
        const PictureShape s = shape_of(map);
        const glm::dvec2 half = 0.5 * s.corners[1];  // top right, less the aim's centre below
        const glm::dvec2 middle = 0.5 * (s.corners[0] + s.corners[2]);
        const glm::dvec2 reach = 0.5 * (s.corners[1] - middle);
        CHECK(half.x > 0.0);
        const Opening o{
            .uv = {middle.x - reach.x, middle.x + reach.x, middle.y - reach.y, middle.y + reach.y},
            .width_m = 2.0 * reach.x,
            .height_m = 2.0 * reach.y,
            .area_m2 = 4.0 * reach.x * reach.y};
        const Coverage c = picture::coverage(map, {0.02, 2.0 * kHalfHigh}, s, o);
        check_close(c.overfill, 3.0, relative(1e-12, "rounding"));
        check_close(c.crop, 0.75, relative(1e-12, "rounding"));
        check_close(c.uncovered, 0.0, absolute(1e-12, "rounding"));
    }

    TEST_CASE("a picture beside the opening is all cut and leaves it all dark") {
        const PictureMap map = aimed_down(0.0);
        const Opening o{.uv = {50, 60, 0, 5}, .width_m = 10, .height_m = 5, .area_m2 = 50};
        const PictureShape s = shape_of(map);
        const Coverage c = picture::coverage(map, {0.02, 2.0 * kHalfHigh}, s, o);
        CHECK(c.crop == 1.0);
        CHECK(c.uncovered == 1.0);
        check_close(c.overfill, geometry::signed_area(s.outline) / 50.0,
                    relative(1e-12, "rounding"));
    }

    TEST_CASE("property: covering agrees with counting points of gate and opening") {
        Dice dice(54);
        for (int i = 0; i < 40; ++i) {
            INFO("seed 54, case ", i);
            picture::PictureInput in = random_room(dice);
            in.projectors[0].formats[0].gate_width_m *= dice.between(0.9, 1.3);
            in.projectors[0].formats[0].focal_length_m =
                only_picture(in).focal_length_m * dice.between(0.8, 1.1);
            const Shown s = shown(in);
            const Coverage counted = counted_from_gate(s);
            const Tolerance grid = absolute(5e-3, "cells that a rim cuts, 300 x 300 grid");
            check_close(s.picture.crop, counted.crop, grid);
            check_close(s.picture.overfill, counted.overfill, {5e-3, 1e-2, grid.reason});
            check_close(s.picture.uncovered, counted_dark(s), grid);
        }
    }

    TEST_CASE("property: where the opening is covered, crop is what the opening does not use") {
        Dice dice(55);
        int covered = 0;
        for (int i = 0; i < 500; ++i) {
            INFO("seed 55, case ", i);
            picture::PictureInput in = random_room(dice);
            in.projectors[0].formats[0].focal_length_m = only_picture(in).focal_length_m * 0.7;
            const Shown s = shown(in);
            if (s.picture.uncovered > 0.0) continue;
            ++covered;
            // Second route: gate area per opening area, summed over the opening.
            const double used = over_square([&](double x, double y) {
                const glm::dvec2 h(0.5 * s.opening.uv.width(), 0.5 * s.opening.uv.height());
                const auto gate =
                    s.picture.map.gate_from_screen(s.opening.uv.centre() + h * glm::dvec2(x, y));
                return h.x * h.y / *s.picture.map.area_ratio(*gate);
            });
            const glm::dvec2 gate = s.picture.gate_size_m;
            check_close(s.picture.crop, 1.0 - used / (gate.x * gate.y),
                        absolute(2e-5, "the polyline error that coverage states"));
        }
        CHECK(covered > 100);
    }

    TEST_CASE("refuses: a picture with a corner off the surface has no shape") {
        // 80 degrees off: the beam's right side runs past the plane's horizon.
        picture::Pose pose = picture::aimed_pose({0, 3, 11}, base::radians(80), 0.0, 0.0);
        const PictureMap map(geometry::standing_patch({0, 3, 1}, 0.0, 0.0), pose);
        CHECK_FALSE(picture::picture_shape(map, {0.02, 0.01}));
        CHECK(picture::picture_shape(map, {0.01, 0.01}));
    }
}
