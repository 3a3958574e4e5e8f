// SPDX-License-Identifier: MIT
#include "light/hot_spot.hpp"

#include "light/light_study.hpp"
#include "light/lit_point.hpp"
#include "light/lit_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using light::HotSpot;
using tests::check_close;
using tests::LitRoom;

namespace {

const tests::Tolerance kPlace = tests::absolute(1.5e-3, "last steps of the search, slant and all");

std::vector<std::optional<HotSpot>> spots_of(const LitRoom& r) {
    const light::LightStudy study = tests::light_of(r);
    REQUIRE(study.lights.size() == 1);
    return study.lights.front().hot_spots;
}

/// A lamp off its centre on a matte screen of the gate's shape, square on: the brightest place of
/// the screen is the image of the gate's, for every seat.
LitRoom off_centre(double across, double up) {
    LitRoom r = tests::square_on_film_room(10.0, 2.0);
    r.projector.flux.corner_fraction = 0.5;
    r.projector.flux.hot_spot_across = across;
    r.projector.flux.hot_spot_up = up;
    return r;
}

/// Illuminance times gain anywhere in the picture of a room, from their own formulas.
class Light {
public:
    Light(const LitRoom& r, const glm::dvec3& eye)
        : pictures_(tests::picture_of(r)),
          lux_({.map = picture().map,
                .gate = light::gate_light(r.projector),
                .part_size_m = picture().gate_size_m,
                .whole_flux_lm = 1000.0}),
          model_(r.screen.surface, 0.0),
          eye_(eye) {}

    double at(double across, double up) const {
        const auto& opening = pictures_.openings.front();
        const glm::dvec3 place = picture::opening_point(pictures_.surface, opening, across, up);
        const glm::dvec2 uv = geometry::coordinates_of(pictures_.surface, place);
        return lux_.at_lx(uv) *
               model_.gain({.incoming = glm::normalize(place - picture().map.pose().lens),
                            .toward_eye = glm::normalize(eye_ - place),
                            .normal = geometry::normal_at(pictures_.surface, uv)});
    }

private:
    const picture::ProjectedPicture& picture() const { return pictures_.pictures.front(); }

    picture::PictureStudy pictures_;
    light::Illuminance lux_;
    light::GainModel model_;
    glm::dvec3 eye_;
};

/// Brightest of many places toward an eye, over the centre.
double brute_force(const LitRoom& r, const glm::dvec3& eye) {
    const Light light(r, eye);
    double brightest = 0.0;
    for (double across = -1.0; across <= 1.0; across += 0.01) {
        for (double up = -1.0; up <= 1.0; up += 0.02)
            brightest = std::max(brightest, light.at(across, up));
    }
    return brightest / light.at(0.0, 0.0);
}

}  // namespace

TEST_SUITE("light/hot_spot") {
    TEST_CASE("an even picture has its hot spot in the middle, at the centre's luminance") {
        const auto spots = spots_of(tests::square_on_film_room(10.0, 1.85));
        REQUIRE(spots.size() == 1);
        REQUIRE(spots.front());
        CHECK(spots.front()->place == glm::dvec2(0.0));
        CHECK(spots.front()->ratio == 1.0);
    }

    TEST_CASE("golden: on a matte screen square on, the hot spot is the lamp's own") {
        // rel = 1 - (1 - 0.5) (r / r_corner)^2, so the peak over the centre is 1 / rel(centre);
        // r_corner^2 = (1/4 + 1/16) widths^2 at a ratio of 2.
        for (const glm::dvec2 at : {glm::dvec2(0.2, 0.0), {-0.1, 0.3}, {0.0, -0.25}}) {
            const auto spots = spots_of(off_centre(at.x, at.y));
            REQUIRE(spots.front());
            check_close(spots.front()->place.x, at.x, kPlace);
            check_close(spots.front()->place.y, at.y, kPlace);
            const double r2 = at.x * at.x + 0.25 * at.y * at.y;
            check_close(spots.front()->ratio, 1.0 / (1.0 - 0.5 * r2 / (0.25 + 0.0625)),
                        tests::relative(1e-4, "flat top: the place's error squared"));
        }
    }

    TEST_CASE("a mirror lobe draws the hot spot to where the eye sees the lens reflected") {
        // Even light on a flat screen, lens and eye square to it: the reflected lens stands where
        // the straight line from the lens's image behind the screen to the eye passes the sheet.
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        std::mt19937 random(70);
        r.screen.surface = tests::random_measured(random);
        r.screen.surface.lobe = room::LobeKind::mirror;
        r.screen.surface.retro_gain = 0.0;
        const double lens_m = r.projector.back_m - r.screen.setback_m;
        const glm::dvec3 eye{3.0, r.projector.up_m, 9.0};
        r.eyes = {eye};
        const auto spots = spots_of(r);
        REQUIRE(spots.front());
        const double eye_m = eye.z - r.screen.setback_m;
        const double part = lens_m / (lens_m + eye_m);
        check_close(spots.front()->place.x, part * eye.x / 10.0, kPlace);
        check_close(spots.front()->place.y, 0.0, kPlace);
        CHECK(spots.front()->ratio > 1.0);
    }

    TEST_CASE(
        "property: no place of a fine grid looks brighter, and the spot lies in the opening") {
        std::mt19937 random(71);
        for (int i = 0; i < 12; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = i % 2 ? tests::random_lobe(random) : tests::random_measured(random);
            const auto spots = spots_of(r);
            REQUIRE(spots.size() == r.eyes.size());
            for (const std::size_t seat : {0, 7}) {
                REQUIRE(spots[seat]);
                CHECK(std::abs(spots[seat]->place.x) <= 0.5);
                CHECK(std::abs(spots[seat]->place.y) <= 0.5);
                const double brute = brute_force(r, r.eyes[seat]);
                CHECK(spots[seat]->ratio >= brute * (1.0 - 1e-3));
                CHECK(spots[seat]->ratio <= brute * 1.01);
            }
        }
    }

    TEST_CASE("property: the brightest place near by is the one found, to 1/500 of the width") {
        std::mt19937 random(73);
        constexpr double kStep = 1e-3;  // of half the width
        for (int i = 0; i < 12; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = i % 2 ? tests::random_lobe(random) : tests::random_measured(random);
            const HotSpot spot = spots_of(r).front().value();
            const Light light(r, r.eyes.front());
            glm::dvec2 best{0.0};
            double most = 0.0;
            for (int up = -20; up <= 20; ++up) {
                for (int across = -20; across <= 20; ++across) {
                    const glm::dvec2 at =
                        glm::clamp(2.0 * spot.place + kStep * glm::dvec2(across, up), -1.0, 1.0);
                    const double here = light.at(at.x, at.y);
                    if (here <= most) continue;
                    most = here;
                    best = 0.5 * at;
                }
            }
            CHECK(glm::length(best - spot.place) <= 2e-3);
            // The top is flat: its height is met far better than its place.
            CHECK(light.at(2.0 * spot.place.x, 2.0 * spot.place.y) >= most * (1.0 - 1e-5));
        }
    }

    TEST_CASE("property: a room in the mirror has its hot spots mirrored") {
        std::mt19937 random(72);
        for (int i = 0; i < 12; ++i) {
            LitRoom r = tests::random_room(random);
            r.screen.surface = tests::random_measured(random);
            const auto spots = spots_of(r);
            r.projector.across_m *= -1.0;
            r.projector.aim.roll_rad *= -1.0;
            r.projector.flux.hot_spot_across *= -1.0;
            for (glm::dvec3& eye : r.eyes)
                eye.x *= -1.0;
            const auto mirrored = spots_of(r);
            for (std::size_t seat = 0; seat < spots.size(); ++seat) {
                REQUIRE(spots[seat]);
                REQUIRE(mirrored[seat]);
                check_close(mirrored[seat]->ratio, spots[seat]->ratio,
                            tests::relative(1e-4, "flat top: the place's error squared"));
            }
        }
    }

    TEST_CASE("a dark centre has no hot spot over it") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.projector.formats.front().focal_length_m = 0.2;
        r.projector.aim.mode = room::AimMode::angles;
        r.projector.aim.yaw_rad = base::radians(7.0);
        CHECK_FALSE(spots_of(r).front());
    }
}
