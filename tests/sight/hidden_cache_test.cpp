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
    if (room.walls.empty()) return;
    room.walls[i].from += by;
    room.walls[i].to += by;
}

glm::dvec3 step(std::mt19937& random) {
    return {tests::drawn(random, -0.2, 0.2), tests::drawn(random, -0.1, 0.1),
            tests::drawn(random, -0.2, 0.2)};
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
