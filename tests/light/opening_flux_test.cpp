// SPDX-License-Identifier: MIT
#include "light/opening_flux.hpp"

#include "light/lit_room.hpp"
#include "support/check.hpp"

#include <cmath>
#include <random>

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
                        tests::relative(1e-12, "a plane: closed form"));
        }
    }

    TEST_CASE("what the law leaves dark in the gate brings nothing to the opening") {
        // Square, 2 a wide, hot spot in the middle of its left edge, corners 0.05 of a centred
        // peak: 1 - 0.95 r^2 / (2 a^2) is 0 beyond r = a sqrt(2 / 0.95) = 1.451 a, short of the far
        // edge.
        LitRoom r = tests::square_on_film_room(8.0, 1.0);
        r.projector.flux.corner_fraction = 0.05;
        r.projector.flux.hot_spot_across = -0.5;
        const picture::PictureStudy study = tests::picture_of(r);
        const light::Beam beam{.map = study.pictures.front().map,
                               .gate = light::gate_light(r.projector),
                               .part_size_m = study.pictures.front().gate_size_m,
                               .whole_flux_lm = 5000.0};
        const geometry::Rectangle all = study.openings.front().uv;
        const double reach = -4.0 + 4.0 * std::sqrt(2.0 / 0.95);
        const tests::Tolerance rounding = tests::relative(1e-12, "a plane: closed form");
        check_close(light::flux_onto(beam, all), 5000.0, rounding);
        check_close(light::flux_onto(beam, {all.left, reach + 1e-9, all.bottom, all.top}), 5000.0,
                    rounding);
        CHECK(light::flux_onto(beam, {all.left, reach - 0.1, all.bottom, all.top}) < 5000.0);
        check_close(light::flux_onto(beam, {reach + 0.1, all.right, -0.1, 0.1}), 0.0,
                    tests::absolute(1e-9, "rounding, of 5000 lm"));
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

    TEST_CASE("property: a rectangle cut in four takes in its parts' light, and all of it is all") {
        const unsigned seed = 841;
        INFO("seed ", seed);
        std::mt19937 random(seed);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (int i = 0; i < 40; ++i) {
            const LitRoom r = tests::random_room(random);
            const picture::PictureStudy study = tests::picture_of(r);
            const picture::ProjectedPicture& picture = study.pictures.front();
            const double sent = r.projector.flux.measured_flux_lm;
            const light::Beam beam{.map = picture.map,
                                   .gate = light::gate_light(r.projector),
                                   .part_size_m = picture.gate_size_m,
                                   .whole_flux_lm = sent};
            const geometry::Rectangle o = study.openings.front().uv;
            const glm::dvec2 cut(o.left + o.width() * unit(random),
                                 o.bottom + o.height() * unit(random));
            const double parts = light::flux_onto(beam, {o.left, cut.x, o.bottom, cut.y}) +
                                 light::flux_onto(beam, {cut.x, o.right, o.bottom, cut.y}) +
                                 light::flux_onto(beam, {o.left, cut.x, cut.y, o.top}) +
                                 light::flux_onto(beam, {cut.x, o.right, cut.y, o.top});
            const double whole = light::flux_onto(beam, o);
            CHECK(whole > 0.0);
            check_close(parts, whole, tests::relative(1e-6, "chords of the borders in the gate"));
            // Far wider than the picture: nothing is left for the masking.
            const geometry::Rectangle wide{o.left - 0.2 * o.width(), o.right + 0.2 * o.width(),
                                           o.bottom - o.height(), o.top + o.height()};
            const double used =
                light::use_fraction(light::gate_light(r.projector), picture.gate_size_m);
            check_close(light::flux_onto(beam, wide), sent * used,
                        tests::relative(1e-12, "the whole part in use, closed form"));
        }
    }
}
