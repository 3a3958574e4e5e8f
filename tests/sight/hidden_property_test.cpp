// SPDX-License-Identifier: MIT
/// What must hold in every room, on seeded random ones.
#include "sight/hidden.hpp"
#include "sight/seated_room.hpp"
#include "support/check.hpp"

#include <algorithm>
#include <numeric>

using namespace rakeline;
using tests::absolute;
using tests::check_close;
using tests::SeatedRoom;

namespace {

constexpr unsigned kRooms = 24;

std::vector<double> fractions(const SeatedRoom& room) {
    std::vector<double> out(room.eyes.size());
    sight::hidden_fractions(room.input(), {64, 1}, out);
    return out;
}

SeatedRoom random_room(unsigned seed) {
    return tests::seated_room(tests::random_shape(seed), seed);
}

glm::dvec3 mirrored(glm::dvec3 p) {
    p.x = -p.x;
    return p;
}

SeatedRoom mirrored(SeatedRoom room) {
    for (auto& eye : room.eyes)
        eye = mirrored(eye);
    for (auto& head : room.heads)
        head.centre = mirrored(head.centre);
    for (auto& wall : room.walls) {
        wall.from = mirrored(wall.from);
        wall.to = mirrored(wall.to);
    }
    return room;
}

SeatedRoom scaled(SeatedRoom room, double by) {
    room.surface.centre *= by;
    room.surface.radius_m *= by;
    auto& uv = room.opening.uv;
    uv = {uv.left * by, uv.right * by, uv.bottom * by, uv.top * by};
    for (auto& eye : room.eyes)
        eye *= by;
    for (auto& head : room.heads) {
        head.centre *= by;
        head.radius_m *= by;
        head.half_height_m *= by;
    }
    for (auto& wall : room.walls) {
        wall.from *= by;
        wall.to *= by;
        wall.base_m *= by;
    }
    return room;
}

/// Seats in the order given: seat i of the result is seat order[i] of the room.
SeatedRoom reordered(const SeatedRoom& room, const std::vector<std::size_t>& order) {
    SeatedRoom out = room;
    for (std::size_t i = 0; i < order.size(); ++i) {
        out.eyes[i] = room.eyes[order[i]];
        out.heads[i] = room.heads[order[i]];
        out.heads[i].eye = static_cast<int>(i);
        if (room.walls.size() < order.size()) continue;  // no seat backs
        out.walls[i] = room.walls[order[i]];
        out.walls[i].eye = static_cast<int>(i);
    }
    return out;
}

/// Upper end of what is hidden in each of 64 columns from one seat of a row whose floor is raised,
/// v on the surface; its neighbours in the row, who rise with it, are left out.
std::vector<double> tops_in_front(
    const SeatedRoom& room, const tests::RoomShape& shape, int row, int place, double raised_m) {
    SeatedRoom raised = room;
    const int first = row * shape.seats;
    const int seat = first + place;
    raised.eyes[static_cast<std::size_t>(seat)].y += raised_m;
    raised.heads.resize(static_cast<std::size_t>(first));
    if (!raised.walls.empty()) raised.walls.resize(static_cast<std::size_t>(first));
    std::vector<double> tops_m;
    for (const auto& column : sight::clear_outline(raised.input(), seat, 64).columns) {
        if (column.empty()) {
            tops_m.push_back(room.opening.uv.top);
        } else if (column.back().top_m < room.opening.uv.top) {
            tops_m.push_back(room.opening.uv.top);
        } else {
            tops_m.push_back(column.back().bottom_m);
        }
    }
    return tops_m;
}

const auto kSingle = absolute(1e-5, "heads are worked in single precision");

}  // namespace

TEST_SUITE("sight/hidden") {
    TEST_CASE("property: a mirrored room hides the same") {
        for (unsigned seed = 1; seed <= kRooms; ++seed) {
            const SeatedRoom room = random_room(seed);
            const auto one = fractions(room);
            const auto other = fractions(mirrored(room));
            INFO("seed ", seed);
            for (std::size_t i = 0; i < one.size(); ++i)
                check_close(other[i], one[i], kSingle);
        }
    }

    TEST_CASE("property: a room twice as large, or in feet, hides the same") {
        for (unsigned seed = 1; seed <= kRooms; ++seed) {
            const SeatedRoom room = random_room(seed);
            const auto one = fractions(room);
            INFO("seed ", seed);
            for (const double by : {2.0, 3.280839895}) {
                const auto other = fractions(scaled(room, by));
                for (std::size_t i = 0; i < one.size(); ++i)
                    check_close(other[i], one[i], kSingle);
            }
        }
    }

    TEST_CASE("property: the order in which the seats are listed does not count, to the bit") {
        for (unsigned seed = 1; seed <= kRooms; ++seed) {
            const SeatedRoom room = random_room(seed);
            std::vector<std::size_t> order(room.eyes.size());
            std::iota(order.begin(), order.end(), 0);
            std::shuffle(order.begin(), order.end(), std::mt19937(seed));
            const auto one = fractions(room);
            const auto other = fractions(reordered(room, order));
            INFO("seed ", seed);
            for (std::size_t i = 0; i < one.size(); ++i)
                CHECK(other[i] == one[order[i]]);
        }
    }

    TEST_CASE("property: every number of threads gives the same bits") {
        for (unsigned seed = 1; seed <= 6; ++seed) {
            const SeatedRoom room = random_room(seed);
            const auto one = sight::hidden_picture(room.input(), {128, 1});
            for (const unsigned threads : {2U, 3U, 7U})
                CHECK(sight::hidden_picture(room.input(), {128, threads}) == one);
        }
    }

    TEST_CASE("property: taking a head away never hides more") {
        for (unsigned seed = 1; seed <= kRooms; ++seed) {
            SeatedRoom room = random_room(seed);
            const auto before = fractions(room);
            room.heads.erase(room.heads.begin() + static_cast<long>(seed % room.heads.size()));
            const auto after = fractions(room);
            INFO("seed ", seed);
            for (std::size_t i = 0; i < before.size(); ++i)
                CHECK(after[i] <= before[i] + 1e-6);  // single precision
        }
    }

    TEST_CASE("property: raising a row never raises the top of what rows in front hide from it") {
        int compared = 0;
        for (unsigned seed = 1; seed <= 200; ++seed) {
            tests::RoomShape shape = tests::random_shape(seed);
            // Before a leaning screen a raised eye also comes nearer to it or draws back, which
            // moves outlines sideways into columns that they were not in.
            shape.tilt_rad = 0.0;
            shape.balcony = false;
            const SeatedRoom room = tests::seated_room(shape, seed);
            const int row = 1 + static_cast<int>(seed) % (shape.rows - 1);
            INFO("seed ", seed, " row ", row);
            for (const int place : {0, shape.seats / 2, shape.seats - 1}) {
                std::vector<double> before_m(64, 1e9);
                for (const double raised_m : {0.0, 0.05, 0.1, 0.3}) {
                    const auto tops_m = tops_in_front(room, shape, row, place, raised_m);
                    for (std::size_t j = 0; j < tops_m.size(); ++j)
                        CHECK(tops_m[j] <= before_m[j] + 1e-9);
                    before_m = tops_m;
                    ++compared;
                }
            }
        }
        CHECK(compared == 200 * 3 * 4);
    }

    TEST_CASE("property: outline and shares of every seat add up to the fraction") {
        for (unsigned seed = 1; seed <= 40; ++seed) {
            const SeatedRoom room = random_room(seed);
            const auto hidden = fractions(room);
            for (std::size_t i = seed % 5; i < hidden.size(); i += 5) {
                INFO("seed ", seed, " seat ", i);
                const int seat = static_cast<int>(i);
                double clear_m = 0.0;
                for (const auto& column : sight::clear_outline(room.input(), seat, 64).columns) {
                    for (const auto& interval : column) {
                        CHECK(interval.bottom_m < interval.top_m);
                        clear_m += interval.top_m - interval.bottom_m;
                    }
                }
                check_close(1.0 - clear_m / (64 * room.opening.height_m), hidden[i], kSingle);
                double shared = 0.0;
                for (const auto& share : sight::hiding_shares(room.input(), seat, 64)) {
                    CHECK(share.fraction > 0.0);
                    shared += share.fraction;
                }
                check_close(shared, hidden[i], kSingle);
            }
        }
    }

    TEST_CASE("property: the fraction stays within 0 and 1, and the top within the picture") {
        for (unsigned seed = 1; seed <= kRooms; ++seed) {
            const SeatedRoom room = random_room(seed);
            for (const auto& seat : sight::hidden_picture(room.input(), {64, 1})) {
                CHECK(seat.hidden_fraction >= 0.0);
                CHECK(seat.hidden_fraction <= 1.0 + 1e-6);
                CHECK(seat.clear_above_m <= room.opening.height_m * (1.0 + 1e-6));
                CHECK((seat.hidden_fraction > 0.0) == (seat.clear_above_m > 0.0));
            }
        }
    }
}
