// SPDX-License-Identifier: MIT
#include "light/stray_light.hpp"

#include "light/room_trace.hpp"
#include "support/check.hpp"

using namespace rakeline;
using light::Enclosure;
using light::StrayRoom;
using tests::check_close;
using tests::TracedRoom;

namespace {

const tests::Tolerance kRounding = tests::relative(1e-12, "rounding");
const glm::dvec3 kFront{0.0, 0.0, 1.0};

StrayRoom random_room(std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    StrayRoom room;
    room.width_m = 6.0 + 20.0 * unit(random);
    room.length_m = 8.0 + 30.0 * unit(random);
    room.height_m = 3.0 + 10.0 * unit(random);
    room.splay_rad = 0.1 * unit(random);
    room.seated_floor_m2 = 0.6 * room.width_m * room.length_m * unit(random);
    room.light.wall_reflectance = 0.9 * unit(random);
    room.light.ceiling_reflectance = 0.9 * unit(random);
    room.light.floor_reflectance = 0.9 * unit(random);
    room.light.audience_reflectance = 0.9 * unit(random);
    for (int i = 0; i < 3; ++i) {
        room.light.lights.push_back({.name = std::to_string(i),
                                     .across_m = room.width_m * (unit(random) - 0.5),
                                     .up_m = room.height_m * unit(random),
                                     .back_m = room.length_m * unit(random),
                                     .flux_lm = 20.0 * unit(random)});
    }
    return room;
}

/// Walls, ceiling and floor alike.
StrayRoom evenly(StrayRoom room, double reflectance) {
    room.light.wall_reflectance = room.light.ceiling_reflectance = reflectance;
    room.light.floor_reflectance = room.light.audience_reflectance = reflectance;
    return room;
}

/// A photon in a room where each surface lands light on all by their areas (a sphere does), walked
/// until it is swallowed: what falls on the picture after a bounce at the least.
double walked_on_picture(const Enclosure& e, int photons, std::mt19937& random) {
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    const double share = e.picture_area_m2 / e.area_m2;
    const double others = (e.mean_reflectance - share * e.picture_reflectance) / (1.0 - share);
    double sum = 0.0;
    for (int i = 0; i < photons; ++i) {
        for (int bounce = 0;; ++bounce) {
            const bool picture = unit(random) < share;
            if (picture && bounce > 0) sum += 1.0;
            if (unit(random) >= (picture ? e.picture_reflectance : others)) break;
        }
    }
    return sum / (photons * e.picture_area_m2);
}

}  // namespace

TEST_SUITE("light/stray_light") {
    TEST_CASE("golden: one candela at one metre gives one lux, half of it at 60 degrees") {
        // Definition of the lux and of the candela (SI Brochure, 9th edition); cosine law.
        const room::HouseLight candela{
            .name = "c", .up_m = 0.0, .back_m = 1.0, .flux_lm = 4.0 * base::kPi};
        check_close(light::direct_lx(candela, {}, kFront), 1.0, kRounding);
        const glm::dvec3 slanted{std::sin(base::kPi / 3.0), 0.0, std::cos(base::kPi / 3.0)};
        check_close(light::direct_lx(candela, {}, slanted), 0.5, kRounding);
        CHECK(light::direct_lx(candela, {}, -kFront) == 0.0);
    }

    TEST_CASE("golden: the multiplier of an integrating sphere, 49 at 98 % reflectance") {
        // Sphere multiplier r / (1 - r), integrating-sphere theory, from memory.
        const Enclosure sphere{.area_m2 = 2.0, .mean_reflectance = 0.98};
        check_close(light::returned_lx(sphere, 1.0), 49.0 / 2.0, kRounding);
    }

    TEST_CASE("areas of a hall, worked by hand") {
        StrayRoom room{.width_m = 10.0, .length_m = 20.0, .height_m = 5.0, .seated_floor_m2 = 80.0};
        room.light = {{}, 0.1, 0.2, 0.3, 0.4};
        // Walls 2 x 100 + 50 + (50 - 30) = 270, ceiling 200, bare floor 120, seats 80, picture 30.
        const Enclosure e = light::enclosure(room, 30.0, 0.9);
        check_close(e.area_m2, 700.0, kRounding);
        check_close(e.mean_reflectance, (135.0 + 27.0) / 700.0, kRounding);
        check_close(light::floor_reflectance(room), 0.6 * 0.3 + 0.4 * 0.4, kRounding);
        check_close(light::bounce_fraction(e, {.reflected_lm = 3.0, .returned_lm = 0.6}),
                    0.9 * (0.02 + 3.0 * (162.0 / 700.0) / (700.0 * 538.0 / 700.0)), kRounding);
        CHECK(light::enclosure(room, 30.0, 1.4).picture_reflectance == 1.0);
    }

    TEST_CASE("an all black hall leaves the direct light alone") {
        std::mt19937 random(851);
        for (int i = 0; i < 20; ++i) {
            const StrayRoom room = evenly(random_room(random), 0.0);
            const room::ScreenSurface matte;
            const light::GainModel gain(matte, 0.0);
            const glm::dvec3 centre{0.0, 2.0, 1.0};
            const auto stray =
                light::stray_on_screen(room, light::enclosure(room, 12.0, 0.0),
                                       {.place = centre, .eye = glm::dvec3(0, 1, 9)}, gain);
            double direct = 0.0;
            for (const room::HouseLight& light : room.light.lights)
                direct += light::direct_lx(light, centre, kFront);
            CHECK(stray.stray_lx() == direct);
            CHECK(stray.returned_lx == 0.0);
            CHECK(stray.bounce_fraction == 0.0);
            check_close(stray.stray_cdm2(), direct / base::kPi, kRounding);
        }
    }

    TEST_CASE("property: what the surfaces swallow is what the lights send") {
        std::mt19937 random(852);
        for (int i = 0; i < 100; ++i) {
            const Enclosure e = light::enclosure(random_room(random), 15.0, 0.9);
            // First hits leave 1 - r of a lumen, the returned light on all surfaces the same of it.
            const double swallowed =
                (1.0 - e.mean_reflectance) * (1.0 + light::returned_lx(e, 1.0) * e.area_m2);
            check_close(swallowed, 1.0, kRounding);
        }
    }

    TEST_CASE("property: more light, lighter walls and a smaller hall never make less of it") {
        std::mt19937 random(853);
        const room::ScreenSurface matte;
        const light::GainModel gain(matte, 0.0);
        const auto stray = [&](const StrayRoom& room) {
            return light::stray_on_screen(
                room, light::enclosure(room, 8.0, 1.0),
                {.place = {0.0, 1.5, 0.5}, .picture_size = {4.0, 2.0}, .eye = glm::dvec3(0, 1, 9)},
                gain);
        };
        for (int i = 0; i < 100; ++i) {
            const StrayRoom room = random_room(random);
            StrayRoom twice = room, lighter = room, longer = room;
            for (room::HouseLight& light : twice.light.lights)
                light.flux_lm *= 2.0;
            lighter.light.wall_reflectance += 0.02;
            longer.length_m *= 1.2;
            check_close(stray(twice).stray_lx(), 2.0 * stray(room).stray_lx(), kRounding);
            check_close(stray(twice).stray_cdm2(), 2.0 * stray(room).stray_cdm2(), kRounding);
            CHECK(stray(twice).bounce_fraction == stray(room).bounce_fraction);
            CHECK(stray(lighter).stray_lx() > stray(room).stray_lx());
            CHECK(stray(lighter).bounce_fraction > stray(room).bounce_fraction);
            CHECK(stray(evenly(longer, 0.1)).bounce_fraction <
                  stray(evenly(room, 0.1)).bounce_fraction);
        }
    }

    TEST_CASE("property: where every bounce lands evenly, photons walked one by one agree") {
        std::mt19937 random(854);
        for (int i = 0; i < 6; ++i) {
            const Enclosure e = light::enclosure(random_room(random), 40.0, 0.9);
            constexpr int kPhotons = 100000;
            const double walked = walked_on_picture(e, kPhotons, random);
            const double model = light::returned_lx(e, 1.0);
            const double hits = model * e.picture_area_m2 * kPhotons;
            check_close(walked, model,
                        tests::relative(6.0 / std::sqrt(hits),
                                        "six sampling errors; one photon "
                                        "can hit the picture twice"));
        }
    }

    TEST_CASE("golden: opposite faces of a cube see a fifth of each other's light") {
        // View factors of a unit cube: opposite faces 0.1998, adjoining ones 0.2000 (textbooks of
        // heat transfer, from memory). From one point: the face's middle sees the opposite one by
        // 0.2394 (Lambert's polygon by hand: 8/(2 pi) * 0.5/sqrt(1.25) * atan(0.5/sqrt(1.25))).
        const light::UprightPicture face{{0.0, 0.5, 0.0}, {1.0, 1.0}};
        const double middle =
            8.0 / (2.0 * base::kPi) * 0.5 / std::sqrt(1.25) * std::atan(0.5 / std::sqrt(1.25));
        check_close(light::seen_fraction({0.0, 0.5, 1.0}, {0.0, 0.0, -1.0}, face), middle,
                    kRounding);
        double opposite = 0.0;
        constexpr int kCells = 40;
        for (int i = 0; i < kCells * kCells; ++i) {
            const double x = (i % kCells + 0.5) / kCells - 0.5, y = (i / kCells + 0.5) / kCells;
            opposite += light::seen_fraction({x, y, 1.0}, {0.0, 0.0, -1.0}, face);
        }
        check_close(opposite / (kCells * kCells), 0.1998, tests::printed_digits(4));
    }

    TEST_CASE("property: all of the picture's light lands in the hall") {
        std::mt19937 random(855);
        for (int i = 0; i < 30; ++i) {
            const StrayRoom room = random_room(random);
            const light::UprightPicture picture{{0.0, 0.5 * room.height_m, 0.5},
                                                {0.7 * room.width_m, 0.6 * room.height_m}};
            check_close(light::first_bounce(room, picture).landed_lm,
                        picture.size.x * picture.size.y,
                        tests::relative(0.02, "midpoint rule beside the picture's edges"));
        }
    }

    TEST_CASE("walls that splay out catch as much of it as straight ones") {
        StrayRoom room;
        room.splay_rad = base::radians(30.0);
        const light::UprightPicture picture{{0.0, 3.2, 0.5}, {6.0, 3.0}};
        // Walls at 30 degrees to the axis are longer by 1/cos 30, by 15 %.
        check_close(light::first_bounce(room, picture).landed_lm, 18.0,
                    tests::relative(0.01, "midpoint rule, far from the picture's edges"));
    }

    TEST_CASE(
        "stray light toward an eye, worked by hand: direct by gain, returned by reflectance") {
        StrayRoom room;
        // 4 m before the screen's middle and 3 m beside it: r = 5 m, cos i = 0.8,
        // E = 10 x 0.8 / (4 pi 25) = 0.0254648 lx.
        room.light.lights = {{.across_m = 3.0, .up_m = 3.0, .back_m = 4.0, .flux_lm = 10.0}};
        room::ScreenSurface grey;
        grey.lobe = room::LobeKind::matte;
        grey.peak_gain = 0.6;
        light::ScreenSpot spot;
        spot.place = {0.0, 3.0, 0.0};
        spot.picture_size = {8.0, 4.0};
        const Enclosure e = light::enclosure(room, 32.0, 0.5);
        const light::GainModel model(grey, 0.0);
        const light::StrayOnScreen dark = light::stray_on_screen(room, e, spot, model);
        check_close(dark.direct_lx, 0.0254648, tests::printed_digits(7));
        CHECK(dark.stray_cdm2() == 0.0);  // without an eye
        spot.eye = {0.0, 1.2, 10.0};
        const light::StrayOnScreen seen = light::stray_on_screen(room, e, spot, model);
        check_close(seen.direct_cdm2, 0.0254648 * 0.6 / base::kPi,
                    tests::relative(1e-5, "digits of the lux above"));
        check_close(seen.returned_cdm2, light::returned_lx(e, 10.0) * 0.5 / base::kPi, kRounding);
    }

    TEST_CASE("seats on a balcony add surface of their own") {
        StrayRoom room;
        const Enclosure bare = light::enclosure(room, 20.0, 0.9);
        room.seated_balcony_m2 = 60.0;
        const Enclosure with = light::enclosure(room, 20.0, 0.9);
        check_close(with.area_m2, bare.area_m2 + 60.0, kRounding);
        check_close(with.area_m2 * with.mean_reflectance,
                    bare.area_m2 * bare.mean_reflectance + 60.0 * room.light.audience_reflectance,
                    kRounding);
    }

    TEST_CASE("property: boxes traced photon by photon keep near the model, as it says") {
        // Bounces of a house light, and later ones of the picture's, land evenly in the model. Real
        // boxes differ by how surfaces see each other, by as much as the header says.
        const TracedRoom rooms[] = {
            {{17.0, 12.0, 29.0}, 0.08, 0.05, 0.1, 0.9, {-7.5, 1.2}, {7.5, 8.0}},
            {{17.0, 10.0, 25.0}, 0.08, 0.05, 0.1, 0.9, {-8.0, 1.2}, {8.0, 8.0}},
            {{6.2, 3.3, 9.4}, 0.08, 0.05, 0.1, 0.9, {-2.4, 0.7}, {2.4, 2.7}},
            {{10.0, 6.0, 16.0}, 0.4, 0.6, 0.3, 0.9, {-4.0, 1.0}, {4.0, 4.4}},
            {{8.0, 8.0, 8.0}, 0.5, 0.5, 0.5, 0.5, {-2.0, 2.0}, {2.0, 6.0}},
        };
        constexpr int kPhotons = 200000;
        unsigned seed = 860;
        for (const TracedRoom& r : rooms) {
            tests::RoomTrace trace(r, ++seed);
            const Enclosure e = light::enclosure(tests::stray_room(r), r.picture_area(), r.picture);
            const double house =
                trace.from_light({0.35 * r.size.x, 0.4 * r.size.y, 0.4 * r.size.z}, kPhotons) /
                light::returned_lx(e, 1.0);
            const glm::dvec2 middle = 0.5 * (r.picture_low + r.picture_high);
            const light::FirstBounce first = light::first_bounce(
                tests::stray_room(r), {{middle.x, middle.y, 0.0}, r.picture_high - r.picture_low});
            const double bounce = trace.from_picture(kPhotons) * r.picture_area() *
                                  e.picture_reflectance / light::bounce_fraction(e, first);
            INFO("traced over model: lights ", house, ", picture ", bounce);
            MESSAGE("traced over model: lights ", house, ", picture ", bounce);
            CHECK(house > 0.6);
            CHECK(house < 1.4);
            CHECK(bounce > 0.92);
            CHECK(bounce < 1.08);
        }
    }
}
