// SPDX-License-Identifier: MIT
#include "sight/row_ends.hpp"

#include "sight/rake_rows.hpp"
#include "sight/random_seats.hpp"
#include "sight/row_clearance.hpp"
#include "support/check.hpp"

using namespace rakeline;
using namespace rakeline::tests;

namespace {

const auto kRounding = absolute(1e-9, "rounding, and the foot on a curved edge found by halving");

/// Two rows of the given eyes, the second behind the first, seats 0.56 m wide.
room::SeatPlan two_rows(const std::vector<glm::dvec3>& front, const std::vector<glm::dvec3>& rear) {
    room::SeatPlan plan;
    for (const auto* eyes : {&front, &rear}) {
        room::Row row;
        row.first_seat = static_cast<int>(plan.seats.size());
        row.seat_count = static_cast<int>(eyes->size());
        row.centre_eye = (*eyes)[eyes->size() / 2];
        if (!plan.rows.empty()) row.row_in_front = 0;
        for (const glm::dvec3& eye : *eyes) {
            room::Seat seat;
            seat.row = static_cast<int>(plan.rows.size());
            seat.eye = eye;
            plan.seats.push_back(seat);
        }
        plan.rows.push_back(row);
    }
    return plan;
}

const std::vector<room::SeatBlock> kBlock(1);

std::vector<sight::RowEnds> ends_of(const SeatsRoom& room, const room::SeatPlan& plan) {
    return sight::row_ends(room.picture.surface, room.picture.opening, plan, room.in.seating);
}

void check_same(const std::optional<sight::OverRow>& a,
                const std::optional<sight::OverRow>& b,
                double scale = 1.0) {
    REQUIRE(a.has_value() == b.has_value());
    if (a) check_close(a->c_m, scale * b->c_m, kRounding);
}

}  // namespace

TEST_SUITE("sight/row_ends") {
    TEST_CASE("the end of a curved row sees over the eyes that its own sight line crosses") {
        // By hand, in plan: the line from (-3, 7) to the picture's lower left corner (-2, 0) meets
        // the eye line from (-3, 5) to (0, 6) at 3/11 of its way, 1/11 of the way along the eye
        // line. There the sight line is 1.6 - 0.6 x 3/11 high and the eyes 1.3 - 0.1/11: C =
        // 1.6/11 m. Straight ahead of the end seat stands an eye of 1.30 m, over which the same
        // line would clear no more than 1.6 - 0.6 x 2/7 - 1.3 = 0.129 m.
        const Picture p = picture_of({.width_m = 4.0, .height_m = 2.0, .sill_m = 1.0});
        const room::SeatPlan plan = two_rows({{-3, 1.3, 5}, {0, 1.2, 6}, {3, 1.3, 5}},
                                             {{-3, 1.6, 7}, {0, 1.6, 8}, {3, 1.6, 7}});
        const auto ends = sight::row_ends(p.surface, p.opening, plan, kBlock);
        REQUIRE(ends.size() == 2);
        CHECK_FALSE(ends[0].left);
        REQUIRE(ends[1].left);
        REQUIRE(ends[1].right);
        check_close(ends[1].left->c_m, 1.6 / 11.0, kRounding);
        check_close(ends[1].right->c_m, 1.6 / 11.0, kRounding);
        check_close(ends[1].left->front.x, -30.0 / 11.0, kRounding);
        check_close(ends[1].left->focus.x, -2.0, kRounding);
        CHECK_FALSE(ends[1].second_left);
    }

    TEST_CASE("a line beside the front row's seats has no C, one over its end seat's edge has") {
        const Picture p = picture_of({.width_m = 20.0, .height_m = 8.0, .sill_m = 1.0});
        const auto left_of = [&](double across) {
            const room::SeatPlan plan = two_rows({{-2, 1.2, 5}, {2, 1.2, 5}}, {{across, 1.5, 6}});
            return sight::row_ends(p.surface, p.opening, plan, kBlock)[1].left;
        };
        // Straight ahead: the front row reaches to 2.28 m, half a seat beyond its end eye.
        REQUIRE(left_of(-2.0));
        REQUIRE(left_of(-2.27));
        check_close(left_of(-2.27)->c_m, left_of(-2.0)->c_m, kRounding);
        REQUIRE(left_of(-2.28));
        CHECK_FALSE(left_of(-2.29));
    }

    TEST_CASE(
        "of an arc that the sight line crosses twice, the crossing nearer to the eye counts") {
        // Straight ahead, at 0.5 m to the right, the line from (0.5, 10) meets the stretch from
        // (0, 8) to (1, 7) at 7.5 m, half-way, and that from (1, 7) to (0, 5) at 6 m.
        const Picture p = picture_of({.width_m = 20.0, .height_m = 8.0, .sill_m = 1.0});
        const room::SeatPlan plan =
            two_rows({{0, 1.4, 8}, {1, 1.2, 7}, {0, 1.1, 5}}, {{0.5, 1.8, 10}});
        const auto over =
            sight::over_row(p.surface, p.opening, plan, kBlock, plan.seats.back().eye, 0);
        REQUIRE(over);
        check_close(over->front.z, 7.5, kRounding);
        check_close(over->front.y, 1.3, kRounding);
        check_close(over->c_m, 1.0 + 0.8 * 7.5 / 10.0 - 1.3, kRounding);
    }

    TEST_CASE("the worse of two ends is the one with less, the left of equals, the only one") {
        sight::OverRow low, high;
        low.c_m = 0.05;
        high.c_m = 0.08;
        CHECK(sight::right_end_is_worse(high, low));
        CHECK_FALSE(sight::right_end_is_worse(low, high));
        CHECK_FALSE(sight::right_end_is_worse(low, low));
        CHECK(sight::right_end_is_worse({}, high));
        CHECK_FALSE(sight::right_end_is_worse(low, {}));
    }

    TEST_CASE("property: a mirrored room swaps the ends of its rows") {
        std::mt19937 random(51001);
        int defined = 0;
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 51001");
            const SeatsRoom room = random_seats_room(random);
            const auto here = ends_of(room, room.plan);
            const auto there = ends_of(room, mirrored(room.plan));
            for (std::size_t r = 0; r < here.size(); ++r) {
                check_same(there[r].right, here[r].left);
                check_same(there[r].left, here[r].right);
                check_same(there[r].second_right, here[r].second_left);
                defined += here[r].left.has_value();
            }
        }
        CHECK(defined > 300);
    }

    TEST_CASE("property: a room twice as large has twice the C") {
        std::mt19937 random(51002);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 51002");
            const SeatsRoom room = random_seats_room(random);
            SeatsRoom large = room;
            for (double* length :
                 {&large.in.screen.width_m, &large.in.screen.height_m, &large.in.screen.sill_m,
                  &large.in.screen.setback_m, &large.in.screen.radius_m})
                *length *= 2.0;
            large.in.seating[0].seat_pitch_m *= 2.0;
            place(large);
            room::SeatPlan plan = room.plan;
            for (room::Seat& seat : plan.seats)
                seat.eye *= 2.0;
            const auto here = ends_of(room, room.plan);
            const auto twice = ends_of(large, plan);
            for (std::size_t r = 0; r < here.size(); ++r) {
                check_same(twice[r].left, here[r].left, 2.0);
                check_same(twice[r].right, here[r].right, 2.0);
            }
        }
    }

    TEST_CASE("property: before a wide flat picture the ends of straight rows have the row's C") {
        std::mt19937 random(51003);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 51003");
            SeatsRoom room = random_seats_room(random);
            room.in.screen.width_m = 60.0;
            room.in.screen.radius_m = 0.0;
            room.in.seating[0].row_radius_m = 0.0;
            room.in.seating[0].seats_added_per_row = 0;
            room.in.seating[0].wheelchair_places.clear();
            place(room);
            const auto ends = ends_of(room, room.plan);
            const auto rows = sight::row_clearances(room.picture.surface, room.picture.opening,
                                                    room.plan, room.in.seating);
            for (std::size_t r = 1; r < ends.size(); ++r) {
                REQUIRE(rows[r].c_m);
                // A row shifted by half a seat still meets the seats of the next at its edge.
                REQUIRE(ends[r].left);
                REQUIRE(ends[r].right);
                check_close(ends[r].left->c_m, *rows[r].c_m, kRounding);
                check_close(ends[r].right->c_m, *rows[r].c_m, kRounding);
            }
        }
    }

    TEST_CASE("property: there the rake solver's C of each row is the ends' too") {
        std::mt19937 random(51004);
        for (int i = 0; i < 100; ++i) {
            INFO("draw ", i, " of seed 51004");
            SeatsRoom room = random_seats_room(random);
            room.in.screen.width_m = 60.0;
            room.in.screen.radius_m = 0.0;
            room.in.seating[0].row_radius_m = 0.0;
            room.in.seating[0].seats_added_per_row = 0;
            room.in.seating[0].wheelchair_places.clear();
            place(room);
            const std::vector<picture::Opening> openings{room.picture.opening};
            const auto rake = sight::rake_rows(room.picture.surface, openings, room.plan, 0,
                                               sight::RakeOver::row_in_front, 20.0);
            REQUIRE(rake);
            std::vector<double> floors;
            for (const sight::RakeRow& row : rake->rows)
                floors.push_back(row.floor_m);
            const auto solved = sight::row_sights(*rake, floors, 0.12);
            const auto ends = ends_of(room, room.plan);
            for (std::size_t r = 1; r < ends.size(); ++r)
                check_close(ends[r].right.value().c_m, solved[r].value().c_m, kRounding);
        }
    }

    TEST_CASE("property: C is the sight line's height over the eye line where they cross") {
        std::mt19937 random(51005);
        for (int i = 0; i < 200; ++i) {
            INFO("draw ", i, " of seed 51005");
            const SeatsRoom room = random_seats_room(random);
            for (const sight::RowEnds& ends : ends_of(room, room.plan)) {
                if (!ends.left) continue;
                const sight::OverRow& over = *ends.left;
                const glm::dvec2 way(over.focus.x - over.rear.x, over.focus.z - over.rear.z);
                const glm::dvec2 part(over.front.x - over.rear.x, over.front.z - over.rear.z);
                const double share = glm::length(part) / glm::length(way);
                // On the line in plan, and so high over it.
                check_close(way.x * part.y - way.y * part.x, 0.0, kRounding);
                const double line_m = over.rear.y + share * (over.focus.y - over.rear.y);
                check_close(over.c_m, line_m - over.front.y, kRounding);
            }
        }
    }
}
