// SPDX-License-Identifier: MIT
#include "sound/flutter.hpp"

#include "sound/hall_room.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

TEST_SUITE("sound/flutter") {
    TEST_CASE("bare parallel walls keep a clap, by hand") {
        sound::HallInput hall = box_hall(10.2, 6.2, 16.5);
        hall.acoustics = evenly(0.1);
        const auto pairs = sound::flutter_pairs(hall, {});
        REQUIRE(pairs.sides);
        check_close(pairs.sides->every_s, 2.0 * 10.2 / 343.2, relative(1e-12, "rounding"));
        check_close(pairs.sides->kept_db, 10.0 * std::log10(0.81), absolute(1e-12, "rounding"));
        check_close(pairs.length->every_s, 2.0 * 16.5 / 343.2, relative(1e-12, "rounding"));
        check_close(pairs.height->every_s, 2.0 * 6.2 / 343.2, relative(1e-12, "rounding"));
    }

    TEST_CASE("the octave in which most is left decides, from 500 Hz up") {
        sound::HallInput hall = box_hall(10.0, 6.0, 20.0);
        hall.acoustics = evenly(0.9);
        hall.acoustics.side_walls.by_octave = {0.0, 0.0, 0.6, 0.5, 0.3, 0.4};
        const auto sides = sound::flutter_pairs(hall, {}).sides.value();
        CHECK(sides.frequency_hz == 2000.0);
        check_close(sides.kept_db, 20.0 * std::log10(0.7), absolute(1e-12, "rounding"));
    }

    TEST_CASE("side walls that open by 5 degrees between them do not flutter") {
        sound::HallInput hall = box_hall(10.0, 6.0, 20.0);
        for (const double splay : {2.4, -2.4}) {
            hall.splay_rad = base::radians(splay);
            CHECK(sound::flutter_pairs(hall, {}).sides);
        }
        for (const double splay : {2.6, -2.6}) {
            hall.splay_rad = base::radians(splay);
            CHECK_FALSE(sound::flutter_pairs(hall, {}).sides);
            CHECK(sound::flutter_pairs(hall, {}).length);
        }
    }

    TEST_CASE("a hall that slopes all over does not flutter up and down") {
        sound::HallInput hall = box_hall(10.0, 6.0, 20.0);
        hall.level_floor.reset();
        CHECK_FALSE(sound::flutter_pairs(hall, {}).height);
        hall.level_floor = room::LevelFloor{1.5, 12.0};
        check_close(sound::flutter_pairs(hall, {}).height->apart_m, 4.5,
                    absolute(1e-12, "rounding"));
    }

    TEST_CASE("one wall that takes all is enough, and its level stays a number") {
        sound::HallInput hall = box_hall(10.0, 6.0, 20.0);
        hall.acoustics = evenly(0.0);
        hall.acoustics.rear_wall = alike(1.0);
        const auto pairs = sound::flutter_pairs(hall, {});
        CHECK(pairs.length->kept_db == -60.0);
        CHECK(pairs.sides->kept_db == 0.0);
    }
}
