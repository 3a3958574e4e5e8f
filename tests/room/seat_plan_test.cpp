// SPDX-License-Identifier: MIT
#include "room/seat_plan.hpp"

#include "support/check.hpp"

#include <algorithm>
#include <random>
#include <set>

using namespace rakeline::room;
using rakeline::tests::absolute;
using rakeline::tests::check_close;
using rakeline::tests::printed_digits;
using rakeline::tests::relative;

namespace {

const auto kRounding = absolute(1e-9, "rounding of positions of some ten metres");

SeatPlanInput room_of(const SeatBlock& block) {
    SeatPlanInput in;
    in.hall.width_m = 16.0;
    in.hall.length_m = 30.0;
    in.seating = {block};
    return in;
}

double between(std::mt19937& random, double least, double most) {
    return least + (most - least) * static_cast<double>(random()) / 4294967295.0;
}
int whole(std::mt19937& random, int least, int most) {
    return least + static_cast<int>(random() % static_cast<unsigned>(most - least + 1));
}

/// A block that fits a hall 16 m wide: arcs or not, any floor, aisles in mirrored pairs.
SeatBlock random_block(std::mt19937& random) {
    SeatBlock block;
    block.rows = whole(random, 1, 12);
    block.seats_per_row = whole(random, 5, 14);
    block.seats_added_per_row = whole(random, 0, 1);
    block.first_row_back_m = between(random, 4.0, 7.0);
    block.row_spacing_m = between(random, 0.9, 1.3);
    block.row_radius_m = random() % 2 ? between(random, 12.0, 40.0) : 0.0;
    block.staggered = random() % 2 == 0;
    block.floor = static_cast<BlockFloor>(whole(random, 0, 4));
    block.flights = {{whole(random, 1, 4), between(random, 0.0, 0.2)},
                     {whole(random, 1, 4), between(random, 0.1, 0.3)}};
    block.slope_rad = between(random, 0.0, 0.2);
    block.riser_m = between(random, 0.0, 0.4);
    if (random() % 2) block.aisles = {{2, 1.1}, {block.seats_per_row - 2, 1.1}};
    if (random() % 2) block.cross_aisles = {{2, 1.4}};
    return block;
}

SeatPlanInput random_room(std::mt19937& random) {
    SeatPlanInput in = room_of(random_block(random));
    in.hall.splay_rad = between(random, 0.0, 0.06);
    in.hall.length_m = 40.0;
    in.screen.tilt_rad = between(random, -0.05, 0.1);
    return in;
}

const Seat& seat_of(const SeatPlan& plan, const Row& row, int index) {
    return plan.seats.at(static_cast<std::size_t>(row.first_seat + index));
}

/// Height of the quadrilateral's surface above a plan point; nothing when it is outside.
std::optional<double> height_on(const Platform& platform, double x, double z) {
    const auto& c = platform.corners;
    for (std::size_t i = 0; i < 4; ++i) {
        const glm::dvec3 edge = c[(i + 1) % 4] - c[i];
        // Counter-clockwise from above: inside lies to the left of every edge (z down, x right).
        if (edge.z * (x - c[i].x) - edge.x * (z - c[i].z) < -1e-9) return std::nullopt;
    }
    const glm::dvec3 normal = glm::cross(c[1] - c[0], c[2] - c[0]);
    return c[0].y - (normal.x * (x - c[0].x) + normal.z * (z - c[0].z)) / normal.y;
}

}  // namespace

TEST_SUITE("room/seat_plan") {
    TEST_CASE("every row has the seats that its block promises") {
        SeatBlock block;
        block.rows = 5;
        block.seats_per_row = 9;
        block.seats_added_per_row = 2;
        const SeatPlan plan = place_seats(room_of(block));
        CHECK(plan.seats.size() == 9 + 11 + 13 + 15 + 17);
        CHECK(plan.rows.size() == 5);
        CHECK(plan.rows[3].seat_count == 15);
        CHECK(plan.rows[3].letter == "D");
        CHECK_FALSE(plan.rows[0].row_in_front.has_value());
        CHECK(plan.rows[3].row_in_front == 2);
        CHECK(plan.rows[3].second_row_in_front == 1);
    }

    TEST_CASE("a block whose rows shrink to nothing ends there") {
        SeatBlock block;
        block.rows = 6;
        block.seats_per_row = 5;
        block.seats_added_per_row = -2;
        const SeatPlan plan = place_seats(room_of(block));
        CHECK(plan.rows.size() == 3);
        CHECK(plan.seats.size() == 5 + 3 + 1);
    }

    TEST_CASE("property: seat names are unique and findable in any case of letters") {
        std::mt19937 random(11);
        for (int round = 0; round < 30; ++round) {
            INFO("seed 11, round ", round);
            const SeatPlan plan = place_seats(random_room(random));
            std::set<std::string> names;
            for (std::size_t i = 0; i < plan.seats.size(); ++i) {
                std::string name = plan.seats[i].name;
                names.insert(name);
                name[0] = static_cast<char>(name[0] - 'A' + 'a');
                CHECK(find_seat(plan, name) == static_cast<int>(i));
            }
            CHECK(names.size() == plan.seats.size());
        }
    }

    TEST_CASE("property: a symmetric block mirrors about its centre line") {
        std::mt19937 random(12);
        for (int round = 0; round < 40; ++round) {
            INFO("seed 12, round ", round);
            SeatPlanInput in = random_room(random);
            in.seating[0].staggered = false;
            const SeatPlan plan = place_seats(in);
            for (const Row& row : plan.rows) {
                for (int i = 0; i < row.seat_count; ++i) {
                    const Seat& seat = seat_of(plan, row, i);
                    const Seat& twin = seat_of(plan, row, row.seat_count - 1 - i);
                    check_close(seat.eye.x, -twin.eye.x, kRounding);
                    check_close(seat.eye.y, twin.eye.y, kRounding);
                    check_close(seat.eye.z, twin.eye.z, kRounding);
                    check_close(seat.facing.x, -twin.facing.x, kRounding);
                }
            }
        }
    }

    TEST_CASE("property: a room twice as large has its seats twice as far") {
        std::mt19937 random(13);
        for (int round = 0; round < 40; ++round) {
            INFO("seed 13, round ", round);
            SeatPlanInput in = random_room(random);
            const SeatPlan plan = place_seats(in);
            SeatBlock& block = in.seating[0];
            for (double* length : {&block.first_row_back_m, &block.first_row_up_m,
                                   &block.row_spacing_m, &block.seat_pitch_m, &block.row_radius_m,
                                   &block.riser_m, &block.wanted_c_m, &in.audience.eye_height_m,
                                   &in.screen.sill_m, &in.screen.height_m, &in.screen.setback_m}) {
                *length *= 2.0;
            }
            for (Flight& flight : block.flights)
                flight.riser_m *= 2.0;
            for (Aisle& aisle : block.aisles)
                aisle.width_m *= 2.0;
            for (CrossAisle& aisle : block.cross_aisles)
                aisle.width_m *= 2.0;
            const SeatPlan twice = place_seats(in);
            REQUIRE(twice.seats.size() == plan.seats.size());
            for (std::size_t i = 0; i < plan.seats.size(); ++i) {
                check_close(glm::length(twice.seats[i].eye - 2.0 * plan.seats[i].eye), 0.0,
                            kRounding);
            }
        }
    }

    TEST_CASE("golden: equal clearance rises as the reference sheet's twelve rows W8") {
        // x0 6.0 m, eye 0.08 m below the picture's edge, spacing 1.10 m, C 0.12 m.
        constexpr std::array kEye{-0.0800, 0.0473, 0.1933, 0.3553, 0.5315, 0.7204,
                                  0.9208,  1.1317, 1.3522, 1.5816, 1.8193, 2.0648};
        SeatBlock block;
        block.rows = 12;
        block.first_row_back_m = 7.0;
        block.floor = BlockFloor::equal_clearance;
        block.wanted_c_m = 0.12;
        block.row_spacing_m = 1.10;
        SeatPlanInput in = room_of(block);
        in.screen.sill_m = 1.20;
        in.screen.setback_m = 1.0;
        in.audience.eye_height_m = 1.12;
        const SeatPlan plan = place_seats(in);
        REQUIRE(plan.rows.size() == kEye.size());
        for (std::size_t n = 0; n < kEye.size(); ++n) {
            INFO("row ", n);
            check_close(plan.rows[n].centre_eye.y - in.screen.sill_m, kEye[n], printed_digits(4));
        }
    }

    TEST_CASE("rows of a floor of flights rise flight by flight, and the last one goes on") {
        SeatBlock block;
        block.rows = 7;
        block.floor = BlockFloor::flights;
        block.first_row_up_m = 0.5;
        block.flights = {{2, 0.10}, {3, 0.15}};
        const auto heights = [&] {
            std::vector<double> up;
            for (const Row& row : place_seats(room_of(block)).rows)
                up.push_back(row.centre_floor.y);
            return up;
        };
        constexpr std::array kUp{0.50, 0.60, 0.70, 0.85, 1.00, 1.15, 1.30};
        const std::vector<double> up = heights();
        REQUIRE(up.size() == kUp.size());
        for (std::size_t n = 0; n < up.size(); ++n)
            check_close(up[n], kUp[n], kRounding);
        block.flights = {{9, 0.10}, {3, 0.15}};
        check_close(heights().back(), 1.10, kRounding);
        block.flights.clear();
        CHECK(heights().back() == 0.5);
    }

    TEST_CASE("property: one flight over all rows is a stepped floor") {
        std::mt19937 random(16);
        for (int round = 0; round < 20; ++round) {
            INFO("seed 16, round ", round);
            SeatPlanInput in = random_room(random);
            SeatBlock& block = in.seating[0];
            block.floor = BlockFloor::stepped;
            const SeatPlan stepped = place_seats(in);
            block.floor = BlockFloor::flights;
            block.flights = {{block.rows, block.riser_m}};
            const SeatPlan flights = place_seats(in);
            REQUIRE(flights.rows.size() == stepped.rows.size());
            for (std::size_t n = 0; n < flights.rows.size(); ++n)
                check_close(flights.rows[n].centre_eye.y, stepped.rows[n].centre_eye.y, kRounding);
        }
    }

    TEST_CASE("property: equal clearance has the closed form and looks past every row by C") {
        std::mt19937 random(14);
        for (int round = 0; round < 40; ++round) {
            INFO("seed 14, round ", round);
            SeatPlanInput in = random_room(random);
            in.seating[0].floor = BlockFloor::equal_clearance;
            const SeatPlan plan = place_seats(in);
            const double half = 0.5 * in.screen.height_m;
            const double z0 = in.screen.setback_m + half * std::sin(in.screen.tilt_rad);
            const double y0 = in.screen.sill_m + half * (1.0 - std::cos(in.screen.tilt_rad));
            const double c = in.seating[0].wanted_c_m;
            double sum = 0.0;
            const glm::dvec3 first = plan.rows[0].centre_eye;
            for (const Row& row : plan.rows) {
                const double x = row.centre_eye.z - z0;
                const double closed = x * ((first.y - y0) / (first.z - z0) + c * sum);
                check_close(row.centre_eye.y - y0, closed, kRounding);
                sum += 1.0 / x;
                if (!row.row_in_front) continue;
                const glm::dvec3 front =
                    plan.rows.at(static_cast<std::size_t>(*row.row_in_front)).centre_eye;
                const double sight = y0 + (row.centre_eye.y - y0) * (front.z - z0) / x;
                check_close(sight - front.y, c, kRounding);
            }
        }
    }

    TEST_CASE("property: seats of an arc stand at its radius, at the exact pitch, facing in") {
        std::mt19937 random(15);
        for (int round = 0; round < 40; ++round) {
            INFO("seed 15, round ", round);
            SeatPlanInput in = random_room(random);
            SeatBlock& block = in.seating[0];
            block.row_radius_m = between(random, 12.0, 40.0);
            block.aisles.clear();
            const SeatPlan plan = place_seats(in);
            const double z0 = block.first_row_back_m - block.row_radius_m;
            for (const Row& row : plan.rows) {
                const double radius = row.centre_floor.z - z0;
                for (int i = 0; i < row.seat_count; ++i) {
                    const Seat& seat = seat_of(plan, row, i);
                    const glm::dvec3 out{seat.floor.x, 0.0, seat.floor.z - z0};
                    check_close(glm::length(out), radius, kRounding);
                    check_close(glm::length(out / radius + seat.facing), 0.0, kRounding);
                    if (i == 0) continue;
                    const glm::dvec3 before = seat_of(plan, row, i - 1).floor;
                    const double turn =
                        std::atan2(out.x, out.z) - std::atan2(before.x, before.z - z0);
                    check_close(radius * turn, block.seat_pitch_m, kRounding);
                }
            }
        }
    }

    TEST_CASE("an aisle is a clear gap at its place and shifts by half the seats added") {
        SeatBlock block;
        block.rows = 3;
        block.seats_per_row = 10;
        block.seats_added_per_row = 2;
        block.seat_pitch_m = 0.5;
        block.aisles = {{3, 1.2}, {7, 1.2}};
        const SeatPlan plan = place_seats(room_of(block));
        for (int n = 0; n < 3; ++n) {
            const Row& row = plan.rows.at(static_cast<std::size_t>(n));
            for (int i = 1; i < row.seat_count; ++i) {
                const bool gap = i == 3 + n || i == 7 + n;
                const double step =
                    seat_of(plan, row, i).floor.x - seat_of(plan, row, i - 1).floor.x;
                check_close(step, gap ? 1.7 : 0.5, kRounding);
            }
            const double ends =
                seat_of(plan, row, 0).floor.x + seat_of(plan, row, row.seat_count - 1).floor.x;
            check_close(ends, 0.0, kRounding);
        }
    }

    TEST_CASE("a cross aisle adds to the spacing behind its row") {
        SeatBlock block;
        block.rows = 4;
        block.row_spacing_m = 1.0;
        block.cross_aisles = {{2, 1.5}};
        const SeatPlan plan = place_seats(room_of(block));
        const double first = block.first_row_back_m;
        check_close(plan.rows[1].centre_floor.z, first + 1.0, kRounding);
        check_close(plan.rows[2].centre_floor.z, first + 3.5, kRounding);
        check_close(plan.rows[3].centre_floor.z, first + 4.5, kRounding);
    }

    TEST_CASE("a staggered row stands half a pitch beside the row in front") {
        for (const int added : {0, 1, 2}) {
            INFO("seats added ", added);
            SeatBlock block;
            block.staggered = true;
            block.seats_added_per_row = added;
            const SeatPlan plan = place_seats(room_of(block));
            for (std::size_t n = 1; n < plan.rows.size(); ++n) {
                const double off = seat_of(plan, plan.rows[n], 0).floor.x -
                                   seat_of(plan, plan.rows[n - 1], 0).floor.x;
                const double in_pitches = off / block.seat_pitch_m;
                check_close(std::abs(in_pitches - std::round(in_pitches)), 0.5, kRounding);
            }
        }
        SeatBlock block;
        block.staggered = true;
        const SeatPlan plan = place_seats(room_of(block));
        check_close(seat_of(plan, plan.rows[1], 0).floor.x - seat_of(plan, plan.rows[0], 0).floor.x,
                    0.5 * block.seat_pitch_m, kRounding);
    }

    TEST_CASE("a wheelchair place is a marked seat with an eye of its own height") {
        SeatBlock block;
        block.wheelchair_places = {{"b", 3}};
        const SeatPlanInput in = room_of(block);
        const SeatPlan plan = place_seats(in);
        CHECK(std::ranges::count_if(plan.seats, &Seat::wheelchair) == 1);
        const Seat& place = plan.seats.at(static_cast<std::size_t>(find_seat(plan, "B3").value()));
        CHECK(place.wheelchair);
        check_close(place.eye.y - place.floor.y, in.audience.wheelchair_eye_height_m, kRounding);
        const Seat& seat = plan.seats.at(static_cast<std::size_t>(find_seat(plan, "B4").value()));
        check_close(seat.eye.y - seat.floor.y, in.audience.eye_height_m, kRounding);
    }

    TEST_CASE("rows stand on steps, on a slope, or on the hall's profile") {
        SeatBlock block;
        block.rows = 4;
        block.first_row_up_m = 0.3;
        block.floor = BlockFloor::stepped;
        block.riser_m = 0.2;
        check_close(place_seats(room_of(block)).rows[3].centre_floor.y, 0.9, kRounding);

        block.floor = BlockFloor::slope;
        block.slope_rad = std::atan(0.1);
        check_close(place_seats(room_of(block)).rows[3].centre_floor.y,
                    0.3 + 0.1 * 3.0 * block.row_spacing_m, kRounding);

        SeatPlanInput in = room_of(block);
        in.hall.floor = FloorMode::by_profile;
        in.hall.floor_profile = {{4.0, 0.0}, {14.0, 2.0}, {16.0, 1.0}};
        const SeatPlan plan = place_seats(in);
        for (const Seat& seat : plan.seats) {
            check_close(seat.floor.y, 0.2 * (seat.floor.z - 4.0), kRounding);
        }
        check_close(profile_height(in.hall.floor_profile, 1.0), 0.0, kRounding);
        check_close(profile_height(in.hall.floor_profile, 15.0), 1.5, kRounding);
        check_close(profile_height(in.hall.floor_profile, 30.0), 1.0, kRounding);
    }

    TEST_CASE("the reference seat is the middle of the middle row unless one is named") {
        SeatBlock block;
        block.rows = 9;
        block.seats_per_row = 11;
        SeatPlanInput in = room_of(block);
        const SeatPlan plan = place_seats(in);
        CHECK(reference_seat(plan, in.audience) == find_seat(plan, "E6"));
        in.audience.reference_seat = "c2";
        CHECK(reference_seat(plan, in.audience) == find_seat(plan, "C2"));
        CHECK_FALSE(reference_seat(SeatPlan{}, in.audience).has_value());
    }

    TEST_CASE("round trip: row letters run A to Z, AA and on") {
        CHECK(row_letter(0) == "A");
        CHECK(row_letter(25) == "Z");
        CHECK(row_letter(26) == "AA");
        CHECK(row_letter(51) == "AZ");
        CHECK(row_letter(52) == "BA");
        CHECK(row_letter(701) == "ZZ");
        CHECK(row_letter(702) == "AAA");
        for (int i = 0; i < 2000; ++i)
            CHECK(row_index(row_letter(i)) == i);
        CHECK(row_index("ab") == 27);
        for (const char* wrong : {"", "A1", "-", "AAAAA"})
            CHECK_FALSE(row_index(wrong));
    }
}

TEST_SUITE("room/platforms") {
    TEST_CASE("property: every seat stands on its row's tread and on no other") {
        std::mt19937 random(16);
        for (int round = 0; round < 60; ++round) {
            INFO("seed 16, round ", round);
            const SeatPlan plan = place_seats(random_room(random));
            for (const Seat& seat : plan.seats) {
                INFO("seat ", seat.name);
                int on_own = 0;
                for (const Platform& platform : plan.platforms) {
                    const auto height = height_on(platform, seat.floor.x, seat.floor.z);
                    if (!height) continue;
                    check_close(seat.floor.y, *height, kRounding);
                    CHECK(platform.row == seat.row);
                    ++on_own;
                }
                CHECK(on_own >= 1);
            }
        }
    }

    TEST_CASE("property: the floor of a hall with straight rows covers its plan exactly once") {
        std::mt19937 random(17);
        for (int round = 0; round < 40; ++round) {
            INFO("seed 17, round ", round);
            SeatPlanInput in = random_room(random);
            in.seating[0].row_radius_m = 0.0;
            double covered = 0.0;
            for (const Platform& p : place_seats(in).platforms) {
                const glm::dvec3 a = p.corners[2] - p.corners[0];
                const glm::dvec3 b = p.corners[3] - p.corners[1];
                const double area = 0.5 * (a.z * b.x - a.x * b.z);
                CHECK(area != 0.0);
                covered += std::abs(area);
            }
            const double wide =
                half_width_at(in.hall, 0.0) + half_width_at(in.hall, in.hall.length_m);
            check_close(covered, wide * in.hall.length_m, relative(1e-12, "rounding of a sum"));
        }
    }

    TEST_CASE("property: curved treads leave no gap: their areas sum to the hall's") {
        std::mt19937 random(18);
        for (int round = 0; round < 40; ++round) {
            INFO("seed 18, round ", round);
            SeatPlanInput in = random_room(random);
            in.seating[0].row_radius_m = between(random, 14.0, 40.0);
            double covered = 0.0;
            for (const Platform& p : place_seats(in).platforms) {
                const glm::dvec3 a = p.corners[2] - p.corners[0];
                const glm::dvec3 b = p.corners[3] - p.corners[1];
                covered += std::abs(0.5 * (a.z * b.x - a.x * b.z));
            }
            const double wide =
                half_width_at(in.hall, 0.0) + half_width_at(in.hall, in.hall.length_m);
            check_close(covered, wide * in.hall.length_m, relative(1e-12, "rounding of a sum"));
        }
    }

    TEST_CASE("a raised block lies over a hall floor that runs on, behind its front wall") {
        SeatBlock stalls;
        stalls.rows = 8;
        SeatBlock balcony;
        balcony.rows = 3;
        balcony.first_row = "AA";
        balcony.raised = true;
        balcony.first_row_back_m = 12.0;
        balcony.first_row_up_m = 4.0;
        balcony.front_wall_m = 0.8;
        SeatPlanInput in = room_of(stalls);
        in.seating.push_back(balcony);
        const SeatPlan plan = place_seats(in);
        const Seat& above = plan.seats.at(static_cast<std::size_t>(find_seat(plan, "AB3").value()));
        std::vector<double> heights;
        double wall_up = 0.0;
        for (const Platform& platform : plan.platforms) {
            const auto height = height_on(platform, above.floor.x, above.floor.z);
            if (height) heights.push_back(*height);
            if (platform.kind != PlatformKind::balcony_front) continue;
            wall_up = platform.corners[0].y;
            CHECK(platform.corners[1].z < 12.0);
        }
        std::ranges::sort(heights);
        REQUIRE(heights.size() == 2);
        check_close(heights[0], 7 * stalls.riser_m, kRounding);
        check_close(heights[1], above.floor.y, kRounding);
        check_close(wall_up, 4.8, kRounding);
        CHECK_FALSE(plan.rows[8].row_in_front.has_value());
    }

    TEST_CASE("blocks side by side share the floor between their seats") {
        SeatBlock left;
        left.across_m = -4.0;
        left.seats_per_row = 8;
        SeatBlock right = left;
        right.across_m = 4.0;
        right.first_row = "N";
        right.riser_m = 0.3;
        SeatPlanInput in = room_of(left);
        in.seating.push_back(right);
        const SeatPlan plan = place_seats(in);
        for (const Seat& seat : plan.seats) {
            INFO("seat ", seat.name);
            int treads = 0;
            for (const Platform& platform : plan.platforms) {
                const auto height = height_on(platform, seat.floor.x, seat.floor.z);
                if (!height) continue;
                ++treads;
                check_close(*height, seat.floor.y, kRounding);
            }
            CHECK(treads == 1);
        }
    }

    TEST_CASE("property: a rear block's floor begins where the blocks before it end") {
        std::mt19937 random(19);
        for (int round = 0; round < 20; ++round) {
            INFO("seed 19, round ", round);
            SeatBlock left;
            left.across_m = -4.0;
            left.rows = 5;
            left.seats_per_row = 8;
            SeatBlock right = left;
            right.across_m = 4.0;
            SeatBlock rear;
            rear.first_row_back_m = between(random, 12.0, 16.0);
            rear.first_row_up_m = between(random, 0.0, 1.0);
            SeatPlanInput in = room_of(left);
            in.seating = {left, right, rear};
            double covered = 0.0;
            for (const Platform& p : place_seats(in).platforms) {
                const glm::dvec3 a = p.corners[2] - p.corners[0];
                const glm::dvec3 b = p.corners[3] - p.corners[1];
                covered += std::abs(0.5 * (a.z * b.x - a.x * b.z));
            }
            check_close(covered, in.hall.width_m * in.hall.length_m,
                        relative(1e-12, "rounding of a sum"));
        }
    }

    TEST_CASE("a profile is the floor, from wall to wall") {
        SeatBlock block;
        block.rows = 4;
        SeatPlanInput in = room_of(block);
        in.hall.floor = FloorMode::by_profile;
        in.hall.floor_profile = {{4.0, 0.0}, {14.0, 2.0}, {16.0, 1.0}};
        const SeatPlan plan = place_seats(in);
        CHECK(plan.platforms.front().kind == PlatformKind::front);
        CHECK(plan.platforms.back().kind == PlatformKind::back);
        for (double z = 0.05; z < in.hall.length_m; z += 0.1) {
            const auto found = std::ranges::find_if(plan.platforms, [&](const Platform& platform) {
                return height_on(platform, 1.0, z).has_value();
            });
            REQUIRE(found != plan.platforms.end());
            check_close(height_on(*found, 1.0, z).value(), profile_height(in.hall.floor_profile, z),
                        kRounding);
        }
    }

    TEST_CASE("a room without seats has one level floor") {
        SeatPlanInput in;
        const SeatPlan plan = place_seats(in);
        REQUIRE(plan.platforms.size() == 1);
        CHECK(plan.platforms[0].corners[2].z == in.hall.length_m);
    }
}
