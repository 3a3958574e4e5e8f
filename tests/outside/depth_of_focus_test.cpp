// SPDX-License-Identifier: MIT
// Source: the depth of focus on the image side of a lens, +-N c for a circle of confusion c at the
// f-number N and a far object; textbook optics, from memory. At a magnification M between gate and
// screen the same depth is +-N c (1 + 1 / M): the cone is that much longer than f.
#include "picture/focus.hpp"
#include "picture/throw.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

/// The blur in a gate that stands off by `off_m` from where the point at `distance_m` is sharp.
double blur_of_gate_off(double f, double f_number, double distance_m, double off_m) {
    const double gate_m = picture::image_distance(f, distance_m) + off_m;
    const double focused_m = f * gate_m / (gate_m - f);  // what that gate is sharp for
    return picture::gate_blur(f / f_number, f, distance_m, focused_m);
}

}  // namespace

TEST_SUITE("outside/depth_of_focus") {
    TEST_CASE("golden: a gate N c off from sharp blurs a far point by c, either way") {
        for (const double f_number : {1.7, 2.0, 2.8, 4.0}) {
            for (const double c : {5e-6, 10e-6, 25e-6}) {
                INFO("N ", f_number, ", c ", c);
                const double f = 0.05;
                const double far_m = 500.0;
                const Tolerance far_enough = relative(2e-4, "1 / M = f / (D - f) = 1e-4");
                check_close(blur_of_gate_off(f, f_number, far_m, f_number * c), c, far_enough);
                // Nearer to the lens by N c would be sharp beyond infinity where f^2 / D < N c, so
                // the other way is tried from a point that leaves room for it.
                const double near_m = 10.0;
                check_close(blur_of_gate_off(f, f_number, near_m, -f_number * c), c,
                            relative(6e-3, "1 / M = 5e-3"));
            }
        }
    }

    TEST_CASE("golden: at a finite throw the depth is N c (1 + 1 / M)") {
        const double f = 0.07;
        const double throw_m = 15.0;
        const double magnification = (throw_m - f) / f;
        const double c = 12e-6;
        const double depth = 2.2 * c * (1.0 + 1.0 / magnification);
        for (const double way : {-1.0, 1.0}) {
            check_close(blur_of_gate_off(f, 2.2, throw_m, way * depth), c,
                        relative(1e-9, "rounding of a difference of gate distances"));
        }
    }
}
