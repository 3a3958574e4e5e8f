// SPDX-License-Identifier: MIT
#include "light/opening_flux.hpp"

#include "light/lit_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using tests::check_close;
using tests::LitRoom;

TEST_SUITE("light/opening_flux") {
    TEST_CASE("a picture that just fills its opening loses nothing into the masking") {
        for (const double corner : {1.0, 0.7}) {
            LitRoom r = tests::square_on_film_room(10.0, 2.0);
            r.projector.flux.corner_fraction = corner;
            const auto light = tests::light_of(r).lights.front();
            check_close(light.opening_flux_lm, light.flux_lm,
                        tests::relative(1e-3, "midpoint rule, as documented"));
        }
    }

    TEST_CASE("an even picture that is larger by a tenth each way loses 1 - 1/1.21 of its light") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        const double wanted = tests::picture_of(r).pictures.front().focal_length_m;
        const double image = wanted / (1.0 - wanted / (r.projector.back_m - r.screen.setback_m));
        // Image distance shorter by 1.1: the same gate spreads over 1.1 times the width.
        const double shorter = image / 1.1;
        r.projector.formats.front().focal_length_m =
            shorter / (1.0 + shorter / (r.projector.back_m - r.screen.setback_m));
        const auto light = tests::light_of(r).lights.front();
        check_close(light.opening_flux_lm / light.flux_lm, 1.0 / 1.21,
                    tests::relative(1e-6, "even light, exact map; rounding of the focal length"));
    }

    TEST_CASE("property: what falls into the opening is no more than what leaves the port") {
        std::mt19937 random(841);
        for (int i = 0; i < 40; ++i) {
            const LitRoom r = tests::random_room(random);
            for (const auto& light : tests::light_of(r).lights) {
                CHECK(light.opening_flux_lm > 0.0);
                // Where the rim crosses the opening, cells along two edges may count half too much.
                CHECK(light.opening_flux_lm <= light.flux_lm * (1.0 + 1.0 / light::kFluxCells));
            }
        }
    }
}
