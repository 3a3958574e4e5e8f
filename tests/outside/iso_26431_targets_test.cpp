// SPDX-License-Identifier: MIT
// Source: ISO 26431-1:2008 as reported by two texts (digital: 48.0 cd/m2 at the picture's centre,
// sides measured besides in a theatre, corners in a review room); SMPTE ST 196 and RP 51 (film:
// 55 cd/m2, no film in the gate, shutter running).
#include "light/light_study.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;
using tests::printed_digits;

TEST_SUITE("outside/iso_26431_targets") {
    TEST_CASE("golden: digital pictures aim at 48.0 cd/m2, film at 55") {
        check_close(light::target_luminance_cdm2(room::SourceKind::digital), 48.0,
                    printed_digits(1));
        check_close(light::target_luminance_cdm2(room::SourceKind::film), 55.0, printed_digits(0));
    }

    TEST_CASE("golden: luminance is read at the centre, four sides and four corners") {
        CHECK(light::point_place(light::kCentre) == glm::dvec2(0.0, 0.0));
        for (const auto side : {light::kLeft, light::kRight, light::kTop, light::kBottom}) {
            const glm::dvec2 place = light::point_place(side);
            CHECK(place.x * place.y == 0.0);  // on the middle line of the picture
            CHECK(std::max(std::abs(place.x), std::abs(place.y)) > 0.85);
        }
        for (const auto corner :
             {light::kTopLeft, light::kTopRight, light::kBottomRight, light::kBottomLeft}) {
            const glm::dvec2 place = light::point_place(corner);
            CHECK(std::min(std::abs(place.x), std::abs(place.y)) > 0.85);
        }
    }
}
