// SPDX-License-Identifier: MIT
#include "light/luminance_map.hpp"

#include "light/lit_room.hpp"
#include "support/check.hpp"

#include <algorithm>

using namespace rakeline;
using light::LuminanceMap;
using tests::check_close;
using tests::LitRoom;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");

LuminanceMap map_of(const LitRoom& r, std::size_t seat = 0) {
    const picture::PictureStudy pictures = tests::picture_of(r);
    REQUIRE(pictures.pictures.size() == 1);
    return light::map_picture({.screen = r.screen, .projectors = {r.projector}, .eyes = r.eyes},
                              pictures, pictures.pictures.front(), r.eyes.at(seat));
}

/// The grid's place at the halves of a reading point: steps of 1/30 across, 1/20 up.
const light::MapPlace& place_at(const LuminanceMap& map, glm::dvec2 halves) {
    return map.at(static_cast<int>(std::lround(30.0 + 30.0 * halves.x)),
                  static_cast<int>(std::lround(20.0 + 20.0 * halves.y)));
}

double area_of(const LuminanceMap& map) {
    double area = 0.0;
    for (const auto& [a, b, c] : map.triangles) {
        const auto at = [&](int i) { return map.places[static_cast<std::size_t>(i)].halves; };
        const glm::dvec2 u = at(b) - at(a), v = at(c) - at(a);
        area += 0.5 * (u.x * v.y - u.y * v.x);
    }
    return area;
}

LitRoom mirrored(LitRoom r) {
    r.projector.across_m *= -1.0;
    r.projector.aim.roll_rad *= -1.0;
    r.projector.flux.hot_spot_across *= -1.0;
    for (glm::dvec3& eye : r.eyes)
        eye.x *= -1.0;
    return r;
}

LitRoom random_room_with_gain(std::mt19937& random, int i) {
    LitRoom r = tests::random_room(random);
    r.screen.surface = i % 2 ? tests::random_lobe(random) : tests::random_measured(random);
    return r;
}

}  // namespace

TEST_SUITE("light/luminance_map") {
    TEST_CASE("golden: an even picture on a matte sheet is flux over area over pi all over") {
        // 12 m wide at 2.39 and 48 cd/m2 need 9085.6 lm at a gain of 1: worked by hand as
        // 48 pi 12 (12 / 2.39).
        LitRoom r = tests::square_on_film_room(12.0, 2.39);
        r.projector.flux.measured_flux_lm = 9085.6;
        const LuminanceMap map = map_of(r);
        REQUIRE(map.places.size() == std::size_t{61} * 41);
        for (const light::MapPlace& place : map.places)
            check_close(place.cdm2, 48.0, tests::relative(1e-5, "flux printed to 0.1 lm"));
        check_close(area_of(map), 4.0, kRounding);  // two halves each way
    }

    TEST_CASE("golden: a lamp that falls off to half in the corners") {
        // rel = 1 - 0.5 (r / r_corner)^2; the mean of r^2 over a rectangle is a third of
        // r_corner^2, so the mean of rel is 5/6 and the centre has 6/5 of the even picture's
        // luminance.
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.projector.flux.corner_fraction = 0.5;
        const LuminanceMap map = map_of(r);
        const double even = 10000.0 / 50.0 / base::kPi;
        for (const light::MapPlace& place : map.places) {
            const double x = place.halves.x, y = 0.5 * place.halves.y;
            check_close(place.cdm2, 1.2 * even * (1.0 - 0.5 * (x * x + y * y) / 1.25),
                        tests::relative(1e-8, "the edge is read 1e-9 inside"));
        }
    }

    TEST_CASE("the grid runs row by row from the lower left, and its ends are the opening's") {
        const LuminanceMap map = map_of(tests::square_on_film_room(10.0, 2.0));
        CHECK(map.places.front().halves == glm::dvec2(-1.0, -1.0));
        CHECK(map.places[60].halves == glm::dvec2(1.0, -1.0));
        CHECK(map.places[61].halves == glm::dvec2(-1.0, -0.95));
        CHECK(map.at(30, 20).halves == glm::dvec2(0.0));
        CHECK(map.at(60, 40).halves == glm::dvec2(1.0));
    }

    TEST_CASE("property: at the nine points the map reads what the study reads, to the bit") {
        std::mt19937 random(91);
        for (int i = 0; i < 12; ++i) {
            const LitRoom r = random_room_with_gain(random, i);
            const light::PictureLight light = tests::light_of(r).lights.at(0);
            for (const int seat : {0, 7}) {
                const LuminanceMap map = map_of(r, static_cast<std::size_t>(seat));
                for (int p = 0; p < light::kPointCount; ++p) {
                    const auto point = static_cast<light::PicturePoint>(p);
                    const light::MapPlace& place = place_at(map, light::point_place(point));
                    REQUIRE(place.halves == light::point_place(point));
                    CHECK(place.cdm2 == light::luminance_cdm2(light, seat, point));
                }
            }
        }
    }

    TEST_CASE("property: nothing on the map outshines the hot spot") {
        std::mt19937 random(92);
        for (int i = 0; i < 12; ++i) {
            const LitRoom r = random_room_with_gain(random, i);
            const light::PictureLight light = tests::light_of(r).lights.at(0);
            for (const std::size_t seat : {2, 9}) {
                REQUIRE(light.hot_spots.at(seat));
                const double most = light::range_of(map_of(r, seat)).most_cdm2;
                const double spot =
                    light.hot_spots[seat]->ratio *
                    light::luminance_cdm2(light, static_cast<int>(seat), light::kCentre);
                CHECK(most <= spot * (1.0 + 1e-3));  // the search's own reach
                CHECK(most >= spot * 0.98);          // a lobe's peak between two places
            }
        }
    }

    TEST_CASE("property: a room in the mirror has the mirrored map") {
        std::mt19937 random(93);
        for (int i = 0; i < 8; ++i) {
            const LitRoom r = random_room_with_gain(random, i);
            const LuminanceMap map = map_of(r, 3), other = map_of(mirrored(r), 3);
            for (int up = 0; up < LuminanceMap::kUp; ++up)
                for (int across = 0; across < LuminanceMap::kAcross; ++across)
                    check_close(other.at(LuminanceMap::kAcross - 1 - across, up).cdm2,
                                map.at(across, up).cdm2,
                                {1e-9, 1e-9, "rounding of the map between gate and screen"});
        }
    }

    TEST_CASE("where the light ends inside the opening, so does the lit part") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.projector.lit_width_m *= 0.83;  // between two places of the grid
        const LuminanceMap map = map_of(r);
        CHECK(map.at(0, 20).cdm2 == 0.0);
        CHECK(map.at(60, 20).cdm2 == 0.0);
        CHECK(map.at(30, 20).cdm2 > 0.0);
        check_close(area_of(map), 0.83 * 4.0, tests::relative(1e-5, "rim found to 1e-6 of a half"));
        const auto lit = std::ranges::count_if(
            map.places, [](const auto& p) { return p.cdm2 > 0.0 && std::abs(p.halves.x) > 0.82; });
        CHECK(lit == 2 * LuminanceMap::kUp);  // one rim place a row and side
    }

    TEST_CASE("an eye behind the sheet sees nothing") {
        LitRoom r = tests::square_on_film_room(10.0, 2.0);
        r.eyes.front().z = r.screen.setback_m - 1.0;
        const LuminanceMap map = map_of(r);
        CHECK(map.triangles.empty());
        CHECK(light::range_of(map).most_cdm2 == 0.0);
    }
}
