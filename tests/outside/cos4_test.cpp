// SPDX-License-Identifier: MIT
// Source: the cos^4 law of a thin lens; worked values for the corner of a 35 mm 1.85 aperture
// (0.825 x 0.446 in), f 30 mm: 21.654 deg, 0.7462; f 60 mm: 11.228 deg, 0.9256.
//
// The picture map carries the geometry and nothing else: an even flux density in the gate lights a
// square-on plane evenly however wide the field. The cos^4 law belongs to how evenly a lens passes
// the gate's light, that is into the layout's corner fraction, and arrives unchanged.
#include "light/illuminance.hpp"
#include "light/lit_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

namespace {

struct Case {
    double focal_length_m;
    double field_degrees;
    double cos4;
};
constexpr Case kCases[] = {{0.030, 21.654, 0.7462}, {0.060, 11.228, 0.9256}};

const glm::dvec2 kGate = {0.825 * base::kMetresPerInch, 0.446 * base::kMetresPerInch};

/// The lens square on to a plane, focused so far away that the gate stands at f behind it.
picture::PictureMap far_map(double focal_length_m) {
    geometry::Patch plane;
    picture::Pose pose = picture::aimed_pose({0.0, 0.0, 1000.0}, 0.0, 0.0, 0.0);
    pose.focal_length_m = focal_length_m;
    pose.image_distance_m = focal_length_m;
    return picture::PictureMap(plane, pose);
}

/// Illuminance at the picture's very corner over that at its centre.
double corner_over_centre(const picture::PictureMap& map, double corner_fraction) {
    const light::Illuminance illuminance({.map = map,
                                          .gate = {kGate, {0.0, 0.0}, corner_fraction},
                                          .part_size_m = kGate,
                                          .whole_flux_lm = 1000.0});
    const glm::dvec2 corner = *map.screen_from_gate(0.5 * (1.0 - 1e-9) * kGate);
    return illuminance.at_lx(corner) / illuminance.at_lx({0.0, 0.0});
}

}  // namespace

TEST_SUITE("outside/cos4") {
    TEST_CASE("golden: the corner ray leaves at the worked field angle") {
        for (const Case& c : kCases) {
            const glm::dvec3 corner = far_map(c.focal_length_m).ray(0.5 * kGate).direction;
            const double angle = geometry::angle_between(corner, {0.0, 0.0, -1.0});
            check_close(base::degrees(angle), c.field_degrees, printed_digits(3));
            check_close(std::pow(std::cos(angle), 4), c.cos4, printed_digits(4));
        }
    }

    TEST_CASE("an even gate lights a square-on plane evenly, without any cos^4 of its own") {
        for (const Case& c : kCases) {
            check_close(corner_over_centre(far_map(c.focal_length_m), 1.0), 1.0,
                        tests::relative(1e-12, "rounding"));
        }
    }

    TEST_CASE("golden: a corner fraction of cos^4 arrives at the picture's corner unchanged") {
        for (const Case& c : kCases) {
            const double cos4 = std::pow(std::cos(base::radians(c.field_degrees)), 4);
            check_close(corner_over_centre(far_map(c.focal_length_m), cos4), c.cos4,
                        printed_digits(4));
        }
    }
}
