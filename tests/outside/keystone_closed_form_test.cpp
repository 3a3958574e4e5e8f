// SPDX-License-Identifier: MIT
// Sources: an amateur lighting page prints the width above over the width below, less one, as
// 100 (cos(B + A/2) / cos(B - A/2) - 1) %, B the axis's angle and A the full field angle; and the
// stretch in height of the SMPE Projection Committee, 1929 (Richardson, Handbook of Projection,
// 1930, p. 1234: about the secant, less one), in its exact form.
#include "base/units.hpp"
#include "picture/picture_map.hpp"
#include "picture/picture_shape.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

struct Case {
    double phi_rad;    ///< axis under the horizontal
    double alpha_rad;  ///< half vertical field
};

constexpr double kImageDistance = 0.05;

/// Upright screen 1 m away on the level, axis in the middle plane.
picture::PictureMap map_of(const Case& c) {
    picture::Pose pose = picture::aimed_pose({0.0, 0.0, 1.0}, 0.0, c.phi_rad, 0.0);
    pose.image_distance_m = kImageDistance;
    return {geometry::standing_patch({0.0, 0.0, 0.0}, 0.0, 0.0), pose};
}

picture::PictureShape shape_of(const Case& c) {
    const glm::dvec2 gate(0.02, 2.0 * kImageDistance * std::tan(c.alpha_rad));
    const auto shape = picture::picture_shape(map_of(c), gate);
    REQUIRE(shape);
    return *shape;
}

template <class Check>
void for_angles(Check check) {
    for (int phi = -20; phi <= 35; phi += 5) {
        for (int alpha = 1; alpha <= 13; alpha += 3) {
            INFO("phi ", phi, " deg, alpha ", alpha, " deg");
            check(Case{base::radians(phi), base::radians(alpha)});
        }
    }
}

}  // namespace

TEST_SUITE("outside/keystone_closed_form") {
    TEST_CASE("golden: width below over width above is a ratio of two cosines") {
        for_angles([](const Case& c) {
            const auto& k = shape_of(c).corners;
            const double ratio = (k[2].x - k[3].x) / (k[1].x - k[0].x);
            check_close(ratio,
                        std::cos(c.phi_rad - c.alpha_rad) / std::cos(c.phi_rad + c.alpha_rad),
                        relative(1e-12, "both exact, to rounding"));
        });
    }

    TEST_CASE("golden: keystone by the mean width is 2 tan(phi) tan(alpha)") {
        for_angles([](const Case& c) {
            check_close(shape_of(c).keystone_vertical,
                        2.0 * std::tan(c.phi_rad) * std::tan(c.alpha_rad),
                        absolute(1e-13, "both exact, to rounding"));
        });
    }

    TEST_CASE("golden: height stretches by cos q / (cos^2 q - sin^2 q tan^2 a)") {
        for_angles([](const Case& c) {
            const auto& k = shape_of(c).corners;
            const double square_on = 2.0 * std::tan(c.alpha_rad) / std::cos(c.phi_rad);
            const double cosine = std::cos(c.phi_rad);
            const double cross = std::sin(c.phi_rad) * std::tan(c.alpha_rad);
            check_close((k[0].y - k[3].y) / square_on, cosine / (cosine * cosine - cross * cross),
                        relative(1e-12, "both exact, to rounding"));
        });
    }
}
