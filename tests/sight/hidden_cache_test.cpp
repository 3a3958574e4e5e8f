// SPDX-License-Identifier: MIT
/// Edit by edit equals from scratch, bit for bit.
#include "sight/hidden_cache.hpp"

#include "sight/seated_room.hpp"
#include "support/check.hpp"

using namespace rakeline;

namespace {

void move_person(tests::SeatedRoom& room, std::size_t i, const glm::dvec3& by) {
    room.eyes[i] += by;
    room.heads[i].centre += by;
    if (room.walls.size() < room.eyes.size()) return;  // no seat backs
    room.walls[i].from += by;
    room.walls[i].to += by;
}

glm::dvec3 step(std::mt19937& random) {
    return {tests::drawn(random, -0.2, 0.2), tests::drawn(random, -0.1, 0.1),
            tests::drawn(random, -0.2, 0.2)};
}

/// Some rows' floor up or down, or one of their people aside.
void drag(tests::SeatedRoom& room,
          const tests::RoomShape& shape,
          int row,
          bool one_alone,
          std::mt19937& random) {
    const std::size_t begin = static_cast<std::size_t>(std::min(row, shape.rows - 1)) *
                              static_cast<std::size_t>(shape.seats);
    const glm::dvec3 by =
        one_alone ? step(random) : glm::dvec3(0.0, tests::drawn(random, -0.1, 0.1), 0.0);
    const std::size_t count = one_alone ? 1 : static_cast<std::size_t>(shape.seats);
    for (std::size_t i = begin; i < begin + count; ++i)
        move_person(room, i, by);
}

/// One of the things that people do to a room.
void edit(tests::SeatedRoom& room, std::mt19937& random) {
    const std::size_t i = random() % room.eyes.size();
    switch (random() % 8) {
        case 0:
        case 1:
        case 2:
            move_person(room, i, step(random));
            break;
        case 3:
            for (std::size_t k = i; k < std::min(i + 6, room.eyes.size()); ++k)
                move_person(room, k, {0.0, 0.05, 0.0});
            break;
        case 4:
            room.heads[i].radius_m = tests::drawn(random, 0.06, 0.09);
            break;
        case 5:
            room.eyes[i].y += 0.03;
            break;
        case 6:  // a neighbour leans over until the two heads touch
            room.heads[i].centre = room.eyes[(i + 1) % room.eyes.size()] +
                                   glm::dvec3(0.0, 0.0, -tests::drawn(random, 0.05, 0.2));
            break;
        case 7:
            room.opening.uv.top -= 0.05;
            break;
    }
}

}  // namespace

TEST_SUITE("sight/hidden_cache") {
    TEST_CASE("property: edit by edit equals from scratch") {
        for (unsigned seed = 1; seed <= 30; ++seed) {
            tests::SeatedRoom room = tests::seated_room(tests::random_shape(seed), seed);
            std::mt19937 random(seed);
            const sight::HiddenSetting setting{seed % 2 == 0 ? 128 : 64, seed % 3};
            sight::HiddenCache cache(setting);
            for (int k = 0; k < 30; ++k) {
                INFO("seed ", seed, " edit ", k);
                REQUIRE(cache.update(room.input()) == sight::hidden_picture(room.input(), setting));
                edit(room, random);
            }
        }
    }

    TEST_CASE(
        "property: a row that is dragged, and then another, equals from scratch at every step") {
        for (unsigned seed = 1; seed <= 60; ++seed) {
            const tests::RoomShape shape = tests::random_shape(seed);
            tests::SeatedRoom room = tests::seated_room(shape, seed);
            std::mt19937 random(seed);
            const sight::HiddenSetting setting{seed % 2 == 0 ? 128 : 256, 1 + seed % 2};
            sight::HiddenCache cache(setting);
            cache.update(room.input());
            for (int k = 0; k < 24; ++k) {
                drag(room, shape, k / 4 % 3 == 2 ? 2 : 1, random() % 4 == 0, random);
                INFO("seed ", seed, " step ", k);
                REQUIRE(cache.update(room.input()) == sight::hidden_picture(room.input(), setting));
            }
        }
    }

    TEST_CASE("property: a drag in a full room of each rake equals from scratch at every step") {
        for (const double rake_deg : {0.0, 5.0, 12.0}) {
            tests::RoomShape shape;
            shape.rake_rad = base::radians(rake_deg);
            shape.seat_backs = rake_deg == 5.0;
            tests::SeatedRoom room = tests::seated_room(shape, 1);
            sight::HiddenCache cache;
            cache.update(room.input());
            for (int k = 0; k < 30; ++k) {
                const auto row = static_cast<std::size_t>(k / 5 * 3);
                for (std::size_t i = 25 * row; i < 25 * (row + 1); ++i)
                    move_person(room, i, {0.0, k % 2 == 0 ? 0.07 : -0.05, 0.0});
                INFO("rake ", rake_deg, " step ", k);
                REQUIRE(cache.update(room.input()) == sight::hidden_picture(room.input()));
            }
        }
    }

    TEST_CASE("a head that goes through other heads and behind the surface equals from scratch") {
        for (const double screen_radius_m : {0.0, 12.0}) {
            tests::SeatedRoom room = tests::seated_room(
                {.rows = 4, .seats = 7, .screen_radius_m = screen_radius_m, .seat_backs = true}, 3);
            sight::HiddenCache cache;
            cache.update(room.input());
            for (int k = 0; k < 80; ++k) {
                // From behind the last row, through all rows, and on beyond the screen.
                room.heads[10].centre = {0.28 + 0.001 * k, 1.25, 9.0 - 0.13 * k};
                INFO("screen radius ", screen_radius_m, " step ", k);
                REQUIRE(cache.update(room.input()) == sight::hidden_picture(room.input()));
            }
        }
    }

    TEST_CASE("columns with many heads over one another equal from scratch") {
        tests::SeatedRoom room = tests::seated_room({.rows = 3, .seats = 9}, 1);
        for (int i = 0; i < 40; ++i)
            room.heads.push_back({{0.05 * (i % 5), 2.0 + 0.1 * i, 4.0}, 0.03, 0.03, -1});
        sight::HiddenCache cache;
        cache.update(room.input());
        for (int k = 0; k < 40; ++k) {
            for (const std::size_t i : {30U, 41U, 45U, 60U})
                room.heads[i].centre.y += k % 3 == 0 ? 0.11 : -0.04;
            if (k % 7 == 0) move_person(room, 22, {0.0, 0.02, 0.0});
            INFO("step ", k);
            REQUIRE(cache.update(room.input()) == sight::hidden_picture(room.input()));
        }
    }

    TEST_CASE("property: people who come and go equal from scratch") {
        tests::SeatedRoom room = tests::seated_room({}, 5);
        sight::HiddenCache cache;
        for (int k = 0; k < 10; ++k) {
            REQUIRE(cache.update(room.input()) == sight::hidden_picture(room.input()));
            room.heads.erase(room.heads.begin() + 37 * k);
            if (k % 3 == 0) room.heads.push_back({{0.1 * k, 1.7, 9.5}, 0.08, 0.12, -1});
        }
    }

    TEST_CASE("a room that is emptied and filled again, and columns that no kernel takes") {
        const tests::SeatedRoom room = tests::seated_room({.rows = 3, .seats = 5}, 5);
        sight::HiddenCache cache({100, 1});
        CHECK(cache.update(room.input()) == sight::hidden_picture(room.input(), {100, 1}));
        sight::HiddenCache usual;
        sight::HiddenInput none = room.input();
        none.eyes = {};
        none.heads = {};
        CHECK(usual.update(none).empty());
        CHECK(usual.update(room.input()) == sight::hidden_picture(room.input()));
        CHECK(usual.update(none).empty());
    }
}
